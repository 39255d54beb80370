package lint

import (
	"fmt"
	"slices"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/hazard"
	"fixslate/plan/hazard/class"
)

var cautionStale = Rule{Name: "caution-stale", Group: Safety, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for _, d := range p.dangers(hazard.Stale) {
		r := d.report(p)
		r.Message = fmt.Sprintf("step %q acts on %s again, and its caution was given before that state ended", p.Plan.Steps[d.step].Title.Print, d.name())
		r.Hint = fmt.Sprintf("give it again: cautions = [%q]", d.Class)
		report(r)
	}
	for _, d := range p.dangers(hazard.Spoken) {
		s := &p.Plan.Steps[d.step]
		if d.Signal < class.Danger || s.Chapter.Joined || d.step == 0 || p.carded(s, d.Hazard) {
			continue
		}
		r := d.report(p)
		r.Message = fmt.Sprintf("a viewer who lands on the chapter %q has neither heard nor read the caution of %s", s.Title.Print, d.name())
		r.Hint = fmt.Sprintf("list it again: cautions = [%q] shows its card there, and is not spoken twice while it lasts", d.Caution)
		report(r)
	}
}}

// carded holds where the step speaks or shows a caution that is about the hazard.
func (p *Pass) carded(s *plan.Step, h hazard.Hazard) bool {
	return slices.ContainsFunc(s.Cautions, func(use plan.StepCaution) bool {
		c := p.Plan.CautionOf(s, use)
		return c != nil && (use.Card || use.Spoken) && (c.Class == h.Class || c.Family == h.Family)
	})
}
