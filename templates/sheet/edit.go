package sheet

import (
	"cmp"
	"slices"
	"strings"

	"fixslate/chapters"
	"fixslate/plan"
	"fixslate/plan/timing"
)

type editNote struct {
	At   float64
	What string
}

// ShotNote is a picture that no camera makes on the day.
type ShotNote struct {
	Step           int
	Kind, Of, File string
	Card           string
}

type getRow struct {
	At float64 // its step's cautions are said
	ShotNote
	Step string
}

type editView struct {
	Title                            string
	Cards, Cautions, Sounds, Detours []editNote
	Again                            []cardAgain
	Get                              []getRow
	Running                          timing.Spread
}

// Edit is edit.md: what the cut needs beside the pictures: cards with text and
// time, inserts and stills to get, sound labels, cautions that may not be cut.
func Edit(p *plan.Plan, t timing.Timeline, parts []chapters.Chapter, shots []ShotNote) []byte {
	v := editView{Title: p.Video.Title.Print, Running: t.Running}
	for _, ts := range t.Steps {
		s := &p.Steps[ts.Index]
		if text := p.Detour(s.OnlyIf); text != "" {
			v.Detours = append(v.Detours, editNote{ts.Start, s.Title.Print + " – " + text})
		}
		v.Cautions = append(v.Cautions, cautions(p, s, ts)...)
		for _, b := range ts.Beats {
			if b.Kind == timing.Sound {
				v.Sounds = append(v.Sounds, editNote{b.Start, b.Print})
			}
		}
		v.Cards = append(v.Cards, cards(p, s, ts)...)
		if slices.ContainsFunc(parts, func(c chapters.Chapter) bool { return len(c.Steps) > 0 && c.Steps[0] == ts.Index }) {
			v.Again = cardsAgain(v.Again, p, s, ts)
		}
		for _, shot := range shots {
			if shot.Step == ts.Index {
				v.Get = append(v.Get, getRow{afterCautions(ts), shot, s.Title.Print})
			}
		}
	}
	slices.SortStableFunc(v.Cards, func(a, b editNote) int { return cmp.Compare(a.At, b.At) })
	return write((*out).edit, &v)
}

// cautions are the spoken cautions of a step, each whole: its sentences are
// beats of their own in the timeline.
func cautions(p *plan.Plan, s *plan.Step, ts timing.Step) []editNote {
	var notes []editNote
	last := ""
	for _, b := range ts.Beats {
		if b.Kind != timing.Caution {
			continue
		}
		if len(notes) > 0 && b.Caution == last {
			notes[len(notes)-1].What += " " + b.Print
			continue
		}
		words := b.Print
		if i := slices.IndexFunc(s.Cautions, func(use plan.StepCaution) bool { return use.ID == b.Caution }); i >= 0 {
			if c := p.CautionOf(s, s.Cautions[i]); c != nil {
				words = c.Signal.String() + ": " + words
			}
		}
		notes, last = append(notes, editNote{b.Start, words}), b.Caution
	}
	return notes
}

// cards are the words first shown over a step: its spoken cautions' and its
// shots' own.
func cards(p *plan.Plan, s *plan.Step, ts timing.Step) []editNote {
	var notes []editNote
	for _, use := range s.Cautions {
		if c := p.CautionOf(s, use); c != nil && use.Card && use.Spoken {
			notes = append(notes, editNote{cardStart(ts, use.ID), c.Signal.String() + ": " + c.Card.Print})
		}
	}
	for i := range s.Shots {
		if card := s.Shots[i].Card; !card.Empty() {
			notes = append(notes, editNote{afterCautions(ts), card.Print})
		}
	}
	return notes
}

// afterCautions is when the picture belongs to the step itself: a caution that
// is spoken keeps it until then.
func afterCautions(ts timing.Step) float64 {
	for _, b := range ts.Beats {
		if b.Kind != timing.Caution && b.Kind != timing.Card {
			return b.Start
		}
	}
	return ts.Start
}

func cardStart(ts timing.Step, caution string) float64 {
	for _, b := range ts.Beats {
		if (b.Kind == timing.Card || b.Kind == timing.Caution) && b.Caution == caution {
			return b.Start
		}
	}
	return ts.Start
}

// cardAgain is a caution's card that later steps show without the words.
type cardAgain struct {
	card string
	At   []float64
}

// Clocks are the times in one line.
func (c cardAgain) Clocks() string {
	var all []string
	for _, at := range c.At {
		all = append(all, clock(at))
	}
	return strings.Join(all, ", ")
}

// Card is the card's words.
func (c cardAgain) Card() string { return c.card }

// cardsAgain adds the cards that a step shows again. Only those at the head of a
// chapter are due: where a step was joined to the chapter before it, nobody lands
// in it.
func cardsAgain(all []cardAgain, p *plan.Plan, s *plan.Step, ts timing.Step) []cardAgain {
	for _, use := range s.Cautions {
		c := p.CautionOf(s, use)
		if c == nil || !use.Card || use.Spoken {
			continue
		}
		words := c.Signal.String() + ": " + c.Card.Print
		i := slices.IndexFunc(all, func(a cardAgain) bool { return a.card == words })
		if i < 0 {
			all, i = append(all, cardAgain{card: words}), len(all)
		}
		all[i].At = append(all[i].At, cardStart(ts, use.ID))
	}
	return all
}
