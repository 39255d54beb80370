package order_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"fixslate/shotlist/order"
)

// check counts a result by the problem's definition alone, sharing no code
// with the solver.
func check(t *testing.T, p order.Problem, r order.Result) {
	t.Helper()
	n := len(p.Cost)
	sorted := slices.Sorted(slices.Values(r.Sequence))
	for i := range n {
		if len(sorted) != n || sorted[i] != i {
			t.Fatalf("sequence %v is no permutation of %d nodes", r.Sequence, n)
		}
	}
	cost := 0
	for k := 1; k < n; k++ {
		cost += p.Cost[r.Sequence[k-1]][r.Sequence[k]]
	}
	if cost != r.Cost {
		t.Fatalf("cost is said to be %d, the sequence costs %d", r.Cost, cost)
	}
	for _, b := range p.Before {
		if slices.Index(r.Sequence, b[0]) >= slices.Index(r.Sequence, b[1]) {
			t.Fatalf("%d does not stand before %d in %v", b[0], b[1], r.Sequence)
		}
	}
	if r.Bound > r.Cost || r.Bound < 0 || r.Optimal != (r.Bound == r.Cost) {
		t.Fatalf("bound %d, cost %d, optimal %t do not agree", r.Bound, r.Cost, r.Optimal)
	}
}

// brute finds the optimum by walking every feasible sequence.
func brute(p order.Problem) int {
	n := len(p.Cost)
	after := make([]uint, n) // what must be placed before a node may be
	for _, b := range p.Before {
		after[b[1]] |= 1 << b[0]
	}
	best := -1
	var walk func(placed uint, last, cost int)
	walk = func(placed uint, last, cost int) {
		if best >= 0 && cost >= best {
			return
		}
		if placed == 1<<n-1 {
			best = cost
			return
		}
		for j := range n {
			if placed>>j&1 != 0 || after[j]&^placed != 0 {
				continue
			}
			step := 0
			if last >= 0 {
				step = p.Cost[last][j]
			}
			walk(placed|1<<j, j, cost+step)
		}
	}
	walk(0, -1, 0)
	return best
}

// mix makes small problems of many kinds: few and many pairs, few and many
// different costs, zeros, clusters of like nodes, huge entries.
func mix(r *rand.Rand, n int) order.Problem {
	p := order.Problem{Cost: make([][]int, n)}
	group := make([]int, n)
	groups := 1 + r.IntN(n+1)
	for i := range group {
		group[i] = r.IntN(groups)
	}
	top := []int{2, 5, 30, 1000, 1 << 40}[r.IntN(5)]
	between := make([][]int, groups)
	for a := range between {
		between[a] = make([]int, groups)
		for b := range between[a] {
			between[a][b] = r.IntN(top)
		}
	}
	kind := r.IntN(3)
	for i := range p.Cost {
		p.Cost[i] = make([]int, n)
		for j := range p.Cost[i] {
			c := between[group[i]][group[j]]
			if kind == 1 {
				c = r.IntN(top)
			} else if kind == 2 && group[i] == group[j] {
				c = 0
			}
			p.Cost[i][j] = c
		}
	}
	label := r.Perm(n)
	density := []float64{0, 0.05, 0.2, 0.5, 1}[r.IntN(5)]
	for i := range n {
		for j := range n {
			if label[i] < label[j] && r.Float64() < density {
				p.Before = append(p.Before, [2]int{i, j})
				if r.IntN(2) == 0 {
					p.Cost[j][i] = -1
				}
			}
		}
	}
	return p
}

// The optimum is always found and proved on problems that brute force can
// settle; the bound holds under any budget.
func TestEqualsBruteForce(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 1))
	for k := range 2000 {
		p := mix(r, 2+k%8)
		want := brute(p)
		got, err := order.Solve(t.Context(), p, order.Budget{Seed: uint64(k)})
		if err != nil {
			t.Fatalf("%v: %v", p, err)
		}
		check(t, p, got)
		if got.Cost != want {
			t.Fatalf("problem %d, %v: cost %d, optimum %d", k, p, got.Cost, want)
		}
		if got.Bound > want || !got.Optimal {
			t.Fatalf("problem %d, %v: bound %d, optimal %t, optimum %d", k, p, got.Bound, got.Optimal, want)
		}
	}
}

func TestSmallest(t *testing.T) {
	for _, p := range []order.Problem{{}, {Cost: [][]int{{7}}}, {Cost: [][]int{{-1}}}} {
		got, err := order.Solve(t.Context(), p, order.Budget{})
		if err != nil {
			t.Fatal(err)
		}
		check(t, p, got)
		if !got.Optimal || got.Cost != 0 {
			t.Errorf("%d nodes: %+v", len(p.Cost), got)
		}
	}
}

func TestFaults(t *testing.T) {
	square := [][]int{{0, 1, 1}, {1, 0, 1}, {1, 1, 0}}
	for _, c := range []struct {
		name string
		p    order.Problem
		want string
	}{
		{"ragged", order.Problem{Cost: [][]int{{0, 1}, {1}}}, "row 1"},
		{"too wide", order.Problem{Cost: [][]int{{0, 1}}}, "row 0"},
		{"negative", order.Problem{Cost: [][]int{{0, -2}, {1, 0}}}, "from 0 to 1 is -2"},
		{"too large", order.Problem{Cost: [][]int{{0, 1<<40 + 1}, {1, 0}}}, "from 0 to 1"},
		{"itself", order.Problem{Cost: square, Before: [][2]int{{1, 1}}}, "1 before 1"},
		{"cycle", order.Problem{Cost: square, Before: [][2]int{{2, 0}, {0, 1}, {1, 2}}}, "0 before 1 before 2 before 0"},
		{"no such node", order.Problem{Cost: square, Before: [][2]int{{0, 3}}}, "{0, 3}"},
		{"no such node", order.Problem{Cost: square, Before: [][2]int{{-1, 0}}}, "{-1, 0}"},
	} {
		_, err := order.Solve(t.Context(), c.p, order.Budget{})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v does not say %q", c.name, err, c.want)
		}
	}
}

// An entry that no sequence can use may hold anything.
func TestUnusedEntries(t *testing.T) {
	p := order.Problem{Cost: [][]int{{-5, 3, -9}, {-1, 0, 4}, {-1, -1, 1 << 50}}, Before: [][2]int{{0, 1}, {1, 2}}}
	got, err := order.Solve(t.Context(), p, order.Budget{})
	if err != nil {
		t.Fatal(err)
	}
	check(t, p, got)
	if got.Cost != 7 || !got.Optimal {
		t.Errorf("%+v", got)
	}
}

func TestCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	for n := range 40 {
		p := mix(rand.New(rand.NewPCG(1, uint64(n))), max(2, n))
		got, err := order.Solve(ctx, p, order.Budget{})
		if err != nil {
			t.Fatal(err)
		}
		check(t, p, got)
	}
}

func TestSameAgain(t *testing.T) {
	p := mix(rand.New(rand.NewPCG(3, 3)), 60)
	first, _ := order.Solve(t.Context(), p, order.Budget{Seed: 4})
	again, _ := order.Solve(t.Context(), p, order.Budget{Seed: 4})
	if !slices.Equal(first.Sequence, again.Sequence) || first.Bound != again.Bound {
		t.Errorf("%+v, then %+v", first, again)
	}
}
