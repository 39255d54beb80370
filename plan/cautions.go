package plan

import (
	"cmp"
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
	begins := map[string][]int{} // the steps in which each state begins, in their order
	for _, v := range p.Intervals {
		begins[v.State] = append(begins[v.State], v.From)
	}
	said := map[string]*lasting{}
	var order []*lasting // as each was first spoken
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
				before = new(lasting)
				said[use.ID], order = before, append(order, before)
			}
			*before = newLasting(p, c, i)
			before.id, before.begins = use.ID, begins
		}
		if s.Chapter.Joined {
			continue
		}
		for _, l := range order {
			if len(l.states) > 0 && !listed[l.id] && l.holds(p, i) {
				s.Cautions = append(s.Cautions, StepCaution{ID: l.id, Card: true})
			}
		}
	}
}

// lasting is a caution that has been spoken.
type lasting struct {
	id     string
	step   int
	family string
	states []Interval // in force when it was spoken
	own    []string   // canonical states of its class
	safe   []string   // those of them that answer the hazard

	begins map[string][]int // of all states
	seen   int              // the last step that has been looked at …
	ended  bool             // … and whether the caution had ended by then
}

func newLasting(p *Plan, c *Caution, step int) lasting {
	l := lasting{step: step, family: "none", seen: step}
	l.states = p.In(step)
	if c != nil {
		l.family = c.Family
		if known, ok := classOf(cmp.Or(c.Class, c.Hazard)); ok {
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

// lasts holds while the caution need not be spoken again at a step. It is asked
// of one step after another.
func (l *lasting) lasts(p *Plan, step int) bool {
	if len(l.states) == 0 {
		for !l.ended && l.seen < step {
			l.seen++
			l.ended = !p.hasFamily(l.seen, l.family)
		}
		return !l.ended
	}
	return !slices.ContainsFunc(l.states, func(was Interval) bool {
		begins := l.begins[was.State]
		next, _ := slices.BinarySearch(begins, was.To+1)
		return next < len(begins) && begins[next] <= step
	})
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

// Given is the caution that a step's entry means, in the words that the step has
// for it: its own, where it writes some.
func (p *Plan) Given(s *Step, use StepCaution) *Caution {
	c := p.CautionOf(s, use)
	if c == nil || use.Say.Empty() {
		return c
	}
	own := *c
	own.Say, own.Lines, own.Text = use.Say, use.Lines, use.Say.Print
	return &own
}

// Told are the cautions that the steps give, as they are first given. One that is
// always given in a step's own words has those, each once; else it has the words
// that were written for it, or its class's.
func (p *Plan) Told() []*Caution {
	var all []*Caution
	given := map[*Caution][]*Caution{}
	for i := range p.Steps {
		s := &p.Steps[i]
		for _, use := range s.Cautions {
			c := p.CautionOf(s, use)
			switch {
			case c == nil:
				continue
			case given[c] == nil:
				all = append(all, c)
			case !use.Spoken:
				continue // in force yet, in the words of before
			}
			given[c] = append(given[c], p.Given(s, use))
		}
	}
	var told []*Caution
	for _, c := range all {
		if slices.Contains(given[c], c) {
			told = append(told, c)
			continue
		}
		for _, own := range given[c] {
			if !slices.ContainsFunc(told, func(t *Caution) bool { return t.ID == own.ID && t.Text == own.Text }) {
				told = append(told, own)
			}
		}
	}
	return told
}
