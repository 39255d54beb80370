package lint

import (
	"fmt"
	"strings"

	"fixslate/plan/diag"
	"fixslate/plan/hazard"
	"fixslate/plan/hazard/class"
)

var licenceMissing = Rule{Name: "licence-missing", Group: Safety, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for i := range p.Hazards.Steps {
		for _, h := range p.Hazards.Steps[i].Hazards {
			c, ok := class.Find(h.Class)
			if !ok || h.Suspected() || c.Who.Skill != class.Licensed && h.Family != licensed || p.leftTo(i) || p.leftBefore(i, h) {
				continue
			}
			r := danger{i, h}.report(p)
			r.Message = fmt.Sprintf("step %q is work that law often reserves (%s), and nobody is named to leave it to", p.Plan.Steps[i].Title.Print, c.Name)
			who := strings.TrimSuffix(c.Who.Text, ".")
			r.Hint = fmt.Sprintf("leave it out, or add leave_to to its caution: %s", strings.ToLower(who[:1])+who[1:])
			if p.Plan.Video.Region == "" {
				r.Hint += "; the law differs: ask locally"
			}
			report(r)
			break
		}
	}
}}

// licenceWords tell that somebody qualified does it.
var licenceWords = []string{
	"licensed", "registered", "certified", "qualified", "electrician", "gas engineer", "heating engineer", "refrigeration engineer", "specialist", "approved contractor",
	"trained and certified", "airbag technician", "authorised", "authorized",
}

// leftTo holds where the step, or a caution of it, says who has to do it.
func (p *Pass) leftTo(step int) bool {
	s := &p.Plan.Steps[step]
	for _, use := range s.Cautions {
		if c := p.Plan.CautionOf(s, use); c != nil && !c.LeaveTo.Empty() {
			return true
		}
	}
	return says(p.words[step], licenceWords...)
}

// leftBefore holds where an earlier step spoke a caution of the hazard's class or
// family that says who has to do it.
func (p *Pass) leftBefore(step int, h hazard.Hazard) bool {
	for i := range step {
		s := &p.Plan.Steps[i]
		for _, use := range s.Cautions {
			c := p.Plan.CautionOf(s, use)
			if c != nil && use.Spoken && !c.LeaveTo.Empty() && (c.Class == h.Class || c.Family == h.Family) {
				return true
			}
		}
	}
	return false
}
