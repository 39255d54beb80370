package align

import (
	"math"
	"slices"
)

// Problem: say of every word heard which step of the plan it belongs to, or
// that it is talk beside the work, and how sure that is, when steps may be
// skipped, moved or said again.
//
// Method: a hidden Markov model whose states are, for each step, its first
// part, its second part, and talk after it; the nearest published task is the
// alignment of recipes to the talk of cooking videos (Malmaud et al. 2015,
// arXiv 1503.01558). Forward and backward sums (Baum et al. 1970) give the
// chance of each state at each word over all ways to explain the talk; the best
// single way (Viterbi) was as good at finding steps and could not say how sure
// it was. A step is entered where the talk halts or leads on; the next one
// costs nothing, leaving out steps and going back do.
//
// Cost: words times steps, since the sum over the states to come from runs
// along; memory: forward rows are kept for a block of words at a time and made
// again from the row at its head.
//
// Oddity: the step that is said is never entered, so takes of one step in a row
// are one visit; takes.go parts them.

// trellis is the model laid over the words.
type trellis struct {
	w     weights
	steps int
	heard []*hearing // the different words
	words []*hearing // of each word heard, one of heard
	base  []float64  // of each step: logarithm of a word's ratio that its plan has not
	open  []float64  // of each word: that a step begins there
	halt  []float64  // of each word: that talk beside the work begins or ends there
}

// row holds the likelihood of each state after a word. Place 0 is the time
// before the first step, where there is only talk; step s has place s+1.
type row struct{ head, tail, talk []float64 }

func newRow(steps int) row {
	all := make([]float64, 3*(steps+1))
	n := steps + 1
	return row{all[:n:n], all[n : 2*n : 2*n], all[2*n:]}
}

func (r row) total() float64 {
	sum := 0.0
	for s := range r.head {
		sum += r.head[s] + r.tail[s] + r.talk[s]
	}
	return sum
}

func copyRow(to, from row) {
	copy(to.head, from.head)
	copy(to.tail, from.tail)
	copy(to.talk, from.talk)
}

// entry is the chance that a step begins with a word.
type entry struct {
	word   int
	chance float64
}

// odds are the chances that come of the model.
type odds struct {
	entries [][]entry // of each step, by word; tiny ones left out
	talk    []float64 // of each word: that it is in no step
	step    []int     // of each word: the likeliest step
	in      []float64 // of each word: the chance of that one

	evidence float64 // logarithm of how much likelier the talk is with the plan than as talk beside any work
}

const (
	tinyChance = 1e-3
	blockCells = 1 << 20 // steps times words whose rows are kept at once
	longCells  = 1 << 22 // steps times words from which a film is long: about two hours of 200 steps
	scaleEvery = 8       // words after which a row is brought to a total of one; in so few none can run out of a float
)

// sums is the model in likelihoods.
type sums struct {
	*trellis
	skip, more, most, back, add, resume, turn float64
	base, small                               []float64 // of each place, logarithms
	unplanned                                 map[[2]int][]float64
	later                                     []float64
}

func newSums(t *trellis) *sums {
	u := &sums{
		trellis: t, skip: math.Exp(t.w.skip), more: math.Exp(t.w.skipMore), most: math.Exp(t.w.skipMost),
		back: math.Exp(t.w.back), add: math.Exp(t.w.add), resume: math.Exp(t.w.resume), turn: math.Exp(t.w.turn),
		later: make([]float64, t.steps+2), unplanned: map[[2]int][]float64{}, base: make([]float64, t.steps+1), small: make([]float64, t.steps+1),
	}
	for s, b := range t.base {
		u.base[s+1], u.small[s+1] = b, b*t.w.small
	}
	return u
}

// ratios gives for each place what a word says for it that its plan has not.
func (u *sums) ratios(h *hearing) []float64 {
	size := [2]int{h.keys, h.small}
	all := u.unplanned[size]
	if all == nil {
		all = make([]float64, u.steps+1)
		for s := range all {
			all[s] = math.Exp(float64(h.keys)*u.base[s] + float64(h.small)*u.small[s])
		}
		u.unplanned[size] = all
	}
	return all
}

// arrive gives for each place the likelihood of coming to it from another one.
func (u *sums) arrive(from row, open float64, to []float64) {
	later, n := u.later, u.steps
	later[n+1] = 0
	for s := n; s >= 0; s-- {
		later[s] = later[s+1] + from.head[s] + from.tail[s] + from.talk[s]
	}
	to[0] = 0
	line, far := 0.0, 0.0
	for s := 1; s <= n; s++ {
		last := later[s-1] - later[s]
		if last < 0 {
			last = 0
		}
		to[s] = open * (last + line*u.skip + far*u.most + later[s+1]*u.back)
		line = line*u.more + last
		far += last
	}
}

// forward goes from one row to the next over word i and gives the factor that
// brings it to a total of one, as every few words it does. enter is what arrive
// gives, weighed by the word.
func (u *sums) forward(i int, from, to row, enter []float64) float64 {
	h := u.words[i]
	u.arrive(from, math.Exp(u.open[i]), enter)
	halt := math.Exp(u.halt[i])
	cross, add := u.resume*halt, u.add*halt
	told, talk, ratios := h.told, h.talk, u.ratios(h)
	for s, head := range from.head {
		tail, aside := from.tail[s], from.talk[s]
		weigh := told * ratios[s]
		e := enter[s]
		to.talk[s] = (aside + (head+tail)*add) * talk
		if s == 0 {
			cross = 0
		}
		to.tail[s] = (tail + head*u.turn + aside*cross) * weigh
		to.head[s] = (head + e) * weigh
		enter[s] = e * weigh
		if s == 0 {
			cross = u.resume * halt
		}
	}
	for k := range h.steps {
		g := &h.steps[k]
		to.head[g.step+1] *= g.head
		enter[g.step+1] *= g.head
		to.tail[g.step+1] *= g.tail
	}
	if i%scaleEvery != 0 {
		return 1
	}
	scale := 1 / to.total()
	for s := range to.head {
		to.head[s] *= scale
		to.tail[s] *= scale
		to.talk[s] *= scale
		enter[s] *= scale
	}
	return scale
}

