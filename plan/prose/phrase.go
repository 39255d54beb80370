package prose

import (
	"strings"

	"fixslate/plan/trade"
)

// oddBit steps over what makes a number vague before its unit: "eighty odd
// pounds", "two and a bit turns".
func (s *scanner) oddBit(i int) int {
	switch {
	case s.word(i) == "odd" && s.kind(i+1) == spaceToken:
		return i + 2
	case s.word(i) == "or" && s.word(i+2) == "so" && s.kind(i+3) == spaceToken:
		return i + 4
	case s.word(i) == "and" && s.word(i+2) == "a" && s.word(i+4) == "bit" && s.kind(i+5) == spaceToken:
		return i + 6
	}
	return i
}

// andHalf adds what follows the unit in "an inch and a half", "an inch and three
// eighths".
func (s *scanner) andHalf(a *amount) {
	at := s.over(a.until)
	if s.word(at) != "and" || s.kind(at+1) != spaceToken || a.decimals != "" || a.bottom > 0 {
		return
	}
	top, at := 1, at+2
	if v, end := s.underHundred(at); end > at {
		top, at = v, s.link(end)
	} else if s.isArticle(at) && s.kind(at+1) == spaceToken {
		at += 2
	} else {
		return
	}
	bottom := s.denominator(at)
	if bottom <= top {
		return
	}
	end := s.denominatorEnd(at)
	if m := s.withUnit(numeral{start: at, end: end, top: top, bottom: bottom, inWords: true}); m.hasUnit && !s.isPeriod(end) {
		return // "an inch and a quarter turn"
	}
	a.value += float64(top) / float64(bottom)
	a.until = end
}

// isPeriod says whether "a week" or the like stands at token i: what a rate is
// reckoned by.
func (s *scanner) isPeriod(i int) bool {
	at := s.over(i)
	switch s.word(at) {
	case "a", "an", "per", "every":
	default:
		return false
	}
	switch s.word(s.over(at + 1)) {
	case "second", "minute", "hour", "day", "week", "month", "year", "season":
		return true
	}
	return false
}

// inWords reads an expression that begins with a number in words.
func (s *scanner) inWords(i int) (expression, bool) {
	w := s.word(i)
	if e, ok := s.idiom(i, w); ok {
		return e, true
	}
	if w == "point" && (determiners[s.word(s.back(i))] || s.pointsAt(i)) {
		return expression{}, false
	}
	if numberWords[w].class == noNumber && !leadsNumber[w] {
		if e, ok := s.bareUnit(i); ok {
			return e, true
		}
		return s.spokenCode(i)
	}
	e, ok := s.measured(i)
	if !ok || !e.inWords {
		return e, ok && e.end > i
	}
	first := e.amounts[0]
	switch {
	case len(e.amounts) == 1 && !first.hasUnit && first.value == 1 && first.bottom == 0 && first.until == i+1:
		// "one" alone is a pronoun or an article more often than a number.
		if labels[s.word(s.back(i))] == noFigure {
			return expression{}, false
		}
	case len(e.amounts) == 1 && !first.hasUnit && first.bottom == 2 && first.whole == "" && first.top == 1:
		return expression{}, false // "the other half"
	}
	if n := first.numeral; n.bottom == 0 && n.decimals == "" && n.value < 60 && (!first.hasUnit || first.of.unit == trade.Minute) {
		if clock, ok := s.hourBeside(expression{start: e.start, end: first.until, inWords: true}, n.value); ok {
			return clock, true // "five past one", "twelve minutes past three"
		}
	}
	s.addThousands(&e)
	s.addSmaller(&e)
	s.oilGrade(&e)
	return e, true
}

// pointsAt says whether "point one up" at token i tells where to aim one thing.
func (s *scanner) pointsAt(i int) bool {
	switch s.word(s.back(i)) {
	case "and", "then", "":
	default:
		return false
	}
	at := s.over(i + 1)
	switch s.word(s.over(at + 1)) {
	case "up", "down", "at", "out", "away", "forward", "forwards", "back", "towards", "left", "right", "sideways", "each", "straight":
		return s.number(at).class == oneWord
	}
	return false
}

