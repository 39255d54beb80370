// Package cut is a finished edit beside its plan: the values of which a review is
// printed, as sheet and as page. It works nothing out that others have.
package cut

import (
	"fixslate/chapters"
	"fixslate/chapters/align"
	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/timing"
)

// Edit is a finished edit beside its plan.
type Edit struct {
	Plan            *plan.Plan
	Planned         timing.Timeline
	PlannedChapters []chapters.Chapter
	Match           align.Match
	Accepted        []bool // for each of Match.Terms
	Timeline        timing.Timeline
	Chapters        []chapters.Chapter
	Findings        []diag.Finding
	Seconds         []float64 // in the edit, for each of Findings; below 0 where it stands in the plan only
	Snippet         string    // TOML that makes the terms known
}

// PlannedStarts are the planned starts of the steps in seconds, by index.
func (e *Edit) PlannedStarts() map[int]float64 {
	starts := map[int]float64{}
	for _, s := range e.Planned.Steps {
		starts[s.Index] = s.Start
	}
	return starts
}
