package lint

import (
	"fmt"
	"strings"

	"fixslate/plan/diag"
)

var descriptionLong = Rule{Name: "description-long", Group: Publish, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	most := p.Plan.Publish.DescriptionMax
	if n := len(p.Description.Text); n > most {
		report(Report{
			Message: fmt.Sprintf("the description has %d bytes even without what can be left out; the limit is %d", n, most),
			Hint:    "shorten the cautions, corrections or chapter titles: nothing else is left in it",
			Path:    "video",
		})
		return
	}
	if left := p.Description.LeftOut; len(left) > 0 {
		report(Report{
			Message:  fmt.Sprintf("description.txt leaves out %s to keep within %d bytes", strings.Join(left, ", "), most),
			Hint:     "nothing is lost: description.md has all of it; shorten the notes to keep these parts",
			Path:     "video",
			Severity: diag.Note,
		})
	}
}}
