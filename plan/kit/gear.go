package kit

import (
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/hazard/class"
)

// guarding is the item as gear for a part of the body.
func (i Item) guarding(part string) Item {
	i.Protects = part
	return i
}

// Gear is what protects people in this plan: the supplies that the plan names
// as gear, then what its cautions ask for in some step and no supply covers.
func Gear(p *plan.Plan) []Item {
	var items []Item
	for _, s := range p.Supplies {
		if s.Protects != "" && !s.Spare {
			items = append(items, newItem(p, s.Name.Print, Join(s.Amount.Print, Guards(s.Name.Print, s.Protects)), s.Variants).guarding(s.Protects))
		}
	}
	asked := asking(p)
	for i := range p.Cautions {
		if c := &p.Cautions[i]; asked[c] {
			for _, g := range gearOf(c) {
				if !slices.ContainsFunc(items, func(i Item) bool { return i.Serves(g) }) {
					items = append(items, newItem(p, g.Name, Guards(g.Name, g.Protects), nil).guarding(g.Protects))
				}
			}
		}
	}
	return items
}

// asking are the cautions whose gear somebody puts on: in a step that lists them,
// or, where no step does, by being in the plan.
func asking(p *plan.Plan) map[*plan.Caution]bool {
	asked, listed := map[*plan.Caution]bool{}, map[*plan.Caution]bool{}
	for i := range p.Steps {
		for _, use := range p.Steps[i].Cautions {
			if c := p.CautionOf(&p.Steps[i], use); c != nil {
				listed[c] = true
				asked[c] = asked[c] || Worn(p, i, use) != nil
			}
		}
	}
	for i := range p.Cautions {
		if c := &p.Cautions[i]; !listed[c] {
			asked[c] = !c.Spare
		}
	}
	return asked
}

// energies are what is gone, and leaves nothing behind that gear would guard
// against, once it is answered; a drained or opened pipe still drips.
var energies = []string{"heat", "mains", "low-voltage", "high-voltage-dc", "stored-charge"}

// Worn is the gear that a caution asks for in a step: none where states in force
// took the danger away before hands come near, and none where the step does
// nothing and leaves the work to somebody else.
func Worn(p *plan.Plan, step int, use plan.StepCaution) []class.Gear {
	s := &p.Steps[step]
	c := p.CautionOf(s, use)
	if c == nil {
		return nil
	}
	stock, _ := class.Find(c.Class)
	if left := c.LeaveTo.Print != "" && s.Do.Print == "" && len(s.Tests) == 0; left || gone(p, step, &stock) {
		return nil
	}
	return gearOf(c)
}

// gearOf is what a caution's class has for those who do the work, one thing for
// each part of the body: the first is always due, a shield over the glasses only
// for some of the class's work.
func gearOf(c *plan.Caution) []class.Gear {
	stock, _ := class.Find(c.Class)
	var due []class.Gear
	for _, g := range stock.Gear {
		same := func(d class.Gear) bool { return d.Protects == g.Protects }
		if !slices.ContainsFunc(due, same) && (g.Protects != class.Hearing || Loud(stock.Family)) {
			due = append(due, g)
		}
	}
	return due
}

// Loud holds for families whose work is loud by itself; elsewhere ears want
// something only near a machine that happens to be.
func Loud(family string) bool { return family == "hearing" || family == "power-tool" }

// gone holds where all states that answer a class hold through a step. To cool is
// to wait, so it may begin there; who switches off, or lets a charge off, is near
// before it is done.
func gone(p *plan.Plan, step int, c *class.Class) bool {
	if len(c.Answered) == 0 || slices.ContainsFunc(c.Present, func(e string) bool { return !slices.Contains(energies, e) }) {
		return false
	}
	return !slices.ContainsFunc(c.Answered, func(state string) bool {
		return !slices.ContainsFunc(p.Holding(state, step), func(v plan.Interval) bool {
			return (v.From < step || state == "cooled") && (v.To > step || v.Open)
		})
	})
}

