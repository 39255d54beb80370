package claim

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fixslate/plan"
	"fixslate/plan/diag"
)

const pump = `[video]
title = "Fit a pump"
[[source]]
id = "sheet"
title = "Data sheet"
[[spec]]
id = "winding"
what = "winding"
value = "150 Ω"
source = "sheet"
[[claim]]
id = "wear"
text = "Brushes wear"
says = "the brushes wear"
opinion = true
[[step]]
title = "Measure"
say = "The coil has {winding}. It stops because the brushes wear. The hose is 12 mm. Lift the lid."
`

func decode(t testing.TB, text string) *plan.Plan {
	src, _ := diag.NewSource("pump.toml", []byte(text))
	p, _, faults := plan.Decode(src, nil)
	if p == nil || diag.Worst(faults) == diag.Error {
		t.Fatalf("faults: %v", faults)
	}
	return p
}

func TestPlanEvidence(t *testing.T) {
	got := Plan(decode(t, pump))
	want := [][]string{{"source:sheet"}, {"opinion"}, nil, nil}
	if len(got) != len(want) {
		t.Fatalf("%d claims, want %d", len(got), len(want))
	}
	for i, c := range got {
		if !slices.Equal(c.Evidence, want[i]) || c.NeedsEvidence != (i < 3) {
			t.Errorf("%q: needs %v, evidence %v, want %v", c.Text, c.NeedsEvidence, c.Evidence, want[i])
		}
	}
	if !got[0].Values[0].Quoted || got[2].Values[0].Quoted {
		t.Error("the quoted value is the winding's, not the hose's")
	}
}

func BenchmarkPlan(b *testing.B) {
	var s strings.Builder
	s.WriteString("[video]\ntitle = \"x\"\n")
	for i := range 15 {
		fmt.Fprintf(&s, "[[step]]\ntitle = \"Step %d\"\nsay = \"Undo the collar nut and lift the drum away. The post shows 3.7 to 4.1 volts. Keep the washer.\"\n", i)
	}
	p := decode(b, s.String())
	for b.Loop() {
		Plan(p)
	}
}
