package captions

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"fixslate/plan/trade"
)

// Where a line may be parted, and how gladly. The guides agree on most of it
// (BBC Subtitle Guidelines §3.4 and §3.9; Netflix timed text guide, line
// treatment; DCMP Captioning Key, "Text"): at punctuation; before a
// conjunction or a preposition; not after an article, a preposition, a
// conjunction, a pronoun or an auxiliary, nor inside a name. Never between a
// number and its unit or inside a part number (common practice, no source).
//
// Costs are points of the same kind as those in cost.go; only their order has
// a source.
const (
	partSentence    = 0
	partClause      = 4  // after ; : or a dash
	partComma       = 8  // after a comma
	partConjunction = 18 // before "and"
	partPreposition = 26 // before "with"
	partVerb        = 37 // "the pump / is"
	partPlain       = 40
	partQualifier   = 55  // "the front / panel"
	partParticle    = 60  // "turn / off", "in / there"
	partName        = 80  // "Nora / Vik", "step / 3", "the driver's / seat", "two / pins", "turn / it"
	partLeaning     = 110 // "the / pump"
	partNever       = 1 << 20
)

var (
	conjunctions = listed(`and but or nor so because if when while until unless
		though although since whereas then than that which who where`)
	prepositions = listed(`at by for from with without into onto of over under
		through across against behind before after between during inside
		outside towards toward near along around beside below above on in to
		about as past via per till except`)
	particles = listed(`up off out down away back apart together`)
	// Words that lean on what follows them: articles and the like, possessives,
	// prepositions (above), subject pronouns, auxiliaries, negations.
	leaning = listed(`a an the this these those each every some any no its his
		her their our your my another both which whose what
		i you he she it we they there
		am is are was were be been being have has had do does did can could
		will would shall should may might must not never don't doesn't didn't
		can't won't isn't aren't wasn't it's that's you're we're they're i'm
		you'll we'll i'll you've we've i've let's very too more most less
		mr mrs ms dr prof st no. nos. fig. mr. mrs. ms. dr. prof. st.`)
	// Of those: what a noun follows, what a verb is made with, and what stands
	// after a verb as its object.
	articles = listed(`a an the this these those each every some any no its his
		her their our your my another`)
	auxiliaries = listed(`am is are was were can could will
		would shall should may might must isn't wasn't won't can't`)
	be      = listed(`am is are was were be been`)
	objects = listed(`it them him me us you`)
	// Nouns with a number of their own. "Lower case noun and digit" is the form
	// of the DCMP Captioning Key, "Numbers".
	numbered = listed(`step steps part page pin pins fuse fuses size grade class
		type figure table number line lines point no nos cylinder terminal
		connector relay position stage gear bank`)
	numberWords = listed(`one two three four five six seven eight nine ten eleven
		twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen
		twenty thirty forty fifty sixty seventy eighty ninety hundred thousand
		million half quarter zero`)
)

func listed(text string) map[string]bool {
	set := make(map[string]bool)
	for _, w := range strings.Fields(text) {
		set[w] = true
	}
	return set
}

// cost fills in what parting after each word costs, and where sentences end.
func (w *words) cost() {
	open := 0 // brackets
	for i := range w.list {
		a := &w.list[i]
		if i+1 == len(w.list) {
			a.stop = true
			break
		}
		b := &w.list[i+1]
		end := ending(a.text)
		a.stop = a.stop || end == '.' && !shortened(a.text, b.text)
		a.part = w.partAfter(i, end)
		open = max(0, open+strings.Count(a.text, "(")-strings.Count(a.text, ")"))
		switch {
		case a.stop || a.edge != flow:
			open = 0
		case open > 0:
			a.part = max(a.part, partName) // "(MB-4417, two-pin)"
		}
	}
}

