package shotlist

import (
	"cmp"
	"slices"
	"strings"
)

// walk is what a sequence has passed on its way.
type walk struct {
	bare   []int
	turns  []Turn
	again  []int
	stop   int // where the object was last brought back to
	begun  map[int]bool
	called map[string]bool
}

// pass does the steps without a shot that come before a card, and gives the
// changes of state that it comes after.
func (w *walk) pass(t *timetable, c *card) []Turn {
	if c.window.Floats || c.again {
		return nil
	}
	var turns []Turn
	for len(w.turns) > 0 && w.turns[0].before < c.window.From {
		if turn := w.turns[0]; turn.before >= t.board.now {
			turns = append(turns, turn)
		}
		w.turns = w.turns[1:]
	}
	for len(w.bare) > 0 && momentOf(w.bare[0]) < c.window.From {
		t.place(Entry{Kind: Working, Shot: -1, Step: w.bare[0], Work: t.work[w.bare[0]], Turns: turns}, 0)
		turns, w.bare = nil, w.bare[1:]
	}
	return turns
}

// firstCalls takes out the first coming of each helper: it is in nobody's way.
func (w *walk) firstCalls(changes []Change) []Change {
	return slices.DeleteFunc(changes, func(c Change) bool {
		first := c.Kind == ToHelper && !w.called[c.To]
		if first {
			w.called[c.To] = true
		}
		return first
	})
}

// returns are the states that the object is brought back to before a card.
func (w *walk) returns(b *board, c *card) []Change {
	if c.again {
		if c.window.From == w.stop {
			return nil
		}
		w.stop = c.window.From
		state := cmp.Or(b.story.stateAt(w.stop-b.story.last-1), "how it was before the work")
		return []Change{{ToState, state, b.rates[ToState]}}
	}
	var changes []Change
	for !c.window.Floats && len(w.again) > 0 && w.again[0] <= c.window.From {
		changes = append(changes, Change{ToState, b.story.begins(w.again[0]), b.rates[ToState]})
		w.again = w.again[1:]
	}
	return changes
}

// begins names the states that begin at a moment, stateAt those that hold.
func (s *story) begins(m int) string { return s.join(s.starts[m/2]) }

func (s *story) stateAt(m int) string {
	var states []string
	for _, v := range s.plan.Intervals {
		if !v.During && !slices.Contains(states, v.State) && s.lasts(v.State, m) {
			states = append(states, v.State)
		}
	}
	return s.join(states)
}

func (s *story) join(states []string) string {
	return strings.Join(s.plan.StateWords(states), ", ")
}

// findReturns finds the moments in which a state begins that the object had
// left before, and after which something is still to be filmed. The change of
// state then takes its minutes, whatever the order.
func (b *board) findReturns() {
	last := -1
	for _, c := range b.cards {
		if !c.window.Floats && !c.again {
			last = max(last, c.window.From)
		}
	}
	left := map[string]bool{}
	for i := range b.plan.Steps {
		m := momentOf(i)
		again := slices.ContainsFunc(b.story.starts[i], func(state string) bool { return left[state] })
		if again && m > b.now && m <= last {
			b.reenter = append(b.reenter, m)
		}
		for _, state := range b.story.ends[i] {
			left[state] = true
		}
	}
}

// returns are the seconds of bringing the object back, in any sequence.
func (b *board) returns(sequence []int) int {
	stops := map[int]bool{}
	for _, i := range sequence {
		if c := &b.cards[i]; c.again {
			stops[c.window.From] = true
		}
	}
	return (len(b.reenter) + len(stops)) * b.rates[ToState]
}
