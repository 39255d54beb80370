package align

import (
	"math"
	"math/bits"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/prose"
	"fixslate/plan/timing"
)

// script is what was to be said: the planned lines and the words of each step.
type script struct {
	lines []Line
	keys  [][]string // of each line, in order
	of    [][]int    // of each step, its lines

	types   []string       // the different words
	number  map[string]int // of each, its index in types
	steps   [][]use        // of each type, the steps it stands in
	planned []float64      // of each step: words to be said
	size    []float64      // words of each step, with those that only hint weighed
	share   []float64      // of each type among all planned words
}

// use is a word in a step.
type use struct {
	step  int
	times float64
	early float64 // times, each weighed by how much of the step's speech comes after it, 0 to 1
}

// newScript lays out the planned speech. A step's title, its do, and the names of
// its tools, parts and supplies hint at its words without being lines of it.
func newScript(p *plan.Plan, planned timing.Timeline, w weights) *script {
	s := &script{number: map[string]int{}, of: make([][]int, len(p.Steps)), size: make([]float64, len(p.Steps))}
	for _, step := range planned.Steps {
		if step.Index < 0 || step.Index >= len(p.Steps) {
			continue
		}
		for _, b := range step.Beats {
			if !b.Spoken() {
				continue
			}
			s.of[step.Index] = append(s.of[step.Index], len(s.lines))
			s.lines = append(s.lines, Line{
				Step: step.Index, ID: step.ID, Kind: b.Kind, Caution: b.Caution, Index: b.Line,
				Print: b.Print, Speak: b.Speak, First: -1, Last: -1,
			})
			keys := split(prose.Fold(b.Speak))
			s.keys = append(s.keys, keys)
			for _, k := range keys {
				s.add(step.Index, k, 1)
			}
		}
		total, done := 0, 0
		for _, n := range s.of[step.Index] {
			total += len(s.keys[n])
		}
		for _, n := range s.of[step.Index] {
			for _, k := range s.keys[n] {
				s.early(step.Index, k, 1-(float64(done)+0.5)/float64(total))
				done++
			}
		}
	}
	for i := range p.Steps {
		for _, hint := range hints(p, &p.Steps[i]) {
			for _, k := range split(prose.Fold(prose.Spoken(hint))) {
				s.add(i, k, w.hint)
				s.early(i, k, w.hint/2)
			}
		}
	}
	total := 0.0
	for _, n := range s.size {
		total += n
	}
	s.plan()
	// A long step is a row of stretches as long as others: its words are not
	// rarer for it.
	mean := total / float64(max(1, len(s.size)))
	for i := range s.size {
		s.size[i] = w.level*mean + (1-w.level)*s.size[i] + w.smooth
	}
	s.share = make([]float64, len(s.types))
	for t, uses := range s.steps {
		for _, u := range uses {
			s.share[t] += u.times / total
		}
	}
	return s
}

// hints are the words about a step that nobody has to say.
func hints(p *plan.Plan, step *plan.Step) []string {
	all := []string{step.Title.Print, step.Do.Print}
	for _, id := range step.Tools {
		all = append(all, p.Name(plan.Ref{Kind: plan.KindTool, ID: id}))
	}
	for _, id := range step.Parts {
		all = append(all, p.Name(plan.Ref{Kind: plan.KindPart, ID: id}))
	}
	for _, id := range step.Supplies {
		all = append(all, p.Name(plan.Ref{Kind: plan.KindSupply, ID: id}))
	}
	return all
}

func (s *script) add(step int, key string, times float64) {
	t, ok := s.number[key]
	if !ok {
		t = len(s.types)
		s.number[key] = t
		s.types, s.steps = append(s.types, key), append(s.steps, nil)
	}
	s.size[step] += times
	if n := len(s.steps[t]); n > 0 && s.steps[t][n-1].step == step {
		s.steps[t][n-1].times += times
		return
	}
	for i := range s.steps[t] {
		if s.steps[t][i].step == step {
			s.steps[t][i].times += times
			return
		}
	}
	s.steps[t] = append(s.steps[t], use{step: step, times: times})
}

