package claim

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fixslate/plan/given"
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

func TestPlanEvidence(t *testing.T) {
	got := Plan(given.Plan(t, pump))
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

const tested = `[video]
title = "Find a bad earth"
[[test]]
id = "drop"
question = "Does the earth strap drop voltage?"
instrument = "meter"
expect = "at most 0.2 V"
checks = ["strap"]
pass = "stop: look elsewhere"
fail = "stop: clean it"
[[cause]]
id = "strap"
what = "corroded strap"
[[step]]
title = "Measure"
tests = ["drop"]
say = "The strap is corroded because damp gets in. The lid is never tight. I reckon the meter is right."
other_side = "The left strap always snaps."
[[step]]
title = "Say so"
opinion = true
say = "Brass lasts longer than plastic."
`

// A test of the step stands behind what it speaks of, an opinion behind all that
// the step says; the other side's words count as the step's.
func TestPlanTestsAndOpinions(t *testing.T) {
	var got []string
	for _, c := range Plan(given.Plan(t, tested)) {
		got = append(got, fmt.Sprint(c.Path, c.Kinds, c.Evidence))
	}
	want := []string{
		"step[0].say[causal] [test:drop]",
		"step[0].say[universal] []",
		"step[0].say[hedge] []",
		"step[0].other_side[universal] [test:drop]",
		"step[1].say[comparison] [opinion]",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// Pounds are money where they are that of the plan's region, and a weight elsewhere.
func TestRegion(t *testing.T) {
	for region, want := range map[string]string{"": "40 GBP, 0.8 EUR, 5 GBP", "GB": "40 GBP, 0.8 EUR, 5 GBP", "US": "40 lb, 0.8 USD, 5 USD", "DE": "40 lb, 0.8 EUR, 5 EUR"} {
		p := given.Plan(t, "[video]\ntitle = \"x\"\nregion = \""+region+"\"\n[[step]]\ntitle = \"One\"\nsay = \"The pump is forty pounds. The clip costs eighty cents. They charge five for the washer.\"\n")
		var got []string
		for _, c := range Plan(p) {
			got = append(got, stated(c))
		}
		if strings.Join(got, ", ") != want {
			t.Errorf("in %q: %v, want %s", region, got, want)
		}
	}
}

func BenchmarkPlan(b *testing.B) {
	var s strings.Builder
	s.WriteString("[video]\ntitle = \"x\"\n")
	for i := range 15 {
		fmt.Fprintf(&s, "[[step]]\ntitle = \"Step %d\"\nsay = \"Undo the collar nut and lift the drum away. The post shows 3.7 to 4.1 volts. Keep the washer.\"\n", i)
	}
	p := given.Plan(b, s.String())
	for b.Loop() {
		Plan(p)
	}
}
