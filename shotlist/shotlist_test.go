package shotlist

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"fixslate/plan/given"
)

func fromText(t *testing.T, text string) []Shot {
	t.Helper()
	return FromPlan(given.Plan(t, text))
}

func ids(shots []Shot) []string {
	var out []string
	for _, s := range shots {
		out = append(out, s.ID)
	}
	return out
}

const facts = `
fastener = [{ id = "screws", what = "pump screws", drive = "8 mm", count = 3 }]
fuse = [{ id = "f12", at = "fuse 12", rating = "15 A" }]
wire = [{ id = "feed", colour = "violet" }]
tool = [{ id = "meter", name = "multimeter" }]
part = [{ id = "pump", name = "pump" }]
test = [
  { id = "ohms", question = "Open?", instrument = "meter", at = "the two pins", expect = "10..20 Ω" },
  { id = "look", question = "Blocked?", instrument = "eyes", expect = "nothing in it" },
]
[video]
title = "T"
`

// What a step does calls for its shots, under the documented names, and in the
// order in which they are made.
func TestDerivedShots(t *testing.T) {
	shots := fromText(t, facts+`
[[step]]
id = "hello"
title = "Hello"
say = "Good morning."
[[step]]
id = "out"
title = "Out"
do = "take the pump out"
cautions = ["sharp-edges"]
fasteners = ["screws"]
fuses = ["f12"]
wires = ["feed"]
tests = ["ohms", "look"]
parts = ["pump"]
[[step]]
id = "in"
title = "In"
do = "fit the pump"
parts = ["pump"]
sides = ["right", "left"]
other_side = "The clip faces you."
`)
	want := []string{
		"hello-to-camera",
		"out-sharp-edges-card", "out-pump-before", "out-wide", "out-screws", "out-f12", "out-feed", "out-ohms-display", "out-look-look",
		"in-wide", "in-pump-fitted", "in-other-side",
	}
	if diff := cmp.Diff(want, ids(shots)); diff != "" {
		t.Error(diff)
	}
	for _, s := range shots {
		if !s.Suggested || s.Takes != 1 || s.Seconds <= 0 {
			t.Errorf("%s: %+v", s.ID, s)
		}
	}
	at := slices.IndexFunc(shots, func(s Shot) bool { return s.ID == "out-ohms-display" })
	if of := shots[at].Of; !strings.Contains(of, "multimeter") || !strings.Contains(of, "10 to 20 Ω") || !strings.Contains(of, "the two pins") {
		t.Error(of)
	}
}

// drop and replaces take a shot's name or its full id; an own shot of the same
// thing makes the suggestion superfluous.
func TestUnwantedShots(t *testing.T) {
	shots := fromText(t, facts+`
[[step]]
id = "a"
title = "A"
fasteners = ["screws"]
tests = ["ohms"]
fuses = ["f12"]
wires = ["feed"]
drop = ["wide", "a-feed"]
shot = [
  { of = "the display, close", size = "close-up" },
  { id = "turn", of = "the three turning", size = "close-up", replaces = ["screws"] },
  { of = "{f12}, pulled", size = "close-up" },
]
`)
	if diff := cmp.Diff([]string{"a-1", "a-turn", "a-3"}, ids(shots)); diff != "" {
		t.Error(diff)
	}
}

// A wide for each place of a step's shots; suggested shots stay at the
// camera's place.
func TestPlaces(t *testing.T) {
	shots := fromText(t, facts+`
[[step]]
id = "a"
title = "A"
do = "look"
fasteners = ["screws"]
shot = [
  { of = "left", size = "close-up", setup = "bench, from above" },
  { of = "right", size = "close-up", setup = "floor, low" },
  { of = "far", size = "close-up", setup = "yard", apart = true },
]
`)
	if diff := cmp.Diff([]string{"a-wide", "a-wide-floor-low", "a-screws", "a-1", "a-2", "a-3"}, ids(shots)); diff != "" {
		t.Error(diff)
	}
	if shots[2].Setup != "bench-from-above" {
		t.Errorf("the detail is shot at %q", shots[2].Setup)
	}
}

