package lint

import (
	"fmt"
	"slices"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var waitUncited = Rule{Name: "wait-uncited", Group: Safety, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		if !p.startsHere(i, "srs-waited") || p.citesTime(i) {
			continue
		}
		report(Report{
			Message: fmt.Sprintf("step %q waits for the airbags, and no source says how long", s.Title.Print),
			Hint:    "declare the maker's wait as a [[spec]] with its source, and quote it: {srs-wait}",
			Path:    stepPath(i, "starts"), Families: []string{"airbag-srs"},
		})
	}
}}

// citesTime holds where a line of the step, or a caution that it speaks, quotes a time that has a source, or
// that is still to be asked. Nobody can measure how long airbags stay armed.
func (p *Pass) citesTime(step int) bool {
	s := &p.Plan.Steps[step]
	var quotes []plan.Quote
	for _, l := range s.Lines {
		quotes = append(quotes, l.Quotes...)
	}
	for _, use := range s.Cautions {
		if c := p.Plan.CautionOf(s, use); c != nil && use.Spoken {
			quotes = append(quotes, c.Say.Quotes...)
		}
	}
	for _, q := range quotes {
		for _, v := range p.Plan.Spec(q.Ref.ID) {
			timed := v.Value.Measure.Unit.Dimension() == trade.Time || v.Value.Measure.Shape == trade.Open
			if q.Ref.Kind == plan.KindSpec && timed && (p.publishedIn(v.Source) || v.Verify != "") {
				return true
			}
		}
	}
	return false
}

// publishedIn holds where one of the sources is more than a reading of one's own.
func (p *Pass) publishedIn(sources []string) bool {
	return slices.ContainsFunc(sources, func(id string) bool {
		return slices.ContainsFunc(p.Plan.Source(id), func(s *plan.Source) bool { return s.Kind != "own-measurement" })
	})
}
