package lint

import (
	"fmt"
	"slices"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
)

var refitMissing = Rule{Name: "refit-missing", Group: Completeness, Severity: diag.Warning, Check: func(p *Pass) []Report {
	var found []Report
	for _, v := range p.Plan.Intervals {
		if !v.Open || v.From < 0 || slices.ContainsFunc(p.Plan.Shoot.Stays, func(s string) bool { return class.CanonicalState(s) == v.State }) {
			continue
		}
		if known, ok := class.FindState(v.State); ok && known.Safe {
			continue
		}
		found = append(found, Report{
			Message: fmt.Sprintf("%q begins in step %q and nothing ends it", v.State, p.Plan.Steps[v.From].Title.Print),
			Hint:    fmt.Sprintf("add ends = [%q] to the step that puts it back, or [shoot] stays = [%q] if it never is", v.State, v.State),
			Path:    p.startOf(v),
		})
	}
	return found
}}

// startOf is the place of the word that begins a stretch.
func (p *Pass) startOf(v plan.Interval) string {
	key, words := "starts", p.Plan.Steps[v.From].Starts
	if v.During {
		key, words = "during", p.Plan.Steps[v.From].During
	}
	at := slices.IndexFunc(words, func(s string) bool { return class.CanonicalState(s) == v.State })
	path := stepPath(v.From, key)
	if entry := fmt.Sprintf("%s[%d]", path, at); at >= 0 && p.Spans.Has(entry) {
		return entry
	}
	return path
}
