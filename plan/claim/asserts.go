package claim

import (
	_ "embed"
	"math"
	"slices"
)

// Whether a sentence asserts anything is read twice: by the rules of the kinds, and by
// odds learned from labelled sentences, which go by its words and pairs of words alone.
// What the odds hold unlikely is no claim, whatever cue stands in it: talk of the work
// has every cue. What they are sure of is a claim though no rule knows its turn; without
// a rule its kind is that of most, a spec. The limits were chosen where each author's
// sentences were held by weights learned from all others': nearly no claim is lost, and
// as many sentences of no claim pass as before. That something is safe is doubted never.
const (
	unlikely = 0.2
	likely   = 0.9
)

// asserting are weights as in weigh.go, in a table of their own: go generate learns them.
//
//go:embed asserts.bin
var asserting string

// hearing lists what the odds go by: each word, each pair of neighbours, how it begins
// and how long it is. A number is a number.
func (r *reader) hearing(s []feature) []feature {
	before := is(always, 1)
	for i := range r.words {
		word := is(always, r.words[i].hash)
		if r.words[i].number {
			word = is(kindOf, 0)
		}
		if s = append(s, word, word.with(before)); i == 0 {
			s = append(s, word.with(is(placed, 0)))
		}
		before = word
	}
	return append(s, before.with(is(placed, 1)), is(sizeOf, uint32(min(len(r.words)/4, 6))), is(always, 0))
}

// believed holds what the rules found against the odds.
func (r *reader) believed() {
	r.scene = r.hearing(r.scene[:0])
	sum := 0
	for _, f := range r.scene {
		sum += int(asserting[f.slot()]) - noWeight
	}
	switch odds := 1 / (1 + math.Exp(-float64(sum)*weightStep*share)); {
	case odds < unlikely && !r.promises():
		r.found, r.values = 0, r.values[:0]
	case odds >= likely && r.found == 0:
		r.add(Spec)
	}
}

// promises says whether something is called safe.
func (r *reader) promises() bool {
	return slices.ContainsFunc(r.words, func(w word) bool { return w.text == "safe" || w.text == "safely" || w.text == "harmless" })
}
