package lint

import (
	"fmt"

	"fixslate/plan/claim"
	"fixslate/plan/diag"
)

var unsure = Rule{Name: "unsure", Group: Truth, Severity: diag.Note, Check: func(p *Pass) []Report {
	var found []Report
	for _, s := range p.said {
		if !s.Has(claim.Hedge) || len(s.Evidence) > 0 || p.Plan.Steps[s.step].Opinion {
			continue
		}
		r := s.report(0, 0)
		r.Message = fmt.Sprintf("this is said unsurely: %q", shorten(s.line.Print))
		r.Hint = "test it, source it, or call it opinion = true"
		found = append(found, r)
	}
	return found
}}
