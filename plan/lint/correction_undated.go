package lint

import (
	"fmt"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var correctionUndated = Rule{Name: "correction-undated", Group: Publish, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	for i, c := range p.Plan.Corrections {
		if c.Date == (plan.Date{}) {
			report(Report{
				Message: fmt.Sprintf("the correction %q has no date", c.Now.Print),
				Hint:    "add date = the day it was published, so that viewers know whether they have seen it",
				Path:    fmt.Sprintf("correction[%d]", i),
			})
		}
	}
}}
