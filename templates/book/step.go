package book

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fixslate/plan"
	"fixslate/plan/hazard/class"
	"fixslate/plan/kit"
	"fixslate/plan/timing"
	"fixslate/shotlist"
)

// step is one step as the book prints it.
type step struct {
	Number       int
	ID, Title    string
	For          string // versions for the script
	Versions     string // versions in words
	Clock        string // start in the video; empty where it is not in it
	Seconds      string // in the video
	Spoken       string // seconds of speech, for the prompter
	HandsOn      string
	Detour       string
	Chapter      string // title of the chapter it starts
	Cautions     []caution
	States       []pair
	Do           string
	Lines        []line
	Facts        []fact
	Tests        []test
	Cues         []cue
	Differs      []differs
	OtherSide    string
	Sides        string
	People       string
	Sounds       string
	Note         plan.Note
	Verify       string
	Shots        []shot
	NarratedWhen string
}

type caution struct {
	Signal, Card, Text, LeaveTo, Meaning string
	Grave                                string // name of its class in the style
	Spoken, Shown                        bool
	Side                                 string
	For                                  string
}

// line is one line of narration. Kind is "say", "caution", "direction",
// "sound" or "other".
type line struct{ Kind, Words, For string }

// fact is one thing a step needs, in a line.
type fact struct {
	Kind, Words, Versions, For, Verify string
	Note                               plan.Note
	Open                               bool
}

type cue struct{ Who, When, Does, Where, For string }

type shot struct {
	ID, Of, Size, Kind, Place, Light, Sound, States, Who, Takes, Card, File, Why string
	Suggested, Apart                                                             bool
	For, Versions                                                                string
	Note                                                                         plan.Note
}

// steps are the steps with their shots.
func steps(b Book) []step {
	p := b.Plan
	at := map[int]*timing.Step{}
	for i := range b.Timeline.Steps {
		at[b.Timeline.Steps[i].Index] = &b.Timeline.Steps[i]
	}
	starts := map[int]string{}
	for _, c := range b.Chapters {
		if len(c.Steps) > 0 {
			starts[c.Steps[0]] = c.Title
		}
	}
	out := make([]step, len(p.Steps))
	for i := range p.Steps {
		out[i] = stepOf(p, i)
		out[i].Chapter = starts[i]
		if t := at[i]; t != nil {
			out[i].Clock = stamp(t.Start)
			out[i].Seconds = strconv.Itoa(int(t.Screen + 0.5))
			out[i].Spoken = strconv.FormatFloat(t.Narration, 'f', 1, 64)
			out[i].HandsOn = minutes(t.HandsOn.Mean())
		}
	}
	for _, s := range b.Shots {
		out[s.Step].Shots = append(out[s.Step].Shots, shotOf(p, s))
	}
	return out
}

func stepOf(p *plan.Plan, i int) step {
	s := &p.Steps[i]
	v := step{
		Number: i + 1, ID: s.ID, Title: s.Title.Print, For: attr(s.Variants), Versions: kit.VersionNames(p, s.Variants),
		Detour: condition(p, s.OnlyIf), States: states(p, i), Do: s.Do.Print, Lines: lines(p, s), Facts: facts(p, s),
		OtherSide: s.OtherSide.Print, Sides: strings.Join(s.Sides, ", "), People: strings.Join(s.People, ", "),
		Sounds: strings.Join(s.Sounds, ", "), Note: s.Note, Verify: s.Verify,
	}
	if v.Title == "" {
		v.Title = s.ID
	}
	if len(s.Lines) > 0 {
		v.NarratedWhen = "said on camera"
		if s.Narrated == plan.Later {
			v.NarratedWhen = "recorded later"
		}
	}
	for _, use := range s.Cautions {
		if c := p.CautionOf(s, use); c != nil {
			v.Cautions = append(v.Cautions, cautionOf(c, use))
		}
	}
	for _, id := range s.Tests {
		for _, t := range p.Test(id) {
			if plan.Meets(t.Variants, s.Variants) {
				v.Tests = append(v.Tests, testOf(p, t))
			}
		}
	}
	for _, c := range s.Cues {
		v.Cues = append(v.Cues, cue{c.Who, c.When.Print, c.Does.Print, c.Where.Print, attr(c.Variants)})
	}
	for _, d := range p.Differs {
		if d.Step == s.ID {
			v.Differs = append(v.Differs, differs{d.OnCamera.Print, d.Viewers.Print, attr(d.Variants)})
		}
	}
	return v
}

