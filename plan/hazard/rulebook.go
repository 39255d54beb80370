package hazard

import "math/bits"

// rulebook is rules with what finds the few of hundreds that a sentence can
// meet. It is laid out flat: most rules are only ever looked at here.
type rulebook struct {
	rules []rule
	begun [][]uint16 // by mark: the rules whose first term asks for it
	needs []need     // of all rules, in their order
	from  []uint16   // by rule: where its needs begin; the last entry ends them
	firm  []uint64   // the rules that narration can meet, a bit each
	stout []uint64   // those that a harmless object does not silence
}

// need is a quick test of a rule, before anybody looks who does what to which
// thing: some of these marks must be there, or none.
type need struct {
	marks uint64 // of one word of a set
	word  uint8
	where needWhere
	or    bool // the next need will do as well
}

type needWhere uint8

const (
	inActs    needWhere = iota // acts of the sentence
	inThings                   // things of the sentence, or the object
	inAll                      // anywhere
	notInAll                   // nowhere
	notInHere                  // not in the sentence
)

// file lays out what finds the rules.
func (b *rulebook) file(marks int) {
	words := len(b.rules)/64 + 1
	b.begun, b.firm, b.stout = make([][]uint16, marks), make([]uint64, words), make([]uint64, words)
	for n := range b.rules {
		r, bit := &b.rules[n], uint64(1)<<(n%64)
		r.terms[0].a.each(func(m uint16) { b.begun[m] = append(b.begun[m], uint16(n)) })
		if r.firm() {
			b.firm[n/64] |= bit
		}
		if r.weak == 0 {
			b.stout[n/64] |= bit
		}
		b.from = append(b.from, uint16(len(b.needs)))
		for i := range r.terms[1:] {
			b.require(&r.terms[i+1])
		}
		b.require(&r.terms[0]) // last: it is half met when the rule is asked
	}
	b.from = append(b.from, uint16(len(b.needs)))
}

// require adds what a term needs at least.
func (b *rulebook) require(t *term) {
	switch t.kind {
	case binds, shares:
		b.need(&t.a, inActs)
		b.need(&t.b, inThings)
		b.need(&t.c, inThings)
	case does:
		b.need(&t.a, inActs)
	case within:
		b.need(&t.a, inThings)
	case tool, about:
		b.need(&t.a, inAll)
	case nowhere:
		b.need(&t.a, notInAll)
	case unless:
		b.need(&t.a, notInHere)
	}
}

func (b *rulebook) need(s *set, where needWhere) {
	last := -1
	for i, marks := range s {
		if marks == 0 {
			continue
		}
		if last >= 0 && where < notInAll {
			b.needs[last].or = true
		}
		last = len(b.needs)
		b.needs = append(b.needs, need{marks: marks, word: uint8(i), where: where})
	}
}

// due appends the rules that may be met in a scene, in their order.
func (b *rulebook) due(dst []uint16, s *scene) []uint16 {
	s.asked = append(s.asked[:0], make([]uint64, len(b.firm))...)
	s.here.each(func(m uint16) {
		for _, n := range b.begun[m] {
			s.asked[n/64] |= 1 << (n % 64)
		}
	})
	for i, asked := range s.asked {
		if s.strict {
			asked &= b.firm[i]
		}
		if s.harmless {
			asked &= b.stout[i]
		}
		for ; asked != 0; asked &= asked - 1 {
			if n := 64*i + bits.TrailingZeros64(asked); s.may(b.needs[b.from[n]:b.from[n+1]]) {
				dst = append(dst, uint16(n))
			}
		}
	}
	return dst
}

// may says whether the needs of a rule are met in the scene.
func (s *scene) may(needs []need) bool {
	sets := [...]*set{inActs: &s.acts, inThings: &s.things, inAll: &s.all, notInAll: &s.all, notInHere: &s.here}
	met := false
	for i := range needs {
		n := &needs[i]
		met = met || sets[n.where][n.word]&n.marks != 0
		if n.or {
			continue
		}
		if met == (n.where >= notInAll) {
			return false
		}
		met = false
	}
	return true
}
