package book

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/chapters/align"
	"fixslate/chapters/cut"
	"fixslate/plan"
	"fixslate/plan/timing"
)

// reviewStep is one step: its times, and its planned words beside those said.
type reviewStep struct {
	Number         int
	ID, Title      string
	Clock, Planned string // Clock is empty for a missing step
	Status, Sure   string
	Lines          []plannedLine
	Takes          []take
}

// plannedLine is a line of the plan and what became of it.
type plannedLine struct {
	Tag, Words string
	Clock      string // when it was heard; empty: it was not
	Away       bool   // heard in another step
}

// take is what was said in one stretch, in runs of one kind.
type take struct {
	Clock string
	Runs  []said
}

// said is a run of words of one kind: "" for planned ones, "own" for words that
// answer no planned line, "term" and "number" for what a finding is about.
type said struct{ Kind, Words string }

// pause is the silence in seconds that begins a new paragraph of what was said.
const pause = 3

func reviewSteps(r cut.Edit) []reviewStep {
	planned := r.PlannedStarts()
	out := make([]reviewStep, len(r.Match.Steps))
	for i, s := range r.Match.Steps {
		out[i] = reviewStep{
			Number: s.Index + 1, ID: s.ID, Title: titleOf(&r.Plan.Steps[s.Index]), Planned: stamp(planned[s.Index]),
			Status: s.Status.String(), Sure: fmt.Sprintf("%d %%", align.Percent(s.Confidence)),
		}
		if s.Status != align.Missing {
			out[i].Clock = stamp(s.Start)
		}
	}
	for _, l := range r.Match.Lines {
		row := plannedLine{Words: keep(l.Print), Away: l.Away}
		switch l.Kind {
		case timing.Caution:
			row.Tag = "Caution"
		case timing.OtherSide:
			row.Tag = "Other side"
		}
		if l.Found {
			row.Clock = stamp(l.Start)
		}
		out[l.Step].Lines = append(out[l.Step].Lines, row)
	}
	fillTakes(r, out)
	return out
}

// fillTakes writes down what was said in each step, in the order of the edit.
func fillTakes(r cut.Edit, steps []reviewStep) {
	kinds := wordKinds(r)
	for i, w := range r.Match.Words {
		if w.Step < 0 {
			continue
		}
		s := &steps[w.Step]
		fresh := i == 0 || r.Match.Words[i-1].Step != w.Step || w.Start-r.Match.Words[i-1].End > pause
		if fresh {
			s.Takes = append(s.Takes, take{Clock: stamp(w.Start)})
		}
		t := &s.Takes[len(s.Takes)-1]
		if n := len(t.Runs); n > 0 && t.Runs[n-1].Kind == kinds[i] {
			t.Runs[n-1].Words += " " + w.Text
		} else {
			t.Runs = append(t.Runs, said{kinds[i], w.Text})
		}
	}
}

// wordKinds says for each word heard what it is in the review.
func wordKinds(r cut.Edit) []string {
	kinds := make([]string, len(r.Match.Words))
	byCue := map[int][]int{}
	for i, w := range r.Match.Words {
		if w.Line < 0 {
			kinds[i] = "own"
		}
		byCue[w.Cue] = append(byCue[w.Cue], i)
	}
	mark := func(cue, start, end int, kind string) {
		for _, i := range byCue[cue] {
			if s := r.Match.Words[i].Span; s.Start < end && s.End > start {
				kinds[i] = kind
			}
		}
	}
	for _, t := range r.Match.Terms {
		mark(t.Cue, t.Span.Start, t.Span.End, "term")
	}
	for _, n := range r.Match.Numbers {
		mark(n.Cue, n.Span.Start, n.Span.End, "number")
	}
	return kinds
}

func titleOf(s *plan.Step) string {
	if title := strings.TrimSpace(s.Title.Print); title != "" {
		return title
	}
	return s.ID
}

// missingSteps are the indexes of the steps that the edit has not.
func missingSteps(m align.Match) []int {
	var out []int
	for _, s := range m.Steps {
		if s.Status == align.Missing {
			out = append(out, s.Index)
		}
	}
	slices.Sort(out)
	return out
}
