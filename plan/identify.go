package plan

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// isID holds for lower-case letters and digits, with single hyphens between
// them.
func isID(text string) bool {
	for part := range strings.SplitSeq(text, "-") {
		if !madeOf(part, "abcdefghijklmnopqrstuvwxyz0123456789") {
			return false
		}
	}
	return true
}

// identify gives every element its id and indexes them.
func (d *decoder) identify() {
	p := d.plan
	p.index, p.derived = map[Ref][]int{}, map[Ref]bool{}
	for _, kind := range quotable {
		p.rowsOf(kind).identify(d)
	}
	p.rowsOf(KindPerson).identify(d)
	for i := range p.Tests {
		d.identifyOutcomes(i)
	}
}

func (l *list[T]) identify(d *decoder) {
	t, rows := l.table, *l.rows
	written := map[string]bool{}
	for i := range rows {
		if id := *t.id(&rows[i]); id != "" {
			written[id] = true
			if !isID(id) {
				d.fault("value-wrong", fmt.Sprintf("%s[%d].id", t.name, i), fmt.Sprintf("write id = %q", cmp.Or(slug(id), string(t.kind))), "%q is no id; ids are lower-case letters, digits and hyphens", id)
			}
		}
	}
	for i := range rows {
		id := t.id(&rows[i])
		if *id == "" {
			*id = Unused(cmp.Or(slug(t.naming(&rows[i])), string(t.kind)), written)
			written[*id] = true
			d.plan.derived[Ref{t.kind, *id}] = true
		}
		ref := Ref{t.kind, *id}
		for _, j := range d.plan.index[ref] {
			if disjoint(t.common(&rows[i]).Variants, t.common(&rows[j]).Variants) {
				continue
			}
			d.fault("id-duplicate", fmt.Sprintf("%s[%d].id", t.name, i),
				"give it another id; the same id may stand again only for other variants",
				"%s %q stands twice; the first is in line %d", t.kind, *id, d.spans.Value(fmt.Sprintf("%s[%d].id", t.name, j)).Position().Line)
			break
		}
		d.plan.index[ref] = append(d.plan.index[ref], i)
	}
}

// identifyOutcomes gives the outcomes of one test ids of their own.
func (d *decoder) identifyOutcomes(test int) {
	outcomes := d.plan.Tests[test].Outcomes
	taken := map[string]bool{}
	for i := range outcomes {
		id := &outcomes[i].ID
		path := fmt.Sprintf("test[%d].outcome[%d].id", test, i)
		switch {
		case *id == "":
			*id = Unused(cmp.Or(slug(outcomes[i].Sees.Source), "outcome"), taken)
		case taken[*id]:
			d.fault("id-duplicate", path, "give it another id", "outcome %q stands twice in the test", *id)
		case *id == "passes" || *id == "fails" || !isID(*id):
			d.fault("value-wrong", path, fmt.Sprintf("write id = %q", cmp.Or(slug(*id+" outcome"), "outcome")), "%q is no id for an outcome", *id)
		}
		taken[*id] = true
	}
}

// Unused appends a number to an id until it is free.
func Unused(id string, taken map[string]bool) string {
	free := id
	for n := 2; taken[free]; n++ {
		free = fmt.Sprintf("%s-%d", id, n)
	}
	return free
}

// disjoint holds for two limits to versions that no version meets both.
func disjoint(a, b []string) bool {
	if len(a) == 0 || len(b) == 0 {
		return false
	}
	return !slices.ContainsFunc(a, func(v string) bool { return slices.Contains(b, v) })
}

// Meets holds where something limited to versions a can be met by something
// limited to versions b; an empty list is every version.
func Meets(a, b []string) bool { return !disjoint(a, b) }

// Find gives the indexes in its table of everything that has an id: one, or
// one for each version.
func (p *Plan) Find(ref Ref) []int { return p.index[ref] }

func pick[T any](p *Plan, ref Ref, rows []T) []*T {
	at := p.index[ref]
	found := make([]*T, 0, len(at))
	for _, i := range at {
		found = append(found, &rows[i])
	}
	return found
}

// Variant finds versions by id.
func (p *Plan) Variant(id string) []*Variant { return pick(p, Ref{KindVariant, id}, p.Variants) }

// Source finds sources by id.
func (p *Plan) Source(id string) []*Source { return pick(p, Ref{KindSource, id}, p.Sources) }

// Tool finds tools by id.
func (p *Plan) Tool(id string) []*Tool { return pick(p, Ref{KindTool, id}, p.Tools) }

// Part finds parts by id.
func (p *Plan) Part(id string) []*Part { return pick(p, Ref{KindPart, id}, p.Parts) }

// Supply finds supplies by id.
func (p *Plan) Supply(id string) []*Supply { return pick(p, Ref{KindSupply, id}, p.Supplies) }

// Fastener finds fasteners by id.
func (p *Plan) Fastener(id string) []*Fastener { return pick(p, Ref{KindFastener, id}, p.Fasteners) }

// Fuse finds fuses by id.
func (p *Plan) Fuse(id string) []*Fuse { return pick(p, Ref{KindFuse, id}, p.Fuses) }

// Wire finds wires by id.
func (p *Plan) Wire(id string) []*Wire { return pick(p, Ref{KindWire, id}, p.Wires) }

// Spec finds specs by id.
func (p *Plan) Spec(id string) []*Spec { return pick(p, Ref{KindSpec, id}, p.Specs) }

// Caution finds cautions by id.
func (p *Plan) Caution(id string) []*Caution { return pick(p, Ref{KindCaution, id}, p.Cautions) }

// Cause finds causes by id.
func (p *Plan) Cause(id string) []*Cause { return pick(p, Ref{KindCause, id}, p.Causes) }

// Test finds tests by id.
func (p *Plan) Test(id string) []*Test { return pick(p, Ref{KindTest, id}, p.Tests) }

// Setup finds set-ups by id.
func (p *Plan) Setup(id string) []*Setup { return pick(p, Ref{KindSetup, id}, p.Setups) }

// Step finds steps by id.
func (p *Plan) Step(id string) []*Step { return pick(p, Ref{KindStep, id}, p.Steps) }

// Person finds people by id.
func (p *Plan) Person(id string) []*Person { return pick(p, Ref{KindPerson, id}, p.Shoot.People) }

// ids lists the ids of one kind, sorted, for offering the nearest.
func (p *Plan) ids(kind Kind) []string {
	var ids []string
	for ref := range p.index {
		if ref.Kind == kind {
			ids = append(ids, ref.ID)
		}
	}
	slices.Sort(ids)
	return ids
}
