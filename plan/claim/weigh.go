package claim

import (
	_ "embed"
	"math"
	"math/bits"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// One decision for every number: of all that it may be read as, said of by an offer
// each, the one that weighs most, or none, where all weigh less than nothing. The
// weights are those of a conditional log-linear model (Berger, Della Pietra and Della
// Pietra 1996) whose features stand in one table by their hash (Weinberger and others
// 2009: those that fall together share a weight). go generate learns them from
// labelled sentences; learn_test.go says how.

//go:embed weights.bin
var learned string

// weightsSize is how many weights there are, a power of two; each is a byte, 128 for
// none, in steps of weightStep.
const (
	weightsSize = 1 << 16
	noWeight    = 128
	weightStep  = 1.0 / 32
)

// feature is a thing that may be said of a number or of an offer, by its hash.
type feature uint32

// with is two features at once.
func (a feature) with(b feature) feature {
	return (a*0x9E3779B1 ^ b + 0x7F4A7C15) * 0x85EBCA6B
}

// slot is a feature's place in the table.
func (a feature) slot() int { return int(a >> 16) }

// aspect is what a feature speaks of; it keeps those of a sort apart.
type aspect uint32

const (
	always aspect = iota
	kindOf
	wordBefore
	wordTwoBefore
	wordsBefore
	wordBehind
	wordTwoBehind
	classBefore
	classBehind
	moodOf
	verbOf
	subjectOf
	sizeOf
	manner
	placed
	wordLeft
	wordRight
	company
	headOf
	unitWord
	distance
	joint
	agree
	dialOf
	formOf
	unitIs
	bareOf
	hold
	topic
)

func is(s aspect, what uint32) feature { return feature(s+1)*0x01000193 ^ feature(what)*0x27D4EB2F }

func (r *reader) wordFeature(s aspect, i int) feature {
	switch {
	case i < 0:
		return is(s, 1)
	case i >= len(r.words):
		return is(s, 2)
	}
	return is(s, r.words[i].hash)
}

// number is a number of the sentence about which is to be decided.
type number struct {
	prose.Span
	f      *prose.Figure // nil for an article that says one
	i      int           // of the figures
	at, n  int           // its first word and the one behind it
	v      float64
	whole  bool
	spoken bool
}

// see lists what is to be seen of a number and around it: first what weighs for all
// offers alike and for each form, then, from r.ofUnits on, what for each unit as well.
func (r *reader) see(c *number) {
	s := append(r.scene[:0], is(always, 0))
	at := min(c.at, len(r.words)-1)
	kind := uint32(99)
	if c.f != nil {
		kind = uint32(c.f.Kind)
	}
	mood := uint32(r.words[at].mood)
	s = append(s, is(kindOf, kind), is(moodOf, mood), is(manner, uint32(oneIf(c.spoken)|oneIf(c.whole)<<1)))
	s = r.seeClause(s, c, mood)
	s = r.seeCompany(s, c)
	r.ofForms = len(s)
	s = append(s, r.wordFeature(wordTwoBefore, r.inClause(c.at, -2)), r.wordFeature(wordTwoBehind, r.inClause(c.n, 1)))
	s = append(s, r.wordFeature(wordsBefore, r.inClause(c.at, -2)).with(r.wordFeature(wordsBefore, r.inClause(c.at, -1))))
	s = r.seeClasses(s, classBefore, c.at-1)
	s = r.seeClasses(s, classBehind, c.n)
	r.ofUnits = len(s)
	s = append(s, is(sizeOf, sizeClass(c.v)), r.wordFeature(wordBefore, r.inClause(c.at, -1)), r.wordFeature(wordBehind, r.inClause(c.n, 0)))
	s = r.seeTopics(s, c)
	const reach = 9
	for j := c.at - 1; j >= 0 && j >= c.at-reach; j-- {
		s = append(s, r.wordFeature(wordLeft, j))
	}
	for j := c.n; j < len(r.words) && j < c.n+reach; j++ {
		s = append(s, r.wordFeature(wordRight, j))
	}
	r.scene = s
}

// seeTopics lists of what the words around speak: of heat, of turning, of paying.
func (r *reader) seeTopics(s []feature, c *number) []feature {
	const reach = 9
	k := &r.known.classes
	topics := k.heat | k.angle | k.poured | k.long | k.heavy | k.priced | k.thermal | k.measured | k.dimension | k.meter | k.inched | k.thread | k.fluid | k.resistive | k.settling
	var found class
	for j := max(0, c.at-reach); j < min(len(r.words), c.n+reach); j++ {
		found |= r.words[j].classes & topics
	}
	for b := uint64(found); b != 0; b &= b - 1 {
		s = append(s, is(topic, uint32(bits.TrailingZeros64(b))))
	}
	return s
}

func oneIf(on bool) uint32 {
	if on {
		return 1
	}
	return 0
}

// inClause is the word so many on from i, negative behind the clause's start and
// beyond all words behind its end.
func (r *reader) inClause(i, by int) int {
	if by < 0 {
		for j := i; j > i+by; j-- {
			if j <= 0 || j < len(r.words) && r.words[j].stopped {
				return -1
			}
		}
		return i + by
	}
	for j := i; j <= i+by; j++ {
		if j >= len(r.words) || r.words[j].stopped {
			return len(r.words)
		}
	}
	return i + by
}

// seeClasses lists the classes of a word.
func (r *reader) seeClasses(s []feature, as aspect, i int) []feature {
	if i < 0 || i >= len(r.words) {
		return s
	}
	for c := uint64(r.words[i].classes); c != 0; c &= c - 1 {
		s = append(s, is(as, uint32(bits.TrailingZeros64(c))))
	}
	if isPlural(r.words[i].text) {
		s = append(s, is(as, 100))
	}
	return s
}

// seeClause lists what the clause does: its verb before the number, its subject, its
// first word.
func (r *reader) seeClause(s []feature, c *number, mood uint32) []feature {
	k := &r.known.classes
	verb, first := -1, c.at
	const longest = 24
	for j := c.at - 1; j >= max(0, c.at-longest); j-- {
		if j+1 < len(r.words) && r.words[j+1].stopped {
			break
		}
		if verb < 0 && r.in(j, k.be|k.have|k.states|k.modal|k.reading|k.order) {
			verb = j
		}
		first = j
		if r.in(j, k.glue) {
			break
		}
	}
	s = append(s, r.wordFeature(verbOf, verb), r.wordFeature(subjectOf, first), r.wordFeature(subjectOf, 0).with(is(always, 1)), r.wordFeature(verbOf, verb).with(is(moodOf, mood)))
	if verb >= 0 {
		from := len(s)
		s = r.seeClasses(s, verbOf, verb)
		bare := r.bareness(c)
		for _, f := range s[from:] {
			s = append(s, f.with(bare))
		}
		s = append(s, r.wordFeature(verbOf, verb).with(bare))
	}
	refers := r.refersBack(c.at)
	self := false
	r.clauseBefore(c.at, 8, func(j int) bool {
		self = self || r.in(j, k.self) || r.is(j, "my") || r.is(j, "me")
		return true
	})
	ends := c.n >= len(r.words) || r.words[c.n].stopped
	begins := c.at == 0 || r.words[min(c.at, len(r.words)-1)].stopped
	return append(s, is(placed, oneIf(refers)|oneIf(self)<<1).with(is(moodOf, mood)), is(placed, 8|oneIf(ends)|oneIf(begins)<<1), is(placed, 16|oneIf(r.has(c.at))), is(hold, mood).with(is(placed, oneIf(ends))))
}

// seeCompany lists what other numbers the sentence has.
func (r *reader) seeCompany(s []feature, c *number) []feature {
	with, mine := uint32(0), 0
	if c.f != nil && len(c.f.Values) > 0 && c.f.Values[0].Unit != "" {
		mine = 1
	}
	if r.united > mine {
		with = 1
	}
	if len(r.values) > 0 {
		with |= 2
	}
	return append(s, is(company, uint32(min(len(r.figures), 4))), is(company, 16|with))
}

// sizeClass is how large a number is, roughly.
func sizeClass(v float64) uint32 {
	if v < 0 {
		return 50
	}
	bounds := [...]float64{0, 0.1, 0.5, 0.99, 1, 2, 3, 4, 6, 8, 10, 12, 16, 20, 30, 40, 60, 80, 100, 130, 200, 260, 400, 600, 1000, 1500, 2000, 3000, 10000, 100000}
	for i, b := range bounds {
		if v <= b {
			if v != math.Trunc(v) {
				return uint32(i) | 64
			}
			return uint32(i)
		}
	}
	return 49
}

// weigh is the weight of an offer for the number that was seen last.
func (r *reader) weigh(o *offer) int {
	sum := r.common
	of := o.unit
	if isMoney(trade.Unit(of)) {
		of = pounds // what is money here may be another elsewhere
	}
	form, unit := is(formOf, uint32(o.form)), is(unitIs, hashOf(of))
	for _, f := range r.scene[:r.ofForms] {
		sum += r.weight(f.with(form))
	}
	for _, f := range r.scene[r.ofUnits : r.ofUnits+3] {
		sum += r.weight(f.with(form))
	}
	for _, f := range r.scene[r.ofUnits:] {
		sum += r.weight(f.with(unit))
	}
	sum += r.weight(unit) + r.weight(unit.with(form))
	for _, f := range o.said[:o.many] {
		sum += r.weight(f)
		sum += r.weight(f.with(unit))
	}
	return sum
}

func (r *reader) weight(f feature) int {
	if r.taught != nil {
		*r.taught = append(*r.taught, f)
		return 0
	}
	return int(learned[f.slot()]) - noWeight
}

// choose is the offer that weighs most, -1 where none weighs more than nothing.
func (r *reader) choose(c *number) int {
	if len(r.offers) == 0 {
		return -1
	}
	r.see(c)
	if r.teacher != nil {
		return r.teacher(r, c)
	}
	r.common = 0
	for _, f := range r.scene {
		r.common += r.weight(f)
	}
	best, most, all := -1, 0, 0.0
	for i := range r.offers {
		w := r.weigh(&r.offers[i])
		if all += math.Exp(float64(w) * weightStep * share); best < 0 || w > most {
			best, most = i, w
		}
	}
	if odds := math.Exp(float64(most) * weightStep * share); best >= 0 && odds < leastOdds {
		if all >= openOdds {
			r.stated(min(c.at, len(r.words)-1)) // claimed, and what it is stays open
		}
		return -1
	}
	return best
}

// leastOdds are the odds of an offer against none from which on it is taken.
const leastOdds = 1.0

// openOdds are the odds of all offers together from which on a number is claimed though
// no offer is taken.
const openOdds = 1.05

// share is how much of the features a lesson had of what is there to be seen.
const share = 0.5
