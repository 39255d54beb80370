package hazard

import "slices"

// Finding the lexicon's phrases in a stretch of text: look-alikes are blanked
// first, then the longest things are taken, then the acts. Cost: linear in the
// words; each costs one look-up and the few edges that lead on from it.

// zone is where about a step a word stands.
type zone uint8

// The zones; a rule's term may be met in several.
const (
	here zone = iota // the words of the action
	told             // the words of narration and the like
	gear             // tools in use
	near             // title, parts
	over             // the object and the states it is in
)

// hit is a phrase of the lexicon found in a text.
type hit struct {
	marks       set // what it says; less than its entry's where it is denied
	act         bool
	state       bool
	modifier    bool // not the head of its compound: "oven" of "oven glove"
	quiet       bool // talked of, not done
	implied     bool // stands for a pronoun or for what is not said
	zone        zone
	from, to    int32 // tokens
	gapped      bool
	thirdPerson bool  // "pulls": what stands before it is who does it
	text        int32 // index of the source it stands in
	start       int32 // bytes of that source
	end         int32
}

// find appends the hits of some words, in order of place.
func (x *lexicon) find(hits []hit, toks []token, z zone, text int32) []hit {
	x.blank(toks)
	f := finder{lexicon: x, toks: toks, zone: z, text: text, hits: hits, verbAt: -1}
	for i := 0; i < len(toks); i++ {
		if !toks[i].blank {
			f.at(i)
		}
	}
	return f.hits
}

// finder goes through the words once. Words before thingTo belong to a longer
// thing, those before stateTo to words for a state, which may name things but
// are no acts.
type finder struct {
	*lexicon
	toks             []token
	zone             zone
	text             int32
	hits             []hit
	thingTo, stateTo int
	verbAt           int // the last word of a parted verb: no thing
}

// choice is the best of the phrases of one kind that begin at a word: of several
// words before one with a gap before a single word, then the longest. Entries
// that share a phrase say all that each of them says.
type choice struct {
	rank   int // 0: none
	to     int
	gapped bool
	marks  set
}

func (c *choice) offer(e *entry, words, to int, gapped bool) {
	rank := 1
	switch {
	case gapped:
		rank = 1000 - words
	case words > 1:
		rank = 1000 + words
	}
	if rank > c.rank {
		*c = choice{rank: rank, to: to, gapped: gapped}
	}
	if rank == c.rank {
		c.marks.join(&e.marks)
	}
}

// blank takes look-alikes out.
func (x *lexicon) blank(toks []token) {
	for i := 0; i < len(toks); i++ {
		n, looks := 0, toks[i].begins
		if toks[i].grammar&number != 0 {
			looks |= x.forms.list[x.own.number].begins
		}
		if looks&alike == 0 {
			continue
		}
		x.walk(toks, i, func(e uint16, to int, gapped bool) {
			if x.entries[e].kind == aBlank {
				n = max(n, to-i)
			}
		})
		for j := i; j < i+n; j++ {
			toks[j].blank = true
		}
		i += max(0, n-1)
	}
}

// at adds the hits that begin at a word.
func (f *finder) at(i int) {
	if i < f.thingTo || i == f.verbAt {
		return
	}
	var thing, state, act choice
	f.walk(f.toks, i, func(n uint16, to int, gapped bool) {
		switch e := &f.entries[n]; e.kind {
		case aThing, anObject:
			if e.kind == anObject && f.zone != over {
				return
			}
			if f.zone == gear && !e.marks.has(f.own.toolish) {
				return
			}
			thing.offer(e, to-i, to, gapped)
		case aState, atRest:
			if e.kind == atRest && f.zone != over || to <= f.stateTo {
				return // the "off" of "back off"
			}
			if e.kind == atRest && to == i+1 && f.toks[i].grammar&prep != 0 && to < len(f.toks) && !f.toks[to].bar && !f.toks[to].comma {
				return // a lamp that is on, but not one on a wall
			}
			state.offer(e, to-i, to, gapped)
		case anAct:
			if gapped && (f.noParticle(e, to) || f.befell(i, to)) {
				return
			}
			act.offer(e, to-i, to, gapped)
		}
	})
	if act.rank > 0 && (f.zone > told || i < f.stateTo || state.to > i+1 || !f.does(i, &act, thing.to)) {
		act.rank = 0
	}
	if thing.rank > 0 && thing.to == i+1 && act.rank == 0 && f.noNoun(i) {
		thing.rank = 0
	}
	if state.rank > 0 && thing.rank > 0 && act.rank == 0 && thing.to > state.to {
		state.rank = 0 // "hot water cylinder" says of no cylinder that it is hot
	}
	if state.rank > 0 {
		f.add(hit{state: true}, &state, i)
		f.stateTo = max(f.stateTo, state.to)
	}
	if act.rank > 0 && act.gapped {
		f.verbAt = act.to - 1
	}
	if act.rank > 0 {
		f.add(hit{act: true, gapped: act.gapped, thirdPerson: f.toks[i].kind&(sForm|baseForm) == sForm}, &act, i)
	}
	if thing.rank > 0 && act.rank == 0 {
		f.add(hit{}, &thing, i)
		f.thingTo = thing.to
	}
	if thing.rank == 0 && act.rank == 0 && state.rank == 0 && f.zone == here && i >= f.stateTo && i > f.verbAt && orders(f.toks, i) {
		something := choice{to: i + 1, marks: f.implied[f.own.busy]}
		f.add(hit{act: true}, &something, i)
	}
}

