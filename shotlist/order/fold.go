package order

// Folding makes a problem smaller without losing its optimum.
//
// Problem: shot lists hold many nodes that no best sequence needs to tell
// apart: shots of one set-up and one state, a fixed beginning, a fixed end.
//
// Method: an exchange argument, ours. Let d be the cost, and
//
//	ins(u,v) = max over y of d(u,v) + d(v,y) - d(u,y)   (v put between u and y)
//	rem(v)   = min over x, z of d(x,v) + d(v,z) - d(x,z)  (v taken out)
//
// If ins(u,v) <= rem(v), any feasible sequence stays as cheap when v moves to
// the place right after u. It stays feasible when all that v waits for is u or
// comes before u, and, unless u must come before v anyway, all that waits for
// v also waits for u. Then u and v become one node. The mirror image (u moved
// to the place right before v) is tried as well. Interchangeable nodes with
// costs that obey the triangle inequality are the common case; no metric is
// assumed, the conditions are tested entry by entry. A node that must be first
// or last is glued to the depot.
//
// Cost: O(n²) cheap tests, each O(n) only as long as it may still succeed. The
// work is capped; stopping early only leaves the problem larger.
type fold struct {
	n          int // the depot's number: nodes are 0..n-1
	cost       []int
	fixed      int
	succ, pred []bitset
	alive      []int // nodes left, ascending
	chain      [][]int
	head, tail []int
	work       int
}

// foldWork caps the entries that glue reads.
const foldWork = 4_000_000

func newFold(p Problem, q *poset) *fold {
	n := len(p.Cost)
	f := &fold{n: n, cost: make([]int, (n+1)*(n+1)), succ: q.succ, pred: q.pred, chain: make([][]int, n)}
	for i := range n {
		row := f.cost[i*(n+1):]
		copy(row, p.Cost[i])
		row[i] = blocked
		f.pred[i].each(func(j int) { row[j] = blocked })
		f.chain[i] = []int{i}
		f.alive = append(f.alive, i)
	}
	for i, next := range q.immediate(q.topo) {
		row := f.cost[i*(n+1):]
		closeSkips(row, f.succ[i], next)
		// Nothing begins at a node that waits, or ends at one waited for.
		if f.pred[i].count() > 0 {
			f.cost[n*(n+1)+i] = blocked
		}
		if len(next) > 0 {
			row[n] = blocked
		}
	}
	return f
}

func (f *fold) arc(i, j int) int { return f.cost[i*(f.n+1)+j] }

// strip folds a forced beginning and a forced end into the depot.
func (f *fold) strip() {
	for again := true; again; {
		again = false
		for k, i := range f.alive {
			w := f.n + 1
			switch others := len(f.alive) - 1; {
			case f.succ[i].count() == others:
				f.fixed += f.arc(f.n, i)
				copy(f.cost[f.n*w:], f.cost[i*w:(i+1)*w])
				f.head = append(f.head, i)
			case f.pred[i].count() == others:
				f.fixed += f.arc(i, f.n)
				for r := range w {
					f.cost[r*w+f.n] = f.cost[r*w+i]
				}
				f.tail = append([]int{i}, f.tail...)
			default:
				continue
			}
			f.retire(k)
			again = true
			break
		}
	}
}

// retire takes the node at alive[k] out of the problem.
func (f *fold) retire(k int) {
	i := f.alive[k]
	f.alive = append(f.alive[:k:k], f.alive[k+1:]...)
	for _, j := range f.alive {
		f.succ[j].drop(i)
		f.pred[j].drop(i)
	}
}

// glue joins nodes until no pair passes the test or the work is used up.
func (f *fold) glue() {
	for again := true; again && f.work < foldWork; {
		again = false
		for k := 0; k < len(f.alive) && f.work < foldWork; k++ {
			v := f.alive[k]
			if u := f.partner(v, ahead); u >= 0 {
				f.join(u, v)
				again = true
				k--
			} else if u := f.partner(v, behind); u >= 0 {
				f.join(v, u)
				again = true
				k--
			}
		}
	}
}

// A side says where the partner stands that a node is moved to.
type side int

const (
	ahead  side = iota // the partner comes right before the node
	behind             // right after it
)

// view reads arcs and precedence forwards (ahead) or in the mirror (behind).
func (f *fold) view(s side) (d func(i, j int) int, pred, succ []bitset) {
	if s == ahead {
		return f.arc, f.pred, f.succ
	}
	return func(i, j int) int { return f.arc(j, i) }, f.succ, f.pred
}

