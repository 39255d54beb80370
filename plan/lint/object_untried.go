package lint

import (
	"fixslate/plan"
	"fixslate/plan/diag"
)

var objectUntried = Rule{Name: "object-untried", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	if p.Plan.Shoot.Tried != (plan.Date{}) || len(p.Plan.Tests) == 0 || p.Plan.Video.Symptom.Empty() && len(p.Plan.Shoot.Has)+len(p.Plan.Causes) == 0 {
		return
	}
	report(Report{
		Message: "nobody says when the fault was last seen on the object that is filmed",
		Hint:    "try it before the day and add [shoot] tried = the date",
		Path:    "shoot",
	})
}}
