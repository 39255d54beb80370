package prose

import (
	"strings"

	"fixslate/plan/trade"
)

// FigureKind is what a number in a text is.
type FigureKind int

const (
	noFigure   FigureKind = iota
	Count                 // a number of things, or a bare number: "three screws", "187"
	Quantity              // a number with a unit: "12 V", "ten mil", "half a turn"
	Range                 // two values, or one of two: "10..20 Ω", "six or seven turns"
	Tolerance             // nominal and allowance: "24 Ω ± 10 %"; the allowance alone for "± 5 %"
	Limit                 // a bound: "at most 0.2 V", "over 25 A"
	Ratio                 // "fifty to one" is 50; 1:50 too
	Fraction              // a fraction of no unit: "a third"
	Percent               // 0 to 100
	Money                 // "£28.50"; units GBP, EUR, USD, JPY, and p and c for hundredths
	Time                  // a time of day, in minutes after midnight
	Date                  // a date or year; the value is the year, if it is given
	Size                  // sizes one by another, and metric threads: "10 x 20 mm", "M8x1.25"
	PartNumber            // letters and digits, or digits given one by one
	Ordinal               // "1st"
	StepNumber            // counts the parts of a text or a list: "step 4", "page 12", "No. 3"
	Label                 // names a thing: "pin 3", "fuse 12", "DOT 4", "terminal 30"
)

var figureNames = [...]string{"none", "count", "quantity", "range", "tolerance", "limit", "ratio", "fraction", "percent",
	"money", "time", "date", "size", "part number", "ordinal", "step number", "label"}

// String is the kind's name in lower case.
func (k FigureKind) String() string {
	return figureNames[k]
}

// Value is a number with its unit, the zero Unit for none.
type Value struct {
	Number float64
	Unit   trade.Unit
}

// Figure is a number, or a few that belong together, as it stands in a text.
type Figure struct {
	Span
	Kind   FigureKind
	Values []Value // a range has two, a tolerance nominal and allowance, a size as many as it has sides
	Word   string  // of a count what is counted; of a label its noun; of a part number its text, in digits if it was all digits
	Spoken bool    // written in words
}

// Figures finds the numbers in a text, in digits and in words, with their
// units, in order and without overlap. Punctuation and capitals help but are
// not needed: captions have neither. A lone "one" is no figure, nor is "half"
// or an ordinal in words. Linear in the text.
func Figures(text string) []Figure { return newScanner(text).figures(nil) }

func (s *scanner) figures(found []Figure) []Figure {
	for e := range s.expressions() {
		if e.kind == noFigure {
			continue
		}
		found = append(found, Figure{
			Span:   s.span(e.start, e.end),
			Kind:   e.kind,
			Values: e.figureValues(),
			Word:   e.word,
			Spoken: e.inWords,
		})
	}
	return found
}

func (e *expression) figureValues() []Value {
	if e.values != nil {
		return e.values
	}
	var values []Value
	for _, a := range e.amounts {
		v := Value{Number: a.value}
		if a.hasUnit {
			v.Unit = a.of.unit
		}
		values = append(values, v)
	}
	if len(values) < 2 {
		return values
	}
	// The unit written once holds for all; an allowance in per cent does not
	// make its nominal one.
	last := values[len(values)-1].Unit
	if last == "" && (e.kind == Range || e.kind == Size) {
		last = values[0].Unit // "an hour or two", "eight mil by a hundred"
	}
	for i := range values {
		if values[i].Unit == "" && !(e.kind == Tolerance && last == trade.Percent) {
			values[i].Unit = last
		}
	}
	if e.kind == Tolerance && values[1].Unit == "" {
		values[1].Unit = values[0].Unit
	}
	return values
}

// classify finishes the kind of an expression from its numbers and the words
// around it.
func (s *scanner) classify(e *expression) {
	if e.kind == Range && len(e.amounts) == 2 && s.isRatio(e) {
		e.kind = Ratio
		e.values = []Value{{Number: e.amounts[0].value}}
		return
	}
	if e.kind == Count && e.word == "" {
		e.word = s.noun(e.end)
	}
	if e.kind != Quantity || len(e.amounts) != 1 {
		return
	}
	a := &e.amounts[0]
	switch {
	case a.hasUnit && a.of.money:
		e.kind = Money
	case a.hasUnit || len(e.values) > 0 && e.values[0].Unit != "":
		if a.of.unit == trade.Percent {
			e.kind = Percent
		}
		if s.isLimit(e) {
			e.kind = Limit
		}
	default:
		s.classifyBare(e, a)
	}
}

