package hazard

import (
	"cmp"
	"slices"

	"fixslate/plan/hazard/class"
)

// shown is one hazard while a step is read.
type shown struct {
	class    int // index in the catalogue
	acted    bool
	strong   bool // the class's stronger signal is due
	evidence []Evidence
}

// finding gathers the hazards of a step.
type finding struct{ list []shown }

// evidenceMax is how many places are kept for one hazard of a step.
const evidenceMax = 6

func (f *finding) add(s shown) {
	at := slices.IndexFunc(f.list, func(h shown) bool { return h.class == s.class && h.acted == s.acted })
	if at < 0 {
		f.list = append(f.list, shown{class: s.class, acted: s.acted})
		at = len(f.list) - 1
	}
	h := &f.list[at]
	h.strong = h.strong || s.strong
	for _, e := range s.evidence {
		if len(h.evidence) < evidenceMax && !slices.Contains(h.evidence, e) {
			h.evidence = append(h.evidence, e)
		}
	}
}

// into turns what was gathered into the two lists of a step. answered are the
// states in force.
func (f *finding) into(out *Step, answered []string) {
	slices.SortStableFunc(f.list, func(a, b shown) int { return cmp.Compare(a.class, b.class) })
	for _, h := range f.list {
		c := &catalogue()[h.class]
		hz := Hazard{Class: c.ID, Family: c.Family, Signal: c.Signal, Evidence: h.evidence}
		if h.strong && c.Escalation.To > hz.Signal {
			hz.Signal = c.Escalation.To
		}
		for _, s := range answered {
			if slices.ContainsFunc(c.Answered, func(a string) bool { return class.CanonicalState(a) == s }) {
				hz.Answered = append(hz.Answered, s)
			}
		}
		if h.acted {
			out.Hazards = append(out.Hazards, hz)
		} else if !slices.ContainsFunc(f.list, func(o shown) bool { return o.acted && o.class == h.class }) {
			out.Mentions = append(out.Mentions, hz)
		}
	}
}
