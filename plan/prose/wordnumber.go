package prose

import "strings"

// wordClass is the part a word plays in a number.
type wordClass uint8

const (
	noNumber wordClass = iota
	zeroWord           // "zero", "nought"
	ohWord             // "oh", a zero among other digits only
	oneWord            // 1 to 9
	teenWord           // 10 to 19
	tensWord           // 20 to 90
	hundredWord
	scaleWord // thousand, million, billion
	dozenWord
	pointWord
)

// digit holds for a word that may be one of a row of digits.
func (c wordClass) digit() bool { return zeroWord <= c && c <= oneWord }

// scale holds for a word that multiplies what stands before it.
func (c wordClass) scale() bool { return hundredWord <= c && c <= scaleWord }

type numberWord struct {
	class wordClass
	value float64
}

var numberWords = map[string]numberWord{
	"zero": {zeroWord, 0}, "nought": {zeroWord, 0}, "naught": {zeroWord, 0}, "oh": {ohWord, 0}, "o": {ohWord, 0},
	"one": {oneWord, 1}, "two": {oneWord, 2}, "three": {oneWord, 3}, "four": {oneWord, 4}, "five": {oneWord, 5},
	"six": {oneWord, 6}, "seven": {oneWord, 7}, "eight": {oneWord, 8}, "nine": {oneWord, 9},
	"ten": {teenWord, 10}, "eleven": {teenWord, 11}, "twelve": {teenWord, 12}, "thirteen": {teenWord, 13},
	"fourteen": {teenWord, 14}, "fifteen": {teenWord, 15}, "sixteen": {teenWord, 16}, "seventeen": {teenWord, 17},
	"eighteen": {teenWord, 18}, "nineteen": {teenWord, 19},
	"twenty": {tensWord, 20}, "thirty": {tensWord, 30}, "forty": {tensWord, 40}, "fourty": {tensWord, 40},
	"fifty": {tensWord, 50}, "sixty": {tensWord, 60}, "seventy": {tensWord, 70}, "eighty": {tensWord, 80},
	"ninety": {tensWord, 90}, "hundred": {hundredWord, 100}, "thousand": {scaleWord, 1e3},
	"million": {scaleWord, 1e6}, "billion": {scaleWord, 1e9}, "trillion": {scaleWord, 1e12},
	"dozen": {dozenWord, 12}, "point": {pointWord, 0},
}

// fractionWords are denominators; plural says that the word has its s.
var fractionWords = map[string]int{
	"half": 2, "halves": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "fourth": 4, "fourths": 4,
	"fifth": 5, "fifths": 5, "sixth": 6, "sixths": 6, "seventh": 7, "sevenths": 7, "eighth": 8, "eighths": 8,
	"eights": 8, "ninth": 9, "ninths": 9, "tenth": 10, "tenths": 10, "twelfth": 12, "twelfths": 12, "sixteenth": 16,
	"sixteenths": 16, "twentieth": 20, "twentieths": 20, "thirtieth": 30, "fortieth": 40, "fiftieth": 50, "sixtieth": 60, "eightieth": 80, "hundredth": 100, "hundredths": 100,
	"thousandth": 1000, "thousandths": 1000,
}

func (s *scanner) number(i int) numberWord { return numberWords[s.word(i)] }

// words reads a number in words at token i: "two hundred and forty", "eleven
// point six four", "nought point seven", "point two", "three eighths", "one and
// a half", "a quarter", "half", "minus ten", "two two three one", "a couple".
// It leaves a lone "one" to its caller, and "a" alone is no number.
func (s *scanner) words(i int) (numeral, bool) {
	sign := rune(0)
	start := i
	if w := s.word(i); w == "minus" || w == "negative" {
		if next := s.link(i + 1); next > i+1 {
			sign, i = '-', next
		}
	}
	n, ok := s.positive(i)
	if !ok && sign != 0 {
		if n, ok = s.digits(i); ok { // "minus 5"
			n.start = start
			n.signed(sign)
		}
		return n, ok
	}
	if !ok {
		return n, false
	}
	n.start, n.inWords = start, true
	if sign != 0 {
		n.signed(sign)
	}
	return n, true
}

