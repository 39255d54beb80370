package lint

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/chapters"
	"fixslate/chapters/align"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
	"fixslate/plan/timing"
	"fixslate/templates/blurb"
)

var numberMisspoken = Rule{Name: "number-misspoken", Group: AfterEdit, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	for _, n := range p.Edit.Match.Numbers {
		r := Report{
			Message: fmt.Sprintf("%q is said at %s, where the plan has %s", squeeze(n.Said), clock(n.Start), squeeze(n.Print)),
			Hint:    "listen again: where the captions misheard it, mend the caption; else say it anew, or put the right figure on a card and into a [[correction]]",
			Place:   p.Edit.heard(n.Cue, n.Span),
		}
		step := -1
		if n.Line >= 0 && n.Line < len(p.Edit.Match.Lines) {
			l := p.Edit.Match.Lines[n.Line]
			step = l.Step
			r.Step, r.Path = l.ID, stepPath(l.Step, "say")
			switch l.Kind {
			case timing.OtherSide:
				r.Path = stepPath(l.Step, "other_side")
			case timing.Caution:
				r.Path = stepPath(l.Step, "cautions")
			}
		}
		if p.corrects(n, step) {
			r.Severity = diag.Note
			r.Message += "; a correction says so"
			r.Hint = "see that the card with the right figure is in the picture: a correction below the video is read by few"
		}
		report(r)
	}
}}

// corrects holds where a [[correction]] of the step, of its chapter or of the
// whole video takes back the figure that was said.
func (p *Pass) corrects(n align.Number, step int) bool {
	chapter, known := chapters.At(p.Chapters, n.Start)
	for i, c := range blurb.Corrections(p.Plan, p.Chapters) {
		here := c.Step >= 0 && (c.Step == step || known && slices.Contains(chapter.Steps, c.Step))
		if !here && p.Plan.Corrections[i].At != "" {
			continue
		}
		var was []prose.Value
		for _, f := range prose.Figures(c.Was) {
			was = append(was, f.Values...)
		}
		if len(n.Heard.Values) > 0 && !slices.ContainsFunc(n.Heard.Values, func(v prose.Value) bool { return !slices.Contains(was, v) }) {
			return true
		}
	}
	return false
}

// squeeze brings words to one line.
func squeeze(text string) string { return strings.Join(strings.Fields(text), " ") }
