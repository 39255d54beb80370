package claim

import (
	"bytes"
	"os"
	"slices"
	"testing"
)

// rare is how often a word or pair must be met to be learned: what is met less often
// teaches more of its sentence than of itself.
const rare = 3

// assertions are the lessons of labelled sentences. A row of several sentences says of
// none that it claims, and of each that it does not.
func assertions(all []row) []lesson {
	var list []lesson
	count := map[feature]int{}
	r := &reader{money: pounds}
	for _, labelled := range all {
		spans := r.prose.Sentences(labelled.Text)
		if len(spans) > 1 && labelled.Needs {
			continue
		}
		for _, span := range spans {
			r.turn(span.Of(labelled.Text))
			if len(r.words) == 0 || r.asks || r.isTalk() {
				continue
			}
			keys := r.hearing(nil)
			for _, f := range keys {
				count[f]++
			}
			list = append(list, lesson{offers: [][]feature{keys}, right: []bool{labelled.Needs}, none: !labelled.Needs})
		}
	}
	for i := range list {
		kept := list[i].offers[0][:0]
		for _, f := range list[i].offers[0] {
			if count[f] >= rare {
				kept = append(kept, f)
			}
		}
		list[i].offers[0] = kept
	}
	return list
}

// The odds of a claim are those of the labelled sentences, as the weights of numbers are.
func TestAsserting(t *testing.T) {
	wide, _ := thirds(rows(t, "testdata/wide.jsonl"))
	keep(t, "asserts.bin", asserting, assertions(slices.Concat(labelledRows(t), quietRows(t), wide)))
}

// FIXSLATE_CROSS=1 scores each author's sentences by odds that were learned from all
// others': the figure by which the limits were chosen.
func TestAssertingAcross(t *testing.T) {
	if os.Getenv("FIXSLATE_CROSS") == "" {
		t.Skip("FIXSLATE_CROSS is not set: nothing was cross-validated")
	}
	before, open := asserting, string(bytes.Repeat([]byte{noWeight}, weightsSize))
	defer func() { asserting = before }()
	sets := map[string][]row{}
	for _, name := range [...]string{"bench", "later", "varied", "trades", "wide"} {
		read, _ := thirds(rows(t, "testdata/"+name+".jsonl"))
		for _, r := range read {
			author := name
			if name == "wide" {
				author += " " + r.ID[:3]
			}
			sets[author] = append(sets[author], r)
		}
	}
	for name, held := range sets {
		taught := append(rows(t, "testdata/first.jsonl"), quietRows(t)...)
		for other, list := range sets {
			if other != name {
				taught = append(taught, list...)
			}
		}
		learned := string(learn(assertions(taught), usually))
		for _, asserting = range [...]string{open, learned} {
			var needs tally
			quiet, none := 0, 0
			for _, r := range held {
				c := Sentence(r.Text)
				needs.count(r.Needs, c.NeedsEvidence)
				if !r.Needs {
					if none++; !c.NeedsEvidence {
						quiet++
					}
				}
			}
			t.Logf("%s, odds %v: recall %.3f, precision %.3f, no claim quiet %.3f", name, asserting != open, needs.recall(), needs.precision(), float64(quiet)/float64(none))
		}
	}
}
