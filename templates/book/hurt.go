package book

import (
	"slices"

	"fixslate/plan/hazard"
	"fixslate/plan/hazard/class"
)

// hurt is a hazard that a step's words show.
type hurt struct {
	Signal, Name, Shown string
	Told                bool // the viewer is told in time, or it is a notice
}

// hurts are a step's hazards, the gravest first, each class once.
func hurts(s *hazard.Step) []hurt {
	found := slices.Clone(s.Hazards)
	slices.SortStableFunc(found, func(a, b hazard.Hazard) int { return int(b.Signal) - int(a.Signal) })
	var out []hurt
	for _, h := range found {
		c, ok := class.Find(h.Class)
		if !ok || slices.ContainsFunc(out, func(o hurt) bool { return o.Name == c.Name }) {
			continue
		}
		out = append(out, hurt{h.Signal.String(), c.Name, h.Shown(), h.Covered() || h.Family == class.NoFamily})
	}
	return out
}
