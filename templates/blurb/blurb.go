// Package blurb writes what stands under the video: the description, as plain
// text within the platform's limit and as Markdown whole, and the pinned
// comment.
//
// In go a plan and its chapters; out come bytes and the names of the parts that
// did not fit. The package never drops a caution, a correction or a chapter.
package blurb

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fixslate/chapters"
	"fixslate/chapters/marks"
	"fixslate/plan"
	"fixslate/plan/kit"
	"fixslate/plan/trade"
)

// Description is the description in both forms.
type Description struct {
	Text     []byte   // description.txt, within the limit where that is possible
	Markdown []byte   // description.md, whole
	LeftOut  []string // headings of the parts that Text leaves out, in that order
}

// Precedence stands on everything that shows work.
const Precedence = "Local codes, the maker's instructions for your exact model and licensed practice come before anything shown here."

// deference stands under every list of cautions for viewers.
const deference = Precedence + " This list is not complete and does not make the work safe."

// part is one part of the description. A lower rank is left out earlier; a
// rank of 0 never is.
type part struct {
	heading string
	rank    int
	lines   []string // one a line; empty lines separate paragraphs
	list    bool
	titled  bool     // it only says the video's title
	brief   []string // shorter lines, taken before any part is left out
}

// Describe writes the description. Where it is over description_max bytes, Text
// first goes without the reasons beside tools; then whole parts are left out of
// it in this order until it fits: footer, how to test, sources, torque,
// supplies, parts, tools, how the filmed object differs, versions. Cautions, corrections and chapters always stay.
func Describe(p *plan.Plan, c []chapters.Chapter) Description {
	tools := kit.Tools(p)
	list := func(heading string, rank int, lines []string) part {
		return part{heading: heading, rank: rank, lines: lines, list: true}
	}
	parts := []part{
		opening(p),
		{heading: "Chapters", lines: chapterLines(c)},
		cautions(p),
		corrections(p, c),
		list("Versions", 10, versions(p)),
		list("How the filmed one differs", 9, differences(p)),
		list("Protective gear", 0, lines(kit.Gear(p))),
		{heading: "Tools", rank: 8, lines: lines(tools), list: true, brief: briefly(tools)},
		list("Parts", 7, lines(kit.Parts(p))),
		list("Supplies", 6, lines(kit.Supplies(p))),
		list("Torque", 5, torques(p)),
		list("What to test", 3, tests(p)),
		list("Sources", 4, sources(p)),
		{lines: noteLines(p.Publish.Disclosure)}, // rank 0: who paid is said, or nothing is
		{rank: 2, lines: noteLines(p.Publish.Footer)},
	}
	var d Description
	d.Markdown = markdown(p, parts)
	d.Text, d.LeftOut = fitted(parts, p.Publish.DescriptionMax)
	return d
}

// fitted shortens parts, then leaves parts out, until the text fits.
func fitted(parts []part, limit int) (text []byte, left []string) {
	text = plain(parts)
	if len(text) > limit {
		for i := range parts {
			if parts[i].brief != nil {
				parts[i].lines = parts[i].brief
			}
		}
		text = plain(parts)
	}
	for rank := 2; len(text) > limit && rank <= 10; rank++ {
		for i := range parts {
			if parts[i].rank == rank && len(parts[i].lines) > 0 {
				left = append(left, cmp.Or(parts[i].heading, "footer"))
				parts[i].lines = nil
				text = plain(parts)
			}
		}
	}
	return text, left
}

func plain(parts []part) []byte {
	var b strings.Builder
	for _, p := range parts {
		if len(p.lines) == 0 {
			continue
		}
		if b.Len() > 0 {
			b.WriteString("\n")
		}
		if p.heading != "" {
			b.WriteString(strings.ToUpper(p.heading) + "\n")
		}
		for _, line := range p.lines {
			if p.list {
				b.WriteString("– ")
			}
			b.WriteString(printable(line) + "\n")
		}
	}
	return []byte(b.String())
}

// printable keeps a line to one line without control characters, and replaces
// the two characters that platforms refuse in descriptions.
func printable(line string) string {
	return chapters.OneLine(marks.NoAngles(line))
}

func opening(p *plan.Plan) part {
	v := &p.Video
	var out []string
	for _, text := range []plan.Text{v.Symptom, v.Outcome} {
		if !text.Empty() {
			out = append(out, sentence(text.Print))
		}
	}
	for _, fact := range [][2]string{{"On camera: ", v.Subject.Print}, {"Fits: ", v.Fits.Print}, {"For: ", v.Audience.Print}} {
		if fact[1] != "" {
			out = append(out, fact[0]+fact[1])
		}
	}
	if len(out) == 0 {
		return part{lines: []string{sentence(v.Title.Print)}, titled: true}
	}
	return part{lines: out}
}

func sentence(text string) string {
	if strings.HasSuffix(text, ".") || strings.HasSuffix(text, "?") || strings.HasSuffix(text, "!") {
		return text
	}
	return text + "."
}

