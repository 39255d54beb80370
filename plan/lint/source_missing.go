package lint

import (
	"cmp"
	"fmt"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var sourceMissing = Rule{Name: "source-missing", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	add := func(kind plan.Kind, i int, name, values string, c plan.Common, sources []string) {
		if len(sources) > 0 || c.Verify != "" || values == "" || values == "?" {
			return
		}
		report(Report{
			Message: fmt.Sprintf("%s: %s has no source", name, values),
			Hint:    `add source = "…" (a [[source]]'s id, or a title), or verify = whom to ask`,
			Path:    row(kind, i, ""),
		})
	}
	pl := p.Plan
	for i, v := range pl.Parts {
		add(plan.KindPart, i, v.Name.Print, v.Number, v.Common, v.Source)
	}
	for i, v := range pl.Fasteners {
		values := cmp.Or(measured(v.Torque), v.Grade, v.Thread)
		add(plan.KindFastener, i, v.What.Print, values, v.Common, v.Source)
	}
	for i, v := range pl.Fuses {
		add(plan.KindFuse, i, cmp.Or(v.At.Print, "fuse"), measured(v.Rating), v.Common, v.Source)
	}
	for i, v := range pl.Wires {
		name := "wire " + v.ID
		if ends := wireEnds(&pl.Wires[i]); ends != "" {
			name = "wire " + ends
		}
		add(plan.KindWire, i, name, cmp.Or(measured(v.Section), v.Colour), v.Common, v.Source)
	}
	for i, v := range pl.Specs {
		value := v.Value.Print
		if v.Value.Measure.Shape == trade.Open {
			value = "?"
		}
		add(plan.KindSpec, i, v.What.Print, value, v.Common, v.Source)
	}
	for i, v := range pl.Tests {
		if len(v.Expect.Quotes) == 0 {
			add(plan.KindTest, i, cmp.Or(v.Question.Print, v.ID), measured(v.Expect.Measure), v.Common, v.Source)
		}
	}
}}

// measured is a measure that states a number, in print; words say what can be
// seen and need no source.
func measured(m trade.Measure) string {
	if !m.Measured() {
		return ""
	}
	return m.String()
}

// wireEnds says where a wire goes: "from fuse 12 to the motor".
func wireEnds(w *plan.Wire) string {
	from, to := strings.Join(w.From, " and "), strings.Join(w.To, " and ")
	switch {
	case from != "" && to != "":
		return "from " + from + " to " + to
	case to != "":
		return "to " + to
	case from != "":
		return "from " + from
	}
	return ""
}
