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
// story order: the class that stands for the family, else the gravest. Classes that count under no family are notices and left out.
func (p *Pass) dangers(cover hazard.Cover) []danger {
	var found []danger
	for i := range p.Hazards.Steps {
		byFamily := map[string]int{}
		for _, h := range p.Hazards.Steps[i].Hazards {
			if h.Family == class.NoFamily || h.Cover != cover || h.Family == licensed {
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
			if slices.Contains(ids, h.Class) {
				found = append(found, danger{i, h})
			}
		}
	}
	return found
}

// inForce holds where a state of that canonical name holds in a step.
func (p *Pass) inForce(step int, state string) bool {
	return slices.ContainsFunc(p.Plan.In(step), func(v plan.Interval) bool { return v.State == state })
}

// startsHere holds where a step begins the state itself.
func (p *Pass) startsHere(step int, state string) bool {
	return slices.ContainsFunc(p.Plan.Intervals, func(v plan.Interval) bool { return v.State == state && v.From == step })
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
