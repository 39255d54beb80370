package shotlist

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"fixslate/plan"
	"fixslate/plan/given"
)

// Every kind of thing that must be seen has its line, with the shots that show
// it, what was dropped, or the reason why none is needed.
func TestCoverage(t *testing.T) {
	p := given.Plan(t, `
fastener = [{ id = "screws", what = "pump screws", count = 3 }, { id = "clip", what = "clip" }, { id = "unused", what = "spare bolt" }]
fuse = [{ id = "f12", at = "fuse 12" }]
wire = [{ id = "feed", colour = "violet" }]
part = [{ id = "pump", name = "pump" }]
tool = [{ id = "meter", name = "multimeter" }]
variant = [{ id = "two", name = "two-pin" }, { id = "three", name = "three-pin" }, { id = "four", name = "four-pin" }]
spec = [{ id = "winding", what = "winding", value = "10 Ω" }, { id = "wait", what = "wait", value = "3 min" }]
test = [{ id = "ohms", question = "Open?", instrument = "meter", expect = "{winding}" }, { id = "hear", question = "Loud?", instrument = "ears" }]
[video]
title = "T"
[[step]]
id = "out"
title = "Out"
do = "take it out"
say = "Wait {wait}. Is it {two}?"
cautions = ["sharp-edges"]
fasteners = ["screws", "clip"]
fuses = ["f12"]
wires = ["feed"]
tests = ["ohms", "hear"]
parts = ["pump"]
drop = ["clip", "hear-look"]
sides = ["right", "left"]
other_side = "The clip faces you."
[[step.shot]]
of = "fuse, pulled"
replaces = ["f12"]
[[step.shot]]
of = "{feed} in the hand"
size = "close-up"
[[step]]
id = "late"
title = "Late"
say = "The late one."
variants = ["three"]
sides = ["right", "left", "top"]
drop = ["to-camera"]
[[step.shot]]
of = "{screws}, a wish"
needs = ["not lid-up", "lid-up"]
[[step]]
id = "lid"
title = "Lid"
say = "Up and down."
starts = ["lid-up"]
ends = ["lid-up"]
`)
	shots := FromPlan(p)
	var got []string
	for _, c := range Coverage(p, shots) {
		words := c.Said
		if len(c.Shots) > 0 {
			words = strings.Join(names(shots, c.Shots), " ")
		}
		if c.Missing() {
			words = MissingWords(c)
		}
		got = append(got, fmt.Sprintf("%s %s: %s", c.Why, c.What, words))
	}
	want := []string{
		"detail pump screws: out-screws", // the wish can't be filmed, so it shows nothing
		"detail clip: no shot: out-clip dropped",
		"detail fuse 12: out-1",
		"detail violet wire: out-2",
		"reading Open?: out-ohms-display",
		"reading Loud?: no shot: out-hear-look dropped",
		"before it comes off pump: out-pump-before",
		"fitted pump: out-pump-fitted",
		"caution Sharp. Cut-resistant gloves.: out-sharp-edges-card",
		"value winding: out-ohms-display",
		"value wait: said in “Out”",
		"version two-pin: said in “Out”",
		"version three-pin: said in “Late”", // its one shot can't be filmed
		"version four-pin: no shot",
		"other side left: Out: out-other-side",
		"other side left, top: Late: no shot",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// A wide made in place of the suggested one, or a close-up that names the
// fact, is there for the same reason.
func TestOwnShotsTakeOver(t *testing.T) {
	shots := fromText(t, facts+`
[[step]]
id = "a"
title = "A"
fasteners = ["screws"]
tests = ["ohms"]
shot = [
  { of = "the whole bench", size = "wide" },
  { of = "the display", size = "close-up" },
  { of = "pump screws, turning", size = "close-up" },
]
`)
	want := [][]Cover{
		{{Why: Asked}, {Why: Place}},
		{{Why: Asked}, {Reading, plan.Ref{Kind: plan.KindTest, ID: "ohms"}}},
		{{Why: Asked}, {Detail, plan.Ref{Kind: plan.KindFastener, ID: "screws"}}},
	}
	var got [][]Cover
	for _, s := range shots {
		got = append(got, s.Covers)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// The shot that carries a step's live words is as long as they take; words
// recorded later ask for no longer picture.
func TestLengthOfTalk(t *testing.T) {
	long := strings.Repeat("These are words enough to go on for a good while, and then some more. ", 8)
	text := func(narrated string) string {
		return "[video]\ntitle = \"T\"\n[[step]]\ntitle = \"A\"\nsay = \"" + long + "\"\nnarrated = \"" + narrated + "\"\n"
	}
	live, later := fromText(t, text("live")), fromText(t, text("later"))
	if live[0].Seconds < 30 || live[0].Seconds > 60 {
		t.Errorf("112 words live take %v s", live[0].Seconds) // 112 words at 157 a minute: 43 s
	}
	if later[0].Seconds != 20 {
		t.Errorf("later: %v s", later[0].Seconds)
	}
}

func TestLines(t *testing.T) {
	text := "[[caution]]\nid = \"hot\"\nhazard = \"hot-surface\"\nsay = \"It burns. Wait.\"\ncard = \"Hot: wait\"\n" + head +
		"start = \"10:00\"\nbreaks = [\"10:40 10m\"]\ncard_minutes = 1\nbattery = \"20m\"\npeople = [{ id = \"presenter\" }, { id = \"helper\", from = \"10:20\", until = \"10:21\" }]\nchange = { helper = \"3m\" }\n" +
		step("a", "work = \"0m\"\ncautions = [\"hot\"]", "hall", "hall needs -") + "length = \"50s\"\n" +
		step("b", "work = \"5m\"\nstarts = [\"lid-up\"]", "hall") + "takes = 2\n[[step.cue]]\nwho = \"helper\"\nwhen = \"now\"\ndoes = \"turns the key\"\nwhere = \"in the seat\"\n" +
		step("c", "work = \"2m\"\nends = [\"lid-up\"]") + step("d", "", "yard")
	p, shots, d := arrange(t, text)
	var got []string
	for i := range d.Sessions {
		for _, l := range d.Lines(i, p, shots) {
			got = append(got, strings.ReplaceAll(l.Margin+" | "+l.Words, "\u00a0", " "))
		}
	}
	want := []string{
		" | hall",
		"Caution | Hot: wait",
		"10:00 | close-up: it; 12 s",
		" | Memory card 2",
		"10:00 | close-up: it; 50 s",
		"10:02 | Wait for helper until 10:20",
		"Last chance | for shot 2: from here on lid-up",
		" | Memory card 3",
		" | Fresh battery in the camera",
		"Cue | helper, now: turns the key (in the seat)",
		"10:20 | close-up: it; 2 takes of 12 s; with helper; 5 min of work: S; beyond the helper's hours",
		"Last chance | for shot 4: no longer lid-up",
		"10:25 | S, without a shot: 2 min of work",
	}
	if diff := cmp.Diff(want, got[:min(len(want), len(got))]); diff != "" {
		t.Error(diff)
	}
	if !strings.Contains(strings.Join(d.Summary(), " "), "of waiting, and of helpers kept beyond their hours") {
		t.Error(d.Summary())
	}
}

func TestSummaries(t *testing.T) {
	for _, c := range []struct {
		day  Day
		want string
	}{
		{Day{Optimal: true}, "proved best"},
		{Day{Change: 10, Bound: 4}, "at most 6 min above the best"},
		{Day{Change: 10, Bound: 4, Idle: 5}, "at most 6 min above the best, which may wait longer"},
	} {
		if got := c.day.verdict(); got != c.want {
			t.Errorf("%q, not %q", got, c.want)
		}
	}
	for saved, want := range map[float64]string{30: ", 30 min less than in story order", 0: ", as in story order"} {
		d := Day{Change: 60, StoryChange: 60 + saved}
		if got := d.changes(); !strings.Contains(got, want) {
			t.Errorf("%q has no %q", got, want)
		}
	}
	_, _, d := arrange(t, head+"end = \"09:20\"\n"+step("a", "", "hall")+step("b", "", "yard")+"length = \"40m\"\n")
	if !strings.HasPrefix(d.Summary()[0], "2 days, 09:00 to wrap at ") || !strings.Contains(d.Summary()[len(d.Summary())-1], "over its end") {
		t.Errorf("%q", d.Summary())
	}
	_, _, d = arrange(t, "[video]\ntitle = \"T\"\n[[step]]\ntitle = \"A\"\ndo = \"undo it\"\n[[step]]\ntitle = \"B\"\ndo = \"do it up\"\n")
	if !d.Loose || !strings.Contains(strings.Join(d.Summary(), " "), "names no states") {
		t.Errorf("%q", d.Summary())
	}
}

// A shot of a step's own action is told with the states it begins and ends.
func TestTurning(t *testing.T) {
	p := given.Plan(t, `
video.title = "T"
[[step]]
id = "safe"
title = "Safe"
do = "pull the plug"
say = "Pull it."
starts = ["unplugged"]
[[step]]
id = "shut"
title = "Shut"
do = "plug in and run it"
say = "Plug in."
ends = ["unplugged"]
during = ["running"]
[[step.shot]]
of = "the plug"
needs = ["unplugged"]
`)
	var got []string
	for _, s := range FromPlan(p) {
		hold, begin, end := s.Turning(p)
		got = append(got, fmt.Sprint(s.ID, hold, begin, end))
	}
	want := []string{"safe-wide[] [unplugged] []", "shut-wide[running] [] [unplugged]", "shut-1[unplugged] [] []"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// A run of shots is named by its ends; the work of a step that has only a title
// says the title once; a reading nobody knows yet is not read off a display.
func TestWordsOfShots(t *testing.T) {
	shots := make([]Shot, 9)
	for i := range shots {
		shots[i].Number = i + 1
	}
	for want, list := range map[string][]int{
		"shot 3":                {2},
		"shots 1, 2":            {0, 1},
		"shots 1 to 3, 5, 8, 9": {0, 1, 2, 4, 7, 8},
	} {
		if got := shotNumbers(shots, list); got != want {
			t.Errorf("%v: %q, not %q", list, got, want)
		}
	}
	p, all, d := arrange(t, `[video]
title = "T"
[[spec]]
id = "warm"
what = "after an hour"
value = "?"
[[tool]]
id = "thermometer"
name = "oven thermometer"
[[test]]
id = "heats"
question = "Does it heat?"
instrument = "thermometer"
expect = "{warm}"
[[step]]
title = "Heat it"
say = "Heat it up."
work = "5m"
tests = ["heats"]
`)
	var sheet strings.Builder
	for _, l := range d.Lines(0, p, all) {
		sheet.WriteString(l.Words + "\n")
	}
	for word, want := range map[string]bool{"5 min of work\n": true, "work: Heat it": false, "readable: reading to be found": true} {
		if got := strings.Contains(strings.ReplaceAll(sheet.String(), "\u00a0", " "), word); got != want {
			t.Errorf("%q: %v, not %v, in\n%s", word, got, want, sheet.String())
		}
	}
}
