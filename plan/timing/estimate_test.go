package timing

import (
	"fmt"
	"math"
	"testing"
	"time"

	"fixslate/plan"
	"fixslate/plan/given"
)

// talk is a plan of n steps that each say one line.
func talk(n int, line string) *plan.Plan {
	p := &plan.Plan{}
	for i := range n {
		p.Steps = append(p.Steps, plan.Step{ID: fmt.Sprint("s", i), Lines: []plan.Line{spoken(line)}})
	}
	return p
}

func spoken(line string) plan.Line {
	return plan.Line{Kind: plan.Spoken, Text: text(line), Speak: line}
}

func text(s string) plan.Text { return plan.Text{Source: s, Print: s} }

func exactly(d time.Duration) plan.Duration {
	return plan.Duration{Low: d, Likely: d, High: d, Set: true}
}

// tables is a plan of the tables in a text, and of steps made by hand, spoken at the
// default rate.
func tables(t *testing.T, text string, steps ...plan.Step) *plan.Plan {
	p := given.Plan(t, text+"[video]\ntitle = \"T\"\n[[step]]\ntitle = \"S\"\nsay = \"Words.\"\n")
	p.Steps, p.Voice.WPM = steps, 0
	return p
}

// full is a step that has a beat of every kind, and the plan round it.
func full(t *testing.T) *plan.Plan {
	return tables(t, `
caution = [{ id = "mains", hazard = "mains-isolation", say = "Pull the plug.", card = "Pull the plug first, and keep it in sight" }]
test = [
  { id = "ohms", question = "Is the winding open?", instrument = "meter", expect = "10..20 Ω" },
  { id = "lamp", question = "Is it lit?", instrument = "eyes", expect = "lamp dark" },
  { id = "two", question = "Both ends?", instrument = "meter", reading = [
    { when = "at rest", expect = "10..20 Ω" }, { when = "spinning", expect = "10..20 Ω" }, { when = "lit", expect = "lamp dark" },
  ] },
]
`, plan.Step{
		ID: "whole",
		Lines: []plan.Line{
			spoken("Listen."),
			{Kind: plan.Direction, Text: text("points at the pump")},
			{Kind: plan.Sound, Text: text("pump hums")},
			spoken("That is the pump."),
		},
		Do:        text("measure the pump, then the lamp"),
		Tests:     []string{"ohms", "lamp", "two"},
		Cautions:  []plan.StepCaution{{ID: "mains", Lines: []plan.Line{spoken("Pull the plug first.")}, Spoken: true, Card: true}},
		Sides:     []string{"right", "left"},
		OtherSaid: []plan.Line{spoken("On the left the hose is in the way.")},
		OnScreen:  exactly(2 * time.Minute),
		Shots:     []plan.Shot{{Card: text("10 to 20 Ω")}},
	})
}

func TestBeatsComeInOrder(t *testing.T) {
	line := Estimate(full(t), Pace{})
	s := line.Steps[0]
	want := []BeatKind{Caution, Card, Narration, Sound, Narration, Reading, Reading, Reading, Card, Action, OtherSide}
	if len(s.Beats) != len(want) {
		t.Fatalf("%d beats, want %d: %+v", len(s.Beats), len(want), s.Beats)
	}
	at := 0.0
	for i, b := range s.Beats {
		if b.Kind != want[i] {
			t.Errorf("beat %d is of kind %d, want %d", i, b.Kind, want[i])
		}
		if b.Start != at {
			t.Errorf("beat %d starts at %v, the one before ended at %v", i, b.Start, at)
		}
		if b.End <= b.Start {
			t.Errorf("beat %d takes no time: %+v", i, b)
		}
		at = b.End
	}
	if at != s.End || s.End != line.End || s.Screen != s.End-s.Start {
		t.Errorf("the beats end at %v, the step at %v, the video at %v", at, s.End, line.End)
	}
	if math.Abs(s.Screen-120) > 1e-9 {
		t.Errorf("screen time %v s, want on_screen's 120", s.Screen)
	}
	if s.Held != 9 {
		t.Errorf("held %v s, want 3 s for each of three measured readings", s.Held)
	}
	// Nine words at 0.3 s and four, and a second to find each card.
	if want := 1 + 2.7 + 1 + 1.2; math.Abs(s.Cards-want) > 1e-9 {
		t.Errorf("cards %v s, want %v", s.Cards, want)
	}
	speech := 0.0
	for _, said := range []string{"Pull the plug first.", "Listen.", "That is the pump.", "On the left the hose is in the way."} {
		speech += Seconds(said, DefaultRate())
	}
	if math.Abs(s.Narration-speech) > 1e-9 {
		t.Errorf("narration %v s, want %v", s.Narration, speech)
	}
}

