package order

import (
	"fmt"
	"slices"
)

// The limits keep every sum far from overflow: no path costs 2^54 or more.
const (
	maxCost  = 1 << 40
	maxNodes = 1 << 14
	blocked  = 1 << 57 // cost of an arc that no feasible sequence can use
)

// An instance is a problem made ready to solve: a round trip from the depot,
// which is node n, through nodes 0..n-1 and back to it. The depot's row holds
// what it costs to begin at a node, its column what it costs to end there.
// Forced beginnings and ends, and nodes that can be glued together without
// loss, are folded away; chain gives them back.
type instance struct {
	n     int
	cost  []int // (n+1)×(n+1), row by row; blocked where no sequence goes
	fixed int   // cost of what was folded away
	succ  []bitset
	pred  []bitset
	next  [][]int32 // immediate successors, in a feasible order
	prev  [][]int32 // immediate predecessors
	topo  []int
	chain [][]int // original nodes behind each node, in their order
	head  []int   // original nodes before everything else
	tail  []int   // and after
}

func (in *instance) arc(i, j int) int { return in.cost[i*(in.n+1)+j] }

// length is the cost of seq, a sequence of this instance, without fixed.
func (in *instance) length(seq []int32) int {
	at, sum := in.n, 0
	for _, i := range seq {
		sum += in.arc(at, int(i))
		at = int(i)
	}
	return sum + in.arc(at, in.n)
}

// unfold gives seq in the problem's own node numbers.
func (in *instance) unfold(seq []int32) []int {
	out := append([]int{}, in.head...)
	for _, i := range seq {
		out = append(out, in.chain[i]...)
	}
	return append(out, in.tail...)
}

// order lists immediate neighbours and closes every arc that skips over a node
// forced between.
func (in *instance) order() {
	q := poset{succ: in.succ, pred: in.pred}
	in.topo = make([]int, in.n)
	waits := make([]int, in.n)
	for i := range in.n {
		in.topo[i] = i
		waits[i] = in.pred[i].count()
	}
	slices.SortStableFunc(in.topo, func(a, b int) int { return waits[a] - waits[b] })
	in.next = q.immediate(in.topo)
	in.prev = make([][]int32, in.n)
	for _, i := range in.topo {
		for _, j := range in.next[i] {
			in.prev[j] = append(in.prev[j], int32(i))
		}
		closeSkips(in.cost[i*(in.n+1):], in.succ[i], in.next[i])
	}
}

// closeSkips closes a node's arcs that skip over a node forced between: those
// to successors that are not immediate.
func closeSkips(row []int, succ bitset, next []int32) {
	keep := make([]int, len(next))
	for k, j := range next {
		keep[k] = row[j]
	}
	succ.each(func(j int) { row[j] = blocked })
	for k, j := range next {
		row[j] = keep[k]
	}
}

// prepare checks p and turns it into an instance.
func prepare(p Problem) (*instance, error) {
	n := len(p.Cost)
	if n > maxNodes {
		return nil, fmt.Errorf("the problem has %d nodes, more than the %d that fit; split it", n, maxNodes)
	}
	for i, row := range p.Cost {
		if len(row) != n {
			return nil, fmt.Errorf("cost row %d has %d entries for %d nodes; give a square matrix", i, len(row), n)
		}
	}
	q, err := newPoset(n, p.Before)
	if err != nil {
		return nil, err
	}
	f := newFold(p, q)
	for i := range n {
		for j := range n {
			switch c := p.Cost[i][j]; {
			case f.arc(i, j) == blocked:
			case c < 0:
				return nil, fmt.Errorf("cost from %d to %d is %d; give 0 or more, or put %d before %d", i, j, c, j, i)
			case c > maxCost:
				return nil, fmt.Errorf("cost from %d to %d is %d, above the limit of %d; use a larger unit", i, j, c, maxCost)
			}
		}
	}
	f.strip()
	f.glue()
	return f.instance(), nil
}
