package lint

import (
	"fmt"

	"fixslate/plan/diag"
	"fixslate/shotlist"
)

var shotMissing = Rule{Name: "shot-missing", Group: Completeness, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for _, b := range shotlist.Impossible(p.Plan, p.Shots) {
		if b.Answered {
			continue
		}
		report(Report{Message: b.Message, Hint: b.Hint, Path: b.Path, Step: b.Step})
	}
	for _, c := range p.Coverage {
		if !c.Missing() || len(c.Dropped) == 0 || len(c.Steps) == 0 {
			continue
		}
		step := c.Steps[0]
		path := stepPath(step, "drop")
		if !p.Spans.Has(path) {
			path = stepPath(step, "title")
		}
		report(Report{
			Message: fmt.Sprintf("no shot shows %q (%s): step %q drops it", c.What, c.Why, p.Plan.Steps[step].Title.Print),
			Hint:    fmt.Sprintf("take %q out of drop, or write a shot of it", c.Dropped[0]),
			Path:    path, Step: p.Plan.Steps[step].ID, About: c.Ref,
		})
	}
}}
