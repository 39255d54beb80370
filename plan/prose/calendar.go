package prose

import (
	"slices"
	"strconv"
	"strings"

	"fixslate/plan/trade"
)

var monthNames = [...]string{"January", "February", "March", "April", "May", "June", "July", "August", "September",
	"October", "November", "December"}

// month gives the number of the month named by token i, 0 for none. A name has
// its capital: "may" and "march" are verbs.
func (s *scanner) month(i int) int {
	w := s.at(i)
	if s.kind(i) != wordToken || len(w) < 3 || w[0] < 'A' || w[0] > 'Z' {
		return 0
	}
	for m, name := range monthNames {
		if strings.EqualFold(w, name) || len(w) == 3 && strings.EqualFold(w, name[:3]) || w == "Sept" && m == 8 {
			return m + 1
		}
	}
	return 0
}

// smallNumber reads a token of at most most digits.
func (s *scanner) smallNumber(i, most int) (int, bool) {
	if s.kind(i) != digitToken || len(s.at(i)) > most {
		return 0, false
	}
	n, err := strconv.Atoi(s.at(i))
	return n, err == nil
}

// date reads "2026-11-20", "20/11/2026" (day first), "20.11.2026", "20 November
// 2026", "20th of Nov".
func (s *scanner) date(i int) (expression, bool) {
	if s.kind(i) != digitToken || s.isGlued(i-1) {
		return expression{}, false
	}
	e, ok := s.isoDate(i)
	if !ok {
		e, ok = s.numericDate(i, '/')
	}
	if !ok {
		e, ok = s.dayMonth(i)
	}
	return e, ok
}

func (s *scanner) isoDate(i int) (expression, bool) {
	y, okYear := s.smallNumber(i, 4)
	m, okMonth := s.smallNumber(i+2, 2)
	d, okDay := s.smallNumber(i+4, 2)
	if !okYear || !okMonth || !okDay || len(s.at(i)) != 4 || s.mark(i+1) != '-' || s.mark(i+3) != '-' || !s.closed(i+5) {
		return expression{}, false
	}
	return dated(i, i+5, y, m, d)
}

func (s *scanner) numericDate(i int, stroke rune) (expression, bool) {
	d, okDay := s.smallNumber(i, 2)
	m, okMonth := s.smallNumber(i+2, 2)
	y, okYear := s.smallNumber(i+4, 4)
	if !okDay || !okMonth || !okYear || s.mark(i+1) != stroke || s.mark(i+3) != stroke || !s.closed(i+5) {
		return expression{}, false
	}
	switch len(s.at(i + 4)) {
	case 4:
	case 2:
		if stroke == '.' {
			return expression{}, false
		}
		y += 2000
	default:
		return expression{}, false
	}
	return dated(i, i+5, y, m, d)
}

// dated makes the expression of a date; y or d may be 0.
func dated(start, end, y, m, d int) (expression, bool) {
	if m < 1 || m > 12 || d < 0 || d > 31 || y != 0 && (y < 1000 || y > 2999) {
		return expression{}, false
	}
	said := monthNames[m-1]
	if d > 0 {
		said = "the " + ordinal(strconv.Itoa(d)) + " of " + said
	}
	if y > 0 {
		said += " " + year(y)
	}
	e := expression{kind: Date, start: start, end: end, said: said}
	if y > 0 {
		e.values = []Value{{Number: float64(y)}}
	}
	return e, true
}

func (s *scanner) dayMonth(i int) (expression, bool) {
	d, ok := s.smallNumber(i, 2)
	if !ok || d < 1 || d > 31 {
		return expression{}, false
	}
	at := i + 1
	isOrdinal := ordinalEndings[s.word(at)]
	if isOrdinal {
		at++
	}
	if s.kind(at) != spaceToken {
		return expression{}, false
	}
	at++
	if s.word(at) == "of" && s.kind(at+1) == spaceToken {
		at += 2
	}
	m := s.month(at)
	if m == 0 || s.isGlued(at+1) {
		return expression{}, false
	}
	end, y := s.yearAfter(at + 1)
	if (m == 3 || m == 5) && y == 0 && !isOrdinal && !datePrepositions[s.word(s.back(i))] {
		return expression{}, false
	}
	e, ok := dated(i, end, y, m, d)
	if s.word(s.back(i)) == "the" {
		e.said = strings.TrimPrefix(e.said, "the ")
	}
	return e, ok
}