// early notes where in a step a word stands.
func (s *script) early(step int, key string, rest float64) {
	uses := s.steps[s.number[key]]
	for i := range uses {
		if uses[i].step == step {
			uses[i].early += rest
		}
	}
}

// like is how well a heard word stands for a planned one, 0 to 1.
type like struct {
	planned int // index in the script's types
	degree  float64
	sound   float64 // the same where it may be that word mis-heard
}

// How words that sound alike stand for each other, when a line is laid over the
// words of its step. For finding the step itself they are worth nothing: among
// all words of a film too many sound like some word of some step. The fit of the
// weights brought their share there down to nothing.
const (
	soundsSame    = 0.53  // degree of a word that sounds the same
	farthest      = 0.395 // distance of sounds at which the degree is nothing
	soundsPlanned = 0.28  // share of it left for a word that is planned as it stands
)

// Letters of a word that is part of another, and of the rest.
const (
	partLeast = 4
	partRest  = 3
)

// ear finds the planned words that a heard one may be.
type ear struct {
	script *script
	w      weights
	apart  *distances
	sounds []string
	masks  []uint32
	sizes  []int
	groups map[int][]int // planned words of each group of words alike
	kin    map[int][]int // … and of each group of words that go together
	found  map[string][]like
	spoken map[string]string // sounds of words heard
}

func newEar(s *script, w weights) *ear {
	e := &ear{script: s, w: w, apart: newDistances(), groups: map[int][]int{}, kin: map[int][]int{}, found: map[string][]like{}, spoken: map[string]string{}}
	for t, key := range s.types {
		snd := sounds(key)
		e.sounds = append(e.sounds, snd)
		e.masks = append(e.masks, mask(snd))
		e.sizes = append(e.sizes, weight(snd))
		for _, g := range english().alike[key] {
			e.groups[g] = append(e.groups[g], t)
		}
		for _, g := range english().kin[key] {
			e.kin[g] = append(e.kin[g], t)
		}
	}
	return e
}

// sound is sounds, remembered.
func (e *ear) sound(word string) string {
	snd, ok := e.spoken[word]
	if !ok {
		snd = sounds(word)
		e.spoken[word] = snd
	}
	return snd
}

// mask is the set of a word's sounds.
func mask(sounds string) uint32 {
	m := uint32(0)
	for i := 0; i < len(sounds); i++ {
		m |= 1 << (sounds[i] & 31)
	}
	return m
}

// likes gives the planned words a heard one may stand for: itself, words that
// stand for each other, and words that sound alike.
func (e *ear) likes(key string) []like {
	if l, ok := e.found[key]; ok {
		return l
	}
	var all []like
	at := func(t int, degree, sound float64) {
		for i := range all {
			if all[i].planned == t {
				all[i].degree, all[i].sound = max(all[i].degree, degree), max(all[i].sound, sound)
				return
			}
		}
		all = append(all, like{t, degree, sound})
	}
	own, planned := e.script.number[key]
	if planned {
		at(own, 1, 0)
	}
	for _, g := range english().alike[key] {
		for _, t := range e.groups[g] {
			if t != own || !planned {
				at(t, e.w.alike, 0)
			}
		}
	}
	e.partLike(key, at)
	for _, g := range english().kin[key] {
		for _, t := range e.kin[g] {
			if t != own || !planned {
				at(t, e.w.kin, 0)
			}
		}
	}
	e.soundLike(key, planned, at)
	slices.SortFunc(all, func(a, b like) int { return a.planned - b.planned })
	e.found[key] = all
	return all
}

