package timing

import (
	"slices"

	"fixslate/plan"
)

// heldReading is how many seconds a meter's display stays in the picture for
// each reading with a measured expectation: long enough to find the digits,
// read them and believe them (common practice, no source).
const heldReading = 3.0

// Estimate lays a plan out in time. Every step's screen time is the longer of
// what is said, shown and held in it, and its on_screen; times add up without
// rounding. The spread comes from the same numbers (see simulation). A
// duration that is still "?" counts as not written.
func Estimate(p *plan.Plan, pace Pace) Timeline {
	e := newEstimator(p, pace)
	t := e.layOut()
	sim := newSimulation(p, e.pace.spread())
	for i := range t.Steps {
		step := &t.Steps[i]
		step.Begin = sim.add(&p.Steps[i], step, e.onScreen(i))
	}
	sim.fill(&t, p)
	return t
}

// LayOut is Estimate without any Spread, for whoever reads none: the spread
// takes five times as long as all the rest.
func LayOut(p *plan.Plan, pace Pace) Timeline { return newEstimator(p, pace).layOut() }

func newEstimator(p *plan.Plan, pace Pace) estimator {
	pace = pace.filled()
	return estimator{plan: p, pace: pace, rate: pace.rate(p.Voice.WPM)}
}

func (e estimator) layOut() Timeline {
	t := Timeline{Steps: make([]Step, len(e.plan.Steps))}
	for i := range t.Steps {
		t.Steps[i] = e.step(i, t.End)
		t.End = t.Steps[i].End
	}
	return t
}

// estimator is what every step needs.
type estimator struct {
	plan *plan.Plan
	pace Pace
	rate Rate
}

// step lays out one step from a start in seconds.
func (e estimator) step(i int, start float64) Step {
	s := &e.plan.Steps[i]
	out := Step{Index: i, ID: s.ID, Start: start, Detour: s.OnlyIf.Test != ""}
	var beats lengths
	e.cautions(&beats, s)
	e.narration(&beats, s)
	e.readings(&beats, s)
	for _, shot := range s.Shots {
		e.card(&beats, shot.Card.Print, "")
	}
	action := len(beats)
	for _, line := range s.OtherSaid {
		e.say(&beats, line, Beat{Kind: OtherSide, Line: -1})
	}
	out.Narration = beats.total(Caution) + beats.total(Narration) + beats.total(OtherSide)
	out.Cards, out.Held, out.Sounds = beats.total(Card), beats.total(Reading), beats.total(Sound)
	if d := s.OnScreen; d.Set && !d.Open {
		out.OnScreen = written(d).Mean()
		if more := out.OnScreen - beats.sum(); more > 0 {
			beats = slices.Insert(beats, action, timedBeat{Beat{Kind: Action, Print: s.Do.Print, Line: -1}, more})
		}
	}
	out.Beats, out.End = beats.from(start)
	out.Screen = out.End - out.Start
	out.HandsOn, out.HandsOnFrom = e.handsOn(s, out.Screen)
	return out
}

// onScreen is the estimate of a step's on_screen, zero where unset.
func (e estimator) onScreen(i int) PERT {
	if d := e.plan.Steps[i].OnScreen; d.Set && !d.Open {
		return written(d)
	}
	return PERT{}
}

func (e estimator) cautions(beats *lengths, s *plan.Step) {
	for _, c := range s.Cautions {
		if c.Spoken {
			for _, line := range c.Lines {
				e.say(beats, line, Beat{Kind: Caution, Caution: c.ID, Line: -1})
			}
		}
		if whole := e.plan.CautionOf(s, c); c.Card && whole != nil {
			if c.Spoken {
				e.card(beats, whole.Card.Print, c.ID)
			} else {
				e.cardAgain(beats, whole.Card.Print, c.ID)
			}
		}
	}
}

// cardAgain is a card that is shown once more at a chapter: it stands over what
// follows and holds nothing up, or a state of three cautions would put ten
// silent seconds at the head of every chapter.
func (estimator) cardAgain(beats *lengths, print, caution string) {
	if print != "" {
		*beats = append(*beats, timedBeat{Beat{Kind: Card, Print: print, Caution: caution, Line: -1}, 0})
	}
}

func (e estimator) narration(beats *lengths, s *plan.Step) {
	for i, line := range s.Lines {
		switch line.Kind {
		case plan.Spoken:
			e.say(beats, line, Beat{Kind: Narration, Line: i})
		case plan.Sound:
			e.sound(beats, line.Print, i)
		}
	}
	for _, label := range s.Sounds {
		e.sound(beats, label, -1)
	}
}

func (e estimator) readings(beats *lengths, s *plan.Step) {
	for _, id := range s.Tests {
		for _, t := range e.plan.Test(id) {
			if !plan.Meets(t.Variants, s.Variants) {
				continue
			}
			hold := func(v plan.Value, print string) {
				if e.measured(v) {
					*beats = append(*beats, timedBeat{Beat{Kind: Reading, Print: print, Test: id, Line: -1}, heldReading})
				}
			}
			hold(t.Expect, t.Question.Print)
			for _, r := range t.Readings {
				if plan.Meets(r.Variants, s.Variants) {
					hold(r.Expect, r.When.Print)
				}
			}
		}
	}
}

// measured holds for an expectation that a meter shows: a measure, or words
// that quote one, as a value with a version each does.
func (e estimator) measured(v plan.Value) bool {
	if v.Measure.Measured() {
		return true
	}
	return slices.ContainsFunc(v.Quotes, func(q plan.Quote) bool {
		return q.Ref.Kind == plan.KindSpec && slices.ContainsFunc(e.plan.Spec(q.Ref.ID), func(s *plan.Spec) bool {
			return s.Value.Measure.Measured()
		})
	})
}

func (e estimator) say(beats *lengths, line plan.Line, b Beat) {
	if line.Kind != plan.Spoken || line.Speak == "" {
		return
	}
	b.Print, b.Speak = line.Print, line.Speak
	seconds, rest := e.rate.speech(line.Speak)
	b.Rest = rest
	*beats = append(*beats, timedBeat{b, seconds})
}

func (estimator) sound(beats *lengths, label string, line int) {
	if label != "" {
		*beats = append(*beats, timedBeat{Beat{Kind: Sound, Print: label, Line: line}, soundSeconds(label)})
	}
}

func (estimator) card(beats *lengths, print, caution string) {
	if print != "" {
		*beats = append(*beats, timedBeat{Beat{Kind: Card, Print: print, Caution: caution, Line: -1}, cardSeconds(print)})
	}
}

// timedBeat is a beat that has its length but not yet its place.
type timedBeat struct {
	Beat
	seconds float64
}

type lengths []timedBeat

func (l lengths) total(kind BeatKind) float64 {
	total := 0.0
	for _, b := range l {
		if b.Kind == kind {
			total += b.seconds
		}
	}
	return total
}

func (l lengths) sum() float64 {
	total := 0.0
	for _, b := range l {
		total += b.seconds
	}
	return total
}

// from places the beats one after the other and says where the last one ends.
func (l lengths) from(start float64) ([]Beat, float64) {
	beats := make([]Beat, len(l))
	for i, b := range l {
		b.Start, b.End = start, start+b.seconds
		start = b.End
		beats[i] = b.Beat
	}
	return beats, start
}