func (s *scanner) positive(i int) (numeral, bool) {
	n := numeral{start: i, end: i}
	w := s.word(i)
	switch w {
	case "a", "an":
		return s.articled(i)
	case "half":
		n.setFraction(1, 2)
		n.end = i + 1
		next := s.link(i + 1)
		if s.word(next) == "a" {
			next = s.link(next + 1)
		}
		if s.word(next) == "dozen" {
			n.value, n.bottom, n.end = 6, 0, next+1
		}
		return n, true
	case "quarter":
		n.setFraction(1, 4)
		n.end = i + 1
		return n, true
	}
	first := numberWords[w]
	lone := first.class.scale() && (i == 0 || s.kind(i-1) == markToken || s.mark(i-2) != 0 || s.rounded(i))
	if first.class == noNumber || first.class == ohWord && s.word(s.link(i+1)) != "point" && !s.codeAt(i) ||
		first.class.scale() && !lone || first.class == dozenWord {
		return n, false
	}
	c := count{s: s, start: i, end: i}
	if lone {
		c.group = 1 // "thousand grit" at the head of a sentence
	}
	c.whole(i)
	n.value, n.digitRun, n.end = c.total+c.group, c.run > 2, c.end
	n.yearly = c.yearly && c.end > i
	if n.digitRun {
		n.whole = c.digits
		if d := n; c.decimals(&d) {
			if _, ok := s.measures(s.link(d.end)); ok {
				d.digitRun = false // "four three three point nine two megahertz"
				return d, true
			}
		}
		return n, true
	}
	if c.decimals(&n) {
		s.scaled(&n)
		return n, true
	}
	if c.end == i {
		return n, false // "point" and no digit
	}
	s.fractionWord(&n)
	return n, true
}

// codeAt says whether "oh" at token i begins digits: "oh eight oh five".
func (s *scanner) codeAt(i int) bool {
	for range 2 {
		next := s.link(i + 1)
		if next == i+1 || !s.number(next).class.digit() {
			return false
		}
		i = next
	}
	return true
}

// articled reads "a hundred and ten", "a dozen", "a couple of", "a quarter",
// "a third of", "a point three".
func (s *scanner) articled(i int) (numeral, bool) {
	n := numeral{start: i}
	next := s.link(i + 1)
	if next == i+1 {
		return n, false
	}
	switch w := s.word(next); {
	case w == "couple":
		n.value, n.end = 2, next+1
		if of := s.link(next + 1); s.word(of) == "of" {
			n.end = of + 1
			s.hundreds(&n)
		}
		return n, true
	case w == "half", w == "quarter", w == "point":
		n, ok := s.positive(next)
		n.start = i
		return n, ok
	case w == "dozen":
		n.value, n.end = 12, next+1
		return n, true
	case numberWords[w].class.scale():
		c := count{s: s, start: i, group: 1, end: next}
		c.whole(next)
		n.value, n.end = c.total+c.group, c.end
		c.decimals(&n)
		return n, true
	}
	if fullness[s.word(next)] && s.kind(next+1) == spaceToken && s.denominator(next+2) > 0 {
		next += 2 // "a full eighth"
	}
	if bottom := s.denominator(next); bottom > 2 && !strings.HasSuffix(s.word(s.denominatorEnd(next)-1), "s") {
		// "a third" may be an ordinal: "a third screw".
		end := s.denominatorEnd(next)
		after := s.word(s.link(end))
		if after == "" || functionWords[after] || compares(after) || bottom == 8 || bottom >= 10 {
			n.setFraction(1, bottom)
			n.end = end
			return n, true
		}
	}
	return n, false
}

// compares holds for what may be more or less by a part: "a fifth slower", "a third less".
func compares(w string) bool {
	switch w {
	case "more", "less", "fewer", "full", "empty", "off", "down", "gone", "cheaper", "dearer", "slower", "faster", "longer", "shorter", "bigger", "smaller", "larger", "lighter", "heavier", "thinner", "thicker", "wider", "narrower", "weaker", "stronger", "quicker", "higher", "lower":
		return true
	}
	return false
}

