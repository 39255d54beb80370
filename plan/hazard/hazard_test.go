package hazard

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fixslate/plan"
	"fixslate/plan/given"
)

// find is the hazard of a class in a step, acted ones before mentions.
func find(s Step, class string) (Hazard, bool) {
	for _, list := range [...][]Hazard{s.Hazards, s.Mentions} {
		for _, h := range list {
			if h.Class == class {
				return h, true
			}
		}
	}
	return Hazard{}, false
}

func acted(s Step, class string) bool {
	return slices.ContainsFunc(s.Hazards, func(h Hazard) bool { return h.Class == class })
}

// What is done, what is only said, what is denied. The relations are those of
// the reference table of hazards; the sentences are ours.
func TestActionsAndTalk(t *testing.T) {
	for _, c := range []struct {
		name, plan, class string
		want              bool
	}{
		{"an appliance is opened", `do = "take the back panel off"`, "mains-isolation", true},
		{"in the narration", `say = "Take the back panel off."`, "mains-isolation", true},
		{"it is the thing named before", `say = "There is the back panel. Take it off."`, "mains-isolation", true},
		{"a stage direction", `say = "(take the back panel off)"`, "mains-isolation", true},
		{"by a test", `tests = ["ohms"]`, "mains-isolation", true},
		{"by a fastener", `fasteners = ["panel-screws"]`, "mains-isolation", true},
		{"denied", `do = "don't take the back panel off"`, "mains-isolation", false},
		{"explained", `do = "explain why nobody takes the back panel off"`, "mains-isolation", false},
		{"what others did", `say = "The last owner used to take the back panel off."`, "mains-isolation", false},
		{"left to somebody", `say = "Call in a fitter to take the back panel off."`, "mains-isolation", false},
		{"only looked at", `do = "wipe the door with a cloth"`, "mains-isolation", false},
		{"a tool in use", `do = "cut the bracket"
tools = ["angle grinder"]`, "abrasive-wheel", true},
		{"a tool that is only named", `say = "This is what we need today."
tools = ["angle grinder"]`, "abrasive-wheel", false},
		{"by a state", `do = "look for the leak"
during = ["raised"]`, "raised-vehicle", true},
		{"announced", `say = "Today we take the back panel off."`, "mains-isolation", false},
		{"beside an act that has nothing to do with it", `do = "look"
say = "Open the reservoir cap, and wind the piston back."`, "hot-coolant", false},
		{"a look-alike", `do = "fit the spring washer"`, "spring-energy", false},
	} {
		text := `fastener = [{ id = "panel-screws", what = "back panel screws", drive = "8 mm" }]
tool = [{ id = "meter", name = "multimeter" }]
test = [{ id = "ohms", question = "Open?", instrument = "meter", at = "across the heater terminals" }]
[video]
title = "Dryer"
subject = "tumble dryer"
[[step]]
title = "It"
` + c.plan + "\n"
		s := Read(given.Plan(t, text)).Steps[0]
		if acted(s, c.class) != c.want {
			t.Errorf("%s: %s shown %v, want %v; hazards %v", c.name, c.class, !c.want, c.want, s.Hazards)
		}
	}
}

// A part number has letters that would be a thing by themselves.
func TestPartNumbersAreNoWords(t *testing.T) {
	for number, want := range map[string]bool{"LPG-35K": false, "": true} {
		text := `part = [{ id = "valve", name = "ceramic valve", number = "` + number + `" }]
[video]
title = "Tap"
subject = "basin tap"
[[step]]
title = "New one in"
parts = ["valve"]
do = "undo the old LPG-35K and fit the new LPG-35K by its pegs"
say = "Undo the old LPG-35K and press the new LPG-35K in."
`
		step := Read(given.Plan(t, text)).Steps[0]
		got := slices.ContainsFunc(append(step.Hazards, step.Mentions...), func(h Hazard) bool { return h.Class == "gas-appliance" })
		if got != want {
			t.Errorf("number %q: gas shown %v, want %v", number, got, want)
		}
	}
}

