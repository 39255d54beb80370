package diagnose

import (
	"slices"

	"fixslate/plan"
)

// tree is a search's tree in the words of the plan.
func (s *search) tree(n *node) *Node {
	out := &Node{Share: total(n.left), Cut: n.cut}
	var all []int
	for _, c := range n.left {
		all = append(all, s.groups[c.class]...)
	}
	slices.Sort(all)
	for _, i := range all {
		if i < len(s.m.causes) {
			out.Causes = append(out.Causes, s.m.causes[i])
		} else {
			out.Unknown = true
		}
	}
	if n.test < 0 {
		return out
	}
	t := s.tests[n.test].of
	out.Test, out.Minutes = t.plan.ID, t.minutes
	for k, o := range t.outcomes {
		out.Branches = append(out.Branches, Branch{Outcome: o.id, Good: k == t.good, Exit: o.exit, Next: s.tree(n.next[k])})
	}
	return out
}

// DeadEnd is an outcome of a test of which the plan doesn't say what to do.
type DeadEnd struct {
	Test    string
	Outcome string   // Pass, Fail, or the id of the test's outcome
	Good    bool     // the outcome that counts as passing
	Causes  []string // those it leaves, in the plan's order
	Last    bool     // no test follows: none later in the story, and no outcome of this one leads to another
	Closing bool     // the test names no cause: it closes the work, or guards the others
}

// deadEnds are the outcomes without an exit, in the plan's order.
func (m *model) deadEnds(p *plan.Plan) []DeadEnd {
	var ends []DeadEnd
	for i := range m.tests {
		t := &m.tests[i]
		last, closing := m.last(p, t), !slices.ContainsFunc(m.causes, t.names)
		for k, o := range t.outcomes {
			if o.exit.Kind != plan.Nowhere {
				continue
			}
			end := DeadEnd{Test: t.plan.ID, Outcome: o.id, Good: k == t.good, Last: last, Closing: closing}
			for c, id := range m.causes {
				if t.shows[k][c] {
					end.Causes = append(end.Causes, id)
				}
			}
			ends = append(ends, end)
		}
	}
	return ends
}

// last holds where no other test follows a test: no outcome leads to one, and
// in the story none stands after it. A test that no step makes has the tests
// below it in the plan after it.
func (m *model) last(p *plan.Plan, t *test) bool {
	for _, o := range t.outcomes {
		if o.exit.Kind == plan.ToTest {
			return false
		}
	}
	var story []string
	for i := range p.Steps {
		story = append(story, p.Steps[i].Tests...)
	}
	if !slices.Contains(story, t.plan.ID) {
		story = nil
		for i := range m.tests {
			story = append(story, m.tests[i].plan.ID)
		}
	}
	served := func(id string) bool {
		return id != t.plan.ID && slices.ContainsFunc(m.tests, func(t test) bool { return t.plan.ID == id })
	}
	at := slices.Index(story, t.plan.ID)
	return !slices.ContainsFunc(story[at+1:], served)
}
