package shotlist

import (
	"slices"
	"strings"

	"fixslate/plan"
)

// Covered is one thing that viewers must see, beside the shots that show it.
type Covered struct {
	Why     Why
	Ref     plan.Ref // the fact, test, part, caution or version; the step for a side
	What    string   // in words
	Steps   []int    // that call for it, in story order
	Shots   []int    // that show it, in story order
	Dropped []string // ids of shots that would show it and that a step drops
	Said    string   // why no shot is needed; empty where one is
}

// Missing holds where a shot is needed and none shows the thing.
func (c Covered) Missing() bool { return len(c.Shots) == 0 && c.Said == "" }

// Coverage lists what the plan's steps call for, kind by kind in the order of
// the plan: each fastener, fuse, wire, reading, part before and after, caution,
// value, version and other side. Shots that no state allows show nothing.
func Coverage(p *plan.Plan, shots []Shot) []Covered {
	_, drops := listed(p)
	c := &covering{plan: p, shots: shots, drops: drops, windows: Windows(p, shots)}
	for _, f := range p.Fasteners {
		c.fact(Detail, plan.Ref{Kind: plan.KindFastener, ID: f.ID}, func(s *plan.Step) []string { return s.Fasteners })
	}
	for _, f := range p.Fuses {
		c.fact(Detail, plan.Ref{Kind: plan.KindFuse, ID: f.ID}, func(s *plan.Step) []string { return s.Fuses })
	}
	for _, w := range p.Wires {
		c.fact(Detail, plan.Ref{Kind: plan.KindWire, ID: w.ID}, func(s *plan.Step) []string { return s.Wires })
	}
	for _, t := range p.Tests {
		c.fact(Reading, plan.Ref{Kind: plan.KindTest, ID: t.ID}, func(s *plan.Step) []string { return s.Tests })
	}
	for _, part := range p.Parts {
		ref := plan.Ref{Kind: plan.KindPart, ID: part.ID}
		if isFluid(p.Name(ref)) {
			continue
		}
		parts := func(s *plan.Step) []string { return s.Parts }
		c.fact(Orientation, ref, parts)
		c.fact(Fitted, ref, parts)
	}
	for _, caution := range p.Cautions {
		c.fact(CautionCard, plan.Ref{Kind: plan.KindCaution, ID: caution.ID}, spokenCautions)
	}
	for _, v := range p.Specs {
		c.value(v.ID)
	}
	for i := range p.Variants {
		c.version(p.Variants[i].ID)
	}
	for i := range p.Steps {
		c.sides(i)
	}
	return c.rows
}

func spokenCautions(s *plan.Step) []string {
	var ids []string
	for _, use := range s.Cautions {
		if use.Spoken {
			ids = append(ids, use.ID)
		}
	}
	return ids
}

type covering struct {
	plan    *plan.Plan
	shots   []Shot
	drops   []Shot
	windows []Window
	rows    []Covered
}

// fact adds a row for a thing that steps list, once an id. What no step lists
// needs no picture.
func (c *covering) fact(why Why, ref plan.Ref, list func(*plan.Step) []string) {
	if slices.ContainsFunc(c.rows, func(r Covered) bool { return r.Why == why && r.Ref == ref }) {
		return
	}
	row := Covered{Why: why, Ref: ref, What: c.plan.Name(ref)}
	for i := range c.plan.Steps {
		if slices.Contains(list(&c.plan.Steps[i]), ref.ID) {
			row.Steps = append(row.Steps, i)
		}
	}
	if len(row.Steps) == 0 {
		return
	}
	c.fill(&row, func(s *Shot) bool { return slices.Contains(s.Covers, Cover{why, ref}) })
	c.rows = append(c.rows, row)
}

// fill finds the shots of a row.
func (c *covering) fill(row *Covered, shows func(*Shot) bool) {
	for i := range c.shots {
		if !c.windows[i].Never && shows(&c.shots[i]) {
			row.Shots = append(row.Shots, i)
		}
	}
	for i := range c.drops {
		if shows(&c.drops[i]) {
			row.Dropped = append(row.Dropped, c.drops[i].ID)
		}
	}
}

