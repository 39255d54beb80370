package sheet

import (
	"strings"
	"testing"

	"fixslate/plan/given"
)

// A part of one version says so wherever it is listed: two parts of one name
// can't be told apart otherwise.
func TestBeforeNamesVersions(t *testing.T) {
	p := given.Plan(t, `
variant = [{ id = "early", name = "early ones", short = "early" }, { id = "late", name = "late ones", short = "late" }]
part = [
  { id = "pump", name = "pump", number = "A-1", variants = ["early"] },
  { id = "pump", name = "pump", number = "A-2", variants = ["late"] },
  { id = "seal", name = "seal", number = "?" },
]
[video]
title = "T"
[[step]]
title = "S"
say = "Fit it."
parts = ["pump", "seal"]
`)
	text := string(Before(p))
	for _, want := range []string{"pump (early): the one in hand carries the number A-1", "pump (late): the one in hand carries the number A-2", "pump – number A-2 (late)", "seal: the one in hand looks like the old one"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
}

// Where the plan says which version is filmed, nobody buys or tries another
// version's part; viewers still need to know of it.
func TestBeforeBuysWhatIsFilmed(t *testing.T) {
	p := given.Plan(t, `
variant = [{ id = "early", name = "early ones", short = "early" }, { id = "late", name = "late ones", short = "late" }]
part = [
  { id = "pump", name = "pump", number = "A-1", variants = ["early"] },
  { id = "pump", name = "pump", number = "A-2", variants = ["late"] },
]
[video]
title = "T"
[shoot]
variants = ["early"]
[[step]]
title = "S"
say = "Fit it."
parts = ["pump"]
`)
	buy, pack, _ := strings.Cut(string(Before(p)), "# Packing list")
	if !strings.Contains(buy, "A-1") || strings.Contains(buy, "A-2") {
		t.Errorf("bought and tried:\n%s", buy)
	}
	if !strings.Contains(pack, "A-1") || !strings.Contains(pack, "A-2") {
		t.Errorf("packed:\n%s", pack)
	}
}

// What is to be asked about is on the list wherever it stands, once.
func TestBeforeAsksWhatEachTableAsks(t *testing.T) {
	p := given.Plan(t, `
[video]
title = "T"
verify = "ask the owner"
[voice]
verify = "time yourself"
[[fuse]]
at = "fuse 3"
rating = "?"
verify = "ask the maker"
[[test]]
question = "Is it dead?"
verify = "ask a friend"
[[test.reading]]
expect = "?"
verify = "ask the seller"
[[step]]
title = "S"
say = "Words."
[[step.shot]]
of = "the pump"
verify = "ask the editor"
`)
	text := string(Before(p))
	for _, want := range []string{"video – ask the owner", "voice – time yourself", "fuse 3: rating – ask the maker", "Is it dead?: expect – ask the seller", "Is it dead? – ask a friend", "shot 1 of S – ask the editor"} {
		if strings.Count(text, want) != 1 {
			t.Errorf("want %q once in\n%s", want, text)
		}
	}
	if strings.Count(text, "ask the seller") != 1 || strings.Count(text, "ask the maker") != 1 {
		t.Errorf("asked twice in\n%s", text)
	}
}

// When the fault was last seen is said where no cause is known yet, too.
func TestBeforeSaysWhenTheFaultWasSeen(t *testing.T) {
	p := given.Plan(t, "[video]\ntitle = \"T\"\nsubject = \"dishwasher\"\n[shoot]\ntried = 2026-11-12\n[[step]]\ntitle = \"S\"\nsay = \"Look.\"\n")
	if text := string(Before(p)); !strings.Contains(text, "is the fault there, on dishwasher; last seen on 2026-11-12") {
		t.Errorf("no day in\n%s", text)
	}
}
