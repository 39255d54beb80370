package order

import (
	"math"
	"slices"
)

// exact proves an optimum where the order is narrow.
//
// Problem: the best sequence, with proof.
//
// Method: dynamic programming, layer by layer, over the sets of nodes that may
// stand in front (closed under what must come before) and the last node of
// each; a state is dropped when its cost and the walk's bound on the rest
// cannot beat the best sequence known (Held and Karp, J. SIAM 10, 1962;
// bounding: Morin and Marsten, Operations Research 24, 1976). A set with a
// last node comes from one smaller set alone, so every state is made once and
// need not remember its origin.
//
// Cost: for every set, its last nodes times the nodes that may follow. It
// gives up at a cap of states, or as soon as the layers grow so fast that the
// cap is sure to come.
type exact struct {
	walk   *walk
	in     *instance
	words  int // of a set
	limit  int // fine, less all prices: a better sequence costs no more
	layers []*layer
	states int
	bound  int // fine, less all prices: what every better sequence costs
}

// A layer holds the states of all sets of one size. The states of set s are
// first[s]..first[s+1].
type layer struct {
	words int
	sets  bitset // words to a set
	open  bitset // the nodes that may follow each set
	first []int32
	last  []int16
	cost  []int // fine, less the prices of the set
}

func (l *layer) set(s int) bitset     { return l.sets[s*l.words : (s+1)*l.words] }
func (l *layer) follows(s int) bitset { return l.open[s*l.words : (s+1)*l.words] }

// newExact looks for sequences cheaper than upper.
func newExact(w *walk, upper int) *exact {
	return &exact{walk: w, in: w.in, words: (w.n + 63) / 64, limit: (upper-1)*fine - w.sum, bound: -blocked}
}

type verdict int

const (
	unproved verdict = iota // gave up
	proved                  // nothing is cheaper than what was known
	improved                // the sequence found is the optimum
)

// lower is the bound that the finished layers give, if the search gave up.
func (e *exact) lower() int { return (e.bound + e.walk.sum + fine - 1) / fine }

// prove looks for the cheapest sequence below upper among at most cap states.
func (e *exact) prove(cap int, stop func() bool) ([]int32, verdict) {
	w := e.walk
	e.layers = append(e.layers, e.root())
	for k := range w.n {
		from := e.layers[k]
		b := newBreeder(e, from)
		for s := range len(from.first) - 1 {
			if s&255 == 255 && stop() || e.states+len(b.made) > cap {
				return nil, unproved
			}
			b.extend(k, s)
		}
		if len(b.made) == 0 {
			return nil, proved
		}
		e.states += len(b.made)
		e.bound = max(e.bound, b.least)
		if e.hopeless(k, len(b.made), cap) {
			return nil, unproved
		}
		from.open = nil
		e.layers = append(e.layers, b.layer())
	}
	return e.trace(), improved
}

// hopeless guesses, from the growth of the last layer, whether the cap will be
// passed: growth usually falls evenly to none in the middle. Below
// 20,000 states a guess saves no time.
func (e *exact) hopeless(k, made, cap int) bool {
	left := float64(e.walk.n)/2 - float64(k)
	if e.states < 20_000 || left <= 0 {
		return false
	}
	growth := math.Log(float64(made) / float64(len(e.layers[k].last)))
	return growth > 0 && math.Log(float64(made))+growth*left/2 > math.Log(float64(cap))
}

// root is the layer of the empty set, whose last node is the depot.
func (e *exact) root() *layer {
	l := &layer{words: e.words, sets: make(bitset, e.words), open: make(bitset, e.words),
		first: []int32{0, 1}, last: []int16{int16(e.in.n)}, cost: []int{0}}
	for i, early := range e.walk.early {
		if early == 0 {
			l.open.add(i)
		}
	}
	return l
}

