package diagnose

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"fixslate/plan"
	"fixslate/plan/given"
)

// decode reads a plan of causes and tests; a step is added.
func decode(t testing.TB, toml string) *plan.Plan {
	t.Helper()
	return given.Plan(t, toml+"\n[video]\ntitle = \"No air\"\n[[step]]\ntitle = \"Look\"\nsay = \"Look.\"\n")
}

func minutes(t *plan.Test) float64 { return t.Work.Minutes() }

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*max(1, math.Abs(a), math.Abs(b)) }

// Smith's ratio rule (Smith, "Various optimizers for single-stage production",
// 1956; for search, Stone, Theory of Optimal Search, 1975): tests of one cause
// each, none saved by elimination because the unknown cause is left, go by work
// over share, and the expected time is the sum over the tests of work times the
// share that is not found before.
func TestSingleCausesGoByWorkOverShare(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 1956))
	for round := range 300 {
		n := 1 + r.IntN(12)
		p := &plan.Plan{}
		work := map[string]float64{}
		for i := range n {
			id := fmt.Sprint("c", i)
			p.Causes = append(p.Causes, plan.Cause{ID: id, Share: plan.Share{Number: (0.1 + r.Float64()) / float64(2*n)}})
			p.Tests = append(p.Tests, plan.Test{ID: "t" + id, Checks: []string{id}})
			work["t"+id] = 0.5 + 10*r.Float64()
		}
		order := make([]int, n)
		for i := range order {
			order[i] = i
		}
		ratio := func(i int) float64 { return work[p.Tests[i].ID] / p.Causes[i].Share.Number }
		slices.SortFunc(order, func(a, b int) int {
			if ratio(a) < ratio(b) {
				return -1
			}
			return 1
		})
		var want []string
		left, cost := 1.0, 0.0
		for _, i := range order {
			want = append(want, p.Tests[i].ID)
			cost += work[p.Tests[i].ID] * left
			left -= p.Causes[i].Share.Number
		}
		got := Best(p, func(t *plan.Test) float64 { return work[t.ID] })
		if d := cmp.Diff(want, got.Order); d != "" || !near(cost, got.Minutes) || !got.Exact {
			t.Fatalf("round %d: %v minutes, want %v; exact %v; order %s", round, got.Minutes, cost, got.Exact, d)
		}
	}
}

// Huffman's own example ("A method for the construction of minimum-redundancy
// codes", Proceedings of the IRE 40, 1952, table I; the figures from memory): 13
// messages, on average 3.42 binary digits. A code is a plan of yes-or-no tests
// of equal cost (Zimmerman, "An optimal search procedure", 1959); as the shares
// fall, tests that ask whether the cause is among the first k are enough.
func TestHuffmansExample(t *testing.T) {
	p := &plan.Plan{}
	var first []string
	for i, share := range []float64{.20, .18, .10, .10, .10, .06, .06, .04, .04, .04, .04, .03, .01} {
		if i > 0 {
			p.Tests = append(p.Tests, plan.Test{ID: fmt.Sprint("first-", i), Checks: slices.Clone(first)})
		}
		first = append(first, fmt.Sprint("m", i+1))
		p.Causes = append(p.Causes, plan.Cause{ID: first[i], Share: plan.Share{Number: share}})
	}
	got := Best(p, func(*plan.Test) float64 { return 1 })
	if !near(got.Minutes, 3.42) || !got.Exact {
		t.Errorf("%v tests on average, want 3.42; exact %v", got.Minutes, got.Exact)
	}
}

// world is one way things can be: a cause and what each test would show.
type world struct {
	cause int
	shows []int
	share float64
}

// worlds spells the model out: an independent reading of the package's first
// comment, with no sets, masks or classes.
func worlds(p *plan.Plan, weights []float64) []world {
	var all []world
	for c, share := range weights {
		id := ""
		if c < len(p.Causes) {
			id = p.Causes[c].ID
		}
		rows := []world{{cause: c, share: share}}
		for _, t := range p.Tests {
			var may []int
			switch has := slices.Contains[[]string]; {
			case len(t.Outcomes) > 0:
				for k, o := range t.Outcomes {
					if has(o.Means, id) || len(o.Means) == 0 && !has(t.Checks, id) {
						may = append(may, k)
					}
				}
				for k := range t.Outcomes {
					if len(may) <= k && len(may) == 0 {
						for j := range t.Outcomes {
							may = append(may, j)
						}
					}
				}
			case has(t.Blames, id):
				may = []int{1}
			case has(t.Clears, id):
				may = []int{0}
			case has(t.Checks, id):
				may = []int{1}
			case len(t.Clears)+len(t.Blames) > 0:
				may = []int{0, 1}
			default:
				may = []int{0}
			}
			var next []world
			for _, w := range rows {
				for _, k := range may {
					next = append(next, world{c, append(slices.Clone(w.shows), k), w.share / float64(len(may))})
				}
			}
			rows = next
		}
		all = append(all, rows...)
	}
	return all
}

