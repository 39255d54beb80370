package lint

import (
	"fmt"

	"fixslate/plan/diag"
)

var numberLoose = Rule{Name: "number-loose", Group: Truth, Severity: diag.Warning, Check: func(p *Pass) []Report {
	var found []Report
	for _, s := range p.said {
		if p.Plan.Steps[s.step].Opinion {
			continue
		}
		for _, v := range p.loose(s) {
			r := s.report(v.Start, v.End)
			r.Message = fmt.Sprintf("%q is said without a fact behind it", s.printed(v))
			r.Hint = "declare it once as a [[spec]] with its source and quote it here: {id}"
			found = append(found, r)
		}
	}
	return found
}}
