package prose

import (
	"strconv"
	"strings"

	"fixslate/plan/trade"
)

// code reads a designation at token i: letters and digits in one piece, such as
// "NV-2231", "M8x1.25", "CR2032", "5W-30", "T25", "4471-B", "v2.1", "10k"; and
// addresses, whose digits are no figures.
func (s *scanner) code(i int) (expression, bool) {
	if e, ok := s.address(i); ok {
		return e, true
	}
	if s.kind(i-1).solid() || s.mark(i) != 0 && s.mark(i) != '#' {
		return expression{}, false
	}
	start := i
	if s.mark(i) == '#' {
		i++
	}
	end, letters, figures := s.piece(i)
	if !figures || !letters && end == i+1 {
		return expression{}, false
	}
	if first := s.at(i); s.kind(i) == wordToken && s.kind(i+1) == markToken {
		if !isCodeHead(first) || s.mark(i+1) == '.' && numberOnly[s.word(i)] {
			return expression{}, false // "mid-2014", "step-4", "No.10"
		}
	}
	e := expression{kind: PartNumber, start: start, end: end, word: s.slice(start, end)}
	if s.at(i) == "M" && s.kind(i+1) == digitToken {
		s.thread(&e, i+1)
		return e, true
	}
	e.said = s.codeWords(start, end)
	return e, true
}

// longestCode bounds a designation, in tokens.
const longestCode = 64

// piece gives the end of the run of letters, digits and inner marks at i.
func (s *scanner) piece(i int) (end int, letters, figures bool) {
	for end = i; end < i+longestCode; end++ {
		switch s.kind(end) {
		case wordToken:
			letters = true
		case digitToken:
			figures = true
		case markToken:
			inner := strings.ContainsRune("-./+·_×‑", s.mark(end)) && s.kind(end+1).solid() && end > i && s.kind(end-1).solid()
			if !inner {
				return end, letters, figures
			}
		default:
			return end, letters, figures
		}
	}
	for s.isGlued(end) && s.isGlued(end-1) {
		end++ // never stop inside a word
	}
	if s.kind(end-1) == markToken {
		end--
	}
	return end, letters, figures
}

// isCodeHead holds for letters that may begin a code with a mark behind them:
// few, or capitals.
func isCodeHead(word string) bool {
	return len(word) <= 2 && !functionWords[word] || len(word) <= 5 && strings.ToUpper(word) == word
}

// codeWords says a designation: letters one by one, digits as numbers up to
// two, longer ones digit by digit unless they are round hundreds.
func (s *scanner) codeWords(i, end int) string {
	var parts []string
	add := func(words string) { parts = append(parts, words) }
	for ; i < end; i++ {
		switch s.kind(i) {
		case digitToken:
			add(codeDigits(s.at(i)))
		case wordToken:
			w := s.at(i)
			switch {
			case (w == "x" || w == "X") && s.kind(i-1) == digitToken && s.kind(i+1) == digitToken:
				add("by")
			case w == "v" && s.kind(i+1) == digitToken:
				add("version")
			case len(w) <= 2 || isSpelledOut(w) || strings.Trim(strings.ToLower(w), "bcdfghjklmnpqrstvwxz") == "" && len(w) <= 5:
				add(letters(strings.ToUpper(w)))
			default:
				add(w)
			}
		case markToken:
			switch r := s.mark(i); {
			case r == '#':
				add("number")
			case r == '.' && s.kind(i+1) == digitToken && s.kind(i-1) == digitToken:
				add("point")
			case r == '+':
				add("plus")
			case r == '×':
				add("by")
			}
		}
	}
	return strings.Join(parts, " ")
}

func codeDigits(digits string) string {
	round := len(digits) == 3 && strings.HasSuffix(digits, "00")
	if len(digits) <= 2 || round {
		return cardinal(digits)
	}
	return eachDigit(digits)
}

// letters spaces the letters of a word: "USB" is said "U S B".
//
// Twins have a name of their own: "AA" is "double A".
func letters(word string) string {
	if same := strings.Trim(word, word[:1]) == ""; same && len(word) == 2 {
		return "double " + word[:1]
	} else if same && len(word) == 3 {
		return "triple " + word[:1]
	}
	return strings.Join(strings.Split(word, ""), " ")
}

