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
	written := func(s *plan.Step) bool {
		return len(s.Drop) > 0 || slices.ContainsFunc(s.Shots, func(w plan.Shot) bool { return len(w.Replaces) > 0 })
	}
	for _, d := range derived(p, written) {
		i, s := d.step, &p.Steps[d.step]
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
