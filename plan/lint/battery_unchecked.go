package lint

import (
	"fmt"
	"slices"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var batteryUnchecked = Rule{Name: "battery-unchecked", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	near, where := false, ""
	check := func(expect plan.Value, path string) {
		for _, m := range p.Plan.Stated(expect) {
			for _, q := range m.Quantities() {
				if v, ok := q.In(trade.Volt); ok && m.Flow != "AC" && v.Number >= 9 && v.Number <= 15 && !near {
					near, where = true, path
				}
			}
		}
	}
	for i := range p.Plan.Tests {
		t := &p.Plan.Tests[i]
		// A battery in how may only feed something: it counts where volts are read.
		about := t.Question.Print + " " + t.At.Print + " " + t.ID
		if slices.ContainsFunc(p.Plan.Stated(t.Expect), func(m trade.Measure) bool { return m.Unit.Dimension() == trade.Volt.Dimension() }) {
			about += " " + t.How.Print
		}
		if says(fold(about), "battery") {
			return
		}
		check(t.Expect, row(plan.KindTest, i, "expect"))
		for j, r := range t.Readings {
			if says(fold(r.At.Print+" "+r.When.Print), "battery") {
				return
			}
			check(r.Expect, fmt.Sprintf("test[%d].reading[%d].expect", i, j))
		}
	}
	for i := range p.Plan.Specs {
		if s := &p.Plan.Specs[i]; says(fold(s.What.Print), "battery") && s.Value.Measure.Unit.Dimension() == trade.Volt.Dimension() && p.quoted[plan.Ref{Kind: plan.KindSpec, ID: s.ID}] {
			return
		}
	}
	if !near {
		return
	}
	report(Report{
		Message: "readings near 12 V are expected, and the battery itself is never measured",
		Hint:    "add a test of the battery first: a weak one makes every later reading low",
		Path:    where,
	})
}}
