package hazard

import (
	"cmp"
	"slices"
	"sync"

	"fixslate/plan/hazard/class"
)

// shown is one hazard while a step is read.
type shown struct {
	class  int    // index in the catalogue
	family string // where the hazard counts under another than the class's own
	acted  bool
	strong bool // the class's stronger signal is due
	weak   int  // of the firmest rule that shows it
	says   spots
	facts  []Evidence // states and readings, which no words of the action are
	vague  spots      // acts that any work would do for: they say least, and stand last
}

// evidenceMax is how many places are kept for one hazard of a step.
const evidenceMax = 6

// spots are the places that will be evidence: most hazards are shown by many
// rules in the same words, so they are written out once, at the end.
type spots struct {
	list [evidenceMax]spot
	n    int
}

// finding gathers the hazards of a step.
type finding struct {
	list  []shown
	order []int // of list, as the catalogue has the classes
}

// of is what is found of a class so far, good until the next call.
func (f *finding) of(n int, family string, acted bool) *shown {
	for i := range f.list {
		if h := &f.list[i]; h.class == n && h.acted == acted && h.family == family {
			return h
		}
	}
	f.list = append(f.list, shown{class: n, family: family, acted: acted, weak: weakest})
	return &f.list[len(f.list)-1]
}

// keep adds where hits stand, as far as there is room and the same words of the
// same text are not there yet.
func (r *reader) keep(s *spots, by []*hit) {
	for _, h := range by {
		if s.n == evidenceMax {
			return
		}
		at := h.spot()
		known := false
		for i := range s.n {
			known = known || r.alike(s.list[i], at)
		}
		if !known {
			s.list[s.n] = at
			s.n++
		}
	}
}

// alike says whether two places are the same evidence.
func (r *reader) alike(a, b spot) bool {
	if a == b {
		return true
	}
	x, y := &r.sources[a.text], &r.sources[b.text]
	if x.kind != y.kind || !x.entire() && x.print[a.start:a.end] != y.print[b.start:b.end] {
		return false
	}
	return r.evidenceAt(a) == r.evidenceAt(b)
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
func (r *reader) into(out *Step, f *finding, answered []string, detailed bool) {
	f.order = f.order[:0]
	for i := range f.list {
		f.order = append(f.order, i)
	}
	slices.SortStableFunc(f.order, func(i, j int) int {
		a, b := &f.list[i], &f.list[j]
		return cmp.Or(cmp.Compare(a.class, b.class), cmp.Compare(a.family, b.family))
	})
	firmest := weakest
	for i := range f.list {
		if h := &f.list[i]; h.acted && catalogue()[h.class].Family != class.NoFamily {
			firmest = min(firmest, h.weak)
		}
	}
	for _, i := range f.order {
		h := &f.list[i]
		if h.acted = h.acted && (h.weak <= firmest || h.weak == 1) && !(h.weak == weakest && detailed); h.acted {
			out.Hazards = append(out.Hazards, r.hazard(h, answered))
		} else if !f.acts(h.class) {
			out.Mentions = append(out.Mentions, r.hazard(h, answered))
		}
	}
}

// acts says whether an action shows a class.
func (f *finding) acts(n int) bool {
	for i := range f.list {
		if f.list[i].acted && f.list[i].class == n {
			return true
		}
	}
	return false
}

func (r *reader) hazard(h *shown, answered []string) Hazard {
	hz := hazardOf(h.class, h.family, answered)
	if c := &catalogue()[h.class]; h.strong && c.Escalation.To > hz.Signal {
		hz.Signal = c.Escalation.To
	}
	hz.Evidence = make([]Evidence, 0, min(evidenceMax, h.says.n+len(h.facts)+h.vague.n))
	for _, at := range h.says.list[:h.says.n] {
		hz.Evidence = append(hz.Evidence, r.evidenceAt(at))
	}
	hz.Evidence = more(hz.Evidence, h.facts)
	for _, at := range h.vague.list[:h.vague.n] {
		hz.Evidence = more(hz.Evidence, []Evidence{r.evidenceAt(at)})
	}
	return hz
}

// hazardOf is a hazard of a class with the states in force that answer it.
func hazardOf(n int, family string, inForce []string) Hazard {
	c := &catalogue()[n]
	h := Hazard{Class: c.ID, Family: cmp.Or(family, c.Family), Signal: c.Signal}
	for _, s := range inForce {
		if slices.Contains(answering()[n], s) {
			h.Answered = append(h.Answered, s)
		}
	}
	return h
}

// answering is by class the canonical states that answer it.
var answering = sync.OnceValue(func() [][]string {
	all := make([][]string, len(catalogue()))
	for i := range all {
		for _, state := range catalogue()[i].Answered {
			all[i] = append(all[i], class.CanonicalState(state))
		}
	}
	return all
})
