package prose

import (
	"fixslate/plan/trade"
)

// joint is what stands between two amounts.
type joint struct {
	kind  FigureKind
	said  string // words for it if it is a sign
	next  int    // token behind it
	mark  rune   // the sign
	mixed bool   // one amount may be in words and the other in digits
}

// rangeMark reads "..", "–", "-" between two amounts in digits.
func (s *scanner) rangeMark(first *amount) (joint, bool) {
	if first.inWords {
		return joint{}, false
	}
	at := s.over(first.until)
	j := joint{kind: Range, said: " to ", mark: s.mark(at)}
	switch j.mark {
	case '.':
		if s.mark(at+1) != '.' {
			return j, false
		}
		for at++; s.mark(at+1) == '.'; at++ {
		}
	case '–', '—', '…', '~', '−':
	case '-', '‑':
		if (at > first.until) != (s.kind(at+1) == spaceToken) {
			return j, false // "5 -3"
		}
	case '→':
	default:
		return j, false
	}
	j.next = s.over(at + 1)
	return j, true
}

// rangeWord reads "to", "or", "and" (behind "between") and "through".
func (s *scanner) rangeWord(first *amount) (joint, bool) {
	at := s.over(first.until)
	j := joint{kind: Range, next: s.over(at + 1), mixed: true}
	if at == first.until || j.next == at+1 {
		return j, false
	}
	switch s.word(at) {
	case "or":
		if first.value == 1 && !first.hasUnit && first.inWords && s.number(j.next).class > oneWord {
			return j, false // "twenty quid for one or forty for two"
		}
		return j, true
	case "to", "through":
		if s.word(j.next) == "plus" && s.kind(j.next+1) == spaceToken {
			j.next += 2 // "minus ten to plus forty"
		}
		return j, true
	case "and":
		return j, s.word(s.back(first.start)) == "between" || s.word(s.back(s.back(first.start))) == "between"
	}
	return j, false
}

// toleranceMark reads "±", "+/-", "plus or minus", "give or take".
func (s *scanner) toleranceMark(first *amount) (joint, bool) {
	at := s.over(first.until)
	said := " plus or minus "
	if s.mark(at) == ',' {
		at = s.over(at + 1)
		said = "," + said
	}
	end, ok := s.plusMinus(at)
	if !ok {
		return joint{}, false
	}
	if s.kind(at) == wordToken {
		said = "" // it is in words already
	}
	return joint{kind: Tolerance, said: said, next: s.over(end), mixed: true}, true
}

// plusMinus reads a sign or words for "plus or minus".
func (s *scanner) plusMinus(i int) (end int, ok bool) {
	switch {
	case s.mark(i) == '±':
		return i + 1, true
	case s.mark(i) == '+' && s.mark(i+1) == '/' && (s.mark(i+2) == '-' || s.mark(i+2) == '−'):
		return i + 3, true
	case s.mark(i) == '+' && (s.mark(i+1) == '-' || s.mark(i+1) == '−'):
		return i + 2, true
	case s.word(i) == "plus" && s.word(i+2) == "minus":
		return i + 3, true
	case s.word(i) == "plus" && s.word(i+2) == "or" && s.word(i+4) == "minus",
		s.word(i) == "give" && s.word(i+2) == "or" && s.word(i+4) == "take":
		return i + 5, true
	}
	return i, false
}

// times reads "x", "×" and "by" between sizes.
func (s *scanner) times(first *amount) (joint, bool) {
	at := s.over(first.until)
	j := joint{kind: Size, said: " by ", next: s.over(at + 1)}
	switch {
	case s.mark(at) == '×':
	case s.word(at) == "x" && !first.inWords:
		if (at > first.until) != (j.next > at+1) {
			return j, false // "4x 10 mm" are four
		}
	case s.word(at) == "by" && at > first.until && j.next > at+1:
		j.said, j.mixed = "", true
	default:
		return j, false
	}
	return j, true
}

// moreTimes adds a third and further size: "20 x 30 x 5 mm".
func (s *scanner) moreTimes(e *expression) {
	for len(e.amounts) < 4 {
		j, ok := s.times(&e.amounts[len(e.amounts)-1])
		if !ok {
			return
		}
		next, ok := s.amountAt(j.next)
		if !ok {
			return
		}
		e.amounts = append(e.amounts, next)
		e.end = next.until
	}
}

