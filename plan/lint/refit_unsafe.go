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
)

var refitUnsafe = Rule{Name: "refit-unsafe", Group: Safety, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	brakes := false
	for _, g := range closingChecks {
		shown := p.withClass(g.classes...)
		if g.works != nil {
			shown = slices.DeleteFunc(shown, func(d danger) bool { return !says(p.words[d.step], g.works...) })
		}
		last := danger{step: -1}
		if len(shown) > 0 {
			last = shown[len(shown)-1]
		}
		if !g.rides || p.rides() {
			if i := p.lastPut(g.puts()); i > last.step {
				last = danger{i, hazard.Hazard{Family: g.family}} // told by words alone
			}
		}
		if last.step < 0 {
			continue
		}
		if g.works != nil && p.testedAfter(last.step, g.acts()) || brakes && g.also {
			continue // the brakes are the graver half of the same report
		}
		if closed := g.words != nil && p.closedBy(last.step, g.words) || g.acts != nil && p.doneAfter(last.step, g.acts()); closed || g.beforePower && p.earthTested() {
			continue
		}
		r := last.report(p)
		r.Message = fmt.Sprintf("after step %q nothing checks the %s", p.Plan.Steps[last.step].Title.Print, g.what)
		r.Hint = g.hint
		report(r)
		brakes = brakes || g.works != nil
	}
}}

// closingChecks are what must be checked before the thing is used again.
var closingChecks = []struct {
	classes []string
	what    string
	works   []string // what a step says that does this work; nil: all of the classes do
	words   []string
	hint    string
	acts    func() *regexp.Regexp // of folded words: the check as something done
	// The check is made before the power is back, so an earlier step may hold it.
	beforePower bool
	also        bool // said with the one above, if that is said
	// What tells by words alone that the thing is put back, and the hazard's family;
	// rides: on what carries a rider or a load, a record player has brake pads too.
	puts   func() *regexp.Regexp
	family string
	rides  bool
}{
	{classes: runClasses, what: "brakes", works: brakeParts, puts: brakesPut, family: "critical-fastener", rides: true,
		hint: "add the check to the last step: pump the brake until it is firm, and try it at walking pace", acts: brakesTried},
	{classes: runClasses, what: "brakes, steering or wheels", also: true, puts: wheelsPut, family: "critical-fastener", rides: true,
		words: []string{"test the brake", "test the brakes", "brake test", "brakes bite", "brake bites", "bites", "pump the pedal", "pump the lever", "pump it", "firm", "squeeze the lever", "pull the lever", "torque", "torqued", "torque wrench", "tighten again", "retighten", "re-torque", "check the nuts", "check the bolts", "tight", "tightened", "spin the wheel", "spins true", "no play", "wiggle", "rock it", "road test", "test ride", "turn the wheel", "lock to lock", "holds", "check"},
		hint:  "add the check to the last step: pump and test the brake, tighten to torque, look for play and leaks", acts: checksOfRun},
	{classes: []string{"gas-appliance", "gas-tightness"}, what: "gas joints for leaks", puts: gasPut, family: "gas-leak",
		words: []string{"leak test", "leak spray", "leak detection", "soapy", "soap", "bubbles", "tightness test", "tightness", "gas tight", "leaks"},
		hint:  "a gas joint is tested for tightness by whoever may do it; say so"},
	{classes: []string{"earth-continuity"}, what: "protective earth", puts: earthPut, family: "mains-shock",
		words: []string{"continuity", "earth test", "test the earth", "check the earth", "prove the earth", "measure the earth", "from the earth pin", "earth pin to", "on the earth pin", "earth pin and", "earthed"},
		hint:  "measure earth continuity from plug pin to bare metal before the power comes back", beforePower: true},
}

var (
	runClasses = []string{"critical-fastener", "hanging-caliper", "brake-fluid", "brake-clutch-dust"}
	// brakeParts are what is named where a brake itself is opened: nuts to torque
	// say nothing of whether it bites.
	brakeParts = []string{"pads", "brake pad", "brake shoes", "caliper", "calipers", "brake hose", "brake line", "brake pipe", "brake cable", "wheel cylinder", "master cylinder", "bleed nipple"}
)

// putBack is an expression of folded words that tell that a part is put back: "new
// caliper on", "bolt the caliper up", "clamp the new cable".
func putBack(parts string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(` (?:` + parts + `) (?:[^ .]+ ){0,3}?(?:back|goes|go|in|on|onto|home|up again|together) ` +
			`| (?:fit|refit|bolt|tighten|clamp|screw|connect|reconnect|do up|nip up|hang|push|slide|put) (?:[^ .]+ ){0,4}(?:` + parts + `) `)
	})
}

