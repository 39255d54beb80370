package lint

import (
	"fmt"

	"fixslate/plan/claim"
	"fixslate/plan/diag"
)

var claimAdded = Rule{Name: "claim-added", Group: AfterEdit, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	values := p.plannedValues()
	for _, u := range p.ownTalk() {
		kind, ok := assertion(u.Claim)
		if !ok || p.opinionOf(u.step) || p.planned(u, values) {
			continue
		}
		r := p.reportHeard(u)
		r.Message = fmt.Sprintf("said at %s and not in the plan (%s): %q", clock(u.start), kind, shorten(squeeze(u.Text)))
		r.Hint = "show it or source it and put it into the plan, call it opinion in a [[claim]], or cut it"
		report(r)
	}
}}

// assertion is the first kind of a claim that a viewer may act on. A hedge alone
// is for unsure; how long something took, what it cost and how it compares harms
// nobody, where no figure is given.
func assertion(c claim.Claim) (claim.Kind, bool) {
	for _, k := range c.Kinds {
		switch k {
		case claim.Hedge, claim.Duration, claim.Cost:
		case claim.Comparison:
			if len(c.Values) > 0 {
				return k, true
			}
		default:
			return k, true
		}
	}
	return "", false
}
