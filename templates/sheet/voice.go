package sheet

import (
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/timing"
)

type voiceLine struct {
	Text    string
	Seconds float64
	Open    bool // it quotes a value that is still to be found
}

type voiceStep struct {
	Title   string
	Lines   []voiceLine
	Seconds float64
}

// Voice is voice.md: the lines that are recorded later, each with the seconds
// it should take; nil where all narration is live.
func Voice(p *plan.Plan, t timing.Timeline) []byte {
	var steps []voiceStep
	var total float64
	for _, ts := range t.Steps {
		s := &p.Steps[ts.Index]
		if s.Narrated != plan.Later {
			continue
		}
		step := voiceStep{Title: s.Title.Print}
		for _, b := range ts.Beats {
			if b.Spoken() {
				length := b.End - b.Start - b.Rest
				step.Lines = append(step.Lines, voiceLine{b.Print, length, open(s, b)})
				step.Seconds += length
			}
		}
		if len(step.Lines) > 0 {
			steps = append(steps, step)
			total += step.Seconds
		}
	}
	if len(steps) == 0 {
		return nil
	}
	return write((*out).voice, &voiceView{p.Video.Title.Print, steps, total})
}

// voiceView is the sheet.
type voiceView struct {
	Title string
	Steps []voiceStep
	Total float64
}

// open holds for narration in which a value is missing: read out as it stands,
// it would tell viewers that the value is to be found.
func open(s *plan.Step, b timing.Beat) bool {
	missing := plan.Known("?")
	if b.Line < 0 || !strings.Contains(b.Print, missing) {
		return false
	}
	line := s.Lines[b.Line]
	return slices.ContainsFunc(line.Quotes, func(q plan.Quote) bool { return line.Print[q.Start:q.End] == missing })
}
