package lint

import (
	"fmt"

	"fixslate/chapters/align"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
)

var editTimes = Rule{Name: "edit-times", Group: AfterEdit, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	for _, t := range p.Edit.Match.Troubles {
		r := Report{Place: p.Edit.heard(t.Cue, prose.Span{})}
		if r.Place.Source == nil {
			r.Place = p.Edit.file()
		}
		switch t.Kind {
		case align.Backwards:
			r.Message = fmt.Sprintf("the captions run backwards at %s (%s so), so no time can be trusted", clock(t.Start), cues(t.Count))
			r.Hint = "put the cues in order, or export them again; match --force makes chapters of them all the same"
		case align.LongCue:
			r.Message = fmt.Sprintf("a cue at %s is too long to say when in it a word is spoken (%s so), so no time can be trusted", clock(t.Start), cues(t.Count))
			r.Hint = "export captions that follow the speech; match --force makes chapters of them all the same"
		case align.Rolling:
			r.Severity = diag.Note
			r.Message = fmt.Sprintf("captions repeat the line before them from %s on; the repeats were left out", clock(t.Start))
			r.Hint = "nothing to do; captions/final.* still has them"
		default:
			continue
		}
		report(r)
	}
}}

func cues(n int) string {
	if n == 1 {
		return "1 cue is"
	}
	return fmt.Sprintf("%d cues are", n)
}
