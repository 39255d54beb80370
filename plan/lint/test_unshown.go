package lint

import (
	"cmp"
	"fmt"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var testUnshown = Rule{Name: "test-unshown", Group: Truth, Severity: diag.Warning, Check: func(p *Pass) []Report {
	made := map[string]bool{}
	for i := range p.Plan.Steps {
		for _, id := range p.Plan.Steps[i].Tests {
			made[id] = true
		}
	}
	var found []Report
	for i := range p.Plan.Tests {
		t := &p.Plan.Tests[i]
		if made[t.ID] {
			continue
		}
		found = append(found, Report{
			Message: fmt.Sprintf("test %q is made in no step", cmp.Or(t.Question.Print, t.ID)),
			Hint:    fmt.Sprintf("add tests = [%q] to the step that shows it, or take it out", t.ID),
			Path:    row(plan.KindTest, i, ""),
		})
	}
	return found
}}
