package blurb

import (
	"strings"

	"fixslate/chapters"
	"fixslate/plan"
)

// Correction is a correction with its place in the video.
type Correction struct {
	Date     string // empty where none is given
	Time     string // "3:20"; empty where it is not known
	Where    string // the step's or chapter's title, or the words written; empty for none
	Step     int    // index in the plan's Steps: of the step, or the chapter's first; -1 for none
	Was, Now string
}

// Corrections puts the plan's corrections into the chapters of a video. One at
// a step, by id or title, gets the time of the chapter that holds the step, one at a time the
// title of the chapter that it falls into; any other place stays as written.
func Corrections(p *plan.Plan, all []chapters.Chapter) []Correction {
	var out []Correction
	for i := range p.Corrections {
		c := &p.Corrections[i]
		row := Correction{Date: c.Date.String(), Where: c.At, Step: -1, Was: c.Was.Print, Now: c.Now.Print}
		step := stepsAt(p, c.At)
		seconds, isTime := chapters.ReadStamp(c.At)
		switch {
		case len(step) > 0:
			row.Step, row.Where = step[0], chapters.OneLine(p.Steps[step[0]].Title.Print)
			if ch, ok := chapters.Of(all, row.Step); ok {
				row.Time = chapters.Stamp(ch.Start)
			}
		case isTime:
			row.Time, row.Where = chapters.Stamp(seconds), ""
			if ch, ok := chapters.At(all, seconds); ok {
				row.Where = ch.Title
				if len(ch.Steps) > 0 {
					row.Step = ch.Steps[0]
				}
			}
		}
		out = append(out, row)
	}
	return out
}

// stepsAt are the steps that a correction's at names: by id, else by title in
// any case.
func stepsAt(p *plan.Plan, at string) []int {
	steps := p.Find(plan.Ref{Kind: plan.KindStep, ID: strings.TrimPrefix(at, "step:")})
	for i := range p.Steps {
		if len(steps) == 0 && strings.EqualFold(p.Steps[i].Title.Print, strings.TrimSpace(at)) {
			steps = []int{i}
		}
	}
	return steps
}

// Line is the correction in one line: "2026-11-25, 3:20 Fit the pump: not 5 N·m
// but 3 N·m".
func (c Correction) Line() string {
	line := c.Now
	if c.Was != "" {
		line = "not " + c.Was + " but " + c.Now
	}
	if place := strings.TrimSpace(c.Time + " " + c.Where); place != "" {
		line = place + ": " + line
	}
	if c.Date != "" {
		line = c.Date + ", " + line
	}
	return line
}

func corrections(p *plan.Plan, c []chapters.Chapter) part {
	var out []string
	for _, correction := range Corrections(p, c) {
		out = append(out, correction.Line())
	}
	return part{heading: "Corrections", lines: out, list: true}
}
