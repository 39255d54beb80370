package lint

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

var variantGap = Rule{Name: "variant-gap", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	p.versionsLeftOut(report)
	values := p.versionValues()
	if len(values) == 0 {
		return
	}
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		if len(s.Variants) > 0 {
			continue
		}
		for _, l := range s.Lines {
			if l.Kind != plan.Spoken || p.namesVersion(l.Print, l.Quotes) {
				continue
			}
			if v, at, ok := bareValue(l, values); ok {
				from, to := l.SourceSpan(at.Start, at.End)
				report(Report{
					Message: fmt.Sprintf("%q holds for one version (%s), and this step is for all", at.Of(l.Print), v.versions),
					Hint:    fmt.Sprintf("quote the fact, which gives each version's value: {%s}", v.quote()),
					Path:    stepPath(i, "say"), Span: [2]int{l.Start + from, l.Start + to},
				})
			}
		}
	}
}}

// versionValue is a value that only some versions have.
type versionValue struct {
	ref      plan.Ref
	key      string
	words    string // folded; empty for a measure
	measure  trade.Measure
	versions string
}

func (v versionValue) quote() string {
	if v.key == "" {
		return v.ref.ID
	}
	return v.ref.ID + "." + v.key
}

// forms are the words by which a line gives the value. A short one alone says
// too little: "red" may be a probe's, and the red wire is the wire.
func (v versionValue) forms() []string {
	if len(v.words) >= 4 {
		return []string{v.words}
	}
	if v.ref.Kind != plan.KindWire {
		return nil
	}
	var forms []string
	for _, noun := range []string{"wire", "lead", "cable", "core", "conductor"} {
		forms = append(forms, v.words+" "+noun)
	}
	return forms
}

// versionValues are the values of facts that differ from version to version.
func (p *Pass) versionValues() []versionValue {
	if len(p.Plan.Variants) == 0 {
		return nil
	}
	var all []versionValue
	for _, s := range p.Plan.Specs {
		all = append(all, versionValue{plan.Ref{Kind: plan.KindSpec, ID: s.ID}, "", wordsOf(s.Value), s.Value.Measure, p.versionNames(s.Variants)})
	}
	for _, w := range p.Plan.Wires {
		all = append(all, versionValue{plan.Ref{Kind: plan.KindWire, ID: w.ID}, "colour", strings.TrimSpace(strings.ReplaceAll(fold(w.Colour), " . ", "")), trade.Measure{}, p.versionNames(w.Variants)})
	}
	for _, f := range p.Plan.Fuses {
		all = append(all, versionValue{plan.Ref{Kind: plan.KindFuse, ID: f.ID}, "rating", "", f.Rating, p.versionNames(f.Variants)})
	}
	for _, f := range p.Plan.Fasteners {
		all = append(all, versionValue{plan.Ref{Kind: plan.KindFastener, ID: f.ID}, "torque", "", f.Torque, p.versionNames(f.Variants)})
	}
	return slices.DeleteFunc(all, func(v versionValue) bool {
		return v.versions == "" || v.words == "" && !v.measure.Measured()
	})
}

func wordsOf(v plan.Value) string {
	if v.Measure.Shape != trade.Words {
		return ""
	}
	return strings.TrimSpace(strings.ReplaceAll(fold(v.Print), " . ", ""))
}

// versionNames are the short names of versions: "two-pin", "A and B".
func (p *Pass) versionNames(ids []string) string {
	var names []string
	for _, id := range ids {
		for _, v := range p.Plan.Variant(id) {
			names = append(names, cmp.Or(v.Short.Print, v.Name.Print, id))
		}
	}
	return strings.Join(names, " and ")
}

// bareValue finds a version's value in a line outside its quotes.
func bareValue(l plan.Line, values []versionValue) (versionValue, prose.Span, bool) {
	quoted := func(at prose.Span) bool {
		return slices.ContainsFunc(l.Quotes, func(q plan.Quote) bool { return at.Start < q.End && q.Start < at.End })
	}
	for _, f := range prose.Figures(l.Print) {
		if quoted(f.Span) {
			continue
		}
		for _, n := range f.Values {
			for _, v := range values {
				if v.words == "" && n.Unit != "" && states(v.measure, trade.Quantity{Number: n.Number, Unit: n.Unit}) {
					return v, f.Span, true
				}
			}
		}
	}
	folded := ""
	for _, v := range values {
		if v.words == "" {
			continue
		}
		if folded == "" {
			folded = fold(l.Print)
		}
		if !says(folded, v.forms()...) {
			continue
		}
		if at := strings.Index(strings.ToLower(l.Print), v.words); at >= 0 && !quoted(prose.Span{Start: at, End: at + len(v.words)}) {
			return v, prose.Span{Start: at, End: at + len(v.words)}, true
		}
	}
	return versionValue{}, prose.Span{}, false
}

// states holds where a quantity is one of the numbers that a measure states.
func states(m trade.Measure, q trade.Quantity) bool {
	return slices.ContainsFunc(m.Quantities(), func(n trade.Quantity) bool { return same(n, q) })
}

// same holds for one quantity in two units.
func same(n, q trade.Quantity) bool {
	in, ok := n.In(q.Unit)
	return ok && math.Abs(in.Number-q.Number) <= 1e-9*max(1, math.Abs(q.Number))
}
