package shotlist

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/prose"
)

// verdict says how good the order is known to be.
func (d *Day) verdict() string {
	if d.Optimal {
		return "proved best"
	}
	words := fmt.Sprintf("at most %s above the best", prose.Minutes(d.Change-d.Bound))
	if d.Idle > 0 {
		words += ", which may wait longer"
	}
	return words
}

// Summary says in a few sentences what the day is.
func (d *Day) Summary() []string {
	n := d.Filmed()
	if n == 0 {
		if len(d.Got) > 0 {
			return []string{"Every shot of the day is in the can."}
		}
		return []string{"No shot needs the camera on the day."}
	}
	var days []string
	for _, s := range d.Sessions {
		days = append(days, fmt.Sprintf("%s to wrap at %s", Clock(s.Start), Clock(s.Wrap)))
	}
	what := prose.Counted(n, "shot")
	if d.Setups > 0 {
		what += " from " + prose.Counted(d.Setups, "set-up")
	}
	lines := []string{strings.Join(days, ", then ") + ": " + what + "."}
	switch {
	case len(days) > 3:
		lines[0] = fmt.Sprintf("%d days from %s, the last to wrap at %s: %s.", len(days), Clock(d.Sessions[0].Start), Clock(d.Sessions[len(days)-1].Wrap), what)
	case len(days) > 1:
		lines[0] = fmt.Sprintf("%d days, %s", len(days), lines[0])
	}
	lines = append(lines, d.changes(), d.supplies())
	if d.Idle > 0 {
		lines = append(lines, fmt.Sprintf("%s of waiting, and of helpers kept beyond their hours: move their hours, or start at another time.", prose.Minutes(d.Idle)))
	}
	for i, s := range d.Sessions {
		if s.Over > 0 {
			lines = append(lines, fmt.Sprintf("Day %d runs %s over its end: its first shot is longer than the day.", i+1, prose.Minutes(float64(s.Over)/60)))
		}
	}
	if d.works() {
		lines = append(lines, "The work of a step stands at its first shot; its other shots are made as the work comes to them.")
	}
	if len(d.Got) > 0 {
		lines = append(lines, fmt.Sprintf("%s in the can already.", prose.Counted(len(d.Got), "shot")))
	}
	if d.Loose && len(d.Sessions) > 0 {
		lines = append(lines, "The plan names no states, so hardly anything keeps an order: say in starts and ends what can't be filmed again.")
	}
	return lines
}

// works holds where a step's work stands beside one shot and others follow.
func (d *Day) works() bool {
	for _, s := range d.Sessions {
		for i, e := range s.Entries {
			follows := func(o Entry) bool { return o.Kind == Filming && o.Step == e.Step }
			if e.Kind == Filming && e.Work >= 60 && slices.ContainsFunc(s.Entries[i+1:], follows) {
				return true
			}
		}
	}
	return false
}

func (d *Day) changes() string {
	if d.Change == 0 && d.StoryChange == 0 {
		return "No change-overs."
	}
	against := "as in story order"
	if saved := d.StoryChange - d.Change; saved >= 0.5 {
		against = prose.Minutes(saved) + " less than in story order"
	}
	return fmt.Sprintf("Change-overs %s, %s; %s.", prose.Minutes(d.Change), against, d.verdict())
}

func (d *Day) supplies() string {
	words := fmt.Sprintf("About %s of takes", prose.Minutes(d.Recorded))
	if d.Cards > 0 {
		words += ", " + prose.Counted(d.Cards, "memory card")
	}
	if d.Fresh > 0 {
		words += ", the camera's battery changed " + times(d.Fresh)
	}
	return words + "."
}

func times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}

// Words says what a change of state brings: "from here on unplugged, water-off".
func (t *Turn) Words(p *plan.Plan) string {
	var parts []string
	say := func(how string, states []string) {
		if len(states) > 0 {
			parts = append(parts, how+strings.Join(p.StateWords(states), ", "))
		}
	}
	say("from here on ", t.Starts)
	say("no longer ", t.Ends)
	return strings.Join(parts, "; ")
}

// Words says what changes: "place, light", with the state or person named.
func (e *Entry) Words() string {
	var words []string
	for _, c := range e.Changes {
		switch c.Kind {
		case ToState:
			words = append(words, "bringing it back to "+c.To)
		case ToHelper:
			words = append(words, "calling "+c.To+" back")
		default:
			words = append(words, c.Kind.String())
		}
	}
	return strings.Join(words, ", ")
}

// Turning parts the states of a shot of its step's own action, as the plan
// calls them: those that hold all through it, those that it brings about, and
// those that it ends. Other shots are made while all of theirs hold.
func (s *Shot) Turning(p *plan.Plan) (hold, begin, end []string) {
	step := &p.Steps[s.Step]
	for _, state := range s.States(p) {
		word := p.StateWord(state)
		is := func(written string) bool { return written == word || written == state }
		switch {
		case s.Bound == ByStep && slices.ContainsFunc(step.Ends, is):
			end = append(end, word)
		case s.Bound == ByStep && slices.ContainsFunc(step.Starts, is):
			begin = append(begin, word)
		default:
			hold = append(hold, word)
		}
	}
	return hold, begin, end
}