// monthFirst reads "November 2026", "Nov. 20", "November 20, 2026".
func (s *scanner) monthFirst(i int) (expression, bool) {
	m := s.month(i)
	if m == 0 {
		return expression{}, false
	}
	at := i + 1
	if s.mark(at) == '.' {
		at++
	}
	if s.kind(at) != spaceToken {
		return expression{}, false
	}
	if end, y := s.yearAfter(at); y > 0 {
		return dated(i, end, y, m, 0)
	}
	d, ok := s.smallNumber(at+1, 2)
	if !ok || d < 1 || d > 31 {
		return expression{}, false
	}
	end := at + 2
	if ordinalEndings[s.word(end)] {
		end++
	}
	if !s.closed(end) || s.mark(end) == '-' || s.mark(end) == ':' {
		return expression{}, false
	}
	y := 0
	if s.mark(end) == ',' {
		if after, found := s.yearAfter(end + 1); found > 0 {
			end, y = after, found
		}
	} else {
		end, y = s.yearAfter(end)
	}
	return dated(i, end, y, m, d)
}

// yearAfter reads a space and a year; without one it gives i and 0.
func (s *scanner) yearAfter(i int) (end, y int) {
	if s.mark(i) == '.' && s.kind(i+1) == spaceToken && s.kind(i+2) == digitToken {
		i++
	}
	y, ok := s.smallNumber(i+1, 4)
	if s.kind(i) != spaceToken || !ok || y < 1000 || y > 2999 || !s.closed(i+2) {
		return i, 0
	}
	return i + 2, y
}

// clock reads "09:30", "14:05", "1:02:03", and with a unit behind "1:05 min".
func (s *scanner) clock(i int) (expression, bool) {
	h, okHour := s.smallNumber(i, 2)
	m, okMinute := s.smallNumber(i+2, 2)
	if !okHour || !okMinute || s.mark(i+1) != ':' || len(s.at(i+2)) != 2 || m > 59 || s.mark(i-1) == ':' {
		return expression{}, false
	}
	if sec, ok := s.smallNumber(i+4, 2); ok && s.mark(i+3) == ':' && len(s.at(i+4)) == 2 && sec < 60 {
		if !s.closed(i + 5) {
			return expression{}, false
		}
		return s.lasting(i, i+5, "h", []int{h, m, sec})
	}
	if r := s.mark(i + 3); r == '-' || r == '–' {
		if until, ok := s.clock(i + 4); ok && until.kind == Time && s.mark(i-1) != r {
			until.start, until.said = i, clockWords(h, m)+" to "+until.said
			until.values = []Value{{float64(h*60 + m), trade.Minute}, until.values[0]}
			return until, h < 24
		}
	}
	if !s.closed(i + 3) {
		return expression{}, false
	}
	after := numeral{start: i, end: i + 3, value: 2, whole: "2"}
	if unit, ok := s.unitAt(s.over(i+3), &after); ok && unit.unit.Dimension() == trade.Time {
		return s.lasting(i, unit.end, unit.unit, []int{h, m})
	}
	if h > 23 || s.nearRatio(i, i+3) {
		return expression{}, false
	}
	e := expression{kind: Time, start: i, end: i + 3, said: clockWords(h, m)}
	e.values = []Value{{Number: float64(h*60 + m), Unit: trade.Minute}}
	if end, half, ok := s.half(i + 3); ok {
		e.end = end
		e.said = underHundred(h)
		if m > 0 {
			e.said = clockWords(h, m)
		}
		e.said += " " + half
		if half == "P M" && h < 12 {
			e.values[0].Number += 12 * 60
		}
	}
	return e, true
}

