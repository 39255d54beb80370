package lint

import (
	"slices"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var objectUntried = Rule{Name: "object-untried", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	if p.Plan.Shoot.Tried != (plan.Date{}) || !p.looksForFault() || p.Plan.Video.Symptom.Empty() && len(p.Plan.Shoot.Has)+len(p.Plan.Causes) == 0 {
		return
	}
	report(Report{
		Message: "nobody says when the fault was last seen on the object that is filmed",
		Hint:    "try it before the day and add [shoot] tried = the date",
		Path:    "shoot",
	})
}}

// looksForFault holds where a test of the plan tells causes apart or leads
// somewhere; one that does neither only shows that the work is well done.
func (p *Pass) looksForFault() bool {
	return slices.ContainsFunc(p.Plan.Tests, func(t plan.Test) bool {
		return len(t.Checks)+len(t.Clears)+len(t.Blames)+len(t.Outcomes) > 0 || t.Pass.Kind != plan.Nowhere || t.Fail.Kind != plan.Nowhere
	})
}
