package plan

import "fixslate/plan/trade"

// Text is words of the plan with its quotes filled.
type Text struct {
	Source string  // as written, Markdown and quotes included
	Print  string  // as printed: quotes filled, inline Markdown reduced to its words
	Quotes []Quote // where in Print the quoted facts stand

	pieces []piece
}

// String is the printed form, so that templates can write a Text as it is.
func (t Text) String() string { return t.Print }

// Empty holds for a text that was not written.
func (t Text) Empty() bool { return t.Source == "" }

// Quote is one place where a fact is quoted.
type Quote struct {
	Start, End int // bytes of Print
	Ref        Ref
	Key        string // "torque" of {pump-screws.torque}, empty for the fact itself
}

// piece ties a stretch of Print to the stretch of Source it came from.
type piece struct {
	print, printEnd   int
	source, sourceEnd int
}

// SourceSpan turns a stretch of Print into the stretch of Source it was made
// from; a stretch inside a quote gives the whole quote.
func (t Text) SourceSpan(start, end int) (int, int) {
	if len(t.pieces) == 0 {
		return start, end
	}
	from, to := -1, len(t.Source)
	for _, p := range t.pieces {
		if from < 0 && start < p.printEnd {
			from = p.at(start, p.source)
		}
		if end <= p.printEnd {
			to = p.at(end, p.sourceEnd)
			break
		}
	}
	if from < 0 {
		from = len(t.Source)
	}
	return from, max(from, to)
}

// at maps an offset inside a piece: exactly where both sides are as long, else
// to the given edge of the source.
func (p piece) at(offset, edge int) int {
	if p.printEnd-p.print == p.sourceEnd-p.source {
		return p.source + max(0, offset-p.print)
	}
	return edge
}

// Note is Markdown of more than a line.
type Note struct {
	Source string
	Plain  string // quotes filled, no markup
	HTML   string // quotes filled, safe to stand in a page
}

// String is the plain form.
func (n Note) String() string { return n.Plain }

// LineKind says what a line of narration is.
type LineKind int

// The kinds of a line in say.
const (
	Spoken    LineKind = iota
	Direction          // round brackets: book only, never spoken or timed
	Sound              // square brackets: a sound label at that place
)

// Line is one line of narration: a sentence, a stage direction or a sound.
// For the last two the text stands without its brackets.
type Line struct {
	Kind LineKind
	Text
	Speak string // the words as the presenter says them, numbers in words
	Start int    // where Source begins in the step's say, in bytes
}

// Value is a measure or words.
type Value struct {
	Text
	Measure trade.Measure // Shape Words where the text is no measure
}

// Stated are the measures that a value gives: its own, and those of the specs
// that it quotes.
func (p *Plan) Stated(v Value) []trade.Measure {
	var found []trade.Measure
	if v.Measure.Measured() {
		found = append(found, v.Measure)
	}
	for _, q := range v.Quotes {
		if q.Ref.Kind != KindSpec {
			continue
		}
		for _, s := range p.Spec(q.Ref.ID) {
			if s.Value.Measure.Measured() {
				found = append(found, s.Value.Measure)
			}
		}
	}
	return found
}
