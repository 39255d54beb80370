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
		if c, ok := class.Find(p.Plan.Cautions[i].Class); ok {
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
			c, _ := class.Find(h.Class)
			for _, g := range c.Gear {
				words, guarded := gearWords[g.Protects]
				if have[g.Protects] || !guarded || g.Protects == class.Hearing && !kit.Loud(h.Family) || says(p.all, words...) || p.worn(words) {
					continue
				}
				have[g.Protects] = true // once a plan
				r := danger{i, h}.report(p)
				r.Message = fmt.Sprintf("step %q wants something for the %s (%s), and the plan has none", p.Plan.Steps[i].Title.Print, bodyPart(g.Protects), g.Name)
				r.Hint = fmt.Sprintf("add supply = [{ name = %q, protects = %q }] and say when to put it on", g.Name, g.Protects)
				report(r)
			}
		}
	}
}}

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
