package lint

import (
	"slices"
	"strconv"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var polarityByVariant = Rule{Name: "polarity-by-variant", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	marks, places := p.poleMarks(), p.polePlaces()
	if len(marks)+len(places) == 0 {
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
			if folded := fold(unquoted(l.Print, l.Quotes)); !says(folded, poles...) || !says(folded, marks...) && !namesPlace(folded, places) {
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
				if pair[0] == pair[1] || pair[0] == "" {
					continue
				}
				mark := strings.TrimSpace(strings.ReplaceAll(fold(pair[0]), " . ", ""))
				marks = append(marks, mark)
				if word := inWords(mark); word != "" {
					marks = append(marks, "pin "+word, "terminal "+word)
				}
			}
		}
	}
	return marks
}

// inWords is a small number in words, as a pin is said; empty for all else.
func inWords(digits string) string {
	if n, err := strconv.Atoi(digits); err == nil && n > 0 && n < len(smallNumbers) {
		return smallNumbers[n]
	}
	return ""
}

// polePlaces are the words of where a pole is, from facts about a pole that
// differ between the versions: "plus side of the plug", left tab or right tab.
func (p *Pass) polePlaces() [][]string {
	var places [][]string
	for i := range p.Plan.Specs {
		a := &p.Plan.Specs[i]
		if !says(fold(a.What.Print), "plus", "minus", "positive", "negative", "polarity", "live", "neutral") {
			continue
		}
		for _, b := range p.Plan.Spec(a.ID) {
			if words := contentWords(a.Value.Print); a.Value.Print != b.Value.Print && len(words) > 0 {
				places = append(places, words)
			}
		}
	}
	return places
}

// namesPlace holds where a line has all words of a place.
func namesPlace(folded string, places [][]string) bool {
	return slices.ContainsFunc(places, func(words []string) bool {
		return !slices.ContainsFunc(words, func(w string) bool { return !says(folded, w) })
	})
}
