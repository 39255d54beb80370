package plan

import (
	"cmp"
	"strconv"
	"strings"
	"sync"
)

// Name is what a thing is called in print, in a few words: its name, or what
// it is; the id where it has none.
func (p *Plan) Name(ref Ref) string { return p.NameFor(ref, nil) }

// NameFor is the name of the row that serves some versions, of several the first:
// a wire may have another colour in each.
func (p *Plan) NameFor(ref Ref, versions []string) string {
	first := ""
	for k, i := range p.index[ref] {
		name := p.named(ref.Kind, i)
		if Meets(p.variantsOf(ref.Kind, i), versions) {
			return cmp.Or(name, ref.ID)
		}
		if k == 0 {
			first = name
		}
	}
	return cmp.Or(first, ref.ID)
}

// NamesFor are the names of things of one kind.
func (p *Plan) NamesFor(kind Kind, ids, versions []string) []string {
	var names []string
	for _, id := range ids {
		names = append(names, p.NameFor(Ref{Kind: kind, ID: id}, versions))
	}
	return names
}

// named is the name that a row carries.
func (p *Plan) named(kind Kind, i int) string {
	switch kind {
	case KindVariant:
		return p.Variants[i].Name.Print
	case KindSource:
		return p.Sources[i].Title.Print
	case KindTool:
		return p.Tools[i].Name.Print
	case KindPart:
		return p.Parts[i].Name.Print
	case KindSupply:
		return p.Supplies[i].Name.Print
	case KindFastener:
		return p.Fasteners[i].What.Print
	case KindFuse:
		return p.Fuses[i].At.Print
	case KindWire:
		return joinWords(Known(p.Wires[i].Colour), "wire")
	case KindSpec:
		return p.Specs[i].What.Print
	case KindTerm:
		return p.Terms[i].Text
	case KindCause:
		return p.Causes[i].What.Print
	case KindTest:
		return p.Tests[i].Question.Print
	case KindClaim:
		return p.Claims[i].Text.Print
	case KindCaution:
		return p.Cautions[i].Card.Print
	case KindSetup:
		return joinComma(p.Setups[i].Place.Print, p.Setups[i].View.Print)
	case KindStep:
		return p.Steps[i].Title.Print
	}
	return ""
}

// Detour says when a step under this condition is done; empty for one that is
// no detour.
func (p *Plan) Detour(c Condition) string {
	if c.Test == "" {
		return ""
	}
	question := p.Name(Ref{Kind: KindTest, ID: c.Test})
	switch c.Outcome {
	case "passes":
		return "only after a good reading: " + question
	case "fails":
		return "only after a bad reading: " + question
	}
	for _, t := range p.Test(c.Test) {
		for _, o := range t.Outcomes {
			if o.ID == c.Outcome {
				return "only if " + o.Sees.Print + " (" + question + ")"
			}
		}
	}
	return "only after an outcome of: " + question
}

func joinComma(a, b string) string {
	if a != "" && b != "" {
		return a + ", " + b
	}
	return a + b
}

// rows is a table's elements seen without their type.
type rows interface {
	identify(d *decoder)
	merge(m *merging, used rows)
	kind() Kind
	count() int
	idAt(i int) string
	idNamed(name string) string // of the first of that name, letter case aside
	commonAt(i int) *Common
	fieldAt(i int, key string) any // nil where the table has no such key
}

// rowsOf are the elements of a kind; nil for none of ours.
func (p *Plan) rowsOf(kind Kind) rows {
	if kind == KindPerson {
		return &list[Person]{&personTable, &p.Shoot.People}
	}
	if i, ok := kindKeys()[kind]; ok {
		return planTable.keys[i].into(p).(rows)
	}
	return nil
}

// variantsOf are the versions that a row is for.
func (p *Plan) variantsOf(kind Kind, i int) []string { return p.rowsOf(kind).commonAt(i).Variants }

// kindKeys gives the key of the plan whose elements are of a kind.
var kindKeys = sync.OnceValue(func() map[Kind]int {
	keys := map[Kind]int{}
	for i := len(planTable.keys) - 1; i >= 0; i-- {
		if r, ok := planTable.keys[i].into(&Plan{}).(rows); ok {
			keys[r.kind()] = i
		}
	}
	return keys
})

func (l *list[T]) kind() Kind { return l.table.kind }

func (l *list[T]) count() int { return len(*l.rows) }

func (l *list[T]) idAt(i int) string { return *l.table.id(&(*l.rows)[i]) }

func (l *list[T]) idNamed(name string) string {
	for i := range *l.rows {
		if strings.EqualFold(l.table.naming(&(*l.rows)[i]), name) {
			return l.idAt(i)
		}
	}
	return ""
}

func (l *list[T]) commonAt(i int) *Common { return l.table.common(&(*l.rows)[i]) }

func (l *list[T]) fieldAt(i int, name string) any {
	for k := range l.table.keys {
		if l.table.keys[k].Name == name {
			return l.table.keys[k].into(&(*l.rows)[i])
		}
	}
	for k := range commonKeys {
		if commonKeys[k].Name == name {
			return commonKeys[k].into(l.commonAt(i))
		}
	}
	return nil
}

// RefAt is the thing whose table a path stands in: "fastener[2].torque" is a
// key of the third fastener. It is zero for a path in no table with ids.
func (p *Plan) RefAt(path string) Ref {
	table, rest, ok := strings.Cut(strings.TrimPrefix(path, "shoot."), "[")
	number, _, closed := strings.Cut(rest, "]")
	i, err := strconv.Atoi(number)
	if !ok || !closed || err != nil || i < 0 {
		return Ref{}
	}
	kind := Kind(table)
	if table == "people" {
		kind = KindPerson
	}
	if r := p.rowsOf(kind); kind != "" && r != nil && i < r.count() {
		return Ref{kind, r.idAt(i)}
	}
	return Ref{}
}

// Rows are the elements that have an id: one for each version, where it stands
// again for other versions.
func (p *Plan) Rows(ref Ref) []*Common {
	r := p.rowsOf(ref.Kind)
	if r == nil {
		return nil
	}
	var found []*Common
	for _, i := range p.Find(ref) {
		found = append(found, r.commonAt(i))
	}
	return found
}

// Fact is any element that has an id, seen without its type.
type Fact struct {
	Ref    Ref
	Common *Common
}

// Facts lists everything that has an id, table by table in the order of the
// language.
func (p *Plan) Facts() []Fact {
	var facts []Fact
	for i := range planTable.keys {
		r, ok := planTable.keys[i].into(p).(rows)
		if !ok || r.kind() == "" {
			continue
		}
		for j := range r.count() {
			facts = append(facts, Fact{Ref{r.kind(), r.idAt(j)}, r.commonAt(j)})
		}
	}
	return facts
}

// Cites are the sources of a fact in all its versions, by id.
func (p *Plan) Cites(ref Ref) []string {
	var ids []string
	for _, i := range p.index[ref] {
		if list, ok := p.rowsOf(ref.Kind).fieldAt(i, "source").(*[]string); ok {
			ids = append(ids, *list...)
		}
	}
	return ids
}
