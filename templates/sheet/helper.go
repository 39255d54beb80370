package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
	"fixslate/plan/kit"
	"fixslate/shotlist"
)

type cueRow struct{ When, Does, Where string }

// helperStep is a step in which a helper has something to do.
type helperStep struct {
	Title string
	At    when
	Late  string   // what of it lies beyond the helper's hours
	Keep  []string // its cautions
	Cues  []cueRow
}

// when is a time of the shoot.
type when struct {
	day, seconds, end int
	Words             string // empty where the day does not have the step
}

type helperView struct {
	ID, When string
	Child    bool
	Wears    []kit.Item
	Steps    []helperStep
	Away     []string
}

// Helper is helper.md: one printed side for each helper: when, what to wear,
// what to do on which cue, what to keep clear of. shots are those that the day
// was made from; of the findings it prints which steps want a helper nobody
// planned.
func Helper(p *plan.Plan, shots []shotlist.Shot, d *shotlist.Day, findings []diag.Finding) []byte {
	var views []helperView
	for i := range p.Shoot.People {
		person := &p.Shoot.People[i]
		v := helperOf(p, person, func(step int) when { return begins(step, shots, d) })
		if len(v.Steps) > 0 || person.From.Set || person.Until.Set || strings.Contains(person.ID, "helper") {
			views = append(views, v)
		}
	}
	sheet := helpersView{Title: p.Video.Title.Print, Helpers: views}
	for _, f := range findings {
		if f.Rule == "helper-unplanned" && f.Waived == "" {
			sheet.Wanted = append(sheet.Wanted, f.Message)
		}
	}
	return write((*out).helper, &sheet)
}

// helpersView is the sheet.
type helpersView struct {
	Title   string
	Helpers []helperView
	Wanted  []string // what asks for one
}

func helperOf(p *plan.Plan, person *plan.Person, at func(step int) when) helperView {
	v := helperView{ID: person.ID, When: window(p, person), Child: !person.Adult}
	for _, w := range person.Wears {
		v.Wears = append(v.Wears, kit.Item{Name: w})
	}
	var told []string
	for i := range p.Steps {
		s := &p.Steps[i]
		step := helperStep{Title: s.Title.Print, At: at(i)}
		if _, until := shotlist.Presence(&p.Shoot, person); until == person.Until.Minutes*60 {
			step.Late = step.At.beyond(person.Until)
		}
		for _, c := range s.Cues {
			if c.Who == person.ID {
				step.Cues = append(step.Cues, cueRow{c.When.Print, c.Does.Print, c.Where.Print})
			}
		}
		if len(step.Cues) > 0 {
			for _, use := range s.Cautions {
				if caution := p.Given(s, use); caution != nil {
					step.Keep = append(step.Keep, caution.Say.Print)
					told = append(told, caution.ID)
				}
			}
			v.Steps = append(v.Steps, step)
		}
		if slices.Contains(s.People, person.ID) {
			v.wear(p, i)
		}
	}
	// A helper's hours run by the clock, not by the story.
	slices.SortStableFunc(v.Steps, func(a, b helperStep) int {
		return cmp.Or(cmp.Compare(a.At.day, b.At.day), cmp.Compare(a.At.seconds, b.At.seconds))
	})
	v.oneForTheEyes()
	v.Away = handsOff(p, told)
	return v
}

// beyond says what of an action lies after the hour at which somebody goes, where
// that is an hour of the day.
func (w when) beyond(until plan.Clock) string {
	switch {
	case w.Words == "" || w.end <= until.Minutes*60:
		return ""
	case w.seconds >= until.Minutes*60:
		return "This is planned for after " + until.String() + ", when you go: say beforehand whether you can be there."
	}
	return "This runs past " + until.String() + ", when you go: say beforehand whether you can stay."
}

// begins is when the action of a step is due, and where it has no shot of its
// own, its first shot.
func begins(step int, shots []shotlist.Shot, d *shotlist.Day) when {
	never := when{day: len(d.Sessions)}
	first := never
	for i := range d.Sessions {
		for _, e := range d.Sessions[i].Entries {
			if e.Step != step || e.Kind != shotlist.Filming && e.Kind != shotlist.Working {
				continue
			}
			at := when{i, e.Start, e.End, shotlist.Clock(e.Start)}
			if len(d.Sessions) > 1 {
				at.Words = fmt.Sprintf("day %d, %s", i+1, at.Words)
			}
			if e.Kind == shotlist.Working || shots[e.Shot].Bound == shotlist.ByStep {
				return at
			}
			if first == never {
				first = at
			}
		}
	}
	return first
}

// wear adds the gear that the cautions of a step ask for, and names the step:
// a helmet is for the ride, not for the hour. What the packing list has for a
// part of the body is what the helper is given for it. A caution whose card alone
// is shown again asks for nothing: the state that answers it still holds.
func (v *helperView) wear(p *plan.Plan, step int) {
	s := &p.Steps[step]
	for _, use := range s.Cautions {
		if !use.Spoken && !use.Listed {
			continue
		}
		for _, g := range kit.Worn(p, step, use) {
			name := packed(p, s, g)
			i := slices.IndexFunc(v.Wears, func(w kit.Item) bool { return strings.EqualFold(w.Name, name) })
			switch {
			case i < 0:
				v.Wears = append(v.Wears, kit.Item{Name: name, For: s.Title.Print})
			case v.Wears[i].For != "" && !strings.HasSuffix(v.Wears[i].For, s.Title.Print):
				v.Wears[i].For += "; " + s.Title.Print
			}
		}
	}
}

// packed is the name under which the packing list has gear.
func packed(p *plan.Plan, s *plan.Step, g class.Gear) string {
	for _, item := range kit.Gear(p) {
		if item.Serves(g) && plan.Meets(item.Variants, s.Variants) {
			return item.Name
		}
	}
	return g.Name
}

// oneForTheEyes takes safety glasses off where goggles are worn all the time:
// nobody wears both, and goggles close where glasses are open (common practice,
// no source).
func (v *helperView) oneForTheEyes() {
	always := slices.ContainsFunc(v.Wears, func(w kit.Item) bool {
		return w.For == "" && strings.Contains(strings.ToLower(w.Name), "goggles")
	})
	if always {
		v.Wears = slices.DeleteFunc(v.Wears, func(w kit.Item) bool { return w.For != "" && w.Name == "safety glasses" })
	}
}

func window(p *plan.Plan, person *plan.Person) string {
	from, until := person.From, person.Until
	if !from.Set {
		from = p.Shoot.Start
	}
	if !until.Set {
		until = p.Shoot.End
	}
	if !until.Set {
		return "from " + from.String()
	}
	return from.String() + " to " + until.String()
}

// handsOff are the cautions of warning and danger that the helper's own steps
// have not given, once each, those that no step gives at the end: what a helper
// must keep clear of.
func handsOff(p *plan.Plan, told []string) []string {
	var lines []string
	add := func(c *plan.Caution) {
		if c.Signal >= class.Warning && !slices.Contains(told, c.ID) && !slices.Contains(lines, c.Say.Print) {
			lines = append(lines, c.Say.Print)
		}
	}
	given := p.Told()
	for _, c := range given {
		add(c)
	}
	for i := range p.Cautions {
		c := &p.Cautions[i]
		if !c.Spare && !slices.ContainsFunc(given, func(g *plan.Caution) bool { return g.ID == c.ID }) {
			add(c)
		}
	}
	return lines
}
