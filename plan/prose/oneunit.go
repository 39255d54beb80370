package prose

import (
	"slices"

	"fixslate/plan/trade"
)

// oneOf reads an article as one: "an hour", "a litre or two", "between an hour
// and ninety minutes".
func (s *scanner) oneOf(i int) (expression, bool) {
	a, ok := s.oneUnit(i)
	if !ok {
		return expression{}, false
	}
	m := a.of
	e := expression{kind: Quantity, start: i, end: a.until, amounts: []amount{a}, inWords: true}
	if a.value > 1 {
		return e, true // "an inch and a half"
	}
	if s.compound(&e) {
		return e, true // "an hour and ten minutes"
	}
	if s.addSmaller(&e); e.values != nil {
		return e, true // "a metre eighty"
	}
	if s.isRate(i) {
		return expression{}, false
	}
	if s.joined(&e) && e.kind == Range {
		return e, true
	}
	within := (s.word(s.back(i)) == "within" || lengthWords[s.word(s.over(m.end))]) && m.unit != "s" && m.unit != "min" && !m.money
	if !within && !articleUnits[m.unit] && !(m.unit == "lb" || m.money) || !within && !articleUnits[m.unit] && !s.isEach(m.end) {
		return expression{}, false
	}
	return expression{kind: Quantity, start: i, end: m.end, amounts: []amount{a}, inWords: true}, true
}

// oneUnit reads "a volt" and "an inch and a half" at the article.
func (s *scanner) oneUnit(i int) (amount, bool) {
	if !s.isArticle(i) || s.kind(i+1) != spaceToken || !articleNouns[s.word(i+2)] {
		return amount{}, false
	}
	n := numeral{start: i, end: i + 1, value: 1, inWords: true}
	m, ok := s.unitAt(i+2, &n)
	if !ok || !m.spelled && !m.money && s.word(i+2) != "mil" {
		return amount{}, false
	}
	a := amount{numeral: n, of: m, hasUnit: true, until: m.end}
	s.andHalf(&a)
	return a, true
}

// bareNouns are units said without an article before "and a half".
var bareNouns = []string{"inch", "foot", "metre", "meter", "hour", "mil", "litre", "liter", "mile", "kilo", "turn", "pint", "volt", "bar", "tonne", "thou"}

// bareUnit reads "inch and a half" without its article.
func (s *scanner) bareUnit(i int) (expression, bool) {
	if s.word(i+2) != "and" || !slices.Contains(bareNouns, s.word(i)) || s.kind(i-1) == markToken {
		return expression{}, false
	}
	if before := s.back(i); s.number(before).class != noNumber || s.denominator(before) > 0 || determiners[s.word(before)] || s.isArticle(before) {
		return expression{}, false
	}
	n := numeral{start: i, end: i, value: 1, inWords: true}
	m, ok := s.unitAt(i, &n)
	if !ok || !m.spelled && s.word(i) != "mil" || m.money || m.unit == "s" {
		return expression{}, false
	}
	a := amount{numeral: n, of: m, hasUnit: true, until: m.end}
	s.andHalf(&a)
	return expression{kind: Quantity, start: i, end: a.until, amounts: []amount{a}, inWords: true}, a.value > 1
}

// articleUnits are the units of which "a" is one; "a second", "a bar" and "a
// turn" are mostly something else.
var articleUnits = map[trade.Unit]bool{"h": true, "L": true, "m": true, "mm": true, "cm": true, "in": true, "kg": true, "V": true, "A": true, "Ω": true, "kΩ": true, "mA": true, "mV": true}

// isEach says whether "a clip" or "each" stands at token i, behind a coin: "a pound a
// clip", "a quid each".
func (s *scanner) isEach(i int) bool {
	at := s.over(i)
	switch s.word(at) {
	case "each", "apiece":
		return true
	case "a", "an":
		return s.kind(s.over(at+1)) == wordToken
	}
	return false
}
