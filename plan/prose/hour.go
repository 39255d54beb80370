package prose

import "fixslate/plan/trade"

// partOfHour reads "half past nine" and "quarter to ten".
func (s *scanner) partOfHour(i int) (expression, bool) {
	minutes := 30.0
	if s.word(i) == "quarter" {
		minutes = 15
	}
	return s.hourBeside(expression{start: i, end: i + 1, inWords: true}, minutes)
}

// hourBeside reads the hour behind some minutes: "past seven", "to midnight". "Five to
// six" is a range more often than a time.
func (s *scanner) hourBeside(e expression, minutes float64) (expression, bool) {
	way := s.over(e.end)
	at := s.over(way + 1)
	hour, named := hours[s.word(at)]
	if w := s.number(at); w.class == oneWord || w.class == teenWord {
		hour = w.value
	}
	switch s.word(way) {
	case "past":
	case "to":
		if part := s.word(e.start); part != "half" && part != "quarter" && !named && !s.inDay(at+1) {
			return e, false
		}
		minutes = -minutes
	default:
		return e, false
	}
	if hour < 1 || hour > 12 {
		return e, false
	}
	if a := s.withUnit(numeral{start: at, end: at + 1, value: hour, inWords: true}); a.hasUnit {
		return e, false
	}
	e.kind, e.end, e.values, e.amounts = Time, at+1, []Value{{hour*60 + minutes, trade.Minute}}, nil
	return e, true
}

// hours are those that have a name.
var hours = map[string]float64{"midnight": 12, "noon": 12, "midday": 12}

// inDay says whether "in the morning" or the like stands at token i.
func (s *scanner) inDay(i int) bool {
	at := s.over(i)
	switch s.word(at) {
	case "at":
		return s.word(s.over(at+1)) == "night"
	case "in":
		switch s.word(s.over(s.over(at+1) + 1)) {
		case "morning", "afternoon", "evening":
			return true
		}
	}
	return false
}
