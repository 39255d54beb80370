package lint

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var sideUnsaid = Rule{Name: "side-unsaid", Group: Completeness, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		if len(s.Sides) > 1 && s.OtherSide.Empty() && !p.saysOtherSide() && !p.namesSide(i, s.Sides[1]) {
			report(Report{
				Message: fmt.Sprintf("step %q is for the %s, and the plan does not say what differs on the other", s.Title.Print, strings.Join(s.Sides, " and the ")),
				Hint:    `add other_side = "…" ("the same" will do), or say it in the narration`,
				Path:    stepPath(i, "sides"),
			})
			return
		}
	}
	if len(p.Plan.Differs) > 0 || p.saysOtherSide() {
		return
	}
	wheeled := says(p.all, vehicles...)
	for i := range p.Plan.Steps {
		if s := &p.Plan.Steps[i]; len(s.Sides) == 0 && (says(p.words[i], sideWords...) || wheeled && (says(p.words[i], corners...) || pairedPart().MatchString(p.words[i]))) {
			report(Report{
				Message: fmt.Sprintf("step %q works on one side, and the plan does not say how the other is", s.Title.Print),
				Hint:    `add sides = ["right", "left"] and other_side = "…", or a [[differs]]`,
				Path:    stepPath(i, "title"),
			})
			return
		}
	}
}}

// namesSide holds where a step speaks of a side, and not of a direction.
func (p *Pass) namesSide(step int, side string) bool {
	side = strings.TrimSpace(strings.ReplaceAll(fold(side), " . ", ""))
	forms := []string{side + " side", side + " one", side + " is", side + " has", "on the " + side, "for the " + side}
	if side != "left" && side != "right" {
		forms = append(forms, side)
	}
	return side != "" && says(p.words[step], forms...)
}

// sideWords name a side of the object, not a hand, a turn or a pin.
var sideWords = []string{
	"left-hand side", "right-hand side", "left hand side", "right hand side", "driver's side", "drivers side", "passenger's side", "passenger side",
	"nearside", "offside", "near side",
}

// corners are the places of wheels, of which each has a like one on the other side;
// of other things they are places only: the front right burner, the rear left foot.
var corners = []string{"left front", "right front", "left rear", "right rear", "front left", "front right", "rear left", "rear right"}

// vehicles are what has such corners.
var vehicles = []string{"car", "van", "vehicle", "truck", "lorry", "pickup", "hatchback", "estate", "motorhome", "caravan", "trailer", "tractor", "quad", "bus", "bicycle", "bike", "motorcycle", "wheel", "wheels", "axle"}

// pairedPart is one of two parts that stand on either side of a vehicle: "the left
// pedal". Common practice, no source.
var pairedPart = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(` (?:left|right) (?:brake lever|shift lever|lever|pedal|crank|crank arm|grip|caliper|mirror|headlight|headlamp|tail light|tail lamp|indicator|wiper|shock absorber|shock|strut|drive shaft|driveshaft|track rod|track rod end|wheel bearing|hub) `)
})

// saysOtherSide holds where the plan says how the other side is.
func (p *Pass) saysOtherSide() bool {
	words := strings.Join(p.words, " ") // not of the lights, which stand on both sides
	return says(words, "other side", "both sides", "either side", "each side", "opposite side", "mirror image", "left-hand-drive", "right-hand-drive", "left-hand drive", "right-hand drive") ||
		slices.ContainsFunc(p.Plan.Steps, func(s plan.Step) bool { return !s.OtherSide.Empty() })
}
