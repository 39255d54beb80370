package align

import "math"

// sums is the model in likelihoods.
type sums struct {
	*trellis
	skip, most, back, nearBack, moreBack float64
	hasty                                float64
	first                                float64 // of what is left of a chance that leaves the first step out, or goes back to it

	base, small []float64            // of each place: of a word that its plan has not, as logarithms
	leaves      []float64            // of each place: that it is left
	turns       []float64            // of each place: that its second part comes
	skips       []float64            // of each place: that it is left out
	unplanned   map[[2]int][]float64 // what ratios gave

	// Of the places summed over.
	places []int
	index  []int     // of each place, where it is among them; -1 for none
	gaps   []float64 // of each: all between it and the one before left out; -1 for none between
	falls  []float64 // of each: those between passed on the way back

	mass, later, in, backs []float64 // to work in
}

func newSums(t *trellis) *sums {
	n := t.steps + 1
	work := make([]float64, 9*(n+1))
	cut := func() []float64 {
		c := work[:n:n]
		work = work[n:]
		return c
	}
	u := &sums{
		trellis: t, skip: math.Exp(t.w.skip), most: math.Exp(t.w.skipMost),
		back: math.Exp(t.w.back), nearBack: math.Exp(t.w.backNear), moreBack: math.Exp(t.w.backMore),
		hasty: math.Exp(t.w.hasty), first: math.Exp(t.w.first),
		base: cut(), small: cut(), leaves: cut(), turns: cut(), skips: cut(), mass: cut(), in: cut(), backs: cut(),
		later: make([]float64, n+1), index: make([]int, n), unplanned: map[[2]int][]float64{},
	}
	for s := range n {
		u.index[s], u.leaves[s], u.turns[s], u.skips[s] = -1, 1, math.Exp(t.w.turn), math.Exp(t.w.skipMore)
		if s == 0 {
			continue
		}
		u.base[s], u.small[s] = t.base[s-1], t.base[s-1]*t.w.small
		if t.length != nil {
			u.leaves[s] = math.Pow(t.length[s-1], -t.w.lengthy)
			u.turns[s] *= math.Pow(t.length[s-1], -t.w.linger)
		}
		if t.told != nil {
			u.skips[s] = math.Exp(t.w.skipMore * (1 - t.w.passed*t.told[s-1]))
		}
	}
	if t.steps > 0 {
		u.skips[1] *= u.first
	}
	return u
}

// over makes ready to sum over places.
func (u *sums) over(places []int) {
	if len(places) == len(u.places) && &places[0] == &u.places[0] {
		return
	}
	for _, s := range u.places {
		u.index[s] = -1
	}
	u.places = places
	u.gaps, u.falls = u.gaps[:0], u.falls[:0]
	for k, s := range places {
		u.index[s] = k
		gap, fall := -1.0, 1.0
		for between := s - 1; k > 0 && between > places[k-1]; between-- {
			if u.isAbsent(between) {
				continue
			}
			if gap < 0 {
				gap = 1
			}
			gap *= u.skips[between]
			fall *= u.moreBack
		}
		u.gaps, u.falls = append(u.gaps, gap), append(u.falls, fall)
	}
}

// carry brings a row from the places of one stretch to those of another.
func (u *sums) carry(r row, from, to stretch) row {
	if len(from.places) == len(to.places) && &from.places[0] == &to.places[0] {
		return r
	}
	next := newRow(len(to.places))
	for j, s := range from.places {
		if k := u.index[s]; k >= 0 {
			next.head[k], next.tail[k], next.talk[k] = r.head[j], r.tail[j], r.talk[j]
		}
	}
	return next
}

