package trade

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"unicode"
	"unicode/utf8"
)

// openText is how an open value prints; it is read back as one.
const openText = "to be found"

// ParseMeasure reads a value as a plan states it:
//
//	3 N·m                                    Exact
//	about 12 V, ~12 V                        Exact, About
//	10..20 Ω, 10 to 20 Ω, 10-20 Ω, between 10 and 20 Ω    Range
//	12 ± 0.5 V, 12 V +/- 500 mV, 24 Ω ± 10 %              Tolerance
//	at most, max, up to, ≤; under, below, less than, <    AtMost
//	at least, min, ≥; over, above, more than, >           AtLeast
//	?                                        Open
//
// A limit's word may follow: "0.2 V max", "9.6 V or more". "AC" or "DC" may
// end a voltage or current. The same in another unit may follow in brackets:
// "40 N·m (30 lb·ft)". Any other text is Words. A text that is meant as a
// measure but is none is an error that says what to write: a range that runs
// backwards or mixes dimensions, a negative allowance, NaN, a decimal comma, a
// number with something that looks like a unit and is not. A bare number gives
// an error with errUnitMissing in its chain, and with it the text as Words.
func ParseMeasure(s string) (Measure, error) {
	text := strings.TrimSpace(s)
	if text == "?" || strings.EqualFold(text, openText) {
		return Measure{Shape: Open, Text: text}, nil
	}
	words := Measure{Shape: Words, Text: text}
	if len(text) > maxMeasure {
		return words, nil
	}
	m, err := readTwice(text)
	switch {
	case errors.Is(err, errWords):
		return words, nil
	case err != nil:
		return words, err
	}
	m.Text = text
	return m, nil
}

// maxMeasure bounds the texts that are tried as a measure, in bytes.
const maxMeasure = 200

// errWords says that a text is no measure but plain words.
var errWords = errors.New("words")

// readTwice reads a measure that may be followed by the same in another unit,
// as service manuals print torques: "40 N·m (30 lb·ft)", "40 N·m / 30 lb·ft".
// The first counts; a second that says something else is an error.
func readTwice(text string) (Measure, error) {
	first, second, ok := cutSecond(text)
	if !ok {
		return readMeasure(text)
	}
	m, err := readMeasure(first)
	if err != nil {
		return m, err
	}
	other, err := readMeasure(second)
	if err != nil {
		return readMeasure(text) // "70 dB (A)", "12 V (key on)"
	}
	if other.Unit == m.Unit || other.Unit.Dimension() != m.Unit.Dimension() || other.Shape != m.Shape || m.Shape == Tolerance {
		return Measure{}, errWords
	}
	for i, q := range other.Quantities() {
		mine := m.Quantities()[i]
		in, _ := q.In(mine.Unit)
		if math.Abs(in.Number-mine.Number) > rounding*math.Abs(mine.Number) {
			r, _ := mine.Rounded(q.Unit)
			return Measure{}, fmt.Errorf("%q gives two values that differ: %s is %s; keep the maker's and leave out the other", shorten(text), mine, r)
		}
	}
	return m, nil
}

// rounding is what the rounding of a value printed in two units may explain.
// Common practice, no source.
const rounding = 0.06

// cutSecond splits off what stands in brackets, or after a stroke, at the end.
func cutSecond(text string) (first, second string, ok bool) {
	if first, second, ok = strings.Cut(text, " / "); ok {
		return first, second, true
	}
	if inner, closed := strings.CutSuffix(text, ")"); closed {
		if i := strings.LastIndex(inner, " ("); i > 0 {
			return strings.TrimSpace(inner[:i]), strings.TrimSpace(inner[i+2:]), true
		}
	}
	return text, "", false
}

func readMeasure(text string) (Measure, error) {
	body, limit := cutLimit(text)
	if limit.shape == Words {
		if word, rest := slippedLimit(text); word != "" {
			if _, err := readMeasure(rest); err == nil {
				return Measure{}, fmt.Errorf("%q: write %s", shorten(text), word)
			}
		}
	}
	body, about := cutWord(body, aboutWords)
	between := false
	if limit.shape == Words && !about {
		body, between = cutWord(body, []string{"between"})
	}
	body, flow := cutFlow(body)
	m, err := readValue(gaugeLast(body), between)
	if err != nil {
		return m, err
	}
	if flow != "" && m.Unit.Dimension() != Voltage && m.Unit.Dimension() != Current {
		return m, errWords
	}
	m.Flow, m.About = flow, about
	if limit.shape == Words {
		if about && m.Shape == Tolerance {
			m.About = false // a tolerance says how loosely
		}
		return m, nil
	}
	if m.Shape != Exact {
		return m, fmt.Errorf("%q limits a range; write one value after %q", shorten(text), limit.word)
	}
	m.Shape, m.Strict, m.About = limit.shape, limit.strict, false
	if limit.shape == AtMost {
		m.Low = 0
	} else {
		m.High = 0
	}
	m.Nominal = 0
	return m, nil
}

