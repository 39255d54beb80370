package lint

import (
	"fmt"

	"fixslate/chapters/captions"
	"fixslate/plan/diag"
)

var titleLong = Rule{Name: "title-long", Group: Publish, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	most := p.Plan.Publish.TitleMax
	if n := captions.Characters(p.Plan.Video.Title.Print); n > most {
		report(Report{
			Message: fmt.Sprintf("the title has %d characters, the limit is %d", n, most),
			Hint:    fmt.Sprintf("take out %d characters, or raise [publish] title_max if the site takes more", n-most),
			Path:    "video.title",
		})
	}
	for _, c := range p.Chapters {
		if n := captions.Characters(c.Title); n > chapterMost && len(c.Steps) > 0 {
			r := Report{
				Message: fmt.Sprintf("the chapter %q has %d characters, and lists of chapters show the first %d at most", shorten(c.Title), n, chapterMost),
				Hint:    "give the step a shorter title, or chapter = \"a shorter one\"",
				Path:    stepPath(c.Steps[0], "title"),
			}
			if mark := p.Plan.Steps[c.Steps[0]].Chapter; mark.Title.Source != "" {
				r.Path = stepPath(c.Steps[0], "chapter")
			}
			report(r)
		}
	}
}}

// chapterMost is how many characters of a chapter's title anybody reads in the
// list below a film. Common practice, no source.
const chapterMost = 100
