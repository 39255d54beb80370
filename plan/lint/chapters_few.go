package lint

import (
	"fmt"

	"fixslate/plan/diag"
)

var chaptersFew = Rule{Name: "chapters-few", Group: Publish, Severity: diag.Warning, Check: func(p *Pass) []Report {
	n, least := len(p.Chapters), p.Plan.Publish.ChaptersMin
	if n >= least || n == 0 {
		return nil
	}
	hint := "give the video more steps, or lower [publish] chapters_min if the site shows fewer"
	if len(p.Plan.Steps) > n {
		hint = "steps were joined: let short ones run longer, or take out chapter = false"
	}
	return []Report{{
		Message: fmt.Sprintf("the video has %s; under %d the site shows none", quantity(n, "chapter"), least),
		Hint:    hint, Path: "video.title",
	}}
}}
