package sheet

import (
	"fmt"

	"fixslate/plan"
	"fixslate/shotlist"
)

// dayRow is a line of the day's sheet.
type dayRow struct {
	shotlist.Line
	Box string // before a shot: a box to tick, and its number
}

// Strong holds for what must catch the eye: a set-up, and the words of a grave
// caution.
func (r dayRow) Strong() bool { return r.Kind == shotlist.Head || r.Grave }

type dayTable struct {
	Title string // of one day among several
	Rows  []dayRow
}

type dayView struct {
	Title   string
	Summary []string
	Days    []dayTable
	Barred  []string
	Out     []string
}

// Day is day.md: the shoot in shooting order, with the clock and the cautions
// in the left margin. shots are those that the day was made from.
func Day(p *plan.Plan, shots []shotlist.Shot, d *shotlist.Day) []byte {
	v := dayView{Title: p.Video.Title.Print, Summary: d.Summary()}
	for i := range d.Sessions {
		t := dayTable{}
		if len(d.Sessions) > 1 {
			t.Title = fmt.Sprintf("Day %d", i+1)
		}
		for _, line := range d.Lines(i, p, shots) {
			row := dayRow{Line: line}
			if line.Kind == shotlist.Shoot {
				row.Box = fmt.Sprintf("☐ %d. ", shots[line.Shot].Number)
			}
			t.Rows = append(t.Rows, row)
		}
		v.Days = append(v.Days, t)
	}
	for _, b := range d.Barred {
		v.Barred = append(v.Barred, b.Message+"; "+b.Hint)
	}
	for _, i := range d.Elsewhere(shots) {
		v.Out = append(v.Out, fmt.Sprintf("shot %d, %s: %s", shots[i].Number, shots[i].Maker(), shots[i].Of))
	}
	return write((*out).day, &v)
}
