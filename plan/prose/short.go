package prose

import "strings"

// shortForms are abbreviations in lower case, without their last stop, and what
// is said for them. Those in stopOnly need the stop; those in numberOnly stand
// before a number.
var shortForms = map[string]string{
	"approx": "approximately", "appr": "approximately", "ca": "about", "e.g": "for example", "i.e": "that is", "etc": "et cetera",
	"vs": "versus", "cf": "compare", "viz": "namely", "incl": "including", "excl": "excluding", "esp": "especially",
	"max": "maximum", "min": "minimum", "temp": "temperature", "dia": "diameter", "diam": "diameter", "qty": "quantity",
	"ref": "reference", "std": "standard", "orig": "original", "assy": "assembly", "adj": "adjustable", "nom": "nominal",
	"aka": "also known as", "mr": "mister", "mrs": "missis", "dr": "doctor", "prof": "professor",
	"no": "number", "nos": "numbers", "nr": "number", "fig": "figure", "figs": "figures", "p": "page", "pp": "pages",
	"ch": "chapter", "sect": "section", "para": "paragraph", "vol": "volume", "rev": "revision", "ver": "version", "pt": "part",
	"a.m": "A M", "p.m": "P M", "a.c": "A C", "d.c": "D C", "o.d": "O D", "i.d": "I D", "pcs": "pieces", "pc": "piece",
	"yrs": "years", "yr": "year", "hrs": "hours", "hr": "hour", "mins": "minutes", "secs": "seconds", "sec": "seconds",
	"in": "inches", "ft": "feet", "lb": "pounds", "lbs": "pounds", "oz": "ounces", "deg": "degrees", "dept": "department",
}

// strokes are abbreviations with a stroke.
var strokes = map[string]string{
	"w/o": "without", "p/n": "part number", "s/n": "serial number", "c/w": "complete with", "o/s": "offside", "n/s": "nearside",
	"l/h": "left-hand", "r/h": "right-hand", "a/c": "A C", "n/a": "N A", "24/7": "twenty-four seven", "b/w": "between", "i/o": "I O",
}

// short reads the abbreviation at token i: where it ends and what is said.
func (v *voice) short(i, end int) (next int, words string) {
	w := strings.ToLower(v.at(i))
	if v.mark(i+1) == '/' && !v.kind(i-1).solid() && v.mark(i-1) != '/' {
		if next, words := v.stroke2(i, w); next > i {
			return next, words
		}
	}
	next = i + 1
	if v.mark(i+1) == '.' && v.kind(i+2) == wordToken && len(w) == 1 && len(v.at(i+2)) == 1 && v.mark(i-1) != '.' {
		// "e.g", "a.m", and initials such as "U.S.A."
		return v.dotted(i)
	}
	words, ok := shortForms[w]
	if !ok || v.mark(i-1) == '.' || v.isGlued(i-1) || v.mark(i-1) == '-' || v.mark(i+1) == '-' {
		return i, ""
	}
	stop := v.mark(i+1) == '.' && v.kind(i+2) != wordToken && v.kind(i+2) != digitToken || v.mark(i+1) == '.' && v.kind(i+2) == digitToken && numberOnly[w]
	if stopOnly[w] && !stop {
		return i, ""
	}
	if numberOnly[w] && !v.beforeNumber(i+1) {
		return i, ""
	}
	if w == "in" || w == "p" && !stop {
		return i, "" // an inch needs its number, which is read there
	}
	if stop && !v.endsSentence(i+1) {
		next++
	}
	if v.capitalAt(i) {
		words = matchCase("X", words)
	}
	return next, words
}

// beforeNumber says whether a number or a code follows token i, an
// abbreviation's stop left out.
func (v *voice) beforeNumber(i int) bool {
	if v.mark(i) == '.' {
		i++
	}
	i = v.over(i)
	if v.mark(i) == '#' || v.kind(i) == digitToken {
		return true
	}
	if v.kind(i) != wordToken {
		return false
	}
	end, _, figures := v.piece(i)
	return figures && end > i || v.number(i).class != noNumber && v.number(i).class != pointWord || v.isLabelLetter(i)
}

// isLabelLetter holds for a capital standing alone: "fig. B".
func (v *voice) isLabelLetter(i int) bool {
	w := v.at(i)
	return len(w) == 1 && w[0] >= 'A' && w[0] <= 'Z' && w != "I" && w != "A"
}

