package order

import "slices"

// never is the cost, in the search, of an arc no sequence can use.
const never = 1 << 28

type arcs []struct{ node, cost int32 }

type direction int

const (
	outward direction = iota
	inward
)

// candidates lists, for every node and the depot, the arcs out of it or into
// it, cheapest first: all of them for 200 nodes, fewer as there are more.
func candidates(n int, d []int32, dir direction) []arcs {
	w := n + 1
	lists := make([]arcs, w)
	most := max(32, 40_000/w)
	keys := make([]int, 0, w)
	for i := range w {
		keys = keys[:0]
		for j := range w {
			c := d[i*w+j]
			if dir == inward {
				c = d[j*w+i]
			}
			if c < never && i != j {
				keys = append(keys, int(c)<<32|j)
			}
		}
		slices.Sort(keys)
		keys = keys[:min(len(keys), most)]
		lists[i] = make(arcs, len(keys))
		for k, x := range keys {
			lists[i][k].node, lists[i][k].cost = int32(x&(1<<32-1)), int32(x>>32)
		}
	}
	return lists
}

// reduced gives the arcs less the assignment's prices, in 32 bits. An arc whose
// reduced cost alone reaches what a known sequence costs above the assignment
// is in no better one, so it counts as never; if what is left is still too
// large, the low bits go, and only the search is coarser for it.
func (in *instance) reduced(p potentials, known int) (d []int32, shift int) {
	over := known - p.bound
	for over>>shift >= never/2 {
		shift++
	}
	w := in.n + 1
	d = make([]int32, len(in.cost))
	for k, c := range in.cost {
		d[k] = never
		if c != blocked {
			if c -= p.row[k/w] + p.col[k%w]; c <= over {
				d[k] = int32(c >> shift)
			}
		}
	}
	return d, shift
}