func (f *finder) add(h hit, c *choice, from int) {
	h.marks, h.zone, h.text = c.marks, f.zone, f.text
	h.from, h.to = int32(from), int32(c.to)
	h.start, h.end = f.toks[from].start, f.toks[c.to-1].end
	f.hits = append(f.hits, h)
}

// does says whether words that may be an act are one here: a participle is,
// "the drill" is not, and neither is what begins a longer thing.
func (f *finder) does(i int, act *choice, thingTo int) bool {
	if thingTo > i+1 && (act.gapped || act.to <= thingTo) && nouny(f.toks, i) || thingTo > act.to {
		return false
	}
	kind := f.toks[i].kind
	if thingTo > i+1 {
		return kind&baseForm != 0 && takesObject(f.toks, thingTo-1)
	}
	before := grammar(0)
	if i > 0 {
		before = f.toks[i-1].grammar
	}
	switch {
	case kind&ingForm != 0:
		return thingTo <= i || !nouny(f.toks, i)
	case kind&pastForm != 0 && kind&baseForm == 0:
		return before&(det|adj) == 0 || before&(object|aux) != 0
	case act.to > i+1:
		return before&(det|adj|number) == 0 || before&(object|subject|aux|neg|adverb|part) != 0
	}
	return !nouny(f.toks, i)
}

// befell holds for a parted verb in the past with nothing parted and nothing after
// it: "the fuse burned out" is what happened to the fuse, and nobody did it. With
// an object before it somebody did: "cut it out", "was cut out by".
func (f *finder) befell(i, to int) bool {
	k := f.toks[i].kind
	return to == i+2 && k&pastForm != 0 && k&baseForm == 0 && (to >= len(f.toks) || f.toks[to].bar || f.toks[to].comma)
}

// noNoun says whether a word that may be a thing is none where it stands: an
// order of its own ("water the roses", "chuck it in the bin"), or a word that
// joins clauses ("till it stops" is no cash desk).
func (f *finder) noNoun(i int) bool {
	t := &f.toks[i]
	first := i == 0 || t.bar
	before := grammar(0)
	if !first {
		before = f.toks[i-1].grammar
	}
	if t.grammar&sub != 0 {
		return before&(det|adj) == 0
	}
	if f.zone != here || t.grammar != 0 || i+1 >= len(f.toks) || f.toks[i+1].bar || f.toks[i+1].comma ||
		f.toks[i+1].grammar&(det|object) == 0 || f.toks[i+1].grammar&(subject|sub) != 0 {
		return false
	}
	return first || t.comma || before&(coord|infinitive) != 0 && before&prep == 0
}

// walk calls for every phrase that begins at a word, in no order.
func (x *lexicon) walk(toks []token, i int, found func(entry uint16, to int, gapped bool)) {
	if at := toks[i].begins &^ alike; at != 0 && !toks[i].blank {
		x.follow(toks, at, span{i, i + 1}, false, found)
	}
	if n := x.own.number; toks[i].grammar&number != 0 && toks[i].form != n && !toks[i].blank {
		x.follow(toks, x.forms.list[n].begins&^alike, span{i, i + 1}, false, found) // "48 v" is of so many volts too
	}
}

// span is the words that led to a node.
type span struct{ from, to int }

func (x *lexicon) follow(toks []token, at uint16, s span, gapped bool, found func(uint16, int, bool)) {
	for at != 0 {
		n, end := &x.tree.nodes[at], &x.tree.nodes[at+1]
		for _, e := range x.tree.ends[n.ends:end.ends] {
			found(e, s.to, gapped)
		}
		if n.gap != 0 {
			x.leap(toks, n.gap, s, found)
		}
		if s.to >= len(toks) || toks[s.to].bar || toks[s.to].comma || toks[s.to].blank {
			return
		}
		next := x.tree.step(at, toks[s.to].form)
		if next == 0 && toks[s.to].grammar&number != 0 {
			next = x.tree.step(at, x.own.number)
		}
		at = next
		s.to++
	}
}

// leap follows what stands behind a gap, each word where it stands first.
func (x *lexicon) leap(toks []token, at uint16, s span, found func(uint16, int, bool)) {
	for j := s.to; j < len(toks) && j <= s.to+gapMax && !parts(toks, j); j++ {
		if !toks[j].rejoins || toks[j].blank {
			continue
		}
		form := toks[j].form
		next := x.tree.step(at, form)
		if next == 0 || slices.ContainsFunc(toks[s.to:j], func(t token) bool { return t.form == form && !t.blank }) {
			continue
		}
		x.follow(toks, next, span{s.from, j + 1}, true, found)
	}
}

// parts says whether a gap may not reach over a word.
func parts(toks []token, i int) bool {
	return toks[i].bar || toks[i].comma || toks[i].grammar&(sub|coord) != 0
}

// noParticle says whether the word before to is no particle of a parted verb:
// in "take the back panel" it belongs to a thing, in "leave them on the carpet"
// to a place.
func (f *finder) noParticle(e *entry, to int) bool {
	if to >= len(f.toks) || f.toks[to].bar || f.toks[to].comma {
		return false
	}
	g := f.toks[to].grammar
	return g == 0 || e.marks.has(f.own.energise) && g&det != 0
}
