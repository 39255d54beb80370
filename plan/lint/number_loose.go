package lint

import (
	"fmt"
	"slices"

	"fixslate/plan"
	"fixslate/plan/claim"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var numberLoose = Rule{Name: "number-loose", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	versions := p.versionValues()
	var named []trade.Quantity // made when the first loose number is met
	for _, s := range p.said {
		if p.Plan.Steps[s.step].Opinion {
			continue
		}
		last := -1
		for _, v := range p.loose(s) {
			if v.Start == last || p.toldElsewhere(s, v, versions) {
				continue // both ends of a range are one figure
			}
			if named == nil {
				named = p.namedSizes()
			}
			if q, ok := quantity(v); ok && slices.ContainsFunc(named, func(n trade.Quantity) bool { return same(n, q) }) {
				continue
			}
			last = v.Start
			r := s.report(v.Start, v.End)
			r.Message = fmt.Sprintf("%q is said without a fact behind it", s.printed(v))
			r.Hint = "declare it once as a [[spec]] with its source and quote it here: {id}"
			if s.Has(claim.Measurement) {
				r.Hint = "a reading: make it a [[test]] of the step that expects it, or a [[spec]] from your own measurement, and quote that"
			}
			if quote := p.sameValue(s, v); quote != "" {
				r.Hint = fmt.Sprintf("the plan has it: quote it, {%s}, or declare what else it is as a [[spec]]", quote)
			}
			report(r)
		}
	}
}}

// sameValue is the quote of the fact that gives a loose number; empty where none
// does.
func (p *Pass) sameValue(s said, v claim.Value) string {
	q, ok := quantity(v)
	for _, f := range p.facts {
		if ok && states(f.measure, q) && plan.Meets(f.variants, p.Plan.Steps[s.step].Variants) {
			return f.quote
		}
	}
	return ""
}

// toldElsewhere holds for a loose number that number-conflict or variant-gap
// speaks of: the remedy is the same quote.
func (p *Pass) toldElsewhere(s said, v claim.Value, versions []versionValue) bool {
	q, ok := quantity(v)
	if !ok {
		return false
	}
	if _, other := p.contradicted(s, q); other {
		return true
	}
	return len(p.Plan.Steps[s.step].Variants) == 0 && !p.namesVersion(s.line.Print, s.line.Quotes) &&
		slices.ContainsFunc(versions, func(of versionValue) bool { return states(of.measure, q) })
}

// namedSizes are the sizes and amounts by which the plan's own lists call tools,
// parts and supplies: "13 mm spanner", "30 mL" of oil. What else a tool's name has,
// as a torque wrench's reach, is no figure of the object. Never nil.
func (p *Pass) namedSizes() []trade.Quantity {
	found := []trade.Quantity{}
	for i := range p.Plan.Tools {
		for _, q := range quantitiesIn(p.Plan.Tools[i].Name.Print) {
			if q.Unit.Dimension() == trade.Length {
				found = append(found, q)
			}
		}
	}
	add := func(text string) { found = append(found, quantitiesIn(text)...) }
	for i := range p.Plan.Parts {
		add(p.Plan.Parts[i].Name.Print)
	}
	for i := range p.Plan.Supplies {
		add(p.Plan.Supplies[i].Name.Print)
		add(p.Plan.Supplies[i].Amount.Print)
	}
	return found
}

// quantitiesIn are the numbers of a text that have a unit.
func quantitiesIn(text string) []trade.Quantity {
	var all []trade.Quantity
	for _, v := range claim.Sentence(text).Values {
		if q, ok := quantity(v); ok {
			all = append(all, q)
		}
	}
	return all
}
