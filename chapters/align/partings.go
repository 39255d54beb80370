package align

import (
	"math"
	"strings"
)

// trellis lays the model over the words heard.
func (h *heard) trellis(e *ear, steps int) *trellis {
	h.join(e.script)
	t := &trellis{w: e.w, steps: steps}
	t.length = e.script.length
	known := map[string]*hearing{}
	for i, keys := range h.keys {
		word := strings.Join(keys, " ")
		heard, ok := known[word]
		if !ok {
			heard = e.hear(keys)
			known[word] = heard
			t.heard = append(t.heard, heard)
		}
		t.words = append(t.words, heard)
		open, halt := h.parting(i, e.w)
		t.open, t.halt = append(t.open, open), append(t.halt, halt)
	}
	return t
}

// join brings words that are heard in two pieces, or two heard as one, to how
// the plan has them: "stand pipe" and "standpipe" are one.
func (h *heard) join(s *script) {
	planned := func(key string) bool {
		_, ok := s.number[key]
		return ok
	}
	pairs := map[string][]string{}
	for _, keys := range s.keys {
		for i := 1; i < len(keys); i++ {
			pairs[keys[i-1]+keys[i]] = keys[i-1 : i+1]
		}
	}
	for i, keys := range h.keys {
		if len(keys) != 1 || planned(keys[0]) && len(keys[0]) > 2 {
			continue
		}
		if pair, ok := pairs[keys[0]]; ok && len(keys[0]) > 3 {
			h.keys[i] = pair
			continue
		}
		if i+1 < len(h.keys) && len(h.keys[i+1]) == 1 && h.words[i].Cue == h.words[i+1].Cue {
			if whole := keys[0] + h.keys[i+1][0]; planned(whole) && len(whole) > 4 {
				h.keys[i], h.keys[i+1] = []string{whole}, nil
			}
		}
	}
}

// follow sets what share of each step's words comes from its plan: one that is
// read out makes every other word speak against it, one told freely does not.
func (t *trellis) follow(shares []float64) {
	t.base = make([]float64, t.steps)
	for s, share := range shares {
		t.base[s] = math.Log(1 - share)
	}
	for _, h := range t.heard {
		for k := range h.steps {
			g := &h.steps[k]
			share, late := shares[g.step], 2*g.early-g.ratio // -ratio at the step's end, ratio at its beginning
			g.gain = math.Log(1+(g.ratio-1)*share) - t.base[g.step]
			g.head = math.Pow((1+(g.ratio+t.w.ordered*late-1)*share)/(1-share), t.w.trust)
			g.tail = math.Pow((1+(g.ratio-t.w.ordered*late-1)*share)/(1-share), t.w.trust)
		}
	}
}

// evenly is the same share for all steps.
func (t *trellis) evenly() []float64 {
	shares := make([]float64, t.steps)
	for s := range shares {
		shares[s] = t.w.lambda
	}
	return shares
}

// followed is how much of each step's words came from its plan where they are
// surest to be that step's, an expectation as in the EM algorithm (Dempster et
// al. 1977); shares are those the odds were found with.
func (t *trellis) followed(o odds, shares []float64) []float64 {
	words, planned := make([]float64, t.steps), make([]float64, t.steps)
	all, allPlanned := 0.0, 0.0
	for i, h := range t.words {
		step, chance := o.step[i], o.in[i]
		if step < 0 {
			continue
		}
		n := float64(h.keys+h.small) * chance
		words[step] += n
		all += n
		for _, g := range h.steps {
			if g.step == step {
				c := shares[g.step] * g.ratio / (1 + (g.ratio-1)*shares[g.step]) * chance
				planned[step] += c
				allPlanned += c
			}
		}
	}
	mean := (t.w.lambda*t.w.film + allPlanned) / (t.w.film + all)
	out := make([]float64, t.steps)
	for s := range out {
		out[s] = min(0.95, (mean*t.w.each+planned[s])/(t.w.each+words[s]))
	}
	return out
}

// parting weighs that a step begins before a word, and that talk beside the
// work begins or ends there.
func (h *heard) parting(i int, w weights) (open, halt float64) {
	open = w.open
	switch gap := h.gap[i]; {
	case i == 0:
		open += w.gapLong
	case gap >= workGap:
		open += w.gapWork
	case gap >= longGap:
		open += between(w.gapLong, w.gapWork, math.Log(gap/longGap)/math.Log(workGap/longGap))
	case gap >= someGap:
		open += between(w.gapSome, w.gapLong, (gap-someGap)/(longGap-someGap))
	case h.slack[i] > someGap:
		// A silence somewhere in the cue: each parting may be its place.
		sure := min(1, (h.slack[i]-someGap)/(longGap-someGap))
		open += sure * max(0, w.hidden-0.7*math.Log(float64(h.parts[i])))
	case h.words[i].Cue != h.words[i-1].Cue:
		open += between(w.cue, w.gapSome, gap/someGap)
	}
	if h.marks && i > 0 {
		if h.ends[i-1] {
			open += w.sentence
		} else {
			open += w.inside
		}
	}
	is := func(i int, list map[string]bool) bool { return len(h.keys[i]) == 1 && list[h.keys[i][0]] }
	if i > 0 && is(i-1, english().dangling) {
		open += w.dangling
	}
	if i > 0 && is(i, english().clinging) {
		open += w.clinging
	}
	halt = w.halt * open
	return open + h.leading(i, w), halt
}

// leading weighs that a word leads into the next step: "okay", "now", "so now".
func (h *heard) leading(i int, w weights) float64 {
	is := func(i int, list map[string]bool) bool {
		return i < len(h.keys) && len(h.keys[i]) > 0 && list[h.keys[i][0]]
	}
	lead, link := english().lead, english().link
	switch {
	case is(i, lead), is(i, link) && is(i+1, lead):
		return w.lead
	case is(i, link):
		return w.link
	}
	return 0
}

// between is the weight at a share of the way from one to another.
func between(from, to, share float64) float64 { return from + (to-from)*share }

// Silences before a word, in seconds, between which its weight slides.
const (
	someGap = 0.25
	longGap = 1.0
	workGap = 15.0 // hands at work
)
