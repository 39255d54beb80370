package lint

import (
	"fmt"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var partUnused = Rule{Name: "part-unused", Group: Completeness, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Parts {
		v := &p.Plan.Parts[i]
		if !v.Named && !v.Spare && p.idle(plan.Ref{Kind: plan.KindPart, ID: v.ID}) {
			report(idle(v.Name.Print, "parts", v.ID, row(plan.KindPart, i, "")))
		}
	}
}}

// idle holds for a thing that no step lists and no text quotes.
func (p *Pass) idle(ref plan.Ref) bool { return !p.quoted[ref] && len(p.uses(ref)) == 0 }

// idle reports such a thing.
func idle(name, list, id, path string) Report {
	return Report{
		Message: fmt.Sprintf("%s stands in the list and no step takes it", name),
		Hint:    fmt.Sprintf("add %s = [%q] to the step that needs it, or take it out", list, id),
		Path:    path,
	}
}
