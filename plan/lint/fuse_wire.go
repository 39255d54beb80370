package lint

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var fuseWire = Rule{Name: "fuse-wire", Group: Truth, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Fuses {
		f := &p.Plan.Fuses[i]
		amps, known := f.Rating.Exactly(trade.Ampere)
		if !known {
			continue
		}
		weakest, carries := p.weakestWire(f)
		if weakest == nil || amps <= carries.Most {
			continue
		}
		report(Report{
			Message: fmt.Sprintf("%s of %s is more than its wire of %s carries: %.3g A at most", cmp.Or(f.At.Print, "a fuse"), f.Rating, weakest.Section, carries.Most),
			Hint:    "a fuse protects the wire: check both against the maker's diagram (fixslate look wire); never fit a larger fuse",
			Path:    row(plan.KindFuse, i, "rating"),
		})
	}
}}

// weakestWire is the wire of a fuse that carries least, nil where none is known.
func (p *Pass) weakestWire(f *plan.Fuse) (*plan.Wire, trade.Ampacity) {
	var weakest *plan.Wire
	var least trade.Ampacity
	for j := range p.Plan.Wires {
		w := &p.Plan.Wires[j]
		if w.Section.Shape != trade.Exact || !plan.Meets(w.Variants, f.Variants) || !p.feeds(f, w) {
			continue
		}
		section := trade.Quantity{Number: w.Section.Nominal, Unit: w.Section.Unit}
		carries, ok := trade.FuseForWire(section)
		if in, is := section.In(trade.SquareMM); !ok && is && in.Number > 0 && in.Number < thinnestFused {
			carries, ok = trade.FuseForWire(trade.Quantity{Number: thinnestFused, Unit: trade.SquareMM}) // it carries less than that
		}
		if ok && (weakest == nil || carries.Most < least.Most) {
			weakest, least = w, carries
		}
	}
	return weakest, least
}

// thinnestFused is the thinnest wire, in mm², that the table of fuses has.
const thinnestFused = 0.5

// feeds holds where the plan ties a wire to a fuse: the wire's ends name it or
// what it protects, a
// step has both, or there are no others.
func (p *Pass) feeds(f *plan.Fuse, w *plan.Wire) bool {
	ends := fold(strings.Join(slices.Concat(w.From, w.To), " . "))
	if what := strings.TrimSpace(strings.ReplaceAll(fold(f.Protects.Print), " . ", "")); what != "" && says(ends, what) {
		return true // what it protects draws its current through both its wires
	}
	if says(ends, f.ID, strings.TrimSpace(strings.ReplaceAll(fold(f.At.Print), " . ", ""))) {
		return true
	}
	if len(p.Plan.Fuses) == 1 && len(p.Plan.Wires) == 1 {
		return true
	}
	return slices.ContainsFunc(p.Plan.Steps, func(s plan.Step) bool {
		return slices.Contains(s.Fuses, f.ID) && slices.Contains(s.Wires, w.ID)
	})
}
