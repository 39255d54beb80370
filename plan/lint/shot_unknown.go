package lint

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/shotlist"
)

var shotUnknown = Rule{Name: "shot-unknown", Group: Completeness, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for _, a := range shotlist.FindAstray(p.Plan) {
		if p.ofUnmadeTest(a.Name) {
			continue // test-unshown speaks of it, and the remedy brings the shot back
		}
		key, verb := "drop", "drops"
		if strings.Contains(a.Path, "].replaces") {
			key, verb = "replaces", "replaces"
		}
		hint := fmt.Sprintf("take it out of %s: the step is given no shot", key)
		if len(a.Names) > 0 {
			hint = fmt.Sprintf("suggested are %s: write one of these, or take it out of %s", strings.Join(a.Names, ", "), key)
		}
		report(Report{
			Message: fmt.Sprintf("step %q %s the shot %q, and none of that name is suggested for it", p.Plan.Steps[a.Step].Title.Print, verb, a.Name),
			Hint:    hint, Path: a.Path,
		})
	}
}}

// ofUnmadeTest holds for the shot of a test that no step makes.
func (p *Pass) ofUnmadeTest(name string) bool {
	return slices.ContainsFunc(p.Plan.Tests, func(t plan.Test) bool {
		shown := strings.Contains(name, t.ID+"-display") || strings.Contains(name, t.ID+"-look")
		return shown && !slices.ContainsFunc(p.Plan.Steps, func(s plan.Step) bool { return slices.Contains(s.Tests, t.ID) })
	})
}
