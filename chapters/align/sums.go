package align

import "math"

// sums is the model in likelihoods.
type sums struct {
	*trellis
	skip, most, back, nearBack, moreBack float64
	first                                float64 // of what is left of a chance that leaves the first step out, or goes back to it

	base, small []float64            // of each place: of a word that its plan has not, as logarithms
	next, still []float64            // of each place: that the next part comes, and that a part goes on
	leaves      []float64            // of each part: that the step is left
	skips       []float64            // of each place: that it is left out
	unplanned   map[[2]int][]float64 // what ratios gave

	// Of the places summed over.
	places []int
	index  []int     // of each place, where it is among them; -1 for none
	gaps   []float64 // of each: all between it and the one before left out; -1 for none between
	falls  []float64 // of each: those between passed on the way back
	goes   []float64 // of each: that the next part comes …
	stays  []float64 // … and that one goes on

	mass, later, in, backs, weigh, leave []float64 // to work in
	none                                 []float64 // no likelihood
}

func newSums(t *trellis) *sums {
	n := t.steps + 1
	work := make([]float64, 11*(n+1))
	cut := func() []float64 {
		c := work[:n:n]
		work = work[n:]
		return c
	}
	u := &sums{
		trellis: t, skip: math.Exp(t.w.skip), most: math.Exp(t.w.skipMost),
		back: math.Exp(t.w.back), nearBack: math.Exp(t.w.backNear), moreBack: math.Exp(t.w.backMore),
		first: math.Exp(t.w.first),
		base:  cut(), small: cut(), next: cut(), still: cut(), weigh: cut(), leave: cut(), none: cut(), skips: cut(), mass: cut(), in: cut(), backs: cut(),
		later: make([]float64, n+1), index: make([]int, n), unplanned: map[[2]int][]float64{},
	}
	for s := range n {
		u.index[s], u.next[s], u.skips[s] = -1, 1, math.Exp(t.w.skipMore)
		if s == 0 {
			continue
		}
		u.base[s], u.small[s] = t.base[s-1], t.base[s-1]*t.w.small
		p := min(goesMost, float64(t.parts)/t.expect[s-1])
		u.next[s], u.still[s] = math.Pow(p, t.w.linger), math.Pow(1-p, t.w.linger)
		if t.told != nil {
			u.skips[s] = math.Exp(t.w.skipMore * (1 - t.w.passed*t.told[s-1]))
		}
	}
	for j := range t.parts {
		u.leaves = append(u.leaves, math.Exp(t.w.hasty*math.Pow(1-float64(j)/float64(t.parts-1), t.w.unripe)))
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
	u.gaps, u.falls, u.goes, u.stays = u.gaps[:0], u.falls[:0], u.goes[:0], u.stays[:0]
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
		u.goes, u.stays = append(u.goes, u.next[s]), append(u.stays, u.still[s])
	}
}

// carry brings a row from the places of one stretch to those of another.
func (u *sums) carry(r row, from, to stretch) row {
	if len(from.places) == len(to.places) && &from.places[0] == &to.places[0] {
		return r
	}
	next := newRow(u.parts * len(to.places))
	for j, s := range from.places {
		if k := u.index[s]; k >= 0 {
			for a, b := k, j; a < len(next.said); a, b = a+len(to.places), b+len(from.places) {
				next.said[a], next.talk[a] = r.said[b], r.talk[b]
			}
		}
	}
	return next
}

