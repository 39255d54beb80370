package diagnose

import (
	"slices"

	"fixslate/plan"
)

// search works on classes: causes that no test tells apart are one to it.
type search struct {
	m       *model
	groups  [][]int   // by class: indexes into the model's weights
	weights []float64 // by class
	tests   []splitter
	nodes   int  // made so far
	steps   int  // of the exact search
	cut     bool // a tree was ended early
}

// splitter is a test that tells classes apart.
type splitter struct {
	of    *test
	shows [][]bool  // by outcome, by class
	ways  []float64 // by class: how many outcomes it may show, each as likely
}

// candidate is a class still possible, with how likely it is to be here.
type candidate struct {
	class  int
	weight float64
}

// node is a place in the search's tree.
type node struct {
	left []candidate
	test int     // index into tests, -1 at an end
	cost float64 // expected minutes from here on, for one who is here
	next []*node // by outcome
	cut  bool
}

func newSearch(m *model) *search {
	s := &search{m: m, groups: m.classes()}
	for _, g := range s.groups {
		sum := 0.0
		for _, i := range g {
			sum += m.weights[i]
		}
		s.weights = append(s.weights, sum)
	}
	for i := range m.tests {
		t := &m.tests[i]
		if !t.splits() {
			continue
		}
		sp := splitter{of: t, ways: make([]float64, len(s.groups))}
		for _, all := range t.shows {
			show := make([]bool, len(s.groups))
			for c, g := range s.groups {
				if show[c] = all[g[0]]; show[c] {
					sp.ways[c]++
				}
			}
			sp.shows = append(sp.shows, show)
		}
		s.tests = append(s.tests, sp)
	}
	return s
}

func (s *search) start() []candidate {
	var left []candidate
	for c, w := range s.weights {
		left = append(left, candidate{c, w})
	}
	return left
}

// after is what outcome k of a test leaves.
func (t *splitter) after(left []candidate, k int) []candidate {
	var kept []candidate
	for _, c := range left {
		if t.shows[k][c.class] {
			kept = append(kept, candidate{c.class, c.weight / t.ways[c.class]})
		}
	}
	return kept
}

// parts holds where some outcome rules out some of what is left.
func (t *splitter) parts(left []candidate) bool {
	for _, show := range t.shows {
		n := 0
		for _, c := range left {
			if show[c.class] {
				n++
			}
		}
		if 0 < n && n < len(left) {
			return true
		}
	}
	return false
}

func total(left []candidate) float64 {
	sum := 0.0
	for _, c := range left {
		sum += c.weight
	}
	return sum
}

// mostNodes bounds a tree. Where every test has one outcome for each cause a
// tree has one end a class at most; only tests that may go either way fork.
const mostNodes = 20000

// follow makes the tree of a rule: choose gives the next test among those that
// are not made and part what is left, or -1 for none. finish may end a branch
// by better means; nil: never. Past mostNodes a branch is ended and charged
// with every test that could still part it: an upper bound.
func (s *search) follow(left []candidate, made []bool, choose func([]candidate, []bool) int, finish func([]candidate, []bool) *node) *node {
	n := &node{left: left, test: -1}
	if s.nodes++; s.nodes > mostNodes {
		for k := range s.tests {
			if !made[k] && s.tests[k].parts(left) {
				n.cost, n.cut, s.cut = n.cost+s.tests[k].of.minutes, true, true
			}
		}
		return n
	}
	if finish != nil {
		if done := finish(left, made); done != nil {
			return done
		}
	}
	n.test = choose(left, made)
	if n.test < 0 {
		return n
	}
	t := &s.tests[n.test]
	n.cost = t.of.minutes
	made[n.test] = true
	whole := total(left)
	for k := range t.shows {
		kept := t.after(left, k)
		child := s.follow(kept, made, choose, finish)
		n.next = append(n.next, child)
		if w := total(kept); w > 0 {
			n.cost += child.cost * w / whole
		}
	}
	made[n.test] = false
	return n
}

// asWritten is the expected time of the tests in the story's order, leaving out
// those that tell nothing about what is left.
func (s *search) asWritten(p *plan.Plan) float64 {
	var story []string
	for i := range p.Steps {
		story = append(story, p.Steps[i].Tests...)
	}
	order := make([]int, len(s.tests))
	place := make([]int, len(s.tests))
	for k := range s.tests {
		order[k] = k
		if place[k] = slices.Index(story, s.tests[k].of.plan.ID); place[k] < 0 {
			place[k] = len(story)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return place[a] - place[b] })
	choose := func(left []candidate, made []bool) int {
		for _, k := range order {
			if !made[k] && s.tests[k].parts(left) {
				return k
			}
		}
		return -1
	}
	own := search{m: s.m, groups: s.groups, weights: s.weights, tests: s.tests}
	return own.follow(own.start(), make([]bool, len(own.tests)), choose, nil).cost
}
