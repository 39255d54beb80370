package lint

import (
	"fmt"

	"fixslate/chapters"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
)

var chapterShort = Rule{Name: "chapter-short", Group: Publish, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	least := chapters.WholeSecond(p.Plan.Publish.ChapterShortest.Seconds())
	if len(p.Chapters) < p.Plan.Publish.ChaptersMin {
		return // none are shown at all: chapters-few
	}
	for _, c := range p.Chapters {
		// As written: the site sees the rounded starts.
		if n := chapters.WholeSecond(c.End) - chapters.WholeSecond(c.Start); n < least && len(c.Steps) > 0 {
			report(Report{
				Message: fmt.Sprintf("chapter %q is %s long after joining; the shortest shown is %s", c.Title, prose.Counted(n, "second"), prose.Counted(least, "second")),
				Hint:    "say more in its steps, give them on_screen, or lower [publish] chapter_shortest",
				Path:    stepPath(c.Steps[0], "title"),
			})
		}
	}
}}