// What is said of the plan's object holds until the step's own acts end it.
func TestStatesOfTheObject(t *testing.T) {
	for _, c := range []struct {
		subject, do, class string
		want               bool
	}{
		{"tumble dryer", "take the back panel off", "mains-isolation", true},
		{"tumble dryer, unplugged", "take the back panel off", "mains-isolation", false},
		{"tumble dryer, unplugged", "plug it in and take the back panel off", "mains-isolation", true},
		{"tumble dryer, unplugged", "plug it in. Then take the back panel off", "mains-isolation", true},
	} {
		text := fmt.Sprintf("[video]\ntitle = \"It\"\nsubject = %q\n[[step]]\ntitle = \"It\"\ndo = %q\n", c.subject, c.do)
		if s := Read(given.Plan(t, text)).Steps[0]; acted(s, c.class) != c.want {
			t.Errorf("%s: %s: %s shown %v, want %v", c.subject, c.do, c.class, !c.want, c.want)
		}
	}
}

// How the plan's cautions stand to a hazard, by the plan language's rules of
// how long a caution lasts.
func TestCover(t *testing.T) {
	open := "[[step]]\ntitle = \"Open %d\"\ndo = \"take the back panel off\"\nsay = \"It comes away.\"\n"
	for _, c := range []struct {
		name, steps string
		step        int
		want        Cover
		caution     string
	}{
		{"nothing said", fmt.Sprintf(open, 1), 0, Missing, ""},
		{"listed in the step", fmt.Sprintf(open, 1) + "cautions = [\"mains-isolation\"]\n", 0, Spoken, "mains-isolation"},
		{"by its family", fmt.Sprintf(open, 1) + "cautions = [\"mains-shock\"]\n", 0, Spoken, "mains-shock"},
		{"by another of its family", fmt.Sprintf(open, 1) + "cautions = [\"live-test\"]\n", 0, Spoken, "live-test"},
		{"of another family", fmt.Sprintf(open, 1) + "cautions = [\"hearing\"]\n", 0, Missing, ""},
		{
			"lasting through steps of its family",
			fmt.Sprintf(open, 1) + "cautions = [\"mains-isolation\"]\n" + fmt.Sprintf(open, 2) + fmt.Sprintf(open, 3), 2, Spoken, "mains-isolation",
		},
		{
			"lapsed after a step without its family",
			fmt.Sprintf(open, 1) + "cautions = [\"mains-isolation\"]\n[[step]]\ntitle = \"Talk\"\nsay = \"A word.\"\n" + fmt.Sprintf(open, 3), 2, Missing, "",
		},
		{
			"lasting with its state",
			"[[step]]\ntitle = \"Off\"\ndo = \"plug out\"\nstarts = [\"power-off\"]\ncautions = [\"mains-isolation\"]\n[[step]]\ntitle = \"Talk\"\n" +
				fmt.Sprintf(open, 3) + "[[step]]\ntitle = \"On\"\nends = [\"power-off\"]\n", 2, Spoken, "mains-isolation",
		},
		{
			"stale once the state was left and entered again",
			"[[step]]\ntitle = \"Off\"\ndo = \"plug out\"\nstarts = [\"power-off\"]\nends = [\"power-off\"]\ncautions = [\"mains-isolation\"]\n" +
				"[[step]]\ntitle = \"Off again\"\nstarts = [\"power-off\"]\n" + fmt.Sprintf(open, 3) + "ends = [\"power-off\"]\n", 2, Stale, "mains-isolation",
		},
		{
			"only in a later step",
			fmt.Sprintf(open, 1) + "[[step]]\ntitle = \"After\"\nsay = \"That was that.\"\ncautions = [\"mains-isolation\"]\n", 0, Late, "mains-isolation",
		},
		{
			"said before the action",
			"[[step]]\ntitle = \"Open\"\nsay = \"Pull the plug. Then take the back panel off.\"\n", 0, Said, "",
		},
		{
			"said by the act itself",
			"[[step]]\ntitle = \"Open\"\nsay = \"Unplug it, and take the back panel off.\"\n", 0, Said, "",
		},
		{
			"said over the action",
			"[[step]]\ntitle = \"Open\"\nsay = \"Take the back panel off. Pull the plug.\"\n", 0, Late, "",
		},
		{
			"on a card only",
			"[[step]]\ntitle = \"Open\"\ndo = \"take the back panel off\"\nshot = [{ of = \"panel\", card = \"Pull the plug first\" }]\n", 0, Carded, "",
		},
		{
			"said while the state holds",
			"[[step]]\ntitle = \"Off\"\nsay = \"Pull the plug.\"\nstarts = [\"power-off\"]\n" + fmt.Sprintf(open, 2) + "ends = [\"power-off\"]\n", 1, Said, "",
		},
	} {
		p := given.Plan(t, "[video]\ntitle = \"Dryer\"\nsubject = \"tumble dryer\"\n"+c.steps)
		h, ok := find(Read(p).Steps[c.step], "mains-isolation")
		if !ok {
			t.Errorf("%s: the hazard is not found", c.name)
			continue
		}
		if h.Cover != c.want || h.Caution != c.caution {
			t.Errorf("%s: %v %q, want %v %q; %s", c.name, h.Cover, h.Caution, c.want, c.caution, h.Shown())
		}
		if h.Covered() != (c.want >= Carded) {
			t.Errorf("%s: covered %v", c.name, h.Covered())
		}
	}
}

