package lint

import (
	"fmt"
	"slices"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
)

var chaptersFew = Rule{Name: "chapters-few", Group: Publish, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	n, least := len(p.Chapters), p.Plan.Publish.ChaptersMin
	if n >= least || n == 0 {
		return
	}
	hint := "give the video more steps, or lower [publish] chapters_min if the site shows fewer"
	switch joined := slices.ContainsFunc(p.Plan.Steps, func(s plan.Step) bool { return s.Chapter.Joined }); {
	case joined:
		hint = "steps were joined: take out chapter = false, or let short ones run longer"
	case len(p.Plan.Steps) > n:
		hint = "short steps were joined: let them run longer, or lower [publish] chapter_shortest if the site shows shorter ones"
	}
	report(Report{
		Message: fmt.Sprintf("the video has %s; under %d the site shows none", prose.Counted(n, "chapter"), least),
		Hint:    hint, Path: "video.title",
	})
}}
