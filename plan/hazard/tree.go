package hazard

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// The phrases of the lexicon stand in a tree whose edges are forms of words;
// inflection is done when it is built. Finding costs one look-up a word, and a
// short look ahead where a phrase has a gap.

// gapMax is how many words a gap takes.
const gapMax = 6

// tree is the phrases as they are looked up, laid out flat. Branches that are
// alike are one: those of "cover" and "covers" end in one node.
type tree struct {
	nodes []node   // 0: none; each has the edges and ends up to the next one's
	forms []uint16 // by edge, rising within a node
	to    []uint16 // by edge
	ends  []uint16 // entries that end at a node
}

// alike is set in what a form begins where a look-alike may: few words need be
// looked at twice.
const alike = 1 << 15

// node is a place in the tree.
type node struct {
	edges, ends uint32 // where its own begin
	gap         uint16 // the node whose edges may follow a gap; 0: no gap
}

// step is the node to which a form leads from one that is not the root.
func (t *tree) step(at uint16, form int32) uint16 {
	const few = 8 // edges that are gone through faster than halved
	from, end := int(t.nodes[at].edges), int(t.nodes[at+1].edges)
	forms := t.forms[from:end]
	if len(forms) > few {
		if i, ok := slices.BinarySearch(forms, uint16(form)); ok {
			return t.to[from+i]
		}
		return 0
	}
	for i, f := range forms {
		if f == uint16(form) {
			return t.to[from+i]
		}
	}
	return 0
}

// plant is the tree while it grows; node 0 is the root. A gap is an edge too.
type plant struct {
	edges map[uint64]int32
	heads []int32 // by node: where its list of links begins, 0: nothing ends here
	links []link  // the first is none
}

// link is an entry that ends at a node, and the next one that does.
type link struct{ entry, next int32 }

func newPlant() plant {
	const nodes = 1 << 15 // about as many as there are
	return plant{edges: make(map[uint64]int32, nodes), heads: make([]int32, 1, nodes), links: make([]link, 1, nodes)}
}

func edge(node, form int32) uint64 { return uint64(node)<<32 | uint64(uint32(form)) }

func (p *plant) step(node, form int32) int32 {
	e := edge(node, form)
	next, ok := p.edges[e]
	if !ok {
		p.heads = append(p.heads, 0)
		next = int32(len(p.heads) - 1)
		p.edges[e] = next
	}
	return next
}

// phrase files a phrase of an entry in all its forms: a thing's last word and
// an act's first are inflected, the others stand as they are written.
func (x *compiler) phrase(words []string, kind entryKind, id int32) error {
	if len(words) == 0 || words[0] == ".." || words[len(words)-1] == ".." {
		return fmt.Errorf("a phrase begins and ends with words")
	}
	var first, second [8]int32
	nodes, next := append(first[:0], 0), second[:0]
	for i, w := range words {
		next = next[:0]
		for _, f := range x.inflected(w, kind, i == 0, i == len(words)-1) {
			id := x.form(f.text, f.kind)
			for _, n := range nodes {
				next = append(next, x.plant.step(n, id))
			}
		}
		nodes, next = next, nodes
	}
	for _, n := range nodes {
		x.plant.links = append(x.plant.links, link{id, x.plant.heads[n]})
		x.plant.heads[n] = int32(len(x.plant.links) - 1)
	}
	return nil
}

func (x *compiler) inflected(w string, kind entryKind, first, last bool) []form {
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

// pack lays the tree out flat. A node is what ends at it and what leads on from
// it, and nodes that are alike in that become one. What leads on is packed by
// then, since a node grows after the one that it grows from. What leads on from
// the root stands with the forms.
func (p *plant) pack(forms []spelling, gap int32, entries []entry) tree {
	t := tree{nodes: make([]node, 2)}
	edges := slices.Sorted(maps.Keys(p.edges))
	packed := make([]uint16, len(p.heads))
	known, blank := map[string]uint16{}, map[uint16]bool{0: false}
	for n := int32(len(p.heads) - 1); n > 0; n-- {
		from, _ := slices.BinarySearch(edges, edge(n, 0))
		at := len(t.nodes) - 1
		looks := false
		for _, e := range edges[from:] {
			to := packed[p.edges[e]]
			if looks = looks || blank[to]; int32(e) == gap {
				t.nodes[at].gap = to
			} else {
				t.forms, t.to = append(t.forms, uint16(e)), append(t.to, to)
			}
		}
		for l := p.heads[n]; l != 0; l = p.links[l].next {
			t.ends = append(t.ends, uint16(p.links[l].entry))
			looks = looks || entries[p.links[l].entry].kind == aBlank
		}
		edges = edges[:from]
		name := t.name(at)
		if twin, ok := known[name]; ok {
			t.cut(at)
			packed[n] = twin
			continue
		}
		known[name], packed[n], blank[uint16(at)] = uint16(at), uint16(at), looks
		t.nodes = append(t.nodes, node{edges: uint32(len(t.forms)), ends: uint32(len(t.ends))})
	}
	for _, e := range edges {
		to := packed[p.edges[e]]
		if forms[uint32(e)].begins = to; blank[to] {
			forms[uint32(e)].begins |= alike
		}
	}
	for i := range t.nodes {
		if gap := t.nodes[i].gap; gap != 0 {
			for _, f := range t.forms[t.nodes[gap].edges:t.nodes[gap+1].edges] {
				forms[f].rejoins = true
			}
		}
	}
	return t
}

// name is all that the last node is.
func (t *tree) name(at int) string {
	n := &t.nodes[at]
	name := []byte{byte(n.gap), byte(n.gap >> 8)}
	for _, list := range [...][]uint16{t.ends[n.ends:], t.forms[n.edges:], t.to[n.edges:]} {
		name = append(name, byte(len(list)), byte(len(list)>>8))
		for _, v := range list {
			name = append(name, byte(v), byte(v>>8))
		}
	}
	return string(name)
}

// cut takes the last node's edges and ends off again.
func (t *tree) cut(at int) {
	n := &t.nodes[at]
	t.forms, t.to, t.ends, n.gap = t.forms[:n.edges], t.to[:n.edges], t.ends[:n.ends], 0
}
