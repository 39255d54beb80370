package lint

import (
	"cmp"
	"fmt"
	"slices"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/diagnose"
)

var testDeadEnd = Rule{Name: "test-dead-end", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for _, d := range p.Tests.DeadEnds {
		if d.Good || d.Last || d.Closing && !p.guards(d.Test) || p.ledOn(d) {
			continue
		}
		for _, i := range p.Plan.Find(plan.Ref{Kind: plan.KindTest, ID: d.Test}) {
			t := &p.Plan.Tests[i]
			when, key, where := "when it fails", "fail", ""
			for k, o := range t.Outcomes {
				if o.ID == d.Outcome {
					when, key, where = fmt.Sprintf("at the outcome %q", cmp.Or(o.Sees.Print, o.ID)), "go", fmt.Sprintf(" to outcome %d", k+1)
				}
			}
			report(Report{
				Message: fmt.Sprintf("test %q does not say what to do %s", cmp.Or(t.Question.Print, t.ID), when),
				Hint:    `add ` + key + ` = "step:…", "test:…", "stop: why" or advice` + where,
				Path:    row(plan.KindTest, i, ""),
			})
			break
		}
	}
	p.inCircles(report)
}}

// guards holds for a test without a cause that a good reading leaves for another
// test: a battery that is flat makes all the others lie, so it needs a way out too.
func (p *Pass) guards(id string) bool {
	return slices.ContainsFunc(p.Plan.Test(id), func(t *plan.Test) bool { return t.Pass.Kind == plan.ToTest })
}

// inCircles are tests that good readings lead back to: a test to itself, or two
// that send a viewer from one to the other for ever. Each circle is told once.
func (p *Pass) inCircles(report func(Report)) {
	told := map[string]bool{}
	for i := range p.Plan.Tests {
		t := &p.Plan.Tests[i]
		circle := p.passes(t)
		if len(circle) == 0 || told[t.ID] {
			continue
		}
		for _, id := range circle {
			told[id] = true
		}
		message := fmt.Sprintf("test %q leads back to itself when it passes", cmp.Or(t.Question.Print, t.ID))
		if len(circle) > 1 {
			message += fmt.Sprintf(", by way of %q", circle[1])
		}
		report(Report{
			Message: message,
			Hint:    `write what is next: pass = "step:…", "test:…" or "stop: why"`,
			Path:    row(plan.KindTest, i, "pass"),
		})
	}
}

// passes are the ids of the tests that good readings lead through from a test back
// to itself; none where they end elsewhere.
func (p *Pass) passes(t *plan.Test) []string {
	var way []string
	for at := t; at.Pass.Kind == plan.ToTest && !slices.Contains(way, at.ID); {
		way = append(way, at.ID)
		next := p.Plan.Test(at.Pass.ID)
		if at.Pass.ID == t.ID {
			return way
		}
		if len(next) == 0 {
			break
		}
		at = next[0]
	}
	return nil
}

// ledOn holds where a step of the story is for the outcome.
func (p *Pass) ledOn(d diagnose.DeadEnd) bool {
	outcome := d.Outcome
	if outcome == diagnose.Fail {
		outcome = "fails"
	}
	return slices.ContainsFunc(p.Plan.Steps, func(s plan.Step) bool {
		return s.OnlyIf == plan.Condition{Test: d.Test, Outcome: outcome}
	})
}