// agree judges whether two amounts may be joined so, and gives a range's unit
// to its first amount too.
func (s *scanner) agree(e *expression, j joint) bool {
	a, b := &e.amounts[0], &e.amounts[1]
	sameUnit := !a.hasUnit || !b.hasUnit || a.of.unit.Dimension() == b.of.unit.Dimension()
	switch j.kind {
	case Size:
		if b.hasUnit && b.of.unit.Dimension() != trade.Length && b.of.unit.Dimension() != "" {
			return false // "2 × 1.5 V"
		}
		if b.hasUnit && !a.hasUnit && a.value <= 2 && s.kind(j.next-1) == spaceToken && s.attributive(b.until) && j.said != "" {
			return false // "2 x 13 mm sockets"
		}
		return sameUnit && (a.bottom == 0 || b.hasUnit || b.bottom > 0 || a.whole != "" && a.inWords)
	case Tolerance:
		return b.sign == 0
	}
	if a.bottom > 0 && a.whole == "" && b.bottom == 0 && !a.hasUnit && !b.hasUnit {
		return false // "quarter to ten"
	}
	if !sameUnit || a.bottom > 0 && j.mark == '-' && b.bottom == 0 && !b.hasUnit || a.digitRun || b.digitRun {
		return false
	}
	if j.mark == '-' {
		switch {
		case a.hasUnit && !b.hasUnit, b.sign != 0, len(a.whole) > 1 && a.whole[0] == '0', len(b.whole) > 1 && b.whole[0] == '0':
			return false // a code: "5W-30", "08-15"
		case !b.hasUnit && (len(a.whole) > 2 || len(b.whole) > 3) && !(isYear(&a.numeral) && isYear(&b.numeral)):
			return false
		}
	}
	const fine = 8 // "three to five sixteenths", but "two to three quarters"
	if b.bottom >= fine && b.whole == "" && a.bottom == 0 && a.whole == "" && !a.hasUnit && a.inWords && a.decimals == "" && a.value < float64(b.top) {
		a.value /= float64(b.bottom)
	}
	if scale := roundOf(b.value); j.mark == 0 && a.inWords && b.inWords && a.value < 100 && !a.hasUnit && a.bottom == 0 && a.decimals == "" && scale > 1 && a.value*scale < b.value {
		a.value *= scale // "two to three hundred", "sixty to eighty thousand"
	}
	if a.value < b.value || a.hasUnit && b.hasUnit && a.of.unit != b.of.unit {
		return true
	}
	if b.hasUnit && j.mark == 0 {
		return a.value != b.value // "falls from 12 to 9 V"
	}
	// "50 to 1": a ratio, unless something is measured.
	return b.value == 1 && !b.hasUnit && !a.hasUnit && j.mark == 0 && a.value > 1
}

// roundOf is a thousand or a hundred where a number is some of them, as it would
// be said, else 1.
func roundOf(v float64) float64 {
	if n := v / 1000; n >= 2 && n < 1000 && n == float64(int(n)) {
		return 1000
	}
	if n := v / 100; n >= 2 && n < 100 && n == float64(int(n)) {
		return 100
	}
	return 1
}

// tolerated reads an allowance, which may be "a degree".
func (s *scanner) tolerated(i int) (amount, bool) {
	if a, ok := s.amountAt(i); ok {
		return a, true
	}
	return s.oneUnit(i)
}

// allowance reads a tolerance without its nominal: "±5 %".
func (s *scanner) allowance(i, end int) (expression, bool) {
	a, ok := s.tolerated(s.over(end))
	if !ok || !s.closed(a.until) {
		return expression{}, false
	}
	return expression{kind: Tolerance, start: i, end: a.until, amounts: []amount{a}, joint: "plus or minus "}, true
}

// smaller gives for units that are said with a smaller one behind them, "one
// hour twenty minutes", that unit and how many make one.
var smaller = map[trade.Unit]struct {
	unit trade.Unit
	many float64
}{
	"in": {"thou", 1000}, "h": {"min", 60}, "min": {"s", 60}, "ft": {"in", 12}, "lb": {"oz", 16}, "year": {"month", 12}, "day": {"h", 24}, "week": {"day", 7},
	"m": {"cm", 100}, "GBP": {"p", 100}, "EUR": {"c", 100}, "USD": {"c", 100},
}

// compound reads "one hour and twenty minutes" and "5 ft 10 in" as one value in
// the smaller unit.
func (s *scanner) compound(e *expression) bool {
	a := &e.amounts[0]
	less, ok := smaller[a.of.unit]
	if !a.hasUnit || !ok || a.decimals != "" || a.bottom > 0 {
		return false
	}
	at := s.over(a.until)
	if s.mark(at) == ',' && a.of.money {
		at = s.over(at + 1)
	}
	if s.word(at) == "and" {
		at = s.over(at + 1)
	}
	if at == a.until && s.mark(at-1) == 0 {
		return false
	}
	b, ok := s.amountAt(at)
	if ok && b.hasUnit && a.of.unit == "GBP" && b.of.unit == "oz" {
		a.of.unit, a.of.money, less = "lb", false, smaller["lb"] // "two pounds eleven ounces"
	}
	if !ok || !b.hasUnit || b.of.unit != less.unit || b.value >= less.many || b.sign != 0 || b.inWords != a.inWords || !b.inWords && !s.closed(b.until) {
		return false
	}
	e.values = []Value{{a.value*less.many + b.value, less.unit}}
	e.amounts = append(e.amounts, b)
	e.end = b.until
	if a.of.money {
		e.kind, e.values[0] = Money, Value{a.value + b.value/less.many, a.of.unit}
	}
	return true
}