// classifyBare finishes the kind of a number without a unit.
func (s *scanner) classifyBare(e *expression, a *amount) {
	before := s.labelBefore(e.start)
	label := labels[before]
	switch {
	case before == "awg":
		e.values = []Value{{a.value, trade.Gauge}}
	case a.bottom > 0 && a.whole == "":
		e.kind = Fraction
	case a.digitRun:
		e.kind, e.word = PartNumber, a.whole
	case s.isDated(a):
		e.kind = Date
	case s.timeOfDay(e, a):
	case label != noFigure && a.decimals == "":
		e.kind, e.word = label, before
	default:
		e.kind, e.word = Count, s.noun(e.end)
		if s.isLimit(e) {
			e.kind = Limit
		}
	}
}

// isDated says whether a number without a unit is a year.
func (s *scanner) isDated(a *amount) bool {
	if a.yearly {
		return true
	}
	isLate := a.inWords && a.value > 2000 && a.value < 2100 // "two thousand and six"
	return (isLate || isYear(&a.numeral)) && !s.isCounted(a.until)
}

// timeOfDay makes a time of a number before "am", "p.m." or "o'clock".
func (s *scanner) timeOfDay(e *expression, a *amount) bool {
	if a.value < 1 || a.value > 12 || a.value != float64(int(a.value)) {
		return false
	}
	if s.word(s.over(a.until)) == "o'clock" {
		e.kind, e.values = Time, []Value{{a.value * 60, trade.Minute}}
		return true
	}
	end, half, ok := s.half(e.end)
	if !ok {
		return false
	}
	hours := float64(int(a.value) % 12)
	if half == "P M" {
		hours += 12
	}
	e.kind, e.end, e.values = Time, end, []Value{{hours * 60, trade.Minute}}
	if !a.inWords {
		e.said = a.words() + " " + half
	}
	return true
}

// isRatio holds for "fifty to one".
func (s *scanner) isRatio(e *expression) bool {
	a, b := e.amounts[0], e.amounts[1]
	if b.value != 1 || a.value <= 1 || a.hasUnit || b.hasUnit {
		return false
	}
	return s.word(s.over(a.until)) == "to"
}

// isCounted says whether a plural noun follows: "2000 cycles", and of "two
// twelve volt batteries" there are two.
func (s *scanner) isCounted(i int) bool {
	w := s.noun(i)
	return w == "people" || len(w) > 3 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss")
}

// noun is the word behind a number that may be what it counts, else empty.
func (s *scanner) noun(i int) string {
	at := s.over(i)
	if at == i && s.mark(i) == '-' {
		at++
	}
	w := s.word(at)
	if w == "times" {
		return w
	}
	if at == i || functionWords[w] || len(w) < 2 || s.number(at).class != noNumber {
		return ""
	}
	return w
}

// isLimit says whether the words or sign before an expression make it a bound.
func (s *scanner) isLimit(e *expression) bool {
	i := s.back(e.start)
	switch s.mark(i) {
	case '<', '>', '≤', '≥':
		return true
	case '.':
		i--
	}
	last := s.word(i)
	before := s.word(s.back(i))
	switch last {
	case "over", "under", "above", "below", "exceeding", "exceed", "exceeds", "beyond", "max", "min", "minimum", "maximum":
		return true
	case "most", "least":
		return before == "at"
	case "than":
		switch before {
		case "more", "less", "fewer", "higher", "lower", "longer", "shorter", "thicker", "thinner", "greater", "bigger", "smaller", "better", "worse", "hotter", "colder", "heavier", "lighter", "wider", "deeper":
			return true
		}
	case "to":
		return before == "up" || before == "down"
	case "of":
		return before == "maximum" || before == "minimum" || before == "limit"
	}
	switch next := s.word(s.over(e.end)); next {
	case "max", "maximum", "min", "minimum", "tops":
		return true
	case "or":
		switch s.word(s.over(s.over(e.end) + 1)) {
		case "more", "less", "fewer", "better", "above", "below", "over", "under", "higher", "lower", "longer", "finer":
			return true
		}
	case "at":
		switch s.word(s.over(s.over(e.end) + 1)) {
		case "most", "least":
			return true
		}
	}
	return false
}
