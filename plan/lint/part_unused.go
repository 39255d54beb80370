package lint

import (
	"fmt"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var partUnused = Rule{Name: "part-unused", Group: Completeness, Severity: diag.Note, Check: func(p *Pass) []Report {
	var found []Report
	for i := range p.Plan.Parts {
		v := &p.Plan.Parts[i]
		ref := plan.Ref{Kind: plan.KindPart, ID: v.ID}
		if v.Named || v.Spare || p.quoted[ref] {
			continue
		}
		_, _, n := p.uses(ref, func(s *plan.Step) []string { return s.Parts })
		if n > 0 {
			continue
		}
		found = append(found, Report{
			Message: fmt.Sprintf("%s stands in the list and no step takes it", v.Name.Print),
			Hint:    fmt.Sprintf("add parts = [%q] to the step that needs it, or take it out", v.ID),
			Path:    row(plan.KindPart, i, ""),
		})
	}
	return found
}}