// Words that answered a hazard last as a caution would: through the steps of its
// family, and not past one without it.
func TestWordsLast(t *testing.T) {
	const grind = "[[step]]\ntitle = \"Grind\"\ndo = \"grind the weld down with the angle grinder\"\n"
	for between, want := range map[string]Cover{"": Said, "[[step]]\ntitle = \"Talk\"\nsay = \"A word.\"\n": Missing} {
		p := given.Plan(t, "[video]\ntitle = \"Gate\"\nsubject = \"steel gate\"\n"+grind+"say = \"Wear safety glasses for this.\"\n"+between+grind)
		steps := Read(p).Steps
		h, ok := find(steps[len(steps)-1], "eye-impact")
		if first, seen := find(steps[0], "eye-impact"); !ok || !seen || first.Cover != Said || h.Cover != want {
			t.Errorf("after %q: %v (first %v), want %v", between, h.Cover, first.Cover, want)
		}
	}
}

// Who measures the earth has done what its caution asks for.
func TestEarthMeasured(t *testing.T) {
	for say, want := range map[string]Cover{
		"Meter from the earth pin to the brass: under half an ohm.": Said,
		"Wire the earth pin to the brass.":                          Missing,
	} {
		p := given.Plan(t, "[video]\ntitle = \"Rewire a table lamp\"\nsubject = \"table lamp with a brass base\"\n[[step]]\ntitle = \"Test\"\nsay = \""+say+"\"\n")
		if h, ok := find(Read(p).Steps[0], "earth-continuity"); !ok || h.Cover != want {
			t.Errorf("%q: found %v, %v", say, ok, h.Cover)
		}
	}
}

// What the odds doubt is a mention, but where the step lists a caution of it.
func TestWarnedOfIsNotDoubted(t *testing.T) {
	for cautions, want := range map[string]bool{"": false, `cautions = ["unfused-jumper"]`: true} {
		p := given.Plan(t, `[video]
title = "Front brake pads"
subject = "hatchback, front disc brakes"
[[step]]
title = "Caliper off"
do = "caliper off, out of the way"
say = "Hang the caliper on a bit of wire, never by the hose."
`+cautions+"\n")
		if s := Read(p).Steps[0]; acted(s, "unfused-jumper") != want {
			t.Errorf("%q: %v", cautions, s.Hazards)
		}
	}
}

