package prose

import (
	"iter"
	"strings"
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
			if s.passes(i) {
				i++
				continue
			}
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

// passes says that nothing begins at token i, which holds for most.
func (s *scanner) passes(i int) bool {
	switch s.tokens[i].kind {
	case spaceToken:
		return true
	case wordToken:
		next := s.kind(i + 1)
		return s.kind(i-1) == digitToken || next != digitToken && next != markToken && s.startsNone(i)
	}
	return false
}

// expression reads what begins at a token that is not passed.
func (s *scanner) expression(i int) (expression, bool) {
	switch kind := s.kind(i); {
	case kind == digitToken, s.startsNumber(i):
		return s.inDigits(i)
	case kind == wordToken:
		if next := s.kind(i + 1); next == digitToken || next == markToken {
			if e, ok := s.code(i); ok {
				return e, true
			}
		}
		if s.startsNone(i) {
			return expression{}, false
		}
		if e, ok := s.monthFirst(i); ok || s.mark(i-1) == '\'' || s.mark(i-1) == '’' {
			return e, ok
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
	default:
		_, bottom := vulgar(r)
		return bottom > 0 || moneySigns[r] != "" && s.kind(s.over(i+1)) == digitToken
	}
}

// inDigits reads an expression that begins with a number in digits.
func (s *scanner) inDigits(i int) (expression, bool) {
	if s.kind(i-1) == wordToken && s.kind(i) == digitToken {
		return expression{}, false // the middle of a word; codes are read at their head
	}
	for _, read := range [...]func(*scanner, int) (expression, bool){
		(*scanner).overload, (*scanner).version, (*scanner).date, (*scanner).clock, (*scanner).price, (*scanner).duration,
		(*scanner).measured, (*scanner).code,
	} {
		if e, ok := read(s, i); ok {
			return e, true
		}
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
	if (s.mark(at) == '-' || s.kind(at) == spaceToken) && s.word(at+1) == "ish" && !s.isGlued(at+2) { // "twenty-ish ohms"
		at += 2
	}
	switch {
	case s.kind(at) == spaceToken && !strings.Contains(s.at(at), "\n\n"):
		at++
	case s.mark(at) == '-' || s.mark(at) == '‑':
		if s.kind(at+1) != wordToken || s.mark(n.start-1) == '-' && s.kind(n.start-2).solid() && isCodeWord(s.at(at+1)) {
			return a // the end of "88-2041-C"
		}
		at++
	}
	if n.bottom > 0 || n.value < 1 && n.decimals != "" {
		at = s.ofA(at)
	}
	if n.inWords {
		at = s.oddBit(at)
	}
	if m, ok := s.unitAt(at, &n); ok {
		a.of, a.hasUnit, a.until = m, true, m.end
		if n.inWords {
			s.andHalf(&a)
		}
	}
	return a
}

// ofA steps over "of a", "of an", "a", "of" between a fraction and its unit.
func (s *scanner) ofA(i int) int {
	at := i
	if s.word(at) == "of" && s.kind(at+1) == spaceToken {
		at += 2
	}
	if (s.isArticle(at) || s.word(at) == "one") && s.kind(at+1) == spaceToken {
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
	if !isNumbered && (s.joined(&e) || s.compound(&e)) {
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
		if !ok && found.kind != Size {
			second, ok = s.oneUnit(found.next)
		}
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
