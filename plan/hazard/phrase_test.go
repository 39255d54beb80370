package hazard_test

import (
	"fmt"
	"testing"

	"fixslate/plan/given"
	"fixslate/plan/hazard"
)

// How people say how to keep clear without an act and its thing, and beside each
// the nearest words that keep nobody clear. Common practice, no source.
func TestPhrases(t *testing.T) {
	for _, c := range []struct{ family, subject, heeded, bare string }{
		{"mains-shock", "wall lamp", "Power off at the breaker. Undo the lamp and pull the wires out.", "Power on at the breaker. Undo the lamp and pull the wires out."},
		{"gas-leak", "caravan cooker", "Gas off at the bottle. Undo the gas union and fit a new jet.", "Here is the bottle. Undo the gas union and fit a new jet."},
		{"hearing", "path", "Ear defenders on. Break the slab up with the jackhammer.", ""},
		{"eye-debris", "gate", "Goggles on, the sparks go in your eyes. Now grind the old weld away.", "No need to put goggles on. Grind the old weld away with the angle grinder."},
		{"chemical-skin-lung", "window", "Gloves on, windows wide open. Brush the paint stripper on.", "I never wear gloves. Brush the paint stripper on."},
		{"height-fall", "gutter", "My mate holds the foot of the ladder. Climb up and screw the bracket on.", "Climb the ladder and screw the bracket on. Hold the bracket."},
		{"power-tool", "deck", "Keep your hands behind the fence. Cut the joist with the circular saw.", "Keep the saw sharp. Cut the joist with the circular saw."},
		{"carbon-monoxide", "garage", "Doors wide open. Start the engine and let it idle.", "Close the doors. Start the engine and let it idle in the garage."},
		{"heavy-lift", "stove", "Two people for this. Lift the stove off its legs and carry it out.", "Lift the stove off its legs and carry it out."},
		{"hot-work-fire", "stair", "Bucket of water beside me. Weld the bracket on.", "Weld the bracket on."},
	} {
		for line, heeded := range map[string]bool{c.heeded: true, c.bare: false} {
			if line == "" {
				continue
			}
			missing := false
			for _, h := range hazard.Read(given.Plan(t, fmt.Sprintf("[video]\ntitle = \"T\"\nsubject = %q\n[[step]]\ntitle = \"Work\"\nsay = %q\n", c.subject, line))).Steps[0].Hazards {
				missing = missing || h.Family == c.family && h.Cover == hazard.Missing && !h.Perhaps()
			}
			if missing == heeded {
				t.Errorf("%q leaves %s uncovered: %v", line, c.family, missing)
			}
		}
	}
}
