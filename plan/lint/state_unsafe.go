package lint

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/hazard"
	"fixslate/plan/hazard/class"
)

var stateUnsafe = Rule{Name: "state-unsafe", Group: Safety, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	for _, u := range unsafeStates {
		for i := 0; i < len(p.Plan.Steps); i++ {
			if !u.holds(p, i) {
				continue
			}
			first := i
			for u.lasts && i+1 < len(p.Plan.Steps) && u.holds(p, i+1) {
				i++
			}
			report(Report{
				Message: fmt.Sprintf("in step %q%s %s", p.Plan.Steps[first].Title.Print, goingOn(i-first), u.trouble), Hint: u.hint,
				Path: stepPath(first, "title"), Families: []string{u.family},
			})
		}
	}
}}

// goingOn says for how many steps more a trouble lasts, which has one remedy.
func goingOn(steps int) string {
	switch steps {
	case 0:
		return ""
	case 1:
		return " and the step after it"
	}
	return fmt.Sprintf(" and the %d steps after it", steps)
}

// unsafeStates are states in which the trade forbids what a step does. Each is
// asked by itself; where two hold, both are to be mended.
var unsafeStates = []struct {
	family, trouble, hint string
	holds                 func(p *Pass, step int) bool
	lasts                 bool // one state through several steps: told once
}{
	{"raised-load", "the object is raised and stands on no stands",
		`add starts = ["on-stands"] to the step that raises it`, (*Pass).raisedBare, true},
	{"mains-shock", "covers are off and the mains is not",
		`isolate it first: starts = ["power-off", "proven-dead"], or ["unplugged"]`, (*Pass).mainsOn, true},
	{"mains-shock", "covers are off and nothing has proved it dead",
		`add starts = ["proven-dead"] after a test with a proved tester`, (*Pass).mainsUnproved, true},
	{"mains-shock", "the power comes back while covers are off",
		`put the covers back first, or give the step during = ["live"] and its cautions`, (*Pass).powerOverOpen, false},
	{"airbag-srs", "airbag parts are worked on before the battery is off and the maker's wait is over",
		`add starts = ["battery-off", "srs-waited"] to an earlier step`, (*Pass).airbagLive, false},
	{"fuel-vapour", "the fuel system is opened under pressure",
		`let the pressure off first: starts = ["depressurised"]`, (*Pass).fuelUnderPressure, false},
	{"capacitor-charge", "capacitors may hold a charge, and nothing has discharged them",
		`discharge them as the maker says and measure zero: starts = ["discharged"]`, (*Pass).chargeLeft, true},
}

// raisedBare holds where hands work on a raised object that stands on nothing.
// The step that raises it may work the jack.
func (p *Pass) raisedBare(i int) bool {
	s := &p.Plan.Steps[i]
	working := s.HandsOn()
	if p.startsHere(i, "raised") {
		working = len(s.Fasteners)+len(s.Parts)+len(s.Tests) > 0
	}
	return working && p.inForce(i, "raised") && !p.inForce(i, "on-stands")
}

// mainsOpen holds where covers are off a thing on mains, and the step is not
// meant to be live.
func (p *Pass) mainsOpen(i int) bool {
	return p.inForce(i, "covers-off") && !p.inForce(i, "live") && p.has(i, "mains-isolation", "live-test", "fixed-wiring", "water-electricity")
}

// mainsOn holds where it is open and not isolated.
func (p *Pass) mainsOn(i int) bool { return p.mainsOpen(i) && !p.inForce(i, "power-off") }

// mainsUnproved holds where it is open, isolated, and not proved dead. A plug
// that lies in sight is proof enough.
func (p *Pass) mainsUnproved(i int) bool {
	return p.mainsOpen(i) && p.inForce(i, "power-off") && !p.inForce(i, "proven-dead") && !p.unplugged(i) && !p.uncovers(i, "proven-dead")
}

