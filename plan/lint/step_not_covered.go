package lint

import (
	"fmt"

	"fixslate/chapters/align"
	"fixslate/plan/diag"
	"fixslate/plan/timing"
)

var stepNotCovered = Rule{Name: "step-not-covered", Group: AfterEdit, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for _, s := range p.Edit.Match.Steps {
		if s.Status != align.Missing {
			if p.cautionsAlone(s.Index) {
				report(Report{
					Message: fmt.Sprintf("of step %q only its caution is heard in the edit", p.title(s.Index)),
					Hint:    "lay the rest in, or take the step out of the plan, with what quotes it, if it was cut on purpose",
					Path:    stepPath(s.Index, "title"), Place: p.Edit.starts(s.Index),
				})
			}
			continue
		}
		report(Report{
			Message: fmt.Sprintf("step %q is not heard in the edit%s", p.title(s.Index), p.between(s.Index)),
			Hint:    "lay it in, or take it out of the plan, with what quotes it, if it was cut on purpose",
			Path:    stepPath(s.Index, "title"),
		})
	}
}}

// cautionsAlone holds for a step of which cautions were heard, and of two or
// more lines of narration none.
func (p *Pass) cautionsAlone(step int) bool {
	narrated, warned := 0, false
	for _, l := range p.Edit.Match.Lines {
		switch {
		case l.Step != step:
		case l.Kind == timing.Caution:
			warned = warned || l.Found
		case l.Found:
			return false
		default:
			narrated++
		}
	}
	return warned && narrated > 1
}

// between says where a missing step would have stood.
func (p *Pass) between(step int) string {
	steps := p.Edit.Match.Steps
	before, after := -1, -1
	for i := step - 1; i >= 0 && before < 0; i-- {
		if steps[i].Status == align.Found {
			before = i
		}
	}
	for i := step + 1; i < len(steps) && after < 0; i++ {
		if steps[i].Status == align.Found {
			after = i
		}
	}
	switch {
	case before >= 0 && after >= 0:
		return fmt.Sprintf("; it belongs between %q (%s) and %q (%s)", p.title(before), clock(steps[before].Start), p.title(after), clock(steps[after].Start))
	case before >= 0:
		return fmt.Sprintf("; it belongs after %q (%s)", p.title(before), clock(steps[before].Start))
	case after >= 0:
		return fmt.Sprintf("; it belongs before %q (%s)", p.title(after), clock(steps[after].Start))
	}
	return ""
}
