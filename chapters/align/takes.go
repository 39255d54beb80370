package align

// visit is a stretch of words that the path puts into one step, with the talk
// inside it.
type visit struct {
	step        int
	first, last int     // words, both included; both are in the step
	gain        float64 // what the words say for the step
	retake      bool
}

// visits gathers words into visits.
func visits(words []Word, heard []*hearing) []visit {
	var all []visit
	for i, w := range words {
		if w.Step < 0 {
			continue
		}
		if n := len(all); n == 0 || all[n-1].step != w.Step {
			all = append(all, visit{step: w.Step, first: i})
		}
		v := &all[len(all)-1]
		v.last = i
		v.gain += gain(heard[i], w.Step)
	}
	return all
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
