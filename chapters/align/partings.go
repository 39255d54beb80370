package align

import "math"

// trellis lays the model over the words heard.
func (h *heard) trellis(e *ear, steps int) *trellis {
	t := &trellis{w: e.w, steps: steps}
	known := map[string]hearing{}
	for i, keys := range h.keys {
		word := h.words[i].Text
		heard, ok := known[word]
		if !ok || len(keys) == 0 {
			heard = e.hear(keys)
			known[word] = heard
		}
		t.words = append(t.words, heard)
		open, halt := h.parting(i, e.w)
		t.open, t.halt = append(t.open, open), append(t.halt, halt)
	}
	return t
}

// parting weighs that a step begins before a word, and that talk beside the
// work begins or ends there.
func (h *heard) parting(i int, w weights) (open, halt float64) {
	open = w.open
	switch gap := h.gap[i]; {
	case i == 0 || gap >= 1:
		open += w.gapLong
	case gap >= 0.25:
		open += w.gapSome + (w.gapLong-w.gapSome)*(gap-0.25)/0.75
	case h.slack[i] > 0.25:
		// A silence somewhere in the cue: each parting may be its place.
		sure := min(1, (h.slack[i]-0.25)/0.75)
		open += sure * max(0, w.hidden-0.7*math.Log(float64(h.parts[i])))
	case i > 0 && h.words[i].Cue != h.words[i-1].Cue:
		open += w.cue
	}
	if h.marks && i > 0 {
		if h.ends[i-1] {
			open += w.sentence
		} else {
			open += w.inside
		}
	}
	halt = w.halt * open
	if keys := h.keys[i]; len(keys) > 0 && english().lead[keys[0]] {
		open += w.lead
	}
	return open, halt
}
