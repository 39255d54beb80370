package plan_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"fixslate/plan"
	"fixslate/plan/diag"
)

// A file that many plans share puts on the lists of one plan only what that
// plan takes: by a step's list, a test's instrument, a fastener's drive, or a
// caution that asks for gear.
func TestWhatAUsedFileOffersAndNobodyTakesIsSpare(t *testing.T) {
	shop := `tool = [
  { id = "meter", name = "multimeter" }, { id = "ph2", name = "PH2 screwdriver" },
  { id = "listed", name = "brush" }, { id = "idle", name = "T20 screwdriver" },
]
part = [{ id = "chain", name = "chain" }]
supply = [
  { id = "oil", name = "chain oil" }, { id = "gloves", name = "thick gloves", protects = "hands" },
  { id = "muffs", name = "ear defenders", protects = "hearing" },
]
source = [{ id = "by-fact", title = "A sheet" }, { id = "by-claim", title = "A book" }, { id = "by-nobody", title = "Another" }, { id = "by-idle", title = "A list" }]
spec = [{ id = "slack", what = "slack", value = "10 mm", source = "by-fact" }, { id = "play", what = "play", value = "1 mm", source = "by-idle" }]
caution = [{ id = "edges", hazard = "sharp-edges" }, { id = "hot", hazard = "hot-surface" }]
`
	text := `use = ["shop.toml"]
[video]
title = "Use"
[[tool]]
id = "own"
name = "own tool that nobody takes"
[[fastener]]
id = "screws"
what = "screws"
drive = "PH2"
[[test]]
id = "volts"
question = "Is there power?"
instrument = "meter"
[[step]]
title = "One"
tools = ["listed"]
tests = ["volts"]
fasteners = ["screws"]
cautions = ["edges"]
say = "Words, and {slack} of slack."
claims = ["worn"]
[[claim]]
id = "worn"
text = "It wears"
says = "Words"
evidence = ["source:by-claim"]
`
	src, _ := diag.NewSource("plan.toml", []byte(text))
	p, _, findings := plan.Decode(src, fstest.MapFS{"shop.toml": {Data: []byte(shop)}})
	if p == nil {
		t.Fatal(findings)
	}
	var spare []string
	note := func(id string, is bool) {
		if is {
			spare = append(spare, id)
		}
	}
	for i := range p.Tools {
		note(p.Tools[i].ID, p.Tools[i].Spare)
	}
	for i := range p.Parts {
		note(p.Parts[i].ID, p.Parts[i].Spare)
	}
	for i := range p.Supplies {
		note(p.Supplies[i].ID, p.Supplies[i].Spare)
	}
	for i := range p.Cautions {
		note(p.Cautions[i].ID, p.Cautions[i].Spare)
	}
	for i := range p.Sources {
		note(p.Sources[i].ID, p.Sources[i].Spare)
	}
	if got, want := strings.Join(spare, " "), "idle chain oil muffs hot by-nobody by-idle"; got != want {
		t.Errorf("spare: %s, want %s", got, want)
	}
}

// Of a table that stands in both files the plan writes some keys, and the used
// file gives the others.
func TestAUsedFileGivesTheKeysThatThePlanLeavesOut(t *testing.T) {
	shop := "[voice]\nwpm = 140\nnarrated = \"live\"\n[publish]\nfooter = \"Ask below.\"\ntitle_max = 60\n"
	text := "use = [\"shop.toml\"]\n[video]\ntitle = \"Use\"\n[voice]\nnarrated = \"later\"\n[publish]\ntitle_max = 80\n[[step]]\ntitle = \"One\"\n"
	src, _ := diag.NewSource("plan.toml", []byte(text))
	p, spans, findings := plan.Decode(src, fstest.MapFS{"shop.toml": {Data: []byte(shop)}})
	if p == nil {
		t.Fatal(findings)
	}
	if p.Voice.WPM != 140 || p.Voice.Narrated != "later" || p.Publish.TitleMax != 80 || p.Publish.Footer.Plain != "Ask below." {
		t.Errorf("got %v words a minute, %s; %d characters, footer %q", p.Voice.WPM, p.Voice.Narrated, p.Publish.TitleMax, p.Publish.Footer.Plain)
	}
	if at := spans.Value("voice.wpm"); at.File() != "shop.toml" {
		t.Errorf("the rate stands in %s", at.File())
	}
}

// The plan by a longer way is the plan, and a file is read once.
func TestWhatIsNotUsed(t *testing.T) {
	for use, want := range map[string]string{
		`["./plan.toml"]`:              `"./plan.toml" is the plan itself`,
		`["shop.toml", "./shop.toml"]`: `"./shop.toml" stands in the list twice`,
	} {
		src, _ := diag.NewSource("plan.toml", []byte("use = "+use+"\n[video]\ntitle = \"Use\"\n[[step]]\ntitle = \"One\"\n"))
		_, _, findings := plan.Decode(src, fstest.MapFS{"shop.toml": {Data: []byte("[[tool]]\nname = \"brush\"\n")}, "plan.toml": {Data: []byte("")}})
		if len(findings) != 1 || findings[0].Rule != "use-refused" || findings[0].Message != want {
			t.Errorf("%s: %v", use, findings)
		}
	}
}