// Serves holds for gear that does for what a hazard asks for: the same part of
// the body, and the property that is asked for.
func (i *Item) Serves(g class.Gear) bool {
	if i.Protects != g.Protects {
		return false
	}
	name, asked := strings.ToLower(i.Name), strings.ToLower(g.Name)
	for _, p := range properties {
		if p.guards == g.Protects && strings.Contains(asked, p.asked) {
			return !has(name, p.not) && (p.by == nil || has(name, p.by))
		}
	}
	return true
}

func has(text string, words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(text, w) })
}

// properties are what gear may be asked for by its name, the first that fits,
// and the words of gear that has it: one of by, where there are any, none of
// not. Gear that stands in no row is served by whatever guards the same part.
// After the selection charts of 29 CFR 1910.133 and 1910.138 (memory): open
// glasses stop no splash, thin gloves no heat or edge, and a dust mask no vapour.
// Feet and fuel, in which latex swells, are common practice, no source.
var properties = []struct {
	guards, asked string
	by, not       []string
}{
	{guards: class.Eyes, asked: "goggles", by: []string{"goggle", "shield", "visor"}},
	{guards: class.Eyes, asked: "shield", by: []string{"shield", "visor"}},
	{guards: class.Eyes, asked: "welding", by: []string{"weld"}},
	{guards: class.Hands, asked: "insulating", by: insulating},
	{guards: class.Hands, asked: "voltage", by: insulating},
	{guards: class.Hands, asked: "heat", not: thin},
	{guards: class.Hands, asked: "cold", not: thin},
	{guards: class.Hands, asked: "cut", not: thin},
	{guards: class.Hands, asked: "heavy", not: thin},
	{guards: class.Hands, asked: "leather", not: thin},
	{guards: class.Hands, asked: "acid", by: tight},
	{guards: class.Hands, asked: "fuel", by: tight, not: []string{"latex", "vinyl", "washing-up"}},
	{guards: class.Hands, asked: "chemical", by: tight},
	{guards: class.Hands, asked: "nitrile", by: tight},
	{guards: class.Lungs, asked: "respirator", by: []string{"respirator", "ffp", "half mask", "full mask", "cartridge", "air-fed", "n95", "p2", "p3"}},
	{guards: class.Lungs, asked: "air-fed", by: []string{"air-fed", "air fed", "supplied air"}},
	{guards: class.Feet, asked: "safety", not: []string{"insulating", "non-slip", "rubber", "trainers"}},
	{guards: class.Feet, asked: "insulating", by: []string{"insulating", "rubber", "dielectric"}},
	{guards: class.Head, asked: "helmet", by: []string{"helmet"}},
	{guards: class.Body, asked: "high-visibility", by: []string{"visib", "hi-vis", "hi vis", "reflective"}},
	{guards: class.Body, asked: "sleeves", by: []string{"sleeve", "overall", "boiler suit", "jacket", "coat"}},
	{guards: class.Body, asked: "apron", by: []string{"apron", "waterproof"}},
	{guards: class.Body, asked: "coverall", by: []string{"overall", "boiler suit"}},
}

var (
	insulating = []string{"insulating", "voltage", "electric"}
	thin       = []string{"nitrile", "latex", "vinyl", "disposable", "rubber"}
	tight      = []string{"nitrile", "latex", "vinyl", "disposable", "rubber", "neoprene", "butyl", "pvc", "acid", "fuel", "chemical", "washing-up"}
)

// Guards says what gear protects where its name does not say so: "for the
// hands", but nothing of ear defenders.
func Guards(name, protects string) string {
	part := bodyPart(protects)
	for _, word := range strings.Fields(strings.ToLower(name)) {
		if strings.TrimSuffix(word, "s") == strings.TrimSuffix(part, "s") {
			return ""
		}
	}
	return "for the " + part
}

// bodyPart says what gear protects: "ears" for hearing.
func bodyPart(protects string) string {
	if protects == "hearing" {
		return "ears"
	}
	return protects
}
