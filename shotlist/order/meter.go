package order

import (
	"context"
	"time"
)

// A meter measures the work done against the budget.
type meter struct {
	ctx    context.Context
	start  time.Time
	length time.Duration // 0: count rounds
	rounds int
	done   int
	seed   uint64
}

// defaultRounds keeps a day of 40 shots well under 20 ms.
const defaultRounds = 5000

func newMeter(ctx context.Context, b Budget) *meter {
	m := &meter{ctx: ctx, rounds: b.Rounds, seed: b.Seed}
	if b.Seconds > 0 {
		m.start = time.Now()
		m.length = max(1, time.Duration(min(b.Seconds, 1e9)*float64(time.Second)))
	} else if m.rounds <= 0 {
		m.rounds = defaultRounds
	}
	return m
}

// over reports whether work must end now.
func (m *meter) over() bool {
	return m.ctx.Err() != nil || m.length > 0 && time.Since(m.start) >= m.length
}

// progress is the share of the budget used up, 1 when work must end.
func (m *meter) progress() float64 {
	if m.ctx.Err() != nil {
		return 1
	}
	if m.length > 0 {
		return min(1, float64(time.Since(m.start))/float64(m.length))
	}
	m.done += 64
	return min(1, float64(m.done)/float64(m.rounds))
}
