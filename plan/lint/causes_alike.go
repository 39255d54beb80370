package lint

import (
	"fmt"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var causesAlike = Rule{Name: "causes-alike", Group: Truth, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	for _, group := range p.Tests.Same {
		var names []string
		for _, id := range group {
			names = append(names, fmt.Sprintf("%q", p.Plan.Name(plan.Ref{Kind: plan.KindCause, ID: id})))
		}
		at := p.Plan.Find(plan.Ref{Kind: plan.KindCause, ID: group[len(group)-1]})
		report(Report{
			Message: fmt.Sprintf("no test tells %s apart", strings.Join(names, " and ")),
			Hint:    "add a test that one of them fails and the other passes, or say that the repair is the same",
			Path:    row(plan.KindCause, at[0], ""),
		})
	}
}}