func TestScreenTimeIsTheLonger(t *testing.T) {
	p := full(t)
	p.Steps[0].OnScreen = plan.Duration{}
	s := Estimate(p, Pace{}).Steps[0]
	if sum := s.Narration + s.Cards + s.Held + s.Sounds; math.Abs(s.Screen-sum) > 1e-9 {
		t.Errorf("screen time %v s, want %v", s.Screen, sum)
	}
	p.Steps[0].OnScreen = exactly(5 * time.Second)
	if got := Estimate(p, Pace{}).Steps[0].Screen; math.Abs(got-s.Screen) > 1e-9 {
		t.Errorf("a short on_screen changes the screen time from %v to %v", s.Screen, got)
	}
	p.Steps[0].OnScreen = plan.Duration{Set: true, Open: true}
	if got := Estimate(p, Pace{}).Steps[0].Screen; math.Abs(got-s.Screen) > 1e-9 {
		t.Errorf("an open on_screen changes the screen time from %v to %v", s.Screen, got)
	}
}

func TestCautionThatLastsIsOnlyShown(t *testing.T) {
	p := full(t)
	p.Steps[0].Cautions[0].Spoken = false
	s := Estimate(p, Pace{}).Steps[0]
	if s.Beats[0].Kind != Card || s.Beats[0].Caution != "mains" {
		t.Errorf("first beat %+v, want the card of the caution", s.Beats[0])
	}
	p.Steps[0].Cautions[0].Card = false
	if s := Estimate(p, Pace{}).Steps[0]; s.Beats[0].Kind != Narration {
		t.Errorf("first beat %+v, want the narration", s.Beats[0])
	}
}

func TestReadingSeconds(t *testing.T) {
	for words, want := range map[string]float64{
		"Hot":                               5.0 / 6,   // the shortest event
		"to be or not to be":                1.8,       // six words, 0.3 s each
		"Disconnect refrigerant compressor": 33 / 17.0, // long words: 17 characters a second
	} {
		if got := readingSeconds(words); math.Abs(got-want) > 1e-9 {
			t.Errorf("%q is read in %v s, want %v", words, got, want)
		}
	}
}

func TestWPMScalesTheNarration(t *testing.T) {
	p := talk(3, "Pull the plug, and keep it where you can see it.")
	usual := Estimate(p, Pace{}).End
	p.Voice.WPM = proseWPM / 2
	if slow := Estimate(p, Pace{}).End; math.Abs(slow-2*usual) > 1e-9 {
		t.Errorf("at half the words a minute %v s, want %v", slow, 2*usual)
	}
	pace := DefaultPace()
	pace.Rate.CharactersPerSecond = 20
	measured := Estimate(p, pace).End
	p.Voice.WPM = 300
	if again := Estimate(p, pace).End; again != measured {
		t.Errorf("wpm moves a measured rate from %v to %v s", measured, again)
	}
}

func TestPartsOfAPace(t *testing.T) {
	p := talk(3, "Pull the plug, and keep it where you can see it.")
	want := Estimate(p, Pace{})
	got := Estimate(p, Pace{Counts: Counts{Lines: 12}})
	if got.End != want.End || got.Running != want.Running || got.HandsOn != want.HandsOn {
		t.Errorf("a pace of counts alone gives %v, want %v", got.Running, want.Running)
	}
}

func TestHandsOnTime(t *testing.T) {
	base := func() *plan.Plan {
		return tables(t, `
fastener = [{ id = "screws", what = "screws", count = 3 }, { id = "clip", what = "clip" }]
test = [
  { id = "long", question = "Long?", work = "1m..2m..5m", instrument = "meter" },
  { id = "look", question = "Seen?", instrument = "eyes" },
  { id = "meter", question = "Read?", instrument = "meter" },
]
`, plan.Step{ID: "s"})
	}
	for name, c := range map[string]struct {
		set    func(*plan.Step)
		want   PERT
		origin Origin
	}{
		"its own work wins":           {func(s *plan.Step) { s.Work, s.Tests = spread(240, 480, 1200), []string{"long"} }, PERT{240, 480, 1200}, Written},
		"work without a spread":       {func(s *plan.Step) { s.Work = exactly(100 * time.Second) }, PERT{80, 100, 120}, Written},
		"the sum of its tests":        {func(s *plan.Step) { s.Tests = []string{"long", "look"} }, PERT{75, 150, 360}, Tests},
		"fasteners by their count":    {func(s *plan.Step) { s.Fasteners = []string{"screws", "clip"} }, PERT{50, 100, 200}, Inferred},
		"tests without work":          {func(s *plan.Step) { s.Tests = []string{"look", "meter"} }, PERT{75, 150, 300}, Inferred},
		"the actions in do":           {func(s *plan.Step) { s.Do = text("undo three screws, twist the pump off and fit the new one") }, PERT{60, 120, 240}, Inferred},
		"both sides":                  {func(s *plan.Step) { s.Do, s.Sides = text("undo it"), []string{"right", "left"} }, PERT{40, 80, 160}, Inferred},
		"an open work is not written": {func(s *plan.Step) { s.Work, s.Do = plan.Duration{Set: true, Open: true}, text("undo it") }, PERT{20, 40, 80}, Inferred},
	} {
		p := base()
		c.set(&p.Steps[0])
		s := Estimate(p, Pace{}).Steps[0]
		if s.HandsOnFrom != c.origin || math.Abs(s.HandsOn.Low-c.want.Low)+math.Abs(s.HandsOn.Likely-c.want.Likely)+math.Abs(s.HandsOn.High-c.want.High) > 1e-9 {
			t.Errorf("%s: %v from %d, want %v from %d", name, s.HandsOn, s.HandsOnFrom, c.want, c.origin)
		}
		pace := DefaultPace()
		pace.HandsOn = 1.5
		if s := Estimate(p, pace).Steps[0]; math.Abs(s.HandsOn.Likely-1.5*c.want.Likely) > 1e-9 {
			t.Errorf("%s: a presenter who takes half as long again takes %v", name, s.HandsOn.Likely)
		}
	}
	p := talk(1, "This is the pump.")
	if s := Estimate(p, Pace{}).Steps[0]; math.Abs(s.HandsOn.Likely-2*s.Screen) > 1e-9 {
		t.Errorf("a step that names nothing is %v s of work for %v s of picture", s.HandsOn.Likely, s.Screen)
	}
}