// partLike finds words that one is part of, or that are part of it: "brush" and
// "toothbrush".
func (e *ear) partLike(key string, at func(int, float64, float64)) {
	if english().function[key] {
		return
	}
	for t, other := range e.script.types {
		short, long := key, other
		if len(short) > len(long) {
			short, long = long, short
		}
		if len(short) < partLeast || len(long)-len(short) < partRest || english().function[other] {
			continue
		}
		if strings.HasSuffix(long, short) || strings.HasPrefix(long, short) {
			at(t, e.w.kin, 0)
		}
	}
}

// soundLike finds words that sound like a heard one. A word that is planned as
// it stands is seldom a mis-heard other one.
func (e *ear) soundLike(key string, planned bool, at func(int, float64, float64)) {
	snd := e.sound(key)
	if len(snd) < 2 || english().numerals[key] {
		return
	}
	m, size := mask(snd), weight(snd)
	for t := range e.sounds {
		other := e.sounds[t]
		if len(other) < 3 && len(snd) < 3 || e.script.types[t] == key || english().numerals[e.script.types[t]] {
			continue
		}
		larger := max(size, e.sizes[t])
		if d := size - e.sizes[t]; float64(max(d, -d)) > farthest*float64(larger) || bits.OnesCount32(m&e.masks[t])*5 < bits.OnesCount32(m|e.masks[t]) {
			continue
		}
		if d := e.apart.apart(snd, other); d < farthest {
			degree := soundsSame * (1 - d/farthest)
			if planned {
				degree *= soundsPlanned
			}
			at(t, 0, degree)
		}
	}
}

// score is what a word says for a step.
type score struct {
	step  int
	ratio float64 // of the word's likelihoods, said by plan and said in general
	early float64 // the same, weighed towards the step's beginning
	gain  float64 // logarithm of what that makes of the step's likelihood
	head  float64 // what it makes of the likelihood of the step's first part …
	tail  float64 // … and of its last; between them in a line
}

// hearing is what a word says: for steps whose plan has it, for any step, and
// for talk beside them, as logarithms of likelihood ratios.
type hearing struct {
	steps []score // by step; one may stand more than once
	keys  int     // how many words it is, numbers in words, but for …
	small int     // … those of no meaning of their own
	again float64 // how far it counts where it was said a moment ago, 1 where not
	told  float64 // step as a ratio
	talk  float64 // added as a ratio
	step  float64
	added float64
}

// hear weighs a word, all its keys together.
func (e *ear) hear(keys []string) *hearing {
	h := &hearing{again: 1}
	for _, k := range keys {
		if english().function[k] {
			h.small++
		} else {
			h.keys++
		}
		e.weigh(k, h)
	}
	h.told, h.talk = math.Exp(h.step), math.Exp(h.added)
	return h
}

func (e *ear) weigh(key string, h *hearing) {
	lex := english()
	share := lex.share(key)
	b := lex.bend(key)
	h.added += e.w.phrases.talk[key] - e.w.bentTalk*b
	h.step += e.w.bentStep * b
	first := len(h.steps)
	for _, l := range e.likes(key) {
		if l.degree == 0 {
			continue
		}
		t := l.planned
		usual := max(share, lex.share(e.script.types[t]))
		usual = e.w.general*usual + (1-e.w.general)*e.script.share[t]
		for _, u := range e.script.steps[t] {
			one := l.degree / e.script.size[u.step] / usual
			h.steps = append(h.steps, score{step: u.step, ratio: one * u.times, early: one * u.early})
		}
	}
	// One entry a step: what its words say for it together.
	own := h.steps[first:]
	slices.SortStableFunc(own, func(a, b score) int { return a.step - b.step })
	kept := own[:0]
	for _, g := range own {
		if n := len(kept); n > 0 && kept[n-1].step == g.step {
			kept[n-1].ratio += g.ratio
			kept[n-1].early += g.early
		} else {
			kept = append(kept, g)
		}
	}
	h.steps = h.steps[:first+len(kept)]
}
