package plan

import (
	"slices"

	"fixslate/plan/hazard/class"
)

// cautions decides where each caution is spoken and where its card is shown
// again.
//
// A caution lasts, once spoken, until one of the states in force then has
// ended and starts again; where no state was in force, through the following
// steps that have a caution of its family. While it lasts it is not spoken
// again. Its card is shown when it is spoken, and again in each step that
// starts a chapter while it lasts: where the step lists it, and, so that a
// viewer who lands there sees it, while a state of its class holds that the
// speaking step brought about.
func (d *decoder) cautions() {
	p := d.plan
	for i := range p.Cautions { // words of the author's own, of no class: they are the card too
		if c := &p.Cautions[i]; c.Card.Print == "" {
			c.Card = Text{Source: c.Say.Source, Print: c.Say.Print}
		}
	}
	said := map[string]*lasting{}
	var order []string
	for i := range p.Steps {
		s := &p.Steps[i]
		listed := map[string]bool{}
		for j := range s.Cautions {
			use := &s.Cautions[j]
			listed[use.ID] = true
			c := p.cautionFor(use.ID, s.Variants)
			if len(use.Lines) == 0 && c != nil {
				use.Lines = c.Lines
			}
			before := said[use.ID]
			own := use.Say.Source != ""
			if before != nil && before.lasts(p, i) && !own {
				use.Card = !s.Chapter.Joined && i != before.step
				continue
			}
			use.Spoken, use.Card = true, true
			if before == nil {
				order = append(order, use.ID)
			}
			said[use.ID] = newLasting(p, c, i)
		}
		if s.Chapter.Joined {
			continue
		}
		for _, id := range order {
			if !listed[id] && said[id].holds(p, i) {
				s.Cautions = append(s.Cautions, StepCaution{ID: id, Card: true})
			}
		}
	}
}

// lasting is a caution that has been spoken.
type lasting struct {
	step   int
	family string
	states []Interval // in force when it was spoken
	own    []string   // canonical states of its class
	safe   []string   // those of them that answer the hazard
}

func newLasting(p *Plan, c *Caution, step int) *lasting {
	l := &lasting{step: step, family: "none"}
	l.states = p.In(step)
	if c != nil {
		l.family = c.Family
		if known, ok := classOf(firstOf(c.Class, c.Hazard)); ok {
			l.own, l.safe = statesOf(known), canonical(known.Answered)
		}
	}
	return l
}

// statesOf are the states that belong to a class.
func statesOf(c class.Class) []string {
	return append(canonical(c.Arises), canonical(c.Answered)...)
}

func canonical(words []string) []string {
	var states []string
	for _, s := range words {
		states = append(states, class.CanonicalState(s))
	}
	return states
}

// lasts holds while the caution need not be spoken again at a step.
func (l *lasting) lasts(p *Plan, step int) bool {
	if len(l.states) == 0 {
		for i := l.step + 1; i <= step; i++ {
			if !p.hasFamily(i, l.family) {
				return false
			}
		}
		return true
	}
	for _, was := range l.states {
		for _, v := range p.Intervals {
			if v.State == was.State && v.From > was.To && v.From <= step {
				return false
			}
		}
	}
	return true
}

// holds is true while the caution lasts and a state of its class, begun where
// it was spoken, goes on. A step that ends a state which answers the hazard, and
// does not need it first, is for ending it: "power off" is no word for the one
// that plugs in.
func (l *lasting) holds(p *Plan, step int) bool {
	if !l.lasts(p, step) {
		return false
	}
	return slices.ContainsFunc(l.states, func(v Interval) bool {
		if v.From != l.step || v.To < step || !slices.Contains(l.own, v.State) {
			return false
		}
		return v.To > step || v.Open || !slices.Contains(l.safe, v.State) || slices.ContainsFunc(p.Steps[step].Needs, func(s string) bool { return class.CanonicalState(s) == v.State })
	})
}

// hasFamily holds for a step that lists a caution of a family.
func (p *Plan) hasFamily(step int, family string) bool {
	s := &p.Steps[step]
	return slices.ContainsFunc(s.Cautions, func(use StepCaution) bool {
		c := p.cautionFor(use.ID, s.Variants)
		return use.Listed && c != nil && c.Family == family
	})
}

// cautionFor is the caution with an id that meets some versions.
func (p *Plan) cautionFor(id string, variants []string) *Caution {
	for _, c := range p.Caution(id) {
		if Meets(c.Variants, variants) {
			return c
		}
	}
	return nil
}

// CautionOf is the caution that a step's entry means, for the versions of the
// step; nil never happens in a plan that decoded.
func (p *Plan) CautionOf(s *Step, use StepCaution) *Caution { return p.cautionFor(use.ID, s.Variants) }
