package shotlist

import (
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/hazard/class"
)

// sits gives how each part sits before it comes off, in the first step that
// lists it: as the step finds it, or within the step, where the step itself
// opens what hides it. It stands ahead of the wide, which takes the part off:
// read too late it can't be filmed any more. What is poured in has no seat.
func (d *deriving) sits(s *plan.Step) {
	begun := started(d.plan, d.step)
	for _, id := range s.Parts {
		name := d.name(plan.KindPart, id)
		if d.seen[id].first != d.step || isFluid(name) {
			continue
		}
		of, bound := "how it sits before it comes off", Before
		if opens(begun, id+" "+name) {
			of, bound = "how it sits when it comes in sight, before it comes off", ByStep
		}
		d.add(id+"-before", Cover{Orientation, plan.Ref{Kind: plan.KindPart, ID: id}},
			Shot{Size: "close-up", Of: name + ": " + of, Bound: bound})
	}
}

// fitted gives how each part sits when it is back, in the last step that lists
// it.
func (d *deriving) fitted(s *plan.Step) {
	for _, id := range s.Parts {
		name := d.name(plan.KindPart, id)
		if d.seen[id].last != d.step || isFluid(name) {
			continue
		}
		d.add(id+"-fitted", Cover{Fitted, plan.Ref{Kind: plan.KindPart, ID: id}},
			Shot{Size: "close-up", Of: name + ": seated the same way round"})
	}
}

// opens holds where one of the states is an opening and not the part's own
// coming off: "lens-off" opens the way to a bulb, "bulb-out" does not. What the
// linter knows of supplies, heat and pressure hides nothing from a camera.
func opens(states []string, part string) bool {
	return slices.ContainsFunc(states, func(state string) bool {
		words := strings.Split(class.CanonicalState(state), "-")
		if known, ok := class.FindState(state); ok && known.Name != "covers-off" && known.Name != "guard-off" {
			return false
		}
		return slices.Contains(openings, words[len(words)-1]) && !slices.ContainsFunc(words[:len(words)-1], func(w string) bool { return worded(part, w) })
	})
}

// openings end the names of states in which something is out of the way.
var openings = []string{"off", "out", "open", "up", "down", "away", "removed", "apart"}

// worded holds where a text has a word, in the singular or plural.
func worded(text, word string) bool {
	return slices.ContainsFunc(strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return r == ' ' || r == '-' || r == ',' }), func(w string) bool {
		return strings.TrimSuffix(w, "s") == strings.TrimSuffix(word, "s")
	})
}

// stretch is from the first to the last step that lists a part.
type stretch struct{ first, last int }

func partStretches(p *plan.Plan) map[string]stretch {
	seen := map[string]stretch{}
	for i := range p.Steps {
		for _, id := range p.Steps[i].Parts {
			s, again := seen[id]
			if !again {
				s.first = i
			}
			s.last = i
			seen[id] = s
		}
	}
	return seen
}
