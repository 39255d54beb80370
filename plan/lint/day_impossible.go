package lint

import (
	"fixslate/plan/diag"
	"fixslate/shotlist"
)

var dayImpossible = Rule{Name: "day-impossible", Group: Completeness, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for _, t := range shotlist.Hours(p.Plan) {
		report(Report{Message: t.Message, Hint: t.Hint, Path: t.Path, Step: t.Step})
	}
}}
