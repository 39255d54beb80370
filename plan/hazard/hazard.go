// Package hazard reads what can hurt in each step of a plan, and how the plan's
// cautions stand to it.
//
// In goes a decoded Plan; out comes a Reading: for each step the hazards with
// the words or states that show them, their signal, and whether a caution was
// spoken before. Two readers work together. A lexicon of things, actions and
// places with what is true of them, and of the relations that make a hazard
// (files in lexicon/), says what it can say for certain. Odds learned from
// thousands of labelled steps (package odds, testdata/steps.tsv) weigh the same
// words, marks and findings where no rule reaches, and doubt a rule's finding
// that they hold for unlikely. The package never says that a plan is safe: it
// finds what its words and odds know, in English, and silence means only that.
package hazard

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/hazard/class"
	"fixslate/plan/hazard/odds"
)

// Reading is what was found in a plan: one Step for each of its steps, in
// story order.
type Reading struct {
	Steps []Step
}

// Step is what was found in one step. Both lists stand in catalogue order.
type Step struct {
	ID    string
	Title string
	// Hazards are shown by an action: the step's do, tests, fasteners, a tool in
	// use, a state it is done in, or what its narration does.
	Hazards []Hazard
	// Mentions are shown by talk, pictures or names only: worth a note at most.
	Mentions []Hazard
}

// all calls for each hazard of both lists.
func (s *Step) all(yield func(*Hazard) bool) {
	for _, list := range [...][]Hazard{s.Hazards, s.Mentions} {
		for i := range list {
			if !yield(&list[i]) {
				return
			}
		}
	}
}

// Hazard is a class of hazard in a step.
type Hazard struct {
	Class    string       // id
	Family   string       // id, class.NoFamily for notices
	Signal   class.Signal // of the class, or the stronger one where its condition is met
	Evidence []Evidence   // what shows it, at least one
	Odds     float32      // of the step's signs together, 0 to 1, where no rule shows it; else 0
	Answered []string     // states in force that answer it: "power-off"
	Cover    Cover        // how the plan's cautions stand to it
	Caution  string       // id of the caution that Cover speaks of; empty where it is none
}

// Covered says whether the viewer is told in time.
func (h Hazard) Covered() bool { return h.Cover >= Carded }

// Shown is the evidence in one line: "do: undo, back panel; tool: meter". The
// kinds stand in the order of their first evidence, and no words twice in one:
// a state that two things of a step name is one state.
func (h Hazard) Shown() string {
	var kinds []string
	words := map[string][]string{}
	for _, e := range h.Evidence {
		if words[e.Kind] == nil {
			kinds = append(kinds, e.Kind)
		}
		if !slices.Contains(words[e.Kind], e.Words) {
			words[e.Kind] = append(words[e.Kind], e.Words)
		}
	}
	var b strings.Builder
	for i, kind := range kinds {
		if i > 0 {
			b.WriteString("; ")
		}
		b.WriteString(kind + ": " + strings.Join(words[kind], ", "))
	}
	if h.Suspected() { // no odds are 1.0
		fmt.Fprintf(&b, "; odds %.1f", math.Floor(float64(h.Odds)*10)/10)
	}
	return b.String()
}

// Suspected holds for a hazard that no rule shows, only the odds.
func (h *Hazard) Suspected() bool { return h.Odds > 0 }

// Perhaps holds for a suspected hazard that is reason to look and no more: of
// steps with odds beyond sure nearly all were labelled with it, more than of those
// in which rules show one; what can only bruise stays a suspicion.
func (h *Hazard) Perhaps() bool {
	return h.Suspected() && (h.Odds < sure || h.Signal < class.Warning)
}

// sure is the least odds that need no rule beside them.
const sure = 0.9

// Cover is how the plan's cautions stand to a hazard, the best first from the
// end. What counts is a caution of the hazard's class, or of its family.
type Cover int

// The ways to stand.
const (
	Missing Cover = iota // no caution, no avoidance
	Late                 // only after the action or over it
	Stale                // spoken once, but its state was left and entered again
	Carded               // on a card before the action, not spoken
	Said                 // the narration itself says before the action how to avoid it
	Spoken               // a caution of the plan, spoken before the action and still lasting
)

// String is the cover in a word or two.
func (c Cover) String() string {
	return [...]string{"missing", "too late", "worn off", "on a card", "in the narration", "spoken"}[c]
}

// Evidence is a place in the plan that helps to show a hazard.
type Evidence struct {
	Kind  string // "say", "do", "title", "test", "tool", "fastener", "subject", "state" …
	Words string // as printed
	Path  string // of the key: "step[2].say"
	// Start and End are bytes of the decoded text at Path; both 0 where the
	// whole value is meant.
	Start, End int
}

// Read finds the hazards of every step. Time is linear in the plan's text.
func Read(p *plan.Plan) Reading {
	room := rooms.Get().(*room)
	defer room.free()
	r := &reader{plan: p, lex: compiled(), net: odds.Learned(), room: room}
	r.prepare()
	reading := Reading{Steps: make([]Step, len(p.Steps))}
	told := make([]advice, len(p.Steps))
	for i := range p.Steps {
		reading.Steps[i] = r.step(i)
		told[i] = advice{r.avoided, r.powered}
	}
	cover(p, reading.Steps)
	heeded(p, reading.Steps, told)
	return reading
}