func chapterLines(c []chapters.Chapter) []string {
	var out []string
	for _, ch := range c {
		out = append(out, chapters.Stamp(ch.Start)+" "+ch.Title)
	}
	return out
}

// cautions are the cautions of all steps, each once, gravest first.
func cautions(p *plan.Plan) part {
	var out []string
	for _, c := range Cautions(p) {
		line := strings.ToUpper(c.Signal.String()) + ": " + c.Text
		if !c.LeaveTo.Empty() {
			line += " Leave it to " + strings.TrimSuffix(c.LeaveTo.Print, ".") + "."
		}
		out = append(out, line)
	}
	return part{heading: "Before you copy this", lines: append(out, deference)}
}

func versions(p *plan.Plan) []string {
	var out []string
	for _, v := range p.Variants {
		line := v.Name.Print
		if !v.Tell.Empty() {
			line += ": " + v.Tell.Print
		}
		out = append(out, line)
	}
	return out
}

func differences(p *plan.Plan) []string {
	var out []string
	for _, d := range p.Differs {
		out = append(out, "on camera: "+d.OnCamera.Print+"; "+Viewers(d.Viewers.Print))
	}
	return out
}

// Viewers is what a viewer has instead of what is filmed, "yours: a hood held
// by two clips"; words that speak of the viewer's own already, "yours keeps its
// door", stand as they are.
func Viewers(text string) string {
	first, _, _ := strings.Cut(text, " ")
	if w := strings.ToLower(strings.Trim(first, ",:")); w == "yours" || w == "your" {
		return text
	}
	return "yours: " + text
}

func lines(items []kit.Item) []string {
	var out []string
	for _, i := range items {
		out = append(out, i.Line())
	}
	return out
}

// briefly lists items without their reasons.
func briefly(items []kit.Item) []string {
	var out []string
	for _, i := range items {
		i.Why = ""
		out = append(out, i.Line())
	}
	return out
}

// torques lists each fastener with a torque, in N·m and lb·ft.
func torques(p *plan.Plan) []string {
	var out []string
	for i := range p.Fasteners {
		f := &p.Fasteners[i]
		if f.Torque.Text == "" {
			continue
		}
		line := f.What.Print
		if f.Thread != "" && f.Thread != "?" {
			line += " (" + f.Thread + ")"
		}
		line += ": " + Torque(f.Torque)
		if !f.Angle.Empty() {
			line += ", then " + f.Angle.Print
		}
		if !f.Reuse {
			line += ", new ones each time"
		}
		out = append(out, kit.Limited(p, line, f.Variants))
	}
	return out
}

// Torque prints a torque in its own unit and in the other of N·m and lb·ft.
func Torque(m trade.Measure) string {
	print := m.String()
	if m.Shape == trade.Words || m.Shape == trade.Open {
		return print
	}
	other := trade.Unit("lb·ft")
	if m.Unit == other {
		other = "N·m"
	}
	var converted []string
	for _, q := range m.Quantities() {
		if c, ok := q.Rounded(other); ok {
			converted = append(converted, c.String())
		}
	}
	if len(converted) == 0 {
		return print
	}
	if len(converted) == 2 { // the second has the unit of both
		converted[0] = strings.TrimSuffix(converted[0], " "+string(other))
	}
	return fmt.Sprintf("%s (%s)", print, strings.Join(converted, " to "))
}

// tests lists the readings to expect.
func tests(p *plan.Plan) []string {
	var out []string
	for i := range p.Tests {
		t := &p.Tests[i]
		var good []string
		// What one reading is to show is not said once more for all of them.
		same := func(r plan.Reading) bool { return r.Expect.Print == t.Expect.Print }
		if t.Expect.Print != "" && !slices.ContainsFunc(t.Readings, same) {
			good = append(good, t.Expect.Print+at(t.At.Print))
		}
		for j := range t.Readings {
			r := &t.Readings[j]
			reading := r.Expect.Print + at(r.At.Print)
			if !r.When.Empty() {
				reading = r.When.Print + ", " + reading
			}
			good = append(good, reading)
		}
		line := t.Question.Print
		if len(good) > 0 {
			line += " Good: " + strings.Join(good, "; ")
		}
		out = append(out, kit.Limited(p, line, t.Variants))
	}
	return out
}

func at(place string) string {
	if place == "" {
		return ""
	}
	return " (" + place + ")"
}

func sources(p *plan.Plan) []string {
	var out []string
	for i := range p.Sources {
		s := &p.Sources[i]
		if s.Spare {
			continue
		}
		line := s.Title.Print
		for _, more := range []string{s.Where.Print, s.Date.String(), s.Link} {
			if more != "" {
				line += ", " + more
			}
		}
		out = append(out, line)
	}
	return out
}

func noteLines(n plan.Note) []string {
	if strings.TrimSpace(n.Plain) == "" {
		return nil
	}
	return strings.Split(strings.TrimSpace(n.Plain), "\n")
}