// uncovers holds for a step that does no more than take the cover off, where the
// very next one brings the state that is wanted: what is proved dead or
// discharged stands behind the cover.
func (p *Pass) uncovers(i int, state string) bool {
	s := &p.Plan.Steps[i]
	return p.startsHere(i, "covers-off") && len(s.Parts)+len(s.Wires)+len(s.Tests) == 0 &&
		i+1 < len(p.Plan.Steps) && p.startsHere(i+1, state)
}

// unplugged holds where the isolation in force is a plug that was pulled.
func (p *Pass) unplugged(i int) bool {
	for _, v := range p.Plan.Holding("power-off", i) {
		if v.From < 0 {
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
func (p *Pass) airbagLive(i int) bool {
	return p.has(i, "srs-airbag", "belt-pretensioner") && !(p.inForce(i, "battery-off") && p.inForce(i, "srs-waited")) && !p.waitedByWords(i)
}

// waitedByWords holds in a plan without either state for a step before which, or
// in which, the narration takes the battery off and waits.
func (p *Pass) waitedByWords(step int) bool {
	for i := range p.Plan.Steps {
		for _, state := range slices.Concat(p.Plan.Steps[i].Starts, p.Plan.Steps[i].During) {
			if s := class.CanonicalState(state); s == "battery-off" || s == "srs-waited" {
				return false
			}
		}
	}
	told := strings.Join(p.words[:step+1], "")
	return batteryWait().MatchString(told)
}

var batteryWait = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(` (?:battery (?:is |lead |cable |comes |goes )?(?:off|disconnected)|(?:disconnect|unplug|unclamp) (?:[^ .]+ ){0,3}battery|(?:negative|minus) (?:[^ .]+ ){0,3}off) .*\b(?:wait|waits|leave it|give it)\b`)
})

// fuelUnderPressure holds where the fuel system is opened under pressure.
func (p *Pass) fuelUnderPressure(i int) bool {
	return p.startsHere(i, "fuel-open") && p.has(i, "fuel-rail-pressure") && !p.inForce(i, "depressurised")
}

// chargeLeft holds where a capacitor is touched that was not discharged.
func (p *Pass) chargeLeft(i int) bool {
	if !p.has(i, "capacitor-charge", "microwave-oven") || p.inForce(i, "discharged") {
		return false
	}
	if p.inForce(i, "covers-off") {
		return !p.uncovers(i, "discharged")
	}
	return p.touchedCharged(i)
}

// touchedCharged holds in a plan without states for hands at a capacitor that
// nothing has discharged so far, by deed or by a caution's words.
func (p *Pass) touchedCharged(i int) bool {
	if slices.ContainsFunc(p.Plan.Steps, func(s plan.Step) bool { return len(s.Starts)+len(s.During)+len(s.Needs) > 0 }) || !capacitorTouched().MatchString(p.words[i]) {
		return false
	}
	for k := range i + 1 {
		if says(p.told(k), "discharge", "discharged", "discharges", "bleed", "bleeds", "bled", "drain the charge", "no charge", "empty of charge", "zero volts", "resistor across") {
			return false
		}
	}
	return true
}

var capacitorTouched = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(` (?:pull|unclip|undo|unscrew|desolder|unsolder|cut|clip|snip|remove|lift|take|touch|grab|disconnect|unplug) (?:[^ .]+ ){0,8}capacitors? `)
})

// powerOverOpen holds where mains comes back while covers are off: in the step
// that ends the isolation, covers that stay off longer.
func (p *Pass) powerOverOpen(i int) bool {
	ended := slices.ContainsFunc(p.Plan.Holding("power-off", i), func(v plan.Interval) bool { return v.To == i && !v.Open && !v.During })
	open := slices.ContainsFunc(p.Plan.Holding("covers-off", i), func(v plan.Interval) bool { return v.To > i || v.Open })
	return ended && open && !p.inForce(i, "live")
}

// has holds where a step acts on one of the classes.
func (p *Pass) has(i int, classes ...string) bool {
	return i < len(p.Hazards.Steps) && slices.ContainsFunc(p.Hazards.Steps[i].Hazards, func(h hazard.Hazard) bool { return slices.Contains(classes, h.Class) && !h.Suspected() })
}
