package picture

import (
	"fmt"
	"strconv"
	"strings"

	"fixslate/chapters"
	"fixslate/plan"
	"fixslate/plan/prose"
	"fixslate/plan/timing"
)

const (
	rowHeight  = 24.0
	axisHeight = 26.0
)

// Time draws the running time: a bar for each step, one below the other and to
// scale, so that the eye reads down the story and across the clock. Nothing to
// see in a film of no length.
func Time(p *plan.Plan, t timing.Timeline, marks []chapters.Chapter) Picture {
	if t.End <= 0 || len(t.Steps) == 0 {
		return Picture{}
	}
	pic := Picture{Width: Width, Height: axisHeight + rowHeight*float64(len(t.Steps)) + 4, Title: "Running time, steps to scale"}
	pic.Words = runningWords(t, len(marks))
	scale := (Width - 2) / t.End
	var c canvas
	minutes(&c, t.End, scale, pic.Height)
	first := map[int]bool{}
	for _, m := range marks {
		if len(m.Steps) > 0 {
			first[m.Steps[0]] = true
		}
	}
	for i, s := range t.Steps {
		step := &p.Steps[s.Index]
		group := "<g>"
		if len(step.Variants) > 0 {
			group = `<g data-for="` + plain(strings.Join(step.Variants, " ")) + `">`
		}
		c.WriteString(group)
		x, width := 1+s.Start*scale, max(1.5, (s.End-s.Start)*scale)
		y := axisHeight + float64(i)*rowHeight
		if first[s.Index] {
			c.line(point{x, 15}, point{x, 23}, stroke)
			c.line(point{x, y + 1}, point{x, y + rowHeight - 1}, stroke)
		}
		shape := bar
		if s.Detour {
			shape = hollow
		}
		c.rect(box{x, y + 4, width, 16}, shape)
		label := fmt.Sprintf("%d %s", s.Index+1, p.Name(plan.Ref{Kind: plan.KindStep, ID: s.ID}))
		middle := y + rowHeight/2 + 4.5
		if left, right := x-6, Width-(x+width)-6; right >= left {
			c.text(x+width+5, middle, labelText, shortened(label, labelText.size, right))
		} else {
			c.anchored(point{x - 5, middle}, "end", labelText, shortened(label, labelText.size, left))
		}
		c.WriteString("</g>\n")
	}
	pic.body = c.Bytes()
	return pic
}

// minutes draws the clock's marks.
func minutes(c *canvas, end, scale, height float64) {
	every := MinutesApart(end)
	for m := 0; float64(m*60) <= end; m += every {
		x := 1 + float64(m*60)*scale
		if x > Width-14 && m > 0 {
			break
		}
		c.line(point{x, 16}, point{x, height}, tick)
		c.text(x, 12, softText, strconv.Itoa(m))
	}
}

// TimeLegend says how the bars are read.
const TimeLegend = "Minutes across, steps down. A stroke under the minutes and at a bar: a chapter starts. An outline: a detour."

// TimeFile is the running time as a file of its own, with its words and legend.
func TimeFile(p *plan.Plan, t timing.Timeline, marks []chapters.Chapter) []byte {
	pic := Time(p, t, marks)
	if pic.empty() {
		return nil
	}
	d := &drawing{width: pic.Width}
	d.lines(0, d.width, inkText, pic.Words)
	d.y += gap
	fmt.Fprintf(d, "<g transform=\"translate(0 %s)\">\n", Units(d.y))
	d.Write(pic.body)
	d.WriteString("</g>\n")
	d.y += pic.Height + 4
	d.lines(0, d.width, softText, TimeLegend)
	return File(Picture{Width: pic.Width, Height: d.y, Title: p.Video.Title.Print, Words: pic.Words, body: d.Bytes()})
}

// runningWords says what the picture shows.
func runningWords(t timing.Timeline, marks int) string {
	words := fmt.Sprintf("%s in %s and %s", chapters.Stamp(t.End), prose.Counted(len(t.Steps), "step"), prose.Counted(marks, "chapter"))
	if !t.Real && t.Running.High > t.Running.Low {
		words += fmt.Sprintf("; eight times in ten between %s and %s", chapters.Stamp(t.Running.Low), chapters.Stamp(t.Running.High))
	}
	if chapters.Stamp(t.Straight.Likely) != chapters.Stamp(t.Running.Likely) && t.Straight.Likely > 0 {
		words += fmt.Sprintf("; %s without detours", chapters.Stamp(t.Straight.Likely))
	}
	return words + "."
}

// MinutesApart keeps the marks of the clock apart: at most eight of them.
func MinutesApart(end float64) int {
	for _, m := range []int{1, 2, 5, 10, 20, 30, 60, 120} {
		if end/float64(m*60) <= 8 {
			return m
		}
	}
	return max(600, int(end/60/8)+1)
}
