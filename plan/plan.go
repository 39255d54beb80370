// Package plan is the repair plan: one TOML file for one video, read into
// plain values.
//
// In goes the plan's source and a file system for the files it uses; out come
// a Plan, the Spans of everything in it, and Findings: faults with places
// (severity error) and notes. The package never opens a file, never prints,
// and never judges the repair: what a careful reader would object to is the
// linter's business.
package plan

import (
	"fixslate/plan/hazard/class"
	"fixslate/plan/trade"
)

// Plan is one video's repair plan with everything resolved: lists hold ids
// that exist, texts have their quotes filled, states have their intervals.
// It is a finished value; nothing may write to it after Decode.
type Plan struct {
	Version     int
	Use         []string
	Video       Video
	Voice       Voice
	Pace        Pace
	Publish     Publish
	Captions    Captions
	Shoot       Shoot
	Variants    []Variant
	Differs     []Differs
	Sources     []Source
	Tools       []Tool
	Parts       []Part
	Supplies    []Supply
	Fasteners   []Fastener
	Fuses       []Fuse
	Wires       []Wire
	Specs       []Spec
	Terms       []Term
	Cautions    []Caution
	Causes      []Cause
	Tests       []Test
	Claims      []Claim
	Setups      []Setup
	Steps       []Step
	Waivers     []Waiver
	Corrections []Correction

	// Intervals are the stretches of the story in which a state holds, in
	// story order.
	Intervals []Interval

	// Open are the values that are not known yet, written "?", in the order
	// of the plan.
	Open []Open

	index map[Ref][]int
}

// Open is a value that is still to be found.
type Open struct {
	Path     string
	Ref      Ref    // the thing it is a value of; zero where that has no id
	Key      string // the key that holds it
	What     string // the thing in words, as printed
	Verify   string // whom or what to ask, if said
	Variants []string
}

// Common stands in every table.
type Common struct {
	Variants []string // ids; empty: all versions
	Verify   string   // whom or what to ask before the value is used
	Note     Note     // Markdown, printed in the book
}

// Video is what the video is about.
type Video struct {
	Common
	Title    Text
	Subject  Text
	Fits     Text
	Symptom  Text
	Outcome  Text
	Audience Text
	Language string   // BCP 47, "en" if unset
	Region   string   // whose law and licensing notes; empty: the general form
	Trade    string   // "auto", "appliance" …: free words
	Present  []string // what can hurt, from class.Energies; empty: inferred
}

// Voice is how the presenter speaks.
type Voice struct {
	WPM      float64 // words a minute on ordinary prose
	Narrated string  // Live or Later
}

// How narration is recorded.
const (
	Live  = "live"  // while filming
	Later = "later" // over the cut
)

// Pace names a file of measured pace.
type Pace struct{ File string }

// Publish holds the limits of where the video goes.
type Publish struct {
	TitleMax        int      // characters
	DescriptionMax  int      // bytes
	ChaptersMin     int      // chapters
	ChapterShortest Duration // shortest chapter
	RunningMax      Duration // unset: no limit
	FPS             float64  // frames a second
	Footer          Note
	Disclosure      Note
}

// Captions choose the caption profile.
type Captions struct {
	Profile string // broadcast, wide, narrow, vertical
	Sounds  string // brackets, parentheses, capitals
}

// Shoot is the day: who, when, with what, and the filmed object.
type Shoot struct {
	Start, End  Clock
	Breaks      []Break
	People      []Person
	Gear        []string // the crew's kit, as written
	Object      Text     // what is filmed
	Has         []string // cause ids: what is wrong with it
	Tried       Date     // when the fault was last seen
	Begins      []string // states true of the filmed object before step 1
	Stays       []string // states it never leaves
	CardMinutes float64  // minutes of recording a card holds; 0: unknown
	Battery     Duration // how long a camera battery lasts; unset: unknown
	Change      Change
}

// Change is how long a change of each kind takes between two shots.
type Change struct{ Place, View, Lens, Light, State, Helper Duration }

