package order

// A tree bounds a whole sequence from below.
//
// Problem: a bound for orders with few pairs, where windows of positions say
// little.
//
// Method: a sequence is a tree in which every node but the depot has one arc
// in, closed by an arc back to the depot, and with one arc out of every node.
// The last demand is replaced by prices on arcs out (Held and Karp, Operations
// Research 18, 1970; for trees with directed arcs: Fischetti and Toth, Annals
// of Operations Research 41, 1993). The cheapest tree is found by taking the
// cheapest arc into every node and shrinking the cycles that appear (Edmonds,
// Journal of Research NBS 71B, 1967). The prices begin at the assignment's
// rows, so the bound is never below that one.
//
// Cost: O(n²) for every level of cycles, few in practice.
type tree struct {
	m     int   // nodes and the depot, which is node m-1
	cost  []int // fine × arc
	price []int // on every arc out of a node
	out   []int // arcs out of a node in the cheapest tree
	top   *level
}

func newTree(in *instance, p potentials) *tree {
	m := in.n + 1
	t := &tree{m: m, cost: make([]int, m*m), price: make([]int, m), out: make([]int, m), top: newLevel(m)}
	for k, c := range in.cost {
		t.cost[k] = blocked
		if c != blocked {
			t.cost[k] = fine * c
		}
	}
	for i, r := range p.row {
		t.price[i] = -fine * r
	}
	return t
}

// run gives the value of the cheapest tree under the prices, blocked if there
// is none, and counts the arcs out of each node.
func (t *tree) run() int {
	m, depot, top := t.m, t.m-1, t.top
	sum, last := 0, -1
	for i := range m {
		sum -= t.price[i]
		for j := range m {
			at := i*m + j
			top.cost[at] = blocked
			if t.cost[at] != blocked && i != j {
				top.cost[at] = t.cost[at] + t.price[i]
			}
		}
		if c := top.cost[i*m+depot]; c != blocked && (last < 0 || c < top.cost[last*m+depot]) {
			last = i
		}
	}
	from := top.solve(depot)
	if from == nil || last < 0 {
		return blocked
	}
	clear(t.out)
	from[depot] = int32(last)
	for j, i := range from {
		t.out[i]++
		sum += top.cost[int(i)*m+j]
	}
	return sum
}

// A level is a graph in which cycles of the one above are single nodes. tail
// and head name, for every arc, the arc of the level above it stands for.
type level struct {
	m          int
	cost       []int
	tail, head []int32
}

func newLevel(m int) *level {
	return &level{m: m, cost: make([]int, m*m), tail: make([]int32, m*m), head: make([]int32, m*m)}
}

// solve gives the tail of the arc into every node of the cheapest tree from
// root, nil if there is no tree.
func (l *level) solve(root int) []int32 {
	from := make([]int32, l.m)
	for j := range from {
		from[j] = -1
		for i := range l.m {
			if c := l.cost[i*l.m+j]; c != blocked && i != j && (from[j] < 0 || c < l.cost[int(from[j])*l.m+j]) {
				from[j] = int32(i)
			}
		}
		if from[j] < 0 && j != root {
			return nil
		}
	}
	from[root] = -1
	group, cyclic, groups := cycles(from)
	if groups == l.m {
		return from
	}
	low := l.shrink(from, group, cyclic, groups)
	below := low.solve(int(group[root]))
	if below == nil {
		return nil
	}
	for j, i := range below {
		if i >= 0 {
			at := int(i)*low.m + j
			from[low.head[at]] = low.tail[at]
		}
	}
	return from
}

// shrink makes every cycle one node. An arc into a cycle is priced by what it
// costs more than the cycle's own arc that it would replace.
func (l *level) shrink(from, group []int32, cyclic []bool, groups int) *level {
	low := newLevel(groups)
	for at := range low.cost {
		low.cost[at] = blocked
	}
	for i := range l.m {
		for j := range l.m {
			c := l.cost[i*l.m+j]
			if c == blocked || group[i] == group[j] {
				continue
			}
			if cyclic[j] {
				c -= l.cost[int(from[j])*l.m+j]
			}
			if at := int(group[i])*groups + int(group[j]); c < low.cost[at] {
				low.cost[at], low.tail[at], low.head[at] = c, int32(i), int32(j)
			}
		}
	}
	return low
}

// cycles numbers the nodes so that those of one cycle have one number.
func cycles(from []int32) (group []int32, cyclic []bool, groups int) {
	m := len(from)
	group, cyclic = make([]int32, m), make([]bool, m)
	seen := make([]int, m)
	for i := range m {
		j := i
		for j >= 0 && seen[j] == 0 {
			seen[j] = i + 1
			j = int(from[j])
		}
		if j < 0 || seen[j] != i+1 {
			continue
		}
		for ; !cyclic[j]; j = int(from[j]) {
			cyclic[j], group[j] = true, int32(groups)
		}
		groups++
	}
	for i := range m {
		if !cyclic[i] {
			group[i] = int32(groups)
			groups++
		}
	}
	return group, cyclic, groups
}

// improve moves the prices for some steps, at most until stop, and returns the
// best lower bound.
func (t *tree) improve(upper, steps int, stop func() bool) int {
	a := newAscent(t.price, upper, t.run())
	for range steps {
		if a.over() || stop() {
			break
		}
		if !a.step(t.price, func(i int) int { return t.out[i] - 1 }) {
			break
		}
		a.note(t.price, t.run())
	}
	return a.bound()
}
