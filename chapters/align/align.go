// Package align lays a finished edit beside its plan.
//
// In go a plan, its planned Timeline and the cues of the edit's captions; out
// comes a Match: where each step starts and ends, which are missing, moved or
// said twice, what talk is in no step, which planned lines were spoken and
// when, which numbers differ, and which words look like a mis-heard term. What
// can't be trusted is said in Troubles.
//
// The package opens no file, changes no caption, judges nothing (plan/lint
// does) and never fails: captions that fit no step give a Match that says so.
package align

import (
	"fixslate/chapters/captions"
	"fixslate/plan"
	"fixslate/plan/prose"
	"fixslate/plan/timing"
)

// Match is a finished edit beside its plan. Times are seconds on the captions'
// clock.
type Match struct {
	Steps    []Step    // one for each step of the plan, in the plan's order
	Repeats  []Repeat  // second and later takes left in, by start
	Added    []Added   // talk in no step, by start
	Lines    []Line    // the planned spoken lines, step by step in the plan's order
	Words    []Word    // what was heard, by start
	Numbers  []Number  // numbers said otherwise than planned, by start
	Terms    []Term    // words that may be a mis-heard term, by start
	Troubles []Trouble // what can't be trusted, by kind and then by start

	End   float64 // the last cue's end
	Rate  float64 // spoken characters a second while the presenter talks, 0 with no words
	Drift float64 // seconds of edit for one planned second between the first and the last step found, 0 where that can't be said
}

// Step is one step of the plan in the edit.
type Step struct {
	Index      int // in the plan's Steps
	ID         string
	Status     Status
	Start      float64 // the first word of the first take, its lead-in ("okay, next …") included; 0 if missing
	End        float64 // where the talk of the take that counts ends
	Confidence float64 // 0 to 1: how sure Start is within two seconds; of a missing step, how sure that it is missing
	Takes      []Take  // at least one unless missing, by start
}

// Status says what became of a step.
type Status int

// What becomes of steps.
const (
	Found   Status = iota
	Missing        // not said
	Moved          // said, but out of the plan's order
)

// String is the status as the JSON of match has it.
func (s Status) String() string {
	return [...]string{"found", "missing", "moved"}[s]
}

// Take is one time a step is said, with the remarks about other things that
// stand inside it.
type Take struct{ Start, End float64 }

// Repeat is a take of a step that was said before.
type Repeat struct {
	Index      int // in the plan's Steps
	ID         string
	Start, End float64
}

// Added is talk that belongs to no step.
type Added struct {
	Start, End float64
	Text       string // as heard
	First      int    // its first word in Match.Words
	Last       int    // its last word, included
}

// Slight holds for a word or two that are not worth telling of.
func (a Added) Slight() bool { return a.Last-a.First < 2 }

// Line is one planned line of speech.
type Line struct {
	Step    int             // in the plan's Steps
	ID      string          // of the step
	Kind    timing.BeatKind // Caution, Narration or OtherSide
	Caution string          // id, for a caution's lines
	Index   int             // in the step's Lines for Narration, else -1
	Print   string          // as printed
	Speak   string          // as it was to be spoken
	Found   bool            // said, in its step or elsewhere
	Away    bool            // said, but outside its step
	Share   float64         // 0 to 1: how much of its weight in words was heard
	Start   float64         // of its first word heard; 0 if not found
	End     float64         // of its last
	First   int             // its first word in Match.Words; -1 if not found
	Last    int             // its last word, included; -1 if not found
}

// Word is one word of the captions.
type Word struct {
	Text       string     // as heard
	Start, End float64    // spread over the cue by characters
	Cue        int        // in the cues given
	Span       prose.Span // in the cue's Text
	Step       int        // in the plan's Steps, -1 for added talk
	Line       int        // in Match.Lines, -1 where it answers to no planned word
}

// Number is a number that was said otherwise than planned.
type Number struct {
	Line    int // in Match.Lines
	Planned prose.Figure
	Heard   prose.Figure // its Span is in the line's words as heard
	Print   string       // the planned words, as in the line's Print
	Said    string       // the words heard
	Start   float64
	Cue     int        // in the cues given
	Span    prose.Span // in the cue's Text, as far as the words stand in one cue
}

