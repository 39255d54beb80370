package lint

import (
	"cmp"
	"fmt"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var torqueUnitSlip = Rule{Name: "torque-unit-slip", Group: Truth, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Fasteners {
		f := &p.Plan.Fasteners[i]
		band, known := bandFor(f)
		if !known {
			continue
		}
		for _, q := range torques(f) {
			slip, ok := band.Slip(q)
			if !ok {
				continue
			}
			what := "in another unit it would be"
			if slip.Shifted {
				what = "with its decimal point moved it would be"
			}
			report(Report{
				Message: fmt.Sprintf("%s: %s is out of reach for %s; %s plausible: %s", f.What.Print, q, cmp.Or(band.Name, f.Thread), what, slip.Meant),
				Hint:    fmt.Sprintf("look at the source again; %s", bandOf(f)),
				Path:    row(plan.KindFastener, i, "torque"),
			})
			break
		}
	}
}}

// torques are the numbers of a fastener's torque.
func torques(f *plan.Fastener) []trade.Quantity {
	if !f.Torque.Measured() || f.Torque.Unit.Dimension() != trade.Torque {
		return nil
	}
	if f.Torque.Shape == trade.Tolerance {
		return []trade.Quantity{{Number: f.Torque.Nominal, Unit: f.Torque.Unit}}
	}
	return f.Torque.Quantities()
}

// bandFor is the torque that is plausible for a fastener: by what it is, else by
// its thread and class.
func bandFor(f *plan.Fastener) (trade.Band, bool) {
	if band, ok := trade.NamedBand(f.What.Print + " " + f.Head); ok {
		return band, true
	}
	return trade.TorqueBand(f.Thread, f.Grade)
}

// bandOf says which torques are plausible for a fastener.
func bandOf(f *plan.Fastener) string {
	band, ok := bandFor(f)
	if !ok {
		return "no table has this thread"
	}
	if band.Name != "" {
		return fmt.Sprintf("a %s takes %g to %g N·m", band.Name, band.Low, band.High)
	}
	class := "any class up to 12.9"
	if band.Class != "" {
		class = "class " + band.Class
	}
	return fmt.Sprintf("%s takes %.2g to %.3g N·m in steel, %s (fixslate look torque)", f.Thread, band.Low, band.High, class)
}
