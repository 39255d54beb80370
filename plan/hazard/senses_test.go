package hazard

import (
	"fmt"
	"testing"

	"fixslate/plan/given"
)

// Words of two senses, each beside the nearest plan in which it has the other.
func TestSenses(t *testing.T) {
	for _, c := range []struct {
		class, subject, do, say string
		want                    bool
	}{
		// A condenser is of a dryer, of an ignition, or of a sealed circuit.
		{"refrigerant", "condenser tumble dryer", "cut the old belt", "", false},
		{"refrigerant", "fridge", "cut the condenser pipe", "", true},
		// The cover of a split unit is none of its pipes.
		{"refrigerant", "outdoor unit", "take the top panel off the outdoor unit", "", false},
		{"refrigerant", "outdoor unit", "undo the flare nuts of the outdoor unit", "", true},
		// A notebook's battery is no car's.
		{"battery-gas-acid", "notebook", "pull the charger out", "I charge the battery never again.", false},
		{"lithium-cells", "notebook", "bend the old battery out", "", true},
		{"battery-gas-acid", "van", "charge the battery", "", true},
		// The drain of a radiator is none of a house.
		{"mould-sewage", "van with a diesel engine", "drain tray under the radiator, open the drain tap, let five litres out", "Keep it away from the drain.", false},
		{"mould-sewage", "kitchen sink", "scoop the sewage out of the drain", "", true},
		// Who looks underneath is not beneath.
		{"under-load", "dishwasher", "look underneath with a torch", "", false},
		{"under-load", "dishwasher", "crawl under the tilted machine", "", true},
		// A cupboard's door keeps no air out.
		{"exhaust-co", "gas hob", "light each burner, check high and low", "Lit, one at a time. Turn it down low, open and shut a cupboard door, and it stays lit.", false},
		{"exhaust-co", "gas hob", "", "Light the burner, and shut the door and the windows.", true},
		// A note on a board is no work on it.
		{"fixed-wiring", "bathroom light", "", "Turn the breaker off at the consumer unit, and hang a note on it.", false},
		{"fixed-wiring", "bathroom light", "", "Hang the consumer unit on its screws and connect it.", true},
		// An earth left long is not left off.
		{"earth-continuity", "lamp plug", "", "Leave the earth core a bit longer.", false},
		{"earth-continuity", "lamp plug", "", "Leave the earth core off.", true},
		// Up we go.
		{"ladder-height", "gutter", "", "So up we go on the stepladder with a brush.", true},
		{"ladder-height", "shelf", "", "So up we go with the volume of the lamp.", false},
		// Wires go to their terminals without a verb.
		{"fixed-wiring", "consumer unit", "", "Then the wires: brown to L, blue to N.", true},
	} {
		text := fmt.Sprintf("[video]\ntitle = \"It\"\nsubject = %q\n[[step]]\ntitle = \"It\"\nsay = %q\n", c.subject, c.say)
		if c.do != "" {
			text += fmt.Sprintf("do = %q\n", c.do)
		}
		s := Read(given.Plan(t, text)).Steps[0]
		if shown := acted(s, c.class); shown != c.want && (c.want || byRule(s, c.class)) {
			t.Errorf("%s: %s %s: %s shown %v, want %v", c.subject, c.do, c.say, c.class, !c.want, c.want)
		}
	}
}

// Gear that the narrator has put on is as good as a caution of it.
func TestGearPutOnIsAnAvoidance(t *testing.T) {
	for say, want := range map[string]Cover{
		"Wear gloves for this: there's a bit of broken glass down there, and you'll just feel it.": Said,
		"Take your time for this: there's a bit of broken glass down there, and you'll feel it.":   Missing,
	} {
		p := given.Plan(t, fmt.Sprintf("[video]\ntitle = \"It\"\nsubject = \"dishwasher\"\n[[step]]\ntitle = \"It\"\nsay = %q\n", say))
		h, ok := find(Read(p).Steps[0], "sharp-edges")
		if !ok || h.Cover != want {
			t.Errorf("%s: found %v, %v", say, ok, h.Cover)
		}
	}
}

// byRule says whether rules show a class in a step: what odds alone suspect changes with
// every learning.
func byRule(s Step, class string) bool {
	h, ok := find(s, class)
	return ok && !h.Suspected()
}
