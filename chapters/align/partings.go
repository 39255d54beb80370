package align

import (
	"math"
	"slices"
	"strings"
)

// echoReach is how many words on a word is an echo of itself: said again, it
// tells less.
const echoReach = 30

// echo is a word and when it was heard last.
type echo struct {
	*hearing
	again *hearing // what it says as an echo
	last  int
}

// trellis lays the model over the words heard.
func (h *heard) trellis(e *ear, steps int) *trellis {
	h.join(e.script)
	t := &trellis{w: e.w, steps: steps, parts: manyParts}
	if t.long(len(h.words)) {
		t.parts = fewParts
	}
	known := map[string]*echo{}
	for i, keys := range h.keys {
		word := strings.Join(keys, " ")
		heard, ok := known[word]
		if !ok {
			heard = &echo{hearing: e.hear(keys)}
			known[word] = heard
			t.heard = append(t.heard, heard.hearing)
		}
		if ok && i-heard.last <= echoReach && len(heard.steps) > 0 {
			if heard.again == nil {
				again := *heard.hearing
				again.again, again.steps = e.w.again, slices.Clone(again.steps)
				heard.again = &again
				t.heard = append(t.heard, &again)
			}
			t.words = append(t.words, heard.again)
		} else {
			t.words = append(t.words, heard.hearing)
		}
		heard.last = i
		s, said := h.signs(i, e.w.phrases), e.w.phrases
		t.open = append(t.open, math.Exp(e.w.open+s.times(e.w.begin)+h.says(i, said.begin)+h.says(i+1, said.second)+h.says(i-1, said.end)))
		t.aside = append(t.aside, math.Exp(e.w.add+s.times(e.w.aside)+h.says(i, said.aside)))
		t.chat = append(t.chat, math.Exp(e.w.chat*h.chat(i, said.chat)))
		t.goesOn = append(t.goesOn, math.Exp(e.w.resume+s.times(e.w.goesOn)))
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
			late := 2*g.early - g.ratio // -ratio at the step's end, ratio at its beginning
			odds, trust := shares[g.step]/(1-shares[g.step]), t.w.trust*h.again
			g.gain = h.again * math.Log(1+g.ratio*odds)
			g.head = math.Pow(1+(g.ratio+t.w.ordered*late)*odds, trust)
			g.tail = math.Pow(1+(g.ratio-t.w.ordered*late)*odds, trust)
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

// signs are what stands at a parting between two words.
type signs [16]float64

// The signs.
const (
	signFirst    = iota // the film's first word
	signCue             // a cue begins without silence
	signSome            // after a silence of 0.25 s
	signLong            // … of a second
	signPause           // … of four
	signWork            // … of a long one, hands at work
	signHidden          // the cue hides a silence …
	signSpread          // … in one of so many places: less the logarithm of their number
	signSentence        // after a full stop
	signInside          // inside a sentence, where captions have full stops
	signDangling        // after a word that leads to another, as "the" does
	signClinging        // at a word that goes on with the one before, as "of" does
	signLead            // at a word that leads on
	signLink            // at a word that may lead on
	signCommon          // how much commoner such a silence is here than usual
	signBreak           // where a sentence seems to end, as breaks.txt weighs it, where captions have no full stops
)

// usualSilences are the shares of partings with a silence of so many seconds and more
// in captions cut into lines. Where captions show more of them, as those do that have
// a word a cue, one says less.
var usualSilences = [...]struct{ gap, share float64 }{{someGap, 0.05}, {longGap, 0.03}, {pauseGap, 0.012}, {workGap, 0.002}}

// commoner is how much commoner silences of so many seconds and more are here than
// usual, as a logarithm.
func (h *heard) commoner(gap float64) float64 {
	if h.silences == nil {
		h.silences = slices.Clone(h.gap)
		slices.Sort(h.silences)
	}
	at, _ := slices.BinarySearch(h.silences, gap)
	share := (float64(len(h.silences)-at) + 1) / (float64(len(h.silences)) + 30)
	usual := usualSilences[len(usualSilences)-1].share
	for k := 1; k < len(usualSilences); k++ {
		if a, b := usualSilences[k-1], usualSilences[k]; gap <= b.gap {
			x := math.Log(gap/a.gap) / math.Log(b.gap/a.gap)
			usual = a.share * math.Pow(b.share/a.share, x)
			break
		}
	}
	return math.Log(share / usual)
}

// signs gives those before a word.
func (h *heard) signs(i int, said *phrases) signs {
	var s signs
	switch gap := h.gap[i]; {
	case i == 0:
		s[signFirst] = 1
	case gap >= someGap:
		s.silence(gap)
		s[signCommon] = h.commoner(gap)
	case h.slack[i] > someGap:
		// A silence somewhere in the cue: each parting may be its place.
		sure := min(1, (h.slack[i]-someGap)/(longGap-someGap))
		s[signHidden], s[signSpread] = sure, -sure*math.Log(float64(h.parts[i]))
	case h.words[i].Cue != h.words[i-1].Cue:
		s[signCue], s[signSome] = 1-gap/someGap, gap/someGap
	}
	if h.marks && i > 0 {
		if h.ends[i-1] {
			s[signSentence] = 1
		} else {
			s[signInside] = 1
		}
	}
	if !h.marks && i > 0 {
		s[signBreak] = h.breaks(i, said.breaks)
	}
	is := func(i int, list map[string]bool) bool {
		return i < len(h.keys) && len(h.keys[i]) > 0 && list[h.keys[i][0]]
	}
	if i > 0 && is(i-1, english().dangling) && len(h.keys[i-1]) == 1 {
		s[signDangling] = 1
	}
	if i > 0 && is(i, english().clinging) && len(h.keys[i]) == 1 {
		s[signClinging] = 1
	}
	switch lead, link := english().lead, english().link; {
	case is(i, lead), is(i, link) && is(i+1, lead):
		s[signLead] = 1
	case is(i, link):
		s[signLink] = 1
	}
	return s
}

// breaks weighs whether a sentence ends before a word.
func (h *heard) breaks(i int, b *breaks) float64 {
	key := func(i int, last bool) string {
		if i < 0 || i >= len(h.keys) || len(h.keys[i]) == 0 {
			return ""
		}
		if last {
			return h.keys[i][len(h.keys[i])-1]
		}
		return h.keys[i][0]
	}
	p2, p1, n1, n2 := key(i-2, true), key(i-1, true), key(i, false), key(i+1, false)
	sum := b.before[p1] + b.before2[p2] + b.after[n1] + b.after2[n2]
	sum += b.across[p1+"_"+n1] + b.upto[p2+"_"+p1] + b.onward[n1+"_"+n2]
	return max(-breakMost, min(breakMost, sum))
}

// chat weighs whether a word is talk beside the work, by itself and after the one
// before it.
func (h *heard) chat(i int, chat map[string]float64) float64 {
	if len(h.keys[i]) == 0 {
		return 0
	}
	own := h.keys[i][0]
	sum := chat[own]
	if i > 0 && len(h.keys[i-1]) > 0 {
		sum += chat[h.keys[i-1][len(h.keys[i-1])-1]+"_"+own]
	}
	return sum
}

// says is the weight of a word in a list.
func (h *heard) says(i int, list map[string]float64) float64 {
	if i < 0 || i >= len(h.keys) || len(h.keys[i]) == 0 {
		return 0
	}
	return list[h.keys[i][0]]
}

// silence notes one of so many seconds, shared between the two lengths it lies
// between.
func (s *signs) silence(gap float64) {
	lengths := [...]float64{someGap, longGap, pauseGap, workGap}
	gap = min(gap, workGap)
	for k := 1; k < len(lengths); k++ {
		if gap <= lengths[k] {
			share := math.Log(gap/lengths[k-1]) / math.Log(lengths[k]/lengths[k-1])
			s[signSome+k-1], s[signSome+k] = 1-share, share
			return
		}
	}
}

// times weighs signs.
func (s signs) times(w signs) float64 {
	sum := 0.0
	for k, v := range s {
		sum += v * w[k]
	}
	return sum
}

// breakMost is what the words beside a parting can say at most.
const breakMost = 3.5

// Silences before a word, in seconds, between which its weight slides.
const (
	someGap  = 0.25
	longGap  = 1.0
	pauseGap = 4.0
	workGap  = 15.0 // hands at work
)
