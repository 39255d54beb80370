package order

import (
	"math/rand/v2"
	"testing"
)

// cheapest walks every feasible sequence of a small instance.
func cheapest(in *instance) int {
	best := blocked
	var walk func(placed, at, cost int)
	walk = func(placed, at, cost int) {
		if placed == 1<<in.n-1 {
			best = min(best, cost+in.arc(at, in.n))
		}
		for j := range in.n {
			if placed>>j&1 == 0 && in.pred[j].within(bitset{uint64(placed)}) && in.arc(at, j) < blocked {
				walk(placed|1<<j, j, cost+in.arc(at, j))
			}
		}
	}
	walk(0, in.n, 0)
	return best
}

// Each bound by itself stays below the optimum found by walking every
// sequence, is no weaker than the assignment it starts from, and is not empty:
// over all problems it closes most of the gap.
func TestBounds(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 8))
	never := func() bool { return false }
	sums := map[string]int{}
	for k := range 400 {
		n := 3 + k%6
		p := Problem{Cost: make([][]int, n)}
		top := []int{3, 50, 1 << 40}[k%3]
		for i := range p.Cost {
			p.Cost[i] = make([]int, n)
			for j := range p.Cost[i] {
				p.Cost[i][j] = r.IntN(top + 1)
			}
			for j := range i {
				if r.IntN(6) == 0 {
					p.Before = append(p.Before, [2]int{j, i})
				}
			}
		}
		in, err := prepare(p)
		if err != nil {
			t.Fatal(err)
		}
		if in.n < 2 {
			continue
		}
		want := cheapest(in)
		prices := assign(in, 1<<62, never)
		w := newWalk(in, prices)
		bounds := map[string]int{
			"assignment": prices.bound,
			"tree":       newTree(in, prices).improve(want, 50, never),
			"walk":       w.improve(prices, want, 50, never),
		}
		// Looking for anything below twice the optimum finds the optimum, and
		// every layer on the way bounds it.
		e := newExact(w, 2*want+2)
		seq, v := e.prove(1<<20, never)
		if v != improved || in.length(seq) != want {
			t.Fatalf("problem %d: verdict %d, sequence %v, optimum %d", k, v, seq, want)
		}
		if v != improved || e.lower() > want {
			t.Fatalf("problem %d: the layers say %d, the optimum is %d", k, e.lower(), want)
		}
		if _, v := newExact(w, want).prove(1<<20, never); v != proved {
			t.Fatalf("problem %d: verdict %d on the optimum", k, v)
		}
		for name, b := range bounds {
			if b > want || b < prices.bound {
				t.Fatalf("problem %d, %v: %s bound %d, assignment %d, optimum %d", k, p, name, b, prices.bound, want)
			}
			if top == 50 {
				sums[name] += b
				sums["optimum"] += want
			}
		}
	}
	for name, b := range sums {
		if name != "optimum" && 3*b*100 < sums["optimum"]*85 {
			t.Errorf("%s bounds add up to %d of %d", name, b, sums["optimum"]/3)
		}
	}
}

// An assignment that had to stop early still bounds.
func TestAssignmentStopped(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 2))
	for range 50 {
		p := Problem{Cost: make([][]int, 8)}
		for i := range p.Cost {
			p.Cost[i] = make([]int, 8)
			for j := range p.Cost[i] {
				p.Cost[i][j] = r.IntN(30)
			}
		}
		in, _ := prepare(p)
		full := assign(in, 1<<62, func() bool { return false })
		if early := assign(in, 0, func() bool { return true }); early.bound > full.bound {
			t.Fatalf("stopped at %d, the assignment costs %d", early.bound, full.bound)
		}
	}
}

// The cheapest tree is the cheapest of all choices of one arc into every node
// that make a tree, with the cheapest arc back to the depot.
func TestCheapestTree(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	for range 300 {
		n := 2 + r.IntN(4)
		in := &instance{n: n, cost: make([]int, (n+1)*(n+1))}
		for i := range in.cost {
			if in.cost[i] = r.IntN(8); in.cost[i] == 7 && i%(n+1) != 0 && i/(n+1) != n {
				in.cost[i] = blocked
			}
		}
		from := make([]int, n)
		want := blocked
		var choose func(j, cost int)
		choose = func(j, cost int) {
			if j == n {
				for i := range n {
					for steps := 0; i != n; steps++ {
						if i = from[i]; steps > n {
							return
						}
					}
				}
				want = min(want, cost)
				return
			}
			for i := range n + 1 {
				if c := in.arc(i, j); i != j && c != blocked {
					from[j] = i
					choose(j+1, cost+c)
				}
			}
		}
		choose(0, 0)
		back := blocked
		for i := range n {
			back = min(back, in.arc(i, n))
		}
		if want += back; want >= blocked {
			continue
		}
		prices := potentials{row: make([]int, n+1), col: make([]int, n+1)}
		if got := newTree(in, prices).run(); got != fine*want {
			t.Fatalf("%v: tree %d, want %d", in.cost, got, fine*want)
		}
	}
}
