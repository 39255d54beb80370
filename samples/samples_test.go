package samples

import (
	"bytes"
	"slices"
	"testing"
)

func TestPlanHoldsEveryName(t *testing.T) {
	names := Names()
	want := []string{"ebike-brake", "minimal", "mower-carburettor", "van-blower", "washer-pump"}
	for _, name := range want {
		if !slices.Contains(names, name) {
			t.Errorf("Names() = %q, without %q", names, name)
		}
	}
	if !slices.IsSorted(names) {
		t.Errorf("Names() = %q, not sorted", names)
	}
	for _, name := range names {
		text, ok := Plan(name)
		if !ok || !bytes.Contains(text, []byte("[[step]]")) {
			t.Errorf("Plan(%q) = %d bytes, %v: no step in it", name, len(text), ok)
		}
	}
}

func TestPlanRefusesOtherNames(t *testing.T) {
	for _, name := range []string{"", "starter", "minimal.toml", "washer-pump/plan.toml", "../samples", "."} {
		if text, ok := Plan(name); ok {
			t.Errorf("Plan(%q) gives %d bytes, want none", name, len(text))
		}
	}
}

// A caller may change what it was given; the sample must not change with it.
func TestPlanIsACopy(t *testing.T) {
	text, _ := Plan(minimal)
	text[0] ^= 0xff
	again, _ := Plan(minimal)
	if text[0] == again[0] {
		t.Error("a change in the bytes of Plan shows in the next call")
	}
}

func TestStarterTitleStandsOnce(t *testing.T) {
	if n := bytes.Count(Starter(), []byte(StarterTitle)); n != 1 {
		t.Errorf("%s stands %d times in Starter, want once", StarterTitle, n)
	}
	if !bytes.Contains(Starter(), []byte("title    = "+StarterTitle)) {
		t.Errorf("%s is not the title of Starter", StarterTitle)
	}
}
