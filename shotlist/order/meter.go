package order

import (
	"context"
	"time"
)

// A meter measures the work done against the budget.
type meter struct {
	ctx    context.Context
	now    func() time.Duration // since the start
	length time.Duration        // 0: count rounds
	rounds int
	seed   uint64
	done   int // rounds
	// The stage at hand, in time or in rounds.
	from, to time.Duration
	first    int
	last     int
}

// defaultRounds lets a day of 40 shots take some 10 ms.
const defaultRounds = 2500

func newMeter(ctx context.Context, b Budget) *meter {
	m := &meter{ctx: ctx, rounds: min(b.Rounds, 1<<40), seed: b.Seed}
	if b.Seconds > 0 {
		start := time.Now()
		m.now = func() time.Duration { return time.Since(start) }
		m.length = max(1, time.Duration(min(b.Seconds, 1e9)*float64(time.Second)))
	} else if m.rounds <= 0 {
		m.rounds = defaultRounds
	}
	m.stage(1)
	return m
}

// stage begins a part of the work that may use up a share of the whole budget,
// or all that is left of it.
func (m *meter) stage(share float64) {
	if m.length > 0 {
		m.from = m.now()
		m.to = min(m.length, m.from+time.Duration(share*float64(m.length)))
	}
	m.first, m.last = m.done, min(m.rounds, m.done+int(share*float64(m.rounds)))
}

// over reports whether the stage must end for a reason outside the search.
func (m *meter) over() bool {
	return m.ctx.Err() != nil || m.length > 0 && m.now() >= m.to
}

// turn is the number of rounds between two looks at the meter.
const turn = 16

// progress counts a turn of rounds and gives the share of the stage used up
// before it, 1 when the stage must end.
func (m *meter) progress() float64 {
	used := 1.0
	if m.length > 0 {
		if now := m.now(); now < m.to {
			used = float64(now-m.from) / float64(m.to-m.from)
		}
	} else if m.done < m.last {
		used = float64(m.done-m.first) / float64(m.last-m.first)
	}
	if m.ctx.Err() != nil {
		return 1
	}
	if used < 1 {
		m.done += turn
	}
	return used
}

// steps is how many steps of a bound may be taken that look at arcs arcs each;
// the clock may end them earlier.
func (m *meter) steps(arcs int) int {
	const most = 200
	if m.length > 0 {
		// A step that takes a large part of the time by itself is not begun;
		// 10^8 arcs to the second is on the safe side.
		if float64(arcs) > 0.05*1e8*m.length.Seconds() {
			return 0
		}
		return most
	}
	if n := m.rounds * 400 / max(1, arcs); n > 0 || arcs > 4_000_000 {
		return min(most, n)
	}
	return 1
}

// states is how many states the exact part may make: at 64 bytes or so to the
// state, half a gigabyte; with a budget of rounds, in step with them.
func (m *meter) states() int {
	const most = 6_000_000
	if m.length > 0 {
		return most
	}
	return min(most, 16*m.rounds)
}

// scans is how many entries the assignment may look at.
func (m *meter) scans() int {
	if m.length > 0 {
		return 1 << 62
	}
	return max(m.rounds*10_000, 300_000_000)
}
