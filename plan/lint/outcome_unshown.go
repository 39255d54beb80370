package lint

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"sync"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var outcomeUnshown = Rule{Name: "outcome-unshown", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	if len(p.Plan.Shoot.Has) == 0 {
		return
	}
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		if s.OnlyIf.Test == "" || !s.HandsOn() || p.madeElsewhere(i) || saysSound(p.words[i]) {
			continue
		}
		for _, t := range p.Plan.Test(s.OnlyIf.Test) {
			if !plan.Meets(t.Variants, s.Variants) || p.canShow(t, s.OnlyIf.Outcome) {
				continue
			}
			report(Report{
				Message: fmt.Sprintf("step %q is for when %q %s, which the filmed object can't show", s.Title.Print, cmp.Or(t.Question.Print, t.ID), outcomeWords(s.OnlyIf.Outcome)),
				Hint:    `film it elsewhere (kind = "insert" or "still", or apart = true on its shots), or add a [[differs]] for the step`,
				Path:    stepPath(i, "only_if"),
			})
		}
	}
}}

func outcomeWords(outcome string) string {
	if outcome == "passes" || outcome == "fails" {
		return outcome
	}
	return "gives " + outcome
}

// madeElsewhere holds for a step whose pictures come from another object, or
// whose difference is told.
func (p *Pass) madeElsewhere(step int) bool {
	s := &p.Plan.Steps[step]
	if slices.ContainsFunc(p.Plan.Differs, func(d plan.Differs) bool { return d.Step == s.ID }) {
		return true
	}
	return slices.ContainsFunc(s.Shots, func(shot plan.Shot) bool {
		return shot.Apart || shot.Kind == "insert" || shot.Kind == "still" || shot.Kind == "screen"
	})
}

// saysSound holds where the words of a step say that what is changed on camera
// has nothing wrong with it, or is changed for show.
func saysSound(words string) bool { return soundWords().MatchString(words) }

var soundWords = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(` (?:mine|ours|(?:this|my|our) (?:\S+ ){0,2}?)(?: ?is|'s) (?:still )?(?:fine|good|sound|healthy|all right|ok|okay|in order) | nothing (?:is )?wrong with | (?:just|only) (?:to|for) show | (?:show|do|fit|change|swap) (?:\S+ ){0,6}(?:all the same|anyway|even so) `)
})

// canShow holds where one of the faults that the object has brings the outcome.
func (p *Pass) canShow(t *plan.Test, outcome string) bool {
	has := p.Plan.Shoot.Has
	in := func(list []string) bool {
		return slices.ContainsFunc(has, func(c string) bool { return slices.Contains(list, c) })
	}
	all := func(list []string) bool {
		return !slices.ContainsFunc(has, func(c string) bool { return !slices.Contains(list, c) })
	}
	switch outcome {
	case "fails":
		return in(t.Checks) || in(t.Blames) || len(t.Clears) > 0 && !all(t.Clears) || len(t.Checks)+len(t.Clears)+len(t.Blames) == 0
	case "passes":
		if len(t.Clears)+len(t.Blames) > 0 {
			return !in(t.Blames)
		}
		return !in(t.Checks)
	}
	for _, o := range t.Outcomes {
		if o.ID != outcome {
			continue
		}
		if len(o.Means) > 0 {
			return in(o.Means)
		}
		return !in(t.Checks)
	}
	return true
}
