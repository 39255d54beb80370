package lint

import (
	"fmt"

	"fixslate/plan/diag"
	"fixslate/plan/hazard"
)

var cautionStale = Rule{Name: "caution-stale", Group: Safety, Severity: diag.Warning, Check: func(p *Pass) []Report {
	var found []Report
	for _, d := range p.dangers(hazard.Stale) {
		r := d.report(p)
		r.Message = fmt.Sprintf("step %q acts on %s again, and its caution was given before that state ended", p.Plan.Steps[d.step].Title.Print, d.name())
		r.Hint = fmt.Sprintf("give it again: cautions = [%q]", d.Class)
		found = append(found, r)
	}
	return found
}}
