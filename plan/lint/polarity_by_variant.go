package lint

import (
	"slices"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var polarityByVariant = Rule{Name: "polarity-by-variant", Group: Truth, Severity: diag.Warning, Check: func(p *Pass) []Report {
	if !p.polesDiffer() {
		return nil
	}
	var found []Report
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		if len(s.Variants) > 0 {
			continue
		}
		for _, l := range s.Lines {
			folded := fold(l.Print)
			if l.Kind != plan.Spoken || len(l.Quotes) > 0 || !says(folded, poles...) || !says(folded, poleMarks...) {
				continue
			}
			found = append(found, Report{
				Message: "which side is plus differs between the versions, and this step says it for all of them",
				Hint:    "quote the wire ({feed.to_pin}), or give each version a step of its own",
				Path:    stepPath(i, "say"), Span: [2]int{l.Start, l.Start + len(l.Source)},
			})
		}
	}
	return found
}}

var (
	poles     = []string{"plus", "minus", "positive", "negative", "feed", "earth", "ground", "live", "neutral", "supply", "return"}
	poleMarks = []string{"pin", "pins", "red", "black", "brown", "blue", "green", "yellow", "white", "grey", "violet", "orange", "pink", "left", "right", "top", "bottom", "upper", "lower"}
)

// polesDiffer holds where a wire has other pins, ends or another colour in
// another version.
func (p *Pass) polesDiffer() bool {
	for i := range p.Plan.Wires {
		a := &p.Plan.Wires[i]
		for _, b := range p.Plan.Wire(a.ID) {
			if a.Colour != b.Colour || a.FromPin.Print != b.FromPin.Print || a.ToPin.Print != b.ToPin.Print || !slices.Equal(a.From, b.From) || !slices.Equal(a.To, b.To) {
				return true
			}
		}
	}
	return false
}
