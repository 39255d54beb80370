package prose

import (
	"iter"
	"strings"

	"fixslate/plan/trade"
)

// amount is a number with its unit, if it has one.
type amount struct {
	numeral
	of      measure
	hasUnit bool
	until   int // token behind number and unit
}

// expression is what the scanner finds: one or more amounts that belong
// together, a date, a code. Speech replaces expressions with digits by words;
// Figures reports all of them.
type expression struct {
	kind       FigureKind
	start, end int      // tokens
	amounts    []amount // as written, in order
	joint      string   // said between amounts, empty where the text already says it
	values     []Value  // if they differ from the amounts
	word       string   // code as written
	said       string   // ready words for dates, times and codes
	inWords    bool
}

// expressions runs through all expressions of a text in order. Every matcher looks
// only a bounded number of tokens ahead or takes what it has looked at, so the
// whole is linear.
func (s *scanner) expressions() iter.Seq[*expression] {
	return func(yield func(*expression) bool) {
		for i := 0; i < len(s.tokens); {
			e, ok := s.expression(i)
			if !ok {
				i++
				continue
			}
			s.classify(&e)
			if !yield(&e) {
				return
			}
			i = e.end
		}
	}
}

// expression reads what begins at token i.
func (s *scanner) expression(i int) (expression, bool) {
	switch kind := s.kind(i); {
	case kind == spaceToken:
		return expression{}, false
	case kind == digitToken, s.startsNumber(i):
		return s.inDigits(i)
	case kind == wordToken:
		if s.kind(i-1) == digitToken {
			return expression{}, false
		}
		if next := s.kind(i + 1); next == digitToken || next == markToken {
			if e, ok := s.code(i); ok {
				return e, true
			}
		}
		if e, ok := s.monthFirst(i); ok {
			return e, true
		}
		if s.mark(i-1) == '\'' || s.mark(i-1) == '’' {
			return expression{}, false
		}
		return s.inWords(i)
	}
	return expression{}, false
}

// startsNumber says whether a mark begins a number: a sign, a point, a
// currency, a fraction.
func (s *scanner) startsNumber(i int) bool {
	switch r := s.mark(i); r {
	case '.':
		return s.kind(i+1) == digitToken
	case '-', '+', '−':
		if end, ok := s.plusMinus(i); ok && s.kind(s.over(end)) == digitToken {
			return true
		}
		before := s.kind(i - 1)
		free := before == noToken || before == spaceToken || before == markToken && strings.ContainsRune(`([/:,=<>≤≥±~`, s.mark(i-1))
		return free && s.kind(i+1) == digitToken
	case '±':
		return s.kind(i+1) == digitToken || s.kind(i+1) == spaceToken && s.kind(i+2) == digitToken
	case '#':
		return s.kind(i+1) == digitToken && !s.kind(i-1).solid()
	case '£', '€', '$', '¥':
		next := s.over(i + 1)
		return s.kind(next) == digitToken
	default:
		_, bottom := vulgar(r)
		return bottom > 0
	}
}

// inDigits reads an expression that begins with a number in digits.
func (s *scanner) inDigits(i int) (expression, bool) {
	if s.kind(i-1) == wordToken && s.kind(i) == digitToken {
		return expression{}, false // the middle of a word; codes are read at their head
	}
	for _, read := range [...]func(*scanner, int) (expression, bool){
		(*scanner).overload, (*scanner).version, (*scanner).date, (*scanner).clock, (*scanner).price, (*scanner).duration,
	} {
		if e, ok := read(s, i); ok {
			return e, true
		}
	}
	if e, ok := s.measured(i); ok {
		return e, true
	}
	if e, ok := s.code(i); ok {
		return e, true
	}
	// A number glued to what no reader knows: say the digits at least.
	n, ok := s.signedNumeral(i)
	if !ok {
		return expression{}, false
	}
	return expression{kind: Count, start: i, end: n.end, amounts: []amount{{numeral: n, until: n.end}}}, true
}

// amountAt reads a number in digits or words and the unit behind it.
func (s *scanner) amountAt(i int) (amount, bool) {
	n, ok := s.signedNumeral(i)
	if !ok {
		return amount{}, false
	}
	return s.withUnit(n), true
}