// idiom reads the turns of speech that begin with word w and hold a number in
// another way than by counting.
func (s *scanner) idiom(i int, w string) (expression, bool) {
	e := expression{start: i, end: i + 1, inWords: true}
	switch w {
	case "twice":
		e.kind, e.values, e.word = Count, []Value{{Number: 2}}, "times"
		return e, true
	case "double", "treble", "triple":
		if (s.word(i+2) != "the" || !compared[s.word(i+4)]) && s.word(i+2) != "that" {
			return e, false
		}
		e.kind, e.values, e.word = Count, []Value{{Number: 2}}, "times"
		if w != "double" {
			e.values[0].Number = 3
		}
		return e, true
	case "plus":
		end, ok := s.plusMinus(i)
		if !ok {
			return e, false
		}
		a, ok := s.tolerated(s.over(end))
		e.kind, e.end, e.amounts, e.inWords, e.joint = Tolerance, a.until, []amount{a}, a.inWords, "plus or minus "
		return e, ok
	case "a", "an":
		return s.oneOf(i)
	case "m":
		return s.spokenThread(i)
	case "half":
		if s.word(i+2) == "the" && compared[s.word(i+4)] {
			e.kind, e.values = Fraction, []Value{{Number: 0.5}}
			return e, true
		}
		return s.partOfHour(i)
	case "quarter":
		return s.partOfHour(i)
	case "every":
		n := everyNth[s.word(i+2)]
		e.kind, e.end, e.values = Count, i+3, []Value{{Number: n}}
		e.word = s.noun(e.end)
		return e, n > 0
	}
	return e, false
}

// addThousands multiplies "three k", "two and a half thousand", "two grand",
// "two meg".
func (s *scanner) addThousands(e *expression) {
	if len(e.amounts) != 1 || e.amounts[0].hasUnit || e.amounts[0].digitRun {
		return
	}
	at := s.link(e.end)
	value := Value{Number: e.amounts[0].value}
	switch s.word(at) {
	case "k", "thousand":
		value.Number *= 1e3
	case "million":
		value.Number *= 1e6
	case "grand":
		value.Number *= 1e3
		value.Unit = "GBP"
		e.kind = Money
	case "meg":
		value.Unit = "MΩ"
	case "n", "u", "r":
		s.lettered(e, at)
		return
	default:
		return
	}
	if at == e.end || s.isGlued(at+1) {
		return
	}
	e.end = at + 1
	if s.word(at) == "k" && e.amounts[0].value < 1000 && s.number(s.over(e.end)).class == oneWord && s.noun(s.over(e.end)+1) == "" {
		value.Number += 100 * s.number(s.over(e.end)).value // "four k seven", of resistors alone
		value.Number, value.Unit = value.Number/1e3, "kΩ"
		e.end = s.over(e.end) + 1
	}
	if m, ok := s.unitAt(s.over(e.end), &e.amounts[0].numeral); ok && value.Unit == "" {
		value.Unit, e.end = m.unit, m.end
	}
	e.values = []Value{value}
}

// lettered reads a value with its unit for a decimal point: "four u seven", "three
// n three", "two r two", as IEC 60062 writes them.
func (s *scanner) lettered(e *expression, at int) {
	tenths := s.over(at + 1)
	w := s.number(tenths)
	if a := e.amounts[0]; tenths == at+1 || w.class != oneWord || a.value >= 100 || a.decimals != "" || a.bottom > 0 || s.number(s.over(tenths+1)).class != noNumber {
		return
	}
	unit := map[string]trade.Unit{"n": "nF", "u": "µF", "r": "Ω"}[s.word(at)]
	e.values = []Value{{e.amounts[0].value + w.value/10, unit}}
	e.end = tenths + 1
}

// oilGrade reads "five w thirty".
func (s *scanner) oilGrade(e *expression) {
	w := s.over(e.end)
	if len(e.amounts) != 1 || e.amounts[0].hasUnit || s.word(w) != "w" || s.kind(w+1) != spaceToken {
		return
	}
	if n, ok := s.words(w + 2); ok && n.decimals == "" {
		e.kind, e.end, e.values = PartNumber, n.end, nil
		e.word, e.amounts = s.slice(e.start, n.end), nil
	}
}

// spokenCode reads a designation as captions have it: "t twenty five", "w
// seven", "e one five".
func (s *scanner) spokenCode(i int) (expression, bool) {
	w := s.at(i)
	if len(w) != 1 || strings.Contains("aiomxAIOMX", w) || s.kind(i+1) != spaceToken || s.isGlued(i-1) || s.kind(i-1) == markToken && s.mark(i-1) != '(' {
		return expression{}, false
	}
	n, ok := s.words(i + 2)
	if !ok || n.decimals != "" || n.bottom > 0 || n.sign != 0 {
		return expression{}, false
	}
	if a := s.withUnit(n); a.hasUnit {
		return expression{}, false
	}
	end := n.end
	for at := s.link(end); at > end; at = s.link(end) { // "one five"
		if !s.number(at).class.digit() {
			break
		}
		end = at + 1
	}
	return expression{kind: PartNumber, start: i, end: end, word: s.slice(i, end), inWords: true}, true
}

