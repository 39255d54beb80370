package lint

import (
	"fmt"
	"slices"

	"fixslate/chapters/align"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
)

var editForeign = Rule{Name: "edit-foreign", Group: AfterEdit, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	kind, foreign := p.Edit.foreign()
	if !foreign {
		return
	}
	r := Report{Place: p.Edit.file()}
	switch kind {
	case align.NoWords:
		r.Message = "the captions hold no words, so nothing is known about the edit"
		r.Hint = "caption the edit first; automatic captions will do"
	case align.OtherLanguage:
		r.Message = fmt.Sprintf("the captions are in another language than the plan's (%q), so nothing is known about the edit", p.Plan.Video.Language)
		r.Hint = "use the captions of the language that is spoken; a translation hides what was said"
	default:
		found := 0
		for _, s := range p.Edit.Match.Steps {
			if s.Status != align.Missing {
				found++
			}
		}
		r.Message = fmt.Sprintf("the captions seem to be of another video: %d of %s could be placed, but no better than in talk of something else", found, prose.Counted(len(p.Edit.Match.Steps), "step"))
		r.Hint = "name the captions of this plan's edit"
	}
	report(r)
}}

// foreign holds where the captions are not the plan's. Where not one step is
// recognised, whatever the words are, they are another video's.
func (e *Edit) foreign() (align.TroubleKind, bool) {
	if kind, foreign := e.Match.Foreign(); foreign {
		return kind, true
	}
	return align.OtherVideo, !slices.ContainsFunc(e.Match.Steps, func(s align.Step) bool { return s.Status != align.Missing })
}

// file is the beginning of the captions.
func (e *Edit) file() diag.Place {
	if len(e.Captions.Cues) > 0 {
		return diag.Place{Source: e.Captions.Source, Span: e.Captions.Cues[0].At}
	}
	return diag.Place{Source: e.Captions.Source}
}