// Evidence leads back to the words of the plan.
func TestEvidencePlaces(t *testing.T) {
	p := given.Plan(t, "[video]\ntitle = \"Dryer\"\nsubject = \"tumble dryer\"\n[[step]]\ntitle = \"Open\"\nsay = \"\"\"\nFirst a look.\nTake the **back panel** off.\n\"\"\"\n")
	h, ok := find(Read(p).Steps[0], "mains-isolation")
	if !ok {
		t.Fatal("the hazard is not found")
	}
	for _, e := range h.Evidence {
		if e.Kind == "say" && e.Words == "back panel" {
			if got := p.Steps[0].Say[e.Start:e.End]; !strings.Contains(got, "back panel") || e.Path != "step[0].say" {
				t.Errorf("%q at %s", got, e.Path)
			}
			return
		}
	}
	t.Errorf("no evidence in the narration: %v", h.Evidence)
}

// A state in force answers a hazard and is named with it.
func TestAnsweredByStates(t *testing.T) {
	p := given.Plan(t, "[video]\ntitle = \"Dryer\"\nsubject = \"tumble dryer\"\n[shoot]\nbegins = [\"unplugged\"]\nstays = [\"unplugged\"]\n[[step]]\ntitle = \"Open\"\ndo = \"take the back panel off\"\n")
	h, _ := find(Read(p).Steps[0], "mains-isolation")
	if !slices.Equal(h.Answered, []string{"power-off"}) {
		t.Errorf("answered by %v", h.Answered)
	}
}

// What ends in a step that runs the machine answers nothing there, nor do words
// said when it began.
func TestStateEndsWhereItRuns(t *testing.T) {
	steps := func(last string) Step {
		return Read(given.Plan(t, "[video]\ntitle = \"Belt\"\nsubject = \"lathe\"\n"+
			"[[step]]\ntitle = \"Plug out\"\nsay = \"Pull the plug before your hands go near the pulleys.\"\ndo = \"pull the plug\"\nstarts = [\"unplugged\"]\n"+
			"[[step]]\ntitle = \"Look\"\ndo = \"push the belt over the pulleys by hand\"\nends = [\"unplugged\"]\n"+last)).Steps[1]
	}
	for _, c := range []struct {
		during   string
		answered bool
	}{{"", true}, {"during = [\"running\"]\n", false}} {
		h, ok := find(steps(c.during), "rotating-parts")
		if !ok || (len(h.Answered) > 0) != c.answered {
			t.Errorf("%q: found %v, answered by %v, cover %v", c.during, ok, h.Answered, h.Cover)
		}
	}
}

// long is a text of n words that the reader knows.
func long(n int) string {
	return strings.TrimSpace(strings.Repeat("undo the cover and lift the gearbox with it while the engine is running ", n/13+1))
}

func oneStep(say, do string) *plan.Plan {
	p := &plan.Plan{Steps: make([]plan.Step, 1)}
	p.Video.Subject = plan.Text{Source: "van", Print: "van"}
	p.Steps[0].Do = plan.Text{Source: do, Print: do}
	p.Steps[0].Lines = []plan.Line{{Text: plan.Text{Source: say, Print: say}}}
	return p
}

func FuzzRead(f *testing.F) {
	for _, s := range []string{"", "take the cover off", "don't \u202e open\x00 it", "12v 2k r134a ’s '", strings.Repeat("a", 500), long(200), "put the put the put the on"} {
		f.Add(s, s)
	}
	f.Fuzz(func(t *testing.T, say, do string) {
		for _, h := range Read(oneStep(say, do)).Steps[0].Hazards {
			if len(h.Evidence) == 0 {
				t.Errorf("%s is shown by nothing", h.Class)
			}
			for _, e := range h.Evidence {
				if e.Start > e.End {
					t.Errorf("evidence from %d to %d", e.Start, e.End)
				}
			}
		}
	})
}

