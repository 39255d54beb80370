package picture

import (
	"fmt"

	"fixslate/plan"
	"fixslate/plan/prose"
	"fixslate/shotlist"
)

const (
	laneHeight = 36.0
	lanesTop   = 30.0
	laneBar    = 12.0
)

// LanesLegend says how the lanes are read.
const LanesLegend = "The clock across, a lane for each set-up. A stroke under the clock: the object changes, and what was not filmed before it can't be filmed again. Shaded: a break. An outline: a helper's hours."

// Lanes draws the shoot, one picture a day: a lane for each set-up in the order
// of its first use, filled while the camera is there, and below them one for
// each helper.
func Lanes(p *plan.Plan, shots []shotlist.Shot, d *shotlist.Day) []Picture {
	var pictures []Picture
	for i := range d.Sessions {
		pic := lanesOf(p, shots, &d.Sessions[i])
		if len(d.Sessions) > 1 {
			pic.Title = fmt.Sprintf("Day %d, set-ups over the clock", i+1)
		}
		pictures = append(pictures, pic)
	}
	return pictures
}

// LanesFile is the shoot as a file of its own, with its sentences and legend.
func LanesFile(p *plan.Plan, shots []shotlist.Shot, d *shotlist.Day) []byte {
	pictures := Lanes(p, shots, d)
	if len(pictures) == 0 {
		return nil
	}
	head := &drawing{width: Width}
	for _, line := range d.Summary() {
		head.lines(0, head.width, inkText, line)
	}
	head.y += gap
	head.lines(0, head.width, softText, LanesLegend)
	whole := Picture{Width: Width, Height: head.y, Title: p.Video.Title.Print, Words: "The shoot day, set-ups over the clock.", body: head.Bytes()}
	return File(append([]Picture{whole}, pictures...)...)
}

// laneScale turns the clock into the drawing's units.
type laneScale struct {
	from, to int // seconds after midnight
	unit     float64
}

func (s laneScale) at(seconds int) float64 { return 1 + float64(seconds-s.from)*s.unit }

// span is a stretch of the clock, wide enough to be seen.
func (s laneScale) span(from, to int) (x, width float64) {
	return s.at(from), max(1.5, s.at(to)-s.at(from))
}

// lane is a row: a label, and when it is filled.
type lane struct {
	label  string
	filled [][2]int
	hours  [2]int // of a helper who has some
}

func lanesOf(p *plan.Plan, shots []shotlist.Shot, s *shotlist.Session) Picture {
	scale := laneScale{from: s.Start - s.Start%3600, to: s.Wrap}
	if scale.to <= scale.from || len(s.Entries) == 0 {
		return Picture{}
	}
	scale.unit = (Width - 2) / float64(scale.to-scale.from)
	rows := append(setupLanes(p, s), helperLanes(p, shots, s)...)
	pic := Picture{Width: Width, Height: lanesTop + laneHeight*float64(len(rows)) + 2, Title: "Set-ups over the clock"}
	pic.Words = fmt.Sprintf("%s, from %s to %s. The same stands beside it line by line.", prose.Counted(len(rows), "lane"), shotlist.Clock(s.Start), shotlist.Clock(s.Wrap))
	var c canvas
	for _, e := range s.Entries {
		if e.Kind == shotlist.Rest {
			x, width := scale.span(e.Start, e.End)
			c.rect(box{x, 16, width, pic.Height - 16}, shade)
		}
	}
	hours(&c, scale, pic.Height)
	for _, e := range s.Entries {
		if len(e.Turns) > 0 {
			x := scale.at(e.Start)
			c.line(point{x, 17}, point{x, 27}, stroke)
		}
	}
	for i, r := range rows {
		y := lanesTop + float64(i)*laneHeight
		c.text(1, y+11, labelText, shortened(r.label, labelText.size, Width-2))
		for _, f := range r.filled {
			x, width := scale.span(f[0], f[1])
			c.rect(box{x, y + 16, width, laneBar}, bar)
		}
		if r.hours[1] > r.hours[0] {
			x, width := scale.span(max(r.hours[0], scale.from), min(r.hours[1], scale.to))
			c.rect(box{x, y + 16, width, laneBar}, outline)
		}
	}
	pic.body = c.Bytes()
	return pic
}

// setupLanes are the lanes of the set-ups. Shots with less than a minute
// between them are one stretch.
func setupLanes(p *plan.Plan, s *shotlist.Session) []lane {
	var rows []lane
	at := map[string]int{}
	last := ""
	for _, e := range s.Entries {
		if e.Kind != shotlist.Filming {
			continue
		}
		i, known := at[e.Setup]
		if !known {
			i = len(rows)
			at[e.Setup] = i
			name := p.Name(plan.Ref{Kind: plan.KindSetup, ID: e.Setup})
			if e.Setup == "" {
				name = "where the camera stands"
			}
			rows = append(rows, lane{label: name})
		}
		rows[i].fill(e, known && last == e.Setup)
		last = e.Setup
	}
	return rows
}

// fill adds a shot, which may go on from the one before. A break inside it is
// left open.
func (r *lane) fill(e shotlist.Entry, goesOn bool) {
	from := e.Start
	if n := len(r.filled); goesOn && n > 0 && from <= r.filled[n-1][1]+60 {
		from = r.filled[n-1][0]
		r.filled = r.filled[:n-1]
	}
	for _, rest := range e.Rests {
		r.filled = append(r.filled, [2]int{from, rest[0]})
		from = rest[1]
	}
	r.filled = append(r.filled, [2]int{from, e.End})
}

// helperLanes are the lanes of the helpers, each with the hours they have.
func helperLanes(p *plan.Plan, shots []shotlist.Shot, s *shotlist.Session) []lane {
	var rows []lane
	at := map[string]int{}
	for _, e := range s.Entries {
		if e.Kind != shotlist.Filming {
			continue
		}
		for _, who := range shotlist.Helpers(p, &shots[e.Shot]) {
			i, known := at[who]
			if !known {
				i = len(rows)
				at[who] = i
				rows = append(rows, lane{label: who, hours: presence(p, who, s)})
			}
			rows[i].fill(e, true)
		}
	}
	return rows
}

// presence is when a helper is there within a session; nothing for one without
// hours.
func presence(p *plan.Plan, who string, s *shotlist.Session) [2]int {
	for i := range p.Shoot.People {
		if w := &p.Shoot.People[i]; w.ID == who && (w.From.Set || w.Until.Set) {
			from, until := shotlist.Presence(&p.Shoot, w)
			return [2]int{max(from, s.Start), min(until, s.Wrap)}
		}
	}
	return [2]int{}
}

// hours draws the clock's marks, at most seven of them.
func hours(c *canvas, s laneScale, height float64) {
	every := 6 * 3600
	for _, m := range []int{15, 30, 60, 120, 180, 240} {
		if s.to-s.from <= 7*m*60 {
			every = m * 60
			break
		}
	}
	for t := s.from; t <= s.to; t += every {
		x := s.at(t)
		if x > Width-34 && t > s.from {
			break
		}
		c.line(point{x, 16}, point{x, height}, tick)
		c.text(x, 12, softText, shotlist.Clock(t))
	}
}
