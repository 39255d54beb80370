package align

import "math"

// onceReach is how many words around a place where a step may begin that step
// is at home: entering it there is not saying it again.
const onceReach = 25

// onceLeast is the chance of places nearby from which a step is at home.
const onceLeast = 0.05

// onceRuns is how often the sums are run with what the run before said.
func (t *trellis) onceRuns() int {
	if t.live != nil {
		return 1 // for speed
	}
	return 2
}

// temperShare is what of the chance of talk beside the work is left as it was.
const temperShare = 0.4

// temper draws the chance of talk towards what the run before said: each run trusts
// the plan's words more and so takes more of what has none of them for talk, more than
// is.
func (o *odds) temper(before odds) {
	for i, was := range before.talk {
		o.talk[i] += temperShare * (was - o.talk[i])
	}
}

// mark gives back to a step, at a word, the chance to be entered.
type mark struct {
	step   int
	factor float64
}

// once makes it dear to enter a step that is said elsewhere, and cheap to leave
// out one that is: the mean field of a rule that each step is said once (as in
// variational inference, Jordan et al. 1999).
func (t *trellis) once(o odds) {
	t.shun, t.told = make([]float64, t.steps), make([]float64, t.steps)
	t.spare = make([][]mark, len(t.words))
	for s, entries := range o.entries {
		all := 0.0
		for _, e := range entries {
			all += e.chance
		}
		t.told[s] = min(1, all)
		t.shun[s] = math.Exp(-t.w.once * t.told[s])
		if all < onceLeast {
			continue
		}
		// The entries near to a word are those from first on and before last.
		near, first, last, i := 0.0, 0, 0, 0
		for first < len(entries) {
			i = max(i, entries[first].word-onceReach)
			for ; last < len(entries) && entries[last].word <= i+onceReach; last++ {
				near += entries[last].chance
			}
			for ; first < last && entries[first].word < i-onceReach; first++ {
				near -= entries[first].chance
			}
			if near > onceLeast && i < len(t.words) {
				t.spare[i] = append(t.spare[i], mark{s, math.Exp(-t.w.once*min(1, max(0, all-near))) / t.shun[s]})
			}
			i++
		}
	}
}
