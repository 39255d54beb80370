package shotlist

import (
	"fmt"

	"fixslate/plan"
	"fixslate/plan/timing"
)

// Call is what a day is made from.
type Call struct {
	Plan     *plan.Plan
	Timeline timing.Timeline // for the hands-on time of the steps
	Shots    []Shot
	Got      []string // ids of shots that are made already
}

// Day is the shoot in shooting order: one day, or several where it runs past
// the end. Lengths are in minutes. Estimates they are: a day is planned with
// it, not timed.
type Day struct {
	Sessions []Session // one for each day; none where nothing is left to film

	Change      float64 // of change-overs: what the order makes small
	StoryChange float64 // of change-overs if shot in story order
	Idle        float64 // of waiting for people, and of people kept beyond their hours
	Bound       float64 // no order has a smaller Change
	Optimal     bool    // proved: Change is Bound

	Setups   int       // set-ups used
	Recorded float64   // minutes of takes
	Cards    int       // memory cards filled or begun; 0 where [shoot] card_minutes is unknown
	Fresh    int       // batteries put in during the day; 0 where [shoot] battery is unknown
	Got      []int     // shots made already
	Out      []int     // shots that no camera makes on the day: stills, screens, inserts, and those made apart
	Barred   []Barred  // shots that can't be filmed
	Troubles []Trouble // with the hours
	Loose    bool      // the plan has no states, so nothing but its tests, parts and fasteners keeps an order
}

// Session is one day.
type Session struct {
	Entries []Entry
	Start   int // seconds after midnight
	Wrap    int // the end of the last entry
	Over    int // seconds beyond the day's end
}

// Entry is one thing that happens, in its turn.
type Entry struct {
	Kind    EntryKind
	Start   int // seconds after midnight, after the change-over
	End     int
	Shot    int      // index in the shots; -1 where nothing is filmed
	Step    int      // index of the step; -1 for breaks and waits
	Setup   string   // id, as the camera stands
	Assumed bool     // the shot names no set-up: the camera stays where it was
	Changes []Change // made before it
	Work    int      // seconds of hands-on work that its step takes, begun here
	Who     string   // waited for
	Rests   [][2]int // breaks that interrupt its work
	Late    int      // seconds beyond the hours of its helpers
	Card    int      // number of the card put in before it; 0: none
	Battery bool     // a fresh battery goes in before it
	Turns   []Turn   // changes of state that follow: the last chance for the shots they name
}

// EntryKind says what an Entry is.
type EntryKind int

// The kinds of Entry.
const (
	Filming EntryKind = iota
	Working           // a step that changes the object, without a shot
	Rest              // a break
	Wait              // for somebody to come
)

// ChangeSeconds is the length of the change-over before an entry.
func (e *Entry) ChangeSeconds() int { return total(e.Changes) }

// Clock prints seconds after midnight as ISO 8601-1:2019 writes a time of day
// to the minute, "09:40"; the seconds are cut off.
func Clock(seconds int) string { return fmt.Sprintf("%02d:%02d", seconds/3600%24, seconds/60%60) }

// Filmed counts the shots of the day.
func (d *Day) Filmed() int {
	n := 0
	for i := range d.Sessions {
		for _, e := range d.Sessions[i].Entries {
			if e.Kind == Filming {
				n++
			}
		}
	}
	return n
}
