package lint

import (
	"fmt"
	"slices"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var helperUncued = Rule{Name: "helper-uncued", Group: Safety, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		for j, c := range s.Cues {
			if c.When.Empty() {
				report(Report{
					Message: fmt.Sprintf("the cue of %s in step %q does not say when", c.Who, s.Title.Print),
					Hint:    "add when = the words or the act that it waits for",
					Path:    stepPath(i, fmt.Sprintf("cue[%d]", j)),
				})
			}
		}
		for _, id := range s.People {
			if id == p.Plan.Presenter || slices.ContainsFunc(s.Cues, func(c plan.Cue) bool { return c.Who == id }) {
				continue
			}
			report(Report{
				Message: fmt.Sprintf("%s is in step %q, and no cue says what they do", id, s.Title.Print),
				Hint:    fmt.Sprintf("add [[step.cue]] with who = %q, when, does and where", id),
				Path:    stepPath(i, "people"),
			})
		}
	}
}}