// Break is a pause in the day.
type Break struct {
	At     Clock
	Length Duration
}

// Person is someone on the shoot.
type Person struct {
	Common
	ID          string
	Adult       bool
	From, Until Clock
	Wears       []string
}

// Variant is a version of the object that viewers may have.
type Variant struct {
	Common
	ID    string
	Name  Text
	Short Text // a word or two after a value; the name if unset
	Tell  Text // how to tell it
}

// Differs says how the filmed object differs from the viewer's.
type Differs struct {
	Common
	OnCamera Text
	Viewers  Text
	Step     string // id, or empty
}

// Source is where a fact comes from.
type Source struct {
	Common
	ID    string
	Title Text
	Where Text
	Kind  string // maker, standard, law, handbook, own-measurement
	Date  Date
	Link  string
}

// Tool is something that turns, holds or measures.
type Tool struct {
	Common
	ID        string
	Name      Text
	Drives    []trade.Drive // what it turns, read from the name if unset
	Optional  bool
	InsteadOf Text
	Why       Text
	Link      string
	Named     bool // no table of its own: it came from a step's list
}

// Part is something fitted or replaced.
type Part struct {
	Common
	ID       string
	Name     Text
	Number   string
	Count    int // 1 if unset
	Price    string
	Replaces Text
	Link     string
	Source   []string
	Named    bool
}

// Supply is something used up, or protective gear.
type Supply struct {
	Common
	ID       string
	Name     Text
	Amount   Text
	Protects string // "eyes", "hearing" …; empty: a consumable
	Named    bool
}

// Fastener is a kind of screw, bolt, nut or clip.
type Fastener struct {
	Common
	ID         string
	What       Text
	Thread     string // "M5"
	Head       string // "hex"
	Drive      string // "8 mm"
	Grade      string // property class, "8.8"
	Count      int    // 0: not said
	Torque     trade.Measure
	Reuse      bool // true if unset
	Angle      Text
	ThreadLock Text
	Source     []string
	Named      bool
}

// Fuse protects a circuit.
type Fuse struct {
	Common
	ID       string
	At       Text // where it sits: "fuse 12"
	Rating   trade.Measure
	Form     string
	Colour   string
	Protects Text
	Source   []string
	Named    bool
}

// Wire runs from somewhere to somewhere.
type Wire struct {
	Common
	ID      string
	From    []string
	To      []string
	FromPin Text
	ToPin   Text
	Colour  string
	Section trade.Measure
	Length  trade.Measure
	Source  []string
	Named   bool
}

// Spec is any other value of the object.
type Spec struct {
	Common
	ID     string
	What   Text
	Value  Value
	Source []string
}

// Term is a word of the trade: how it is spelled, said and mis-heard.
type Term struct {
	Common
	ID       string
	Text     string
	SayAs    string
	Misheard []string
}

// Caution is a caution with the author's own words, or a class's by name.
type Caution struct {
	Common
	ID         string
	Hazard     string       // class or family as written, or the id where it is one
	Class      string       // id of the hazard class; empty where only a family is named, or nothing
	Family     string       // family of hazards, "none" for notices and where none fits
	SignalWord string       // as written
	Signal     class.Signal // the author's, else the class's
	Say        Text         // what is spoken: the author's, else the class's
	Card       Text         // what the card shows: the author's, else the class's
	Text       string       // the longer words for description, book and risks sheet
	LeaveTo    Text
	Lines      []Line // Say as it is spoken
	Stock      bool   // no table of its own: the class's words
}

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

// Waiver sets a finding aside with a reason.
type Waiver struct {
	Common
	Rule  string
	At    string
	Why   string
	By    string
	Until Date
}

// Correction is something the published video got wrong.
type Correction struct {
	Common
	Date Date
	At   string
	Was  Text
	Now  Text
}

// Interval is a stretch of steps in which a state holds. During intervals have
// From == To. A state that is never ended has To = len(Steps)-1 and Open.
type Interval struct {
	State    string // canonical name
	From, To int    // step indexes, both included; From -1: true before step 1
	During   bool
	Open     bool
}
