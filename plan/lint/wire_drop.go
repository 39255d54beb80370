package lint

import (
	"fmt"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

// mostDrop is a tenth of 12 V, what a marine code grants the circuits that matter
// less (as quoted). A blade or torpedo fuse says that the circuit is a vehicle's.
const mostDrop = 1.2 // V

var wireDrop = Rule{Name: "wire-drop", Group: Truth, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Fuses {
		f := &p.Plan.Fuses[i]
		amps, known := f.Rating.Exactly(trade.Ampere)
		if _, ofVehicle := trade.FuseForm(f.Form); !known || !ofVehicle || f.Form == "" {
			continue
		}
		for j := range p.Plan.Wires {
			w := &p.Plan.Wires[j]
			if w.Section.Shape != trade.Exact || w.Length.Shape != trade.Exact || !plan.Meets(w.Variants, f.Variants) || !p.feeds(f, w) {
				continue
			}
			if _, why := unwired(w); why != "" {
				continue // spec-implausible has told it
			}
			section, length := w.Section.Quantities()[0], w.Length.Quantities()[0]
			drop, ok := trade.VoltageDrop(trade.Run{Section: section, Length: length, Current: trade.Quantity{Number: amps, Unit: trade.Ampere}, Return: trade.Chassis})
			carries, listed := trade.FuseForWire(section)
			if !ok || drop.Ideal <= mostDrop || listed && amps > carries.Most { // fuse-wire tells the last
				continue
			}
			report(Report{
				Message: fmt.Sprintf("%s: %s of %s lose %.2g V at the %s its fuse lets through, more than a tenth of 12 V", w.ID, length, section, drop.Ideal, f.Rating),
				Hint:    fmt.Sprintf("check length, section and fuse against the diagram; if they are right, say that a reading under load is low by that much (fixslate look wire %s %s %s)", section, f.Rating, length),
				Path:    row(plan.KindWire, j, "length"),
			})
		}
	}
}}
