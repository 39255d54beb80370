package lint

import (
	"fmt"
	"strings"

	"fixslate/chapters"
	"fixslate/plan/diag"
	"fixslate/templates/blurb"
)

// longerCut is how much longer than planned a published video may well be: its
// times are the cut's, which a plan alone does not know (common practice, no source).
const longerCut = 2

var correctionUnplaced = Rule{Name: "correction-unplaced", Group: Publish, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for i, c := range blurb.Corrections(p.Plan, p.Chapters) {
		at := strings.TrimSpace(p.Plan.Corrections[i].At)
		seconds, isTime := chapters.ReadStamp(at)
		trouble := fmt.Sprintf("%q, which is no step and no time", at)
		switch {
		case at == "" || c.Step >= 0 || isTime && p.Edit == nil && seconds < longerCut*p.Timeline.End:
			continue
		case isTime && len(p.Chapters) > 0:
			trouble = fmt.Sprintf("%s, after the video's end", chapters.Stamp(seconds))
		}
		report(Report{
			Message: fmt.Sprintf("the correction %q stands at %s", p.Plan.Corrections[i].Now.Print, trouble),
			Hint:    `write a step's id or title, or a time of the video: at = "3:20"`,
			Path:    fmt.Sprintf("correction[%d].at", i),
		})
	}
}}
