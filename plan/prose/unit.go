package prose

import (
	"strings"

	"fixslate/plan/trade"
)

// measure is a unit as it stands behind a number.
type measure struct {
	unit       trade.Unit
	start, end int    // tokens
	spelled    bool   // written as a word, which is said as it is written
	suffix     string // said behind the unit: "A C" of "VAC"
	money      bool
}

// longestUnit is how many tokens a unit may take, white space counted: "cubic
// feet per minute" has seven, "B T U per hour" nine.
const longestUnit = 9

// unitAt reads the unit at token i, longest spelling first. after is the number
// it stands behind.
func (s *scanner) unitAt(i int, after *numeral) (measure, bool) {
	if s.kind(i) == noToken || s.kind(i) == spaceToken || s.kind(i) == digitToken {
		return measure{}, false
	}
	if unit, ok := moneySigns[s.mark(i)]; ok {
		return measure{unit: unit, start: i, end: i + 1, money: true}, true
	}
	if s.kind(i) == markToken && !strings.ContainsRune(`°º%"'″′”’`, s.mark(i)) {
		return measure{}, false
	}
	end := i
	for end < i+longestUnit && s.unitToken(end) {
		end++
	}
	for ; end > i; end-- {
		if s.kind(end-1) == spaceToken || s.isGlued(end) && s.isGlued(end-1) {
			continue
		}
		spelling := s.slice(i, end)
		if strings.TrimRight(spelling, ".-·_, ") != spelling {
			continue
		}
		unit, ok := trade.LookupUnit(spelling)
		if !ok {
			continue
		}
		m := measure{unit: unit, start: i, end: end}
		m.spelled = isSpelled(unit, spelling)
		if s.fits(&m, spelling, after) {
			s.takeStop(&m)
			return m, true
		}
	}
	return s.currency(i, after)
}

// unitToken says whether token i may be part of a unit's spelling.
func (s *scanner) unitToken(i int) bool {
	switch s.kind(i) {
	case wordToken:
		return true
	case digitToken:
		return len(s.at(i)) == 1 // "mm2", "H2O"
	case spaceToken:
		return len(s.at(i)) <= 3 && unitTails[s.word(i+1)] && !strings.Contains(s.at(i), "\n")
	case markToken:
		return strings.ContainsRune(`°º%·⋅•*/.-²³^()"'″′”’₂`, s.mark(i))
	}
	return false
}

// isSpelled says whether a unit is written as the word by which it is said.
func isSpelled(unit trade.Unit, spelling string) bool {
	lower := strings.ToLower(spelling)
	if strings.HasPrefix(spelling, "US ") {
		return false
	}
	if strings.EqualFold(spelling, unit.Spoken(1)) || strings.EqualFold(spelling, unit.Spoken(2)) {
		return true
	}
	for word := range strings.FieldsFuncSeq(lower, func(r rune) bool { return r == ' ' || r == '-' }) {
		if len(word) < 4 && word != "per" && word != "of" && word != "an" {
			return false
		}
	}
	return !strings.ContainsAny(lower, "/.·0123456789²³°(") && strings.ContainsAny(lower, "aeiou") &&
		lower == spelling && !shortUnits[lower]
}

// takeStop takes the full stop of a shortened unit, "3/4 in. union", unless it
// may end the sentence.
func (s *scanner) takeStop(m *measure) {
	if m.spelled || s.mark(m.end) != '.' || s.kind(m.end+1) != spaceToken || s.kind(m.end-1) != wordToken {
		return
	}
	if w := s.at(m.end + 2); s.kind(m.end+2) == wordToken && w == strings.ToLower(w) {
		m.end++
	}
}

