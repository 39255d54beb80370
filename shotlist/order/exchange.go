package order

import "slices"

type near struct {
	node int32
	cost int32
}

const never = 1 << 28

// neighbours lists, for every node and the depot, the arcs out of it (or into
// it), cheapest first.
func neighbours(n int, d []int32, into bool) [][]near {
	w := n + 1
	lists := make([][]near, w)
	for i := range w {
		var l []near
		for j := range w {
			c := d[i*w+j]
			if into {
				c = d[j*w+i]
			}
			if c < never && i != j {
				l = append(l, near{int32(j), c})
			}
		}
		slices.SortStableFunc(l, func(a, b near) int { return int(a.cost) - int(b.cost) })
		lists[i] = l
	}
	return lists
}