// A shot is made in the states of its step, its own needs aside.
func TestStatesOfShots(t *testing.T) {
	p := given.Plan(t, `
[video]
title = "T"
[[step]]
id = "a"
title = "A"
do = "open it"
starts = ["covers-off"]
[[step]]
id = "b"
title = "B"
do = "look"
shot = [{ of = "label", needs = ["not covers-off"] }]
`)
	states := map[string][]string{}
	for _, s := range FromPlan(p) {
		states[s.ID] = append(slices.Clone(s.States(p)), s.Without...)
	}
	if diff := cmp.Diff(map[string][]string{"a-wide": {"covers-off"}, "b-wide": {"covers-off"}, "b-1": {"covers-off"}}, states); diff != "" {
		t.Error(diff)
	}
}

// No two shots have one id, whatever the plan calls its things.
func TestIDsAreUnique(t *testing.T) {
	shots := fromText(t, `
variant = [{ id = "old", name = "old" }, { id = "new", name = "new" }]
fuse = [{ id = "main", at = "the box" }]
wire = [{ id = "main", colour = "red" }]
part = [{ id = "b-lid", name = "b lid" }, { id = "lid", name = "lid" }]
test = [
  { id = "look", question = "Whole?", instrument = "eyes", variants = ["old"] },
  { id = "look", question = "Tight?", instrument = "eyes", variants = ["new"] },
]
[video]
title = "T"
[[step]]
id = "a"
title = "A"
do = "pull the fuse"
fuses = ["main"]
wires = ["main"]
tests = ["look"]
parts = ["b-lid"]
drop = ["b-lid-fitted"]
shot = [{ id = "wide", size = "close-up", of = "a screw" }]
[[step]]
id = "a-b"
title = "B"
do = "lift the lid"
parts = ["lid"]
drop = ["wide"]
`)
	want := []string{"a-b-lid-before", "a-wide-2", "a-main", "a-main-2", "a-look-look", "a-look-look-2", "a-wide", "a-b-lid-before-2", "a-b-lid-fitted"}
	if diff := cmp.Diff(want, ids(shots)); diff != "" {
		t.Error(diff)
	}
}

// A state that a step has while it runs and that holds anyway is one state.
func TestStatesOnce(t *testing.T) {
	p := given.Plan(t, "[video]\ntitle = \"T\"\n"+
		"[[step]]\nid = \"a\"\ntitle = \"A\"\ndo = \"pull the plug\"\nstarts = [\"unplugged\", \"raised\"]\n"+
		"[[step]]\nid = \"b\"\ntitle = \"B\"\ndo = \"look\"\nduring = [\"unplugged\"]\n"+
		"[[step]]\nid = \"c\"\ntitle = \"C\"\ndo = \"plug in\"\nends = [\"unplugged\", \"raised\"]\n")
	if diff := cmp.Diff([]string{"power-off", "raised"}, FromPlan(p)[1].States(p)); diff != "" {
		t.Error(diff)
	}
}

// A place where a step's only shot floats is not where its action is seen from.
func TestNoWideWhereAShotFloats(t *testing.T) {
	for needs, want := range map[string]string{"": "[a-wide a-wide-bench a-1 a-2]", "needs = [], ": "[a-wide a-1 a-2]"} {
		shots := fromText(t, `setup = [{ id = "kitchen", place = "kitchen" }, { id = "bench", place = "bench" }]
[video]
title = "T"
[[step]]
id = "a"
title = "A"
do = "draw the element out"
shot = [
  { of = "the element coming out", size = "close-up", setup = "kitchen" },
  { `+needs+`of = "old and new side by side", size = "overhead", setup = "bench" },
]
`)
		var ids []string
		for _, s := range shots {
			ids = append(ids, s.ID)
		}
		if got := fmt.Sprint(ids); got != want {
			t.Errorf("with %q: %s, not %s", needs, got, want)
		}
	}
}

// A thing that differs between versions is framed as the step's version has it.
func TestFramesOfAVersion(t *testing.T) {
	shots := fromText(t, `
variant = [{ id = "old", name = "old" }, { id = "new", name = "new" }]
wire = [{ id = "feed", colour = "violet", variants = ["old"] }, { id = "feed", colour = "grey", variants = ["new"] }]
part = [{ id = "pump", name = "two-pin pump", variants = ["old"] }, { id = "pump", name = "three-pin pump", variants = ["new"] }]
[video]
title = "T"
[[step]]
id = "s"
title = "S"
variants = ["new"]
do = "pull the feed off the pump"
wires = ["feed"]
parts = ["pump"]
`)
	for _, s := range shots {
		if strings.Contains(s.Of, "violet") || strings.Contains(s.Of, "two-pin") {
			t.Errorf("%s is of %q", s.ID, s.Of)
		}
	}
	if len(shots) != 4 {
		t.Error(ids(shots))
	}
}
