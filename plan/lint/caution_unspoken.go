package lint

import (
	"fmt"

	"fixslate/plan/diag"
	"fixslate/plan/hazard"
)

var cautionUnspoken = Rule{Name: "caution-unspoken", Group: Safety, Severity: diag.Note, Check: func(p *Pass) []Report {
	var found []Report
	for _, d := range p.dangers(hazard.Carded) {
		r := d.report(p)
		r.Message = fmt.Sprintf("step %q shows the caution of %s on a card, and nobody says it", p.Plan.Steps[d.step].Title.Print, d.name())
		r.Hint = "give the caution its say again, or say it in the step before the action"
		found = append(found, r)
	}
	return found
}}
