package shotlist

import (
	"fmt"
	"strings"

	"fixslate/plan"
	"fixslate/plan/hazard/class"
	"fixslate/plan/prose"
)

// Line is a line of a day's sheet: what stands in the left margin, the clock or
// a signal word, and the words beside it.
type Line struct {
	Kind   LineKind
	Margin string
	Words  string
	Shot   int   // index in the shots; -1 but for Shoot
	Turn   *Turn // of a Chance
	Grave  bool  // of a Care: warning or danger
	Entry  *Entry
}

// LineKind says what a Line is.
type LineKind int

// The kinds of Line.
const (
	Head   LineKind = iota // where the camera stands, or what changes where it stays
	Shoot                  // a shot
	Care                   // a caution of the step that begins here
	Cue                    // what a helper does in it
	Chance                 // a change of state, and the shots that must be in the can
	Supply                 // a memory card or battery
	Pause                  // a break, or a wait
	Labour                 // a step without a shot
)

// Lines are the lines of a session. A step's cautions and cues stand before
// its first shot, and once more before the first that shows its action, if a
// shot of another step or a break stands between. A caution that still
// lasts from an earlier step is given once in a session.
func (d *Day) Lines(session int, p *plan.Plan, shots []Shot) []Line {
	w := lineWriter{plan: p, shots: shots, begun: map[begun]bool{}, warned: map[string]bool{}, fresh: -1}
	entries := d.Sessions[session].Entries
	for i := range entries {
		w.entry(&entries[i], i == 0)
	}
	return w.lines
}

type lineWriter struct {
	plan   *plan.Plan
	shots  []Shot
	lines  []Line
	setup  string
	begun  map[begun]bool
	warned map[string]bool
	fresh  int // the step whose cautions were given last, with no other step's shot since; -1: none
}

// begun is a step that has begun: with any shot, or with its action.
type begun struct {
	step   int
	action bool
}

func (w *lineWriter) add(l Line) {
	if l.Kind != Shoot {
		l.Shot = -1
	}
	w.lines = append(w.lines, l)
}

func (w *lineWriter) entry(e *Entry, first bool) {
	for i := range e.Turns {
		t := &e.Turns[i]
		w.add(Line{Kind: Chance, Margin: "Last chance", Words: "for " + shotNumbers(w.shots, t.Shots) + ": " + t.Words(w.plan), Turn: t, Entry: e})
	}
	clock := Clock(e.Start)
	switch e.Kind {
	case Rest:
		w.fresh = -1
		w.add(Line{Kind: Pause, Margin: clock, Words: "Break until " + Clock(e.End), Entry: e})
	case Wait:
		w.fresh = -1
		w.add(Line{Kind: Pause, Margin: clock, Words: "Wait for " + e.Who + " until " + Clock(e.End), Entry: e})
	case Working:
		w.care(e.Step, true)
		w.add(Line{Kind: Labour, Margin: clock, Words: w.plan.Steps[e.Step].Title.Print + ", without a shot: " + prose.Minutes(float64(e.Work)/60) + " of work", Entry: e})
	default:
		w.head(e, first)
		w.care(e.Step, w.shots[e.Shot].Bound == ByStep)
		w.add(Line{Kind: Shoot, Margin: clock, Words: w.shot(e), Shot: e.Shot, Entry: e})
	}
}

// shotNumbers are the numbers of shots, three and more in a row as "12 to 16".
func shotNumbers(shots []Shot, list []int) string {
	var runs [][2]int // first and last number
	for _, i := range list {
		n := shots[i].Number
		if last := len(runs) - 1; last >= 0 && runs[last][1] == n-1 {
			runs[last][1] = n
		} else {
			runs = append(runs, [2]int{n, n})
		}
	}
	var words []string
	for _, r := range runs {
		switch r[1] - r[0] {
		case 0:
			words = append(words, fmt.Sprint(r[0]))
		case 1:
			words = append(words, fmt.Sprint(r[0]), fmt.Sprint(r[1]))
		default:
			words = append(words, fmt.Sprintf("%d to %d", r[0], r[1]))
		}
	}
	if len(list) == 1 {
		return "shot " + words[0]
	}
	return "shots " + strings.Join(words, ", ")
}

// head says where the camera stands, what changes, and what is put in.
func (w *lineWriter) head(e *Entry, first bool) {
	change := ""
	if n := e.ChangeSeconds(); n > 0 {
		change = prose.Minutes(float64(n)/60) + " for " + e.Words()
	}
	switch {
	case e.Setup != "" && (first || e.Setup != w.setup):
		name := w.plan.Name(plan.Ref{Kind: plan.KindSetup, ID: e.Setup})
		if change != "" {
			name += ": " + change
		}
		w.add(Line{Kind: Head, Words: name, Entry: e})
	case change != "":
		w.add(Line{Kind: Head, Words: "Change-over: " + change, Entry: e})
	}
	w.setup = e.Setup
	if e.Card > 0 {
		w.add(Line{Kind: Supply, Words: fmt.Sprintf("Memory card %d", e.Card), Entry: e})
	}
	if e.Battery {
		w.add(Line{Kind: Supply, Words: "Fresh battery in the camera", Entry: e})
	}
}

// care gives a step's cautions and cues.
func (w *lineWriter) care(step int, action bool) {
	if w.fresh != step {
		w.fresh = -1
	}
	given := w.begun[begun{step, action}] || w.begun[begun{step, true}] || w.fresh == step
	w.begun[begun{step, action}] = true
	if given {
		return
	}
	w.fresh = step
	s := &w.plan.Steps[step]
	for _, use := range s.Cautions {
		c := w.plan.CautionOf(s, use)
		if c == nil || !use.Spoken && w.warned[use.ID] {
			continue
		}
		w.warned[use.ID] = true
		w.add(Line{Kind: Care, Margin: prose.Capital(c.Signal.String()), Words: c.Card.Print, Grave: c.Signal >= class.Warning})
	}
	for _, c := range s.Cues {
		words := c.Who
		if !c.When.Empty() {
			words += ", " + c.When.Print
		}
		words += ": " + c.Does.Print
		if !c.Where.Empty() {
			words += " (" + c.Where.Print + ")"
		}
		w.add(Line{Kind: Cue, Margin: "Cue", Words: words})
	}
}

func (w *lineWriter) shot(e *Entry) string {
	s := &w.shots[e.Shot]
	words := fmt.Sprintf("%s: %s; ", s.Size, s.Of)
	if s.Takes > 1 {
		words += fmt.Sprintf("%d takes of ", s.Takes)
	}
	words += fmt.Sprintf("%.0f\u00a0s", s.Seconds)
	if len(s.Who) > 0 {
		words += "; with " + strings.Join(s.Who, ", ")
	}
	if e.Work >= 60 {
		words += "; " + prose.Minutes(float64(e.Work)/60) + " of work"
		if title := w.plan.Steps[e.Step].Title.Print; title != s.Of {
			words += ": " + title
		}
	}
	if e.Late > 0 {
		words += "; beyond the helper's hours"
	}
	return words
}

// Elsewhere are the shots that are not for the camera on the day and not made
// in the edit: everything of Out but the cards of cautions.
func (d *Day) Elsewhere(shots []Shot) []int {
	var list []int
	for _, i := range d.Out {
		if shots[i].Covers[0].Why != CautionCard {
			list = append(list, i)
		}
	}
	return list
}

// Maker says who makes a shot: "insert, apart".
func (s *Shot) Maker() string {
	if s.Apart {
		return s.Kind + ", apart"
	}
	return s.Kind
}
