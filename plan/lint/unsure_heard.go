package lint

import (
	"fmt"

	"fixslate/plan/claim"
	"fixslate/plan/diag"
)

// unsureHeard is the rule unsure over an edit: what was said unsurely and not
// planned so. It has the name and the page of unsure, as it means the same.
var unsureHeard = Rule{Name: "unsure", Group: AfterEdit, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	for _, u := range p.ownTalk() {
		if !u.Has(claim.Hedge) || p.opinionOf(u.step) {
			continue
		}
		r := p.reportHeard(u)
		r.Message = fmt.Sprintf("this is said unsurely at %s: %q", clock(u.start), shorten(squeeze(u.Text)))
		r.Hint = "look it up and say it anew, call it opinion, or cut it"
		report(r)
	}
}}
