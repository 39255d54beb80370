package lint

import (
	"fmt"

	"fixslate/plan/claim"
	"fixslate/plan/diag"
)

var alwaysNever = Rule{Name: "always-never", Group: Truth, Severity: diag.Note, Check: func(p *Pass) []Report {
	var found []Report
	for _, s := range p.said {
		if !s.Has(claim.Universal) || s.Has(claim.Hedge) || asserted(s.Claim) != "" || s.sourced() || p.Plan.Steps[s.step].Opinion {
			continue
		}
		r := s.report(0, 0)
		r.Message = fmt.Sprintf("this is said of every one there is: %q", shorten(s.line.Print))
		r.Hint = "one machine that differs makes it false: say which ones, or give it a source"
		found = append(found, r)
	}
	return found
}}
