package shotlist

import (
	"fmt"
	"slices"

	"fixslate/plan"
)

// Astray is a name under drop or replaces that no suggested shot of its step
// has: it drops or replaces nothing.
type Astray struct {
	Step  int
	Path  string   // of the name
	Name  string   // as written
	Names []string // what the step's suggested shots are called, in order
}

// FindAstray lists them in story order.
func FindAstray(p *plan.Plan) []Astray {
	var found []Astray
	var seen map[string]stretch
	for i := range p.Steps {
		s := &p.Steps[i]
		if len(s.Drop) == 0 && !slices.ContainsFunc(s.Shots, func(w plan.Shot) bool { return len(w.Replaces) > 0 }) {
			continue
		}
		if seen == nil {
			seen = partStretches(p)
		}
		d := &deriving{plan: p, step: i, seen: seen, own: ownShots(p, i), untimed: true}
		d.derive()
		look := func(path string, names []string) {
			for j, name := range names {
				if !slices.ContainsFunc(d.names, func(n string) bool { return name == n || name == s.ID+"-"+n }) {
					found = append(found, Astray{i, fmt.Sprintf("%s[%d]", path, j), name, d.names})
				}
			}
		}
		look(fmt.Sprintf("step[%d].drop", i), s.Drop)
		for j := range s.Shots {
			look(fmt.Sprintf("step[%d].shot[%d].replaces", i, j), s.Shots[j].Replaces)
		}
	}
	return found
}
