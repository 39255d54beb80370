package order

// A tree bounds a whole sequence from below.
//
// Problem: a bound for orders with few pairs, where windows of positions say
// little.
//
// Method: a sequence is a tree in which every node but the depot has one arc
// in, closed by an arc back to the depot, and with one arc out of every node.
// The last demand is replaced by prices on arcs out (Held and Karp, Operations
// Research 18, 1970; for directed arcs: Fischetti and Toth, Annals of
// Operations Research 41, 1993). The prices begin at the assignment's rows, so
// the bound is never below that one.
//
// The cheapest tree: walk against the cheapest arcs in; a cycle met on the way
// becomes one node, whose arcs in are priced by what they cost more than the
// cycle's arc that they would replace (Edmonds, Journal of Research NBS 71B,
// 1967; in O(n²) for dense graphs: Tarjan, Networks 7, 1977).
//
// Cost: O(n²) a step.
type tree struct {
	m     int   // nodes and the depot, which is node m-1
	cost  []int // fine × arc, heads by rows: cost[j*m+i] is from i to j
	price []int // on every arc out of a node
	out   []int // arcs out of a node in the cheapest tree

	enter  []int   // enter[j*m+i]: from node i into the group of j, above offset
	head   []int32 // the node of the group that this arc enters
	group  []int32 // parent in the union of nodes into groups, -size at its root
	joined []merger
	seen   []int32
	in     []link // arc into each group, at the end into each node
	cycles []cycle
}

// A link is an arc between nodes.
type link struct{ tail, head int32 }

// A merger made child, the root of size nodes (counted below zero), part of
// another group.
type merger struct{ child, size int32 }

// A cycle is a group made of others.
type cycle struct {
	group  int32
	joined int // length of tree.joined before it
	links  []link
}

func newTree(in *instance, p potentials) *tree {
	m := in.n + 1
	t := &tree{m: m, cost: make([]int, m*m), price: make([]int, m), out: make([]int, m),
		enter: make([]int, m*m), head: make([]int32, m*m), group: make([]int32, m), seen: make([]int32, m), in: make([]link, m)}
	for i := range m {
		t.price[i] = -fine * p.row[i]
		for j := range m {
			t.cost[j*m+i] = blocked
			if c := in.cost[i*m+j]; c != blocked && i != j {
				t.cost[j*m+i] = fine * c
			}
		}
	}
	return t
}

// run gives the value of the cheapest tree under the prices, blocked if there
// is none, and counts the arcs out of each node.
func (t *tree) run() int {
	m, depot := t.m, t.m-1
	for j := range m {
		t.group[j], t.seen[j] = -1, -1
		for i := range m {
			at := j*m + i
			t.enter[at], t.head[at] = t.cost[at], int32(j)
			if t.cost[at] != blocked {
				t.enter[at] += t.price[i]
			}
		}
	}
	t.joined, t.cycles = t.joined[:0], t.cycles[:0]
	t.seen[depot] = int32(depot)
	for s := range depot {
		if !t.grow(int32(s)) {
			return blocked
		}
	}
	t.expand()
	last := t.cheapest(depot)
	if last < 0 {
		return blocked
	}
	t.in[depot] = link{int32(last), int32(depot)}
	clear(t.out)
	sum := 0
	for j, l := range t.in {
		t.out[l.tail]++
		sum += t.cost[j*m+int(l.tail)] + t.price[l.tail] - t.price[j]
	}
	return sum
}

// cheapest is the node outside the group of j with the cheapest arc into it,
// -1 if there is none.
func (t *tree) cheapest(j int) int {
	best, row := -1, t.enter[j*t.m:(j+1)*t.m]
	for i, c := range row {
		if c != blocked && (best < 0 || c < row[best]) && int(t.find(int32(i))) != j {
			best = i
		}
	}
	return best
}

// grow walks from s against the cheapest arcs to the depot or to a group seen
// in an earlier walk; false if some group has no arc in.
func (t *tree) grow(s int32) bool {
	var path []int32 // groups on this walk
	var links []link // the arc into each
	j := t.find(s)
	for t.seen[j] < 0 {
		i := t.cheapest(int(j))
		if i < 0 {
			return false
		}
		path, links = append(path, j), append(links, t.take(int(j), i))
		t.seen[j] = s
		next := t.find(int32(i))
		if t.seen[next] == s {
			x := len(path) - 1
			for path[x] != next {
				x--
			}
			c := cycle{joined: len(t.joined), links: append([]link{}, links[x:]...)}
			for _, g := range path[x+1:] {
				next = t.join(next, g)
			}
			path, links = path[:x], links[:x]
			c.group = next
			t.cycles = append(t.cycles, c)
			t.seen[next] = -1
		}
		j = next
	}
	for _, l := range links {
		t.in[t.find(l.head)] = l
	}
	return true
}

// take chooses the arc from node i into group j and prices the others by what
// they cost more.
func (t *tree) take(j, i int) link {
	row := t.enter[j*t.m : (j+1)*t.m]
	for k, least := 0, row[i]; k < t.m; k++ {
		if row[k] != blocked {
			row[k] -= least
		}
	}
	return link{int32(i), t.head[j*t.m+i]}
}

// join makes two groups one and returns it.
func (t *tree) join(a, b int32) int32 {
	if t.group[a] > t.group[b] {
		a, b = b, a
	}
	t.joined = append(t.joined, merger{b, t.group[b]})
	t.group[a] += t.group[b]
	t.group[b] = a
	to, from := int(a)*t.m, int(b)*t.m
	for i := range t.m {
		if t.enter[from+i] < t.enter[to+i] {
			t.enter[to+i], t.head[to+i] = t.enter[from+i], t.head[from+i]
		}
	}
	return a
}

func (t *tree) find(i int32) int32 {
	for t.group[i] >= 0 {
		i = t.group[i]
	}
	return i
}

// expand takes the cycles apart again, the last one first: each keeps its own
// arcs but for the one that the arc into the cycle replaces.
func (t *tree) expand() {
	for k := len(t.cycles) - 1; k >= 0; k-- {
		c := t.cycles[k]
		entry := t.in[c.group]
		for len(t.joined) > c.joined {
			last := t.joined[len(t.joined)-1]
			t.joined = t.joined[:len(t.joined)-1]
			t.group[t.group[last.child]] -= last.size
			t.group[last.child] = last.size
		}
		for _, l := range c.links {
			t.in[t.find(l.head)] = l
		}
		t.in[t.find(entry.head)] = entry
	}
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
