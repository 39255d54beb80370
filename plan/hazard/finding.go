package hazard

import (
	"cmp"
	"slices"

	"fixslate/plan/hazard/class"
)

// shown is one hazard while a step is read.
type shown struct {
	class    int    // index in the catalogue
	family   string // where the hazard counts under another than the class's own
	acted    bool
	strong   bool // the class's stronger signal is due
	weak     int  // of the firmest rule that shows it
	evidence []Evidence
	vague    []Evidence // acts that any work would do for: they say least, and stand last
}

// finding gathers the hazards of a step.
type finding struct{ list []shown }

// evidenceMax is how many places are kept for one hazard of a step.
const evidenceMax = 6

func (f *finding) add(s shown) {
	at := slices.IndexFunc(f.list, func(h shown) bool {
		return h.class == s.class && h.acted == s.acted && h.family == s.family
	})
	if at < 0 {
		f.list = append(f.list, shown{class: s.class, family: s.family, acted: s.acted, weak: s.weak})
		at = len(f.list) - 1
	}
	h := &f.list[at]
	h.strong = h.strong || s.strong
	h.weak = min(h.weak, s.weak)
	h.evidence = more(h.evidence, s.evidence)
	h.vague = more(h.vague, s.vague)
}

// more adds what is not there yet, as far as there is room.
func more(list, add []Evidence) []Evidence {
	for _, e := range add {
		if len(list) < evidenceMax && !slices.Contains(list, e) {
			list = append(list, e)
		}
	}
	return list
}

// into turns what was gathered into the two lists of a step. A hazard that only
// weak signs show is a mention where another is shown by strong ones, and what
// the object alone brings is one where narration tells the work in detail.
// answered are the states in force.
func (f *finding) into(out *Step, answered []string, detailed bool) {
	slices.SortStableFunc(f.list, func(a, b shown) int {
		return cmp.Or(cmp.Compare(a.class, b.class), cmp.Compare(a.family, b.family))
	})
	firmest := 2
	for _, h := range f.list {
		if h.acted && catalogue()[h.class].Family != class.NoFamily {
			firmest = min(firmest, h.weak)
		}
	}
	for i := range f.list {
		h := &f.list[i]
		hz := h.hazard(answered)
		if h.acted = h.acted && (h.weak <= firmest || h.weak == 1) && !(h.weak == 2 && detailed); h.acted {
			out.Hazards = append(out.Hazards, hz)
		} else if !f.acts(h.class) {
			out.Mentions = append(out.Mentions, hz)
		}
	}
}

// acts says whether an action shows a class.
func (f *finding) acts(n int) bool {
	return slices.ContainsFunc(f.list, func(h shown) bool { return h.acted && h.class == n })
}

func (h *shown) hazard(answered []string) Hazard {
	c := &catalogue()[h.class]
	hz := Hazard{Class: c.ID, Family: cmp.Or(h.family, c.Family), Signal: c.Signal, Evidence: more(h.evidence, h.vague)}
	if h.strong && c.Escalation.To > hz.Signal {
		hz.Signal = c.Escalation.To
	}
	for _, s := range answered {
		if slices.ContainsFunc(c.Answered, func(a string) bool { return class.CanonicalState(a) == s }) {
			hz.Answered = append(hz.Answered, s)
		}
	}
	return hz
}
