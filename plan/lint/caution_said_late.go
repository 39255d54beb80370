package lint

import (
	"fmt"
	"slices"

	"fixslate/chapters/align"
	"fixslate/plan/diag"
	"fixslate/plan/timing"
)

var cautionSaidLate = Rule{Name: "caution-said-late", Group: AfterEdit, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	if !p.Edit.Match.Trusted() {
		return
	}
	for _, c := range p.cautionsOf() {
		said, _ := c.first()
		if share, _ := c.heard(); share < cautionHeard {
			continue // caution-not-said: what was heard may be the narration's own words
		}
		families, words := p.cautionWords(c)
		for _, step := range append([]int{c.step}, p.leansOn(c)...) {
			at, late := p.underWay(c, step)
			if !late || said <= at {
				continue
			}
			report(Report{
				Message: fmt.Sprintf("the caution %q is first heard at %s, and step %q has been under way since %s", p.cautionName(c), clock(said), p.title(step), clock(p.Edit.Match.Steps[step].Start)),
				Hint:    fmt.Sprintf("move it before %s: %s", clock(p.Edit.Match.Steps[step].Start), words),
				Path:    c.path, Step: p.Plan.Steps[step].ID, Place: p.Edit.word(firstWord(c)), Families: families,
			})
			break // the first step that it comes too late for
		}
	}
}}

func firstWord(c spokenCaution) int {
	best := -1
	for _, l := range c.lines {
		if l.Found && (best < 0 || l.First < best) {
			best = l.First
		}
	}
	return best
}

// underWay is the time from which a caution is too late for a step that speaks
// it or leans on it. A sentence that opens the step is no work yet ("now the
// pump comes out"), so it is the start of the second line heard; where the
// narration is one line, its middle: the deed is named before its end.
func (p *Pass) underWay(c spokenCaution, step int) (at float64, known bool) {
	s := p.Edit.Match.Steps[step]
	if s.Status == align.Missing {
		return 0, false
	}
	if step != c.step {
		return s.Start + 1, true // captions time cues, not words
	}
	var starts []float64
	for _, l := range p.Edit.Match.Lines {
		if l.Step == step && l.Kind == timing.Narration && l.Found && !l.Away {
			starts = append(starts, l.Start)
			at = (l.Start + l.End) / 2
		}
	}
	slices.Sort(starts)
	if len(starts) > 1 {
		at = starts[1]
	}
	return at, len(starts) > 0
}