// thread reads the sizes of a metric thread behind its M: "M8", "M8x1.25",
// "M10 by 1.25", "M6 × 1 × 20".
func (s *scanner) thread(e *expression, i int) {
	n, _ := s.digits(i)
	if n.bottom > 0 { // "M8 1/2"
		n = numeral{start: i, end: i + 1, whole: s.at(i)}
		n.value = parseDecimal(n.whole, "")
	}
	first := amount{numeral: n, until: n.end}
	size := expression{start: i, end: n.end, amounts: []amount{first}}
	s.moreTimes(&size)
	said := "M"
	for k, a := range size.amounts {
		if k > 0 {
			said += " by"
		}
		said += " " + a.words()
		e.values = append(e.values, Value{a.value, trade.Millimetre})
	}
	last := size.amounts[len(size.amounts)-1]
	if last.hasUnit {
		said += " " + last.of.says(2)
	}
	if s.isGlued(size.end) || size.end < e.end { // "M8-60", "M12A"
		e.said = s.codeWords(e.start, e.end)
		e.values = nil
		return
	}
	e.kind, e.end, e.said = Size, size.end, said
	e.word = s.slice(e.start, e.end)
}

// glued reads what is written in one piece with a number: "1st", "4x", "10k",
// "50:1", "3/8-16", "1990s", "12/24 V".
func (s *scanner) glued(start int, first amount) (expression, bool) {
	n := first.numeral
	e := expression{start: start, end: n.end + 1, amounts: []amount{first}}
	next := s.word(n.end)
	switch {
	case first.hasUnit && next == "s" && isYear(&n) && !s.isGlued(n.end+1):
		e.kind, e.said = Date, plural(year(int(n.value)))
		e.values = []Value{{Number: n.value}}
		return e, true
	case s.mark(start) == '#' && s.closed(first.until):
		e.kind, e.end, e.said = StepNumber, first.until, "number "+n.words()
		return e, true
	case first.hasUnit && s.mark(first.until) != '/' && !s.unified(first.until):
		return e, false
	case ordinalEndings[next]:
		if n.decimals != "" || n.bottom > 0 || s.isGlued(n.end+1) {
			return e, false
		}
		e.kind, e.said = Ordinal, ordinal(n.whole)
		e.amounts = []amount{{numeral: n, until: n.end}}
		return e, true
	case s.isMultiplier(n.end):
		e.kind, e.said = Count, n.words()
		if s.kind(n.end) == spaceToken {
			e.end++
		}
		if s.sayTimes(e.end) {
			e.said += " times"
		}
		return e, true
	case (next == "k") && !s.isGlued(n.end+1):
		e.kind, e.said = Count, n.words()+" K"
		e.values = []Value{{Number: n.value * 1000}}
		return e, true
	case s.mark(n.end) == ':' && s.kind(n.end+1) == digitToken:
		return s.ratio(e, n)
	case n.bottom > 0 && s.unified(first.until):
		return s.inchThread(start, first), true
	}
	return s.either(e, first)
}

// unified says whether the threads per inch follow at token i: "1/4-20".
func (s *scanner) unified(i int) bool {
	return s.mark(i) == '-' && s.kind(i+1) == digitToken && len(s.at(i+1)) <= 2 && !s.isGlued(i+2)
}

// inchThread reads "3/8-16" and `1/4"-20`.
func (s *scanner) inchThread(start int, first amount) expression {
	end := first.until + 2
	said := fractionAlone(&first.numeral)
	if first.hasUnit {
		said += " " + first.of.says(1)
	}
	return expression{kind: PartNumber, start: start, end: end, word: s.slice(start, end), said: said + " " + cardinal(s.at(end-1))}
}

// isMultiplier holds for the "x" of "4x M8", "2× 1.5 V" and "2 x AAA".
func (s *scanner) isMultiplier(i int) bool {
	if s.kind(i) == spaceToken {
		return (s.word(i+1) == "x" || s.mark(i+1) == '×') && s.kind(i+2) == spaceToken && (s.kind(i+3).solid() || s.mark(i+3) != 0 && s.startsNumber(i+3))
	}
	return s.word(i) == "x" && !s.isGlued(i+1) || s.mark(i) == '×'
}

// sayTimes says whether a multiplier that ends at i is said: "2x zoom" is, "4x
// M8 bolts" and "2 x 13 mm sockets" are not.
func (s *scanner) sayTimes(i int) bool {
	at := s.over(i)
	if a, ok := s.amountAt(at); ok {
		return !s.attributive(a.until)
	}
	if _, isCode := s.code(at); isCode || isSpelledOut(s.at(at)) {
		return false
	}
	return !s.isCounted(i)
}

