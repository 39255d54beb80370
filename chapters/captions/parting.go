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

// cost fills in what parting after each word costs, and where sentences end.
func (w *words) cost() {
	looks := make([]look, len(w.list))
	for i := range w.list {
		looks[i] = lookAt(w.list[i].text)
	}
	open := 0 // brackets
	for i := range w.list {
		a := &w.list[i]
		if i+1 == len(w.list) {
			a.stop = true
			break
		}
		b := &w.list[i+1]
		a.stop = a.stop || looks[i].end == '.' && !shortened(a.text, b.text)
		a.part = w.partAfter(i, looks)
		open = max(0, open+strings.Count(a.text, "(")-strings.Count(a.text, ")"))
		switch {
		case a.stop || a.edge != flow:
			open = 0
		case open > 0:
			a.part = max(a.part, partName) // "(MB-4417, two-pin)"
		}
	}
}

// partAfter is what parting after word i costs; all words have been looked at.
func (w *words) partAfter(i int, looks []look) int32 {
	a, b := &w.list[i], &w.list[i+1]
	now, next := looks[i], looks[i+1]
	switch {
	case a.cut:
		return partPlain // the piece fills its line anyway
	case a.edge != flow, a.stop:
		return partSentence
	case (now.counted || next.counted) && glued(a.text, b.text):
		return partNever
	case now.end == ';':
		return partClause
	case now.end == ',':
		return partComma
	}
	var then look
	if i+2 < len(w.list) && next.end == 0 {
		then = looks[i+2]
	}
	switch {
	case now.in(numbered) && startsDigit(b.text):
		return partName
	case now.adverb(next):
		// Nothing leans: "stays on / while", "as it was / with".
	case now.folded == "there" && !next.in(auxiliary):
		// A place, and no subject: "up there / belong".
	case now.in(being) && next.in(preposition):
		return partPlain
	case now.in(pronoun) && next.in(preposition|conjunction):
		// An object, and no subject: "tells you / about".
	case now.in(leaning | conjunction), now.in(preposition) && !now.in(particle):
		return partLeaning
	case isName(a.text) && isName(b.text), now.owns(), now.counts() && next.content(), next.in(pronoun) && now.content() && !then.in(auxiliary):
		return partName
	}
	switch {
	case next.in(conjunction):
		return partConjunction
	case next.in(particle), next.folded == "there", next.folded == "here", next.in(preposition) && (then.folded == "" || next.adverb(then)):
		return partParticle
	case next.in(preposition):
		return partPreposition
	case next.in(auxiliary):
		return partVerb
	case next.content() && next.end == 0 && i > 0 && w.list[i-1].edge == flow && looks[i-1].end == 0 && looks[i-1].in(article):
		return partQualifier
	}
	return partPlain
}

// ending classes how a word ends: '.' for a sentence's end, ';' for a clause's,
// ',' for a comma, 0 for none. Closing quotes and brackets are looked through.
func ending(text string) rune {
	if text != "" && isLetter(text[len(text)-1]) {
		return 0 // most words
	}
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
	if listed[strings.ToLower(text)].has(leaning) {
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
	case isNumber(left) && (isUnit(right) || isNumber(right) && !isNumberWord(left) && !isNumberWord(right)):
		return true // "12 V", "1 500", "1 1/2"
	case isCode(left) && isCode(right) && (hasDigit(left) || hasDigit(right)):
		return true
	}
	return false
}

// isNumber holds for a number in digits ("3", "11.6", "10..20", "1/2", "−40")
// or one word of a number in words ("eleven").
func isNumber(s string) bool {
	if isNumberWord(s) {
		return true
	}
	if hyphen := strings.LastIndexByte(s, '-'); hyphen >= 0 && isNumberWord(s[hyphen+1:]) {
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
