package sheet

import (
	"fmt"
	"strings"

	"fixslate/chapters"
	"fixslate/chapters/align"
	"fixslate/chapters/cut"
	"fixslate/plan/diag"
	"fixslate/templates/blurb"
)

type reviewView struct {
	Title, Words, Deference         string
	Missing                         []string
	Findings, Excepted              []reviewFinding
	Steps                           []reviewStep
	Chapters, Repeats, Added, Terms []string
	Snippet                         string
	Corrections                     []string
}

type reviewFinding struct {
	Clock string
	diag.Finding
}

type reviewStep struct{ Clock, Planned, Title, Status, Sure string }

// Review is review.md: the edit beside the plan, to read.
func Review(c cut.Edit) []byte {
	v := reviewView{Title: c.Plan.Video.Title.Print, Words: reviewWords(c), Deference: blurb.Precedence}
	planned := c.PlannedStarts()
	for _, s := range c.Match.Steps {
		title := c.Plan.Steps[s.Index].Title.Print
		row := reviewStep{"–", clock(planned[s.Index]), title, s.Status.String(), fmt.Sprintf("%d %%", align.Percent(s.Confidence))}
		if s.Status == align.Missing {
			v.Missing = append(v.Missing, fmt.Sprintf("step %q, planned at %s", title, clock(planned[s.Index])))
		} else {
			row.Clock = clock(s.Start)
		}
		v.Steps = append(v.Steps, row)
	}
	for i, f := range c.Findings {
		row := reviewFinding{"–", f}
		if c.Seconds[i] >= 0 {
			row.Clock = clock(c.Seconds[i])
		}
		if f.Waived != "" {
			v.Excepted = append(v.Excepted, row)
			continue
		}
		v.Findings = append(v.Findings, row)
		if f.Rule == "caution-not-said" {
			v.Missing = append(v.Missing, f.Message)
		}
	}
	for _, ch := range c.Chapters {
		v.Chapters = append(v.Chapters, chapters.Stamp(ch.Start)+" "+ch.Title)
	}
	for _, r := range c.Match.Repeats {
		v.Repeats = append(v.Repeats, fmt.Sprintf("%s to %s %s", clock(r.Start), clock(r.End), c.Plan.Steps[r.Index].Title.Print))
	}
	for _, a := range c.Match.Added {
		if a.Slight() {
			continue
		}
		v.Added = append(v.Added, fmt.Sprintf("%s to %s “%s”", clock(a.Start), clock(a.End), a.Text))
	}
	for i, t := range c.Match.Terms {
		line := fmt.Sprintf("%s “%s”: perhaps “%s”", clock(t.Start), strings.Join(strings.Fields(t.Heard), " "), t.Term)
		if c.Accepted[i] {
			line += ", put in"
		}
		v.Terms = append(v.Terms, line)
	}
	for line := range strings.Lines(c.Snippet) {
		v.Snippet += "    " + line
	}
	for _, correction := range blurb.Corrections(c.Plan, c.Chapters) {
		v.Corrections = append(v.Corrections, correction.Line())
	}
	return write((*out).review, &v)
}

// reviewWords is the edit in a sentence.
func reviewWords(c cut.Edit) string {
	found, moved := 0, 0
	for _, s := range c.Match.Steps {
		switch s.Status {
		case align.Found:
			found++
		case align.Moved:
			moved++
		}
	}
	n := len(c.Match.Steps)
	words := fmt.Sprintf("The edit runs %s, planned %s. Of %d steps %d were heard in their place", clock(c.Match.End), clock(c.Planned.End), n, found)
	if moved > 0 {
		words += fmt.Sprintf(", %d elsewhere", moved)
	}
	if missing := n - found - moved; missing > 0 {
		words += fmt.Sprintf(", %d not at all", missing)
	}
	return words + "."
}
