package lint_test

import (
	"strings"
	"testing"

	"fixslate/plan/lint"
)

// A tool is used where a step says its name, or its noun where no other tool has
// that noun.
func TestAToolIsUsedByItsName(t *testing.T) {
	for _, c := range []struct {
		tools, do string
		unused    bool
	}{
		{`"drain tray"`, "put the drain tray under the radiator, open the tap", false},
		{`"hose clip pliers"`, "squeeze the clip with the pliers", false},
		{`"hose clip pliers"`, "squeeze the clip", true},
		{`"hose clip pliers", "circlip pliers"`, "squeeze the clip with the pliers", true},
	} {
		var tools strings.Builder
		for name := range strings.SplitSeq(c.tools, ", ") {
			tools.WriteString("[[tool]]\nname = " + name + "\n")
		}
		text := "[video]\ntitle = \"T\"\n" + tools.String() + "[[step]]\ntitle = \"Go\"\ndo = \"" + c.do + "\"\nsay = \"Like this.\"\n"
		if got := raised(t, text, "tool-unused"); got != c.unused {
			t.Errorf("%s, %s: raised %v", c.tools, c.do, got)
		}
	}
}

// A vehicle has two sides that are like each other; the places of other things
// are places.
func TestCornersAreSidesOfVehicles(t *testing.T) {
	for do, want := range map[string]bool{
		"fit the smallest jet at the front right burner": false,
		"take the front right wheel off":                 true,
		"undo the driver's side screw":                   true,
	} {
		text := "[video]\ntitle = \"T\"\n[[step]]\ntitle = \"Go\"\ndo = \"" + do + "\"\nsay = \"Like this.\"\n"
		if got := raised(t, text, "side-unsaid"); got != want {
			t.Errorf("%s: raised %v", do, got)
		}
	}
}

// A torque in words is said by its words.
func TestATorqueInWordsIsSaidByThem(t *testing.T) {
	for say, want := range map[string]bool{
		"Ten screws back in, with two fingers only.": false,
		"Ten screws back in, as tight as they go.":   true,
	} {
		text := "fastener = [{ id = \"lid\", what = \"lid screws\", thread = \"M2\", drive = \"PH0\", torque = \"only with two fingers\" }]\n" +
			"[video]\ntitle = \"T\"\n[[step]]\ntitle = \"Back\"\nfasteners = [\"lid\"]\ndo = \"put the lid and its ten screws back in\"\nsay = \"" + say + "\"\n"
		if got := raised(t, text, "torque-unsaid"); got != want {
			t.Errorf("%s: raised %v", say, got)
		}
	}
}

// A torque belongs to the fastener that the step turns, before another of the
// same noun.
func TestATorqueIsOfTheBoltsAtHand(t *testing.T) {
	text := `fastener = [
  { id = "wheel-bolts", what = "wheel bolts", thread = "M14", torque = "120 N·m" },
  { id = "carrier-bolts", what = "carrier bolts", thread = "M12", torque = "100 N·m" },
]
[video]
title = "T"
[[step]]
title = "Wheel on"
fasteners = ["wheel-bolts"]
do = "five bolts, crosswise"
say = "The bolts go to 110 newton metres."
`
	for _, f := range lint.Run(pass(t, text)) {
		if f.Rule == "number-conflict" && strings.Contains(f.Message, "wheel bolts") {
			return
		}
	}
	t.Error("no conflict with the torque of the wheel bolts")
}
