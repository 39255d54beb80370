package lint

import (
	"fmt"
	"slices"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var torqueImplausible = Rule{Name: "torque-implausible", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Fasteners {
		for _, judge := range [...]func(*Pass, int) (Report, bool){(*Pass).tooMuchForACycle, (*Pass).outOfBand, (*Pass).tooMuchForItsTool} {
			if r, ok := judge(p, i); ok {
				report(r)
				break
			}
		}
	}
}}

// outOfBand finds a torque that a fastener's thread and class, or what it is,
// don't bear. Only a maker knows better.
func (p *Pass) outOfBand(i int) (Report, bool) {
	f := &p.Plan.Fasteners[i]
	band, ok := bandFor(f)
	if !ok || p.makersOwn(f.Source) {
		return Report{}, false
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
		return Report{
			Message: fmt.Sprintf("%s: %s on %s is %s", f.What.Print, q, f.Thread, trouble),
			Hint:    bandOf(f) + "; give the maker's value with its source if it is right",
			Path:    row(plan.KindFastener, i, "torque"),
		}, true
	}
	return Report{}, false
}

// tooMuchForItsTool finds a torque above what each key or spanner that turns the
// fastener is proved to, whatever its thread. A slip of the unit is another
// rule's.
func (p *Pass) tooMuchForItsTool(i int) (Report, bool) {
	f := &p.Plan.Fasteners[i]
	drives := p.drives[i]
	most := 0.0
	for _, d := range drives {
		limit, known := trade.ToolBears(d)
		if !known {
			return Report{}, false
		}
		most = max(most, limit)
	}
	band, _ := bandFor(f)
	for _, q := range torques(f) {
		in, isTorque := q.In(trade.NewtonMetre)
		if _, slipped := band.Slip(q); most == 0 || !isTorque || slipped || in.Number <= most || p.makersOwn(f.Source) {
			continue
		}
		return Report{
			Message: fmt.Sprintf("%s: %s is more than a tool for %s is proved to: %g N·m", f.What.Print, q, drives[0], most),
			Hint:    "look at the size, the unit and the decimal point again (fixslate look proof); give the maker's value with its source if it is right",
			Path:    row(plan.KindFastener, i, "torque"),
		}, true
	}
	return Report{}, false
}

// cycleMost is more than the tightest joint of a bicycle takes, in N·m: cranks
// and sprocket rings have 40 to 55. Common practice, no source.
const cycleMost = 75

// tooMuchForACycle finds a torque on a bicycle that no maker of one asks for.
func (p *Pass) tooMuchForACycle(i int) (Report, bool) {
	f := &p.Plan.Fasteners[i]
	subject := fold(p.Plan.Video.Subject.Print + " . " + p.Plan.Video.Title.Print + " . " + p.Plan.Video.Trade)
	if !says(subject, cycles...) || says(subject, "motorcycle", "motorbike", "moped") {
		return Report{}, false
	}
	for _, q := range torques(f) {
		in, isTorque := q.In(trade.NewtonMetre)
		band, known := bandFor(f)
		_, slipped := band.Slip(q)
		if isTorque && in.Number > cycleMost && !(known && slipped) {
			return Report{
				Message: fmt.Sprintf("%s: %s is more than any joint of a bicycle takes", f.What.Print, q),
				Hint:    "the tightest take about 50 N·m: look at the source, the unit and the decimal point again",
				Path:    row(plan.KindFastener, i, "torque"),
			}, true
		}
	}
	return Report{}, false
}

// makersOwn holds for a fact that a maker's, a standard's or a law's text gives.
func (p *Pass) makersOwn(sources []string) bool {
	return slices.ContainsFunc(sources, func(id string) bool {
		return slices.ContainsFunc(p.Plan.Source(id), func(s *plan.Source) bool {
			return s.Kind == "maker" || s.Kind == "standard" || s.Kind == "law"
		})
	})
}
