package lint

import (
	"fmt"
	"regexp"
	"sync"

	"fixslate/plan/claim"
	"fixslate/plan/diag"
)

var alwaysNever = Rule{Name: "always-never", Group: Truth, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	for _, s := range p.said {
		if !s.Has(claim.Universal) || s.Has(claim.Hedge) || asserted(s.Claim) != "" || s.sourced() || p.Plan.Steps[s.step].Opinion || !ofAll(s.line.Print) {
			continue
		}
		r := s.report(0, 0)
		r.Message = fmt.Sprintf("this is said of every one there is: %q", shorten(s.line.Print))
		r.Hint = "one machine that differs makes it false: say which ones, or give it a source"
		if says(fold(s.line.Print), "safe", "safely", "harmless") {
			r.Message = fmt.Sprintf("this calls it safe: %q", shorten(s.line.Print))
			r.Hint = "say what was done and what was measured, and leave the judgement to the viewer"
		}
		report(r)
	}
}}

// ofAll holds for a universal that is more than a share of what is at hand: "one
// tip on each of the terminals" speaks of no other object.
func ofAll(text string) bool {
	rest := atHandEach().ReplaceAllString(text, "the ")
	return rest == text || claim.Sentence(rest).Has(claim.Universal)
}

var atHandEach = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(?:each|every) (?:one )?of (?:the|those|them|your|my|its) `)
})
