package lint

import (
	"fmt"
	"math"

	"fixslate/chapters"
	"fixslate/chapters/align"
	"fixslate/plan/diag"
)

// shifted is how many seconds a chapter must start off its planned time, beyond
// the spread of the plan, to be worth a word: less than a minute's search.
const shifted = 30

var chapterMoved = Rule{Name: "chapter-moved", Group: AfterEdit, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	if !p.Edit.Match.Trusted() {
		return
	}
	for _, s := range p.Edit.Match.Steps {
		if s.Status == align.Moved {
			report(Report{
				Message: fmt.Sprintf("step %q comes at %s, out of the plan's order", p.title(s.Index), clock(s.Start)),
				Hint:    "see that what it needs is done before it and its caution said; then move it in the plan too",
				Path:    stepPath(s.Index, "title"), Place: p.Edit.starts(s.Index), Step: s.ID,
			})
		}
	}
	p.shiftedChapters(report)
}}

// shiftedChapters are the chapters that begin well outside the times that the
// plan gave: one report for the first, as all that follow it move along.
func (p *Pass) shiftedChapters(report func(Report)) {
	planned := map[int]chapters.Chapter{}
	for _, c := range p.Edit.Chapters {
		if len(c.Steps) > 0 {
			planned[c.Steps[0]] = c
		}
	}
	var first *Report
	n := 0
	for _, c := range p.Chapters {
		if len(c.Steps) == 0 {
			continue
		}
		was, ok := planned[c.Steps[0]]
		if !ok || p.Edit.Match.Steps[c.Steps[0]].Status == align.Moved {
			continue
		}
		off := math.Max(was.Begin.Low-c.Start, c.Start-was.Begin.High)
		if off <= shifted {
			continue
		}
		n++
		if first == nil {
			first = &Report{
				Message: fmt.Sprintf("chapter %q starts at %s, planned between %s and %s", c.Title, clock(c.Start), clock(was.Begin.Low), clock(was.Begin.High)),
				Hint:    "use chapters/final.*; fixslate pace learns from this edit, so that the next plan is nearer",
				Path:    stepPath(c.Steps[0], "title"), Place: p.Edit.starts(c.Steps[0]), Step: p.Plan.Steps[c.Steps[0]].ID,
			}
		}
	}
	if first == nil {
		return
	}
	if n > 1 {
		first.Message += fmt.Sprintf(", and %d more have moved", n-1)
	}
	report(*first)
}