func (s *scanner) withUnit(n numeral) amount {
	a := amount{numeral: n, until: n.end}
	at := n.end
	switch {
	case s.kind(at) == spaceToken && !strings.Contains(s.at(at), "\n\n"):
		at++
	case s.mark(at) == '-' || s.mark(at) == '‑':
		if s.kind(at+1) != wordToken {
			return a
		}
		at++
	}
	if n.bottom > 0 || n.inWords && n.value < 1 && n.decimals != "" {
		at = s.ofA(at)
	}
	if m, ok := s.unitAt(at, &n); ok {
		a.of, a.hasUnit, a.until = m, true, m.end
	}
	return a
}

// ofA steps over "of a", "of an", "a", "of" between a fraction and its unit.
func (s *scanner) ofA(i int) int {
	at := i
	if s.word(at) == "of" && s.kind(at+1) == spaceToken {
		at += 2
	}
	if w := s.word(at); (w == "a" || w == "an" || w == "one") && s.kind(at+1) == spaceToken {
		return at + 2
	}
	return at
}

// closed says whether an expression may end before token i.
func (s *scanner) closed(i int) bool {
	switch {
	case s.isGlued(i):
		return false
	case s.mark(i) == '-' || s.mark(i) == '/':
		if s.kind(i+1) == digitToken {
			return false
		}
		// "4471-B" is a code, "4-pin" and "3-in-one" are numbers.
		return s.mark(i) == '/' || s.kind(i+1) != wordToken || !isCodeWord(s.at(i+1))
	case s.mark(i) == '.' || s.mark(i) == ':' || s.mark(i) == ',':
		return s.kind(i+1) != digitToken
	}
	return true
}

// isCodeWord holds for letters that belong to a part number: one or two
// capitals.
func isCodeWord(word string) bool {
	return len(word) <= 2 && strings.ToUpper(word) == word
}

// measured reads amounts and what joins them: ranges, tolerances, sizes,
// ratios, lone amounts.
func (s *scanner) measured(i int) (expression, bool) {
	if end, ok := s.plusMinus(i); ok && s.kind(i) == markToken {
		return s.allowance(i, end)
	}
	at := i
	isNumbered := s.mark(i) == '#'
	if isNumbered {
		at++
	}
	first, ok := s.amountAt(at)
	if !ok {
		return expression{}, false
	}
	e := expression{kind: Quantity, start: i, end: first.until, amounts: []amount{first}, inWords: first.inWords}
	if !isNumbered && s.joined(&e) {
		return e, true
	}
	if !first.inWords {
		if e, ok := s.glued(i, first); ok {
			return e, true
		}
		if !s.closed(first.until) && !s.paired(&first) {
			return expression{}, false
		}
	}
	return e, true
}

// paired holds for the first of two quantities of different kinds: "12V/5A".
func (s *scanner) paired(first *amount) bool {
	if !first.hasUnit || s.mark(first.until) != '/' {
		return false
	}
	second, ok := s.amountAt(first.until + 1)
	return ok && second.hasUnit && s.closed(second.until)
}

// joined adds to a first amount the one it is joined with.
func (s *scanner) joined(e *expression) bool {
	first := e.amounts[0]
	for _, read := range [...]func(*scanner, *amount) (joint, bool){
		(*scanner).rangeMark, (*scanner).rangeWord, (*scanner).toleranceMark, (*scanner).times,
	} {
		found, ok := read(s, &first)
		if !ok {
			continue
		}
		second, ok := s.amountAt(found.next)
		isTwoThree := !second.hasUnit && s.word(second.until) == "x" && !s.isGlued(second.until+1) // "2-3x"
		if !ok || second.inWords != first.inWords && !found.mixed || !second.inWords && !s.closed(second.until) && found.kind != Size && !isTwoThree {
			continue
		}
		e.amounts = append(e.amounts[:1], second)
		if !s.agree(e, found) {
			e.amounts = e.amounts[:1]
			continue
		}
		e.kind, e.joint, e.end = found.kind, found.said, second.until
		if found.kind == Size {
			s.moreTimes(e)
		}
		if found.kind == Range && isTwoThree {
			e.said, e.end, e.word = first.words()+" to "+second.words()+" times", second.until+1, "times"
		}
		return true
	}
	return false
}

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
	case "to", "or", "through":
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
		return sameUnit && (a.bottom == 0 || b.hasUnit || b.bottom > 0)
	case Tolerance:
		return b.sign == 0
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
	if a.value < b.value || a.hasUnit && b.hasUnit && a.of.unit != b.of.unit {
		return true
	}
	if b.hasUnit && j.mark == 0 {
		return a.value != b.value // "falls from 12 to 9 V"
	}
	// "50 to 1": a ratio, unless something is measured.
	return b.value == 1 && !b.hasUnit && !a.hasUnit && j.mark == 0 && a.value > 1
}

