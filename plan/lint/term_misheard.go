package lint

import (
	"fmt"

	"fixslate/plan/diag"
)

var termMisheard = Rule{Name: "term-misheard", Group: AfterEdit, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for _, t := range p.Edit.Match.Terms {
		r := Report{
			Message: fmt.Sprintf("%q at %s is perhaps %q", squeeze(t.Heard), clock(t.Start), t.Term),
			Hint:    "if it is, fixslate match --accept puts it into captions/final.*; if not, leave it",
			Place:   p.Edit.heard(t.Cue, t.Span), About: t.Ref,
		}
		if t.Step >= 0 && t.Step < len(p.Plan.Steps) {
			r.Step, r.Path = p.Plan.Steps[t.Step].ID, stepPath(t.Step, "say")
		}
		report(r)
	}
}}
