// Package timing says how long a plan's video will run: what is spoken, shown
// and held in each step, second by second, and how sure that is.
//
// In go a finished plan and a Pace (how this presenter talks and works); out
// comes a Timeline: steps with their beats, starts and ends in seconds, and
// the spread of the running time. A Timeline is a plain value: match fills the
// same one with real times from a finished edit. The package never reads a
// clock, never opens a file and rounds nothing: printing rounds.
package timing

// Timeline is the video laid out in time: planned by Estimate, or real.
type Timeline struct {
	Steps []Step  // in the order they are seen; a step not in the edit is absent
	End   float64 // seconds the video runs: the sum of its steps' screen times
	Real  bool    // measured in a finished edit; every Spread is then one value

	Running  Spread // the whole video, detours included, as it is uploaded
	Straight Spread // without detours: what a viewer sees who needs none
	HandsOn  Spread // hands-on time of all steps, detours included

	Versions []Version // one for each variant of the plan, in its order
}

// Version is the video as the owner of one version of the object sees it.
type Version struct {
	Variant  string // id
	Running  Spread // its steps and the common ones, detours included
	Straight Spread // the same without detours
	HandsOn  Spread
}

// Spread holds the 10, 50 and 90 % points of a length of time in seconds.
type Spread struct{ Low, Likely, High float64 }

// Exactly is the spread of a time that is known.
func Exactly(seconds float64) Spread { return Spread{seconds, seconds, seconds} }

// Step is one step in the video. Times are seconds from the video's start.
type Step struct {
	Index int    // in the plan's Steps
	ID    string // the plan's id of the step
	Start float64
	End   float64 // where the next step starts
	Begin Spread  // of Start
	Beats []Beat  // in order; the first starts at Start, the last ends at End

	Narration float64 // seconds of speech, cautions and the other side included, each line with the pause after it
	Cards     float64 // seconds cards are read
	Held      float64 // seconds meter readings are held in the picture
	Sounds    float64 // seconds the talk waits for a sound
	OnScreen  float64 // seconds the action stays in the cut as written, 0 if unset
	Screen    float64 // seconds in the video: End - Start

	HandsOn     PERT   // seconds of work off camera and on
	HandsOnFrom Origin // where HandsOn comes from

	Detour bool // only seen after an outcome of a test
}

// Beat is one thing heard or seen in a step.
type Beat struct {
	Kind    BeatKind
	Start   float64 // seconds from the video's start
	End     float64
	Rest    float64 // the pause inside End that follows the last word, 0 where nothing is spoken
	Print   string  // the words as printed; the label of a sound, the question of a test
	Speak   string  // the words as spoken, empty where nothing is
	Caution string  // id, for the lines and the card of a caution
	Test    string  // id, for a held reading
	Line    int     // index in the step's Lines for Narration and Sound, else -1
}

// Spoken holds where the beat is words in the presenter's mouth.
func (b Beat) Spoken() bool {
	return b.Kind == Caution || b.Kind == Narration || b.Kind == OtherSide
}

// BeatKind says what a beat is.
type BeatKind int

// The kinds of Beat, in the order a step has them.
const (
	Caution   BeatKind = iota // a line of a caution, spoken
	Card                      // words on the screen, read in silence
	Narration                 // a line of the step's say
	Sound                     // a sound that matters; the talk waits for it
	Reading                   // a meter's display, held
	Action                    // hands at work, for as long as on_screen outlasts the rest
	OtherSide                 // what differs on the other side, spoken last
)

// Origin says where a step's hands-on time comes from.
type Origin int

// The origins of a hands-on time.
const (
	Inferred Origin = iota // from fasteners, parts, tests and the actions in do
	Tests                  // the sum of the work of its tests
	Written                // the step's own work
)