// trace walks back from the cheapest full state.
func (e *exact) trace() []int32 {
	n, m := e.in.n, e.in.n+1
	full := e.layers[n]
	best, least := 0, blocked
	for s, c := range full.cost {
		if c += e.walk.cost[int(full.last[s])*m+n]; c < least {
			best, least = s, c
		}
	}
	seq := make([]int32, n)
	set := slices.Clone(full.set(0))
	j, cost := int(full.last[best]), full.cost[best]
	for k := n - 1; ; k-- {
		seq[k] = int32(j)
		if k == 0 {
			return seq
		}
		set.drop(j)
		l := e.layers[k]
		s := 0
		for !slices.Equal(l.set(s), set) {
			s++
		}
		for at := l.first[s]; ; at++ {
			if i := int(l.last[at]); l.cost[at]+e.walk.cost[i*m+j] == cost {
				j, cost = i, l.cost[at]
				break
			}
		}
	}
}

// A breeder makes a layer from the one before it.
type breeder struct {
	e     *exact
	from  *layer
	sets  bitset
	open  bitset
	slots []int32 // hash table: number of a set + 1
	made  []state
	count []int32 // states of each set
	least int     // the least cost of a sequence through any state made
}

type state struct {
	set  int32
	last int16
	cost int
}

func newBreeder(e *exact, from *layer) *breeder {
	size := 64
	for size < 3*len(from.first) {
		size *= 2
	}
	return &breeder{e: e, from: from, slots: make([]int32, size), least: blocked}
}

// extend makes every set that has one node more than set s of k nodes.
func (b *breeder) extend(k, s int) {
	w, n, m := b.e.walk, b.e.in.n, b.e.in.n+1
	set, follows := b.from.set(s), b.from.follows(s)
	lo, hi := b.from.first[s], b.from.first[s+1]
	last, cost := b.from.last[lo:hi], b.from.cost[lo:hi]
	follows.each(func(j int) {
		rest := w.best[k*n+j]
		if via := w.via[k*n+j]; via >= 0 && set.has(int(via)) {
			rest = w.other[k*n+j]
		}
		if rest == blocked {
			return
		}
		least := blocked
		for x, i := range last {
			if c := w.cost[int(i)*m+j]; c < blocked {
				least = min(least, cost[x]+c)
			}
		}
		if least == blocked || least+rest > b.e.limit {
			return
		}
		b.least = min(b.least, least+rest)
		at := b.find(set, follows, j)
		b.count[at]++
		b.made = append(b.made, state{at, int16(j), least})
	})
}

// find numbers the set of set and j, adding it if it is new.
func (b *breeder) find(set, follows bitset, j int) int32 {
	words := b.e.words
	at := len(b.sets)
	b.sets = append(b.sets, set...)
	key := b.sets[at : at+words]
	key.add(j)
	h := key.hash()
	mask := uint64(len(b.slots) - 1)
	for h &= mask; b.slots[h] != 0; h = (h + 1) & mask {
		s := int(b.slots[h]) - 1
		if slices.Equal(b.sets[s*words:(s+1)*words], key) {
			b.sets = b.sets[:at]
			return int32(s)
		}
	}
	s := len(b.count)
	b.slots[h] = int32(s + 1)
	b.count = append(b.count, 0)
	b.open = append(b.open, follows...)
	open := b.open[at : at+words]
	open.drop(j)
	for _, x := range b.e.in.next[j] {
		if b.e.in.pred[x].within(key) {
			open.add(int(x))
		}
	}
	if 2*len(b.count) > len(b.slots) {
		b.grow()
	}
	return int32(s)
}

func (b *breeder) grow() {
	b.slots = make([]int32, 4*len(b.slots))
	mask := uint64(len(b.slots) - 1)
	for s := range b.count {
		h := b.sets[s*b.e.words:(s+1)*b.e.words].hash() & mask
		for b.slots[h] != 0 {
			h = (h + 1) & mask
		}
		b.slots[h] = int32(s + 1)
	}
}

// layer sorts what was made by set.
func (b *breeder) layer() *layer {
	l := &layer{words: b.e.words, sets: b.sets, open: b.open, first: make([]int32, len(b.count)+1),
		last: make([]int16, len(b.made)), cost: make([]int, len(b.made))}
	for s, c := range b.count {
		l.first[s+1] = l.first[s] + c
	}
	at := slices.Clone(l.first)
	for _, m := range b.made {
		l.last[at[m.set]], l.cost[at[m.set]] = m.last, m.cost
		at[m.set]++
	}
	return l
}