// hundreds goes on behind "a couple of" with "hundred" and "dozen".
func (s *scanner) hundreds(n *numeral) {
	next := s.link(n.end)
	if w := s.number(next); next > n.end && (w.class == hundredWord || w.class == dozenWord) {
		n.value *= w.value
		n.end = next + 1
	}
}

// rounded says whether "hundred" at token i stands behind an article and a word
// that says how full it is, "a good hundred", "a nominal hundred and ten", or
// behind a word that is one itself: "every hundred hours".
func (s *scanner) rounded(i int) bool {
	before := s.back(i)
	switch w := s.word(before); {
	case w == "another", w == "every", w == "per":
		return true
	case fullness[w], w == "nominal", w == "round", w == "whole", w == "clear", w == "cool", w == "straight":
		return s.isArticle(s.back(before)) || s.word(s.back(before)) == "the"
	}
	return false
}

// count adds up the words of a whole number.
type count struct {
	s            *scanner
	start        int // the first token of the number
	total, group float64
	end          int    // behind the last word taken
	digits       string // the number so far if it was given digit by digit
	run          int    // how many single digits it was given by
	yearly       bool
}

// whole takes words from token i on as long as they continue one number.
func (c *count) whole(i int) {
	last := numberWord{}
	if c.group == 1 {
		last = numberWord{oneWord, 1}
	}
	for at := i; ; {
		w := c.s.number(at)
		from := at
		if c.s.word(at) == "and" && last.class.scale() {
			from = c.s.link(at + 1)
			w = c.s.number(from)
			if _, end := c.s.underHundred(from); end == from || c.s.denominator(c.s.link(end)) > 0 || c.s.number(c.s.link(end)).class == hundredWord {
				return // "a hundred and a half", "between a hundred and four hundred"
			}
		}
		if c.s.denominator(at) > 0 || !c.take(w, last) {
			return
		}
		last, c.end = w, from+1
		at = c.s.link(c.end)
		if at == c.end {
			return
		}
	}
}

// take adds one word, or says that it begins another number.
func (c *count) take(w, last numberWord) bool {
	switch w.class {
	case zeroWord, ohWord, oneWord:
		return c.single(w, last)
	case teenWord, tensWord:
		switch {
		case last.class == oneWord && c.total > 0 && c.group < 10:
			c.group = c.group*100 + w.value // "three thousand four fifty"
			return true
		case last.class == noNumber || last.class.scale():
			c.group += w.value
			return true
		case c.total == 0 && c.group >= 16 && c.group <= 20 && c.run == 0 && c.group != 0 && (last.class == teenWord || last.class == tensWord):
			c.group = c.group*100 + w.value // "twenty fourteen", "nineteen ninety"
			c.yearly = true
			return true
		case last.class == oneWord && c.total == 0 && c.run == 1 && c.group < 10,
			c.total == 0 && c.run == 0 && c.group >= 10 && c.group < 100 && (last.class == teenWord || last.class == tensWord || last.class == oneWord):
			return c.bundle(w)
		}
		return false
	case hundredWord:
		if c.group < 1 || c.group > 99 || c.run > 1 {
			return false
		}
		c.group *= 100
		c.run = 0
		return true
	case scaleWord:
		if c.group == 0 || c.run > 1 {
			return false
		}
		c.total += c.group * w.value
		c.group, c.run = 0, 0
		return true
	case dozenWord:
		if c.total > 0 || c.group == 0 {
			return false
		}
		c.group *= 12
		return true
	}
	return false
}

// single adds a digit: after "twenty", after "hundred", or as one of a run.
func (c *count) single(w, last numberWord) bool {
	switch {
	case last.class == noNumber && c.group == 0:
		c.group, c.run = w.value, 1
		c.digits = unitDigit(w)
		return true
	case last.class.scale() || last.class == tensWord && w.class == oneWord:
		c.group += w.value
		return true
	case last.class == tensWord && last.value == 20 && w.class == ohWord && c.group == 20 && c.total == 0:
		c.group, c.yearly = 2000, true // "twenty oh six"
		return true
	case last.class == teenWord && w.class == ohWord && c.total == 0 && c.group == last.value:
		c.group *= 100 // "nineteen oh five"
		c.yearly = true
		return true
	case last.class == ohWord && c.group >= 1000 && c.run == 0:
		c.group += w.value
		return true
	case c.run > 0 && c.total == 0 && last.class.digit():
		return c.runOn(w)
	}
	return false
}

