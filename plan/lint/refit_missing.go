package lint

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
)

var refitMissing = Rule{Name: "refit-missing", Group: Completeness, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for _, v := range p.Plan.Intervals {
		if !v.Open || v.From < 0 || slices.ContainsFunc(p.Plan.Shoot.Stays, func(s string) bool { return class.CanonicalState(s) == v.State }) {
			continue
		}
		if known, ok := class.FindState(v.State); ok && known.Safe {
			continue
		}
		report(Report{
			Message: fmt.Sprintf("%q begins in step %q and nothing ends it", v.State, p.Plan.Steps[v.From].Title.Print),
			Hint:    p.howItEnds(v.State),
			Path:    p.startOf(v),
		})
	}
	p.leftOut(report)
}}

// howItEnds says where a state can end: in the step whose `ends` names it with a
// slip, if there is one.
func (p *Pass) howItEnds(state string) string {
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		for _, word := range s.Ends {
			if class.CanonicalState(word) == state || class.Slips(word, state, 2) > 2 {
				continue
			}
			if _, known := class.FindState(word); known {
				return fmt.Sprintf("step %q ends %q: did you mean that here too", s.Title.Print, word)
			}
			return fmt.Sprintf("step %q ends %q: did you mean %q", s.Title.Print, word, state)
		}
	}
	return fmt.Sprintf("add ends = [%q] to the step that puts it back, or [shoot] stays = [%q] if it never is", state, state)
}

// leftOut are fasteners that one step takes out as it opens something, and that
// no step which closes it again lists, quotes or names.
func (p *Pass) leftOut(report func(Report)) {
	for i := range p.Plan.Fasteners {
		f := &p.Plan.Fasteners[i]
		ref := plan.Ref{Kind: plan.KindFastener, ID: f.ID}
		steps := p.uses(ref)
		if len(steps) != 1 {
			continue
		}
		at := steps[0]
		if !slices.Contains(p.Plan.Steps[at].Fasteners, f.ID) || says(p.words[at], "loosen", "slacken") {
			continue
		}
		closing := p.closing(at)
		words := strings.Fields(strings.ReplaceAll(fold(f.What.Print), " . ", " "))
		if len(closing) == 0 || len(words) == 0 {
			continue
		}
		noun := strings.TrimSuffix(words[len(words)-1], "s")
		if slices.ContainsFunc(closing, func(j int) bool { return says(p.words[j], noun, noun+"s", "reverse", "everything back") }) {
			continue
		}
		report(Report{
			Message: fmt.Sprintf("%s: taken out in step %q, and no step that closes up puts them back", f.What.Print, p.Plan.Steps[at].Title.Print),
			Hint:    fmt.Sprintf("add fasteners = [%q] to step %q, and say it there", f.ID, p.Plan.Steps[closing[0]].Title.Print),
			Path:    stepPath(at, "fasteners"),
		})
	}
}

// closing are the later steps that end a state of the plan's own which a step
// begins: what came out there goes back in them.
func (p *Pass) closing(step int) []int {
	var steps []int
	for _, v := range p.Plan.Begun(step) {
		if known, ok := class.FindState(v.State); ok && (known.Safe || v.State != "covers-off") {
			continue
		}
		if !v.Open && !v.During && v.To > step && !slices.Contains(steps, v.To) {
			steps = append(steps, v.To)
		}
	}
	slices.Sort(steps)
	return steps
}

// startOf is the place of the word that begins a stretch.
func (p *Pass) startOf(v plan.Interval) string {
	key, words := "starts", p.Plan.Steps[v.From].Starts
	if v.During {
		key, words = "during", p.Plan.Steps[v.From].During
	}
	at := slices.IndexFunc(words, func(s string) bool { return class.CanonicalState(s) == v.State })
	return p.entry(stepPath(v.From, key), at)
}
