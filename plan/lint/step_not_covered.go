package lint

import (
	"fmt"

	"fixslate/chapters/align"
	"fixslate/plan/diag"
)

var stepNotCovered = Rule{Name: "step-not-covered", Group: AfterEdit, Severity: diag.Warning, Check: func(p *Pass) []Report {
	if p.Edit == nil {
		return nil
	}
	var out []Report
	for _, s := range p.Edit.Match.Steps {
		if s.Status != align.Missing {
			continue
		}
		out = append(out, Report{
			Message: fmt.Sprintf("step %q is not heard in the edit%s", p.title(s.Index), p.between(s.Index)),
			Hint:    "lay it in, or take it out of the plan, with what quotes it, if it was cut on purpose",
			Path:    stepPath(s.Index, "title"),
		})
	}
	return out
}}

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
