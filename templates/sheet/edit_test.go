package sheet

import (
	"strings"
	"testing"

	"fixslate/chapters"
	"fixslate/plan/given"
	"fixslate/plan/timing"
)

// A caution stands in the notes whole, with its signal word, and its card is
// listed once: where later steps show it again, their times follow in one line.
func TestEditCautions(t *testing.T) {
	p := given.Plan(t, `
caution = [{ id = "rings", hazard = "battery-short", say = "It burns to the bone. Rings off first.", card = "Rings off" }]
[video]
title = "T"
[publish]
chapter_shortest = "1s"
[[step]]
title = "Clamp off"
starts = ["battery-off"]
cautions = ["rings"]
say = "Clamp off."
[[step]]
title = "Clean"
needs = ["battery-off"]
cautions = ["rings"]
say = "Brush the post."
[[step]]
title = "Clamp on"
ends = ["battery-off"]
cautions = ["rings"]
say = "Clamp on."
`)
	line := timing.Estimate(p, timing.DefaultPace())
	shots := []ShotNote{{Step: 1, Kind: "insert", Of: "a clean post", Card: "Bright metal"}}
	text := string(Edit(p, line, chapters.FromTimeline(p, line), shots))
	for _, want := range []string{
		"warning: It burns to the bone. Rings off first.\n",
		" insert: a clean post, card “Bright metal”; for _Clean_\n",
	} {
		if strings.Count(text, want) != 1 {
			t.Errorf("not once: %q in\n%s", want, text)
		}
	}
	again := ""
	for l := range strings.Lines(text) {
		if strings.HasPrefix(l, "- warning: Rings off – ") {
			again = l
		}
	}
	first := "- " + clock(line.Steps[0].Start) + " warning: Rings off\n"
	if !strings.Contains(text, first) || again != "- warning: Rings off – "+clock(line.Steps[1].Start)+", "+clock(line.Steps[2].Start)+"\n" {
		t.Errorf("cards first %q, again %q in\n%s", first, again, text)
	}
}
