package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"fixslate/chapters"
	"fixslate/cmd/internal/build"
	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
	"fixslate/plan/timing"
	"fixslate/templates/picture"
)

func newTime(s streams) *cobra.Command {
	return printing(s, &cobra.Command{
		Use:   "time PLAN",
		Short: "estimate the running time, by step and chapter",
		Long: `Time estimates how long the video will run, with the spread of the estimate:
nine times in ten it runs longer than the first figure and nine in ten shorter
than the last. Screen time is what the viewer sees, hands-on time what the work
takes. Of the bars, = is speech and - what is seen without it.`,
		Example: "  fixslate time washer.toml\n  fixslate time washer.toml --format svg > time.svg",
	},
		product{"text", func(w *paper, c *build.Compiled) error { timeText(w, c); return nil }},
		product{"json", timeJSON},
		product{"svg", timeSVG})
}

func timeSVG(w *paper, c *build.Compiled) error {
	return draw(w, c, picture.TimeFile(c.Plan, c.Timeline, c.Chapters), "no step takes time; give one a \"say\" or \"on_screen\"")
}

func timeText(w *paper, c *build.Compiled) {
	t := c.Timeline
	detours := ""
	if t.Straight != t.Running {
		detours = fmt.Sprintf("; %s without the detours in brackets", chapters.Stamp(t.Straight.Likely))
	}
	paragraph(w, "", fmt.Sprintf("running time %s (%s to %s)%s", chapters.Stamp(t.Running.Likely), chapters.Stamp(t.Running.Low), chapters.Stamp(t.Running.High), detours))
	paragraph(w, "", fmt.Sprintf("hands-on %s (%s to %s)", minutes(t.HandsOn.Likely), minutes(t.HandsOn.Low), minutes(t.HandsOn.High)))
	if !w.narrow() {
		fmt.Fprint(w, "a bar is the time on the screen: = with speech, - without\n")
	}
	fmt.Fprintf(w, "\n%7s %7s %7s %11s  %s\n", "start", "screen", "speech", "hands-on", "step")
	longest := 0.0
	for _, s := range t.Steps {
		longest = max(longest, s.Screen)
	}
	for _, s := range t.Steps {
		bar := ""
		if !w.narrow() { // else the titles need the room
			bar = fmt.Sprintf("%-*s ", barColumns, bars(s, barColumns/max(longest, 1)))
		}
		name := c.Plan.Steps[s.Index].Title.Print
		if s.Detour {
			name = "(" + name + ")"
		}
		line := fmt.Sprintf("%7s %7s %7s %11s  %s", chapters.Stamp(s.Start), chapters.Stamp(s.Screen), chapters.Stamp(s.Narration), minutes(s.HandsOn.Mean()), bar)
		fmt.Fprintln(w, line+clip(name, max(6, w.columns-1-len(line))))
	}
	fmt.Fprintln(w, "\nchapters")
	for _, ch := range c.Chapters {
		fmt.Fprintf(w, "%7s  %s\n", chapters.Stamp(ch.Start), clip(ch.Title, w.columns-12))
	}
	if len(t.Versions) > 0 {
		fmt.Fprintln(w, "\nrunning time by version")
	}
	for _, v := range t.Versions {
		name := c.Plan.Name(plan.Ref{Kind: plan.KindVariant, ID: v.Variant})
		fmt.Fprintf(w, "%7s  %s\n", chapters.Stamp(v.Running.Likely), clip(name, w.columns-12))
	}
}

// minutes prints hands-on time, which is known to the minute at best.
func minutes(seconds float64) string { return prose.Minutes(seconds / 60) }

// barColumns is the room of the longest bar.
const barColumns = 12

// bars draws a step's screen time: speech, then what is seen without it.
func bars(s timing.Step, scale float64) string {
	whole := int(s.Screen*scale + 0.5)
	speech := min(whole, int(s.Narration*scale+0.5))
	return strings.Repeat("=", speech) + strings.Repeat("-", whole-speech)
}

func timeJSON(w *paper, c *build.Compiled) error {
	type spread struct {
		Low    float64 `json:"low"`
		Likely float64 `json:"likely"`
		High   float64 `json:"high"`
	}
	type step struct {
		ID        string  `json:"id"`
		Title     string  `json:"title"`
		Start     float64 `json:"start_seconds"`
		Narration float64 `json:"narration_seconds"`
		Screen    float64 `json:"screen_seconds"`
		HandsOn   float64 `json:"hands_on_seconds"`
		Detour    bool    `json:"detour"`
	}
	type chapter struct {
		Title string  `json:"title"`
		Start float64 `json:"start_seconds"`
		Begin spread  `json:"start_spread_seconds"`
	}
	type version struct {
		ID      string `json:"id"`
		Running spread `json:"running_seconds"`
	}
	out := struct {
		Running  spread    `json:"running_seconds"`
		Straight spread    `json:"without_detours_seconds"`
		HandsOn  spread    `json:"hands_on_seconds"`
		Steps    []step    `json:"steps"`
		Chapters []chapter `json:"chapters"`
		Versions []version `json:"versions"`
	}{spread(c.Timeline.Running), spread(c.Timeline.Straight), spread(c.Timeline.HandsOn), []step{}, []chapter{}, []version{}}
	for _, s := range c.Timeline.Steps {
		out.Steps = append(out.Steps, step{s.ID, c.Plan.Steps[s.Index].Title.Print, s.Start, s.Narration, s.Screen, s.HandsOn.Mean(), s.Detour})
	}
	for _, ch := range c.Chapters {
		out.Chapters = append(out.Chapters, chapter{ch.Title, ch.Start, spread(ch.Begin)})
	}
	for _, v := range c.Timeline.Versions {
		out.Versions = append(out.Versions, version{v.Variant, spread(v.Running)})
	}
	return diag.PrintJSON(w, out)
}
