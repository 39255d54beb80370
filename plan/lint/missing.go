package lint

import (
	"slices"

	"fixslate/plan"
	"fixslate/plan/hazard"
)

// Missing are the cautions that caution-missing asks for and no waiver sets
// aside, one a step and family: what `check --write-cautions` writes.
func Missing(p *Pass) []plan.Addition {
	var add []plan.Addition
	for _, d := range p.dangers(hazard.Missing) {
		f := p.finding(cautionMissing, d.report(p))
		if !slices.ContainsFunc(p.Plan.Waivers, func(w plan.Waiver) bool { return !blank(w.Why) && !blank(w.By) && !p.expired(&w) && p.covers(&w, f) }) {
			add = append(add, plan.Addition{Step: d.step, Class: d.Class})
		}
	}
	return add
}
