package shotlist

import (
	"slices"
	"strings"
	"testing"
)

func TestIsFluid(t *testing.T) {
	for name, want := range map[string]bool{
		"mineral brake oil":              true,
		"DOT 4 fluid, from a sealed can": true,
		"Grease for the bearing":         true,
		"coolant (5 L)":                  true,
		"tube of white grease":           true,
		"two bottles of fork oil":        true,
		"pair of oil seals":              false,
		"length of fuel line":            false,
		"can of oil filters":             false,
		"oil filter":                     false,
		"water pump":                     false,
		"seal for the oil":               false,
		"pump with oil":                  false,
		"fuel line":                      false,
		"":                               false,
	} {
		if got := isFluid(name); got != want {
			t.Errorf("%q: %v", name, got)
		}
	}
}

// Oil does not come off and is not seated: no shot of that is called for, and
// none is missed.
func TestFluidsHaveNoSeat(t *testing.T) {
	p, shots, _ := arrange(t, "part = [{ id = \"oil\", name = \"gear oil\" }, { id = \"plug\", name = \"drain plug\" }]\n"+head+
		strings.Replace(step("a", "parts = [\"oil\", \"plug\"]\ndo = \"fill it\"", "hall"), ", \"wide\"", "", 1))
	for _, want := range []string{"a-plug-before", "a-plug-fitted"} {
		if !slices.Contains(ids(shots), want) {
			t.Errorf("no %s: %v", want, ids(shots))
		}
	}
	for _, id := range ids(shots) {
		if strings.Contains(id, "-oil-") {
			t.Error(id)
		}
	}
	for _, c := range Coverage(p, shots) {
		if c.What == "gear oil" {
			t.Errorf("%+v", c)
		}
	}
}
