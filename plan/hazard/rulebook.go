package hazard

import (
	"cmp"
	"math/bits"
	"slices"
)

// rulebook is rules with what finds the few of hundreds that a sentence can
// meet. It is laid out flat: most rules are only ever looked at here.
type rulebook struct {
	rules []rule
	asks  [inHere]asks
	needs []need   // of all rules, in their order
	from  []uint16 // by rule: where its needs begin; the last entry ends them
	firm  []uint64 // the rules that narration can meet, a bit each
	stout []uint64 // those that a harmless object does not silence
}

// asks are the rules that are asked when a mark is there.
type asks struct {
	marks set      // those that any rule is asked for by
	from  []uint16 // by mark: where its rules begin; the last entry ends them
	rules []uint16
}

// of are the rules of a mark.
func (a *asks) of(m int) []uint16 { return a.rules[a.from[m]:a.from[m+1]] }

// need is a quick test of a rule, before anybody looks who does what to which
// thing: some of these marks must be there, or none.
type need struct {
	marks uint64 // of one word of a set
	word  uint8
	where where
	not   bool
	or    bool // the next need will do as well
}

// where is where marks are looked for.
type where uint8

const (
	inActs   where = iota // acts of the sentence
	inThings              // things of the sentence, or the object
	inAll                 // anywhere
	inHere                // in the sentence
	wheres
)

// group is marks of which one must be there, or none.
type group struct {
	marks set
	where where
	not   bool
}

// groups are what a term needs at least.
func (t *term) groups() []group {
	switch t.kind {
	case binds, shares:
		all := []group{{marks: t.a, where: inActs}, {marks: t.b, where: inThings}, {marks: t.c, where: inThings}}
		return slices.DeleteFunc(all, func(g group) bool { return g.marks.empty() })
	case does:
		return []group{{marks: t.a, where: inActs}}
	case within:
		return []group{{marks: t.a, where: inThings}}
	case nowhere:
		return []group{{marks: t.a, where: inAll, not: true}}
	case unless:
		return []group{{marks: t.a, where: inHere, not: true}}
	}
	return []group{{marks: t.a, where: inAll}}
}

// file lays out what finds the rules. A rule is asked for by what it needs most
// rarely: "work>chimney" when there is a chimney, and not at all work. said is
// by mark how many words say it.
func (b *rulebook) file(said []int) {
	words := len(b.rules)/64 + 1
	b.firm, b.stout = make([]uint64, words), make([]uint64, words)
	asked := [inHere][][]uint16{}
	for i := range asked {
		asked[i] = make([][]uint16, len(said))
	}
	for n := range b.rules {
		r, bit := &b.rules[n], uint64(1)<<(n%64)
		if r.firm() {
			b.firm[n/64] |= bit
		}
		if r.weak == 0 {
			b.stout[n/64] |= bit
		}
		var all []group
		for i := range r.terms {
			all = append(all, r.terms[i].groups()...)
		}
		slices.SortStableFunc(all, func(a, b group) int { return cmp.Compare(a.common(said), b.common(said)) })
		rarest := &all[0] // never one that must not be there: the first term needs a mark
		rarest.marks.each(func(m uint16) {
			asked[rarest.where][m] = append(asked[rarest.where][m], uint16(n))
		})
		b.from = append(b.from, uint16(len(b.needs)))
		for i := range all[1:] {
			b.need(&all[i+1])
		}
	}
	b.from = append(b.from, uint16(len(b.needs)))
	for i := range asked {
		b.asks[i] = packAsks(asked[i])
	}
}

// packAsks lays out what is asked for by each mark.
func packAsks(byMark [][]uint16) asks {
	var a asks
	for m, rules := range byMark {
		if len(rules) > 0 {
			a.marks.add(uint16(m))
		}
		a.from = append(a.from, uint16(len(a.rules)))
		a.rules = append(a.rules, rules...)
	}
	a.from = append(a.from, uint16(len(a.rules)))
	return a
}

// common is how readily a group is met: those that must not be there mostly are.
func (g *group) common(said []int) int {
	n := 0
	g.marks.each(func(m uint16) { n += said[m] })
	switch {
	case g.not:
		return 1 << 30
	case g.where == inAll:
		return 2 * n // said in this sentence, or before, or of the object
	}
	return n
}

func (b *rulebook) need(g *group) {
	last := -1
	for i, marks := range g.marks {
		if marks == 0 {
			continue
		}
		if last >= 0 && !g.not {
			b.needs[last].or = true
		}
		last = len(b.needs)
		b.needs = append(b.needs, need{marks: marks, word: uint8(i), where: g.where, not: g.not})
	}
}

// due appends to dst[:0] the rules that may be met in a scene, in their order.
func (b *rulebook) due(dst []uint16, s *scene) []uint16 {
	dst = dst[:0]
	for where := range b.asks {
		asks, sums := &b.asks[where], &s.sums[where]
		for i := range sums {
			for w := sums[i] & asks.marks[i]; w != 0; w &= w - 1 {
				for _, n := range asks.of(64*i + bits.TrailingZeros64(w)) {
					silent := s.strict && !has(b.firm, n) || s.harmless && !has(b.stout, n)
					if !silent && s.may(b.needs[b.from[n]:b.from[n+1]]) {
						dst = append(dst, n)
					}
				}
			}
		}
	}
	slices.Sort(dst)
	return slices.Compact(dst)
}

// has says whether a rule's bit is set.
func has(bits []uint64, n uint16) bool { return bits[n/64]&(1<<(n%64)) != 0 }

// may says whether the needs of a rule are met in the scene.
func (s *scene) may(needs []need) bool {
	met := false
	for i := range needs {
		n := &needs[i]
		met = met || s.sums[n.where][n.word]&n.marks != 0
		if n.or {
			continue
		}
		if met == n.not {
			return false
		}
		met = false
	}
	return true
}
