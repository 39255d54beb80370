package hazard

import (
	"fmt"
	"strings"
)

// The phrases of the lexicon stand in a tree whose edges are forms of words;
// inflection is done when it is built. Finding costs one look-up a word, and a
// short look ahead where a phrase has a gap.

// gapMax is how many words a gap takes.
const gapMax = 6

// tree is the phrases; node 0 is the root.
// It is laid out flat, since it is built in every run: entries that end at a
// node are a list through links, from the last to the first.
type tree struct {
	edges map[uint64]int32
	heads []int32          // by node: where its list of links begins, 0: nothing ends here
	links []link           // the first is none
	gaps  map[int32][]leap // by node: words that may follow a gap
}

// link is an entry that ends at a node, and the next one that does.
type link struct{ entry, next int32 }

// leap is what comes after a gap.
type leap struct {
	form int32
	next int32
}

func newTree() tree {
	const nodes = 1 << 15 // about as many as there are
	return tree{edges: make(map[uint64]int32, nodes), heads: make([]int32, 1, nodes), links: make([]link, 1, nodes), gaps: map[int32][]leap{}}
}

func edge(node, form int32) uint64 { return uint64(node)<<32 | uint64(uint32(form)) }

func (t *tree) grow() int32 {
	t.heads = append(t.heads, 0)
	return int32(len(t.heads) - 1)
}

func (t *tree) step(node, form int32) int32 {
	e := edge(node, form)
	next, ok := t.edges[e]
	if !ok {
		next = t.grow()
		t.edges[e] = next
	}
	return next
}

func (t *tree) leapTo(node, form int32) int32 {
	for _, s := range t.gaps[node] {
		if s.form == form {
			return s.next
		}
	}
	next := t.grow()
	t.gaps[node] = append(t.gaps[node], leap{form, next})
	return next
}

// phrase files a phrase of an entry in all its forms: a thing's last word and
// an act's first are inflected, the others stand as they are written.
func (x *lexicon) phrase(words []string, kind entryKind, id int32) error {
	if len(words) == 0 || words[0] == ".." || words[len(words)-1] == ".." {
		return fmt.Errorf("a phrase begins and ends with words")
	}
	var first, second [8]int32
	nodes, next := append(first[:0], 0), second[:0]
	gap := false
	for i, w := range words {
		if w == ".." {
			gap = true
			continue
		}
		next = next[:0]
		for _, f := range x.inflected(w, kind, i == 0, i == len(words)-1) {
			id := x.form(f.text, f.kind)
			for _, n := range nodes {
				if gap {
					next = append(next, x.tree.leapTo(n, id))
				} else {
					next = append(next, x.tree.step(n, id))
				}
			}
		}
		nodes, next, gap = next, nodes, false
	}
	for _, n := range nodes {
		x.tree.links = append(x.tree.links, link{id, x.tree.heads[n]})
		x.tree.heads[n] = int32(len(x.tree.links) - 1)
	}
	return nil
}

func (x *lexicon) inflected(w string, kind entryKind, first, last bool) []form {
	if bare, ok := strings.CutPrefix(w, "="); ok {
		return []form{{bare, 0}}
	}
	switch {
	case kind == anAct && first:
		return verbForms(w)
	case kind == aThing && last:
		all := nounForms(w)
		for i := range all {
			all[i].kind = 0
		}
		return all
	}
	return []form{{w, 0}}
}
