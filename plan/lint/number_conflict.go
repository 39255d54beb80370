package lint

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

var numberConflict = Rule{Name: "number-conflict", Group: Truth, Severity: diag.Error, Check: func(p *Pass) []Report {
	found := p.factConflicts()
	for _, s := range p.said {
		for _, v := range s.Values {
			if v.Quoted || v.Part != "" || v.Unit == "" {
				continue
			}
			unit, ok := trade.LookupUnit(v.Unit)
			if !ok {
				continue
			}
			q := trade.Quantity{Number: v.Number, Unit: unit}
			if f, other := p.contradicted(s, q); other {
				r := s.report(v.Start, v.End)
				r.Message = fmt.Sprintf("%s is said to be %s here, and %s in the plan", f.what, s.printed(v), f.measure)
				r.Hint = fmt.Sprintf("settle which is right, and quote it: {%s}", f.quote)
				found = append(found, r)
			}
		}
		if r, ok := p.miscounted(s); ok {
			found = append(found, r)
		}
	}
	return found
}}

// valued is a fact with a measured value.
type valued struct {
	what, quote string
	ref         plan.Ref
	variants    []string
	measure     trade.Measure
	path        string
}

// valuedFacts are the facts with a measured value.
func valuedFacts(p *plan.Plan) []valued {
	var all []valued
	for i, s := range p.Specs {
		all = append(all, valued{s.What.Print, s.ID, plan.Ref{Kind: plan.KindSpec, ID: s.ID}, s.Variants, s.Value.Measure, row(plan.KindSpec, i, "value")})
	}
	for i, f := range p.Fasteners {
		all = append(all, valued{"the torque of " + f.What.Print, f.ID + ".torque", plan.Ref{Kind: plan.KindFastener, ID: f.ID}, f.Variants, f.Torque, row(plan.KindFastener, i, "torque")})
	}
	for i, f := range p.Fuses {
		all = append(all, valued{f.At.Print, f.ID + ".rating", plan.Ref{Kind: plan.KindFuse, ID: f.ID}, f.Variants, f.Rating, row(plan.KindFuse, i, "rating")})
	}
	return slices.DeleteFunc(all, func(v valued) bool { return !v.measure.Measured() })
}

// factConflicts are facts of one name with two values.
func (p *Pass) factConflicts() []Report {
	var found []Report
	facts := p.facts
	byName := map[string][]int{}
	for i, f := range facts {
		name := f.measure.Unit.Dimension()
		key := strings.Join(contentWords(f.what), " ") + "/" + string(name)
		for _, j := range byName[key] {
			o := facts[j]
			if o.ref != f.ref && o.ref.Kind == f.ref.Kind && plan.Meets(o.variants, f.variants) && !agree(o.measure, f.measure) {
				found = append(found, Report{
					Message: fmt.Sprintf("%s has two values: %s (%s) and %s (%s)", f.what, o.measure, o.ref.ID, f.measure, f.ref.ID),
					Hint:    "keep the one that its source gives, or say in what how the two differ",
					Path:    f.path,
				})
			}
		}
		byName[key] = append(byName[key], i)
	}
	return found
}

func agree(a, b trade.Measure) bool {
	if a.Equal(b) {
		return true
	}
	for _, q := range b.Quantities() {
		if !a.Contains(q) {
			return false
		}
	}
	return len(b.Quantities()) > 0
}

// contradicted finds the fact that a line speaks of and whose value it gets
// wrong: the fact is quoted in the line, or most words of its name stand there.
// A line that agrees with one such fact contradicts none.
func (p *Pass) contradicted(s said, q trade.Quantity) (valued, bool) {
	folded := fold(s.line.Print)
	var wrong valued
	found := false
	for _, f := range p.facts {
		if f.measure.Unit.Dimension() != q.Unit.Dimension() || !plan.Meets(f.variants, p.Plan.Steps[s.step].Variants) {
			continue
		}
		quoted := slices.ContainsFunc(s.line.Quotes, func(x plan.Quote) bool { return x.Ref == f.ref })
		if !quoted && !namedIn(folded, f.what) {
			continue
		}
		if states(f.measure, q) || f.measure.Contains(q) {
			return valued{}, false
		}
		wrong, found = f, true
	}
	// A reading read aloud is what it is: it may be bad on purpose.
	return wrong, found && !p.readAloud(s)
}

// namedIn holds where a line names a thing: the last word of its name, its
// noun, and at least half of the others.
func namedIn(folded, name string) bool {
	words := contentWords(name)
	if len(words) == 0 || !says(folded, words[len(words)-1]) {
		return false
	}
	n := 0
	for _, w := range words {
		if says(folded, w) {
			n++
		}
	}
	return n >= 2 || len(words) == 1
}

// miscounted finds a line that counts a step's fasteners otherwise than the
// plan: "four screws" where there are three. Fewer may be some of them, where
// the line says so.
func (p *Pass) miscounted(s said) (Report, bool) {
	step := &p.Plan.Steps[s.step]
	if len(step.Fasteners) == 0 {
		return Report{}, false
	}
	for _, f := range prose.Figures(s.line.Print) {
		if f.Kind != prose.Count || len(f.Values) != 1 || slices.ContainsFunc(s.line.Quotes, func(q plan.Quote) bool { return f.Start < q.End && q.Start < f.End }) {
			continue
		}
		var of *plan.Fastener
		several := false
		for _, id := range step.Fasteners {
			for _, x := range p.Plan.Fastener(id) {
				noun := contentWords(x.What.Print)
				if x.Count > 0 && len(noun) > 0 && strings.TrimSuffix(noun[len(noun)-1], "s") == strings.TrimSuffix(prose.Fold(f.Word), "s") {
					several = several || of != nil && of.Count != x.Count
					of = x
				}
			}
		}
		n := int(f.Values[0].Number)
		if of == nil || several || n == of.Count || n < of.Count && says(fold(s.line.Print), someOfThem...) {
			continue
		}
		r := s.report(f.Start, f.End)
		r.Message = fmt.Sprintf("%q are said here, and the plan has %d %s", strings.TrimSpace(f.Of(s.line.Print)+" "+f.Word), of.Count, of.What.Print)
		r.Hint = fmt.Sprintf("settle which is right, and quote it: {%s}", of.ID)
		return r, true
	}
	return Report{}, false
}

// someOfThem tell that a count is of a part of them.
var someOfThem = []string{"of", "last", "first", "other", "more", "top", "bottom", "upper", "lower", "front", "rear", "left", "right", "side", "remaining", "along", "inner", "outer", "long", "short", "only", "just", "another", "at", "on", "under", "underneath", "behind", "by"}
