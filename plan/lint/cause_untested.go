package lint

import (
	"fmt"
	"slices"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var causeUntested = Rule{Name: "cause-untested", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	tested := map[string]bool{}
	for i := range p.Plan.Tests {
		t := &p.Plan.Tests[i]
		for _, id := range slices.Concat(t.Checks, t.Clears, t.Blames) {
			tested[id] = true
		}
		for _, o := range t.Outcomes {
			for _, id := range o.Means {
				tested[id] = true
			}
		}
	}
	for i := range p.Plan.Causes {
		c := &p.Plan.Causes[i]
		if tested[c.ID] {
			continue
		}
		report(Report{
			Message: fmt.Sprintf("no test speaks of the cause %q", c.What.Print),
			Hint:    fmt.Sprintf("add checks = [%q] to the test that finds it, or a test of its own", c.ID),
			Path:    row(plan.KindCause, i, ""),
		})
	}
}}
