// Package pace learns how one presenter talks and works from finished edits
// and their plans.
//
// In go Edits: a plan, what was heard in its edit, and where somebody wrote it
// down, how long the work of a step took. Out comes Learned: a timing.Pace, and
// for each of its figures how sure it is and how much of it was measured rather
// than assumed. The package reads no file, and it never takes a short
// measurement for the truth: what little was seen moves the default only a
// little.
package pace

import (
	"math"

	"fixslate/chapters/align"
	"fixslate/plan"
	"fixslate/plan/timing"
)

// Edit is one finished video beside its plan.
type Edit struct {
	Plan   *plan.Plan
	Match  align.Match
	Worked []Work
}

// Work is how long the hands were at a step, off camera and on.
type Work struct {
	Step    string // id
	Seconds float64
}

// Learned is what edits taught.
type Learned struct {
	Pace        timing.Pace
	Speech      Estimate // characters a second
	Comma       Estimate // seconds
	Sentence    Estimate // seconds
	ScreenShare Estimate // seconds in the cut for each second of hands-on time
	HandsOn     Estimate // hands-on time as it was, over hands-on time as planned
}

// Estimate is one figure of a pace.
type Estimate struct {
	Value     float64
	Low, High float64 // its 10 and 90 % points
	Default   float64
	Count     int     // lines of narration, or steps, that it rests on
	Measured  float64 // 0: the default as it was; near 1: what was measured
}

// Enough is the part of an estimate that must be measured for it to say more
// about the presenter than about the default.
const Enough = 0.5

// enoughTalk is how many seconds of measured speech make a video count as one:
// by then its own error is below what one presenter varies between videos
// (LineSpread/√10 for ten lines of four seconds).
const enoughTalk = 40

func seconds(runs []run) float64 {
	total := 0.0
	for _, r := range runs {
		total += r.took
	}
	return total
}

// quantile is the 90 % point of the standard normal distribution.
const quantile = 1.2815515655446004

// Beliefs before anything was measured. How much presenters differ in speed
// and one presenter between videos stands in package timing. That pauses vary
// by a third between presenters is read from the ranges of fast and slow
// readers, 0.20 to 0.98 s and 0.34 to 1.36 s between sentences (Kazlauskiene
// and Kalasinskaite 2020); the other figures are common practice, no source.
const (
	pauseSpread    = 0.33
	pauseSitting   = 0.10
	characterAlone = 0.03 // of the characters' factor, apart from pauses
)

var (
	screenBelief = belief{step: 0.7, wide: 0.6}
	workBelief   = belief{step: 0.5, wide: 0.35}
)

// speechPrior is the covariance of the three factors between presenters, and
// that between two videos of one presenter.
func speechPrior() (presenters, videos matrix) {
	between := timing.VoiceSpread*timing.VoiceSpread - timing.SittingSpread*timing.SittingSpread
	sitting := timing.SittingSpread * timing.SittingSpread
	own := vector{characterAlone, pauseSpread, pauseSpread}
	ownSitting := vector{characterAlone / 3, pauseSitting, pauseSitting}
	for i := range factors {
		for j := range factors {
			presenters[i][j], videos[i][j] = between, sitting
		}
		presenters[i][i] += own[i] * own[i]
		videos[i][i] += ownSitting[i] * ownSitting[i]
	}
	return presenters, videos
}

// Learn measures edits. Those whose match is foreign to the plan teach nothing;
// it is for the caller to say so.
//
// An edit shows speech and screen time; what the work took it cannot show. Where
// that was not written down (Worked), screen time is measured against the
// plan's own work, and nothing is learned about that.
func Learn(edits []Edit) Learned {
	var o observed
	for _, e := range edits {
		if _, foreign := e.Match.Foreign(); foreign {
			continue
		}
		talk, lines := runs(e.Match)
		o.talk = append(o.talk, talk)
		o.lines += lines
		o.steps(e)
	}
	return learn(o)
}

// steps sorts out how long the steps of an edit were seen and worked on. A
// step that was repeated in the cut is seen too long, and left out.
func (o *observed) steps(e Edit) {
	worked := map[string]float64{}
	for _, w := range e.Worked {
		if w.Seconds > 0 {
			worked[w.Step] += w.Seconds
		}
	}
	seen := map[int]float64{}
	for _, s := range e.Match.Timeline(e.Plan).Steps {
		if len(e.Match.Steps[s.Index].Takes) == 1 {
			seen[s.Index] = s.Screen
		}
	}
	for _, s := range timing.LayOut(e.Plan, timing.DefaultPace()).Steps {
		planned, took := s.HandsOn.Mean(), worked[s.ID]
		if s.HandsOnFrom == timing.Inferred {
			planned = 0 // a guess of ours is no plan
		}
		if planned > 0 && took > 0 {
			o.work = append(o.work, took/planned)
		}
		if took == 0 {
			took = planned
		}
		if seen[s.Index] > 0 && took > 0 {
			o.share = append(o.share, seen[s.Index]/took)
		}
	}
}

// observed is what the edits hold, sorted out by figure.
type observed struct {
	talk  [][]run   // by video
	lines int       // in all runs
	share []float64 // by step: seconds in the cut for each second of work
	work  []float64 // by step: work as it was over work as planned
}

// learn turns observations into a pace.
func learn(o observed) Learned {
	def := timing.DefaultPace()
	mean, cov := learnSpeech(o.talk)
	prior, _ := speechPrior()
	videos := 0
	for _, v := range o.talk {
		if seconds(v) >= enoughTalk {
			videos++
		}
	}
	const least, most = 0.45, 3 // what a pace file may say; no presenter is near either
	speech := func(i int, value float64) Estimate {
		f, sd := min(most, max(least, mean[i])), cov.deviation(i)
		e := Estimate{Default: value, Count: o.lines, Measured: 1 - cov[i][i]/prior[i][i]}
		e.Value, e.Low, e.High = value*f, value*max(least, f-quantile*sd), value*(f+float64(quantile*sd))
		if i == talk { // seconds a character: the rate is the other way up
			e.Value, e.Low, e.High = value/f, value/(f+quantile*sd), value/max(least, f-quantile*sd)
		}
		return e
	}
	ratio := func(b belief, value float64, ratios []float64) Estimate {
		b.mean = math.Log(value)
		m, sd := learnFactor(b, ratios)
		return Estimate{
			Value: math.Exp(m), Low: math.Exp(m - quantile*sd), High: math.Exp(m + quantile*sd),
			Default: value, Count: len(ratios), Measured: 1 - sd*sd/(b.wide*b.wide),
		}
	}
	l := Learned{
		Speech: speech(talk, def.Rate.CharactersPerSecond), Comma: speech(comma, def.Rate.Comma), Sentence: speech(sentence, def.Rate.Sentence),
		ScreenShare: ratio(screenBelief, def.ScreenShare, o.share), HandsOn: ratio(workBelief, def.HandsOn, o.work),
	}
	// People read a pace file; a ten-thousandth is far below what videos tell.
	fine := func(e Estimate) float64 { return math.Round(e.Value*1e4) / 1e4 }
	l.Pace = timing.Pace{
		Rate:        timing.Rate{CharactersPerSecond: fine(l.Speech), Comma: fine(l.Comma), Sentence: fine(l.Sentence)},
		ScreenShare: fine(l.ScreenShare), HandsOn: fine(l.HandsOn),
		Counts: timing.Counts{Videos: videos, Lines: o.lines, Steps: len(o.share), Works: len(o.work)},
	}
	return l
}
