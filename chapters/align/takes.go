package align

// visit is a stretch of words that the path puts into one step, with the talk
// inside it.
type visit struct {
	step        int
	first, last int     // words, both included; both are in the step
	gain        float64 // what the words say for the step
	retake      bool
}

// visits reads a path into visits, and marks the words of each.
func visits(states []state, words []*hearing) []visit {
	var all []visit
	for i, s := range states {
		if s.added || s.step < 0 {
			continue
		}
		if n := len(all); n == 0 || all[n-1].step != s.step || moved(states, all[n-1].last, i) {
			all = append(all, visit{step: s.step, first: i})
		}
		v := &all[len(all)-1]
		v.last = i
		v.gain += gain(words[i], s.step)
	}
	return all
}

// moved holds where the path was in another step between two words.
func moved(states []state, a, b int) bool {
	for _, s := range states[a:b] {
		if s.step != states[b].step {
			return true
		}
	}
	return false
}

// gain is what a word says for a step, against nothing.
func gain(h *hearing, step int) float64 {
	for _, s := range h.steps {
		if s.step == step {
			return h.step + s.gain
		}
	}
	return h.step
}
