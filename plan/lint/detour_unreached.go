package lint

import (
	"fmt"

	"fixslate/plan/diag"
)

var detourUnreached = Rule{Name: "detour-unreached", Group: Completeness, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Steps {
		c := p.Plan.Steps[i].OnlyIf
		if c.Test == "" {
			continue
		}
		at := p.madeIn(c.Test)
		title := p.Plan.Steps[i].Title.Print
		switch {
		case at < 0:
			report(Report{
				Message: fmt.Sprintf("step %q waits for test %q, which no step makes", title, c.Test),
				Hint:    fmt.Sprintf("add tests = [%q] to an earlier step", c.Test),
				Path:    stepPath(i, "only_if"),
			})
		case at > i:
			report(Report{
				Message: fmt.Sprintf("step %q waits for test %q, which is made only later, in step %q", title, c.Test, p.Plan.Steps[at].Title.Print),
				Hint:    "move the step behind the test",
				Path:    stepPath(i, "only_if"),
			})
		}
	}
}}
