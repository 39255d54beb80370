package book

import (
	"fmt"
	"slices"
	"strconv"

	"fixslate/chapters"
	"fixslate/chapters/align"
	"fixslate/chapters/cut"
	"fixslate/plan/diag"
	"fixslate/plan/timing"
	"fixslate/templates/picture"
)

// bars is the picture of a review: the plan as a bar, under it the edit to the
// same scale, a band from each planned step to where it was heard, and the
// findings at their times. It is drawn twice, as wide as a phone and as wide as
// a screen, so that its letters are as large as those of the page on both.
type bars struct {
	Class                string // narrow, broad
	Width, Height        int
	Ticks                []tick
	Plan, Edit           []block
	Bands                []band
	Extra                []block // talk in no step, and repeats, over the edit
	Marks                []mark
	PlanWords, EditWords string
	EditY                string
}

// tick is a mark of the clock.
type tick struct{ X, Label string }

// block is a stretch of a bar.
type block struct {
	X, Y, Width, Height string
	Class               string
	Label, LabelX       string // a number in it, where there is room
	LabelY              string
	Title, Link         string
}

// band ties a planned step to its place in the edit.
type band struct{ Points, Class, Title string }

// mark is a finding at its time.
type mark struct{ Path, Class, Title, Link string }

const (
	phoneWidth  = 358.0
	screenWidth = 960.0

	planTop, planHeight = 50.0, 26.0
	bandTop, bandBottom = planTop + planHeight, planTop + planHeight + 34
	editTop, editHeight = bandBottom, 30.0
	marksTop            = editTop + editHeight + 4
	markSize            = 11.0
	markRows            = 5
)

func barsOf(r cut.Edit, width float64) bars {
	b := bars{Class: "broad", Width: int(width), Height: int(marksTop + 4)}
	if width < screenWidth {
		b.Class = "narrow"
	}
	end := max(r.Planned.End, r.Match.End)
	if end <= 0 {
		return bars{}
	}
	d := plotter{r, (width - 2) / end, width}
	b.PlanWords = fmt.Sprintf("plan, %s", stamp(r.Planned.End))
	b.EditY = picture.Units(bandBottom - 4)
	b.EditWords = fmt.Sprintf("edit, %s", stamp(r.Match.End))
	b.Plan, b.Edit = d.plan(), d.edit()
	b.Bands, b.Extra = d.bands(), d.extra()
	var rows int
	b.Marks, rows = d.marks()
	b.Height += int(float64(rows) * (markSize + 2))
	every := picture.MinutesApart(end)
	for m := 0; float64(m*60) <= end; m += every {
		x := d.x(float64(m * 60))
		if x > width-14 && m > 0 {
			break
		}
		b.Ticks = append(b.Ticks, tick{picture.Units(x), strconv.Itoa(m)})
	}
	return b
}

// plotter is a review to a scale, in units of the drawing a second.
type plotter struct {
	cut.Edit
	scale, width float64
}

func (d plotter) x(seconds float64) float64 { return 1 + seconds*d.scale }

func (d plotter) block(start, end, top, height float64) block {
	x, width := d.x(start), max(1.5, (end-start)*d.scale)
	return block{X: picture.Units(x), Width: picture.Units(width), Y: picture.Units(top), Height: picture.Units(height)}
}

// step is a step's block, with its number in it where there is room.
func (d plotter) step(s timing.Step, top, height float64) block {
	b := d.block(s.Start, s.End, top, height)
	number := strconv.Itoa(s.Index + 1)
	if (s.End-s.Start)*d.scale >= 9*float64(len(number))+4 {
		b.Label, b.LabelX = number, picture.Units(d.x((s.Start+s.End)/2))
	}
	b.LabelY, b.Link = picture.Units(top+height/2+4.5), "step-"+s.ID
	b.Title = number + " " + d.title(s.Index)
	return b
}

func (d plotter) title(step int) string { return titleOf(&d.Edit.Plan.Steps[step]) }

// plan is the planned bar: a block for each step, chapters by turns dark and
// light, missing steps hollow.
func (d plotter) plan() []block {
	shade := shades(d.PlannedChapters)
	var out []block
	for _, s := range d.Planned.Steps {
		b := d.step(s, planTop, planHeight)
		b.Class = shade[s.Index]
		status := d.Match.Steps[s.Index].Status
		if status != align.Found {
			b.Class = status.String()
		}
		b.Title += fmt.Sprintf(": planned at %s, %s", stamp(s.Start), status)
		out = append(out, b)
	}
	return out
}

// edit is the bar of the edit: a block for each step heard.
func (d plotter) edit() []block {
	shade := shades(d.Chapters)
	var out []block
	for _, s := range d.Timeline.Steps {
		b := d.step(s, editTop, editHeight)
		b.Class = shade[s.Index]
		b.Title += ": heard at " + stamp(s.Start)
		out = append(out, b)
	}
	return out
}

