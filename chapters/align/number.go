package align

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// numberAround is how many words around a line its numbers are looked for.
const numberAround = 3

// numbers finds numbers that were said otherwise than planned: the line has
// one, the words heard for it have another of the same kind in its place and
// not the planned one. A number that was not said at all is none.
func (s *settler) numbers() {
	for n := range s.Lines {
		l := &s.Lines[n]
		if !l.Found {
			continue
		}
		planned := prose.Figures(l.Speak)
		if len(planned) == 0 {
			continue
		}
		s.compare(n, planned)
	}
	slices.SortStableFunc(s.Numbers, func(a, b Number) int { return cmp.Compare(a.Start, b.Start) })
}

// passage is a row of words as one text.
type passage struct {
	text  string
	words []int // in Match.Words
	at    []int // where each starts in text
}

func (s *settler) passage(from, to int) passage {
	var p passage
	var b strings.Builder
	for i := max(0, from); i < min(len(s.Words), to); i++ {
		if b.Len() > 0 {
			b.WriteByte(' ')
		}
		p.words, p.at = append(p.words, i), append(p.at, b.Len())
		b.WriteString(s.Words[i].Text)
	}
	p.text = b.String()
	return p
}

// word is the index in words of the one that stands at a byte.
func (p passage) word(at int) int {
	k, _ := slices.BinarySearch(p.at, at+1)
	return max(0, k-1)
}

func (s *settler) compare(n int, planned []prose.Figure) {
	l := &s.Lines[n]
	p := s.passage(l.First-numberAround, l.Last+numberAround+1)
	heard := prose.Figures(p.text)
	used := make([]bool, len(heard))
	open := make([]bool, len(planned))
	for i := range open {
		open[i] = true
	}
	// Each number finds its like in the line, then before it; at last one that was
	// said without its unit, in the line.
	for round := range 3 {
		for i, f := range planned {
			for k, h := range heard {
				within := p.words[p.word(h.Start)] >= l.First
				alike := measures(f) == measures(h)
				if open[i] && !used[k] && (within || round == 1) && (alike || round == 2) && sameNumbers(f, h) {
					used[k], open[i] = true, false
				}
			}
		}
	}
	for i, f := range planned {
		if !open[i] {
			continue
		}
		for k, h := range heard {
			if used[k] || !comparable(f, h) || !s.inPlace(n, f, p, h) {
				continue
			}
			used[k] = true
			s.Numbers = append(s.Numbers, s.number(n, f, h, p))
			break
		}
	}
}

func (s *settler) number(n int, f, h prose.Figure, p passage) Number {
	first, last := p.words[p.word(h.Start)], p.words[p.word(h.End-1)]
	w := s.Words[first]
	out := Number{
		Line: n, Planned: f, Heard: h, Print: printed(&s.Lines[n], f), Said: h.Of(p.text),
		Start: w.Start, Cue: w.Cue, Span: w.Span,
	}
	for i := first; i <= last && s.Words[i].Cue == w.Cue; i++ {
		out.Span.End = s.Words[i].Span.End
	}
	return out
}

// printed is a figure of a line's spoken words as the line prints it: "12.4 V",
// not "twelve point four volts". It is compared as spoken, which is what is
// heard.
func printed(l *Line, f prose.Figure) string {
	for _, p := range prose.Figures(l.Print) {
		if measures(f) == measures(p) && sameNumbers(f, p) && sameNumbers(p, f) {
			return p.Of(l.Print)
		}
	}
	return f.Of(l.Speak)
}

// sameNumbers holds where a figure has all numbers of another, in the same unit, in
// another of its kind or in one that was not said: two minutes are not the two
// newton metres before them.
func sameNumbers(f, h prose.Figure) bool {
	for _, v := range f.Values {
		if !slices.ContainsFunc(h.Values, func(o prose.Value) bool { return near(v.Number, o.Number) && !apart(o, v) || inUnit(o, v) }) {
			return false
		}
	}
	return len(f.Values) > 0 || f.Word != "" && strings.EqualFold(f.Word, h.Word)
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-6*max(math.Abs(a), math.Abs(b), 1e-9) }

// measures holds for a figure that was said with a unit.
func measures(f prose.Figure) bool { return len(f.Values) > 0 && f.Values[0].Unit != "" }

// apart holds for values in units that measure different things.
func apart(o, v prose.Value) bool {
	return o.Unit != "" && v.Unit != "" && o.Unit.Dimension() != v.Unit.Dimension()
}

// inUnit holds where a value is another in that one's unit.
func inUnit(o, v prose.Value) bool {
	if o.Unit == "" || v.Unit == "" || o.Unit == v.Unit {
		return false
	}
	q, ok := quantity(o).In(v.Unit)
	return ok && math.Abs(q.Number-v.Number) <= 0.01*math.Abs(v.Number)
}

// comparable holds for figures of which one may stand for the other: what they
// measure or count is the same.
func comparable(f, h prose.Figure) bool {
	if len(f.Values) == 0 || len(h.Values) == 0 {
		return false
	}
	if f.Kind == prose.Ordinal || f.Kind == prose.StepNumber || f.Kind == prose.Time || f.Kind == prose.Date {
		return false
	}
	a, b := f.Values[0].Unit, h.Values[0].Unit
	switch {
	case a != "" && b != "":
		return a == b || a.Dimension() != "" && a.Dimension() == b.Dimension()
	case a == "" && b == "":
		return f.Word != "" && stem(f.Word) == stem(h.Word)
	}
	return false
}

// inPlace holds where the words beside the heard figure answer to the planned
// line: the number is the line's, not that of talk nearby.
func (s *settler) inPlace(n int, f prose.Figure, p passage, h prose.Figure) bool {
	first, last := p.word(h.Start), p.word(h.End-1)
	beside := 0
	for k := max(0, first-numberAround); k < min(len(p.words), last+numberAround+1); k++ {
		if s.Words[p.words[k]].Line == n {
			beside++
		}
	}
	return beside >= 2
}

// quantity is a value as the trade's tables know it.
func quantity(v prose.Value) trade.Quantity { return trade.Quantity{Number: v.Number, Unit: v.Unit} }
