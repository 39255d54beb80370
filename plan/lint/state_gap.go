package lint

import (
	"fmt"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
)

var stateGap = Rule{Name: "state-gap", Group: Completeness, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		for j, state := range s.Needs {
			if at, gap := p.startedLater(i, state); gap {
				report(p.gap(i, at, state, p.entry(stepPath(i, "needs"), j)))
			} else if at, over := p.endedBefore(i, state); over {
				r := p.gap(i, at, state, p.entry(stepPath(i, "needs"), j))
				r.Message = fmt.Sprintf("step %q needs %q, which has ended before, in step %q", p.title(i), state, p.title(at))
				r.Hint = fmt.Sprintf("move one of the two steps, end %q later, or take it out of needs", state)
				report(r)
			}
		}
		for j, state := range s.Ends {
			if p.neverBegun(state) {
				report(p.endOfNothing(i, j, s))
			}
		}
		for k := range s.Shots {
			if s.Shots[k].Apart || s.Shots[k].Kind != "camera" && s.Shots[k].Kind != "" {
				continue
			}
			for j, need := range s.Shots[k].Needs {
				if at, gap := p.startedLater(i, need.State); gap && !need.Not {
					report(p.gap(i, at, need.State, p.entry(stepPath(i, fmt.Sprintf("shot[%d].needs", k)), j)))
				}
			}
		}
	}
}}

// gap is the finding that a step needs a state which a later one begins.
func (p *Pass) gap(step, later int, state, path string) Report {
	return Report{
		Message: fmt.Sprintf("step %q needs %q, which begins only later, in step %q", p.title(step), state, p.title(later)),
		Hint:    fmt.Sprintf("move one of the two steps, or start %q before", state),
		Path:    path,
	}
}

// startedLater holds where a state does not hold in a step and begins only
// after it; at is the step that begins it. A state that held before and has
// ended is no gap of the plan's start but one of its order all the same.
func (p *Pass) startedLater(step int, state string) (at int, gap bool) {
	state = class.CanonicalState(state)
	for _, v := range p.Plan.Intervals {
		if v.State != state {
			continue
		}
		if v.From <= step && step <= v.To {
			return 0, false
		}
		if v.From > step && !gap {
			at, gap = v.From, true
		}
	}
	return at, gap
}

// endedBefore holds where a state was begun and ended before a step and does not
// hold in it; at is the step that ends it last.
func (p *Pass) endedBefore(step int, state string) (at int, over bool) {
	state = class.CanonicalState(state)
	for _, v := range p.Plan.Intervals {
		switch {
		case v.State != state:
		case v.From <= step && step <= v.To:
			return 0, false
		case v.To < step && (!over || v.To > at):
			at, over = v.To, true
		}
	}
	return at, over
}

// entry is the place of an entry of a list, or of the list's one value.
func (p *Pass) entry(list string, i int) string {
	if path := fmt.Sprintf("%s[%d]", list, i); p.Spans.Has(path) {
		return path
	}
	return list
}

// neverBegun holds for a state that a step ends and that nothing of the plan
// begins, under this name or one that refit-missing offers.
func (p *Pass) neverBegun(word string) bool {
	state := class.CanonicalState(word)
	for _, v := range p.Plan.Intervals {
		if v.State == state || class.Slips(v.State, state, 2) <= 2 || class.Slips(v.State, word, 2) <= 2 {
			return false
		}
	}
	return misspelt(word) == ""
}

// endOfNothing is the finding on such an end.
func (p *Pass) endOfNothing(step, entry int, s *plan.Step) Report {
	state := s.Ends[entry]
	return Report{
		Message: fmt.Sprintf("step %q ends %q, and nothing in the plan begins it", s.Title.Print, state),
		Hint:    fmt.Sprintf("add starts = [%q] to the step that begins it, or take it out of ends", state),
		Path:    p.entry(stepPath(step, "ends"), entry),
	}
}
