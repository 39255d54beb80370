package lint

import (
	"fmt"
	"slices"

	"fixslate/plan/diag"
	"fixslate/plan/hazard"
	"fixslate/plan/hazard/class"
)

var helperPlace = Rule{Name: "helper-place", Group: Safety, Severity: diag.Warning, Check: func(p *Pass) []Report {
	var found []Report
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		state := ""
		for _, dangerous := range []string{"raised", "live", "running"} {
			if p.inForce(i, dangerous) {
				state = dangerous
				break
			}
		}
		if state == "" && len(p.Hazards.Steps) > i && slices.ContainsFunc(p.Hazards.Steps[i].Hazards, func(h hazard.Hazard) bool { return h.Signal == class.Danger }) {
			state = "dangerous"
		}
		if state == "" {
			continue
		}
		for j, c := range s.Cues {
			if !c.Where.Empty() || presenter(p.Plan, c.Who) {
				continue
			}
			found = append(found, Report{
				Message: fmt.Sprintf("in step %q the object is %s, and nothing says where %s stands", s.Title.Print, state, c.Who),
				Hint:    `add where = "…": a place clear of what falls, turns or is live`,
				Path:    stepPath(i, fmt.Sprintf("cue[%d]", j)),
			})
		}
	}
	return found
}}