// value adds a row for any other value: a shot that quotes it, or that reads a
// test which expects it; a value that is only said needs none.
func (c *covering) value(id string) {
	ref := plan.Ref{Kind: plan.KindSpec, ID: id}
	if slices.ContainsFunc(c.rows, func(r Covered) bool { return r.Ref == ref }) {
		return
	}
	read := map[string]bool{}
	for i := range c.plan.Tests {
		t := &c.plan.Tests[i]
		quotes := slices.Clone(t.Expect.Quotes)
		for j := range t.Readings {
			quotes = append(quotes, t.Readings[j].Expect.Quotes...)
		}
		read[t.ID] = read[t.ID] || quotesIt(quotes, ref)
	}
	row := Covered{Why: Value, Ref: ref, What: c.plan.Name(ref)}
	c.fill(&row, func(s *Shot) bool {
		return slices.ContainsFunc(s.Covers, func(cover Cover) bool {
			return cover.Ref == ref || cover.Why == Reading && read[cover.Ref.ID]
		})
	})
	for i := range c.plan.Steps {
		if said(&c.plan.Steps[i], ref) || slices.ContainsFunc(c.plan.Steps[i].Tests, func(test string) bool { return read[test] }) {
			row.Steps = append(row.Steps, i)
		}
	}
	if len(row.Steps)+len(row.Shots) == 0 {
		return
	}
	if len(row.Shots) == 0 && len(row.Dropped) == 0 {
		row.Said = "said in “" + c.plan.Steps[row.Steps[0]].Title.Print + "”"
	}
	c.rows = append(c.rows, row)
}

func quotesIt(quotes []plan.Quote, ref plan.Ref) bool {
	return slices.ContainsFunc(quotes, func(q plan.Quote) bool { return q.Ref == ref })
}

// said holds where a step's narration quotes a thing.
func said(s *plan.Step, ref plan.Ref) bool {
	return slices.ContainsFunc(s.Lines, func(l plan.Line) bool { return quotesIt(l.Quotes, ref) }) || quotesIt(s.OtherSide.Quotes, ref)
}

// version adds a row for a version of the object: shots for it alone, shots
// that quote it, or a step that tells how to know it.
func (c *covering) version(id string) {
	ref := plan.Ref{Kind: plan.KindVariant, ID: id}
	row := Covered{Why: Version, Ref: ref, What: c.plan.Name(ref)}
	for i := range c.plan.Steps {
		if s := &c.plan.Steps[i]; slices.Contains(s.Variants, id) || said(s, ref) {
			row.Steps = append(row.Steps, i)
		}
	}
	c.fill(&row, func(s *Shot) bool {
		return slices.Contains(s.Variants, id) && s.Covers[0].Why != CautionCard ||
			slices.ContainsFunc(s.Covers, func(cover Cover) bool { return cover.Ref == ref })
	})
	if len(row.Shots) == 0 && len(row.Steps) > 0 {
		row.Said = "said in “" + c.plan.Steps[row.Steps[0]].Title.Print + "”"
	}
	c.rows = append(c.rows, row)
}

// sides adds a row for the other side of a step that is done on several: the
// first is filmed, and what differs on the others is shown or said.
func (c *covering) sides(step int) {
	s := &c.plan.Steps[step]
	if len(s.Sides) < 2 {
		return
	}
	row := Covered{Why: OtherSide, Ref: plan.Ref{Kind: plan.KindStep, ID: s.ID}, Steps: []int{step}}
	for i, side := range s.Sides[1:] {
		if i > 0 {
			row.What += ", "
		}
		row.What += side
	}
	row.What += ": " + s.Title.Print
	c.fill(&row, func(shot *Shot) bool {
		return shot.Step == step && slices.ContainsFunc(shot.Covers, func(cover Cover) bool { return cover.Why == OtherSide })
	})
	if len(row.Shots) == 0 && !s.OtherSide.Empty() {
		row.Said = "said at the end of “" + s.Title.Print + "”"
	}
	c.rows = append(c.rows, row)
}

// MissingWords says why nothing shows a thing.
func MissingWords(c Covered) string {
	if len(c.Dropped) > 0 {
		return "no shot: " + strings.Join(c.Dropped, ", ") + " dropped"
	}
	return "no shot"
}
