package lint

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/claim"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var torqueUnsaid = Rule{Name: "torque-unsaid", Group: Completeness, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	told := map[string]bool{} // by id: one quote says the torque of every version
	for i := range p.Plan.Fasteners {
		f := &p.Plan.Fasteners[i]
		ref := plan.Ref{Kind: plan.KindFastener, ID: f.ID}
		if _, threaded := trade.ParseThread(f.Thread); !threaded || trim(f) || !p.refitted(ref) {
			continue
		}
		switch {
		case f.Torque.Shape == trade.Open || f.Verify != "":
		case f.Torque.Text == "" && p.tellsTorque(ref):
			// number-loose speaks of a figure that no fact gives; words are enough
		case f.Torque.Text == "":
			report(Report{
				Message: fmt.Sprintf("%s: put back with no torque given", f.What.Print),
				Hint:    `add torque = "…" with its source, torque = "?" if it is to be found, or words: "hand tight, then a quarter turn"`,
				Path:    row(plan.KindFastener, i, ""),
			})
		case !told[f.ID] && !p.saysKey(ref, "torque") && !p.saysWords(ref, f.Torque):
			told[f.ID] = true
			report(Report{
				Message: fmt.Sprintf("%s: the torque stands in the plan and is never said", f.What.Print),
				Hint:    fmt.Sprintf("quote it where they go back in: {%s.torque}", f.ID),
				Path:    row(plan.KindFastener, i, "torque"),
			})
		}
	}
}}

// tellsTorque holds where a step that turns the fastener says how tight, in a
// figure or in the words of hands.
func (p *Pass) tellsTorque(ref plan.Ref) bool {
	for i := range p.Plan.Steps {
		if slices.Contains(p.Plan.Steps[i].Fasteners, ref.ID) && says(p.words[i], tightWords...) {
			return true
		}
	}
	return slices.ContainsFunc(p.said, func(s said) bool {
		return slices.Contains(p.Plan.Steps[s.step].Fasteners, ref.ID) && slices.ContainsFunc(s.Values, func(v claim.Value) bool {
			q, ok := quantity(v)
			return ok && q.Unit.Dimension() == trade.Torque
		})
	})
}

// tightWords tell without a figure how tight something is done up. Common practice,
// no source.
var tightWords = []string{"hand tight", "finger tight", "fingertight", "handtight", "with two fingers", "quarter turn", "quarter of a turn", "half turn", "half a turn", "eighth of a turn", "snug", "just nipped", "until it seats", "until it bottoms", "no tighter"}

// trim holds for screws that nobody tightens by figure. Common practice, no
// source.
func trim(f *plan.Fastener) bool {
	return says(fold(f.What.Print+" "+f.Head), "trim", "cover", "panel", "clip", "clips", "self-tapping", "self-tapper", "self-tappers", "wood", "chipboard", "plastic")
}

// refitWords tell that something is put back.
var refitWords = []string{"back in", "back on", "goes back", "go back", "refit", "fit", "fits", "fitted", "tighten", "tightened", "torque", "nip up", "screw in", "screws in", "bolt up", "goes in", "go in", "the same", "in again", "on again", "close", "home"}

// refitted holds for a fastener that a step puts back: it is worked on twice,
// or the one step that has it says so.
func (p *Pass) refitted(ref plan.Ref) bool {
	steps := p.uses(ref)
	return len(steps) > 1 || len(steps) == 1 && says(p.words[steps[0]], refitWords...)
}

// saysWords holds where the torque is words ("with two fingers only") and a step
// that puts the fastener back says what they say.
func (p *Pass) saysWords(ref plan.Ref, torque trade.Measure) bool {
	words := contentWords(torque.Text)
	if torque.Measured() || len(words) == 0 {
		return false
	}
	for i := range p.Plan.Steps {
		if !slices.Contains(p.Plan.Steps[i].Fasteners, ref.ID) && !p.quotesIn(i, ref) {
			continue
		}
		if !slices.ContainsFunc(words, func(w string) bool { return !says(p.words[i], w, w+"s", strings.TrimSuffix(w, "s")) }) {
			return true
		}
	}
	return false
}

// saysKey holds where some narration quotes a key of a fact.
func (p *Pass) saysKey(ref plan.Ref, key string) bool {
	for i := range p.Plan.Steps {
		for _, l := range p.Plan.Steps[i].Lines {
			for _, q := range l.Quotes {
				if q.Ref == ref && q.Key == key {
					return true
				}
			}
		}
	}
	return false
}
