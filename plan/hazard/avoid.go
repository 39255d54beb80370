package hazard

import (
	"math"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/hazard/class"
)

// avoidance is what the narration or a card of a step says about how to keep
// clear of a class or family of hazards.
type avoidance struct {
	class, family string
	at            int  // byte of the step's say
	card          bool // it stands on a shot's card
	lasts         bool // power is taken away, until it comes back
}

// advice is what the words of a step say about keeping clear.
type advice struct {
	avoided []avoidance
	powered bool // power or motion comes on in it
}

func (a *avoidance) answers(h *Hazard) bool {
	return a.class != "" && a.class == h.Class || a.family != "" && a.family == h.Family && h.Family != class.NoFamily
}

// heeded finds, for hazards that no caution covers in time, whether the
// narration says before the action how to avoid them. What was said in an
// earlier step counts as long as the state that answers the hazard goes on:
// pulling the plug in step 1 is said for step 3, until it goes back in. A plan
// that names no such state tells it by its words: until something is switched on.
// Words that answered a hazard of their own step last as a caution in those words
// would, and until something is switched on; what can kill at once (danger) wants
// them again in each step.
func heeded(p *plan.Plan, steps []Step, told []advice) {
	nothing := func() saidLast { return saidLast{class: map[string]int{}, family: map[string]int{}} }
	before, off := nothing(), nothing()
	var spoken []lasting
	for i := range steps {
		if told[i].powered {
			off, spoken = nothing(), nil
		}
		for k := range spoken {
			spoken[k].stepInto(p, steps, i)
		}
		spoken = slices.DeleteFunc(spoken, func(l lasting) bool { return l.how != Spoken })
		earlier := len(spoken)
		for h := range steps[i].all {
			if h.Cover >= Carded {
				continue
			}
			h.heed(told[i].avoided)
			switch {
			case h.Cover == Said:
				if h.Signal < class.Danger {
					spoken = append(spoken, lasting{caution: &plan.Caution{Class: h.Class, Family: h.Family}, step: i, states: openStates(p, i), how: Spoken})
				}
			case len(h.Answered) > 0 && before.since(since(p, i, h.Answered), h) || off.since(0, h),
				h.Signal < class.Danger && slices.ContainsFunc(spoken[:earlier], func(l lasting) bool { return answers(l.caution, h) }):
				h.Cover, h.Caution = Said, ""
			}
		}
		for k := range told[i].avoided {
			a := &told[i].avoided[k]
			before.note(i, a)
			if a.lasts && !told[i].powered {
				off.note(i, a)
			}
		}
	}
}

// saidLast is by class and by family the last step, from 1, that said how to keep
// clear.
type saidLast struct{ class, family map[string]int }

func (t *saidLast) note(step int, a *avoidance) {
	if !a.card {
		t.class[a.class], t.family[a.family] = step+1, step+1
	}
}

// since says whether a step from first on answers a hazard.
func (t *saidLast) since(first int, h *Hazard) bool {
	return t.class[h.Class] > first || h.Family != class.NoFamily && t.family[h.Family] > first
}

// since is the step that began the oldest of some states that go on in a step,
// the step itself where none does.
func since(p *plan.Plan, step int, states []string) int {
	first := step
	for _, state := range states {
		for _, v := range p.Holding(state, step) {
			first = min(first, max(0, v.From))
		}
	}
	return first
}

// heed finds what the hazard's own step says.
func (h *Hazard) heed(avoided []avoidance) {
	acts := spokenAt(h)
	for k := range avoided {
		a := &avoided[k]
		if !a.answers(h) {
			continue
		}
		how := Late
		switch {
		case a.card:
			how = Carded
		case a.at <= acts: // "unplug it" is both the act and how to keep clear of it
			how = Said
		}
		if how > h.Cover {
			h.Cover, h.Caution = how, ""
		}
	}
}

// spokenAt is where the narration first speaks of the action; past its end
// where the action is shown otherwise.
func spokenAt(h *Hazard) int {
	first := math.MaxInt
	for _, e := range h.Evidence {
		if strings.HasSuffix(e.Path, ".say") {
			first = min(first, e.Start)
		}
	}
	return first
}