// endsSentence says whether the stop at token i ends a sentence too.
func (v *voice) endsSentence(i int) bool {
	next := v.over(i + 1)
	if v.kind(next) == noToken {
		return true
	}
	if next == i+1 {
		return v.mark(next) == ')' && v.kind(v.over(next+1)) == noToken
	}
	start := i - 1
	for start > 0 && v.kind(start-1).solid() || v.mark(start-1) == '.' {
		start--
	}
	_, _, ends := sentencer{v.text}.mark(max(0, int(v.tokens[start].start)-1), int(v.tokens[i].start))
	return ends
}

// dotted reads letters with stops between.
func (v *voice) dotted(i int) (next int, words string) {
	at := i
	spelled := ""
	for len(v.at(at)) == 1 && v.kind(at) == wordToken && len(spelled) < longestCode {
		spelled += v.at(at)
		at++
		if v.mark(at) != '.' {
			break
		}
		if v.kind(at+1) != wordToken || len(v.at(at+1)) != 1 {
			at++
			break
		}
		at++
	}
	if v.isGlued(at) {
		return i, ""
	}
	if v.mark(at-1) == '.' && v.endsSentence(at-1) {
		at--
	}
	key := strings.ToLower(spelled[:1] + "." + spelled[1:])
	words, ok := shortForms[key]
	if !ok || len(spelled) != 2 {
		return at, letters(strings.ToUpper(spelled))
	}
	if v.capitalAt(i) {
		words = matchCase("X", words)
	}
	return at, words
}

// stroke2 reads "w/o" and the like, and "w/" before a word.
func (v *voice) stroke2(i int, w string) (next int, words string) {
	key := w + "/" + strings.ToLower(v.at(i+2))
	if words, ok := strokes[key]; ok && !v.isGlued(i+3) {
		return i + 3, words
	}
	if w == "w" {
		return i + 2, "with"
	}
	return i, ""
}

// signs are what is said for marks. They stand as words of their own.
var signs = map[rune]string{
	'&': "and", '=': "equals", '×': "times", '÷': "divided by", '<': "less than", '>': "more than", '≤': "at most", '≥': "at least",
	'≈': "about", '±': "plus or minus", '°': "degrees", 'º': "degrees", '→': "to", '⇒': "to", '§': "section", '⌀': "diameter",
	'%': "per cent", '€': "euros", '£': "pounds", '$': "dollars", '≠': "is not", '∞': "infinity", '²': "squared", '³': "cubed",
}

// dropped are marks that nobody says.
const dropped = "™®©\u00ad\u200b\ufeff"

// pluses says a run of plus signs that touches a word or number, and copies any
// other. One by one, each pass of Spoken would say the next of them.
func (v *voice) pluses(i, end int) int {
	stop := i
	for stop < end && v.mark(stop) == '+' {
		stop++
	}
	if !v.kind(i-1).solid() && !v.kind(v.over(stop)).solid() {
		v.write(v.slice(i, stop))
		return stop
	}
	for range stop - i {
		v.say("plus")
		v.need = true
	}
	v.need = v.kind(stop) != spaceToken
	return stop
}

// sign writes a mark: as it stands, or as a word.
func (v *voice) sign(i, end int) int {
	r := v.mark(i)
	next := v.over(i + 1)
	switch {
	case strings.ContainsRune(dropped, r):
		return i + 1
	case r == '@':
		v.say("at")
	case r == '+':
		return v.pluses(i, end)
	case r == '~' && (v.kind(i+1) == digitToken || v.startsNumber(i+1)):
		v.say("about")
	case (r == '>' || r == '<') && v.mark(i+1) == '=':
		v.say(map[rune]string{'>': "at least", '<': "at most"}[r])
		v.need = v.kind(i+2) != spaceToken
		return i + 2
	case r == '#' && next == i+1 && v.kind(next) == digitToken:
		v.say("number")
	case r == '/' && v.kind(i-1) == spaceToken && v.kind(i+1) == spaceToken:
		return i + 2
	case r == '/' && v.kind(i-1).solid() && v.kind(i+1).solid():
		v.write(" ")
		return i + 1
	case (r == '²' || r == '³') && v.kind(i-1) != wordToken:
		v.write(v.at(i))
		return i + 1
	default:
		words, ok := signs[r]
		if !ok {
			v.write(v.at(i))
			return i + 1
		}
		v.say(words)
	}
	v.need = v.kind(i+1) != spaceToken
	return i + 1
}
