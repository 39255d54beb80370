package lint_test

import (
	"strings"
	"testing"
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
