package lint

import (
	"fmt"

	"fixslate/plan/diag"
)

var stepSilent = Rule{Name: "step-silent", Group: Completeness, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		if s.Speaks() || s.OnScreen.Set || len(s.Sounds) > 0 {
			continue
		}
		report(Report{
			Message: fmt.Sprintf("nothing is said in step %q", s.Title.Print),
			Hint:    `add say = "…", or on_screen = "20s" if the picture alone tells it`,
			Path:    stepPath(i, "title"),
		})
	}
}}
