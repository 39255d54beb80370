package sheet

import (
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/hazard/class"
	"fixslate/plan/kit"
)

type cueRow struct {
	Step, When, Does, Where string
	Keep                    []string // cautions of the step
}

type helperView struct {
	ID, When string
	Child    bool
	Wears    []kit.Item
	Cues     []cueRow
	Away     []string
}

// Helper is helper.md: one printed side for each helper: when, what to wear,
// what to do on which cue, what not to touch.
func Helper(p *plan.Plan) []byte {
	var views []helperView
	for i := range p.Shoot.People {
		person := &p.Shoot.People[i]
		if v := helperOf(p, person); len(v.Cues) > 0 || person.From.Set || person.Until.Set || strings.Contains(person.ID, "helper") {
			views = append(views, v)
		}
	}
	return print("helper.md.tmpl", struct {
		Title, Start string
		Helpers      []helperView
	}{p.Video.Title.Print, p.Shoot.Start.String(), views})
}

func helperOf(p *plan.Plan, person *plan.Person) helperView {
	v := helperView{ID: person.ID, When: window(p, person), Child: !person.Adult}
	for _, w := range person.Wears {
		v.Wears = append(v.Wears, kit.Item{Name: w})
	}
	for i := range p.Steps {
		s := &p.Steps[i]
		for _, c := range s.Cues {
			if c.Who != person.ID {
				continue
			}
			row := cueRow{Step: s.Title.Print, When: c.When.Print, Does: c.Does.Print, Where: c.Where.Print}
			for _, use := range s.Cautions {
				if caution := p.CautionOf(s, use); caution != nil {
					row.Keep = append(row.Keep, caution.Say.Print)
				}
			}
			v.Cues = append(v.Cues, row)
		}
		if slices.Contains(s.People, person.ID) {
			v.wear(p, s)
		}
	}
	v.Away = handsOff(p)
	return v
}

// wear adds the gear that the cautions of a step ask for.
func (v *helperView) wear(p *plan.Plan, s *plan.Step) {
	for _, use := range s.Cautions {
		caution := p.CautionOf(s, use)
		if caution == nil {
			continue
		}
		stock, _ := class.Find(caution.Class)
		for _, g := range stock.Gear {
			item := kit.Item{Name: g.Name, Note: "for the " + kit.BodyPart(g.Protects)}
			if !slices.ContainsFunc(v.Wears, func(w kit.Item) bool { return strings.EqualFold(w.Name, g.Name) }) {
				v.Wears = append(v.Wears, item)
			}
		}
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

// handsOff are the written cautions of warning and danger, once each: what a
// helper must keep clear of.
func handsOff(p *plan.Plan) []string {
	var lines []string
	for i := range p.Cautions {
		c := &p.Cautions[i]
		if c.Signal >= class.Warning && !slices.Contains(lines, c.Text) {
			lines = append(lines, c.Text)
		}
	}
	return lines
}
