package order

import (
	"fmt"
	"strings"
)

// A poset is the precedence relation among nodes 0..n-1, transitively closed.
type poset struct {
	succ, pred []bitset // succ[i] holds every node that must come after i
	topo       []int    // one feasible sequence
}

// newPoset closes the pairs {a, b}, a before b, transitively. Repeated pairs
// are harmless; a pair {a, a}, or any longer circle, is an error that lists
// the nodes of one shortest circle.
func newPoset(n int, pairs [][2]int) (*poset, error) {
	next := make([][]int, n)
	waits := make([]int, n)
	for k, p := range pairs {
		a, b := p[0], p[1]
		if a < 0 || a >= n || b < 0 || b >= n {
			return nil, fmt.Errorf("order pair %d is {%d, %d}, but nodes are numbered 0 to %d; correct the pair", k, a, b, n-1)
		}
		next[a] = append(next[a], b)
		waits[b]++
	}
	q := &poset{succ: newBitsets(n, n), pred: newBitsets(n, n), topo: make([]int, 0, n)}
	for i, w := range waits {
		if w == 0 {
			q.topo = append(q.topo, i)
		}
	}
	for k := 0; k < len(q.topo); k++ {
		for _, j := range next[q.topo[k]] {
			if waits[j]--; waits[j] == 0 {
				q.topo = append(q.topo, j)
			}
		}
	}
	if len(q.topo) < n {
		return nil, cycleError(next, waits)
	}
	for k := n - 1; k >= 0; k-- {
		i := q.topo[k]
		for _, j := range next[i] {
			if !q.succ[i].has(j) {
				q.succ[i].add(j)
				q.succ[i].union(q.succ[j])
			}
		}
		q.succ[i].each(func(j int) { q.pred[j].add(i) })
	}
	return q, nil
}

// cycleError names one shortest circle among the nodes that still wait,
// starting at its smallest index.
func cycleError(next [][]int, waits []int) error {
	best := []int(nil)
	for start := range next {
		if waits[start] == 0 {
			continue
		}
		if c := shortestCycle(next, waits, start); c != nil && (best == nil || len(c) < len(best)) {
			best = c
		}
		if len(best) == 1 || best != nil && len(next) > 500 {
			break // a long search for the very shortest helps nobody
		}
	}
	var b strings.Builder
	for _, i := range best {
		fmt.Fprintf(&b, "%d before ", i)
	}
	fmt.Fprintf(&b, "%d", best[0])
	return fmt.Errorf("the order pairs form a cycle: %s; drop one of these pairs", b.String())
}

// shortestCycle walks breadth first from start back to start; nil if no
// circle passes there.
func shortestCycle(next [][]int, waits []int, start int) []int {
	from := make([]int, len(next))
	for i := range from {
		from[i] = -1
	}
	for queue := []int{start}; len(queue) > 0; queue = queue[1:] {
		i := queue[0]
		for _, j := range next[i] {
			if j == start {
				var c []int
				for ; i != start; i = from[i] {
					c = append([]int{i}, c...)
				}
				return append([]int{start}, c...)
			}
			if waits[j] > 0 && from[j] < 0 {
				from[j] = i
				queue = append(queue, j)
			}
		}
	}
	return nil
}

// immediate lists, for every node, the successors with no other node forced
// between, in the order of topo.
func (q *poset) immediate(topo []int) [][]int32 {
	out := make([][]int32, len(q.succ))
	covered := newBitset(len(q.succ))
	for i := range out {
		clear(covered)
		for _, j := range topo {
			if q.succ[i].has(j) && !covered.has(j) {
				out[i] = append(out[i], int32(j))
				covered.union(q.succ[j])
			}
		}
	}
	return out
}
