package pace

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"unicode"

	"fixslate/chapters/align"
	"fixslate/plan/prose"
	"fixslate/plan/timing"
)

const (
	// heardEnough is the share of a planned line that must have been heard for
	// its commas and full stops to be where the presenter paused.
	heardEnough = 0.6
	// silence is the gap in seconds from which nobody pauses but works: the
	// longest range of pauses between read paragraphs found ends at 1.80 s
	// (Kazlauskiene and Kalasinskaite 2020).
	silence = 2.0
	// edge is how far in seconds the start of a word may be off, as captions
	// time cues and not words; end the same for the last word of a line, as
	// cues are left standing. Common practice, no source.
	edge = 0.25
	end  = 0.5
)

// runs are the stretches of an edit's talk that say what the plan has, with
// nothing between their lines.
//
// A stretch is measured from the start of its first line to the start of its
// last: starts of cues are made with care, ends are left standing for the
// reader. A line alone is measured to its end. Characters are those heard,
// commas and full stops those of the plan, as automatic captions have none.
func runs(m align.Match) (out []run, lines int) {
	var group []align.Line
	flush := func() {
		if len(group) > 0 {
			r, used := stretch(m, group)
			if r.load[talk] > 0 && r.took > 0.5 {
				out = append(out, r)
				lines += used
			}
		}
		group = nil
	}
	for _, l := range heardLines(m) {
		if n := len(group); n > 0 {
			last := group[n-1]
			if l.First != last.Last+1 || m.Words[l.First].Start-m.Words[last.Last].End > silence {
				flush()
			}
		}
		group = append(group, l)
	}
	flush()
	return out, lines
}

// heardLines are the lines that were said nearly as written and without a
// stop, by start.
func heardLines(m align.Match) []align.Line {
	var lines []align.Line
	for _, l := range m.Lines {
		if !l.Found || l.Share < heardEnough || l.First < 0 || l.Last >= len(m.Words) || l.First > l.Last {
			continue
		}
		whole := true
		for i := l.First; i < l.Last; i++ {
			whole = whole && m.Words[i+1].Start-m.Words[i].End <= silence
		}
		if whole {
			lines = append(lines, l)
		}
	}
	slices.SortStableFunc(lines, func(a, b align.Line) int { return cmp.Compare(a.First, b.First) })
	return lines
}

// stretch measures lines that follow each other.
func stretch(m align.Match, group []align.Line) (r run, lines int) {
	start := group[0].Start
	if len(group) == 1 {
		l := group[0]
		r.load = loadOf(m, l).minus(restOf(l))
		r.took = l.End - start
		r.variance = edge*edge + end*end + lineVariance(r.load)
		return r, 1
	}
	last := len(group) - 1
	r.variance = 2 * edge * edge
	for _, l := range group[:last] {
		load := loadOf(m, l)
		r.load = r.load.plus(load)
		r.variance += lineVariance(load)
	}
	r.took = group[last].Start - start
	return r, last
}

// lineVariance is what is left unsaid about one line, the voice known.
func lineVariance(load vector) float64 {
	sd := timing.LineSpread * load.dot(vector{1, 1, 1})
	return float64(sd * sd)
}

// loadOf is how long a line takes at the default rate, by part: timing.Seconds
// is a sum of these three, so each comes out alone where the others are nothing.
func loadOf(m align.Match, l align.Line) vector {
	def := timing.DefaultRate()
	ratio := letters(heard(m, l)) / max(1, letters(l.Speak))
	return vector{
		talk:     ratio * timing.Seconds(l.Speak, timing.Rate{CharactersPerSecond: def.CharactersPerSecond}),
		comma:    timing.Seconds(l.Speak, timing.Rate{CharactersPerSecond: math.Inf(1), Comma: def.Comma}),
		sentence: timing.Seconds(l.Speak, timing.Rate{CharactersPerSecond: math.Inf(1), Sentence: def.Sentence}),
	}
}

// restOf is the pause after a line, which is not in it when it stands alone.
func restOf(l align.Line) vector {
	def := timing.DefaultRate()
	return vector{
		comma:    timing.Rest(l.Speak, timing.Rate{CharactersPerSecond: 1, Comma: def.Comma}),
		sentence: timing.Rest(l.Speak, timing.Rate{CharactersPerSecond: 1, Sentence: def.Sentence}),
	}
}

// heard is a line as it was heard, numbers in words.
func heard(m align.Match, l align.Line) string {
	var b strings.Builder
	for _, w := range m.Words[l.First : l.Last+1] {
		b.WriteString(w.Text + " ")
	}
	return prose.Spoken(b.String())
}

func letters(text string) float64 {
	n := 0
	for _, r := range text {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			n++
		}
	}
	return float64(n)
}