// half reads "am", "a.m.", "PM" behind a time.
func (s *scanner) half(i int) (end int, said string, ok bool) {
	at := s.over(i)
	switch w := s.word(at); {
	case (w == "am" || w == "pm") && !s.isGlued(at+1):
		return at + 1, strings.ToUpper(w[:1]) + " M", true
	case (w == "a" || w == "p") && s.mark(at+1) == '.' && s.word(at+2) == "m":
		end = at + 3
		if s.mark(end) == '.' && s.kind(s.over(end+1)) != noToken && !s.capitalAt(s.over(end+1)) {
			end++
		}
		return end, strings.ToUpper(w) + " M", true
	}
	return i, "", false
}

// capitalAt says whether token i begins with a capital.
func (s *scanner) capitalAt(i int) bool {
	w := s.at(i)
	return w != "" && w[0] >= 'A' && w[0] <= 'Z'
}

// lasting makes the expression of a duration given in clock form. Parts after
// the first are sixtieths.
func (s *scanner) lasting(i, end int, unit trade.Unit, parts []int) (expression, bool) {
	at := slices.Index(clockUnits, unit)
	if at < 0 || at+len(parts) > len(clockUnits) {
		return expression{}, false
	}
	var words []string
	value, weight := 0.0, 1.0
	for k, n := range parts {
		value += float64(n) / weight
		weight *= 60
		if n > 0 {
			words = append(words, timeWords(n, clockUnits[at+k]))
		}
	}
	if len(words) == 0 {
		words = []string{timeWords(0, unit)}
	}
	return expression{kind: Quantity, start: i, end: end, said: strings.Join(words, " "), values: []Value{{value, unit}}}, true
}

// clockUnits are what the parts of a clock count.
var clockUnits = []trade.Unit{"h", "min", "s"}

var clockLetters = map[string]trade.Unit{"h": "h", "hr": "h", "hrs": "h", "m": "min", "min": "min", "mins": "min", "s": "s", "sec": "s", "secs": "s"}

func timeWords(n int, unit trade.Unit) string {
	return cardinalOf(uint64(n)) + " " + unit.Spoken(float64(n))
}

// nearRatio says whether the words around token i speak of a ratio, so that
// "1:50" is none of the clock.
func (s *scanner) nearRatio(i, end int) bool {
	words := 0
	for at := i - 1; at >= 0 && words < 4; at-- {
		if s.mark(at) != 0 {
			break
		}
		if s.kind(at) == wordToken {
			words++
			if isRatioWord(s.word(at)) {
				return true
			}
		}
	}
	return isRatioWord(s.word(s.over(end)))
}

func isRatioWord(w string) bool {
	switch w {
	case "scale", "gear", "gearing", "slope", "fall", "gradient":
		return true
	}
	return strings.HasPrefix(w, "ratio") || strings.HasPrefix(w, "mix") || strings.HasPrefix(w, "dilut")
}

func clockWords(h, m int) string {
	switch {
	case m == 0 && h >= 1 && h <= 12:
		return underHundred(h) + " o'clock"
	case m == 0:
		return underHundred(h) + " hundred"
	case m < 10:
		return underHundred(h) + " oh " + unitWords[m]
	}
	return underHundred(h) + " " + underHundred(m)
}

// duration reads "1h30m", "2m30s", "1h30".
func (s *scanner) duration(i int) (expression, bool) {
	var words []string
	value, end, last := 0.0, i, -1
	for k := 0; k < 3; k++ {
		n, ok := s.smallNumber(end, 3)
		at := slices.Index(clockUnits, clockLetters[s.word(end+1)])
		if ok && at < 0 && last == 0 && !s.isGlued(end+1) {
			at = 1 // "1h30"
			end--
		}
		if !ok || at <= last || at < 0 {
			break
		}
		words = append(words, timeWords(n, clockUnits[at]))
		value += float64(n) * [...]float64{60, 1, 1. / 60}[at]
		end, last = end+2, at
	}
	if len(words) < 2 || !s.closed(end) {
		return expression{}, false
	}
	return expression{kind: Quantity, start: i, end: end, said: strings.Join(words, " "), values: []Value{{value, trade.Minute}}}, true
}