// partner finds a node to which v may always be moved, -1 if there is none.
func (f *fold) partner(v int, s side) int {
	_, pred, succ := f.view(s)
	lim := f.removal(v, s, 3, -1) // an upper estimate of rem, quickly had
	f.work += len(f.alive) * len(pred[v]) / 2
	for _, u := range f.alive {
		if u == v || succ[v].has(u) || pred[v].count() > pred[u].count()+1 {
			continue
		}
		linked := pred[v].has(u)
		if !withinBut(pred[v], pred[u], u) || !linked && !withinBut(succ[v], succ[u], u) {
			continue
		}
		ins, ok := f.insertion(u, v, s, lim)
		if ok && ins <= f.removal(v, s, len(f.alive)+1, u) {
			return u
		}
	}
	return -1
}

// withinBut reports whether every member of a except one is also in b.
func withinBut(a, b bitset, except int) bool {
	for w, x := range a {
		x &^= b[w]
		if except>>6 == w {
			x &^= 1 << (uint(except) & 63)
		}
		if x != 0 {
			return false
		}
	}
	return true
}

// insertion is ins(u,v); not ok once it exceeds lim or u to v is no arc.
func (f *fold) insertion(u, v int, s side, lim int) (int, bool) {
	d, _, _ := f.view(s)
	uv := d(u, v)
	if uv == blocked {
		return 0, false
	}
	worst := -blocked
	for k := range len(f.alive) + 1 {
		y := f.n
		if k > 0 {
			y = f.alive[k-1]
		}
		f.work++
		if y == u || y == v || d(u, y) == blocked {
			continue
		}
		if d(v, y) == blocked { // v waits for y, though u does not
			return 0, false
		}
		if worst = max(worst, uv+d(v, y)-d(u, y)); worst > lim {
			return 0, false
		}
	}
	return worst, true
}

// removal is rem(v) over the first rows nodes x other than u.
func (f *fold) removal(v int, s side, rows, u int) int {
	d, _, _ := f.view(s)
	least := blocked
	for k := range rows {
		x := f.n
		if k > 0 && k <= len(f.alive) {
			x = f.alive[k-1]
		}
		if k > len(f.alive) || x == u || x == v || d(x, v) == blocked {
			continue
		}
		xv := d(x, v)
		if x != f.n && d(v, f.n) != blocked && d(x, f.n) != blocked {
			least = min(least, xv+d(v, f.n)-d(x, f.n))
		}
		f.work += len(f.alive)
		for _, z := range f.alive {
			if z != v && z != x && d(v, z) != blocked && d(x, z) != blocked {
				least = min(least, xv+d(v, z)-d(x, z))
			}
		}
	}
	return least
}

// join makes u and then v one node, which keeps u's number.
func (f *fold) join(u, v int) {
	w := f.n + 1
	f.fixed += f.arc(u, v)
	f.chain[u] = append(f.chain[u][:len(f.chain[u]):len(f.chain[u])], f.chain[v]...)
	copy(f.cost[u*w:(u+1)*w], f.cost[v*w:(v+1)*w])
	f.cost[u*w+u] = blocked
	for k, i := range f.alive {
		if i == v {
			f.retire(k)
			break
		}
	}
	f.succ[u].union(f.succ[v])
	f.pred[u].union(f.pred[v])
	f.succ[u].drop(u)
	f.pred[u].drop(u)
	f.succ[u].each(func(j int) { f.pred[j].add(u); f.pred[j].union(f.pred[u]) })
	f.pred[u].each(func(j int) { f.succ[j].add(u); f.succ[j].union(f.succ[u]) })
	f.block(u)
}

// block closes the arcs that the precedence around u now rules out. Arcs that
// only skip over a forced node may stay open until instance sifts them.
func (f *fold) block(u int) {
	w := f.n + 1
	f.pred[u].each(func(p int) {
		f.cost[u*w+p] = blocked
		f.cost[f.n*w+u] = blocked
		f.cost[p*w+f.n] = blocked
		f.succ[u].each(func(s int) {
			f.cost[p*w+s] = blocked
			f.cost[s*w+p] = blocked
		})
	})
	f.succ[u].each(func(s int) {
		f.cost[s*w+u] = blocked
		f.cost[u*w+f.n] = blocked
		f.cost[f.n*w+s] = blocked
	})
}

// instance renumbers what is left.
func (f *fold) instance() *instance {
	n := len(f.alive)
	in := &instance{n: n, cost: make([]int, (n+1)*(n+1)), fixed: f.fixed,
		succ: newBitsets(n, n), pred: newBitsets(n, n),
		chain: make([][]int, n), head: f.head, tail: f.tail}
	for i, a := range f.alive {
		in.chain[i] = f.chain[a]
		for j, b := range f.alive {
			in.cost[i*(n+1)+j] = f.arc(a, b)
			if f.succ[a].has(b) {
				in.succ[i].add(j)
				in.pred[j].add(i)
			}
		}
		in.cost[i*(n+1)+n] = f.arc(a, f.n)
		in.cost[n*(n+1)+i] = f.arc(f.n, a)
	}
	in.cost[n*(n+1)+n] = f.arc(f.n, f.n)
	if n > 0 {
		in.cost[n*(n+1)+n] = blocked
	}
	in.order()
	return in
}
