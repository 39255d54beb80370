package lint

import (
	"slices"
	"strconv"
	"strings"

	"fixslate/chapters/captions"
	"fixslate/plan/diag"
	"fixslate/plan/timing"
)

// The plan's own captions are cut to fit their profile; what does not fit
// however it is cut is reported here under the names that caption files have,
// whose pages stand with the captions.
var captionFast, captionWide, captionTall, captionShort = captionRule("caption-fast"), captionRule("caption-wide"), captionRule("caption-tall"), captionRule("caption-short")

// captionRemedies say what to write in the plan, whose captions follow what is
// said; of a caption file the remedy is in the file.
var captionRemedies = map[string]string{
	"caption-fast":  "say it in fewer words, or more slowly: [voice] wpm",
	"caption-wide":  "write the word shorter or in two, or take a wider [captions] profile",
	"caption-tall":  "part the sentence, or take another [captions] profile",
	"caption-short": "say more, or join the line to the one before it",
}

func captionRule(name string) Rule {
	return Rule{Name: name, Group: Publish, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
		seen := map[string]bool{} // one a step: a fast step is fast in every cue
		for _, f := range p.captions {
			i, err := strconv.Atoi(strings.TrimSuffix(strings.TrimPrefix(f.Path, "cue["), "]"))
			if f.Rule != name || err != nil || i >= len(p.Cues) {
				continue
			}
			path := p.narrationAt(p.Cues[i].Start.Seconds())
			if !seen[path] {
				seen[path] = true
				report(Report{Message: "in the captions: " + f.Message, Hint: captionRemedies[name], Path: path})
			}
		}
	}}
}

// captionFindings holds the plan's cues against the plan's profile.
func captionFindings(p *Pass) []diag.Finding {
	profile, ok := captions.ProfileNamed(p.Plan.Captions.Profile)
	if !ok || len(p.Cues) == 0 {
		return nil
	}
	return captions.Check(captions.File{Cues: p.Cues}, profile)
}

// narrationAt is the narration that is spoken at a time in seconds.
func (p *Pass) narrationAt(seconds float64) string {
	steps := p.Timeline.Steps
	after, _ := slices.BinarySearchFunc(steps, seconds+0.001, func(s timing.Step, at float64) int {
		if s.Start > at {
			return 1
		}
		return -1
	})
	if after == 0 {
		return "video"
	}
	return stepPath(steps[after-1].Index, "say")
}
