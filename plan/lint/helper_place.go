package lint

import (
	"fmt"
	"slices"

	"fixslate/plan/diag"
	"fixslate/plan/hazard"
	"fixslate/plan/hazard/class"
)

var helperPlace = Rule{Name: "helper-place", Group: Safety, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		why := p.unsettled(i)
		if why == "" {
			continue
		}
		for j, c := range s.Cues {
			if !c.Where.Empty() || c.Who == p.Plan.Presenter {
				continue
			}
			report(Report{
				Message: fmt.Sprintf("in step %q %s, and nothing says where %s stands", s.Title.Print, why, c.Who),
				Hint:    `add where = "…": a place clear of what falls, turns or is live`,
				Path:    stepPath(i, fmt.Sprintf("cue[%d]", j)),
			})
		}
	}
}}

// unsettled says why it matters where somebody stands in a step: the state of
// the object, what hurts there, or that the step has cautions. Empty where it
// doesn't.
func (p *Pass) unsettled(step int) string {
	for _, state := range []string{"raised", "live", "running", "key-on"} {
		if p.inForce(step, state) {
			return fmt.Sprintf("%q holds", state)
		}
	}
	hurts := func(h hazard.Hazard) bool { return h.Family != class.NoFamily && !h.Perhaps() }
	if step < len(p.Hazards.Steps) && slices.ContainsFunc(p.Hazards.Steps[step].Hazards, hurts) || len(p.Plan.Steps[step].Cautions) > 0 {
		return "something can hurt"
	}
	return ""
}
