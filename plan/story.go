package plan

import "slices"

// The story of a repair: causes, tests and steps.

// Cause is what could be wrong.
type Cause struct {
	Common
	ID    string
	What  Text
	Share Share
}

// Share is how likely a cause is.
type Share struct {
	Number float64 // 0 to 1, where Word is empty
	Word   string  // usual, sometimes, rare, or empty
}

// Test tells causes apart.
type Test struct {
	Common
	ID         string
	Question   Text
	How        Text
	Instrument []string // tool ids and senses
	Setting    Text
	At         Text
	Expect     Value
	Work       Duration
	Checks     []string // cause ids
	Clears     []string
	Blames     []string
	Pass, Fail Exit
	Readings   []Reading
	Outcomes   []Outcome
	Source     []string
}

// Reading is one of several readings of a test.
type Reading struct {
	Common
	When       Text
	At         Text
	Instrument []string
	Expect     Value
}

// Outcome is one of more than two ends of a test.
type Outcome struct {
	Common
	ID    string
	Sees  Text
	Means []string // cause ids
	Go    Exit
}

// Exit is where a test sends the viewer.
type Exit struct {
	Kind ExitKind
	ID   string // of the step or test
	Text Text   // the reason of a stop, or the advice
}

// ExitKind says what an Exit does.
type ExitKind int

// The kinds of Exit; Nowhere is an exit that was not written.
const (
	Nowhere ExitKind = iota
	ToStep
	ToTest
	Stop
	Advice
)

// Claim is an assertion of the narration and what it rests on.
type Claim struct {
	Common
	ID       string
	Text     Text
	Says     string
	Evidence []Ref // tests and sources
	Opinion  bool
}

// Setup is a place for the camera.
type Setup struct {
	Common
	ID    string
	Place Text
	View  Text
	Lens  Text
	Light Text
	Sound Text
	Named bool
}

// Step is one step of the repair, in story order.
type Step struct {
	Common
	ID        string
	Title     Text
	Chapter   ChapterMark
	Say       string // as written; Lines is what it means
	Lines     []Line
	Orders    int    // acts that the narration gives the hands, in a plan that says nowhere what is done
	Narrated  string // Live or Later; the plan's if unset
	Do        Text
	Work      Duration
	OnScreen  Duration
	Needs     []string
	Starts    []string
	During    []string
	Ends      []string
	Tools     []string
	Parts     []string
	Supplies  []string
	Fasteners []string
	Fuses     []string
	Wires     []string
	Tests     []string
	Cautions  []StepCaution
	Claims    []string
	People    []string // ids; those of its cues included
	Sides     []string
	OtherSide Text
	OtherSaid []Line // OtherSide as it is spoken at the step's end
	OnlyIf    Condition
	Opinion   bool
	Drop      []string // names of derived shots that are not wanted
	Sounds    []string
	Shots     []Shot
	Cues      []Cue
}

// HandsOn holds for a step in which something is done.
func (s *Step) HandsOn() bool { return s.Orders > 0 || s.named() }

// named holds where the step's keys say that something is done.
func (s *Step) named() bool {
	return !s.Do.Empty() || s.Work.Set || len(s.Tests)+len(s.Fasteners)+len(s.Fuses)+len(s.Wires)+len(s.Parts)+len(s.Tools) > 0
}

// Speaks holds for a step in which something is said.
func (s *Step) Speaks() bool {
	return slices.ContainsFunc(s.Lines, func(l Line) bool { return l.Kind == Spoken })
}

// ChapterMark says whether a step starts a chapter, and under which title.
type ChapterMark struct {
	Joined bool // chapter = false: part of the chapter before
	Title  Text // another title than the step's, where Source is not empty
}

// StepCaution is a caution as one step gives it.
type StepCaution struct {
	ID     string // of the plan's caution; a stock caution has the class's
	Side   string // for one side only, or empty
	Say    Text   // its own words in this step; mostly empty
	Lines  []Line // what is spoken: its own words, else the caution's
	Spoken bool   // false: it still lasts from an earlier step
	Card   bool   // the card is shown: when spoken, and again at a chapter while it lasts
	Listed bool   // the step lists it; false: only its card is shown again

	hazard string // as written in { hazard = … }
	path   string // place of the entry
}

// Condition limits a step to an outcome of a test. The zero Condition is none.
type Condition struct {
	Test    string
	Outcome string // "passes", "fails" or an outcome's id
}

// Shot is a shot of the plan's own.
type Shot struct {
	Common
	ID       string
	Size     string // wide, medium, close-up …; empty: inferred
	Of       Text
	Setup    string // id or empty
	Who      []string
	Light    Text
	Takes    int // 1 if unset
	Length   Duration
	Needs    []ShotNeed
	Kind     string // camera, screen, still, insert
	File     string
	Apart    bool
	Card     Text
	Sound    Text
	Replaces []string // ids of derived shots
}

// ShotNeed is a state a shot needs, or must not have.
type ShotNeed struct {
	State string
	Not   bool
}

// Cue is what a helper does, and when.
type Cue struct {
	Common
	Who   string // person id
	When  Text
	Does  Text
	Where Text
}
