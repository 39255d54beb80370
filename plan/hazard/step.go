package hazard

import (
	"slices"
	"strconv"
	"sync"

	"fixslate/plan"
	"fixslate/plan/hazard/class"
)

// catalogue is the classes in their order; findings name them by index.
var catalogue = sync.OnceValue(class.All)

// reader reads one plan.
type reader struct {
	plan *plan.Plan
}

func stepPath(i int) string { return "step[" + strconv.Itoa(i) + "]" }

// step reads one step.
func (r *reader) step(i int) Step {
	s := &r.plan.Steps[i]
	out := Step{ID: s.ID, Title: s.Title.Print}
	var f finding
	if acts(s) {
		r.states(&f, i)
	}
	f.into(&out, r.inForce(i))
	return out
}

// acts says whether something is done in a step, and not only said.
func acts(s *plan.Step) bool {
	return !s.Do.Empty() || len(s.Tests) > 0 || len(s.Fasteners) > 0 || s.Work != plan.Duration{}
}

// states adds the hazards of states in force: an action on a raised car is an
// action with a raised car.
func (r *reader) states(f *finding, step int) {
	for _, v := range r.plan.In(step) {
		for i, c := range catalogue() {
			if slices.Contains(c.Arises, v.State) {
				f.add(shown{class: i, acted: true, evidence: []Evidence{{Kind: "state", Words: v.State, Path: statePath(step, v)}}})
			}
		}
	}
}

// statePath is the place where a state was begun.
func statePath(step int, v plan.Interval) string {
	if v.From < 0 {
		return "shoot.begins"
	}
	if v.During {
		return stepPath(step) + ".during"
	}
	return stepPath(v.From) + ".starts"
}

// inForce are the states that hold in a step.
func (r *reader) inForce(step int) []string {
	var states []string
	for _, v := range r.plan.In(step) {
		if !slices.Contains(states, v.State) {
			states = append(states, v.State)
		}
	}
	return states
}
