package lint

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
)

// versionsLeftOut are the facts that a common step, or a test for all versions,
// quotes and that some version lacks: its viewers are told nothing. Each is
// reported once, where it is said first. A line that names one of the versions
// it holds for speaks to those alone.
func (p *Pass) versionsLeftOut(report func(Report)) {
	seen := map[plan.Ref]bool{}
	look := func(path string, span [2]int, text string, quotes []plan.Quote) {
		for _, q := range quotes {
			lacks := p.versionsWithout(q.Ref)
			if len(lacks) == 0 || seen[q.Ref] || p.namesVersion(text, quotes) {
				continue
			}
			seen[q.Ref] = true
			report(Report{
				Message: fmt.Sprintf("%q has no value for %s, and this is for all versions", p.Plan.Name(q.Ref), p.versionNames(lacks)),
				Hint:    fmt.Sprintf(`add a row with variants = [%q] (value "?" where it is to be found), or give the step its variants`, lacks[0]),
				Path:    path, Span: span,
			})
		}
	}
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		if len(s.Variants) > 0 {
			continue
		}
		for _, l := range s.Lines {
			if l.Kind == plan.Spoken {
				look(stepPath(i, "say"), [2]int{l.Start, l.Start + len(l.Source)}, l.Print, l.Quotes)
			}
		}
	}
	for i := range p.Plan.Tests {
		if t := &p.Plan.Tests[i]; len(t.Variants) == 0 {
			look(row(plan.KindTest, i, "expect"), [2]int{}, t.Expect.Print, t.Expect.Quotes)
			for j, r := range t.Readings {
				look(fmt.Sprintf("test[%d].reading[%d].expect", i, j), [2]int{}, r.Expect.Print, r.Expect.Quotes)
			}
		}
	}
}

// versionsWithout are the versions for which a fact has no row, where it has
// rows for others only.
func (p *Pass) versionsWithout(ref plan.Ref) []string {
	rows := p.Plan.Rows(ref)
	if len(rows) == 0 || !slices.Contains(valuedKinds, ref.Kind) {
		return nil
	}
	have := map[string]bool{}
	for _, r := range rows {
		if len(r.Variants) == 0 {
			return nil
		}
		for _, v := range r.Variants {
			have[v] = true
		}
	}
	var without []string
	for _, v := range p.Plan.Variants {
		if !have[v.ID] {
			without = append(without, v.ID)
		}
	}
	return without
}

// valuedKinds are the facts whose quote tells a viewer what to fit or to find.
var valuedKinds = []plan.Kind{plan.KindSpec, plan.KindPart, plan.KindFastener, plan.KindFuse, plan.KindWire}

// namesVersion holds where a line names a version in words of its own, outside
// its quotes.
func (p *Pass) namesVersion(text string, quotes []plan.Quote) bool {
	if slices.ContainsFunc(quotes, func(q plan.Quote) bool { return q.Ref.Kind == plan.KindVariant }) {
		return true
	}
	folded := fold(unquoted(text, quotes))
	return slices.ContainsFunc(p.Plan.Variants, func(v plan.Variant) bool {
		for _, name := range []string{v.Name.Print, v.Short.Print} {
			if words := strings.TrimSpace(strings.ReplaceAll(fold(name), " . ", "")); words != "" && says(folded, words) {
				return true
			}
		}
		return false
	})
}