// bruteForce is the least expected cost over all decision trees.
func bruteForce(all []world, cost []float64, made uint) float64 {
	causes := map[int]bool{}
	share := 0.0
	for _, w := range all {
		causes[w.cause] = true
		share += w.share
	}
	if len(causes) < 2 {
		return 0
	}
	least, useful := math.Inf(1), false
	for k := range cost {
		if made>>k&1 == 1 {
			continue
		}
		by := map[int][]world{}
		for _, w := range all {
			by[w.shows[k]] = append(by[w.shows[k]], w)
		}
		sum := cost[k] * share
		for _, kept := range by {
			left := map[int]bool{}
			for _, w := range kept {
				left[w.cause] = true
			}
			useful = useful || len(left) < len(causes)
			sum += bruteForce(kept, cost, made|1<<k)
		}
		least = min(least, sum)
	}
	if !useful {
		return 0
	}
	return least
}

// randomPlan has up to five causes and five tests of every form.
func randomPlan(r *rand.Rand) (*plan.Plan, map[string]float64) {
	p, work := &plan.Plan{}, map[string]float64{}
	n := 1 + r.IntN(5)
	words := []string{"usual", "sometimes", "rare"}
	named := r.IntN(2) == 0
	for i := range n {
		share := plan.Share{Word: words[r.IntN(3)]}
		if named {
			share = plan.Share{Number: (0.1 + r.Float64()) / float64(n)}
		}
		p.Causes = append(p.Causes, plan.Cause{ID: fmt.Sprint("c", i), Share: share})
	}
	some := func() []string {
		var ids []string
		for _, c := range p.Causes {
			if r.IntN(3) == 0 {
				ids = append(ids, c.ID)
			}
		}
		return ids
	}
	for i := range 1 + r.IntN(5) {
		t := plan.Test{ID: fmt.Sprint("t", i)}
		switch r.IntN(6) {
		case 0:
			t.Clears, t.Blames = some(), some()
		case 1:
			t.Checks = some()
			for k := range 2 + r.IntN(2) {
				t.Outcomes = append(t.Outcomes, plan.Outcome{ID: fmt.Sprint("o", k), Means: some()})
			}
		default:
			t.Checks = some()
		}
		p.Tests = append(p.Tests, t)
		work[t.ID] = float64(r.IntN(20))
	}
	return p, work
}

// treeCost walks a result's tree world by world and adds up what was spent.
func treeCost(t *testing.T, p *plan.Plan, n *Node, w world) float64 {
	if n.Test == "" {
		return 0
	}
	k := slices.IndexFunc(p.Tests, func(t plan.Test) bool { return t.ID == n.Test })
	return n.Minutes + treeCost(t, p, n.Branches[w.shows[k]].Next, w)
}

// On small random cases no decision tree is cheaper, the tree that is drawn
// costs what is said, and the quick rule is never better than the best.
func TestNoTreeIsCheaper(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	worse, rounds := 0, 3000
	for round := range rounds {
		p, work := randomPlan(r)
		by := func(t *plan.Test) float64 { return work[t.ID] }
		var cost []float64
		for i := range p.Tests {
			cost = append(cost, by(&p.Tests[i]))
		}
		m := modelOf(p, "", by)
		all := worlds(p, m.weights)
		want := bruteForce(all, cost, 0)
		got := Best(p, by)
		if !got.Exact || !near(got.Minutes, want) {
			t.Fatalf("round %d: %v minutes, brute force %v\n%+v\n%v", round, got.Minutes, want, p.Tests, work)
		}
		if got.AsWritten < want-1e-9 {
			t.Fatalf("round %d: as written %v, under the least %v", round, got.AsWritten, want)
		}
		spent := 0.0
		for _, w := range all {
			spent += w.share * treeCost(t, p, got.Tree, w)
		}
		if !near(spent, want) {
			t.Fatalf("round %d: the tree takes %v, said %v", round, spent, want)
		}
		s := newSearch(m)
		quick := s.follow(s.start(), make([]bool, len(s.tests)), s.greedy(information), nil).cost
		if quick < want-1e-9 {
			t.Fatalf("round %d: the quick rule takes %v, the least is %v", round, quick, want)
		}
		if quick > want+1e-9 {
			worse++
		}
	}
	t.Logf("the rule of most information per minute was not the best in %d of %d cases", worse, rounds)
}
