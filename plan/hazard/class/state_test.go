package class

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The states of the plan language, version 1, in its order, and the ones it
// lets stand at the end of the story.
func TestStatesOfThePlanLanguage(t *testing.T) {
	want := []string{
		"raised", "on-stands", "chocked", "power-off", "proven-dead", "battery-off", "srs-waited",
		"depressurised", "drained", "cooled", "discharged", "guard-off", "covers-off", "gas-off",
		"water-off", "running", "key-on", "key-off", "spark-off", "fuel-open", "brake-freed", "live",
		"under", "on-ladder", "alone",
	}
	wantSafe := []string{"chocked", "proven-dead", "srs-waited", "depressurised", "drained", "cooled", "discharged"}
	var got, safe []string
	for _, s := range states {
		got = append(got, s.Name)
		if s.Safe {
			safe = append(safe, s.Name)
		}
		if s.What == "" {
			t.Errorf("%s says nothing of what it is", s.Name)
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(wantSafe, safe); diff != "" {
		t.Error(diff)
	}
}

// One word names one state, and an alias is written as states are compared.
func TestAliasesAreSingle(t *testing.T) {
	owner := map[string]string{}
	for _, s := range states {
		for _, w := range append(s.Aliases, s.Name) {
			if o := owner[w]; o != "" {
				t.Errorf("%q names %s and %s", w, o, s.Name)
			}
			owner[w] = s.Name
			if normalState(w) != w {
				t.Errorf("%q is not in normal form", w)
			}
		}
	}
}

func TestCanonicalState(t *testing.T) {
	for word, want := range map[string]string{
		"power-off":        "power-off",
		"unplugged":        "power-off",
		"isolated":         "power-off",
		"engine-cold":      "cooled",
		"Engine cold":      "cooled",
		"cover-off":        "covers-off",
		" covers  off ":    "covers-off",
		"battery_off":      "battery-off",
		"depressurized":    "depressurised",
		"energized":        "live",
		"lid open":         "lid-open", // a plan's own state
		"switched-off":     "switched-off",
		"gearbox\u00a0out": "gearbox-out",
		"":                 "",
	} {
		if got := CanonicalState(word); got != want {
			t.Errorf("CanonicalState(%q) = %q, want %q", word, got, want)
		}
		if got := CanonicalState(want); got != want {
			t.Errorf("CanonicalState(%q) = %q: not canonical", want, got)
		}
	}
}
