package lint

import (
	"fmt"
	"strings"

	"fixslate/plan/diag"
	"fixslate/plan/timing"
)

var numberMisspoken = Rule{Name: "number-misspoken", Group: AfterEdit, Severity: diag.Error, Check: func(p *Pass) []Report {
	if p.Edit == nil {
		return nil
	}
	var out []Report
	for _, n := range p.Edit.Match.Numbers {
		r := Report{
			Message: fmt.Sprintf("%q is said at %s, where the plan has %s", squeeze(n.Said), clock(n.Start), squeeze(n.Print)),
			Hint:    "listen again: where the captions misheard it, mend the caption; else say it anew, or put the right figure on a card and into a [[correction]]",
			Place:   p.Edit.heard(n.Cue, n.Span),
		}
		if n.Line >= 0 && n.Line < len(p.Edit.Match.Lines) {
			l := p.Edit.Match.Lines[n.Line]
			r.Step, r.Path = l.ID, stepPath(l.Step, "say")
			switch l.Kind {
			case timing.OtherSide:
				r.Path = stepPath(l.Step, "other_side")
			case timing.Caution:
				r.Path = stepPath(l.Step, "cautions")
			}
		}
		out = append(out, r)
	}
	return out
}}

// squeeze brings words to one line.
func squeeze(text string) string { return strings.Join(strings.Fields(text), " ") }
