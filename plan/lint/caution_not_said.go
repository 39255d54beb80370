package lint

import (
	"fmt"

	"fixslate/chapters/align"
	"fixslate/plan/diag"
)

var cautionNotSaid = Rule{Name: "caution-not-said", Group: AfterEdit, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	for _, c := range p.cautionsOf() {
		before := c.step
		why := "step %q is in the edit"
		if p.Edit.Match.Steps[c.step].Status == align.Missing {
			later := p.leansOn(c)
			if len(later) == 0 {
				continue // the work it warns of was cut as well
			}
			before, why = later[0], "step %q leans on it, and the step that speaks it was cut"
		}
		families, words := p.cautionWords(c)
		name := p.cautionName(c)
		r := Report{
			Path: c.path, Place: p.Edit.starts(before), Step: p.Plan.Steps[before].ID, Families: families,
			Hint: fmt.Sprintf("record it and lay it before %s: %s", clock(p.Edit.Match.Steps[before].Start), words),
		}
		share, missing := c.heard()
		switch {
		case share == 0:
			r.Message = fmt.Sprintf("the caution %q is not heard, and "+why, name, p.title(before))
		case share < cautionHeard:
			r.Severity = diag.Warning
			r.Message = fmt.Sprintf("the caution %q is heard only in part before step %q; not heard: %s", name, p.title(before), missing)
		default:
			continue
		}
		report(r)
	}
}}
