package lint

import (
	"fmt"
	"regexp"
	"slices"
	"sync"

	"fixslate/plan/diag"
)

var refitUnsafe = Rule{Name: "refit-unsafe", Group: Safety, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	for _, g := range closingChecks {
		shown := p.withClass(g.classes...)
		if len(shown) == 0 {
			continue
		}
		last := shown[len(shown)-1]
		if closed := p.closedBy(last.step, g.words) || g.acts != nil && p.doneAfter(last.step, g.acts()); closed || g.beforePower && p.earthTested() {
			continue
		}
		r := last.report(p)
		r.Message = fmt.Sprintf("after step %q nothing checks the %s", p.Plan.Steps[last.step].Title.Print, g.what)
		r.Hint = g.hint
		report(r)
	}
}}

// closingChecks are what must be checked before the thing is used again.
var closingChecks = []struct {
	classes []string
	what    string
	words   []string
	hint    string
	acts    func() *regexp.Regexp // of folded words: the check as something done
	// The check is made before the power is back, so an earlier step may hold it.
	beforePower bool
}{
	{[]string{"critical-fastener", "hanging-caliper", "brake-fluid", "brake-clutch-dust"}, "brakes, steering or wheels",
		[]string{"test the brake", "test the brakes", "brake test", "brakes bite", "brake bites", "bites", "pump the pedal", "pump the lever", "pump it", "firm", "squeeze the lever", "pull the lever", "torque", "torqued", "torque wrench", "tighten again", "retighten", "re-torque", "check the nuts", "check the bolts", "tight", "tightened", "spin the wheel", "spins true", "no play", "wiggle", "rock it", "road test", "test ride", "turn the wheel", "lock to lock", "holds", "check"},
		"add the check to the last step: pump and test the brake, tighten to torque, look for play and leaks", checksOfRun, false},
	{[]string{"gas-appliance", "gas-tightness"}, "gas joints for leaks",
		[]string{"leak test", "leak spray", "leak detection", "soapy", "soap", "bubbles", "tightness test", "tightness", "gas tight", "leaks"},
		"a gas joint is tested for tightness by whoever may do it; say so", nil, false},
	{[]string{"earth-continuity"}, "protective earth",
		[]string{"continuity", "earth test", "earth wire back", "earth back", "earth goes back", "earth wire first", "earth wire on", "earth is on", "earth tag", "measure the earth", "from the earth pin", "earth pin to", "on the earth pin", "green and yellow", "green-and-yellow", "earthed"},
		"measure earth continuity from plug pin to bare metal before the power comes back", nil, true},
}

// checksOfRun are a brake that is worked and a fastener that is felt again, with
// a few words between: "pump the back brake", "feel the nut again".
var checksOfRun = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(` (?:pump|pumps|pumped|try|tries|tried|squeeze|squeezes|apply|work|works|press) (?:\S+ ){0,3}(?:brake|brakes|brake lever|pedal) | (?:feel|check|checks|look at|try) (?:\S+ ){0,3}(?:nut|nuts|bolt|bolts|screws|axle) (?:\S+ ){0,2}again `)
})

// doneAfter holds where the step, or one after it, tells of the act.
func (p *Pass) doneAfter(from int, act *regexp.Regexp) bool {
	return slices.ContainsFunc(p.words[from:], act.MatchString)
}

// closedBy holds where the step, or one after it, makes a test or says one of
// the words.
func (p *Pass) closedBy(from int, words []string) bool {
	for i := from; i < len(p.Plan.Steps); i++ {
		if len(p.Plan.Steps[i].Tests) > 0 || says(p.words[i], words...) {
			return true
		}
	}
	return false
}

// earthTested holds where a step makes a test of the earth.
func (p *Pass) earthTested() bool {
	for i := range p.Plan.Steps {
		for _, id := range p.Plan.Steps[i].Tests {
			for _, t := range p.Plan.Test(id) {
				if says(fold(t.Question.Print+" . "+t.At.Print+" . "+t.How.Print), "earth", "earthed", "ground", "continuity") {
					return true
				}
			}
		}
	}
	return false
}