// cautionOf is a caution as a step gives it.
func cautionOf(c *plan.Caution, use plan.StepCaution) caution {
	v := caution{
		Signal: strings.ToUpper(c.Signal.String()), Card: c.Card.Print, Text: c.Text, LeaveTo: c.LeaveTo.Print,
		Meaning: c.Signal.Meaning(), Spoken: use.Spoken, Shown: use.Card, Side: use.Side, For: attr(c.Variants),
	}
	if c.Signal >= class.Warning {
		v.Grave = "grave"
	}
	if v.Card == "" {
		v.Card = c.Say.Print
	}
	if !use.Say.Empty() {
		v.Text = use.Say.Print
	}
	if v.Text == v.Card {
		v.Text = ""
	}
	return v
}

// lines are what is said in a step, in order: cautions, narration, the other
// side.
func lines(p *plan.Plan, s *plan.Step) []line {
	var out []line
	add := func(kind, versions string, from []plan.Line) {
		for _, l := range from {
			k := kind
			switch l.Kind {
			case plan.Direction:
				k = "direction"
			case plan.Sound:
				k = "sound"
			}
			out = append(out, line{k, l.Print, versions})
		}
	}
	for _, use := range s.Cautions {
		if !use.Spoken {
			continue
		}
		versions := ""
		if c := p.CautionOf(s, use); c != nil {
			versions = attr(c.Variants)
		}
		add("caution", versions, use.Lines)
	}
	add("say", "", s.Lines)
	add("other", "", s.OtherSaid)
	return out
}

// states are what must hold, begins, holds only here, and ends.
func states(p *plan.Plan, i int) []pair {
	s := &p.Steps[i]
	var out []pair
	for _, g := range []struct {
		name   string
		states []string
	}{{"Needs", s.Needs}, {"From here", s.Starts}, {"Only in this step", s.During}, {"Ends here", s.Ends}} {
		if len(g.states) > 0 {
			out = append(out, pair{g.name, words(g.states)})
		}
	}
	return out
}

// words are states in words: "battery-off" is "battery off".
func words(states []string) string {
	var out []string
	for _, s := range states {
		if w := strings.ReplaceAll(s, "-", " "); !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return strings.Join(out, ", ")
}

// condition says when a detour is taken.
func condition(p *plan.Plan, c plan.Condition) string {
	if c.Test == "" {
		return ""
	}
	question := p.Name(plan.Ref{Kind: plan.KindTest, ID: c.Test})
	switch c.Outcome {
	case "passes":
		return "Only if the reading is good: " + question
	case "fails":
		return "Only if the reading is bad: " + question
	}
	for _, t := range p.Test(c.Test) {
		for _, o := range t.Outcomes {
			if o.ID == c.Outcome {
				return fmt.Sprintf("Only if %s (%s)", o.Sees.Print, question)
			}
		}
	}
	return "Only after an outcome of: " + question
}

// minutes is a length of work: "40 s", "4 min".
func minutes(seconds float64) string {
	if seconds < 60 {
		return fmt.Sprintf("%.0f s", seconds)
	}
	return fmt.Sprintf("%.0f min", seconds/60)
}

// shotOf is one shot in words.
func shotOf(p *plan.Plan, s shotlist.Shot) shot {
	v := shot{
		ID: s.ID, Of: s.Of, Size: s.Size, Kind: s.Kind, Light: s.Light, Sound: s.Sound, Who: strings.Join(s.Who, ", "),
		Card: s.Card, File: s.File, Suggested: s.Suggested, Apart: s.Apart,
		For: attr(s.Variants), Versions: kit.VersionNames(p, s.Variants), States: words(s.States),
	}
	if s.Kind == shotlist.Camera {
		v.Kind = ""
	}
	if s.Setup != "" {
		v.Place = p.Name(plan.Ref{Kind: plan.KindSetup, ID: s.Setup})
	}
	for _, state := range s.Without {
		v.States = kit.Join(v.States, "not "+words([]string{state}))
	}
	if s.Kind == shotlist.Camera {
		v.Takes = fmt.Sprintf("%.0f s", s.Seconds)
		if s.Takes > 1 {
			v.Takes = fmt.Sprintf("%d takes of %.0f s", s.Takes, s.Seconds)
		}
	}
	var why []string
	for _, c := range s.Covers {
		if word := c.Why.String(); c.Why != shotlist.Asked && !slices.Contains(why, word) {
			why = append(why, word)
		}
	}
	v.Why = strings.Join(why, ", ")
	return v
}