func TestVersionsHaveTheirOwnTime(t *testing.T) {
	p := talk(4, "Pull the plug, and keep it where you can see it.")
	p.Variants = []plan.Variant{{ID: "old"}, {ID: "new"}}
	p.Steps[1].Variants = []string{"old"}
	p.Steps[2].Variants = []string{"new"}
	p.Steps[3].Variants, p.Steps[3].OnlyIf = []string{"new"}, plan.Condition{Test: "ohms", Outcome: "fails"}
	line := Estimate(p, Pace{})
	if len(line.Versions) != 2 || line.Versions[0].Variant != "old" || line.Versions[1].Variant != "new" {
		t.Fatalf("versions %+v, want old and new", line.Versions)
	}
	each := line.End / 4
	old, late := line.Versions[0], line.Versions[1]
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"old", old.Running.Likely, 2 * each}, {"old, no detour", old.Straight.Likely, 2 * each},
		{"new", late.Running.Likely, 3 * each}, {"new, no detour", late.Straight.Likely, 2 * each},
	} {
		if math.Abs(c.got-c.want) > 0.02*c.want {
			t.Errorf("%s runs %.2f s, want about %.2f", c.what, c.got, c.want)
		}
	}
}

// Durations that end in .9995 s must add up as they are: nothing is rounded on
// the way.
func TestNoDrift(t *testing.T) {
	var each []plan.Duration
	for range 200 {
		each = append(each, exactly(9999500*time.Microsecond))
	}
	line := Estimate(acts(each...), Pace{})
	for i, s := range line.Steps {
		if want := 9.9995 * float64(i); math.Abs(s.Start-want) > 1e-6 {
			t.Fatalf("step %d starts at %v, want %v", i, s.Start, want)
		}
		if i > 0 && s.Start != line.Steps[i-1].End {
			t.Fatalf("step %d starts at %v, the one before ends at %v", i, s.Start, line.Steps[i-1].End)
		}
	}
}

func TestEstimateOfNothing(t *testing.T) {
	if line := Estimate(&plan.Plan{}, Pace{}); line.End != 0 || line.Running != (Spread{}) || len(line.Steps) != 0 {
		t.Errorf("a plan without steps gives %+v", line)
	}
	line := Estimate(acts(plan.Duration{}, exactly(100*time.Hour), plan.Duration{}), Pace{})
	if line.End != 360000 || line.Running.High < 360000 || line.Running.High > 500000 {
		t.Errorf("a hundred hours end at %v, running %v", line.End, line.Running)
	}
}

// Of a caution that has a card for each version, a step shows its own version's.
func TestCardOfTheVersion(t *testing.T) {
	p := given.Plan(t, []byte(`
variant = [{ id = "gas", name = "gas" }, { id = "oil", name = "oil" }]
caution = [
  { id = "hot", hazard = "hot-surface", say = "It burns.", card = "Hot flue", variants = ["gas"] },
  { id = "hot", hazard = "hot-surface", say = "It burns.", card = "Hot nozzle and a hot flue behind it", variants = ["oil"] },
]
[video]
title = "T"
[[step]]
title = "S"
say = "Look."
variants = ["oil"]
cautions = ["hot"]
`))
	for _, b := range Estimate(p, DefaultPace()).Steps[0].Beats {
		if b.Kind == Card && b.Print != "Hot nozzle and a hot flue behind it" {
			t.Errorf("the card is %q", b.Print)
		}
	}
}
