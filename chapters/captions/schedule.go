package captions

// slot is a cue's place in time while it is being found. Milliseconds.
type slot struct {
	start, end int64 // of the speech; then of the cue
	need       int64 // least time to read it
	wish       int64 // time wished for it, at least need
}

// schedule turns the times of speech into the times of cues.
//
// A cue starts with its first word, unless words come faster than they can be
// read: then it starts earlier or later. Problem: starts as near to the speech
// as can be (least squares), each cue at least its time and the gap before the
// next. With the times so far taken off, that is isotonic regression, and
// pooling adjacent violators solves it in linear time (Ayer et al., 1955).
// Starts move by at most the profile's Shift; where that is not enough, cues
// stay shorter than they need.
//
// The wished times are tried first, stretch by stretch; where they would move a
// cue too far, the needed ones are taken.
func schedule(slots []slot, p Profile) {
	speech := make([]slot, len(slots))
	copy(speech, slots)
	starts := settle(speech, p, func(s slot) int64 { return s.wish })
	limit := p.Shift.Milliseconds()
	needed := settle(speech, p, func(s slot) int64 { return s.need })
	for i := 0; i < len(starts); {
		// A stretch runs until a cue that starts with its speech either way.
		j, far := i, false
		for ; j < len(starts); j++ {
			if j > i && starts[j] == speech[j].start && needed[j] == speech[j].start {
				break
			}
			far = far || abs(starts[j]-speech[j].start) > limit
		}
		if far {
			copy(starts[i:j], needed[i:j])
		}
		i = j
	}
	for i := range slots {
		at := min(max(starts[i], speech[i].start-limit), speech[i].start+limit)
		slots[i].start = max(at, 0)
	}
	finish(slots, speech, p)
}

// settle moves the starts apart by each slot's time and the gap.
func settle(speech []slot, p Profile, time func(slot) int64) []int64 {
	type pool struct{ sum, count, first int64 }
	var pools []pool
	gap := p.Gap.Milliseconds()
	offset := int64(0)
	for i, s := range speech {
		next := pool{s.start - offset, 1, int64(i)}
		for len(pools) > 0 {
			last := pools[len(pools)-1]
			// mean of last > mean of next
			if floorDiv(last.sum, last.count) <= floorDiv(next.sum, next.count) {
				break
			}
			next = pool{last.sum + next.sum, last.count + next.count, last.first}
			pools = pools[:len(pools)-1]
		}
		pools = append(pools, next)
		offset += time(s) + gap
	}
	starts := make([]int64, len(speech))
	offset = 0
	for n, i := 0, 0; i < len(speech); i++ {
		if n+1 < len(pools) && int64(i) == pools[n+1].first {
			n++
		}
		// No video starts before 0; clipping the pools keeps them optimal.
		starts[i] = max(floorDiv(pools[n].sum, pools[n].count), 0) + offset
		offset += time(speech[i]) + gap
	}
	return starts
}

// finish finds the ends, and makes sure that no two cues overlap even where
// there is no room at all.
func finish(slots, speech []slot, p Profile) {
	gap, linger := p.Gap.Milliseconds(), p.Linger.Milliseconds()
	for i := range slots {
		s := &slots[i]
		end := max(speech[i].end, s.start+s.need)
		end = max(end, min(s.start+s.wish, speech[i].end+linger))
		if i+1 < len(slots) {
			next := slots[i+1].start - gap
			if next-end < p.Pause.Milliseconds()-gap && next <= max(speech[i].end+linger, end) {
				end = next
			}
			end = min(end, next)
		}
		if most := p.Longest.Milliseconds(); most > 0 {
			end = min(end, s.start+max(most, s.need))
		}
		s.end = max(end, s.start+1)
		if i+1 < len(slots) {
			slots[i+1].start = max(slots[i+1].start, s.end)
		}
	}
}

func floorDiv(a, b int64) int64 {
	q := a / b
	if a%b != 0 && (a < 0) != (b < 0) {
		q--
	}
	return q
}

func abs(n int64) int64 {
	if n < 0 {
		return -n
	}
	return n
}
