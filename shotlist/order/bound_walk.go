package order

// A walk bounds what is still to come from a node at a position.
//
// Problem: from below, the cost of the cheapest sequence, and of the cheapest
// way to complete a begun one.
//
// Method: forget that every node is visited once; keep that a walk has as many
// arcs as a sequence, that node i stands at a position from #pred(i) to
// n-1-#succ(i), and that no walk goes i, j, i. Prices on the nodes, which every
// sequence pays once each, make the cheapest walk visit what it skipped and
// skip what it visited too often (subgradient steps of Polyak's length; the
// state space relaxation of Christofides, Mingozzi and Toth, Networks 11, 1981,
// with its elimination of 2-cycles). The prices begin at the assignment's, so
// the bound is never below that one.
//
// Cost: per step, the arcs between the windows of all neighbouring positions,
// at most n³.
type walk struct {
	in          *instance
	n           int
	early, late []int // positions of a node
	cost        []int // fine × arc - price of its head; (n+1)×(n+1)
	price       []int
	sum         int // of all prices
	// best[k*n+i] completes a sequence with i at position k; other does so
	// without the first step to via.
	best, other []int
	via         []int16
	first       int // where the cheapest walk begins
	seen        []int
}

func newWalk(in *instance, p potentials) *walk {
	n := in.n
	w := &walk{in: in, n: n, early: make([]int, n), late: make([]int, n), price: make([]int, n+1)}
	for i := range n {
		w.early[i], w.late[i] = in.pred[i].count(), n-1-in.succ[i].count()
		w.price[i] = fine * (p.row[i] + p.col[i])
	}
	w.price[n] = fine * (p.row[n] + p.col[n])
	return w
}

// reprice puts the prices onto the arcs: an assignment's row price onto the
// arcs out of a node, everything else of the price onto those into it.
func (w *walk) reprice(p potentials) {
	m := w.n + 1
	w.sum = 0
	for i := range m {
		w.sum += w.price[i]
		for j := range m {
			if c := w.in.cost[i*m+j]; c == blocked {
				w.cost[i*m+j] = blocked
			} else {
				w.cost[i*m+j] = fine*(c-p.row[i]+p.row[j]) - w.price[j]
			}
		}
	}
}

// work is the cost of one run, in arcs looked at.
func (w *walk) work() int {
	at := make([]int, w.n+1)
	for i := range w.n {
		for k := w.early[i]; k <= w.late[i]; k++ {
			at[k]++
		}
	}
	sum := 0
	for k := range w.n {
		sum += at[k] * at[k+1]
	}
	return sum
}

// run fills best, other and via backwards and returns the cheapest walk, in
// fine units with all prices paid.
func (w *walk) run() int {
	n, m := w.n, w.n+1
	var here, next []int // nodes that fit position k and k+1
	for k := n - 1; k >= 0; k-- {
		here = here[:0]
		for i := range n {
			at := k*n + i
			w.best[at], w.other[at], w.via[at] = blocked, blocked, -1
			if k < w.early[i] || k > w.late[i] {
				continue
			}
			here = append(here, i)
			if k == n-1 {
				w.best[at], w.other[at] = w.cost[i*m+n], w.cost[i*m+n]
				continue
			}
			row := w.cost[i*m : i*m+m]
			b, o, via := blocked, blocked, -1
			for _, j := range next {
				c := row[j]
				if c == blocked {
					continue
				}
				a := at + n - i + j
				if int(w.via[a]) != i {
					c += w.best[a]
				} else {
					c += w.other[a]
				}
				if c < o {
					if c < b {
						b, o, via = c, b, j
					} else {
						o = c
					}
				}
			}
			w.best[at], w.other[at], w.via[at] = min(b, blocked), min(o, blocked), int16(via)
		}
		here, next = next, here
	}
	least := blocked
	for _, i := range next {
		if c := w.cost[n*m+i]; c != blocked && w.best[i] != blocked && c+w.best[i] < least {
			w.first, least = i, c+w.best[i]
		}
	}
	if least == blocked {
		return blocked
	}
	return least + w.sum
}

// visit counts how often the cheapest walk comes to each node.
func (w *walk) visit() {
	clear(w.seen)
	from, at := -1, w.first
	for k := range w.n {
		w.seen[at]++
		if k == w.n-1 {
			return
		}
		next := int(w.via[k*w.n+at])
		if next == from {
			next = w.second(k, at)
		}
		from, at = at, next
	}
}

// second finds the first step of other.
func (w *walk) second(k, i int) int {
	n, m := w.n, w.n+1
	for j := range n {
		c := w.cost[i*m+j]
		if a := (k+1)*n + j; c != blocked && j != int(w.via[k*n+i]) && w.best[a] != blocked {
			if int(w.via[a]) == i {
				c += w.other[a]
			} else {
				c += w.best[a]
			}
			if c == w.other[k*n+i] {
				return j
			}
		}
	}
	return -1
}

// improve moves the prices for some steps, at most until stop, and returns the
// best lower bound, whose prices and tables it leaves behind.
func (w *walk) improve(p potentials, upper, steps int, stop func() bool) int {
	w.cost, w.seen = make([]int, len(w.in.cost)), make([]int, w.n)
	w.best, w.other, w.via = make([]int, w.n*w.n), make([]int, w.n*w.n), make([]int16, w.n*w.n)
	w.reprice(p)
	a := newAscent(w.price[:w.n], upper, w.run())
	for range steps {
		if a.over() || stop() {
			break
		}
		w.visit()
		if !a.step(w.price[:w.n], func(i int) int { return 1 - w.seen[i] }) {
			break
		}
		w.reprice(p)
		a.note(w.price[:w.n], w.run())
	}
	copy(w.price, a.best)
	w.reprice(p)
	w.run()
	return a.bound()
}
