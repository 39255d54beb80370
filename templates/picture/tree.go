package picture

import (
	"fmt"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diagnose"
)

// The tree is drawn for a phone: a stem runs down while the readings are good,
// and what else may be seen turns off to the right, one step in for each turn.
const (
	inset     = 24.0 // of what turns off
	stemAt    = 10.0 // of the stem, from a box's left edge
	padding   = 9.0
	tall      = 19.0 // line of 14 px
	small     = 16.0 // line of 12 px
	gap       = 12.0
	narrowest = 210.0 // of a box: past that the picture grows
)

// Tests draws a decision tree for each version that has one of its own.
func Tests(p *plan.Plan, r diagnose.Result) []Picture {
	results := r.Versions
	if len(results) == 0 {
		results = []diagnose.Result{r}
	}
	var out []Picture
	for _, one := range results {
		if pic := treeOf(p, one); !pic.empty() {
			out = append(out, pic)
		}
	}
	return out
}

func treeOf(p *plan.Plan, r diagnose.Result) Picture {
	flow := Flow(p, r)
	if len(flow) == 0 {
		return Picture{}
	}
	d := &drawing{width: max(Width, narrowest+inset*float64(depth(flow[0])))}
	pic := Picture{Width: d.width, Title: "Which test first", For: r.Variant}
	if pic.Version = VersionName(p, r); pic.Version != "" {
		pic.Title += ": " + pic.Version
	}
	pic.Words = inWords(r, flow)
	d.lines(0, d.width, inkText, Summary(r)+".")
	d.lines(0, d.width, softText, "Begin at 1. Make the test, then follow the line beside what you saw.")
	d.y += gap
	d.test(flow[0], 0)
	d.y += gap
	for _, note := range Notes(p, r) {
		d.lines(0, d.width, softText, note)
		d.y += 4
	}
	pic.Height, pic.body = d.y, d.Bytes()
	return pic
}

// depth counts the turns to the right.
func depth(t *Test) int {
	most := 1
	for _, w := range t.Ways {
		if w.Next == nil {
			continue
		}
		turn := 1
		if w.stem {
			turn = 0
		}
		most = max(most, turn+depth(w.Next))
	}
	return most
}

type drawing struct {
	canvas
	width, y float64
}

// lines writes text between two edges and moves down.
func (d *drawing) lines(left, right float64, l look, text string) {
	for _, line := range wrapped(text, l.size, right-left) {
		d.y += l.height
		d.text(left, d.y-0.3*l.height, l, line)
	}
}

// boxed draws what fill writes with a box of its own behind it.
func (d *drawing) boxed(x float64, l look, fill func(left, right float64)) {
	top := d.y
	above := d.canvas
	d.canvas = canvas{}
	d.y += padding - 3
	fill(x+padding, d.width-padding)
	d.y += padding - 2
	inner := d.canvas
	d.canvas = above
	d.rect(box{x + 1, top, d.width - x - 2, d.y - top}, l)
	d.Write(inner.Bytes())
}

func (d *drawing) test(t *Test, x float64) {
	d.boxed(x, hollow, func(left, right float64) {
		d.lines(left, right, strongText, fmt.Sprintf("%d  %s", t.Number, t.Question))
		d.lines(left, right, softText, t.Detail)
	})
	stem, from := x+stemAt, d.y
	for i, w := range t.Ways {
		words := w.Seen
		if w.Chance != "" {
			words += " · " + w.Chance
		}
		d.y += gap
		if w.stem {
			d.lines(stem+12, d.width, labelText, words)
			d.y += gap
			d.line(point{stem, from}, point{stem, d.y - 2}, wire)
			d.head(stem, d.y)
			d.test(w.Next, x)
			continue
		}
		turn := d.y + small/2
		d.lines(stem+20, d.width, labelText, words)
		d.y += 3
		d.line(point{stem, turn}, point{stem + 15, turn}, wire)
		if i == len(t.Ways)-1 {
			d.line(point{stem, from}, point{stem, turn}, wire)
		}
		if w.Next != nil {
			d.test(w.Next, x+inset)
			continue
		}
		d.boxed(x+inset, end, func(left, right float64) {
			d.lines(left, right, inkText, w.Found)
			d.lines(left, right, softText, w.Then)
		})
	}
}

// head is the arrow's, pointing down.
func (d *drawing) head(x, y float64) {
	d.shape("path", bar)
	d.put(` d="M`, Units(x), " ", Units(y), ` l-4 -7 h8 z"/>`, "\n")
}

// inWords is the tree for those who can't see it.
func inWords(r diagnose.Result, flow []*Test) string {
	var b strings.Builder
	b.WriteString(Summary(r) + ".")
	for _, t := range flow {
		fmt.Fprintf(&b, " Test %d: %s", t.Number, t.Question)
		for _, w := range t.Ways {
			to := w.Found
			if w.Next != nil {
				to = fmt.Sprintf("go on with %d", w.Next.Number)
			}
			fmt.Fprintf(&b, " %s: %s.", w.Seen, to)
		}
	}
	return b.String()
}