var (
	brakesPut = putBack(`calipers?|brake (?:pads?|shoes?|cables?|hoses?|lines?|pipes?|discs?|levers?)|pads|wheel cylinder|master cylinder`)
	wheelsPut = putBack(`(?:front |rear |back |road )?wheels?|wheel (?:nuts?|bolts?|bearings?)|axle nuts?|hub|track rod(?: end)?|tie rod(?: end)?|ball joint|steering (?:rod|arm|column|rack|wheel|link)|handlebars?|stem|fork`)
	gasPut    = putBack(`gas (?:nut|union|pipe|hose|line|tube|valve|connection|connector|fitting|tap|jet)`)
	earthPut  = putBack(`earth (?:wire|lead|strap|tag|screw|cable)|protective earth|(?:green (?:and )?yellow|green-and-yellow|green-yellow|yellow-green) (?:wire|lead|one)`)
)

// lastPut is the last step in whose narration or notes, sentence by sentence, an
// expression of putting back is met and nothing is left, undone or only spoken
// about; -1 for none.
func (p *Pass) lastPut(put *regexp.Regexp) int {
	for i := len(p.Plan.Steps) - 1; i >= 0; i-- {
		for sentence := range strings.SplitSeq(p.words[i], " . ") {
			sentence = " " + sentence + " "
			if part := put.FindString(sentence); part != "" && !says(part, "off", "out", "is", "are", "was", "were", "has", "had") && !says(sentence, spokenAbout...) {
				return i
			}
		}
	}
	return -1
}

// spokenAbout are in a sentence that does not put anything back here and now.
var spokenAbout = []string{"before", "don't", "never", "not", "undo", "loosen", "if", "when", "next time", "will", "would", "can", "could", "should", "usually", "always", "today"}

// rides holds for a plan about what carries a rider or a load on the road.
func (p *Pass) rides() bool {
	about := fold(p.Plan.Video.Subject.Print + " . " + p.Plan.Video.Title.Print)
	return says(about, ridden...) || says(about, cycles...)
}

// motorVehicles have an engine and a battery, and are driven or towed on the road.
var motorVehicles = []string{
	"car", "van", "truck", "lorry", "pickup", "vehicle", "hatchback", "estate", "saloon", "coupe", "suv", "camper", "motorhome", "motor home", "caravan", "trailer", "tractor", "quad", "bus",
	"motorcycle", "motorbike", "moped",
}

// ridden are things whose brakes, steering and wheels lives depend on.
var ridden = append(slices.Clip(motorVehicles), "scooter", "go-kart", "kart", "cargo bike", "mountain bike", "road bike", "wheelchair", "mobility scooter")

// brakesTried is a brake that is worked, felt or driven, in one sentence.
var brakesTried = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(` (?:test|tests|check|checks|try|tries|tried|pump|pumps|pumped|press|squeeze|squeezes|squeezed|pull|pulls|work|works|apply|feel|prove|use|hold|grab) (?:[^ .]+ ){0,4}(?:brakes|brake levers?|levers?|pedal|brake (?:\.|again|hard|twice|once|and|before|until|a few|first|from|at)) ` +
		`| (?:brakes?|pedal|levers?|it|they|pads?|caliper|calipers) (?:[^ .]+ ){0,3}(?:bite|bites|firm|hard|hold|holds|grip|grips|stop|stops|stopping|drag|drags|rub|rubs) ` +
		`| (?:road|brake|braking|stop) tests? | test (?:ride|drive|run|stop)s? | walking pace | bed (?:the pads|them|it) in | bed in | bedding in | (?:brake|stop|stops) (?:[^ .]+ ){0,3}(?:gently|hard|slowly|times) `)
})

// testedAfter holds where the step, or one after it, makes a test that the
// expression finds in what is asked or expected.
func (p *Pass) testedAfter(from int, act *regexp.Regexp) bool {
	return slices.ContainsFunc(p.Plan.Steps[from:], func(s plan.Step) bool {
		return slices.ContainsFunc(s.Tests, func(id string) bool {
			return slices.ContainsFunc(p.Plan.Test(id), func(t *plan.Test) bool {
				return act.MatchString(fold(t.Question.Print + " . " + t.At.Print + " . " + t.How.Print))
			})
		})
	})
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
