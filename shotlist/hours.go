package shotlist

import "fixslate/plan"

// A day without an end goes on to midnight; one that begins in the evening goes
// past it, for a working day's eight hours (common practice, no source). In
// seconds.
const (
	midnight = 24 * 3600
	evening  = 8 * 3600
)

// hours are when a day starts and ends, in seconds after midnight.
type hours struct {
	start, end int
	open       bool // no end is written, or none that can be meant
}

func hoursOf(s *plan.Shoot) hours {
	h := hours{start: s.Start.Minutes * 60, end: s.End.Minutes * 60}
	if !s.End.Set || h.end <= h.start {
		h.end, h.open = max(midnight, h.start+evening), true
	}
	return h
}

// presence is when a person is there, in seconds after midnight, as written.
func presence(p *plan.Person, day hours) (from, until int) {
	from, until = day.start, day.end
	if p.From.Set {
		from = p.From.Minutes * 60
	}
	if p.Until.Set {
		until = p.Until.Minutes * 60
	}
	return from, until
}

// Presence is when a person counts as there, in seconds after midnight: as
// written, or all day where that can't be meant (see Hours).
func Presence(s *plan.Shoot, p *plan.Person) (from, until int) {
	day := hoursOf(s)
	from, until = presence(p, day)
	if from >= until || from >= day.end || until <= day.start {
		return day.start, day.end
	}
	return from, until
}
