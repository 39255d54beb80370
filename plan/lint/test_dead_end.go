package lint

import (
	"cmp"
	"fmt"
	"slices"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var testDeadEnd = Rule{Name: "test-dead-end", Group: Truth, Severity: diag.Warning, Check: func(p *Pass) []Report {
	var found []Report
	order := p.testOrder()
	for at, id := range order {
		for i := range p.Plan.Tests {
			t := &p.Plan.Tests[i]
			if t.ID != id || at == len(order)-1 || len(t.Checks)+len(t.Clears)+len(t.Blames)+len(t.Outcomes) == 0 {
				continue
			}
			for _, end := range p.deadEnds(t) {
				found = append(found, Report{
					Message: fmt.Sprintf("test %q says not what to do %s", cmp.Or(t.Question.Print, t.ID), end.when),
					Hint:    `add ` + end.key + ` = "step:…", "test:…", "stop: why" or advice`,
					Path:    row(plan.KindTest, i, ""),
				})
			}
		}
	}
	return found
}}

type deadEnd struct{ key, when string }

// deadEnds are the outcomes of a test that lead nowhere. A good reading leads
// to what comes next in the story; a step for the outcome is a way out too.
func (p *Pass) deadEnds(t *plan.Test) []deadEnd {
	led := func(outcome string) bool {
		return slices.ContainsFunc(p.Plan.Steps, func(s plan.Step) bool { return s.OnlyIf == plan.Condition{Test: t.ID, Outcome: outcome} })
	}
	var ends []deadEnd
	if len(t.Outcomes) == 0 {
		if t.Fail.Kind == plan.Nowhere && !led("fails") {
			ends = append(ends, deadEnd{"fail", "when it fails"})
		}
		return ends
	}
	for _, o := range t.Outcomes {
		// The outcome that clears everything leads to what comes next.
		if o.Go.Kind == plan.Nowhere && !led(o.ID) && len(o.Means) > 0 {
			ends = append(ends, deadEnd{"go", fmt.Sprintf("at the outcome %q", cmp.Or(o.Sees.Print, o.ID))})
		}
	}
	return ends
}

// testOrder lists the tests in the order in which the story makes them.
func (p *Pass) testOrder() []string {
	var order []string
	for i := range p.Plan.Steps {
		for _, id := range p.Plan.Steps[i].Tests {
			if !slices.Contains(order, id) {
				order = append(order, id)
			}
		}
	}
	return order
}