// cutFlow takes "AC" or "DC" off the end of a voltage or current, set off by a
// space or joined to the unit: "230 V AC", "12 VDC".
func cutFlow(text string) (string, string) {
	n := len(text) - 2
	if n < 2 {
		return text, ""
	}
	flow := strings.ToUpper(text[n:])
	if flow != "AC" && flow != "DC" {
		return text, ""
	}
	head := strings.TrimRight(text[:n], " .\u00a0")
	if endsInDigit(head) || !endsInLetter(head) && !strings.HasSuffix(head, "%") {
		return text, ""
	}
	return head, flow
}

// readValue reads one value, a range or a tolerance.
func readValue(text string, between bool) (Measure, error) {
	first, rest, err := scanNumber(text)
	if errors.Is(err, errNoNumber) {
		return Measure{}, errWords
	}
	if err != nil {
		return Measure{}, onlyIfMeant(err, text)
	}
	unit1, op, right := cutOperator(rest, between)
	if op == noOp {
		q, err := withSpelling(first, unit1, text)
		if err != nil {
			return Measure{}, err
		}
		return Measure{Shape: Exact, Nominal: q.Number, Low: q.Number, High: q.Number, Unit: q.Unit, first: q.written}, nil
	}
	second, rest, err := scanNumber(right)
	switch {
	case errors.Is(err, errNoNumber) && (op == dots || op == plusMinus):
		return Measure{}, fmt.Errorf("%q lacks its second number; write it like %s", shorten(text), op.example())
	case errors.Is(err, errNoNumber):
		return Measure{}, errWords
	case err != nil:
		return Measure{}, err
	}
	unit2 := strings.TrimSpace(rest)
	if op == plusMinus {
		return readTolerance(text, [2]number{first, second}, [2]string{unit1, unit2})
	}
	if op == dash && unit2 == "" {
		return Measure{}, errWords // "2014-2018" are years, "3-4" a place, "10W-40" an oil
	}
	return readRange(text, [2]number{first, second}, [2]string{unit1, unit2})
}

// onlyIfMeant keeps the error of a number unless the text around it shows that
// the comma sets off words: "1,2 and 3".
func onlyIfMeant(err error, text string) error {
	if len(strings.Fields(text)) > 3 {
		return errWords
	}
	return err
}

type operator int

const (
	noOp operator = iota
	dots          // ".."
	plusMinus
	toWord // "to", "and": also found in plain words
	dash   // between two numbers
)

func (o operator) example() string {
	if o == plusMinus {
		return `"12 ± 0.5 V"`
	}
	return `"10..20 Ω"`
}

var operators = []struct {
	text string
	op   operator
}{
	{"...", dots}, {"..", dots}, {"…", dots},
	{"±", plusMinus}, {"+/-", plusMinus}, {"+/−", plusMinus}, {"+-", plusMinus}, {"plus or minus ", plusMinus}, {"plus/minus ", plusMinus},
}

// cutOperator splits what follows the first number at the first operator.
func cutOperator(rest string, between bool) (unit string, op operator, right string) {
	lower := strings.ToLower(rest)
	if len(lower) != len(rest) {
		lower = rest // a letter that changes its length in lower case is in no operator
	}
	for i := range lower {
		for _, o := range operators {
			if strings.HasPrefix(lower[i:], o.text) {
				return strings.TrimSpace(rest[:i]), o.op, strings.TrimSpace(rest[i+len(o.text):])
			}
		}
		if n := dashAt(lower[i:]); n > 0 {
			return strings.TrimSpace(rest[:i]), dash, strings.TrimSpace(rest[i+n:])
		}
		for _, w := range []string{" to ", " and "} {
			if strings.HasPrefix(lower[i:], w) && (w == " to " || between) {
				return strings.TrimSpace(rest[:i]), toWord, strings.TrimSpace(rest[i+len(w):])
			}
		}
	}
	return strings.TrimSpace(rest), noOp, ""
}

// dashAt is the length of a dash or "~" that a number follows, else 0: the
// hyphen of "N-m" is none.
func dashAt(s string) int {
	r, size := utf8.DecodeRuneInString(s)
	if !strings.ContainsRune("-–—−~", r) {
		return 0
	}
	if next := strings.TrimLeft(s[size:], " "); next == "" || (next[0] < '0' || next[0] > '9') && next[0] != '-' && next[0] != '.' {
		return 0
	}
	return size
}

