package sheet

import (
	"strings"
	"testing"

	"fixslate/plan/diag"
	"fixslate/plan/given"
	"fixslate/plan/hazard"
	"fixslate/plan/timing"
	"fixslate/shotlist"
)

const withHelper = `
[video]
title = "T"
[shoot]
start = "09:00"
people = [{ id = "me" }, { id = "helper", adult = true, wears = ["splash goggles"] }]
[[caution]]
id = "ride"
hazard = "road-test"
say = "A brake can fail. Helmet on."
[[caution]]
id = "chips"
hazard = "eye-impact"
say = "Chips fly into eyes. Cover them."
[[setup]]
id = "yard"
place = "yard"
[[setup]]
id = "bench"
place = "bench"
[[step]]
title = "Hold it"
cautions = ["chips"]
people = ["helper"]
say = "Hold it."
do = "hold the frame"
[[step.cue]]
who = "helper"
when = "now"
does = "hold the frame"
[[step.shot]]
of = "hands on the frame"
setup = "bench"
[[step]]
title = "Ride it"
cautions = ["ride"]
people = ["helper"]
say = "Ride it."
do = "ride it round the yard"
[[step.cue]]
who = "helper"
when = "off you go"
does = "ride"
[[step.shot]]
of = "the ride"
setup = "yard"
needs = []
`

// The helper's steps stand by the clock of the day, with their cautions and
// the gear that they alone ask for; glasses are not asked of who wears goggles.
func TestHelperByTheClock(t *testing.T) {
	p := given.Plan(t, withHelper)
	line := timing.Estimate(p, timing.DefaultPace())
	shots := shotlist.FromPlan(p)
	shoot := func(step, clock int) shotlist.Entry {
		for i := range shots {
			if shots[i].Step == step && shots[i].Kind == shotlist.Camera {
				return shotlist.Entry{Shot: i, Step: step, Start: clock}
			}
		}
		t.Fatal("no shot of step", step)
		return shotlist.Entry{}
	}
	day := dayOf(p, shots, line)
	day.Sessions = []shotlist.Session{{Entries: []shotlist.Entry{shoot(1, 9*3600), shoot(0, 10*3600+300)}}}
	text := string(Helper(p, shots, day, nil))
	order := []string{
		"- splash goggles\n", "- helmet on a cycle – for _Ride it_\n",
		"#### About 09:00: Ride it\n", "- A brake can fail. Helmet on.\n", "1. **off you go** – ride\n",
		"#### About 10:05: Hold it\n", "- Chips fly into eyes. Cover them.\n", "1. **now** – hold the frame\n",
	}
	at := 0
	for _, want := range order {
		i := strings.Index(text[at:], want)
		if i < 0 {
			t.Fatalf("no %q in its place in\n%s", want, text)
		}
		at += i
	}
	for _, bad := range []string{"safety glasses", "Keep clear"} {
		if strings.Contains(text, bad) {
			t.Errorf("%q in\n%s", bad, text)
		}
	}
	day.Sessions = append(day.Sessions, day.Sessions[0])
	day.Sessions[0].Entries = day.Sessions[0].Entries[:1]
	if text := string(Helper(p, shots, day, nil)); !strings.Contains(text, "#### About day 2, 10:05: Hold it") {
		t.Errorf("no second day in\n%s", text)
	}
}

// What the helper's own steps do not say stands below them.
func TestHelperKeepsClear(t *testing.T) {
	p := given.Plan(t, withHelper+"[[caution]]\nid = \"other\"\nhazard = \"fuel-vapour\"\nsay = \"Fuel burns. No flame.\"\n[[step]]\ntitle = \"Fuel\"\ncautions = [\"other\"]\nsay = \"Fuel in.\"\n")
	text := string(Helper(p, nil, &shotlist.Day{}, nil))
	_, away, found := strings.Cut(text, "### Keep clear")
	if !found || !strings.Contains(away, "- Fuel burns. No flame.\n") || strings.Contains(away, "Chips") {
		t.Error(text)
	}
}

// Without a helper the sheet says which steps ask for one.
func TestHelperWanted(t *testing.T) {
	p := given.Plan(t, "[video]\ntitle = \"T\"\n[[step]]\ntitle = \"Lift\"\nsay = \"Up.\"\n")
	wanted := diag.Finding{Rule: "helper-unplanned", Message: "step \"Lift\" wants two"}
	for text, want := range map[string]bool{
		string(Helper(p, nil, &shotlist.Day{}, nil)):                    false,
		string(Helper(p, nil, &shotlist.Day{}, []diag.Finding{wanted})): true,
	} {
		if strings.Contains(text, "- step \"Lift\" wants two\n") != want || !strings.Contains(text, "No helper is planned.\n") {
			t.Error(text)
		}
	}
}

// A cue beyond the hours of who gives it says so on their own sheet.
func TestHelperBeyondTheHours(t *testing.T) {
	p := given.Plan(t, strings.Replace(withHelper, "adult = true,", `adult = true, until = "10:00",`, 1))
	shots := shotlist.FromPlan(p)
	day := dayOf(p, shots, timing.Estimate(p, timing.DefaultPace()))
	for clock, want := range map[int]string{
		9 * 3600:       "",
		9*3600 + 3000:  "**This runs past 10:00, when you go: say beforehand whether you can stay.**\n",
		10*3600 + 1800: "**This is planned for after 10:00, when you go: say beforehand whether you can be there.**\n",
	} {
		for i := range shots {
			if shots[i].Step == 1 && shots[i].Kind == shotlist.Camera {
				day.Sessions = []shotlist.Session{{Entries: []shotlist.Entry{{Shot: i, Step: 1, Start: clock, End: clock + 900}}}}
			}
		}
		text := string(Helper(p, shots, day, nil))
		if !strings.Contains(text, want) || want == "" && strings.Contains(text, "when you go") {
			t.Errorf("at %d, no %q in\n%s", clock, want, text)
		}
	}
}

// Hours that can't be meant, as those over midnight, count as all day here as in
// the day's order.
func TestHelperOverMidnight(t *testing.T) {
	p := given.Plan(t, strings.Replace(withHelper, "adult = true,", `adult = true, from = "23:00", until = "01:00",`, 1))
	shots := shotlist.FromPlan(p)
	text := string(Helper(p, shots, dayOf(p, shots, timing.Estimate(p, timing.DefaultPace())), nil))
	if !strings.Contains(text, "About 09:") || strings.Contains(text, "when you go") {
		t.Error(text)
	}
}

// A caution that a step writes in its own words stands so on the helper's sheet,
// whether the helper's cues are in that step or not, and on the risks sheet.
func TestOwnWordsOnSheets(t *testing.T) {
	const words = "The ride has no brakes yet. Helmet on, and walk the first round."
	own := strings.Replace(withHelper, `cautions = ["ride"]`, `cautions = [{ id = "ride", say = "`+words+`" }]`, 1)
	away := strings.Replace(own, "[[step.cue]]\nwho = \"helper\"\nwhen = \"off you go\"\ndoes = \"ride\"\n", "", 1)
	for _, text := range []string{own, away} {
		p := given.Plan(t, text)
		sheet := string(Helper(p, nil, &shotlist.Day{}, nil))
		if !strings.Contains(sheet, words) || strings.Contains(sheet, "A brake can fail.") {
			t.Errorf("the step's own words are not alone in\n%s", sheet)
		}
		risks := string(Risks(p, hazard.Read(p), nil))
		if !strings.Contains(risks, words) || strings.Contains(risks, "A brake can fail.") {
			t.Errorf("the step's own words are not alone in\n%s", risks)
		}
	}
}
