package lint

import (
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var polarityByVariant = Rule{Name: "polarity-by-variant", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	marks := p.poleMarks()
	if len(marks) == 0 {
		return
	}
	values := p.versionValues()
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		if len(s.Variants) > 0 {
			continue
		}
		for _, l := range s.Lines {
			if l.Kind != plan.Spoken {
				continue
			}
			if folded := fold(unquoted(l.Print, l.Quotes)); !says(folded, poles...) || !says(folded, marks...) {
				continue
			}
			if _, _, bare := bareValue(l, values); bare {
				continue // variant-gap speaks of it: the remedy is the same quote
			}
			report(Report{
				Message: "which side is plus differs between the versions; this step says it for all of them",
				Hint:    "quote the wire ({feed.to_pin}), or give each version a step of its own",
				Path:    stepPath(i, "say"), Span: [2]int{l.Start, l.Start + len(l.Source)},
			})
		}
	}
}}

var poles = []string{"plus", "minus", "positive", "negative", "feed", "earth", "ground", "live", "neutral", "supply", "return"}

// poleMarks are the pins and colours by which one version tells a pole and
// another does not.
func (p *Pass) poleMarks() []string {
	var marks []string
	for i := range p.Plan.Wires {
		a := &p.Plan.Wires[i]
		for _, b := range p.Plan.Wire(a.ID) {
			for _, pair := range [][2]string{{a.Colour, b.Colour}, {a.FromPin.Print, b.FromPin.Print}, {a.ToPin.Print, b.ToPin.Print}} {
				if pair[0] != pair[1] && pair[0] != "" {
					marks = append(marks, strings.TrimSpace(strings.ReplaceAll(fold(pair[0]), " . ", "")))
				}
			}
		}
	}
	return marks
}