func plural(words string) string {
	if stem, ok := strings.CutSuffix(words, "y"); ok {
		return stem + "ies"
	}
	return words + "s"
}

// ratio reads "50:1" and "1:50".
func (s *scanner) ratio(e expression, n numeral) (expression, bool) {
	m, ok := s.digits(n.end + 1)
	if !ok || !s.closed(m.end) || m.value == 0 || n.value == 0 {
		return e, false
	}
	e.kind, e.end = Ratio, m.end
	e.said = n.words() + " to " + m.words()
	value := n.value / m.value
	if n.value < m.value {
		value = m.value / n.value
	}
	e.values = []Value{{Number: value}}
	return e, true
}

// either reads alternatives before one unit: "12/24 V".
func (s *scanner) either(e expression, first amount) (expression, bool) {
	if s.mark(first.until) != '/' || s.kind(first.until+1) != digitToken {
		return e, false
	}
	second, ok := s.amountAt(first.until + 1)
	if !ok || !second.hasUnit || !s.closed(second.until) || first.hasUnit && first.of.unit != second.of.unit {
		return e, false
	}
	e.kind, e.joint, e.end = Range, " ", second.until
	e.amounts = []amount{first, second}
	return e, true
}

// version reads digits with two points or more: "2.1.3", a date's "20.11.2026"
// apart.
func (s *scanner) version(i int) (expression, bool) {
	end := i
	points := 0
	for s.kind(end) == digitToken && s.mark(end+1) == '.' && s.kind(end+2) == digitToken && points < longestCode {
		points++
		end += 2
	}
	if points < 2 || s.isGlued(end+1) {
		return expression{}, false
	}
	if e, ok := s.numericDate(i, '.'); ok {
		return e, true
	}
	end++
	return expression{kind: PartNumber, start: i, end: end, word: s.slice(i, end), said: s.codeWords(i, end)}, true
}

// address reads a web or mail address, which holds no figures.
func (s *scanner) address(i int) (expression, bool) {
	w := s.word(i)
	web := (w == "http" || w == "https") && s.mark(i+1) == ':' && s.mark(i+2) == '/' || w == "www" && s.mark(i+1) == '.'
	mail := s.kind(i) == wordToken && s.mark(i+1) == '@' && s.kind(i+2) == wordToken && s.mark(i+3) == '.'
	if !web && !mail {
		return expression{}, false
	}
	end := i
	for s.kind(end) != noToken && s.kind(end) != spaceToken {
		end++
	}
	for !s.kind(end - 1).solid() {
		end--
	}
	e := expression{kind: noFigure, start: i, end: end}
	from := i
	if w != "www" && web {
		from = i + 4
	}
	e.said = s.addressWords(from, end)
	return e, true
}

func (s *scanner) addressWords(i, end int) string {
	var parts []string
	for ; i < end; i++ {
		switch s.kind(i) {
		case wordToken:
			if s.word(i) == "www" {
				parts = append(parts, "W W W")
			} else {
				parts = append(parts, s.at(i))
			}
		case digitToken:
			parts = append(parts, codeDigits(s.at(i)))
		case markToken:
			if said := addressMarks[s.mark(i)]; said != "" {
				parts = append(parts, said)
			}
		}
	}
	return strings.Join(parts, " ")
}

var addressMarks = map[rune]string{'.': "dot", '/': "slash", '@': "at", '-': "dash"}

// isYear holds for four digits that are said as a year where nothing speaks
// against it.
func isYear(n *numeral) bool {
	if len(n.whole) != 4 || n.grouped || n.decimals != "" || n.bottom > 0 || n.sign != 0 {
		return false
	}
	y, _ := strconv.Atoi(n.whole)
	return y >= 1900 && y < 2100
}

// overload reads the sign a meter shows for an open circuit, "0.L" or "0L".
func (s *scanner) overload(i int) (expression, bool) {
	end := i + 1
	if s.mark(end) == '.' {
		end++
	}
	if s.at(i) != "0" || s.at(end) != "L" || s.isGlued(end+1) {
		return expression{}, false
	}
	return expression{kind: PartNumber, start: i, end: end + 1, word: s.slice(i, end+1), said: "O L"}, true
}
