package lint

import (
	"cmp"
	"fmt"
	"slices"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var testUnshown = Rule{Name: "test-unshown", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Tests {
		t := &p.Plan.Tests[i]
		if p.madeIn(t.ID) >= 0 {
			continue
		}
		report(Report{
			Message: fmt.Sprintf("test %q is made in no step", cmp.Or(t.Question.Print, t.ID)),
			Hint:    fmt.Sprintf("add tests = [%q] to the step that shows it, or take it out", t.ID),
			Path:    row(plan.KindTest, i, ""),
		})
	}
}}

// madeIn is the first step that makes a test, -1 where none does.
func (p *Pass) madeIn(test string) int {
	return slices.IndexFunc(p.Plan.Steps, func(s plan.Step) bool { return slices.Contains(s.Tests, test) })
}