// partAfter is what parting after word i costs; end is how the word ends.
func (w *words) partAfter(i int, end rune) int32 {
	a, b := &w.list[i], &w.list[i+1]
	switch {
	case a.cut:
		return partPlain // the piece fills its line anyway
	case a.edge != flow, a.stop:
		return partSentence
	case glued(a.text, b.text):
		return partNever
	case end == ';':
		return partClause
	case end == ',':
		return partComma
	}
	now, next, then := fold(a.text), fold(b.text), ""
	if i+2 < len(w.list) && ending(b.text) == 0 {
		then = fold(w.list[i+2].text)
	}
	switch {
	case numbered[now] && startsDigit(b.text):
		return partName
	case adverb(now, next):
		// Nothing leans: "stays on / while", "as it was / with".
	case now == "there" && !auxiliaries[next]:
		// A place, and no subject: "up there / belong".
	case be[now] && prepositions[next]:
		return partPlain
	case objects[now] && (prepositions[next] || conjunctions[next]):
		// An object, and no subject: "tells you / about".
	case leaning[now], conjunctions[now], prepositions[now] && !particles[now]:
		return partLeaning
	case isName(a.text) && isName(b.text), owns(now), counts(now) && content(next), objects[next] && content(now) && !auxiliaries[then]:
		return partName
	}
	switch {
	case conjunctions[next]:
		return partConjunction
	case particles[next], next == "there", next == "here", prepositions[next] && (then == "" || adverb(next, then)):
		return partParticle
	case prepositions[next]:
		return partPreposition
	case auxiliaries[next]:
		return partVerb
	case content(next) && ending(b.text) == 0 && i > 0 && w.list[i-1].edge == flow && ending(w.list[i-1].text) == 0 && articles[fold(w.list[i-1].text)]:
		return partQualifier
	}
	return partPlain
}

// relative are conjunctions that may stand behind a preposition.
var relative = listed(`that who which where whereas`)

// adverb holds for a word that leans on nothing here: before a conjunction or
// another preposition no object of it follows, nor the rest of a verb.
func adverb(word, next string) bool {
	switch word {
	case "in", "on", "over", "through", "under", "by":
		return conjunctions[next] && !relative[next] || prepositions[next] && next != "to"
	}
	return be[word] && conjunctions[next]
}

// owns holds for a possessive: "the driver's". What is short for "is" leans on
// what follows all the same.
func owns(word string) bool { return strings.HasSuffix(word, "'s") || strings.HasSuffix(word, "s'") }

// counts holds for a number of things.
func counts(word string) bool { return numberWords[word] || isNumber(word) }

// content holds for a word that means something by itself.
func content(word string) bool {
	return !leaning[word] && !conjunctions[word] && !prepositions[word] && !particles[word] && !objects[word]
}

// ending classes how a word ends: '.' for a sentence's end, ';' for a clause's,
// ',' for a comma, 0 for none. Closing quotes and brackets are looked through.
func ending(text string) rune {
	text = strings.TrimRight(text, "\"'”’»)]}")
	r, _ := utf8.DecodeLastRuneInString(text)
	switch r {
	case '.', '!', '?', '…', '。', '！', '？':
		return '.'
	case ';', ':', '–', '—', '；', '：':
		return ';'
	case ',', '、', '，':
		return ','
	}
	return 0
}

// shortened holds where a full stop belongs to an abbreviation: the next word
// goes on in lower case or with a number, or the word is a title.
func shortened(text, next string) bool {
	if !strings.HasSuffix(text, ".") {
		return false
	}
	if leaning[strings.ToLower(text)] {
		return true
	}
	r, _ := utf8.DecodeRuneInString(next)
	return unicode.IsLower(r) && strings.Count(text, ".") > 1
}

