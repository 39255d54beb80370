package lint

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/hazard"
	"fixslate/plan/hazard/class"
)

// danger is one family of hazards in one step, with the class that is worst
// off, and of those the gravest.
type danger struct {
	step int
	hazard.Hazard
}

// dangers are the families with an action in each step, one of each a step, in
// story order: the class that stands for the family, else the gravest. Classes
// that count under no family are notices and left out, and so is what is settled.
// What is only likely is caution-perhaps' own.
func (p *Pass) dangers(cover hazard.Cover) []danger {
	return p.dangersIf(cover, func(h hazard.Hazard) bool { return !h.Perhaps() })
}

func (p *Pass) dangersIf(cover hazard.Cover, count func(hazard.Hazard) bool) []danger {
	var found []danger
	for i := range p.Hazards.Steps {
		byFamily := map[string]int{}
		for _, h := range p.Hazards.Steps[i].Hazards {
			if h.Family == class.NoFamily || h.Cover != cover || h.Family == licensed || !count(h) || p.settled(i, h) {
				continue
			}
			at, seen := byFamily[h.Family]
			if !seen {
				byFamily[h.Family] = len(found)
				found = append(found, danger{i, h})
			} else if lead, _ := class.Lead(h.Family); h.Class == lead.ID || found[at].Class != lead.ID && h.Signal > found[at].Signal {
				found[at] = danger{i, h}
			}
		}
	}
	return found
}

// settled holds for a hazard that cannot hurt in its step, or that a later step
// warns of in time. What moves by power is still while an earlier step has taken
// the power away (its own step still has to say so), and a guard is only a part
// then; and what odds alone suspect is answered by a state that lasts from before
// the step to after it. A fastener that lives depend on hurts by being loose: its caution counts
// where it is tightened.
func (p *Pass) settled(step int, h hazard.Hazard) bool {
	if h.Class == criticalFastener {
		return p.warnsFrom(step, criticalFastener)
	}
	if h.Class == "defeat-safety-device" {
		return len(h.Answered) > 0
	}
	return (slices.Contains(powered, h.Class) || h.Suspected()) && slices.ContainsFunc(h.Answered, func(state string) bool {
		return slices.ContainsFunc(p.Plan.Holding(state, step), func(v plan.Interval) bool { return v.From < step && (v.To > step || !h.Suspected()) })
	})
}

// powered are the classes of what moves by a supply that can be taken away.
var powered = []string{"rotating-parts", "auto-start", "power-blade", "abrasive-wheel", "small-engine-start", "ebike-power"}

const criticalFastener = "critical-fastener"

// warnsFrom holds where the step, or one after it, speaks a caution of the class.
func (p *Pass) warnsFrom(step int, id string) bool {
	for i := step; i < len(p.Plan.Steps); i++ {
		if p.listsClass(i, id) {
			return true
		}
	}
	return false
}

// licensed is the family of work that law often reserves: licence-missing.
const licensed = "licensed-work"

// report points at what shows the hazard.
func (d danger) report(p *Pass) Report {
	r := Report{Path: stepPath(d.step, "title"), Step: p.Plan.Steps[d.step].ID, Families: []string{d.Family},
		About: plan.Ref{Kind: plan.KindStep, ID: p.Plan.Steps[d.step].ID}}
	for _, e := range d.Evidence {
		if strings.HasPrefix(e.Path, fmt.Sprintf("step[%d].", d.step)) {
			r.Path, r.Span = e.Path, [2]int{e.Start, e.End}
			break
		}
	}
	return r
}

// name is the family in words: "mains shock".
func (d danger) name() string {
	f, _ := class.FindFamily(d.Family)
	return cmp.Or(f.Name, d.Family)
}

// withClass are the hazards of some classes that steps act on.
func (p *Pass) withClass(ids ...string) []danger {
	var found []danger
	for i := range p.Hazards.Steps {
		for _, h := range p.Hazards.Steps[i].Hazards {
			if slices.Contains(ids, h.Class) && !h.Suspected() {
				found = append(found, danger{i, h})
			}
		}
	}
	return found
}

// inForce holds where a state of that canonical name holds in a step.
func (p *Pass) inForce(step int, state string) bool {
	return len(p.Plan.Holding(state, step)) > 0
}

// startsHere holds where a step begins the state itself.
func (p *Pass) startsHere(step int, state string) bool {
	return slices.ContainsFunc(p.Plan.Begun(step), func(v plan.Interval) bool { return v.State == state })
}

// told is what a viewer is told in a step: its words and its cautions', folded.
func (p *Pass) told(step int) string {
	var b strings.Builder
	b.WriteString(p.words[step])
	s := &p.Plan.Steps[step]
	for _, use := range s.Cautions {
		if c := p.Plan.CautionOf(s, use); c != nil {
			b.WriteString(fold(c.Say.Print + " . " + c.Text + " . " + c.LeaveTo.Print))
		}
		b.WriteString(fold(use.Say.Print))
	}
	return b.String()
}