// allowance reads a tolerance without its nominal: "±5 %".
func (s *scanner) allowance(i, end int) (expression, bool) {
	a, ok := s.amountAt(s.over(end))
	if !ok || !s.closed(a.until) {
		return expression{}, false
	}
	return expression{kind: Tolerance, start: i, end: a.until, amounts: []amount{a}, joint: "plus or minus "}, true
}

// inWords reads an expression that begins with a number in words.
func (s *scanner) inWords(i int) (expression, bool) {
	w := s.word(i)
	switch w {
	case "twice", "once":
		times := 2.0
		if w == "once" {
			return expression{}, false
		}
		return expression{kind: Count, start: i, end: i + 1, values: []Value{{Number: times}}, word: "times", inWords: true}, true
	case "plus":
		if end, ok := s.plusMinus(i); ok {
			if a, ok := s.amountAt(s.over(end)); ok {
				return expression{kind: Tolerance, start: i, end: a.until, amounts: []amount{a}, inWords: a.inWords}, true
			}
		}
		return expression{}, false
	case "a", "an":
		if e, ok := s.oneOf(i); ok {
			return e, true
		}
	case "m":
		return s.spokenThread(i)
	case "point":
		if determiners[s.word(s.back(i))] {
			return expression{}, false
		}
	}
	if numberWords[w].class == noNumber && !leadsNumber[w] {
		return expression{}, false
	}
	e, ok := s.measured(i)
	if !ok || !e.inWords {
		return e, ok && e.end > i
	}
	first := e.amounts[0]
	switch {
	case len(e.amounts) == 1 && !first.hasUnit && first.value == 1 && first.bottom == 0 && first.until == i+1:
		// "one" alone is a pronoun or an article more often than a number.
		if !labels[s.word(s.back(i))].labels() {
			return expression{}, false
		}
	case len(e.amounts) == 1 && !first.hasUnit && first.bottom == 2 && first.whole == "" && first.top == 1:
		return expression{}, false // "the other half"
	}
	s.addSmaller(&e)
	return e, true
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

// leadsNumber holds the words that begin a number and are none.
var leadsNumber = map[string]bool{"a": true, "an": true, "half": true, "quarter": true, "minus": true, "negative": true}

// oneOf reads an article as one: "an hour", "a litre or two", "between an hour
// and ninety minutes".
func (s *scanner) oneOf(i int) (expression, bool) {
	if s.kind(i+1) != spaceToken || !articleNouns[s.word(i+2)] {
		return expression{}, false
	}
	n := numeral{start: i, end: i + 1, value: 1, inWords: true}
	m, ok := s.unitAt(i+2, &n)
	if !ok || !m.spelled && !m.money {
		return expression{}, false
	}
	a := amount{numeral: n, of: m, hasUnit: true, until: m.end}
	e := expression{kind: Quantity, start: i, end: m.end, amounts: []amount{a}, inWords: true}
	if s.joined(&e) && e.kind == Range {
		return e, true
	}
	if !articleUnits[m.unit] || s.isRate(i) {
		return expression{}, false
	}
	return expression{kind: Quantity, start: i, end: m.end, amounts: []amount{a}, inWords: true}, true
}

// articleUnits are the units of which "a" is one; "a second", "a bar" and "a
// turn" are mostly something else.
var articleUnits = map[trade.Unit]bool{"h": true, "L": true, "m": true, "mm": true, "cm": true, "in": true, "kg": true, "V": true, "A": true, "Ω": true, "kΩ": true, "mA": true, "mV": true}

// articleNouns are the units that may stand behind an article as a measure.
var articleNouns = set("hour", "litre", "liter", "metre", "meter", "millimetre", "millimeter", "centimetre", "centimeter", "inch", "kilo",
	"kilogram", "gram", "volt", "amp", "ohm", "kilohm", "milliamp", "millivolt", "second", "minute", "day", "week", "month", "year", "bar",
	"turn", "degree", "mile", "foot", "yard", "pound", "quid", "euro", "dollar", "percent", "newton", "mil", "watt", "gallon", "pint")

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
	if a.of.unit != "m" && !a.of.money {
		return
	}
	next := s.over(a.until)
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
	e.end = b.until
}