// withSpelling joins a number and the spelling of its unit. What is no unit is
// words, unless it looks as if it were meant for one.
func withSpelling(n number, spelling, text string) (Quantity, error) {
	if spelling == "" {
		return Quantity{}, unitMissing{text}
	}
	u, ok := LookupUnit(spelling)
	if !ok {
		if isPower(spelling) {
			return Quantity{}, powerOfTen(text)
		}
		if looksLikeUnit(spelling) {
			return Quantity{}, unknownUnit(spelling)
		}
		return Quantity{}, errWords
	}
	return newQuantity(n, u)
}

// countWords are short words after a count that have no vowel, as units do.
var countWords = []string{"st", "nd", "rd", "th", "x", "pcs", "pc", "mpg", "cyl", "yr"}

// looksLikeUnit holds for one token that is a unit in other letters ("MA"), or
// holds signs that only units have, or is short and cannot be spoken ("Nmm").
// "4 pins" and "10W-40" are words.
func looksLikeUnit(spelling string) bool {
	key := strings.ToLower(unitKey(spelling))
	if _, ok := choices[key]; ok {
		return true
	}
	if spellings().meanings[key].symbols != nil {
		return true
	}
	if strings.ContainsAny(spelling, " \t") || strings.ContainsAny(spelling, "0123456789") {
		return false
	}
	if strings.ContainsAny(spelling, "·⋅°²³ΩΩµμ%‰") {
		return true
	}
	if over, under, ok := strings.Cut(spelling, "/"); ok {
		_, first := LookupUnit(over)
		_, second := LookupUnit(under)
		return first && second // "N/m"; "in/out" are words
	}
	for _, w := range countWords {
		if strings.EqualFold(spelling, w) {
			return false
		}
	}
	isSpoken := strings.ContainsAny(key, "aeiouy")
	isLetters := !strings.ContainsFunc(spelling, func(r rune) bool { return !unicode.IsLetter(r) })
	return isLetters && !isSpoken && utf8.RuneCountInString(spelling) <= 5
}

// pair gives both numbers of a range or tolerance their units; a unit written
// once serves both.
func pair(text string, n [2]number, spelling [2]string) (a, b Quantity, err error) {
	if spelling[1] == "" {
		spelling[1] = spelling[0]
	}
	if spelling[0] == "" {
		spelling[0] = spelling[1]
	}
	if a, err = withSpelling(n[0], spelling[0], text); err != nil {
		return a, b, err
	}
	b, err = withSpelling(n[1], spelling[1], text)
	return a, b, err
}

func readRange(text string, n [2]number, spelling [2]string) (Measure, error) {
	low, high, err := pair(text, n, spelling)
	if err != nil {
		return Measure{}, err
	}
	if low.Unit != high.Unit {
		in, ok := low.In(high.Unit)
		if !ok {
			return Measure{}, fmt.Errorf("%q runs from a %s to a %s; give both ends in one unit, like \"10..20 Ω\"",
				shorten(text), low.Unit.Dimension(), high.Unit.Dimension())
		}
		low = in
	}
	if low.Number > high.Number {
		return Measure{}, fmt.Errorf("%q runs backwards; write the smaller end first, \"%s..%s %s\"",
			shorten(text), high.numberText(), low.numberText(), string(high.Unit))
	}
	return Measure{Shape: Range, Low: low.Number, High: high.Number, Nominal: low.Number/2 + high.Number/2,
		Unit: high.Unit, first: low.written, second: high.written}, nil
}

func readTolerance(text string, n [2]number, spelling [2]string) (Measure, error) {
	if n[1].value < 0 || strings.HasPrefix(n[1].written, "-") {
		return Measure{}, fmt.Errorf("%q has a negative allowance; write it without the sign, like \"12 ± 0.5 V\"", shorten(text))
	}
	if u, ok := LookupUnit(spelling[1]); ok && u == Percent && spelling[0] == "" {
		spelling[0] = spelling[1]
	}
	nominal, allowance, err := pair(text, n, spelling)
	if err != nil {
		return Measure{}, err
	}
	if nominal.Unit == Gauge || allowance.Unit == Gauge {
		return Measure{}, fmt.Errorf("%q gives a wire gauge an allowance; write the sizes that fit, like \"14..16 AWG\"", shorten(text))
	}
	m := Measure{Shape: Tolerance, Nominal: nominal.Number, Allowance: allowance.Number, Unit: nominal.Unit,
		AllowanceUnit: allowance.Unit, first: nominal.written, second: allowance.written}
	spread, ok := difference(allowance.Number, allowance.Unit, nominal.Unit)
	if !ok && allowance.Unit == Percent {
		spread, ok = math.Abs(nominal.Number)*allowance.Number/100, true
	}
	if !ok {
		return Measure{}, fmt.Errorf("%q allows a %s on a %s; give the allowance in %s or in %%",
			shorten(text), allowance.Unit.Dimension(), nominal.Unit.Dimension(), string(nominal.Unit))
	}
	m.Low, m.High = m.Nominal-spread, m.Nominal+spread
	return m, nil
}
