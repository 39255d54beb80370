package lint

import (
	"fmt"
	"slices"

	"fixslate/plan/claim"
	"fixslate/plan/diag"
)

var claimUntested = Rule{Name: "claim-untested", Group: Truth, Severity: diag.Warning, Check: func(p *Pass) []Report {
	var found []Report
	for _, s := range p.said {
		kind := asserted(s.Claim)
		if kind == "" || len(s.Evidence) > 0 || p.Plan.Steps[s.step].Opinion || s.quotesFact() || p.readAloud(s) || len(p.loose(s)) > 0 {
			continue
		}
		r := s.report(0, 0)
		r.Message = fmt.Sprintf("nothing in the plan shows this (%s): %q", kind, shorten(s.line.Print))
		r.Hint = `show it in a test, give it a source with a [[claim]] (says = its words, evidence = [...]), or call it opinion = true`
		found = append(found, r)
	}
	return found
}}

// asserted is the kind of a claim that wants evidence, in words; empty for what
// other rules speak of (hedges, universals, part numbers) and for times.
func asserted(c claim.Claim) string {
	if !c.NeedsEvidence || c.Has(claim.Hedge) {
		return ""
	}
	for _, k := range []struct {
		kind claim.Kind
		word string
	}{
		{claim.Legal, "law"}, {claim.Compatibility, "what fits"}, {claim.Causal, "a cause"}, {claim.Frequency, "how often"},
		{claim.Comparison, "a comparison"}, {claim.Cost, "a cost"},
	} {
		if c.Has(k.kind) {
			return k.word
		}
	}
	// How a thing looks is there to be seen; how many or how much is not.
	if c.Has(claim.Spec) && slices.ContainsFunc(c.Values, func(v claim.Value) bool { return !v.Quoted && v.Part == "" }) {
		return "how it is made"
	}
	return ""
}

// shorten keeps a quoted line to what a message has room for.
func shorten(text string) string {
	const most = 60
	n := 0
	for i := range text {
		if n++; n > most {
			return text[:i] + "…"
		}
	}
	return text
}
