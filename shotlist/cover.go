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
	drops := dropped(p)
	c := newCovering(p, shots, drops)
	list := stepsThat(p, func(s *plan.Step) []string { return s.Fasteners })
	for _, f := range p.Fasteners {
		c.fact(Detail, plan.Ref{Kind: plan.KindFastener, ID: f.ID}, list)
	}
	list = stepsThat(p, func(s *plan.Step) []string { return s.Fuses })
	for _, f := range p.Fuses {
		c.fact(Detail, plan.Ref{Kind: plan.KindFuse, ID: f.ID}, list)
	}
	list = stepsThat(p, func(s *plan.Step) []string { return s.Wires })
	for _, w := range p.Wires {
		c.fact(Detail, plan.Ref{Kind: plan.KindWire, ID: w.ID}, list)
	}
	list = stepsThat(p, func(s *plan.Step) []string { return s.Tests })
	for _, t := range p.Tests {
		c.fact(Reading, plan.Ref{Kind: plan.KindTest, ID: t.ID}, list)
	}
	list = stepsThat(p, func(s *plan.Step) []string { return s.Parts })
	for _, part := range p.Parts {
		if ref := (plan.Ref{Kind: plan.KindPart, ID: part.ID}); !isFluid(p.Name(ref)) {
			c.fact(Orientation, ref, list)
			c.fact(Fitted, ref, list)
		}
	}
	list = stepsThat(p, spokenCautions)
	for _, caution := range p.Cautions {
		c.fact(CautionCard, plan.Ref{Kind: plan.KindCaution, ID: caution.ID}, list)
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

// covering looks things up by what they are: a plan may hold thousands.
type covering struct {
	plan    *plan.Plan
	shots   []Shot
	drops   []Shot
	windows []Window
	showing map[Cover][]int    // shots that some state allows, by what they show
	dropped map[Cover][]string // ids of those that were dropped
	seen    map[Cover]bool
	named   map[plan.Ref]bool // things that have a row of any kind
	rows    []Covered
}

func newCovering(p *plan.Plan, shots, drops []Shot) *covering {
	c := &covering{plan: p, shots: shots, drops: drops, windows: readStory(p).windowsOf(shots),
		showing: map[Cover][]int{}, dropped: map[Cover][]string{}, seen: map[Cover]bool{}, named: map[plan.Ref]bool{}}
	for i := range shots {
		for _, cover := range shots[i].Covers {
			if !c.windows[i].Never {
				c.showing[cover] = append(c.showing[cover], i)
			}
		}
	}
	for i := range drops {
		for _, cover := range drops[i].Covers {
			c.dropped[cover] = append(c.dropped[cover], drops[i].ID)
		}
	}
	return c
}

// stepsThat gives, by id, the steps that list a thing.
func stepsThat(p *plan.Plan, list func(*plan.Step) []string) map[string][]int {
	steps := map[string][]int{}
	for i := range p.Steps {
		for _, id := range list(&p.Steps[i]) {
			if n := len(steps[id]); n == 0 || steps[id][n-1] != i {
				steps[id] = append(steps[id], i)
			}
		}
	}
	return steps
}

// fact adds a row for a thing that steps list, once an id. What no step lists
// needs no picture.
func (c *covering) fact(why Why, ref plan.Ref, steps map[string][]int) {
	cover := Cover{why, ref}
	if c.seen[cover] || len(steps[ref.ID]) == 0 {
		return
	}
	c.seen[cover], c.named[ref] = true, true
	c.rows = append(c.rows, Covered{Why: why, Ref: ref, What: c.plan.Name(ref),
		Steps: steps[ref.ID], Shots: c.showing[cover], Dropped: c.dropped[cover]})
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
	if c.named[ref] {
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
	c.named[ref] = true
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
	row := Covered{Why: OtherSide, Ref: plan.Ref{Kind: plan.KindStep, ID: s.ID}, Steps: []int{step},
		What: strings.Join(s.Sides[1:], ", ") + ": " + s.Title.Print}
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
