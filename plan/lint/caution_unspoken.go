package lint

import (
	"fmt"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/hazard"
)

var cautionUnspoken = Rule{Name: "caution-unspoken", Group: Safety, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	for _, d := range p.dangers(hazard.Carded) {
		r := d.report(p)
		r.Message = fmt.Sprintf("step %q shows the caution of %s on a card, and nobody says it", p.Plan.Steps[d.step].Title.Print, d.name())
		r.Hint = "give the caution its say again, or say it in the step before the action"
		report(r)
	}
	p.cautionsUnlisted(report)
}}

// cautionsUnlisted are the cautions that somebody wrote for this plan and that
// no step speaks: most often one was taken out of a step's list. Where
// caution-missing or caution-late speaks of the same danger they are passed
// over, for the remedy is the same.
func (p *Pass) cautionsUnlisted(report func(Report)) {
	asked := map[string]bool{}
	for _, cover := range []hazard.Cover{hazard.Missing, hazard.Late} {
		for _, d := range p.dangers(cover) {
			asked[d.Family] = true
		}
	}
	listed := map[string]bool{}
	for i := range p.Plan.Steps {
		for _, use := range p.Plan.Steps[i].Cautions {
			listed[use.ID] = listed[use.ID] || use.Listed
		}
	}
	for i := range p.Plan.Cautions {
		c := &p.Plan.Cautions[i]
		if c.Stock || c.Spare || asked[c.Family] || listed[c.ID] {
			continue
		}
		report(Report{
			Message: fmt.Sprintf("caution %q is written and no step speaks it", c.ID),
			Hint:    fmt.Sprintf("add cautions = [%q] to the step that it is for, or take it out", c.ID),
			Path:    row(plan.KindCaution, i, ""), Severity: diag.Warning, Families: []string{c.Family},
		})
	}
}
