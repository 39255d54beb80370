package odds

import (
	"slices"
	"testing"
)

// said is a sentence as signs: its words and each two of them in a row.
func said(words ...string) []Sign {
	var signs []Sign
	before := uint32(0)
	for _, w := range words {
		stem := Hash(Unhashed, w)
		signs = append(signs, Sign{Kind: 'd', Word: w}, Pair('d', before, stem))
		before = stem
	}
	return signs
}

// The same words in another order are another thing, which the words alone can't
// tell; what speaks for a family is said of pairs, too.
func TestLearnsTheOrderOfWords(t *testing.T) {
	live, dead := said("not", "off", "plug", "in"), said("plug", "off", "not", "in")
	var all []Example
	for range 100 {
		all = append(all, Example{Signs: live, Named: []string{"shock"}}, Example{Signs: dead})
	}
	n, err := Open(string(Learn(all, []string{"dust", "shock"}, "toy", Schooling{Rounds: 60})))
	if err != nil {
		t.Fatal(err)
	}
	if is, not := n.of(live...), n.of(dead...); is[1] < not[1]+0.3 || is[0] > 0.2 {
		t.Errorf("the order that was named gives %.2f, the other one %.2f", is, not)
	}
	var layer Layer
	place, ok := n.Find(Pair('d', Hash(Unhashed, "plug"), Hash(Unhashed, "in")))
	if !ok {
		t.Fatal("a pair that was learned is not found")
	}
	n.Odds(nil, &layer, []int{place})
	if says := n.Speaks(nil, &layer, []int{place}, 1); says[0] <= 0 {
		t.Errorf("the pair speaks %.2f", says)
	}
	for _, other := range [...]Sign{Pair('o', Hash(Unhashed, "plug"), Hash(Unhashed, "in")), Pair('d', Hash(Unhashed, "in"), Hash(Unhashed, "plug"))} {
		if _, ok := n.Find(other); ok {
			t.Errorf("a pair is found that was never met: %v", other)
		}
	}
}

// What several questions share counts in each, once.
func TestSharesPairs(t *testing.T) {
	var all []Example
	a, b := said("hot", "oil"), said("cold", "pan")
	for i := range 200 {
		e := Example{Signs: slices.Concat(a, b), Named: []string{"fire"}}
		if i%2 == 0 {
			e = Example{Signs: b}
		}
		all = append(all, e)
	}
	n, err := Open(string(Learn(all, []string{"fire"}, "toy", Schooling{Rounds: 10})))
	if err != nil {
		t.Fatal(err)
	}
	var layer Layer
	n.Share(&layer, n.places(a))
	for range 2 {
		if got, want := n.Odds(nil, &layer, n.places(b)), n.of(slices.Concat(a, b)...); got[0] != want[0] {
			t.Errorf("shared %v, at once %v", got, want)
		}
	}
}
