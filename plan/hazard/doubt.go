package hazard

import (
	"cmp"
	"slices"

	"fixslate/plan"
	"fixslate/plan/hazard/class"
)

// doubt takes out the hazards that the odds hold unlikely, family by family.
func (r *reader) doubt(out *Step) []Hazard {
	var unsure []Hazard
	limit := float32(unlikely)
	if r.plan.Video.Subject.Empty() {
		limit = blind
	}
	doubted := func(h *Hazard) bool {
		f, ok := r.net.Family(h.Family)
		limit := limit
		if h.canKill() {
			limit = min(limit, grave)
			if h.told() {
				limit = blind
			}
		}
		return ok && r.weighing.verdicts[f].all < limit && h.worded() && !r.warned(h)
	}
	for i := range out.Hazards {
		if h := &out.Hazards[i]; doubted(h) {
			unsure = append(unsure, *h)
		}
	}
	if unsure == nil {
		return nil
	}
	out.Hazards = slices.DeleteFunc(out.Hazards, func(h Hazard) bool { return doubted(&h) })
	slices.SortStableFunc(unsure, func(a, b Hazard) int {
		f, _ := r.net.Family(a.Family)
		g, _ := r.net.Family(b.Family)
		return cmp.Compare(f, g)
	})
	return unsure
}

// warned holds for a hazard of which the step lists a caution: its author has no
// doubt.
func (r *reader) warned(h *Hazard) bool {
	return slices.ContainsFunc(r.now.Cautions, func(use plan.StepCaution) bool {
		c := r.plan.CautionOf(r.now, use)
		return use.Listed && c != nil && answers(c, h)
	})
}

// canKill holds for a hazard whose signal is danger, or is where it is at its worst.
func (h *Hazard) canKill() bool {
	return h.Signal == class.Danger || catalogue()[indexOf(h.Class)].Escalation.To == class.Danger
}

// told holds for a hazard that narration shows.
func (h *Hazard) told() bool {
	return slices.ContainsFunc(h.Evidence, func(e Evidence) bool { return e.Kind == "say" })
}

// worded says whether only the words of the action and what stands about it show
// the hazard: no state or list of the plan.
func (h *Hazard) worded() bool {
	for i := range h.Evidence {
		switch h.Evidence[i].Kind {
		case "do", "say", "tool", "subject", "trade", "title", "supply", "part":
		default:
			return false
		}
	}
	return true
}
