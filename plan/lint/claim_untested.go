package lint

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan/claim"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var claimUntested = Rule{Name: "claim-untested", Group: Truth, Severity: diag.Warning, Check: func(p *Pass) []Report {
	var found []Report
	for _, s := range p.said {
		kind := asserted(s.Claim)
		if kind == causal && handsOn(&p.Plan.Steps[s.step]) && s.tellsWhatIf() || kind == law && says(fold(s.line.Print), licenceWords...) {
			continue
		}
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
		{claim.Legal, law}, {claim.Compatibility, "what fits"}, {claim.Causal, causal}, {claim.Frequency, "how often"},
		{claim.Comparison, "a comparison"}, {claim.Cost, "a cost"},
	} {
		if c.Has(k.kind) {
			return k.word
		}
	}
	// How a thing looks is there to be seen; how many or how much is not.
	if c.Has(claim.Spec) && slices.ContainsFunc(c.Values, ofTheObject) {
		return "how it is made"
	}
	return ""
}

const causal, law = "a cause", "law"

// ofTheObject holds for a value of the thing itself: no time, no turn of the
// hand, no share, and none that a fact gives.
func ofTheObject(v claim.Value) bool {
	if v.Quoted || v.Part != "" {
		return false
	}
	unit, ok := trade.LookupUnit(v.Unit)
	if !ok {
		return true
	}
	switch unit.Dimension() {
	case trade.Time, trade.Angle, trade.Ratio:
		return false
	}
	return true
}

// tellsWhatIf holds for a line that says what to make of what is seen while
// the hands are at it: "If it binds, it is crooked."
func (s said) tellsWhatIf() bool {
	folded := fold(s.line.Print)
	if says(folded, "means", "tells you", "says that") {
		return true
	}
	return slices.ContainsFunc([]string{" if ", " when ", " where ", " unless ", " once ", " no "}, func(w string) bool { return strings.HasPrefix(folded, w) })
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
