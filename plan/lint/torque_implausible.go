package lint

import (
	"fmt"
	"slices"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var torqueImplausible = Rule{Name: "torque-implausible", Group: Truth, Severity: diag.Warning, Check: func(p *Pass) []Report {
	var found []Report
	for i := range p.Plan.Fasteners {
		f := &p.Plan.Fasteners[i]
		band, ok := bandFor(f)
		if !ok || p.makersOwn(f.Source) {
			continue
		}
		for _, q := range torques(f) {
			in, isTorque := q.In(trade.NewtonMetre)
			if _, slipped := band.Slip(q); !isTorque || slipped || band.Holds(in.Number) {
				continue
			}
			trouble := "more than any common bolt of that thread bears"
			if band.Name != "" {
				trouble = "not what a " + band.Name + " takes"
			} else if in.Number < band.Low {
				trouble = "too little to hold in steel"
			} else if in.Number <= band.Limit {
				trouble = "more than its class bears"
			}
			found = append(found, Report{
				Message: fmt.Sprintf("%s: %s on %s is %s", f.What.Print, q, f.Thread, trouble),
				Hint:    bandOf(f) + "; give the maker's value with its source if it is right",
				Path:    row(plan.KindFastener, i, "torque"),
			})
			break
		}
	}
	return found
}}

// makersOwn holds for a fact that a maker's, a standard's or a law's text gives.
func (p *Pass) makersOwn(sources []string) bool {
	return slices.ContainsFunc(sources, func(id string) bool {
		return slices.ContainsFunc(p.Plan.Source(id), func(s *plan.Source) bool {
			return s.Kind == "maker" || s.Kind == "standard" || s.Kind == "law"
		})
	})
}
