// Package shotlist turns a repair plan into the shots that its video needs.
//
// In goes a plan.Plan; out come Shots in story order: those that the plan
// writes and those that its steps call for, what each of them is there to show,
// what is left unshown, and the Day: the order and the clock in which they are
// filmed. The package decides nothing about the cut, knows no camera and reads
// no clock.
package shotlist

import (
	"regexp"
	"strings"
	"sync"

	"fixslate/plan"
	"fixslate/plan/hazard/class"
)

// Shot is one picture to be made.
type Shot struct {
	ID        string // unique in the plan: the step's id, a hyphen, and the name of the shot
	Number    int    // from 1, in story order
	Step      int    // index of the step it belongs to
	Size      string // wide, medium, close-up, overhead, over-the-shoulder, point-of-view; empty for what no camera makes
	Of        string // what is in frame
	Setup     string // id of the set-up, empty where the plan names none
	Light     string
	Sound     string
	Who       []string // ids of people
	Needs     []string // canonical states of its own in which it is made; States has those of its step, too
	Without   []string // states that must not hold
	Takes     int
	Seconds   float64 // length of one take
	Kind      string  // camera, screen, still, insert
	File      string  // of a still or insert
	Card      string  // words shown over it
	Apart     bool    // made on another day or at another place
	Suggested bool    // called for by the step, not written in the plan
	Covers    []Cover // what it is there to show
	Variants  []string
	Bound     Bound // what decides when it can be made
	Index     int   // in the step's own Shots; -1 where suggested
}

// onTheDay holds for a shot that the camera makes on the day.
func (s *Shot) onTheDay() bool { return s.Kind == Camera && !s.Apart }

// Bound says what decides when a shot can be made.
type Bound int

// What binds a shot.
const (
	ByStep  Bound = iota // the states of its step
	ByNeeds              // needs of its own
	Free                 // nothing: somebody talks to the camera, or needs = [] is written
	Before               // the states that its step finds: it shows what the step then takes away
)

// Cover is something that a shot shows.
type Cover struct {
	Why Why
	Ref plan.Ref // the fact, test, part or caution; zero for places and the plan's own shots
}

// Why says what a shot is for.
type Why int

// What shots are for.
const (
	Asked       Why = iota // the plan writes it
	Place                  // where we are
	Presenter              // somebody talks to the camera
	Detail                 // a fastener, fuse or wire
	Reading                // the display, or what is seen and heard
	Orientation            // how a part sits before it comes off
	Fitted                 // how it sits when it is back
	CautionCard            // the words of a caution
	OtherSide              // what differs on the other side
	Value                  // any other value of the object
	Version                // what one version looks like
)

// String is the reason in a camera operator's words.
func (w Why) String() string {
	return [...]string{"asked for", "where we are", "talks to camera", "detail", "reading", "before it comes off", "fitted", "caution", "other side", "value", "version"}[w]
}

// Who makes a shot.
const (
	Camera = "camera"
	Screen = "screen"
	Still  = "still"
	Insert = "insert"
)

// FromPlan lists the shots of a plan in story order. Suggested shots are left
// out where the step drops them, where one of its own shots replaces them, and
// where one of its own shots plainly shows the same thing.
func FromPlan(p *plan.Plan) []Shot {
	var shots []Shot
	for _, d := range derived(p, func(*plan.Step) bool { return true }) {
		shots = append(append(shots, d.shots...), d.own...)
	}
	for i := range shots {
		shots[i].Number = i + 1
		shots[i].Apart = shots[i].Apart || shots[i].Kind == Camera && !onObject(p, shots[i].Variants)
	}
	tellApart(shots)
	return shots
}

// onObject holds for what is there on the filmed object: what is of another
// version only is filmed on another object.
func onObject(p *plan.Plan, variants []string) bool { return plan.Meets(p.Shoot.Variants, variants) }

// tellApart makes ids unique: a fuse and a wire may have one id, a test stands
// once for each version, and "a" with "b-c" reads as "a-b" with "c". What the
// plan writes is left alone where it can be.
func tellApart(shots []Shot) {
	taken := map[string]bool{}
	for _, suggested := range []bool{false, true} {
		for i := range shots {
			if s := &shots[i]; s.Suggested == suggested {
				s.ID = plan.Unused(s.ID, taken)
				taken[s.ID] = true
			}
		}
	}
}

// dropped are the shots that the steps call for and drop.
func dropped(p *plan.Plan) []Shot {
	var drops []Shot
	for _, d := range derived(p, func(s *plan.Step) bool { return len(s.Drop) > 0 }) {
		drops = append(drops, d.drops...)
	}
	return drops
}