// Term is a stretch of a cue that may be a mis-heard term of its step.
type Term struct {
	Heard      string // the words as they stand in the cue
	Term       string // the words proposed instead
	Ref        plan.Ref
	Step       int
	Start      float64
	Confidence float64 // 0 to 1
	Cue        int
	Span       prose.Span // in the cue's Text
}

// Trouble is a reason to doubt a Match.
type Trouble struct {
	Kind  TroubleKind
	Cue   int     // the first cue that shows it, -1 for the whole file
	Start float64 // of that cue
	Count int     // how many cues show it
	Share float64 // 0 to 1, where the kind has one: see TroubleKind
}

// TroubleKind says what is the matter with captions.
type TroubleKind int

// The kinds of Trouble. All but Rolling make the times a guess.
const (
	NoWords       TroubleKind = iota // nothing is said
	OtherLanguage                    // hardly a word of the plan's language; Share: of words known
	OtherVideo                       // what is said is not this plan; Share: of steps found
	Backwards                        // cues that start before the one before them
	LongCue                          // cues too long to say where in them a word is spoken
	Rolling                          // cues that repeat the line before; the repeats were taken out
)

// String names the kind in the words of a message.
func (k TroubleKind) String() string {
	return [...]string{"no words", "another language", "another video", "times that run backwards", "cues too long", "lines repeated from cue to cue"}[k]
}

// Trusted holds where chapters may be made of the match.
func (m Match) Trusted() bool {
	_, doubted := m.Doubt()
	return !doubted
}

// Doubt is the first trouble for which no chapters may be made of the match; false
// where there is none.
func (m Match) Doubt() (TroubleKind, bool) {
	for _, t := range m.Troubles {
		if t.Kind != Rolling {
			return t.Kind, true
		}
	}
	return 0, false
}

// Foreign holds where the captions are not this plan's at all, and says why.
func (m Match) Foreign() (TroubleKind, bool) {
	for _, t := range m.Troubles {
		if t.Kind <= OtherVideo {
			return t.Kind, true
		}
	}
	return 0, false
}

// Read lays the cues of a finished edit beside the plan. planned is the plan's
// own timeline, from timing.Estimate. Cost: the words heard times the steps of
// the plan.
func Read(p *plan.Plan, planned timing.Timeline, cues []captions.Cue) Match {
	return read(p, planned, cues, usualWeights())
}

func read(p *plan.Plan, planned timing.Timeline, cues []captions.Cue, w weights) Match {
	s := locate(p, planned, cues, w)
	s.takes()
	s.lines()
	s.numbers()
	s.terms(p)
	s.judge(p)
	starts := make([]float64, len(p.Steps))
	for i := range starts {
		starts[i] = -1
	}
	for _, st := range planned.Steps {
		if st.Index >= 0 && st.Index < len(starts) {
			starts[st.Index] = st.Start
		}
	}
	s.Drift = s.drift(starts)
	return *s.Match
}

// locate finds the steps.
func locate(p *plan.Plan, planned timing.Timeline, cues []captions.Cue, w weights) *settler {
	h, troubles := listen(cues)
	m := &Match{Words: h.words, Troubles: troubles, Rate: h.rate}
	for i := range p.Steps {
		m.Steps = append(m.Steps, Step{Index: i, ID: p.Steps[i].ID, Status: Missing})
	}
	for _, c := range cues {
		m.End = max(m.End, c.Start.Seconds(), c.End.Seconds()) // a broken cue ends before it starts
	}
	script := newScript(p, planned, w)
	m.Lines = script.lines
	e := newEar(script, w)
	t := h.trellis(e, len(p.Steps))
	t.pace(script, nil)
	shares := t.evenly()
	t.follow(shares)
	t.narrow()
	o := t.odds()
	before := o
	for range t.onceRuns() {
		shares = t.followed(o, shares)
		t.follow(shares)
		t.pace(script, &o)
		t.once(o)
		before = o
		o = t.odds()
		o.temper(before)
	}
	s := &settler{Match: m, h: &h, t: t, script: script, ear: e}
	s.spread(o)
	if t.live == nil && t.leaveOut(o, s.pres) {
		o = t.odds()
		o.temper(before)
		s.spread(o)
	}
	s.starts()
	s.firstTakes()
	s.beside()
	m.order()
	return s
}