// last gives the likelihoods after the last word: a film that ends before the
// last step has left steps out.
func (u *sums) last(places []int) row {
	r := newRow(len(places))
	for k, s := range places {
		end := 1.0
		left := 0
		for later := s + 1; later <= u.steps; later++ {
			if !u.isAbsent(later) {
				left++
			}
		}
		if left > 0 {
			end = math.Exp(u.w.cut + u.w.cutMore*float64(min(left, 4)-1))
		}
		r.head[k], r.tail[k], r.talk[k] = end, end, end
	}
	return r
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

// arrive gives for each place the likelihood of coming to it with word i from
// another one.
func (u *sums) arrive(i int, from row, to []float64) {
	open := u.open[i]
	mass, later := u.mass[:len(to)], u.later[:len(to)+1]
	later[len(to)] = 0
	line := 0.0 // from those after the place
	for k := len(to) - 1; k >= 0; k-- {
		m := (from.head[k]*u.hasty + from.tail[k] + from.talk[k]) * u.leaves[u.places[k]]
		mass[k] = m
		later[k] = later[k+1] + m
		if k+1 < len(to) {
			line = (line*u.moreBack + mass[k+1]*u.nearBack) * u.falls[k+1]
		}
		to[k] = line + later[k+1]*u.back
		if u.places[k] == 1 {
			to[k] *= u.first
		}
	}
	line, far := 0.0, 0.0 // from those before it, all between left out
	for k, s := range u.places {
		next, beyond := 0.0, 0.0
		if k > 0 {
			next = mass[k-1]
			if beyond = next; u.places[k-1] == 0 {
				beyond *= u.first
			}
			if gap := u.gaps[k]; gap >= 0 {
				line, next = (line+next)*gap, 0
				far, beyond = far+beyond, 0
			}
		}
		to[k] = open * (to[k] + next + line*u.skip + far*u.most)
		line = (line + next) * u.skips[s]
		far += beyond
	}
	if u.places[0] == 0 {
		to[0] = 0 // nothing comes back to before the first step
	}
	u.shunned(i, to)
}

// again is the likelihood of what follows on going back to a place.
func (u *sums) again(in []float64, k int) float64 {
	if u.places[k] == 1 {
		return in[k] * u.first
	}
	return in[k]
}

// shunned takes from the likelihood of entering places what a run before says
// of them.
func (u *sums) shunned(i int, in []float64) {
	if u.shun == nil {
		return
	}
	for k, s := range u.places {
		if s > 0 {
			in[k] *= u.shun[s-1]
		}
	}
	for _, m := range u.spare[i] {
		if k := u.index[m.step+1]; k >= 0 {
			in[k] *= m.factor
		}
	}
}

// forward goes from one row to the next over word i and gives the factor that
// brings it to a total of one, as every few words it does. enter is what arrive
// gives, weighed by the word.
func (u *sums) forward(i int, from, to row, enter []float64) float64 {
	h := u.words[i]
	u.arrive(i, from, enter)
	cross, add := u.goesOn[i], u.aside[i]
	told, talk, ratios := h.told, h.talk*u.chat[i], u.ratios(h)
	for k, s := range u.places {
		head, tail, aside := from.head[k], from.tail[k], from.talk[k]
		weigh := told * ratios[s]
		e := enter[k] * weigh
		enter[k] = e
		to.talk[k] = (aside + (head+tail)*add) * talk
		to.tail[k] = (tail + head*u.turns[s] + aside*cross) * weigh
		to.head[k] = head*weigh + e
	}
	if u.places[0] == 0 {
		to.tail[0] = 0
	}
	for j := range h.steps {
		g := &h.steps[j]
		if k := u.index[g.step+1]; k >= 0 {
			to.head[k] *= g.head
			enter[k] *= g.head
			to.tail[k] *= g.tail
		}
	}
	if i%scaleEvery != 0 {
		return 1
	}
	scale := 1 / to.total()
	for k := range to.head {
		to.head[k] *= scale
		to.tail[k] *= scale
		to.talk[k] *= scale
		enter[k] *= scale
	}
	return scale
}

// backward goes from the likelihoods of what follows word i to those of what
// follows word i-1; after is used up.
func (u *sums) backward(i int, scale float64, after, before row) {
	h := u.words[i]
	told, talk, ratios := h.told*scale, h.talk*u.chat[i]*scale, u.ratios(h)
	for k, s := range u.places {
		weigh := told * ratios[s]
		after.head[k] *= weigh
		after.tail[k] *= weigh
		after.talk[k] *= talk
	}
	for j := range h.steps {
		g := &h.steps[j]
		if k := u.index[g.step+1]; k >= 0 {
			after.head[k] *= g.head
			after.tail[k] *= g.tail
		}
	}
	open, cross, add := u.open[i], u.goesOn[i], u.aside[i]
	in := u.in[:len(u.places)]
	copy(in, after.head)
	if u.places[0] == 0 {
		in[0] = 0
	}
	u.shunned(i, in)
	backs := u.backs[:len(in)]
	line, sum := 0.0, 0.0
	for k := range in {
		if k > 0 {
			line = (line*u.moreBack + u.again(in, k-1)*u.nearBack) * u.falls[k]
		}
		backs[k] = line + sum*u.back
		sum += u.again(in, k)
	}
	line, far := 0.0, 0.0
	for k := len(in) - 1; k >= 0; k-- {
		next := 0.0
		if k+1 < len(in) {
			next = in[k+1]
			if gap := u.gaps[k+1]; gap >= 0 {
				line, next = (line+next)*gap, 0
			}
			far += in[k+1]
		}
		s, most := u.places[k], u.most
		if s == 0 {
			most *= u.first
		}
		leave := open * u.leaves[s] * (next + line*u.skip + (far-next)*most + backs[k])
		line = (line + next) * u.skips[s]
		before.tail[k] = leave + after.tail[k] + after.talk[k]*add
		before.head[k] = leave*u.hasty + after.head[k] + after.tail[k]*u.turns[s] + after.talk[k]*add
		before.talk[k] = leave + after.talk[k]
		if s > 0 {
			before.talk[k] += after.tail[k] * cross
		}
	}
}
