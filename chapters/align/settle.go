package align

import (
	"cmp"
	"slices"
)

// How the chances of the model become steps. Lengths are in seconds.
const (
	nearTime = 2.0 // starts as near as this count as one
)

// settler turns a path and its chances into a Match.
type settler struct {
	*Match
	h      *heard
	t      *trellis
	states []state
	odds   odds
	visits []visit
}

// starts says of each step whether it is said, and where it starts.
func (s *settler) starts() {
	for i := range s.Steps {
		st := &s.Steps[i]
		at, near, all := s.begin(s.odds.entries[i])
		said := min(1, all)
		if said < s.t.w.said {
			st.Confidence = 1 - said
			continue
		}
		st.Status, st.Start, st.Confidence = Found, s.startOf(at), min(1, near)
		st.End = st.Start
		for _, v := range s.visits {
			if v.step == i && v.last >= at {
				first := max(v.first, at)
				if len(st.Takes) == 0 {
					first = at
				}
				st.Takes = append(st.Takes, Take{s.startOf(first), s.h.words[v.last].End})
			}
		}
		if len(st.Takes) == 0 {
			st.Takes = []Take{{st.Start, s.h.words[at].End}}
		}
		st.End = st.Takes[0].End
	}
}

// begin chooses where a step begins: the earliest place that is nearly as
// likely as the likeliest. near is the chance of all places within two seconds
// of it, all that of all places.
func (s *settler) begin(entries []entry) (at int, near, all float64) {
	time := func(k int) float64 { return s.h.words[entries[k].word].Start }
	best := 0.0
	mass := make([]float64, len(entries))
	from, to, sum := 0, 0, 0.0
	for k := range entries {
		for to < len(entries) && time(to) <= time(k)+nearTime {
			sum += entries[to].chance
			to++
		}
		for time(from) < time(k)-nearTime {
			sum -= entries[from].chance
			from++
		}
		mass[k] = sum
		best = max(best, sum)
		all += entries[k].chance
	}
	at = -1
	for k := range entries {
		if mass[k] < s.t.w.early*best {
			continue
		}
		if at >= 0 && time(k) > time(at)+nearTime {
			break
		}
		if at < 0 || entries[k].chance > entries[at].chance {
			at, near = k, mass[k]
		}
	}
	if at < 0 {
		return 0, 0, 0
	}
	return entries[at].word, near, all
}

// startOf is when a word starts that follows a halt: where its cue is longer
// than its words take, the silence stood before it.
func (s *settler) startOf(i int) float64 {
	w := s.h.words[i]
	if s.h.slack[i] < 0.25 {
		return w.Start
	}
	chars, end := 0, w.End
	for k := i; k < len(s.h.words) && s.h.words[k].Cue == w.Cue; k++ {
		chars += s.h.words[k].Span.End - s.h.words[k].Span.Start + 1
		end = s.h.words[k].End
	}
	return max(w.Start, min(end, end-float64(chars)/s.h.rate))
}

// order marks the steps that are out of the plan's order: the fewest whose
// leaving puts the others in order, by the longest rising row of starts
// (Schensted 1961).
func (m *Match) order() {
	var found []int
	for i, s := range m.Steps {
		if s.Status != Missing {
			found = append(found, i)
		}
	}
	var tails, before = []int{}, make([]int, len(m.Steps))
	for _, i := range found {
		k, _ := slices.BinarySearchFunc(tails, m.Steps[i].Start, func(j int, start float64) int { return cmp.Compare(m.Steps[j].Start, start) })
		before[i] = -1
		if k > 0 {
			before[i] = tails[k-1]
		}
		if k == len(tails) {
			tails = append(tails, i)
		} else {
			tails[k] = i
		}
	}
	for _, i := range found {
		m.Steps[i].Status = Moved
	}
	if len(tails) > 0 {
		for i := tails[len(tails)-1]; i >= 0; i = before[i] {
			m.Steps[i].Status = Found
		}
	}
}

// beside gathers the talk that belongs to no step.
func (s *settler) beside() {
	for i := range s.Words {
		s.Words[i].Step = -1
		if st := s.states[i]; st.step >= 0 && s.odds.added[i] < 0.5 {
			s.Words[i].Step = st.step
		}
	}
	for i, w := range s.Words {
		if w.Step >= 0 {
			continue
		}
		if n := len(s.Added); n > 0 && s.Added[n-1].Last == i-1 {
			a := &s.Added[n-1]
			a.Last, a.End, a.Text = i, w.End, a.Text+" "+w.Text
		} else {
			s.Added = append(s.Added, Added{Start: w.Start, End: w.End, Text: w.Text, First: i, Last: i})
		}
	}
}
