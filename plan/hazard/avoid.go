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
}

func (a *avoidance) answers(h *Hazard) bool {
	return a.class != "" && a.class == h.Class || a.family != "" && a.family == h.Family && h.Family != class.NoFamily
}

// heeded finds, for hazards that no caution covers in time, whether the
// narration says before the action how to avoid them. What was said in an
// earlier step counts as long as the state that answers the hazard goes on:
// pulling the plug in step 1 is said for step 3, until it goes back in.
func heeded(p *plan.Plan, steps []Step, avoided [][]avoidance) {
	for i := range steps {
		for _, list := range [...][]Hazard{steps[i].Hazards, steps[i].Mentions} {
			for j := range list {
				if h := &list[j]; h.Cover < Carded {
					heed(h, i, since(p, i, h.Answered), avoided)
				}
			}
		}
	}
}

// since is the step that began the oldest of some states that go on in a step,
// the step itself where none does.
func since(p *plan.Plan, step int, states []string) int {
	first := step
	for _, v := range p.In(step) {
		if slices.Contains(states, v.State) {
			first = min(first, max(0, v.From))
		}
	}
	return first
}

func heed(h *Hazard, step, since int, avoided [][]avoidance) {
	acts := spokenAt(h)
	for k := range avoided[step] {
		a := &avoided[step][k]
		if !a.answers(h) {
			continue
		}
		how := Late
		switch {
		case a.card:
			how = Carded
		case a.at < acts:
			how = Said
		}
		if how > h.Cover {
			h.Cover, h.Caution = how, ""
		}
	}
	if h.Cover == Said || len(h.Answered) == 0 {
		return
	}
	for i := since; i < step; i++ {
		for k := range avoided[i] {
			if a := &avoided[i][k]; a.answers(h) && !a.card {
				h.Cover, h.Caution = Said, ""
				return
			}
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
