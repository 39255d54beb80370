package lint

import (
	"fmt"

	"fixslate/chapters"
	"fixslate/plan"
	"fixslate/plan/diag"
)

var runningLong = Rule{Name: "running-long", Group: Publish, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	most := p.Plan.Publish.RunningMax
	if !most.Set || p.Timeline.Running.Likely <= most.Seconds() {
		return
	}
	report(Report{
		Message: fmt.Sprintf("the video will run %s, %s over the %s wished for", chapters.Stamp(p.Timeline.Running.Likely),
			chapters.Stamp(p.Timeline.Running.Likely-most.Seconds()), chapters.Stamp(most.Seconds())),
		Hint: "fixslate time shows which steps take it; shorten those, or raise running_max",
		Path: "publish.running_max",
	})
}}

// ReadsSpread holds for a plan in which some rule of Run looks at a Spread of
// its timeline. Those are slow to find, and most plans set no limit.
func ReadsSpread(p *plan.Plan) bool { return p.Publish.RunningMax.Set }
