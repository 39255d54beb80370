package book

import (
	"fmt"

	"fixslate/shotlist"
	"fixslate/templates/picture"
)

// day is one day of the shoot.
type day struct {
	Title string // among several
	Lanes drawing
	Lines []dayLine
}

// dayLine is a line of the day: the clock or a signal word, and the words.
type dayLine struct {
	Class, Margin, Words string
	ID, Step             string // of a shot
	Number               int
	For                  string
}

// lineClasses are the lines' classes in the page's style.
var lineClasses = map[shotlist.LineKind]string{
	shotlist.Head: "head", shotlist.Shoot: "shoot", shotlist.Care: "care", shotlist.Cue: "cue",
	shotlist.Chance: "chance", shotlist.Supply: "supply", shotlist.Pause: "pause", shotlist.Labour: "labour",
}

func daysOf(b Book) []day {
	var days []day
	pictures := picture.Lanes(b.Plan, b.Shots, b.Day)
	for i := range b.Day.Sessions {
		v := day{Lanes: drawingOf(pictures[i], fmt.Sprintf("day-%d", i+1))}
		if len(b.Day.Sessions) > 1 {
			v.Title = fmt.Sprintf("Day %d", i+1)
		}
		for _, line := range b.Day.Lines(i, b.Plan, b.Shots) {
			l := dayLine{Class: lineClasses[line.Kind], Margin: line.Margin, Words: keep(line.Words)}
			if line.Grave {
				l.Class += " grave"
			}
			if line.Kind == shotlist.Shoot {
				s := &b.Shots[line.Shot]
				l.ID, l.Step, l.Number, l.For = s.ID, b.Plan.Steps[s.Step].ID, s.Number, attr(s.Variants)
			}
			v.Lines = append(v.Lines, l)
		}
		days = append(days, v)
	}
	return days
}
