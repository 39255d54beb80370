package lint

import (
	"fmt"

	"fixslate/plan/diag"
	"fixslate/plan/hazard"
)

var cautionMissing = Rule{Name: "caution-missing", Group: Safety, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	for _, d := range p.dangers(hazard.Missing) {
		r := d.report(p)
		r.Message = fmt.Sprintf("step %q can hurt by %s (%s), and no caution comes before it", p.Plan.Steps[d.step].Title.Print, d.name(), d.Shown())
		r.Hint = fmt.Sprintf("add cautions = [%q] to the step; check --write-cautions writes it for you", d.Class)
		report(r)
	}
}}
