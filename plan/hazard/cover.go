package hazard

import (
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/hazard/class"
)

// cover finds for each hazard how the plan's cautions stand to it. A caution
// lasts as the plan language says: until a state in force when it was spoken
// has ended and starts again; where there was none, through the following
// steps that have a hazard or caution of its family.
func cover(p *plan.Plan, steps []Step) {
	var said []lasting
	kinds := map[kind]int{}
	for i := range p.Steps {
		s := &p.Steps[i]
		for k := range said {
			said[k].stepInto(p, steps, i)
		}
		said = heard(said)
		for _, use := range s.Cautions {
			if c := p.CautionOf(s, use); c != nil && use.Listed {
				l := lasting{caution: c, kind: numberOf(kinds, c), step: i, states: openStates(p, i), how: Spoken}
				said = append(slices.DeleteFunc(said, l.replaces), l)
			}
		}
		for h := range steps[i].all {
			covering(said, s, h)
		}
	}
	late(p, steps)
}

// heard leaves what can still cover a hazard: not what has worn off for good, and
// of a kind that has worn off and may be renewed the last caution only.
func heard(said []lasting) []lasting {
	var stale map[int]bool
	for k := len(said) - 1; k >= 0; k-- {
		if l := &said[k]; l.how == Stale {
			if stale == nil {
				stale = map[int]bool{}
			}
			if stale[l.kind] {
				l.how = Missing
			}
			stale[l.kind] = true
		}
	}
	return slices.DeleteFunc(said, func(l lasting) bool { return l.how == Missing })
}

// covering notes the best caution said so far: one that still lasts before one
// that has worn off, its own class before its family, the latest first.
func covering(said []lasting, s *plan.Step, h *Hazard) {
	own := false
	for i := len(said) - 1; i >= 0; i-- {
		c := said[i].caution
		if said[i].how == Missing || !plan.Meets(c.Variants, s.Variants) || !answers(c, h) {
			continue
		}
		mine := c.Class == h.Class
		if said[i].how > h.Cover || said[i].how == h.Cover && mine && !own {
			h.Cover, h.Caution, own = said[i].how, c.ID, mine
		}
	}
}

// answers says whether a caution is about a hazard: of its class or its family.
// Notices have no family and are answered by their own class only.
// What burns where fuel is about is a fire, whatever is done: odds don't tell the
// two apart, and one caution keeps the flame away from both.
func answers(c *plan.Caution, h *Hazard) bool {
	return c.Class == h.Class || c.Family == h.Family && h.Family != class.NoFamily ||
		h.Suspected() && h.Family == "hot-work-fire" && c.Family == "fuel-vapour"
}

// late finds, for hazards that nothing covers, a caution that comes too late: in
// the next step. One that comes later still is for something else.
func late(p *plan.Plan, steps []Step) {
	for i := range p.Steps[:max(0, len(p.Steps)-1)] {
		after := map[string]string{} // class or family to the caution that comes next
		next := &p.Steps[i+1]
		for _, use := range next.Cautions {
			if c := p.CautionOf(next, use); c != nil && use.Listed {
				after[c.Class], after["family "+c.Family] = c.ID, c.ID
			}
		}
		for h := range steps[i].all {
			id, ok := after[h.Class]
			if !ok && h.Family != class.NoFamily {
				id, ok = after["family "+h.Family]
			}
			if ok && h.Cover == Missing {
				h.Cover, h.Caution = Late, id
			}
		}
	}
}

// lasting is a caution that has been spoken.
type lasting struct {
	caution *plan.Caution
	kind    int
	step    int
	states  []plan.Interval // in force when it was spoken
	how     Cover           // Spoken while it lasts, Stale or Missing after
}

// kind is what a caution is about, in which versions: one covers all that another
// of its kind does.
type kind struct{ class, family, variants string }

// numberOf is the number of a caution's kind among those met so far: numbers
// compare quicker, and a plan of thousands of cautions compares them all.
func numberOf(kinds map[kind]int, c *plan.Caution) int {
	k := kind{c.Class, c.Family, strings.Join(c.Variants, "\n")}
	n, ok := kinds[k]
	if !ok {
		n = len(kinds)
		kinds[k] = n
	}
	return n
}

// replaces says whether a caution covers all that another one does, as long as
// that one: it is of the same kind and was spoken later, in the same states.
func (l *lasting) replaces(o lasting) bool {
	return o.how == Spoken && l.kind == o.kind && slices.Equal(l.states, o.states)
}

func openStates(p *plan.Plan, step int) []plan.Interval {
	return slices.DeleteFunc(p.In(step), func(v plan.Interval) bool { return v.During })
}

// stepInto is asked for each step in turn, so it looks at the last step only.
func (l *lasting) stepInto(p *plan.Plan, steps []Step, step int) {
	if l.how != Spoken {
		return
	}
	if len(l.states) == 0 {
		if l.step < step-1 && !hasFamily(p, steps, step-1, l.caution.Family) {
			l.how = Missing
		}
		return
	}
	for _, v := range p.Begun(step) {
		for _, was := range l.states {
			if v.State == was.State && !v.During && v.From > was.To {
				l.how = Stale
			}
		}
	}
}

// hasFamily says whether a step has a hazard of a family, or lists a caution of it.
func hasFamily(p *plan.Plan, steps []Step, step int, family string) bool {
	s := &p.Steps[step]
	return slices.ContainsFunc(steps[step].Hazards, func(h Hazard) bool { return h.Family == family }) ||
		slices.ContainsFunc(s.Cautions, func(use plan.StepCaution) bool {
			c := p.CautionOf(s, use)
			return use.Listed && c != nil && c.Family == family
		})
}
