package book

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fixslate/plan"
	"fixslate/plan/kit"
	"fixslate/plan/prose"
	"fixslate/templates/blurb"
)

// step is one step as the book prints it. A field For holds versions for the
// script; Versions are the same in words.
type step struct {
	Number    int
	ID, Title string
	For       string
	Clock     string   // start in the video; empty where it is not in it
	Spoken    string   // seconds of speech, for the prompter
	About     []string // length, work, chapter, versions, people, sides
	Detour    string
	Verify    string
	Cautions  []caution
	Hurts     []hurt
	States    []pair
	Do        string
	Cues      []cue
	Narrated  string
	Lines     []line
	Tests     []test
	Facts     []fact
	OtherSide string
	Differs   []differs
	Sounds    string
	Note      plan.Note
	Shots     []shot
}

// cue is what a helper does.
type cue struct {
	Who, When, Does, Where, For, Verify string
	Note                                plan.Note
}

// steps are the steps with their shots.
func steps(b Book) []step {
	p := b.Plan
	out := make([]step, len(p.Steps))
	for i := range p.Steps {
		out[i] = stepOf(p, i)
	}
	chapter := map[int]string{}
	for _, c := range b.Chapters {
		if len(c.Steps) > 0 {
			chapter[c.Steps[0]] = c.Title
		}
	}
	for i := range b.Timeline.Steps {
		t := &b.Timeline.Steps[i]
		s := &out[t.Index]
		s.Clock = stamp(t.Start)
		s.Spoken = strconv.FormatFloat(t.Narration, 'f', 1, 64)
		s.About = slices.Insert(s.About, 0, stamp(t.Screen)+" in the video")
		if work := t.HandsOn.Mean(); work >= 1 {
			s.About = slices.Insert(s.About, 1, "about "+worked(work)+" of work")
		}
		switch title := chapter[t.Index]; title {
		case "":
		case s.Title:
			s.About = append(s.About, "starts a chapter")
		default:
			s.About = append(s.About, "starts the chapter “"+title+"”")
		}
	}
	for i := range b.Hazards.Steps {
		out[i].Hurts = hurts(&b.Hazards.Steps[i])
	}
	for _, s := range b.Shots {
		out[s.Step].Shots = append(out[s.Step].Shots, shotOf(p, s))
	}
	return out
}

func stepOf(p *plan.Plan, i int) step {
	s := &p.Steps[i]
	v := step{
		Number: i + 1, ID: s.ID, Title: cmp.Or(s.Title.Print, s.ID), For: attr(s.Variants), Verify: s.Verify,
		Detour: p.Detour(s.OnlyIf), States: states(s), Do: s.Do.Print, Lines: lines(p, s), Facts: facts(p, s),
		OtherSide: s.OtherSide.Print, Sounds: strings.Join(s.Sounds, ", "), Note: s.Note,
	}
	if versions := kit.VersionNames(p, s.Variants); versions != "" {
		v.About = append(v.About, versions+" only")
	}
	if len(s.People) > 0 {
		v.About = append(v.About, "with "+strings.Join(s.People, ", "))
	}
	if len(s.Sides) > 0 {
		v.About = append(v.About, "done "+strings.Join(s.Sides, " and "))
	}
	v.Narrated = "on camera"
	if s.Narrated == plan.Later {
		v.Narrated = "recorded later"
	}
	for _, use := range s.Cautions {
		if c := p.Given(s, use); c != nil {
			v.Cautions = append(v.Cautions, cautionIn(c, use))
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
		v.Cues = append(v.Cues, cue{c.Who, c.When.Print, c.Does.Print, c.Where.Print, attr(c.Variants), c.Verify, c.Note})
	}
	for _, d := range p.Differs {
		if d.Step == s.ID {
			v.Differs = append(v.Differs, differs{d.OnCamera.Print, blurb.Viewers(d.Viewers.Print), attr(d.Variants)})
		}
	}
	return v
}

// states are what must hold, begins, holds only here, and ends.
func states(s *plan.Step) []pair {
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

// words are states in words: "battery-off" is "battery off", "srs-waited" is
// "SRS waited".
func words(states []string) string {
	var out []string
	for _, s := range states {
		w := strings.ReplaceAll(s, "-", " ")
		if rest, ok := strings.CutPrefix(w, "srs "); ok {
			w = "SRS " + rest
		}
		if !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return strings.Join(out, ", ")
}

// worked is a length of work: "40 s", "4 min", "1 h 30 min".
func worked(seconds float64) string {
	if seconds < 60 {
		return fmt.Sprintf("%.0f s", seconds)
	}
	return prose.Minutes(seconds / 60)
}