// runOn continues a run of single digits if it is one: three or more digits,
// or two with a zero in front. "two one" alone are two numbers.
func (c *count) runOn(w numberWord) bool {
	const longest = 40 // digits; no part number has more
	if c.run == longest {
		return false
	}
	if third := c.s.link(c.s.link(c.end) + 1); c.run == 1 && !c.s.number(third).class.digit() {
		return false
	}
	c.run++
	c.group = c.group*10 + w.value
	c.digits += unitDigit(w)
	return true
}

func unitDigit(w numberWord) string { return string(rune('0' + int(w.value))) }

// bundle reads "two thirty" as 230 and "twenty eight fifty" as 2850 where a unit
// follows, or nothing that they could count; "two thirteen millimetre nuts" are
// two, and "M six ten millimetre hex" a thread and a tool.
func (c *count) bundle(w numberWord) bool {
	at := c.s.link(c.end) // the second word
	after := c.s.link(at + 1)
	if ones := c.s.number(after); w.class == tensWord && after > at && ones.class == oneWord {
		at, after = after, c.s.link(after+1)
	}
	before := c.s.back(c.start)
	bare := after == at+1 || c.s.noun(at+1) == "" && c.s.kind(after) != digitToken && c.s.number(after).class == noNumber
	if w.class == tensWord && c.group == 1 && !determiners[c.s.word(before)] && !pointing[c.s.word(before)] && c.s.word(before) != "m" {
		c.group, c.run = 100+w.value, 0 // "one twenty cycles"; "each one twenty cycles" is two
		return true
	}
	if bare && c.s.word(before) != "m" && c.group != 10 && (c.group < 10 || w.class == tensWord) {
		c.group, c.run = c.group*100+w.value, 0 // "take it out at one twenty"
		return true
	}
	end, ok := c.s.measures(after)
	if c.vague(w) || c.s.mark(at+1) == '-' && c.s.mark(at-1) != '-' {
		return false // "ten twelve bar", the one or the other; "two twelve-volt batteries"
	}
	if !ok || c.s.word(before) == "m" || !c.s.isArticle(before) && (c.s.isCounted(end) || w.class == teenWord && c.s.isTool(after)) {
		return false
	}
	c.group = c.group*100 + w.value
	c.run = 0
	return true
}

// vague says whether a number behind another is the next one that somebody would
// name: "ten twelve", "twelve fifteen", "forty fifty".
func (c *count) vague(w numberWord) bool {
	switch gap := w.value - c.group; {
	case w.class == teenWord:
		return c.group >= 10 && gap > 0 && gap <= 5
	default:
		return gap == 10 && c.group >= 20
	}
}

// measures says whether a unit that stands behind such numbers begins at i, "two
// twenty ohms", and where it ends. A time or an order of things is told
// otherwise.
func (s *scanner) measures(i int) (end int, ok bool) {
	w := s.word(i)
	switch w {
	case "v", "mains", "ac", "dc", "quid", "bucks", "grit", "octane", "revs", "cca", "teeth", "clicks", "pints", "gallons", "thread", "pitch", "supply", "fan", "ml", "mm", "cc", "kg", "db", "hz", "cm":
		return i + 1, true
	case "second", "a", "in", "at", "to", "or", "and":
		return i, false
	}
	if len(w) < 3 {
		return i, false
	}
	m, ok := s.unitAt(i, &numeral{start: i, end: i, value: 2, inWords: true})
	return m.end, ok
}

// isTool says whether the unit at i is that of spanners and bolts: "six ten
// millimetre" is a thread and a tool more often than 610.
func (s *scanner) isTool(i int) bool {
	switch s.word(i) {
	case "mil", "mill", "millimetre", "millimeter":
		return true
	}
	return false
}

func (s *scanner) isArticle(i int) bool {
	w := s.word(i)
	return w == "a" || w == "an"
}