// fits rejects spellings of units that stand for something else here.
func (s *scanner) fits(m *measure, spelling string, after *numeral) bool {
	glued := s.kind(m.start-1) != spaceToken
	next := s.over(m.end)
	switch spelling {
	case "K":
		if glued {
			return false // "4K"
		}
	case "in", "IN", "In":
		return glued && s.kind(m.start-1) == digitToken || s.isInch(m, after)
	case "p a":
		return s.kind(next) != wordToken // "fifty p a go"
	case "a", "at", "c", "as", "us", "k", "f":
		return glued && s.kind(m.start-1) == digitToken && labels[s.labelBefore(after.start)] != StepNumber
	case "A":
		if after.inWords {
			return s.kind(next) != wordToken // "twelve A" but not "Two A fuse"
		}
	case "C", "F", "S", "N", "H", "J", "W", "V", "t", "s", "g", "h", "l", "m", "w", "v", "L", "T", "G":
		if after.inWords && spelling != "V" {
			return false
		}
	case `"`, "'", "”", "’":
		return !after.inWords && s.isMarkOfLength(m)
	case "mil", "mils", "mill", "mills":
		if s.word(next) == "of" && liquids[s.word(s.over(next+1))] {
			m.unit = "mL"
		}
	case "pounds", "pound":
		m.money = s.isPrice(after, m.end)
		if m.money {
			m.unit = "GBP"
		}
	case "VAC", "Vac", "vac":
		m.suffix = "A C"
	case "VDC", "Vdc", "vdc":
		m.suffix = "D C"
	}
	if low := strings.ToLower(spelling); strings.HasPrefix(low, "v ") || strings.HasPrefix(low, "volts ") || strings.HasPrefix(low, "volt ") {
		// "V AC": the unit is "V", and "AC" is said like any other word.
		m.end = m.start + 1
		m.spelled = len(s.at(m.start)) > 1
	}
	if after.inWords && after.value == 1 && after.bottom == 0 && strings.HasSuffix(spelling, "s") && len(spelling) > 2 && !strings.Contains(spelling, " ") && !s.endsRange(after.start) &&
		strings.ToLower(spelling) != m.unit.Spoken(1) {
		return false // "the last one turns"
	}
	return !(m.spelled && s.mark(m.end) == '-' && m.unit == "°")
}

// isInch judges "in" behind a number and a space: an inch unless the word goes
// on to something it could be the preposition of.
func (s *scanner) isInch(m *measure, after *numeral) bool {
	if after.inWords {
		return false
	}
	next := s.over(m.end)
	if after.bottom > 0 {
		return true
	}
	if lengthWords[s.word(next)] {
		return true
	}
	switch s.kind(next) {
	case noToken:
		return true
	case markToken:
		return s.mark(next) != '(' && s.mark(next) != '"' && !(s.mark(next) == '-' && s.isGlued(next+1))
	case digitToken:
		return false
	}
	return after.decimals != "" && !functionWords[s.word(next)]
}

// farQuote is how many tokens back an open quotation is looked for.
const farQuote = 60

// isMarkOfLength judges a quotation mark behind a number: an inch or foot
// unless a quotation is open.
func (s *scanner) isMarkOfLength(m *measure) bool {
	if s.kind(m.start-1) == spaceToken {
		return false
	}
	mark := s.at(m.start)
	for i := m.start - 1; i >= 0 && i > m.start-farQuote; i-- {
		at := s.at(i)
		if at == mark || at == "“" && mark == "”" || at == "‘" && mark == "’" {
			// The last mark opened a quotation if no word ends before it.
			before := s.kind(i - 1)
			opens := at != mark || before == noToken || before == spaceToken || s.mark(i-1) == '('
			return !opens && !s.isGlued(m.end)
		}
	}
	return !s.isGlued(m.end)
}

// says gives the words for a unit behind a number.
func (m measure) says(number float64) string {
	words := ""
	switch {
	case m.money:
		words = moneySaid(m.unit, number)
	case m.unit == "°C" || m.unit == "°F":
		// As it is said at the bench; "degrees Celsius" is for print.
		words = trade.Degree.Spoken(number) + " " + strings.TrimPrefix(string(m.unit), "°")
	default:
		words = m.unit.Spoken(number)
		if rest, ok := strings.CutPrefix(words, "US "); ok {
			words = "U S " + rest
		}
	}
	if m.suffix != "" {
		words += " " + m.suffix
	}
	return words
}

// endsRange says whether "to" or "or" stands before token i: "point five to one
// volts".
func (s *scanner) endsRange(i int) bool {
	at := s.back(i)
	switch s.word(at) {
	case "to", "or":
		before := s.back(at)
		return s.number(before).class != noNumber || s.denominator(before) > 0
	}
	return false
}
