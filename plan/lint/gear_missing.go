package lint

import (
	"fmt"
	"slices"

	"fixslate/plan/diag"
	"fixslate/plan/hazard"
	"fixslate/plan/hazard/class"
	"fixslate/plan/kit"
)

var gearMissing = Rule{Name: "gear-missing", Group: Safety, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	have := map[string]bool{}
	for _, s := range p.Plan.Supplies {
		have[s.Protects] = true
	}
	for i := range p.Plan.Cautions {
		own := &p.Plan.Cautions[i]
		if own.Spare || !own.Stock && slices.Contains(wornFamilies, own.Family) {
			continue // in words of its own, which may name nothing to wear
		}
		if c, ok := class.Find(own.Class); ok {
			for _, g := range c.Gear {
				have[g.Protects] = true // the caution brings it: packing list and description have it
			}
		}
	}
	for i := range p.Hazards.Steps {
		for _, h := range p.Hazards.Steps[i].Hazards {
			if h.Suspected() || !h.Covered() || h.Cover != hazard.Spoken && !slices.Contains(wornFamilies, h.Family) {
				continue // the caution that is missing brings its gear; words that say how to keep clear may do without
			}
			p.ungeared(have, danger{i, h}, report)
		}
	}
	p.ungearedCautions(have, report)
}}

// ungeared reports what a hazard wants worn and the plan has not; once a plan for
// each part of the body.
func (p *Pass) ungeared(have map[string]bool, d danger, report func(Report)) {
	c, _ := class.Find(d.Class)
	for _, g := range c.Gear {
		if g.Protects == class.Hearing && !kit.Loud(d.Family) || !p.lacksGear(have, g) {
			continue
		}
		r := d.report(p)
		r.Message = fmt.Sprintf("step %q wants something for the %s (%s), and the plan has none", p.Plan.Steps[d.step].Title.Print, bodyPart(g.Protects), g.Name)
		r.Hint = fmt.Sprintf("add supply = [{ name = %q, protects = %q }] and say when to put it on", g.Name, g.Protects)
		report(r)
	}
}

// lacksGear holds where nothing of the plan guards that part of the body, and takes
// it down as asked for.
func (p *Pass) lacksGear(have map[string]bool, g class.Gear) bool {
	words, guarded := gearWords[g.Protects]
	if have[g.Protects] || !guarded || says(p.all, words...) || p.worn(words) {
		return false
	}
	have[g.Protects] = true
	return true
}

// ungearedCautions reports those in words of the plan's own, where what is worn is
// the control: the first thing of their class's gear, which is what it is for, also
// where no word of the step shows the hazard.
func (p *Pass) ungearedCautions(have map[string]bool, report func(Report)) {
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		for k, use := range s.Cautions {
			own := p.Plan.CautionOf(s, use)
			if own == nil || own.Stock || !use.Listed || !slices.Contains(wornFamilies, own.Family) {
				continue
			}
			c, ok := class.Find(own.Class)
			if !ok || len(c.Gear) == 0 {
				continue
			}
			if _, other := speaksOfAnother(own.Say.Print, c); other {
				continue // caution-mismatch: its hazard is to be settled first
			}
			if g := c.Gear[0]; p.lacksGear(have, g) {
				report(Report{
					Message:  fmt.Sprintf("caution %q wants something for the %s (%s), and the plan has none", own.ID, bodyPart(g.Protects), g.Name),
					Hint:     fmt.Sprintf("add supply = [{ name = %q, protects = %q }] and say when to put it on", g.Name, g.Protects),
					Path:     stepPath(i, fmt.Sprintf("cautions[%d]", k)),
					Families: []string{own.Family},
				})
			}
		}
	}
}

// wornFamilies are those where what is worn is the control, and keeping clear
// is none.
var wornFamilies = []string{"eye-debris", "power-tool", "chemical-skin-lung", "asbestos-dust", "hearing", "battery-chemical", "lead-hazard", "hot-work-fire", "refrigerant"}

// gearWords name gear for a part of the body in a text.
var gearWords = map[string][]string{
	class.Eyes:    {"safety glasses", "glasses", "goggles", "face shield", "visor", "eye protection"},
	class.Hearing: {"ear defenders", "earplugs", "ear plugs", "ear muffs", "earmuffs", "hearing protection", "ear protection"},
	class.Lungs:   {"mask", "respirator", "dust mask", "ffp2", "ffp3", "p2", "p3", "n95", "breathing protection"},
	class.Hands:   {"gloves", "glove", "gauntlets"},
}

func bodyPart(protects string) string {
	if protects == class.Hearing {
		return "ears"
	}
	return protects
}

// worn holds where somebody of the shoot wears it.
func (p *Pass) worn(words []string) bool {
	for _, person := range p.Plan.Shoot.People {
		for _, w := range person.Wears {
			if says(fold(w), words...) {
				return true
			}
		}
	}
	return false
}
