package lint

import (
	"fmt"
	"slices"

	"fixslate/plan"
	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// cautionConflicts are figures in a caution's words or on its card that differ
// from the fact which the other of the two quotes: "wait 2 minutes" over a card
// that says five.
func (p *Pass) cautionConflicts(report func(Report)) {
	for i := range p.Plan.Cautions {
		c := &p.Plan.Cautions[i]
		quotes := slices.Concat(c.Say.Quotes, c.Card.Quotes)
		if c.Stock || len(quotes) == 0 {
			continue
		}
		own := map[string]plan.Text{"say": c.Say}
		if c.Card.Source != c.Say.Source { // else the card repeats the words
			own["card"] = c.Card
		}
		for key, text := range own {
			for _, f := range prose.Figures(text.Print) {
				fact, other := p.differsFrom(f, text, quotes)
				if !other {
					continue
				}
				from, to := text.SourceSpan(f.Start, f.End)
				report(Report{
					Message: fmt.Sprintf("caution %q says %s where its %s says %s", c.ID, f.Of(text.Print), otherOf(key), fact.measure),
					Hint:    fmt.Sprintf("settle which is right, and quote it: {%s}", fact.quote),
					Path:    row(plan.KindCaution, i, key), Span: [2]int{from, to},
				})
			}
		}
	}
}

func otherOf(key string) string {
	if key == "say" {
		return "card"
	}
	return "say"
}

// differsFrom finds the quoted fact of a figure's dimension that the figure does
// not give. A figure that is quoted itself, or that one of the facts gives, is
// right.
func (p *Pass) differsFrom(f prose.Figure, text plan.Text, quotes []plan.Quote) (valued, bool) {
	if slices.ContainsFunc(text.Quotes, func(q plan.Quote) bool { return f.Start < q.End && q.Start < f.End }) {
		return valued{}, false
	}
	var wrong valued
	found := false
	for _, v := range f.Values {
		unit, ok := trade.LookupUnit(string(v.Unit))
		if !ok {
			continue
		}
		q := trade.Quantity{Number: v.Number, Unit: unit}
		for _, fact := range p.facts {
			if fact.measure.Unit.Dimension() != unit.Dimension() || !slices.ContainsFunc(quotes, func(x plan.Quote) bool { return x.Ref == fact.ref }) {
				continue
			}
			if states(fact.measure, q) || fact.measure.Contains(q) {
				return valued{}, false
			}
			wrong, found = fact, true
		}
	}
	return wrong, found
}