// glued holds for two words that are never parted: a number and its unit, the
// parts of one number, the parts of a part number.
func glued(a, b string) bool {
	left, right := strings.TrimLeft(a, "([\"'“‘~≈"), strings.TrimRight(b, ".,;:!?)]\"'”’…")
	switch {
	case left == "" || right == "":
		return false
	case isSign(left) && startsDigit(right), endsDigit(left) && isSign(right):
		return true
	case left == "AWG" && startsDigit(right), isCurrency(left) && startsDigit(right):
		return true
	case isNumber(left) && (isUnit(right) || isNumber(right) && !numberWords[fold(left)] && !numberWords[fold(right)]):
		return true // "12 V", "1 500", "1 1/2"
	case isCode(left) && isCode(right) && (hasDigit(left) || hasDigit(right)):
		return true
	}
	return false
}

// isNumber holds for a number in digits ("3", "11.6", "10..20", "1/2", "−40")
// or one word of a number in words ("eleven").
func isNumber(s string) bool {
	if numberWords[fold(s)] {
		return true
	}
	if hyphen := strings.LastIndexByte(s, '-'); hyphen >= 0 && numberWords[fold(s[hyphen+1:])] {
		return true // "twenty-five"
	}
	digit := false
	for _, r := range s {
		switch {
		case unicode.IsDigit(r), strings.ContainsRune("½¼¾⅓⅔⅛⅜⅝⅞", r):
			digit = true
		case !strings.ContainsRune(".,/+-−–~≈±×^:", r):
			return false
		}
	}
	return digit && ending(s) == 0
}

// isUnit holds for a unit's symbol or name, "%", "°C" and the like included.
func isUnit(s string) bool {
	_, ok := trade.LookupUnit(s)
	return ok
}

// isSign holds for a sign that stands alone between or before numbers.
func isSign(s string) bool {
	switch s {
	case "±", "×", "x", "+", "−", "+/-", "≤", "≥", "<", ">", "=", "≈", "/", "..", "–":
		return true
	}
	return false
}

func isCurrency(s string) bool { return s == "€" || s == "£" || s == "$" }

// isCode holds for one part of a part number: digits, or capitals and digits,
// with the signs that part numbers have.
func isCode(s string) bool {
	letters := 0
	for _, r := range s {
		switch {
		case r >= 'A' && r <= 'Z':
			letters++
		case r < '0' && r != '-' && r != '.' && r != '/', r > '9':
			return false
		}
	}
	return hasDigit(s) || letters > 0 && letters <= 3 && letters == len(s)
}

// isName holds for a word with a capital inside a sentence, "I" apart.
func isName(s string) bool {
	r, size := utf8.DecodeRuneInString(s)
	if !unicode.IsUpper(r) || size == len(s) {
		return false
	}
	next, _ := utf8.DecodeRuneInString(s[size:])
	return unicode.IsLower(next)
}

func hasDigit(s string) bool { return strings.ContainsAny(s, "0123456789") }

func startsDigit(s string) bool {
	s = strings.TrimLeft(s, "(+-−~≈±")
	return s != "" && isDigit(s[0])
}

func endsDigit(s string) bool { return s != "" && isDigit(s[len(s)-1]) }

// fold brings a word to the form in the lists: lower case, no punctuation at
// its ends.
func fold(s string) string {
	trimmed := strings.Trim(s, ".,;:!?\"'“”‘’()[]…")
	for i := 0; i < len(trimmed); i++ {
		if c := trimmed[i]; c >= 'A' && c <= 'Z' || c >= utf8.RuneSelf {
			return strings.ToLower(strings.ReplaceAll(trimmed, "’", "'"))
		}
	}
	return trimmed
}

// release lets go of words that are never parted but don't fit a line
// together: they are then parted where it costs least to count.
func (w *words) release(width int) {
	for i := 0; i < len(w.list); {
		total, j := int(w.list[i].width), i
		for j+1 < len(w.list) && w.list[j].part == partNever {
			j++
			total += 1 + int(w.list[j].width)
		}
		if total > width {
			for ; i < j; i++ {
				w.list[i].part = partLeaning
			}
		}
		i = j + 1
	}
}
