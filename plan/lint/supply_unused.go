package lint

import (
	"fixslate/plan"
	"fixslate/plan/diag"
)

var supplyUnused = Rule{Name: "supply-unused", Group: Completeness, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Supplies {
		v := &p.Plan.Supplies[i]
		if !v.Named && !v.Spare && v.Protects == "" && p.idle(plan.Ref{Kind: plan.KindSupply, ID: v.ID}) {
			report(idle(v.Name.Print, "supplies", v.ID, row(plan.KindSupply, i, "")))
		}
	}
}}
