package lint

import (
	"fmt"

	"fixslate/plan/diag"
)

var valueOpen = Rule{Name: "value-open", Group: Truth, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	severity := [...]diag.Severity{diag.Note, diag.Warning, diag.Error}[p.Stage]
	for _, o := range p.Plan.Open {
		hint := "look it up and write it in"
		if o.Verify != "" {
			hint = o.Verify
		}
		report(Report{
			Message: fmt.Sprintf("%s: %s is still to be found", o.What, o.Key), Hint: hint,
			Path: o.Path, About: o.Ref, Severity: severity,
		})
	}
}}