// ownShots are the shots that a step writes.
func ownShots(p *plan.Plan, step int) []Shot {
	s := &p.Steps[step]
	var shots []Shot
	for i := range s.Shots {
		w := &s.Shots[i]
		shot := Shot{
			ID: qualified(s.ID, w.ID), Step: step, Size: w.Size, Of: w.Of.Print,
			Setup: w.Setup, Light: w.Light.Print, Sound: w.Sound.Print, Who: w.Who,
			Takes: w.Takes, Seconds: w.Length.Seconds(), Kind: w.Kind, File: w.File,
			Card: w.Card.Print, Apart: w.Apart, Covers: []Cover{{Why: Asked}},
			Variants: narrower(w.Variants, s.Variants), Index: i,
		}
		if shot.Kind == "" {
			shot.Kind = Camera
		}
		if shot.Size == "" && shot.Kind == Camera {
			shot.Size = inferSize(w.Of.Print)
		}
		if shot.Of == "" {
			shot.Of = s.Title.Print
		}
		if len(shot.Who) == 0 && shot.onTheDay() {
			shot.Who = s.People
		}
		if shot.Seconds == 0 {
			shot.Seconds = takeSeconds(shot.Size, shot.Kind)
		}
		for _, q := range w.Of.Quotes {
			shot.show(Cover{whyOf(q.Ref.Kind), q.Ref})
		}
		bind(&shot, w, p)
		shots = append(shots, finish(p, shot))
	}
	return shots
}

// toCamera finds a frame in which somebody talks to the camera.
var toCamera = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(presenter|talks?|talking|speaks?|speaking)\b.*\bto (the )?camera\b`)
})

// bind says in which states a shot of the plan's own is made.
func bind(shot *Shot, w *plan.Shot, p *plan.Plan) {
	for _, n := range w.Needs {
		if n.Not {
			shot.Without = append(shot.Without, class.CanonicalState(n.State))
		} else {
			shot.Needs = append(shot.Needs, class.CanonicalState(n.State))
		}
	}
	switch {
	case len(w.Needs) > 0:
		shot.Bound = ByNeeds
	case w.Needs != nil || !shot.onTheDay():
		shot.Bound = Free
	case !p.Steps[shot.Step].HandsOn() && strings.Contains(strings.ToLower(shot.Of), "camera") && toCamera().MatchString(shot.Of):
		shot.Bound = Free
		shot.show(Cover{Why: Presenter})
	}
}

// finish fills in what a set-up says about light and sound.
func finish(p *plan.Plan, s Shot) Shot {
	if setups := p.Setup(s.Setup); len(setups) > 0 {
		if s.Light == "" {
			s.Light = setups[0].Light.Print
		}
		if s.Sound == "" {
			s.Sound = setups[0].Sound.Print
		}
	}
	return s
}

// qualified makes a shot's id unique in the plan.
func qualified(step, id string) string {
	if len(id) > len(step) && id[:len(step)] == step && id[len(step)] == '-' {
		return id
	}
	return step + "-" + id
}

// narrower is a list of its own where there is one, else that of what it is in.
func narrower(own, around []string) []string {
	if len(own) > 0 {
		return own
	}
	return around
}

// States are the canonical states that hold while a shot is made, in the order
// in which they began: its own needs, or what its step has or finds. They are
// looked up and not kept, for in a plan of many states at once there are more of
// them than of all else.
func (s *Shot) States(p *plan.Plan) []string {
	switch s.Bound {
	case ByStep:
		return statesAt(p, s.Step)
	case Before:
		return statesBefore(p, s.Step)
	}
	return s.Needs
}

// statesBefore are the states that a step finds.
func statesBefore(p *plan.Plan, step int) []string {
	var found []string
	for _, v := range p.In(step) {
		if !v.During && v.From < step {
			found = append(found, v.State)
		}
	}
	return found
}

// statesAt are the states that hold at some moment of a step, each once.
func statesAt(p *plan.Plan, step int) []string {
	var states []string
	seen := map[string]bool{}
	for _, v := range p.In(step) {
		if !seen[v.State] {
			states, seen[v.State] = append(states, v.State), true
		}
	}
	return states
}

// started are the states that a step starts.
func started(p *plan.Plan, step int) []string {
	var states []string
	for _, v := range p.Begun(step) {
		if !v.During {
			states = append(states, v.State)
		}
	}
	return states
}

func whyOf(kind plan.Kind) Why {
	switch kind {
	case plan.KindFastener, plan.KindFuse, plan.KindWire:
		return Detail
	case plan.KindTest, plan.KindSpec:
		return Reading
	case plan.KindPart:
		return Orientation
	}
	return Asked
}
