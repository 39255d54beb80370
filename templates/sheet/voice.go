package sheet

import (
	"slices"

	"fixslate/plan"
	"fixslate/plan/timing"
)

type voiceLine struct {
	Text    string
	Seconds float64
}

type voiceStep struct {
	Title   string
	Lines   []voiceLine
	Seconds float64
}

// Voice is voice.md: the lines that are recorded later, each with the seconds
// it should take; nil where all narration is live.
func Voice(p *plan.Plan, t timing.Timeline) []byte {
	var steps []voiceStep
	var total float64
	for _, ts := range t.Steps {
		s := &p.Steps[ts.Index]
		if s.Narrated != plan.Later {
			continue
		}
		step := voiceStep{Title: s.Title.Print}
		for _, b := range ts.Beats {
			if b.Spoken() {
				length := b.End - b.Start - b.Rest
				step.Lines = append(step.Lines, voiceLine{b.Print, length})
				step.Seconds += length
			}
		}
		if len(step.Lines) > 0 {
			steps = append(steps, step)
			total += step.Seconds
		}
	}
	if len(steps) == 0 {
		return nil
	}
	return print("voice.md.tmpl", struct {
		Title string
		Steps []voiceStep
		Total float64
	}{p.Video.Title.Print, steps, total})
}

type editNote struct {
	At   float64
	What string
}

// Edit is edit.md: what the cut needs beside the pictures: cards with text and
// time, inserts and stills to get, sound labels, cautions that may not be cut.
func Edit(p *plan.Plan, t timing.Timeline, shots []ShotNote) []byte {
	v := struct {
		Title                            string
		Cards, Cautions, Sounds, Detours []editNote
		Get                              []ShotNote
		Running                          timing.Spread
	}{Title: p.Video.Title.Print, Running: t.Running}
	for _, ts := range t.Steps {
		s := &p.Steps[ts.Index]
		if text := condition(p, s.OnlyIf); text != "" {
			v.Detours = append(v.Detours, editNote{ts.Start, s.Title.Print + ": " + text})
		}
		for _, b := range ts.Beats {
			switch b.Kind {
			case timing.Caution:
				v.Cautions = append(v.Cautions, editNote{b.Start, b.Print})
			case timing.Sound:
				v.Sounds = append(v.Sounds, editNote{b.Start, b.Print})
			}
		}
		v.Cards = append(v.Cards, cards(p, s, ts)...)
	}
	slices.SortStableFunc(v.Cards, func(a, b editNote) int { return int(a.At*1000) - int(b.At*1000) })
	v.Get = shots
	return print("edit.md.tmpl", v)
}

// ShotNote is a picture that no camera makes.
type ShotNote struct{ ID, Kind, Of, File, Card string }

// cards are the words shown over a step: its cautions' and its shots' own.
func cards(p *plan.Plan, s *plan.Step, ts timing.Step) []editNote {
	var notes []editNote
	for _, use := range s.Cautions {
		c := p.CautionOf(s, use)
		if !use.Card || c == nil {
			continue
		}
		at := ts.Start
		for _, b := range ts.Beats {
			if (b.Kind == timing.Card || b.Kind == timing.Caution) && b.Caution == use.ID {
				at = b.Start
				break
			}
		}
		words := c.Signal.String() + ": " + c.Card.Print
		if !use.Spoken {
			words += " (again)"
		}
		notes = append(notes, editNote{at, words})
	}
	for i := range s.Shots {
		if card := s.Shots[i].Card; !card.Empty() {
			notes = append(notes, editNote{ts.Start, card.Print})
		}
	}
	return notes
}
