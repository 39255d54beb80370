package lint

import (
	"fmt"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var sourceDated = Rule{Name: "source-dated", Group: Truth, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	for i, s := range p.Plan.Sources {
		if s.Spare {
			continue
		}
		switch {
		case s.Kind == "law" && s.Date == (plan.Date{}):
			report(Report{
				Message: fmt.Sprintf("the law %q has no date", s.Title.Print),
				Hint:    "add date = the day it was read: laws change",
				Path:    row(plan.KindSource, i, ""),
			})
		case s.Date != (plan.Date{}) && p.Today != (plan.Date{}) && p.Today.Year-s.Date.Year >= sourceYears:
			report(Report{
				Message: fmt.Sprintf("the source %q is of %d", s.Title.Print, s.Date.Year),
				Hint:    "look whether there is a newer edition; for an old machine waive it with the reason",
				Path:    row(plan.KindSource, i, "date"),
			})
		}
	}
}}

// sourceYears is the age from which on a source is worth another look. Common
// practice, no source.
const sourceYears = 15
