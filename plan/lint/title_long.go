package lint

import (
	"fmt"

	"fixslate/chapters/captions"
	"fixslate/plan/diag"
)

var titleLong = Rule{Name: "title-long", Group: Publish, Severity: diag.Warning, Check: func(p *Pass) []Report {
	n, most := captions.Characters(p.Plan.Video.Title.Print), p.Plan.Publish.TitleMax
	if n <= most {
		return nil
	}
	return []Report{{
		Message: fmt.Sprintf("the title has %d characters, the limit is %d", n, most),
		Hint:    fmt.Sprintf("take out %d characters, or raise [publish] title_max if the site takes more", n-most),
		Path:    "video.title",
	}}
}}
