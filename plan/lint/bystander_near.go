package lint

import (
	"fmt"
	"slices"

	"fixslate/plan/diag"
	"fixslate/plan/hazard"
	"fixslate/plan/hazard/class"
)

var bystanderNear = Rule{Name: "bystander-near", Group: Safety, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		for _, id := range s.People {
			for _, person := range p.Plan.Person(id) {
				if person.Adult {
					continue
				}
				r := Report{
					Message: fmt.Sprintf("%s is not an adult and takes part in step %q", id, s.Title.Print),
					Hint:    "film it without them; a child shows it to children",
					Path:    stepPath(i, "people"), Families: []string{"bystander-child"},
				}
				if i < len(p.Hazards.Steps) && canHurt(p.Hazards.Steps[i]) {
					r.Severity = diag.Error
					r.Message = fmt.Sprintf("%s is not an adult and takes part in step %q, which can hurt", id, s.Title.Print)
				}
				report(r)
			}
		}
		if len(s.People) == 0 && childHelps(p.words[i]) {
			report(Report{
				Message: fmt.Sprintf("step %q gives a child a part in the work", s.Title.Print),
				Hint:    "film it without them; a child shows it to children",
				Path:    stepPath(i, "say"), Families: []string{"bystander-child"},
			})
		}
	}
	for i, person := range p.Plan.Shoot.People {
		if person.Adult || p.firstWith(person.ID) >= 0 || !slices.ContainsFunc(p.Hazards.Steps, canHurt) {
			continue
		}
		report(Report{
			Message: fmt.Sprintf("%s is not an adult and is there on the day, and no step needs them", person.ID),
			Hint:    "take them off the list, and name in a note who minds them, away from the work",
			Path:    fmt.Sprintf("shoot.people[%d]", i), Families: []string{"bystander-child"},
		})
	}
}}

// canHurt holds for a step in which something is shown to hurt.
func canHurt(s hazard.Step) bool {
	return slices.ContainsFunc(s.Hazards, func(h hazard.Hazard) bool { return h.Family != class.NoFamily && !h.Perhaps() })
}
