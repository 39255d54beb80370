package hazard

import (
	"testing"

	"fixslate/plan/given"
)

// Words that mean one thing in one trade and another in the next: each line has a
// neighbour in which the hazard is real.
func TestWordsOfOtherTrades(t *testing.T) {
	for _, c := range []struct {
		object, do, class string
		want              bool
	}{
		{"office chair", "drill it to let the gas out", "gas-appliance", false},
		{"gas hob", "drill it to let the gas out", "gas-appliance", true},
		{"office chair", "cut the cylinder open with a hacksaw", "pressurised-part", true},
		{"office chair", "fit new castors", "pressurised-part", false},
		{"larder fridge", "feed the new tube of the thermostat in", "refrigerant", false},
		{"larder fridge", "undo two screws and tip the thermostat housing down", "refrigerant", false},
		{"larder fridge", "cut the tube", "refrigerant", true},
		{"larder fridge", "undo the tube at the compressor", "refrigerant", true},
		{"solar pond pump", "undo four screws, open the pump", "mains-isolation", false},
		{"solar pond pump", "lift the pump out of the pond", "water-electricity", false},
		{"pond pump", "undo four screws, open the pump", "mains-isolation", true},
		{"pond pump", "lift the pump out of the pond", "water-electricity", true},
		{"lawn sprinkler", "you see that the rotor is stuck with lime", "chemicals-solvents", false},
		{"garden wall", "mix the lime", "chemicals-solvents", true},
		{"bench grinder", "grind the burr off the chisel", "hot-work", true},
		{"coffee grinder", "grind ten grams and weigh what comes out", "hot-work", false},
		{"bench grinder", "run it for ten seconds", "abrasive-wheel", true},
		{"sash window", "stand on the ladder and look at the groove", "ladder-height", true},
		{"sash window", "stand on boards and not on a ladder, and look at the groove", "ladder-height", false},
	} {
		text := "[video]\ntitle = \"It\"\nsubject = \"" + c.object + "\"\n[[step]]\ntitle = \"It\"\nsay = \"Now " + c.do + ".\"\n"
		s := Read(given.Plan(t, text)).Steps[0]
		if acted(s, c.class) != c.want {
			t.Errorf("%s, %s: %s shown %v, want %v; hazards %v", c.object, c.do, c.class, !c.want, c.want, s.Hazards)
		}
	}
}

// Who has said to pull the plug need not say it again until it goes back in, also
// where the plan names no states.
func TestThePlugStaysOut(t *testing.T) {
	plan := func(between string) string {
		return "[video]\ntitle = \"It\"\nsubject = \"tumble dryer\"\n" +
			"[[step]]\ntitle = \"First\"\nsay = \"Pull the plug, and lay it where you can see it.\"\n" +
			between + "[[step]]\ntitle = \"Then\"\nsay = \"Take the back panel off, and undo the wires of the heater.\"\n"
	}
	for _, c := range []struct {
		between string
		want    Cover
	}{
		{"", Said},
		{"[[step]]\ntitle = \"Lint\"\nsay = \"Pull the filter out and brush it.\"\n", Said},
		{"[[step]]\ntitle = \"Listen\"\nsay = \"Plug it in again and listen.\"\n", Missing},
	} {
		steps := Read(given.Plan(t, plan(c.between))).Steps
		h, ok := find(steps[len(steps)-1], "mains-isolation")
		if !ok || h.Cover != c.want {
			t.Errorf("between %q: shown %v, cover %v, want %v", c.between, ok, h.Cover, c.want)
		}
	}
}

// A rule's other family is one of the catalogue's.
func TestRuleFamilies(t *testing.T) {
	for i := range compiled().rules.rules {
		if f := compiled().rules.rules[i].family; f != "" && familyNumber(f) < 0 {
			t.Errorf("a rule names the family %q, which there is not", f)
		}
	}
}
