// Package order puts nodes into the cheapest sequence in which every node
// stands after those it waits for: the Sequential Ordering Problem.
//
// In go integer costs from node to node and pairs of nodes in a forced order.
// Out comes the best sequence found, its cost, a lower bound that no sequence
// can beat, and whether the two were proved to meet. The package knows nothing
// of shots, uses one core, reads the clock only for Budget.Seconds, and never
// calls a sequence optimal that it has not proved to be.
//
// The way of a problem: poset (pairs closed, cycles named), fold (forced ends
// and interchangeable nodes become one), greedy, assignment bound, a short
// search, walk bound, dynamic programming, tree bound, a long search; the first
// proof ends it. Narrow orders are settled up to hundreds of nodes. Of wide
// ones, from 50 nodes, expect a good sequence without proof; from 200 to 400
// nodes on, by their width, the walk and the programming are left out, and the
// bound may be weak.
package order

import (
	"context"
	"errors"
	"fmt"
)

// A Problem is a set of nodes 0..n-1 to be visited once each, from any first
// to any last one.
type Problem struct {
	// Cost[i][j] is the cost of going from i straight to j: 0 or more, at most
	// 2^40, in any unit. Entries that no sequence can use are not read: the
	// diagonal, and [i][j] where j must come before i.
	Cost [][]int
	// Before holds pairs {a, b}: a comes somewhere before b. It need not be
	// transitively closed; a pair may stand in it twice.
	Before [][2]int
}

// A Budget limits the work. The same problem and budget give the same result
// unless Seconds is set.
type Budget struct {
	// Rounds of the search, each one disturbance and its repair; 0 stands for
	// a default of 2,500. The proof may make 16 states a round, at most
	// 6,000,000, or half a gigabyte.
	Rounds int
	// Seconds > 0 works until the optimum is proved or that time has passed,
	// whatever Rounds says. Results then depend on the machine.
	Seconds float64
	// Seed chooses among equally good ways to search.
	Seed uint64
}

// A Result is what Solve found.
type Result struct {
	Sequence []int // every node once
	Cost     int   // of Sequence: the sum of its entries in Problem.Cost
	Bound    int   // no sequence costs less; at most Cost
	Optimal  bool  // Bound == Cost
}

// Solve orders the nodes of p. It fails only on a problem that is not one: a
// cost matrix that is not square, an entry below 0 or above 2^40 where a
// sequence may go, a pair of nodes that do not exist, pairs that form a cycle.
// When ctx ends, Solve returns the best so far with a valid bound.
func Solve(ctx context.Context, p Problem, b Budget) (Result, error) {
	m := newMeter(ctx, b)
	in, err := prepare(p)
	if err != nil {
		return Result{}, err
	}
	r := answer(solve(in, m))
	if err := verify(p, r); err != nil {
		return Result{}, err
	}
	return r, nil
}

// found is what is known about an instance.
type found struct {
	in    *instance
	m     *meter
	seq   []int32
	cost  int
	bound int
}

func (f *found) offer(seq []int32) {
	if c := f.in.length(seq); c < f.cost {
		f.seq, f.cost = seq, c
	}
}

func (f *found) raise(bound int) { f.bound = min(f.cost, max(f.bound, bound)) }

func (f *found) done() bool { return f.bound == f.cost }

// solve spends the budget: a short search, the proof where there is hope for
// one, and the rest on a long search.
func solve(in *instance, m *meter) *found {
	f := &found{in: in, m: m, seq: in.greedy()}
	f.cost = in.length(f.seq)
	p := assign(in, m.scans(), m.over)
	if f.raise(p.bound); f.done() {
		return f
	}
	d, shift := in.reduced(p, f.cost)
	s := newSearch(in, d, m.seed)
	goal := -1
	if shift == 0 {
		goal = 0 // no tour is below the assignment
	}
	m.stage(0.1)
	f.offer(s.run(f.seq, goal, m.progress))
	if f.raise(0); f.done() || m.ctx.Err() != nil {
		return f
	}
	if f.prove(p); f.done() || m.ctx.Err() != nil {
		return f
	}
	m.stage(1)
	f.offer(s.run(f.seq, goal, m.progress))
	f.raise(0)
	return f
}

// prove raises the bound, and settles the matter where the order is narrow.
func (f *found) prove(p potentials) {
	m, w := f.m, newWalk(f.in, p)
	if steps := m.steps(w.work()); steps > 0 {
		m.stage(0.06)
		if f.raise(w.improve(p, f.cost, steps, m.over)); f.done() {
			return
		}
		m.stage(0.3)
		e := newExact(w, f.cost)
		seq, v := e.prove(m.states(), m.over)
		if v == improved {
			f.offer(seq)
		}
		if v != unproved {
			f.bound = f.cost
			return
		}
		f.raise(e.lower())
	}
	if steps := m.steps(8 * len(f.in.cost)); steps > 0 {
		m.stage(0.06)
		f.raise(newTree(f.in, p).improve(f.cost, steps, m.over))
	}
}

// answer puts what was found into the words of the problem.
func answer(f *found) Result {
	r := Result{Sequence: f.in.unfold(f.seq), Cost: f.cost + f.in.fixed, Bound: f.bound + f.in.fixed}
	r.Optimal = r.Bound == r.Cost
	return r
}

// verify recounts a result from the problem alone, so that a slip anywhere
// in the search becomes an error and never a wrong sequence.
func verify(p Problem, r Result) error {
	place := make([]int, len(p.Cost))
	sum := 0
	for k, i := range r.Sequence {
		place[i] = k + 1
		if k > 0 {
			sum += p.Cost[r.Sequence[k-1]][i]
		}
	}
	if len(r.Sequence) != len(p.Cost) || sum != r.Cost {
		return errors.New("the search miscounted its sequence; please report the problem")
	}
	for i, at := range place {
		if at == 0 {
			return fmt.Errorf("the search lost node %d; please report the problem", i)
		}
	}
	for _, b := range p.Before {
		if place[b[0]] >= place[b[1]] {
			return fmt.Errorf("the search put %d after %d; please report the problem", b[0], b[1])
		}
	}
	return nil
}