// backward goes from the likelihoods of what follows word i to those of what
// follows word i-1; after is used up.
func (u *sums) backward(i int, scale float64, after, before row) {
	h := u.words[i]
	told, ratios := h.told*scale, u.ratios(h)
	for s := range after.head {
		weigh := told * ratios[s]
		after.head[s] *= weigh
		after.tail[s] *= weigh
		after.talk[s] *= h.talk * scale
	}
	for k := range h.steps {
		g := &h.steps[k]
		after.head[g.step+1] *= g.head
		after.tail[g.step+1] *= g.tail
	}
	open, halt := math.Exp(u.open[i]), math.Exp(u.halt[i])
	cross, add := u.resume*halt, u.add*halt
	n := u.steps
	earlier := u.later // sums of the steps before, each entered
	earlier[0] = 0
	for s := range after.head {
		earlier[s+1] = earlier[s]
		if s > 0 {
			earlier[s+1] += after.head[s]
		}
	}
	line, far := 0.0, 0.0
	for s := n; s >= 0; s-- {
		next := 0.0
		if s < n {
			next = after.head[s+1]
		}
		leave := open * (next + line*u.skip + far*u.most + earlier[s]*u.back)
		before.tail[s] = leave + after.tail[s] + after.talk[s]*add
		before.head[s] = leave + after.head[s] + after.tail[s]*u.turn + after.talk[s]*add
		before.talk[s] = leave + after.talk[s]
		if s > 0 {
			before.talk[s] += after.tail[s] * cross
		}
		line = line*u.more + next
		far += next
	}
}

// glance gives the chances that tell how closely steps follow the plan: those of
// odds, or in a long film those of sofar, for speed. On short ones sofar costs
// half a point of the starts within two seconds.
func (t *trellis) glance() odds {
	if len(t.words)*t.steps <= longCells {
		return t.odds()
	}
	return t.sofar()
}

// sofar gives the chances of each word from the words before it alone: a third
// of the work of odds.
func (t *trellis) sofar() odds {
	n := len(t.words)
	o := odds{talk: make([]float64, n), step: make([]int, n), in: make([]float64, n)}
	u := newSums(t)
	enter := make([]float64, t.steps+1)
	now, next, ones := newRow(t.steps), newRow(t.steps), newRow(t.steps)
	now.talk[0] = 1
	for s := range ones.head {
		ones.head[s], ones.tail[s], ones.talk[s] = 1, 1, 1
	}
	for i := range n {
		u.forward(i, now, next, enter)
		now, next = next, now
		o.take(i, now, ones, nil)
	}
	return o
}

// odds sums over all ways through the model.
func (t *trellis) odds() odds { return t.oddsIn(max(1, blockCells/(t.steps+1))) }

// oddsIn does so in blocks of so many words.
func (t *trellis) oddsIn(block int) odds {
	n, width := len(t.words), t.steps+1
	o := odds{entries: make([][]entry, t.steps), talk: make([]float64, n), step: make([]int, n), in: make([]float64, n)}
	if n == 0 {
		return o
	}
	u := newSums(t)
	block = min(n, block)
	scales := make([]float64, n)
	enters := make([]float64, block*width)
	var heads []row
	now, next := newRow(t.steps), newRow(t.steps)
	now.talk[0] = 1
	for i := range n {
		if i%block == 0 {
			head := newRow(t.steps)
			copyRow(head, now)
			heads = append(heads, head)
		}
		scales[i] = u.forward(i, now, next, enters[:width])
		o.evidence -= math.Log(scales[i]) + u.words[i].added
		if i == n-1 {
			o.evidence += math.Log(next.total())
		}
		now, next = next, now
	}
	after, before := newRow(t.steps), newRow(t.steps)
	for s := range width {
		after.head[s], after.tail[s], after.talk[s] = 1, 1, 1
	}
	rows := make([]row, block)
	for k := range rows {
		rows[k] = newRow(t.steps)
	}
	for b := len(heads) - 1; b >= 0; b-- {
		from, to := b*block, min(n, (b+1)*block)
		last := heads[b]
		for i := from; i < to; i++ {
			k := i - from
			u.forward(i, last, rows[k], enters[k*width:(k+1)*width])
			last = rows[k]
		}
		for i := to - 1; i >= from; i-- {
			k := i - from
			o.take(i, rows[k], after, enters[k*width:(k+1)*width])
			u.backward(i, scales[i], after, before)
			after, before = before, after
		}
	}
	for _, e := range o.entries {
		slices.Reverse(e)
	}
	return o
}

// take reads the chances of a word.
func (o *odds) take(i int, at, after row, enter []float64) {
	told, talk, best, step := 0.0, 0.0, 0.0, 0
	for s := range at.head {
		in := at.head[s]*after.head[s] + at.tail[s]*after.tail[s]
		told += in
		talk += at.talk[s] * after.talk[s]
		if in > best {
			best, step = in, s
		}
	}
	total := told + talk
	least := tinyChance * total
	for s := 1; s < len(enter); s++ {
		if c := enter[s] * after.head[s]; c > least {
			o.entries[s-1] = append(o.entries[s-1], entry{i, c / total})
		}
	}
	o.talk[i], o.step[i], o.in[i] = talk/total, step-1, best/total
}
