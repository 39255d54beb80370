package shotlist

import "slices"

// heedHours looks for a sequence with less change-over and idle time together,
// and no more change-overs than the story has. The solver knows no clock, so its
// answer is where this starts; each exchange that helps is taken. It tries a
// bounded number, for each costs a laying.
func (t *timetable) heedHours(tidy *tidying, sequence, story []int) []int {
	t.lay(sequence)
	if t.idle == 0 {
		return sequence
	}
	best := t.board.length(sequence) + t.idle
	tries := 200_000 / max(1, len(sequence))
	now, idle := t.weigh(tidy)
	spare := t.board.length(story) - (now - idle)
	try := func(x exchange) (both, waits int, ok bool) {
		if tries--; tries < 0 {
			return 0, 0, false
		}
		tried := *tidy
		tried.sequence = slices.Clone(tidy.sequence)
		tried.apply(x)
		both, waits = t.weigh(&tried)
		return both, waits, true
	}
	tidy.exchanges(20, func(x exchange) bool {
		more := tidy.dearer(x)
		if more >= idle || more > spare {
			return false
		}
		after, waits, ok := try(x)
		if !ok || after >= now {
			return false
		}
		now, idle, spare = after, waits, spare-more
		return true
	})
	tidy.exchanges(4, func(x exchange) bool {
		if tidy.dearer(x) != 0 || !tidy.better(x) {
			return false
		}
		after, _, ok := try(x)
		return ok && after <= now
	})
	if now < best {
		return tidy.cards()
	}
	return sequence
}

// weigh is the change-over and idle time of a sequence of nodes, and the idle
// time alone.
func (t *timetable) weigh(tidy *tidying) (both, idle int) {
	s := tidy.cards()
	t.lay(s)
	return t.board.length(s) + t.idle, t.idle
}
