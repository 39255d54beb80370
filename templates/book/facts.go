package book

import (
	"fmt"
	"html/template"
	"strings"

	"fixslate/plan"
	"fixslate/plan/kit"
	"fixslate/plan/prose"
	"fixslate/plan/trade"
	"fixslate/templates/blurb"
)

// test is a test in words.
type test struct {
	Question, How, Versions, For string
	Rows                         []pair
	Outcomes                     []pair // what is seen, and where it leads
	Note                         plan.Note
	Verify                       string
}

// fact is one thing a step needs, in a line.
type fact struct {
	Kind                  string
	Words                 template.HTML
	Versions, For, Verify string
	Note                  plan.Note
}

// facts are what a step needs in the hand, a line each.
func facts(p *plan.Plan, s *plan.Step) []fact {
	var out []fact
	add := func(kind, words string, c *plan.Common) {
		if plan.Meets(c.Variants, s.Variants) {
			out = append(out, fact{kind, whole(words), kit.VersionNames(p, c.Variants), attr(c.Variants), c.Verify, c.Note})
		}
	}
	for _, id := range s.Tools {
		for _, t := range p.Tool(id) {
			add("Tool", toolLine(t), &t.Common)
		}
	}
	for _, id := range s.Fasteners {
		for _, f := range p.Fastener(id) {
			add("Fastener", fastenerLine(f), &f.Common)
		}
	}
	for _, id := range s.Fuses {
		for _, f := range p.Fuse(id) {
			add("Fuse", fuseLine(f), &f.Common)
		}
	}
	for _, id := range s.Wires {
		for _, w := range p.Wire(id) {
			add("Wire", wireLine(p, w), &w.Common)
		}
	}
	for _, id := range s.Parts {
		for _, part := range p.Part(id) {
			add("Part", partLine(part), &part.Common)
		}
	}
	for _, id := range s.Supplies {
		for _, sup := range p.Supply(id) {
			line := kit.Join(sup.Name.Print, sup.Amount.Print)
			if sup.Protects != "" {
				add("Gear", kit.Join(line, kit.Guards(sup.Name.Print, sup.Protects)), &sup.Common)
			} else {
				add("Supply", line, &sup.Common)
			}
		}
	}
	return out
}

func toolLine(t *plan.Tool) string {
	line := t.Name.Print
	if t.Optional {
		line += ", if you have one"
	}
	if !t.InsteadOf.Empty() {
		line += ", instead of " + t.InsteadOf.Print
	}
	return line
}

// fastenerLine is "3 × blower screws: M5, hex head, 8 mm, 3 N·m (2.2 lb·ft)".
func fastenerLine(f *plan.Fastener) string {
	line := f.What.Print
	if f.Count > 0 {
		line = fmt.Sprintf("%d × %s", f.Count, line)
	}
	var more []string
	say := func(words string) {
		if words != "" {
			more = append(more, words)
		}
	}
	say(plan.Known(f.Thread))
	if f.Head != "" {
		say(plan.Known(f.Head) + " head")
	}
	if f.Drive != "" {
		say("drive " + plan.Known(f.Drive))
	}
	if f.Grade != "" {
		say("class " + plan.Known(f.Grade))
	}
	if f.Torque.Text != "" {
		say("torque " + blurb.Torque(f.Torque))
	}
	if !f.Angle.Empty() {
		say("then " + f.Angle.Print)
	}
	if !f.ThreadLock.Empty() {
		say("thread lock: " + f.ThreadLock.Print)
	}
	if !f.Reuse {
		say("new ones each time")
	}
	if len(more) > 0 {
		line += ": " + strings.Join(more, ", ")
	}
	return line
}

func fuseLine(f *plan.Fuse) string {
	line := f.At.Print
	if f.Rating.Text != "" {
		line = kit.Join(line, f.Rating.String())
	}
	line = kit.Join(line, plan.Known(f.Form))
	line = kit.Join(line, plan.Known(f.Colour))
	if !f.Protects.Empty() {
		line = kit.Join(line, "protects "+f.Protects.Print)
	}
	return line
}

func wireLine(p *plan.Plan, w *plan.Wire) string {
	line := plan.Known(w.Colour)
	line = kit.Join(line, end("from", p.NamesFor(plan.KindPart, w.From, w.Variants), w.FromPin.Print))
	line = kit.Join(line, end("to", p.NamesFor(plan.KindPart, w.To, w.Variants), w.ToPin.Print))
	for _, m := range []trade.Measure{w.Section, w.Length} {
		if m.Text != "" {
			line = kit.Join(line, m.String())
		}
	}
	return line
}

// end is one end of a wire. Ends are written as names or ids of parts.
func end(word string, names []string, pin string) string {
	for i := range names {
		names[i] = plan.Known(names[i])
	}
	line := strings.Join(names, ", ")
	if pin != "" {
		line = strings.TrimSpace(line + " " + pin)
	}
	if line == "" {
		return ""
	}
	return word + " " + line
}

func partLine(part *plan.Part) string {
	line := part.Name.Print
	if part.Count > 1 {
		line = fmt.Sprintf("%d × %s", part.Count, line)
	}
	if part.Number != "" {
		line += ", number " + plan.Known(part.Number)
	}
	if !part.Replaces.Empty() {
		line += ", replaces " + part.Replaces.Print
	}
	return line
}

// testOf is a test with its readings and ends.
func testOf(p *plan.Plan, t *plan.Test) test {
	v := test{Question: t.Question.Print, How: t.How.Print, Versions: kit.VersionNames(p, t.Variants), For: attr(t.Variants), Note: t.Note, Verify: t.Verify}
	row := func(name, words string) {
		if words != "" {
			v.Rows = append(v.Rows, pair{name, keep(words)})
		}
	}
	row("With", instruments(p, t.Instrument, t.Variants))
	row("Set to", t.Setting.Print)
	row("At", t.At.Print)
	row("Expect", t.Expect.Print)
	for i := range t.Readings {
		r := &t.Readings[i]
		name := "Reading"
		if !r.When.Empty() {
			name = prose.Capital(r.When.Print)
		}
		row(name, kit.Join(kit.Join(instruments(p, r.Instrument, t.Variants), r.At.Print), r.Expect.Print))
	}
	exit := func(name string, e plan.Exit) {
		if e.Kind != plan.Nowhere {
			v.Outcomes = append(v.Outcomes, pair{name, exitWords(p, e)})
		}
	}
	exit("Good", t.Pass)
	exit("Bad", t.Fail)
	for i := range t.Outcomes {
		o := &t.Outcomes[i]
		means := p.NamesFor(plan.KindCause, o.Means, t.Variants)
		words := exitWords(p, o.Go)
		if len(means) > 0 {
			words = strings.TrimSuffix("points to "+strings.Join(means, ", or ")+"; "+words, "; ")
		}
		v.Outcomes = append(v.Outcomes, pair{o.Sees.Print, words})
	}
	return v
}

func instruments(p *plan.Plan, ids, versions []string) string {
	return strings.Join(p.NamesFor(plan.KindTool, ids, versions), ", ")
}

// exitWords says where a test leads.
func exitWords(p *plan.Plan, e plan.Exit) string {
	switch e.Kind {
	case plan.ToStep:
		return "go to step: " + p.Name(plan.Ref{Kind: plan.KindStep, ID: e.ID})
	case plan.ToTest:
		return "go to test: " + p.Name(plan.Ref{Kind: plan.KindTest, ID: e.ID})
	case plan.Stop:
		if e.Text.Empty() {
			return "stop"
		}
		return "stop: " + e.Text.Print
	case plan.Advice:
		return e.Text.Print
	}
	return ""
}
