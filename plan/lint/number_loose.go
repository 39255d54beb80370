package lint

import (
	"fmt"

	"fixslate/plan/claim"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var numberLoose = Rule{Name: "number-loose", Group: Truth, Severity: diag.Warning, Check: func(p *Pass) []Report {
	var found []Report
	versions := p.versionValues()
	for _, s := range p.said {
		if p.Plan.Steps[s.step].Opinion {
			continue
		}
		last := -1
		for _, v := range p.loose(s) {
			if v.Start == last || p.toldElsewhere(s, v, versions) {
				continue // both ends of a range are one figure
			}
			last = v.Start
			r := s.report(v.Start, v.End)
			r.Message = fmt.Sprintf("%q is said without a fact behind it", s.printed(v))
			r.Hint = "declare it once as a [[spec]] with its source and quote it here: {id}"
			found = append(found, r)
		}
	}
	return found
}}

// toldElsewhere holds for a loose number that number-conflict or variant-gap
// speaks of: the remedy is the same quote.
func (p *Pass) toldElsewhere(s said, v claim.Value, versions []versionValue) bool {
	if unit, ok := trade.LookupUnit(v.Unit); ok {
		if _, other := p.contradicted(s, trade.Quantity{Number: v.Number, Unit: unit}); other {
			return true
		}
	}
	if len(p.Plan.Steps[s.step].Variants) > 0 || len(versions) == 0 {
		return false
	}
	_, at, bare := bareValue(*s.line, versions)
	return bare && at.Start < v.End && v.Start < at.End
}
