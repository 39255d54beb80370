package lint

import (
	"fmt"
	"slices"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
	"fixslate/shotlist"
)

var lastChance = Rule{Name: "last-chance", Group: Completeness, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	for _, turn := range shotlist.LastChances(p.Plan, p.Shots) {
		for _, i := range turn.Shots {
			shot := &p.Shots[i]
			if shot.Suggested || len(shot.Without) == 0 {
				continue // the day places it by itself
			}
			why := p.comesAfter(shot, turn.Step)
			if why == "" {
				continue
			}
			report(Report{
				Message: fmt.Sprintf("shot %q works only before step %q, and %s", shot.ID, p.Plan.Steps[turn.Step].Title.Print, why),
				Hint:    "film it before that step, from a place that stands then; the day sheet lists it under last chance",
				Path:    stepPath(shot.Step, "title"),
			})
		}
	}
	for i := range p.Plan.Steps {
		for j := range p.Plan.Steps[i].Shots {
			shot := &p.Plan.Steps[i].Shots[j]
			if !shot.Apart || shot.Kind != "" && shot.Kind != "camera" {
				continue
			}
			for _, need := range shot.Needs {
				if need.Not && p.neverAgain(i, need.State) {
					report(Report{
						Message: fmt.Sprintf("a shot of step %q is made apart and needs %q not to hold, which is over by then", p.Plan.Steps[i].Title.Print, need.State),
						Hint:    "film it on the day, before that change",
						Path:    stepPath(i, fmt.Sprintf("shot[%d]", j)),
					})
				}
			}
		}
	}
}}

// comesAfter says why a shot would be filmed only after a change: its set-up or
// its helper is otherwise needed only then.
func (p *Pass) comesAfter(shot *shotlist.Shot, turn int) string {
	later := func(same func(*shotlist.Shot) bool) bool {
		n := 0
		for i := range p.Shots {
			other := &p.Shots[i]
			if other.ID == shot.ID || !same(other) {
				continue
			}
			if other.Step <= turn {
				return false
			}
			n++
		}
		return n > 0
	}
	if shot.Setup != "" && later(func(o *shotlist.Shot) bool { return o.Setup == shot.Setup }) {
		return fmt.Sprintf("every other shot from set-up %q comes later", shot.Setup)
	}
	for _, who := range shot.Who {
		if who != p.Plan.Presenter && later(func(o *shotlist.Shot) bool { return slices.Contains(o.Who, who) }) {
			return fmt.Sprintf("%s is otherwise needed only later", who)
		}
	}
	return ""
}

// neverAgain holds where a state that begins in the story is never left.
func (p *Pass) neverAgain(step int, state string) bool {
	state = class.CanonicalState(state)
	return slices.ContainsFunc(p.Plan.Intervals, func(v plan.Interval) bool { return v.State == state && v.Open && v.From >= step })
}