// shades are the classes of steps by turns of their chapters.
func shades(all []chapters.Chapter) map[int]string {
	shade := map[int]string{}
	for i, c := range all {
		for _, s := range c.Steps {
			shade[s] = [2]string{"dark", "light"}[i%2]
		}
	}
	return shade
}

func (d plotter) bands() []band {
	real := map[int]timing.Step{}
	for _, s := range d.Timeline.Steps {
		real[s.Index] = s
	}
	var out []band
	for _, s := range d.Planned.Steps {
		to, heard := real[s.Index]
		if !heard {
			continue
		}
		status := d.Match.Steps[s.Index].Status
		out = append(out, band{
			Points: fmt.Sprintf("%s,%s %s,%s %s,%s %s,%s", picture.Units(d.x(s.Start)), picture.Units(bandTop), picture.Units(d.x(s.End)), picture.Units(bandTop),
				picture.Units(d.x(to.End)), picture.Units(bandBottom), picture.Units(d.x(to.Start)), picture.Units(bandBottom)),
			Class: "band " + status.String(),
			Title: fmt.Sprintf("%s: planned at %s, heard at %s", d.title(s.Index), stamp(s.Start), stamp(to.Start)),
		})
	}
	return out
}

// extra is what the edit has and the plan has not.
func (d plotter) extra() []block {
	var out []block
	add := func(start, end float64, class, title string) {
		b := d.block(start, end, editTop, editHeight)
		b.Class, b.Title = class, title
		out = append(out, b)
	}
	for _, a := range d.Match.Added {
		add(a.Start, a.End, "own", fmt.Sprintf("%s: talk in no step", stamp(a.Start)))
	}
	for _, a := range d.Match.Repeats {
		add(a.Start, a.End, "again", fmt.Sprintf("%s: %s, said again", stamp(a.Start), d.title(a.Index)))
	}
	return out
}

// marks are the findings with a time, stacked where they would lie on each
// other. One about a missing step stands over it in the plan.
func (d plotter) marks() (out []mark, used int) {
	order := make([]int, 0, len(d.Findings))
	for i, f := range d.Findings {
		if f.Waived == "" {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { // grave ones get the places nearest to the bar
		return int(d.Findings[b].Severity) - int(d.Findings[a].Severity)
	})
	planned := map[string]float64{}
	for _, i := range missingSteps(d.Match) {
		for _, s := range d.Planned.Steps {
			if s.Index == i {
				planned[s.ID] = s.Start
			}
		}
	}
	var rows [markRows][]float64
	for _, i := range order {
		f := d.Findings[i]
		m := mark{Class: "mark " + f.Severity.String(), Link: fmt.Sprintf("finding-%d", i+1), Title: f.Severity.String() + ": " + f.Message}
		if at, over := planned[f.Step]; d.Seconds[i] < 0 && over {
			m.Path = shape(f.Severity, d.x(at)+markSize/2, planTop-markSize-3)
			out = append(out, m)
			continue
		}
		if d.Seconds[i] < 0 {
			continue
		}
		x := min(d.width-markSize/2-1, max(markSize/2+1, d.x(d.Seconds[i])))
		row := 0
		for row < markRows-1 && slices.ContainsFunc(rows[row], func(other float64) bool { return other-x < markSize && x-other < markSize }) {
			row++
		}
		rows[row] = append(rows[row], x)
		used = max(used, row+1)
		m.Path, m.Title = shape(f.Severity, x, marksTop+float64(row)*(markSize+2)), stamp(d.Seconds[i])+" "+m.Title
		out = append(out, m)
	}
	return out, used
}

// shape is a form for each severity, so that colour is not needed to tell them
// apart: a triangle, a square on its corner, a circle.
func shape(s diag.Severity, x, top float64) string {
	const half = markSize / 2
	switch s {
	case diag.Error:
		return fmt.Sprintf("M%s %sl%s %sh-%sz", picture.Units(x), picture.Units(top), picture.Units(half), picture.Units(markSize), picture.Units(markSize))
	case diag.Warning:
		return fmt.Sprintf("M%s %sl%[3]s %[3]s-%[3]s %[3]s-%[3]s-%[3]sz", picture.Units(x), picture.Units(top), picture.Units(half))
	}
	const r = half - 1
	return fmt.Sprintf("M%s %sa%[3]s %[3]s 0 1 0 %[4]s 0a%[3]s %[3]s 0 1 0-%[4]s 0z", picture.Units(x-r), picture.Units(top+half), picture.Units(r), picture.Units(2*r))
}