// spokenThread reads "M ten by one point two five".
func (s *scanner) spokenThread(i int) (expression, bool) {
	if s.kind(i+1) != spaceToken || s.isGlued(i-1) || s.number(i+2).class == noNumber || s.word(i+2) == "point" {
		return expression{}, false
	}
	e, ok := s.measured(i + 2)
	if !ok || !e.inWords || e.kind != Quantity && e.kind != Size {
		return expression{}, false
	}
	for _, a := range e.amounts {
		if a.hasUnit && a.of.unit != trade.Millimetre {
			return expression{}, false
		}
		e.values = append(e.values, Value{a.value, trade.Millimetre})
	}
	e.kind, e.start, e.word = Size, i, s.slice(i, e.end)
	return e, true
}

// everyNth gives the step of "every third winter".
var everyNth = map[string]float64{"other": 2, "second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8,
	"ninth": 9, "tenth": 10, "twelfth": 12, "hundredth": 100}

// isRate says whether the article at i stands for "per": "sixty miles an hour",
// "twice an hour".
func (s *scanner) isRate(i int) bool {
	before := s.word(s.back(i))
	if _, ok := trade.LookupUnit(before); ok && before != "" && before != "in" && before != "at" {
		return true
	}
	return before == "times" || before == "twice" || before == "once"
}

// addSmaller adds the smaller unit that is left out in "two metre ten" and
// "eighteen pounds fifty".
func (s *scanner) addSmaller(e *expression) {
	if len(e.amounts) != 1 || !e.amounts[0].hasUnit || e.amounts[0].decimals != "" || e.amounts[0].bottom > 0 {
		return
	}
	a := e.amounts[0]
	if a.of.unit == "h" && s.word(s.over(a.until)) == "and" {
		s.addMinutes(e, s.over(s.over(a.until)+1))
		return
	}
	next := s.over(a.until)
	if a.of.unit == "ft" {
		s.addInches(e, next)
		return
	}
	if w := s.number(next); a.of.unit == "V" && s.word(a.until-1) == "volt" && next > a.until && w.class == oneWord && (s.noun(next+1) == "" || rails[s.noun(next+1)]) && s.number(s.over(next+1)).class == noNumber {
		if _, unit := s.measures(s.over(next + 1)); !unit {
			e.values, e.end = []Value{{a.value + w.value/10, a.of.unit}}, next+1 // "three volt three"
			return
		}
	}
	less, timed := smaller[a.of.unit]
	timed = timed && (a.of.unit == "h" || a.of.unit == "min")
	if a.of.unit != "m" && !a.of.money && !timed {
		return
	}
	if w := s.number(next); next == a.until || w.class != teenWord && w.class != tensWord {
		return
	}
	b, ok := s.amountAt(next)
	if !ok || b.hasUnit || b.value >= 100 || b.value < 10 || b.decimals != "" {
		return
	}
	if noun := s.over(b.until); noun > b.until && s.kind(noun) == wordToken && strings.HasSuffix(s.word(noun), "s") {
		return // "two metre ten screws"
	}
	e.values = []Value{{Number: a.value + b.value/100, Unit: a.of.unit}}
	if timed { // "two hours twenty"
		if b.value >= less.many {
			e.values = nil
			return
		}
		e.values = []Value{{Number: a.value*less.many + b.value, Unit: less.unit}}
	}
	e.end = b.until
}

// addInches reads "six foot two".
func (s *scanner) addInches(e *expression, i int) {
	w := s.number(i)
	if w.class != oneWord && w.class != teenWord || w.value > 11 {
		return
	}
	b, ok := s.amountAt(i)
	if !ok || b.hasUnit || b.end != i+1 && b.bottom == 0 || b.bottom > 0 && b.whole == "" || s.noun(b.end) != "" {
		return
	}
	e.values = []Value{{e.amounts[0].value*12 + b.value, trade.Inch}}
	e.end = b.end
}

// addMinutes reads "an hour and ten": minutes that nothing is counted by.
func (s *scanner) addMinutes(e *expression, i int) {
	w := s.number(i)
	if w.class != teenWord && w.class != tensWord || s.noun(i+1) != "" {
		return
	}
	b, ok := s.amountAt(i)
	if !ok || b.hasUnit || b.value >= 60 || b.value < 10 || b.decimals != "" || b.bottom > 0 || s.noun(b.until) != "" {
		return
	}
	e.values = []Value{{Number: e.amounts[0].value*60 + b.value, Unit: "min"}}
	e.end = b.until
}
