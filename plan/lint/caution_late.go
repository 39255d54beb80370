package lint

import (
	"fmt"

	"fixslate/plan/diag"
	"fixslate/plan/hazard"
)

var cautionLate = Rule{Name: "caution-late", Group: Safety, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	for _, d := range p.dangers(hazard.Late) {
		r := d.report(p)
		r.Message = fmt.Sprintf("step %q warns of %s only over the action or after it", p.Plan.Steps[d.step].Title.Print, d.name())
		r.Hint = fmt.Sprintf("list it: cautions = [%q] is spoken before the step's first line", d.Class)
		report(r)
	}
}}
