package lint

import (
	"fmt"
	"regexp"
	"slices"
	"sync"

	"fixslate/plan"
	"fixslate/plan/claim"
	"fixslate/plan/diag"
)

var unsure = Rule{Name: "unsure", Group: Truth, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	for _, s := range p.said {
		if !s.Has(claim.Hedge) || len(s.Evidence) > 0 || p.Plan.Steps[s.step].Opinion || p.tellsOfYours(s) || warnsOf().MatchString(fold(s.line.Print)) {
			continue
		}
		r := s.report(0, 0)
		r.Message = fmt.Sprintf("this is said unsurely: %q", shorten(s.line.Print))
		r.Hint = "test it, source it, or call it opinion = true"
		report(r)
	}
}}

// tellsOfYours holds for a line that tells a difference of the plan, and is
// unsure only of which the viewer has: "yours may be steel".
func (p *Pass) tellsOfYours(s said) bool {
	folded := fold(s.line.Print)
	return says(folded, "yours may", "yours might", "yours could", "you may have", "you might have") && len(s.Values) == 0 &&
		slices.ContainsFunc(p.Plan.Differs, func(d plan.Differs) bool { return tellsDifference(folded, &d) })
}

// warnsOf finds a line that is worded as a caution, in folded words: what may
// hurt need not be sure. "Careful, there may be pressure left", "it may still hold
// a charge, so don't touch it".
var warnsOf = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^ (?:be careful|careful|caution|warning|danger|watch out|look out|watch your|mind|beware|stand clear|stand back|stay clear|keep clear|keep your|keep away) ` +
		`|(?:may|might|could) [^.]* so (?:don't|do not|never|no|keep|stay|wear|stand|treat) `)
})
