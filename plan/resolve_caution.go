package plan

import (
	"cmp"
	"fmt"
	"strings"

	"fixslate/plan/hazard/class"
)

// resolveHazard finds the class and family of a caution of the plan's own and
// takes over the class's words where it has none.
func (d *decoder) resolveHazard(i int) {
	c := &d.plan.Cautions[i]
	hazard := c.Hazard
	if hazard == "" {
		if _, isClass := class.Find(c.ID); isClass {
			hazard = c.ID
		}
	}
	c.Hazard, c.Family = hazard, "none"
	stock, known := classOf(hazard)
	if hazard != "" && !known {
		d.fault("value-wrong", fmt.Sprintf("caution[%d].hazard", i), hazardHint(hazard)+", and a caution of no class needs no hazard", "there is no hazard class or family %q", hazard)
		return
	}
	c.takeWords(stock, hazard)
	if c.Say.Source == "" {
		path := fmt.Sprintf("caution[%d]", i)
		d.fault("key-missing", path, "add say = \"…\", or hazard = \"a class\"", "caution %q has no words", c.ID)
	}
}

// takeWords fills in the class's words where the author wrote none.
func (c *Caution) takeWords(stock class.Class, hazard string) {
	if stock.ID != "" {
		c.Family = stock.Family
		if hazard == stock.ID {
			c.Class = stock.ID
		}
	}
	c.Signal = stock.Signal
	if s, ok := class.ParseSignal(c.SignalWord); ok {
		c.Signal = s
	}
	if c.Signal == 0 {
		c.Signal = class.Caution
	}
	c.Text = cmp.Or(c.Say.Source, stock.Text)
	if c.Say.Source == "" {
		c.Say = Text{Source: stock.Spoken}
	}
	if c.Card.Source == "" {
		c.Card = Text{Source: stock.Card}
	}
}

// classOf finds a class by its id, or the leading class of a family.
func classOf(hazard string) (class.Class, bool) {
	if c, ok := class.Find(hazard); ok {
		return c, true
	}
	if hazard == class.NoFamily {
		return class.Class{}, false
	}
	return class.Lead(hazard)
}

// familyNames are the families that a caution may name.
func familyNames() []string {
	var names []string
	for _, f := range class.Families() {
		if f.ID != class.NoFamily {
			names = append(names, f.ID)
		}
	}
	return names
}

// hazardHint answers words that name no hazard with the nearest classes.
func hazardHint(words string) string {
	near := class.Nearest(words)
	if len(near) == 0 {
		return "the families are " + quoted(familyNames()) + "; fixslate look hazard lists the classes"
	}
	names := make([]string, 0, 3)
	for _, c := range near[:min(3, len(near))] {
		names = append(names, c.ID)
	}
	return "did you mean " + quoted(names) + "; fixslate look hazard lists them all"
}

// resolveCaution ties a step's caution to one of the plan's, adding the stock
// caution of a class or family that is only named.
func (d *decoder) resolveCaution(use *StepCaution) {
	p := d.plan
	name := strings.TrimPrefix(cmp.Or(use.ID, use.hazard), string(KindCaution)+":")
	use.ID, use.Listed = name, true
	if len(p.index[Ref{KindCaution, name}]) > 0 {
		return
	}
	stock, known := classOf(name)
	if !known {
		hint := hazardHint(name)
		if near, ok := Nearest(name, p.ids(KindCaution)); ok && class.Slips(name, near, 2) <= 2 {
			hint = fmt.Sprintf("did you mean %q", near)
		}
		d.fault("id-unknown", use.path, hint, "cautions: there is no caution, hazard class or family %q", name)
		return
	}
	c := Caution{ID: name, Hazard: name, Family: stock.Family, Stock: true}
	c.takeWords(stock, name)
	addRow(d, &cautionTable, &p.Cautions, c)
}