// BenchmarkRead reads a plan of 15 steps, as the figure of 2,000 plans a second
// on two cores has it.
func BenchmarkRead(b *testing.B) {
	p := plan15(b)
	b.ReportAllocs()
	b.RunParallel(func(pb *testing.PB) {
		for pb.Next() {
			Read(p)
		}
	})
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "plans/s")
}

func plan15(t testing.TB) *plan.Plan {
	var text strings.Builder
	text.WriteString("tool = [{ id = \"meter\", name = \"multimeter\" }, { id = \"driver\", name = \"8 mm nut driver\" }]\n[video]\ntitle = \"Washer\"\nsubject = \"front-load washing machine\"\n")
	for i := range 15 {
		fmt.Fprintf(&text, `[[step]]
title = "Step %d: the pump"
say = """
Pull the plug, and keep it where you can see it. Then the three screws.
Tip the machine back against the wall, and mind your fingers under the edge.
Turn the impeller with a finger. Set the meter to ohms, and touch the probes to the two terminals.
"""
do = "undo three screws, take the panel off, pull the hose off the pump and let it drain into the tray"
tools = ["meter", "driver"]
cautions = ["mains-isolation"]
`, i)
	}
	return given.Plan(t, text.String())
}

// BenchmarkWide reads plans in which each step has a tool and a place of its own,
// and a state holds all through: time is linear in the steps.
func BenchmarkWide(b *testing.B) {
	for _, n := range []int{100, 1_000, 10_000} {
		p := given.Plan(b, wide(n))
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				Read(p)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/step")
		})
	}
}

func wide(n int) string {
	var text strings.Builder
	text.WriteString("[video]\ntitle = \"Washer\"\nsubject = \"washing machine\"\n[shoot]\nbegins = [\"power-off\"]\n")
	for i := range n {
		fmt.Fprintf(&text, "[[tool]]\nid = \"t%d\"\nname = \"spanner %d\"\n[[setup]]\nid = \"p%d\"\nplace = \"bench %d\"\n", i, i, i, i)
	}
	for i := range n {
		fmt.Fprintf(&text, "[[step]]\ntitle = \"Step %d\"\ndo = \"pull the wires off the mains terminals\"\ntools = [\"t%d\"]\nshot = [{ of = \"wires\", setup = \"p%d\" }]\n", i, i, i)
	}
	return text.String()
}

// BenchmarkWorn reads plans in which each step has a caution of its own, all of one
// class, and the state that it was spoken in comes and goes: time is linear in the
// steps.
func BenchmarkWorn(b *testing.B) {
	for _, n := range []int{100, 1_000, 10_000} {
		p := given.Plan(b, worn(n))
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				Read(p)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/step")
		})
	}
}

func worn(n int) string {
	var text strings.Builder
	text.WriteString("[video]\ntitle = \"Washer\"\nsubject = \"washing machine\"\n")
	for i := range n {
		fmt.Fprintf(&text, "[[caution]]\nid = \"c%d\"\nhazard = \"mains-shock\"\nsay = \"Pull plug %d.\"\n", i, i)
	}
	for i := range n {
		turn := [...]string{"starts", "ends"}[i%2]
		fmt.Fprintf(&text, "[[step]]\ntitle = \"Step %d\"\ndo = \"pull the wires off the mains terminals\"\n%s = [\"power-off\"]\ncautions = [\"c%d\"]\n", i, turn, i)
	}
	return text.String()
}

// BenchmarkLong reads one sentence of a million words: time is linear in it.
func BenchmarkLong(b *testing.B) {
	for _, n := range []int{10_000, 100_000, 1_000_000} {
		text := long(n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				Read(oneStep("", text))
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/word")
		})
	}
}
