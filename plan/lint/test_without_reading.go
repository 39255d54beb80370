package lint

import (
	"cmp"
	"fmt"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var testWithoutReading = Rule{Name: "test-without-reading", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Tests {
		t := &p.Plan.Tests[i]
		if t.Expect.Print != "" || t.Expect.Source != "" || len(t.Readings)+len(t.Outcomes) > 0 {
			continue
		}
		report(Report{
			Message: fmt.Sprintf("test %q does not say what a good reading is", cmp.Or(t.Question.Print, t.ID)),
			Hint:    `add expect = "10..20 Ω", or words: expect = "turns freely"`,
			Path:    row(plan.KindTest, i, ""),
		})
	}
}}
