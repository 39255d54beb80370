package align

import (
	"math"
	"testing"
)

// A first take that the sums took for talk is found by what the retake says again;
// other talk before a start is left alone.
func TestFirstTakes(t *testing.T) {
	p, timed := decodePlan(t, heaterPlan)
	for _, c := range []struct {
		name, before string
		first        bool
	}{
		{"a take", "okay brush the lint off the impeller and", true},
		{"talk", "my neighbour keeps these things for ever", false},
	} {
		s := locate(p, timed, cuesOf(
			"the heater blows cold air on every", "setting we find out whether the", "thermal link has opened",
			"+ 3", c.before, "+ 2", "sorry brush the lint off the in pillar and", "blow the duct clear from behind",
			"+ 2", "set the multimeter to ohms", "across the thermal link you want less", "than two ohms",
		), usualWeights())
		const step = 2
		first, second := 0, 0 // words
		for i, w := range s.Words {
			switch {
			case w.Cue == 3 && (first == 0 || i < first):
				first = i
			case w.Cue == 4 && second == 0:
				second = i
			}
		}
		for i := first; i < second; i++ {
			s.Words[i].Step = -1
		}
		s.Added, s.Steps[step].Start = nil, s.Words[second].Start
		s.firstTakes()
		s.beside()
		want := second
		if c.first {
			want = first
		}
		if got := s.Steps[step].Start; math.Abs(got-s.Words[want].Start) > 0.01 {
			t.Errorf("%s: starts at %.2f, want %.2f", c.name, got, s.Words[want].Start)
		}
		if talk := len(s.Added) > 0; talk == c.first {
			t.Errorf("%s: added talk %v", c.name, s.Added)
		}
	}
}
