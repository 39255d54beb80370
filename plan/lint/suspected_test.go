package lint_test

import (
	"strings"
	"testing"

	"fixslate/plan/hazard"
	"fixslate/plan/hazard/class"
	"fixslate/plan/lint"
)

// What no rule of the reader reaches is an error where the odds are nearly sure
// and it can maim, and a note for the whole plan where it can only bruise.
func TestSuspectedHazards(t *testing.T) {
	const door = `[video]
title = "Garage door cable"
subject = "sectional garage door with a torsion spring"
[[step]]
id = "slack"
title = "Slack off"
CAUTIONS
say = "Two winding bars in the cone, loosen the two set screws, and let it down a quarter turn at a time."
`
	warned := found(t, strings.Replace(door, "CAUTIONS", `cautions = ["spring-energy"]`, 1))
	bare := found(t, strings.Replace(door, "CAUTIONS", "", 1))
	if bare["caution-missing@slack"] == 0 || warned["caution-missing@slack"] != 0 {
		t.Errorf("bare %v, warned %v", bare, warned)
	}
	pinch := found(t, `[video]
title = "Slide it out"
subject = "front-load washing machine"
[[step]]
id = "out"
title = "Out"
cautions = ["heavy-lift", "tip-over"]
do = "walk the machine forward on its feet, two people, without tilting it"
`)
	if pinch["caution-missing@out"] != 0 || pinch["caution-perhaps@"] == 0 {
		t.Errorf("pinch %v", pinch)
	}
}

// What odds alone suspect is answered by a state that lasts through the step; what
// the step itself begins or ends answers nothing.
func TestSuspectedIsAnsweredByALastingState(t *testing.T) {
	const plan = "[video]\ntitle = \"T\"\nsubject = \"dishwasher\"\n[[step]]\ntitle = \"Safe\"\nstarts = [\"unplugged\"]\ndo = \"pull the plug\"\nsay = \"Plug out.\"\n" +
		"[[step]]\ntitle = \"Close\"\ndo = \"fit the plate\"\nsay = \"Plate on.\"\n[[step]]\ntitle = \"Try\"\nends = [\"unplugged\"]\ndo = \"look\"\nsay = \"Look.\"\n"
	for step, want := range map[int]bool{1: false, 2: true} {
		p := pass(t, plan)
		for i := range p.Hazards.Steps {
			p.Hazards.Steps[i].Hazards = nil
		}
		p.Hazards.Steps[step].Hazards = []hazard.Hazard{{Class: "water-electricity", Family: "water-electric", Signal: class.Warning, Odds: 0.95, Answered: []string{"power-off"}}}
		got := false
		for _, f := range lint.Run(p) {
			got = got || f.Rule == "caution-missing"
		}
		if got != want {
			t.Errorf("step %d raises caution-missing: %v", step, got)
		}
	}
}
