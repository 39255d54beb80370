// Package diagnose finds which test to make first.
//
// In goes a finished plan and how many minutes a test takes; out comes the
// order of tests with the least expected time to the fault, as a decision tree,
// and what the tests can't do: causes that none tells apart, causes that none
// touches, tests that tell nothing, results that lead nowhere. The package never
// judges whether a test is safe to make, or whether its reading is right.
//
// The model: one fault is present. Shares are the causes' probabilities; what
// they leave below 1 belongs to a cause that the plan doesn't name. A test fails
// if the cause is one it checks and passes if not. With clears or blames it
// fails if the cause is blamed, passes if it is cleared, and else does either,
// each as likely. An outcome shows if the cause is one it means, without means
// if the cause is none the test checks; a cause that no outcome allows may show
// any of them, and one that several allow any of those, each as likely. Testing
// stops when one cause is left, elimination included, or when no test can part
// those that are left.
package diagnose

import (
	"slices"

	"fixslate/plan"
)

// Result is the best order of tests for one version of the object.
type Result struct {
	Variant      string     // the version it is for; empty: all of them
	Order        []string   // test ids, along the path on which every test passes
	Minutes      float64    // expected minutes to the fault
	Exact        bool       // no order takes less; false: found by a quick rule, and Minutes may not be the least
	Cut          bool       // even the quick rule stopped early: Minutes is an upper bound, and the tree ends before the tests do
	AsWritten    float64    // expected minutes where the tests are made in the story's order
	Same         [][]string // causes that no test tells apart, in groups of two or more
	TellsNothing []string   // tests that tell no causes apart
	Untested     []string   // causes that no test names
	Unknown      float64    // share of the cause that the plan doesn't name
	DeadEnds     []DeadEnd
	Tree         *Node // nil where the plan names no cause

	// Versions has a result for each version of the plan, in its order, where
	// causes or tests differ between versions. The result that holds them has
	// the order, times and tree of the first, and what is wrong in any: its
	// Same, Untested and DeadEnds are those of all versions, its TellsNothing
	// the tests that tell nothing in every version they are for. Empty: one
	// result serves all.
	Versions []Result
}

// Node is a place in the decision tree: a test to make, or an end.
type Node struct {
	Test     string   // id; empty: an end
	Minutes  float64  // what the test takes
	Share    float64  // how likely one comes here, 0 to 1
	Causes   []string // those still possible, in the plan's order
	Unknown  bool     // one that the plan doesn't name is possible as well
	Cut      bool     // tests are left that could part the causes, but the search stopped here
	Branches []Branch
}

// Branch is one outcome of a test.
type Branch struct {
	Outcome string    // Pass, Fail, or the id of the test's outcome
	Good    bool      // the outcome that counts as passing
	Exit    plan.Exit // where the plan sends the viewer
	Next    *Node     // with a Share of 0 where no named cause shows this outcome
}

// The outcomes of a test that has no outcomes of its own.
const (
	Pass = "pass"
	Fail = "fail"
)

// Best searches each version's tests. minutes says how long a test takes, zero
// or more. Between orders that take as long the one that begins with the test
// earlier in the plan is chosen.
//
// Cost: 2^n sets of causes times tests, n being the causes that some test tells
// apart (at most 16 and the unknown one), and a few million steps in all. Above
// either, a rule takes over that looks one test ahead; see quick.
func Best(p *plan.Plan, minutes func(*plan.Test) float64) Result {
	if !byVersion(p) {
		return bestFor(p, "", minutes)
	}
	var all []Result
	for i := range p.Variants {
		all = append(all, bestFor(p, p.Variants[i].ID, minutes))
	}
	first := all[0]
	first.Versions = all
	first.gather(p)
	return first
}

// gather takes in what can't be done in any of the versions.
func (r *Result) gather(p *plan.Plan) {
	r.Same, r.Untested, r.DeadEnds = nil, nil, nil
	useful := map[string]bool{}
	for _, v := range r.Versions {
		for _, group := range v.Same {
			if !slices.ContainsFunc(r.Same, func(g []string) bool { return slices.Equal(g, group) }) {
				r.Same = append(r.Same, group)
			}
		}
		for _, id := range v.Untested {
			if !slices.Contains(r.Untested, id) {
				r.Untested = append(r.Untested, id)
			}
		}
		for _, d := range v.DeadEnds {
			if !slices.ContainsFunc(r.DeadEnds, func(e DeadEnd) bool { return e.Test == d.Test && e.Outcome == d.Outcome }) {
				r.DeadEnds = append(r.DeadEnds, d)
			}
		}
		for i := range p.Tests {
			if t := &p.Tests[i]; plan.Meets(t.Variants, []string{v.Variant}) && !slices.Contains(v.TellsNothing, t.ID) {
				useful[t.ID] = true
			}
		}
	}
	r.TellsNothing = nil
	for i := range p.Tests {
		if id := p.Tests[i].ID; !useful[id] && !slices.Contains(r.TellsNothing, id) {
			r.TellsNothing = append(r.TellsNothing, id)
		}
	}
}

// byVersion holds where a cause or a test stands for some versions only.
func byVersion(p *plan.Plan) bool {
	return len(p.Variants) > 0 && (slices.ContainsFunc(p.Causes, func(c plan.Cause) bool { return len(c.Variants) > 0 }) ||
		slices.ContainsFunc(p.Tests, func(t plan.Test) bool { return len(t.Variants) > 0 }))
}

func bestFor(p *plan.Plan, variant string, minutes func(*plan.Test) float64) Result {
	m := modelOf(p, variant, minutes)
	r := Result{
		Variant: variant, Exact: true, Same: m.alike(), TellsNothing: m.idle(), Untested: m.untested(),
		Unknown: m.unknown(), DeadEnds: m.deadEnds(p),
	}
	if len(m.causes) == 0 {
		return r
	}
	s := newSearch(m)
	root, exact := s.exact()
	if !exact {
		root = s.quick()
	}
	r.Exact, r.Minutes, r.Cut = exact, root.cost, s.cut
	r.AsWritten = s.asWritten(p)
	r.Tree = s.tree(root)
	r.Order = path(r.Tree)
	return r
}

// path follows the tree while every test passes. Where no cause lets a test
// pass (it shows how the object fails, not whether), the likeliest outcome is
// followed instead.
func path(n *Node) []string {
	var order []string
	for n != nil && n.Test != "" {
		order = append(order, n.Test)
		var next *Node
		for _, b := range n.Branches {
			if b.Good && b.Next.Share > 0 {
				next = b.Next
				break
			}
			if b.Next.Share > 0 && (next == nil || b.Next.Share > next.Share) {
				next = b.Next
			}
		}
		n = next
	}
	return order
}
