package lint

import (
	"fmt"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
)

var cautionWeak = Rule{Name: "caution-weak", Group: Safety, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Cautions {
		c := &p.Plan.Cautions[i]
		usual, ok := class.Find(c.Class)
		if c.Stock || !ok || c.Signal >= usual.Signal {
			continue
		}
		report(Report{
			Message: fmt.Sprintf("caution %q says %s where %s deserves %s", c.ID, c.Signal, strings.ToLower(usual.Name), usual.Signal),
			Hint:    fmt.Sprintf("write signal = %q, or leave signal out", usual.Signal),
			Path:    row(plan.KindCaution, i, "signal"), Families: []string{c.Family},
		})
	}
}}
