package captions

import (
	"fmt"
	"strings"
	"time"

	"fixslate/plan/diag"
)

// farAway is from when on a time is more likely a slip than a place in a
// video. Players differ in how many digits of hours they take.
const farAway = 100 * time.Hour

// Check holds a file's cues against a profile: reading speed, width, lines,
// durations; and against the clock: order, overlap, cues that are never shown.
// A profile's zero fields limit nothing, so Profile{} checks the clock alone.
func Check(f File, p Profile) []diag.Finding {
	c := checker{file: f, profile: p}
	var reached time.Duration // latest end so far
	for i := range f.Cues {
		c.clock(i, reached)
		c.reading(i)
		if f.Cues[i].Duration() > 0 {
			reached = max(reached, f.Cues[i].End)
		}
	}
	return c.found
}

type checker struct {
	file    File
	profile Profile
	found   []diag.Finding
}

// flaw is what is wrong with a cue. The message goes on from "cue 3 at 0:12.000".
type flaw struct {
	rule          string
	severity      diag.Severity
	message, hint string
}

// say adds a finding about cue i.
func (c *checker) say(i int, f flaw) {
	cue := c.file.Cues[i]
	c.found = append(c.found, diag.Finding{
		Rule: f.rule, Severity: f.severity, Hint: f.hint,
		Message: fmt.Sprintf("cue %d at %s %s", i+1, clockTime(cue.Start), f.message),
		At:      diag.Place{Source: c.file.Source, Span: cue.At},
		Path:    fmt.Sprintf("cue[%d]", i),
	})
}

// clock checks a cue's times, given when every earlier cue is gone.
func (c *checker) clock(i int, reached time.Duration) {
	cue := c.file.Cues[i]
	switch long := cue.Duration(); {
	case long < 0:
		c.say(i, flaw{"caption-unshown", diag.Error,
			fmt.Sprintf("ends %s before it starts and is never shown", seconds(-long)),
			"put the end after the start"})
	case long == 0:
		c.say(i, flaw{"caption-unshown", diag.Error, "ends as it starts and is never shown", "give it an end"})
	}
	if i > 0 && cue.Start < c.file.Cues[i-1].Start {
		c.say(i, flaw{"caption-order", diag.Warning,
			fmt.Sprintf("starts before the cue above it, which starts at %s", clockTime(c.file.Cues[i-1].Start)),
			"put the cues in the order of their starts"})
	} else if cue.Start < reached && cue.Duration() > 0 {
		c.say(i, flaw{"caption-overlap", diag.Warning,
			fmt.Sprintf("starts %s before an earlier cue is gone", seconds(reached-cue.Start)),
			"end the earlier cue first, or put both into one"})
	}
	if cue.far() && (i == 0 || !c.file.Cues[i-1].far()) { // the first of a row
		c.say(i, flaw{"caption-far", diag.Warning,
			fmt.Sprintf("runs to hour %d", int64(max(cue.Start, cue.End)/time.Hour)),
			"check the hours; many players take two digits at most"})
	}
	if strings.TrimSpace(cue.Text) == "" {
		c.say(i, flaw{"caption-empty", diag.Note, "has no words", "take it out, or write what is said"})
	}
}

func (c Cue) far() bool { return max(c.Start, c.End) >= farAway }

// reading checks whether a cue can be read, and fits where it is shown.
func (c *checker) reading(i int) {
	cue, p := c.file.Cues[i], c.profile
	lines, widest, longest := 0, 0, ""
	for line := range strings.SplitSeq(cue.Text, "\n") {
		lines++
		if n := Characters(line); n > widest {
			widest, longest = n, line
		}
	}
	if p.Lines > 0 && lines > p.Lines {
		c.say(i, flaw{"caption-tall", diag.Warning,
			fmt.Sprintf("has %d lines; the profile %s has room for %d", lines, p.Name, p.Lines), "part it into two cues"})
	}
	if p.Width > 0 && widest > p.Width {
		c.say(i, flaw{"caption-wide", diag.Warning,
			fmt.Sprintf("has a line of %d characters; the profile %s has room for %d: %q", widest, p.Name, p.Width, shorten(longest)),
			"part the line, or the cue"})
	}
	if cue.Cut {
		c.say(i, flaw{"caption-wide", diag.Warning,
			fmt.Sprintf("holds a word longer than a line; it was cut after %d characters", p.Width),
			"write the word shorter, or with a space"})
	}
	long := cue.Duration()
	if long <= 0 {
		return
	}
	// A millisecond is what rounding takes.
	if p.Shortest > 0 && long < p.Shortest-time.Millisecond {
		c.say(i, flaw{"caption-short", diag.Warning,
			fmt.Sprintf("is shown for %s; less than %s is missed", seconds(long), seconds(p.Shortest)),
			"join it to a neighbour, or let it stay"})
	}
	if p.Longest > 0 && long > p.Longest+time.Millisecond {
		c.say(i, flaw{"caption-long", diag.Note,
			fmt.Sprintf("is shown for %s; more than %s is read twice", seconds(long), seconds(p.Longest)),
			"part it, or let it go sooner"})
	}
	characters := Characters(cue.Text)
	if p.Speed > 0 && float64(characters) > p.Speed*(long+time.Millisecond).Seconds() {
		c.say(i, flaw{"caption-fast", diag.Warning,
			fmt.Sprintf("has %d characters for %s, %.1f a second; people read %.0f", characters, seconds(long), float64(characters)/long.Seconds(), p.Speed),
			"leave words out, or let it stay longer"})
	}
}

// clockTime prints a time for people: "0:07.250", "1:02:03.000".
func clockTime(d time.Duration) string {
	sign := ""
	if d < 0 {
		sign, d = "-", -d
	}
	ms := roundMillisecond(d)
	if ms >= 3_600_000 {
		return fmt.Sprintf("%s%d:%02d:%02d.%03d", sign, ms/3_600_000, ms/60_000%60, ms/1000%60, ms%1000)
	}
	return fmt.Sprintf("%s%d:%02d.%03d", sign, ms/60_000, ms/1000%60, ms%1000)
}

func seconds(d time.Duration) string { return fmt.Sprintf("%.3g s", d.Seconds()) }

// shorten keeps a quoted text to what a message has room for.
func shorten(text string) string { return diag.Shorten(text, 40) }
