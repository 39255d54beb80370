package diagnose

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"fixslate/plan"
)

// The shares by hand, from the plan language: words are 6, 2 and 1 parts of
// what written probabilities leave.
func TestShares(t *testing.T) {
	n := func(v float64) plan.Cause { return plan.Cause{Share: plan.Share{Number: v}} }
	w := func(v string) plan.Cause { return plan.Cause{Share: plan.Share{Word: v}} }
	for _, c := range []struct {
		name   string
		causes []plan.Cause
		want   []float64
	}{
		{"words alone", []plan.Cause{w("usual"), w("sometimes"), w("rare"), w("rare")}, []float64{.6, .2, .1, .1}},
		{"an unset share counts as sometimes", []plan.Cause{w("usual"), w("")}, []float64{.75, .25}},
		{"below one leaves an unknown cause", []plan.Cause{n(.5), n(.2)}, []float64{.5, .2, .3}},
		{"words take what is left", []plan.Cause{n(.1), w("usual"), w("sometimes"), w("rare")}, []float64{.1, .6, .2, .1}},
		{"above one is normalised", []plan.Cause{n(1), n(.6)}, []float64{.625, .375}},
		{"one exactly leaves none", []plan.Cause{n(.1), n(.2), n(.3), n(.4)}, []float64{.1, .2, .3, .4}},
		{"nothing left for a word: as the smallest", []plan.Cause{n(.75), n(.25), w("usual")}, []float64{.6, .2, .2}},
		{"no cause", nil, []float64{}},
	} {
		got := shares(c.causes)
		ok := len(got) == len(c.want)
		for i := range got {
			ok = ok && near(got[i], c.want[i])
		}
		if !ok {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// Every part of a result, worked out by hand.
func TestResult(t *testing.T) {
	p := decode(t, `
cause = [
  { id = "fuse",   what = "blown fuse", share = 0.5 },
  { id = "motor",  what = "worn motor", share = 0.2 },
  { id = "brush",  what = "worn brush", share = 0.1 },
  { id = "ghost",  what = "a ghost",    share = 0.1 },
]
test = [
  { id = "rest",  question = "Battery good?", work = "1m", pass = "test:whole", fail = "stop: charge it" },
  { id = "spin",  question = "Does it spin?", work = "4m", checks = ["motor", "brush"], pass = "stop: look further", fail = "stop: fit a motor" },
  { id = "whole", question = "Fuse whole?",   work = "2m", checks = ["fuse"], fail = "stop: same rating" },
]
`)
	p.Steps[0].Tests = []string{"rest", "whole", "spin"} // decoded plans name them in a step
	got := Best(p, minutes)
	// whole first: 2 + 0.5·4; spin first: 4 + 0.7·2
	want := Result{
		Order: []string{"whole", "spin"}, Minutes: 4, Exact: true, AsWritten: 4,
		Same: [][]string{{"motor", "brush"}}, TellsNothing: []string{"rest"}, Untested: []string{"ghost"}, Unknown: got.Unknown,
		DeadEnds: []DeadEnd{{Test: "whole", Outcome: Pass, Good: true, Causes: []string{"motor", "brush", "ghost"}}},
	}
	tree := got.Tree
	got.Tree = nil // looked at below
	if d := cmp.Diff(want, got); d != "" || !near(got.Unknown, 0.1) {
		t.Errorf("unknown %v\n%s", got.Unknown, d)
	}
	if d := cmp.Diff([]string{"fuse"}, tree.Branches[1].Next.Causes); d != "" {
		t.Error(d)
	}
	if end := tree.Branches[0].Next.Branches[0].Next; !end.Unknown || len(end.Causes) != 1 || !near(end.Share, 0.2) {
		t.Errorf("after two good readings: %+v", end)
	}
}

// Where no cause lets a test pass, the order goes on with the likeliest way it
// fails: the test shows how, not whether.
func TestOrderGoesOnWhereNothingPasses(t *testing.T) {
	p := decode(t, `
cause = [
  { id = "blocked", what = "blocked", share = "usual" }, { id = "hose", what = "hose", share = "sometimes" },
  { id = "winding", what = "winding", share = "rare" }, { id = "feed", what = "feed", share = "rare" },
]
[[test]]
id = "listen"
question = "What does it do?"
work = "1m"
checks = ["blocked", "hose", "winding", "feed"]
outcome = [
  { id = "drains", sees = "it drains" },
  { id = "silent", sees = "silence", means = ["winding", "feed"] },
  { id = "hums", sees = "a hum", means = ["blocked", "hose"] },
]
[[test]]
id = "ohms"
question = "Winding?"
work = "5m"
checks = ["winding"]
[[test]]
id = "gravity"
question = "Does it run out?"
work = "5m"
checks = ["blocked"]
`)
	got := Best(p, minutes)
	if d := cmp.Diff([]string{"listen", "gravity"}, got.Order); d != "" || !near(got.Minutes, 6) {
		t.Errorf("%v minutes; %s", got.Minutes, d)
	}
	if drains := got.Tree.Branches[0]; drains.Next.Share != 0 || len(drains.Next.Causes) != 0 || drains.Next.Test != "" {
		t.Errorf("%+v", drains.Next)
	}
}

// Versions have their own causes and tests, and so their own orders.
func TestVersions(t *testing.T) {
	p := decode(t, `
variant = [{ id = "early", name = "early" }, { id = "late", name = "late" }]
cause = [
  { id = "motor", what = "motor", share = 0.5 },
  { id = "resistor", what = "resistor", share = 0.5, variants = ["early"] },
  { id = "module", what = "module", share = 0.3, variants = ["late"] },
]
test = [
  { id = "spin", question = "Spins?", work = "4m", checks = ["motor"] },
  { id = "ohms", question = "Ohms?", work = "1m", checks = ["resistor"], variants = ["early"] },
]
`)
	got := Best(p, minutes)
	if len(got.Versions) != 2 || got.Variant != "early" || got.Versions[1].Variant != "late" {
		t.Fatalf("%+v", got)
	}
	if d := cmp.Diff([]string{"ohms"}, got.Order); d != "" || !near(got.Minutes, 1) {
		t.Errorf("early: %v minutes; %s", got.Minutes, d)
	}
	// what can't be done in any version stands at the top; "spin" is of use in
	// both, "ohms" in the one that has it
	if d := cmp.Diff([]string{"module"}, got.Untested); d != "" || len(got.Versions[0].Untested) > 0 || len(got.TellsNothing) > 0 {
		t.Errorf("untested %v, tells nothing %v", got.Untested, got.TellsNothing)
	}
	late := got.Versions[1]
	if d := cmp.Diff([]string{"spin"}, late.Order); d != "" || !near(late.Minutes, 4) || !near(late.Unknown, 0.2) {
		t.Errorf("late: %+v; %s", late, d)
	}
	if d := cmp.Diff([]string{"module"}, late.Untested); d != "" {
		t.Error(d)
	}
}

func TestEmptyPlans(t *testing.T) {
	for name, p := range map[string]*plan.Plan{
		"nothing":   {},
		"no test":   {Causes: []plan.Cause{{ID: "a"}, {ID: "b"}}},
		"no cause":  {Tests: []plan.Test{{ID: "t", Checks: []string{"a"}}}},
		"one cause": {Causes: []plan.Cause{{ID: "a"}}, Tests: []plan.Test{{ID: "t", Checks: []string{"a"}}}},
	} {
		got := Best(p, minutes)
		if len(got.Order) != 0 || got.Minutes != 0 || !got.Exact {
			t.Errorf("%s: %+v", name, got)
		}
	}
}

// large has n causes and a test for each stretch of them that a step of the
// given width makes.
func large(n, width int) *plan.Plan {
	p := &plan.Plan{}
	for i := range n {
		p.Causes = append(p.Causes, plan.Cause{ID: fmt.Sprint("c", i), Share: plan.Share{Number: 1 / float64(n+i%7+1)}})
	}
	for i := range n {
		t := plan.Test{ID: fmt.Sprint("t", i)}
		for k := i; k < min(n, i+width); k++ {
			t.Checks = append(t.Checks, p.Causes[k].ID)
		}
		p.Tests = append(p.Tests, t)
	}
	return p
}

// Past its limits the search says that it is not exact, and still parts all
// causes.
func TestLargePlansSayThatTheyAreNotExact(t *testing.T) {
	var ends func(n *Node) int
	ends = func(n *Node) int {
		if n.Test == "" {
			return 1
		}
		sum := 0
		for _, b := range n.Branches {
			sum += ends(b.Next)
		}
		return sum
	}
	for _, n := range []int{16, 17, 40, 300} {
		got := Best(large(n, 3), func(*plan.Test) float64 { return 3 })
		if want := n <= 16; got.Exact != want || got.Cut {
			t.Errorf("%d causes: exact %v, cut %v", n, got.Exact, got.Cut)
		}
		if e := ends(got.Tree); e != n+1 {
			t.Errorf("%d causes and the unknown one end in %d places", n, e)
		}
		if got.Minutes > got.AsWritten+1e-9 {
			t.Errorf("%d causes: %v minutes, as written %v", n, got.Minutes, got.AsWritten)
		}
	}
}

// Tests that may go either way fork the tree; it is ended in time and says so.
func TestForkingTestsAreBounded(t *testing.T) {
	p := large(24, 2)
	for i := range p.Tests {
		p.Tests[i].Blames, p.Tests[i].Checks = p.Tests[i].Checks, nil
	}
	got := Best(p, func(*plan.Test) float64 { return 3 })
	if got.Exact || !got.Cut || got.Minutes <= 0 || got.Minutes > got.AsWritten+72 {
		t.Errorf("exact %v, cut %v, %v minutes", got.Exact, got.Cut, got.Minutes)
	}
}

func BenchmarkBest(b *testing.B) {
	for _, c := range []struct{ n, width int }{{6, 2}, {16, 3}, {16, 8}, {40, 3}, {300, 40}} {
		p := large(c.n, c.width)
		b.Run(fmt.Sprintf("%d-causes-%d-wide", c.n, c.width), func(b *testing.B) {
			for b.Loop() {
				Best(p, func(*plan.Test) float64 { return 3 })
			}
		})
	}
}
