// Package plan is the repair plan: one TOML file for one video, read into
// plain values.
//
// In goes the plan's source and a file system for the files it uses; out come
// a Plan, the Spans of everything in it, and Findings: faults with places
// (severity error) and notes. The package never opens a file, never prints,
// and never judges the repair: what a careful reader would object to is the
// linter's business.
package plan

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

	// Presenter is the id of who presents and is there all day: the person called
	// so, else the first who takes no cue, for cues are a helper's.
	Presenter string

	// Intervals are the stretches of the story in which a state holds, in
	// story order.
	Intervals []Interval

	// Open are the values that are not known yet, written "?", in the order
	// of the plan.
	Open []Open

	index      map[Ref][]int
	derived    map[Ref]bool // ids that nobody wrote: taken from a title or name
	stateWords map[string]string
	reaches    []int            // by stretches of Intervals, see there
	ofState    map[string][]int // the Intervals of each state
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

	Spare bool // a tool, part, supply, caution or source of a used file that nothing in this plan takes: on no list
	used  bool // from a used file
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
	Common
	WPM      float64 // words a minute on ordinary prose
	Narrated string  // Live or Later
}

// How narration is recorded.
const (
	Live  = "live"  // while filming
	Later = "later" // over the cut
)

// Pace names a file of measured pace.
type Pace struct {
	Common
	File string
}

// Publish holds the limits of where the video goes.
type Publish struct {
	Common
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
	Common
	Profile string // broadcast, wide, narrow, vertical
	Sounds  string // brackets, parentheses, capitals
}

// Shoot is the day: who, when, with what, and the filmed object. Its Variants
// are the versions that are filmed.
type Shoot struct {
	Common
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
type Change struct {
	Common
	Place, View, Lens, Light, State, Helper Duration
}

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