// last gives the likelihoods after the last word: a film that ends before the
// last step has left steps out.
func (u *sums) last(places []int) row {
	r := newRow(u.parts * len(places))
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
		for j := range u.leaves {
			at := j*len(places) + k
			r.said[at], r.talk[at] = end*u.leaves[j], end*u.leaves[j]
		}
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
	u.leaving(from, mass)
	line := 0.0 // from those after the place
	for k := len(to) - 1; k >= 0; k-- {
		later[k] = later[k+1] + mass[k]
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

// leaving gives for each place the likelihood of leaving it.
func (u *sums) leaving(from row, to []float64) {
	n := len(to)
	for k := range to {
		to[k] = 0
	}
	for j, leaves := range u.leaves {
		said, aside := from.said[j*n:][:n], from.talk[j*n:][:n]
		for k := range to {
			to[k] += (said[k] + aside[k]) * leaves
		}
	}
	for k := range to {
		to[k] *= u.goes[k]
	}
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
	n := len(u.places)
	weigh, goes, stays, before := u.weigh[:n], u.goes[:n], u.stays[:n], u.none[:n]
	for k, s := range u.places {
		weigh[k] = told * ratios[s]
	}
	for j := range u.leaves {
		said, aside := from.said[j*n:][:n], from.talk[j*n:][:n]
		toSaid, toTalk := to.said[j*n:][:n], to.talk[j*n:][:n]
		for k, w := range weigh {
			toTalk[k] = (aside[k] + said[k]*add) * talk
			toSaid[k] = (said[k]*stays[k] + before[k]*goes[k] + aside[k]*cross) * w
		}
		before = said
		if u.places[0] == 0 {
			toSaid[0] = 0
		}
	}
	for k, w := range weigh {
		enter[k] *= w
		to.said[k] += enter[k]
	}
	for j := range h.steps {
		if g := &h.steps[j]; u.index[g.step+1] >= 0 {
			enter[u.index[g.step+1]] *= g.head
		}
	}
	u.hear(h, to.said)
	if i%scaleEvery != 0 {
		return 1
	}
	scale := 1 / to.total()
	for k := range to.said {
		to.said[k] *= scale
		to.talk[k] *= scale
	}
	for k := range enter {
		enter[k] *= scale
	}
	return scale
}

// backward goes from the likelihoods of what follows word i to those of what
// follows word i-1; after is used up.
func (u *sums) backward(i int, scale float64, after, before row) {
	u.weighAll(i, scale, after)
	n := len(u.places)
	open, cross, add := u.open[i], u.goesOn[i], u.aside[i]
	in := u.in[:len(u.places)]
	copy(in, after.said[:n])
	if u.places[0] == 0 {
		in[0] = 0
	}
	u.shunned(i, in)
	backs, leave := u.backs[:n], u.leave[:n]
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
		leave[k] = open * u.goes[k] * (next + line*u.skip + (far-next)*most + backs[k])
		line = (line + next) * u.skips[s]
	}
	on := u.none[:n]
	for j := len(u.leaves) - 1; j >= 0; j-- {
		leaves, goes, stays := u.leaves[j], u.goes[:n], u.stays[:n]
		said, aside := after.said[j*n:][:n], after.talk[j*n:][:n]
		beforeSaid, beforeTalk := before.said[j*n:][:n], before.talk[j*n:][:n]
		for k, l := range leave {
			beforeSaid[k] = l*leaves + said[k]*stays[k] + on[k]*goes[k] + aside[k]*add
			beforeTalk[k] = l*leaves + aside[k] + said[k]*cross
		}
		if u.places[0] == 0 {
			beforeTalk[0] = leave[0]*leaves + aside[0]
		}
		on = said
	}
}

// weighAll weighs all states by word i.
func (u *sums) weighAll(i int, scale float64, of row) {
	h := u.words[i]
	told, talk, ratios := h.told*scale, h.talk*u.chat[i]*scale, u.ratios(h)
	n := len(u.places)
	weigh := u.weigh[:n]
	for k, s := range u.places {
		weigh[k] = told * ratios[s]
	}
	for j := range u.leaves {
		said, aside := of.said[j*n:][:n], of.talk[j*n:][:n]
		for k, w := range weigh {
			said[k] *= w
			aside[k] *= talk
		}
	}
	u.hear(h, of.said)
}

// hear weighs the parts of each step by what a word says for it.
func (u *sums) hear(h *hearing, said []float64) {
	n := len(u.places)
	for j := range h.steps {
		g := &h.steps[j]
		k := u.index[g.step+1]
		if k < 0 {
			continue
		}
		factor, change := g.head, (g.tail-g.head)/float64(len(u.leaves)-1)
		for ; k < len(said); k += n {
			said[k] *= factor
			factor += change
		}
	}
}
