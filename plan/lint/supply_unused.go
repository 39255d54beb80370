package lint

import (
	"fmt"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var supplyUnused = Rule{Name: "supply-unused", Group: Completeness, Severity: diag.Note, Check: func(p *Pass) []Report {
	var found []Report
	for i := range p.Plan.Supplies {
		v := &p.Plan.Supplies[i]
		ref := plan.Ref{Kind: plan.KindSupply, ID: v.ID}
		if v.Named || v.Spare || v.Protects != "" || p.quoted[ref] {
			continue
		}
		_, _, n := p.uses(ref, func(s *plan.Step) []string { return s.Supplies })
		if n > 0 {
			continue
		}
		found = append(found, Report{
			Message: fmt.Sprintf("%s stands in the list and no step takes it", v.Name.Print),
			Hint:    fmt.Sprintf("add supplies = [%q] to the step that needs it, or take it out", v.ID),
			Path:    row(plan.KindSupply, i, ""),
		})
	}
	return found
}}
