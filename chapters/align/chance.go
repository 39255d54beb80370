package align

import "math"

// Problem: how sure is the path? It is one of many that explain the talk nearly
// as well.
//
// Method: forward and backward sums over the same model (Baum et al. 1970)
// instead of the best path: the chance that a step is entered at each word, and
// that each word is talk beside the work. Sums are kept near one by dividing
// each row by its total, so nothing is taken to logarithms word by word.
//
// Cost: as path.go, three times over; forward rows are kept block by block.

// entry is the chance that a step begins with a word.
type entry struct {
	word   int
	chance float64
}

// odds are the chances that come of the model.
type odds struct {
	entries [][]entry // of each step, by word; tiny ones left out
	added   []float64 // of each word: that it is in no step
	in      []float64 // of each word: that it is in the step its path has
}

const tinyChance = 1e-3

// sums is the model in likelihoods.
type sums struct {
	*trellis
	skip, more, most, back, add, resume float64
	told, talk                          []float64 // of each word: of a step that knows nothing of it; of talk
	open, halt                          []float64
	base                                []float64 // of each state
	work                                []float64
}

func newSums(t *trellis) *sums {
	u := &sums{
		trellis: t, skip: math.Exp(t.w.skip), more: math.Exp(t.w.skipMore), most: math.Exp(t.w.skipMost),
		back: math.Exp(t.w.back), add: math.Exp(t.w.add), resume: math.Exp(t.w.resume), work: make([]float64, t.steps+2),
	}
	for i, h := range t.words {
		u.told, u.talk = append(u.told, math.Exp(h.step)), append(u.talk, math.Exp(h.added))
		u.open, u.halt = append(u.open, math.Exp(t.open[i])), append(u.halt, math.Exp(t.halt[i]))
	}
	for _, h := range t.heard {
		h.ratios = make([]float64, len(h.steps))
		for k, g := range h.steps {
			h.ratios[k] = math.Exp(g.gain)
		}
	}
	for _, b := range t.base {
		u.base = append(u.base, math.Exp(b))
	}
	return u
}

// arrive gives for each step the likelihood of coming to it from another one.
func (u *sums) arrive(from row, open float64, to []float64) {
	later := u.work
	later[u.steps+1] = 0
	for s := u.steps; s >= 0; s-- {
		later[s] = later[s+1] + from.in[s] + from.added[s]
	}
	to[0] = 0
	line, far := 0.0, 0.0
	for s := 1; s <= u.steps; s++ {
		last := from.in[s-1] + from.added[s-1]
		to[s] = open * (last + line*u.skip + far*u.most + later[s+1]*u.back)
		line = line*u.more + last
		far += last
	}
}

// forward goes from one row to the next over word i and gives the factor that
// brought it to a total of one. enter is what arrive gives, weighed by the word.
func (u *sums) forward(i int, from, to row, enter []float64) float64 {
	h := u.words[i]
	u.arrive(from, u.open[i], enter)
	cross, add := u.resume*u.halt[i], u.add*u.halt[i]
	for s := range from.in {
		in := from.in[s] + enter[s]
		if s > 0 {
			in += from.added[s] * cross
		}
		told := u.told[i] * u.base[s]
		for range h.keys - 1 {
			told *= u.base[s]
		}
		to.in[s] = in * told
		to.added[s] = (from.added[s] + from.in[s]*add) * u.talk[i]
		enter[s] *= told
	}
	for k, g := range h.steps {
		to.in[g.step+1] *= h.ratios[k]
		enter[g.step+1] *= h.ratios[k]
	}
	total := 0.0
	for s := range to.in {
		total += to.in[s] + to.added[s]
	}
	scale := 1 / total
	for s := range to.in {
		to.in[s] *= scale
		to.added[s] *= scale
		enter[s] *= scale
	}
	return scale
}

// backward goes from the likelihoods of what follows word i to those of what
// follows word i-1.
func (u *sums) backward(i int, scale float64, after, before row) {
	h := u.words[i]
	weighed := after.in // of each step: the word and all that follows, entered at the word
	for s := range weighed {
		told := u.told[i] * u.base[s]
		for range h.keys - 1 {
			told *= u.base[s]
		}
		weighed[s] *= told * scale
		after.added[s] *= u.talk[i] * scale
	}
	for k, g := range h.steps {
		weighed[g.step+1] *= h.ratios[k]
	}
	open := u.open[i]
	cross, add := u.resume*u.halt[i], u.add*u.halt[i]
	earlier := u.work // sums of the steps before, each entered
	earlier[0] = 0
	for s := range weighed {
		earlier[s+1] = earlier[s]
		if s > 0 {
			earlier[s+1] += weighed[s]
		}
	}
	line, far := 0.0, 0.0
	for s := u.steps; s >= 0; s-- {
		next := 0.0
		if s < u.steps {
			next = weighed[s+1]
		}
		leave := open * (next + line*u.skip + far*u.most + earlier[s]*u.back)
		before.in[s] = leave + weighed[s] + after.added[s]*add
		before.added[s] = leave + after.added[s]
		if s > 0 {
			before.added[s] += weighed[s] * cross
		}
		line = line*u.more + next
		far += next
	}
}

// odds sums over all paths; states is the best one.
func (t *trellis) odds(states []state) odds {
	n, width := len(t.words), t.steps+1
	o := odds{entries: make([][]entry, t.steps), added: make([]float64, n), in: make([]float64, n)}
	if n == 0 {
		return o
	}
	u := newSums(t)
	block := max(1, min(n, blockCells/4/width))
	scales := make([]float64, n)
	enter := make([]float64, width)
	var heads []row
	now, next := newRow(t.steps), newRow(t.steps)
	now.added[0] = 1
	for i := range n {
		if i%block == 0 {
			head := newRow(t.steps)
			copyRow(head, now)
			heads = append(heads, head)
		}
		scales[i] = u.forward(i, now, next, enter)
		now, next = next, now
	}
	after, before := newRow(t.steps), newRow(t.steps)
	for s := range width {
		after.in[s], after.added[s] = 1, 1
	}
	rows := make([]row, block)
	enters := make([]float64, block*width)
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
			o.take(i, rows[k], after, enters[k*width:(k+1)*width], states[i])
			u.backward(i, scales[i], after, before)
			after, before = before, after
		}
	}
	for _, e := range o.entries {
		reverse(e)
	}
	return o
}

// take reads the chances of a word.
func (o *odds) take(i int, at, after row, enter []float64, path state) {
	total, talk := 0.0, 0.0
	for s := range at.in {
		in, added := at.in[s]*after.in[s], at.added[s]*after.added[s]
		total += in + added
		talk += added
	}
	for s := 1; s < len(enter); s++ {
		if c := enter[s] * after.in[s] / total; c > tinyChance {
			o.entries[s-1] = append(o.entries[s-1], entry{i, c})
		}
	}
	o.added[i] = talk / total
	if s := path.step + 1; path.added {
		o.in[i] = at.added[s] * after.added[s] / total
	} else {
		o.in[i] = at.in[s] * after.in[s] / total
	}
}

func reverse(e []entry) {
	for a, b := 0, len(e)-1; a < b; a, b = a+1, b-1 {
		e[a], e[b] = e[b], e[a]
	}
}
