package lint

import (
	"fmt"
	"slices"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/hazard"
)

var stateUnsafe = Rule{Name: "state-unsafe", Group: Safety, Severity: diag.Error, Check: func(p *Pass) []Report {
	var found []Report
	for i := range p.Plan.Steps {
		for _, u := range []func(int) (string, string, bool){p.raisedBare, p.mainsOpen, p.airbagLive, p.fuelUnderPressure, p.chargeLeft, p.powerOverOpen} {
			if trouble, hint, unsafe := u(i); unsafe {
				found = append(found, Report{
					Message: fmt.Sprintf("in step %q %s", p.Plan.Steps[i].Title.Print, trouble), Hint: hint,
					Path: stepPath(i, "title"),
				})
			}
		}
	}
	return found
}}

// raisedBare holds where hands work on a raised object that stands on nothing.
// The step that raises it may work the jack.
func (p *Pass) raisedBare(i int) (trouble, hint string, unsafe bool) {
	s := &p.Plan.Steps[i]
	working := handsOn(s)
	if p.startsHere(i, "raised") {
		working = len(s.Fasteners)+len(s.Parts)+len(s.Tests) > 0
	}
	return "the object is raised and stands on no stands", `add starts = ["on-stands"] to the step that raises it`,
		working && p.inForce(i, "raised") && !p.inForce(i, "on-stands")
}

// mainsOpen holds where covers are off a thing on mains that is not isolated,
// or not proved dead. A plug that lies in sight is both: "unplugged" does.
func (p *Pass) mainsOpen(i int) (trouble, hint string, unsafe bool) {
	if !p.inForce(i, "covers-off") || !p.has(i, "mains-isolation", "live-test", "fixed-wiring", "water-electricity") || p.inForce(i, "live") {
		return "", "", false
	}
	if !p.inForce(i, "power-off") {
		return "covers are off and the mains is not", `isolate it first: starts = ["power-off", "proven-dead"], or ["unplugged"]`, true
	}
	return "covers are off and nothing has proved it dead", `add starts = ["proven-dead"] after a test with a proved tester`,
		!p.inForce(i, "proven-dead") && !p.unplugged(i)
}

// unplugged holds where the isolation in force is a plug that was pulled.
func (p *Pass) unplugged(i int) bool {
	for _, v := range p.Plan.In(i) {
		if v.State != "power-off" || v.From < 0 {
			continue
		}
		s := &p.Plan.Steps[v.From]
		if slices.Contains(s.Starts, "unplugged") || slices.Contains(s.During, "unplugged") || says(p.words[v.From], "plug", "unplug") {
			return true
		}
	}
	return false
}

// airbagLive holds where airbag parts are worked on with the battery on, or
// before the maker's wait is over.
func (p *Pass) airbagLive(i int) (trouble, hint string, unsafe bool) {
	if !p.has(i, "srs-airbag", "belt-pretensioner") {
		return "", "", false
	}
	return "airbag parts are worked on before the battery is off and the maker's wait is over", `add starts = ["battery-off", "srs-waited"] to an earlier step`,
		!p.inForce(i, "battery-off") || !p.inForce(i, "srs-waited")
}

// fuelUnderPressure holds where the fuel system is opened under pressure.
func (p *Pass) fuelUnderPressure(i int) (trouble, hint string, unsafe bool) {
	return "the fuel system is opened under pressure", `let the pressure off first: starts = ["depressurised"]`,
		p.startsHere(i, "fuel-open") && p.has(i, "fuel-rail-pressure") && !p.inForce(i, "depressurised")
}

// chargeLeft holds where a capacitor is touched that was not discharged.
func (p *Pass) chargeLeft(i int) (trouble, hint string, unsafe bool) {
	return "a capacitor is touched that nothing has discharged", `discharge it as its maker says and measure zero: starts = ["discharged"]`,
		p.inForce(i, "covers-off") && p.has(i, "capacitor-charge", "microwave-oven") && !p.inForce(i, "discharged")
}

// powerOverOpen holds where mains comes back while covers are off.
func (p *Pass) powerOverOpen(i int) (trouble, hint string, unsafe bool) {
	ended := slices.ContainsFunc(p.Plan.Intervals, func(v plan.Interval) bool { return v.State == "power-off" && v.To == i && !v.Open && !v.During })
	open := slices.ContainsFunc(p.Plan.Intervals, func(v plan.Interval) bool {
		return v.State == "covers-off" && v.From <= i && (v.To > i || v.Open && v.To == i)
	})
	return "the power comes back while covers are off", `put the covers back first, or give the step during = ["live"] and its cautions`,
		ended && open && !p.inForce(i, "live")
}

// has holds where a step acts on one of the classes.
func (p *Pass) has(i int, classes ...string) bool {
	return i < len(p.Hazards.Steps) && slices.ContainsFunc(p.Hazards.Steps[i].Hazards, func(h hazard.Hazard) bool { return slices.Contains(classes, h.Class) })
}
