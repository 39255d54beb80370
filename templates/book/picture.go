package book

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"fixslate/plan/timing"
)

// picture is the running time drawn: a bar for each step, one below the other
// and to scale, so that the eye reads down the story and across the clock.
// Lengths are in the drawing's own units, one of them a pixel on a phone.
type picture struct {
	Width, Height int
	Rows          []bar
	Ticks         []tick
	Title, Words  string
}

type bar struct {
	X, Y, Width         string
	Top, Middle, Bottom string
	Label               string
	LabelX, Anchor      string
	Class               string
	For                 string
	Chapter             bool
}

type tick struct {
	X, Label string
}

const (
	pictureWidth = 358.0 // what a phone of 390 pixels leaves
	rowHeight    = 24.0
	axisHeight   = 26.0
	letterWidth  = 6.6 // of the labels, on the safe side; the page can't measure text
)

func pictureOf(b Book) picture {
	t := b.Timeline
	pic := picture{Width: int(pictureWidth), Height: int(axisHeight + rowHeight*float64(len(t.Steps)) + 4), Title: "Running time, steps to scale"}
	if t.End <= 0 || len(t.Steps) == 0 {
		return picture{}
	}
	scale := (pictureWidth - 2) / t.End
	first := map[int]bool{}
	for _, c := range b.Chapters {
		if len(c.Steps) > 0 {
			first[c.Steps[0]] = true
		}
	}
	for i, s := range t.Steps {
		step := &b.Plan.Steps[s.Index]
		x, width := 1+s.Start*scale, max(1.5, (s.End-s.Start)*scale)
		y := axisHeight + float64(i)*rowHeight
		r := bar{
			X: units(x), Y: units(y + 4), Width: units(width), Top: units(y + 1), Middle: units(y + rowHeight/2 + 4.5), Bottom: units(y + rowHeight - 1),
			Class: "bar", For: attr(step.Variants), Chapter: first[s.Index],
		}
		if s.Detour {
			r.Class = "bar detour"
		}
		name := step.Title.Print
		if name == "" {
			name = step.ID
		}
		label := fmt.Sprintf("%d %s", s.Index+1, name)
		left, right := x-6, pictureWidth-(x+width)-6
		if right >= left {
			r.LabelX, r.Anchor, r.Label = units(x+width+5), "start", shortened(label, int(right/letterWidth))
		} else {
			r.LabelX, r.Anchor, r.Label = units(x-5), "end", shortened(label, int(left/letterWidth))
		}
		pic.Rows = append(pic.Rows, r)
	}
	every := minutesApart(t.End)
	for m := 0; float64(m*60) <= t.End; m += every {
		x := 1 + float64(m*60)*scale
		if x > pictureWidth-14 && m > 0 {
			break
		}
		pic.Ticks = append(pic.Ticks, tick{units(x), strconv.Itoa(m)})
	}
	pic.Words = runningWords(t, len(b.Chapters))
	return pic
}

// runningWords says what the picture shows.
func runningWords(t timing.Timeline, chapters int) string {
	words := fmt.Sprintf("%s in %d steps and %d chapters", stamp(t.End), len(t.Steps), chapters)
	if len(t.Steps) == 1 {
		words = strings.Replace(words, "1 steps", "1 step", 1)
	}
	if chapters == 1 {
		words = strings.Replace(words, "1 chapters", "1 chapter", 1)
	}
	if !t.Real && t.Running.High > t.Running.Low {
		words += fmt.Sprintf("; eight times in ten between %s and %s", stamp(t.Running.Low), stamp(t.Running.High))
	}
	if stamp(t.Straight.Likely) != stamp(t.Running.Likely) && t.Straight.Likely > 0 {
		words += fmt.Sprintf("; %s without detours", stamp(t.Straight.Likely))
	}
	return words + "."
}

// minutesApart keeps the marks of the clock apart: at most eight of them.
func minutesApart(end float64) int {
	for _, m := range []int{1, 2, 5, 10, 20, 30, 60, 120} {
		if end/float64(m*60) <= 8 {
			return m
		}
	}
	return 600
}

func units(n float64) string {
	return strings.TrimSuffix(strconv.FormatFloat(n, 'f', 1, 64), ".0")
}

// shortened cuts a label to a number of characters, at a space where there is
// one near, and never between a letter and its accents.
func shortened(label string, limit int) string {
	r := []rune(label)
	if len(r) <= limit {
		return label
	}
	if limit < 2 {
		return ""
	}
	cut := limit - 1
	for i := cut; i > cut-8 && i > 0; i-- {
		if r[i] == ' ' {
			return string(r[:i]) + "…"
		}
	}
	for cut > 0 && (unicode.Is(unicode.M, r[cut]) || unicode.Is(unicode.Cf, r[cut]) || unicode.Is(unicode.Cf, r[cut-1])) {
		cut--
	}
	return string(r[:cut]) + "…"
}
