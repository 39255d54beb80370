package plan

import "slices"

// The plan language is described once, here and in the keys_*.go files: each
// table is a list of keys, each key knows the field it fills. The decoder
// reads by this description, the resolver and the quotes walk plans by it, and
// the JSON Schema and the README's key tables are printed from it. A generic
// function a key was chosen over struct tags and reflection because a wrong
// field is then a compile error and a key may fill a field of a part.

// Key is what one key of a table means, for readers of the language.
type Key struct {
	Name    string
	Doc     string   // one line
	Default string   // what holds where nothing is written, in words; empty: nothing
	Example string   // a TOML value
	Need    bool     // the table is refused without it
	Rare    bool     // rarely needed
	Words   []string // the only words allowed, where there is such a list
	Refs    []Kind   // it holds ids of these tables
	Names   bool     // an entry that is no id is a name and adds such a thing
	Settles bool     // it settles how the plan is read: a "?" leaves it unset
	Type    string   // the type in the words of the language: "text", "list of ids" …
}

// key is a Key of table T: into gives the address of the field it fills.
type key[T any] struct {
	Key
	into func(*T) any
}

// table describes a table of the language.
type table[T any] struct {
	name   string // "step", "step.shot"
	doc    string
	kind   Kind // of its elements, empty where they have no ids
	keys   []key[T]
	common func(*T) *Common // nil: the table has no variants, verify, note
	id     func(*T) *string // nil: elements have no ids
	naming func(*T) string  // the text that an unwritten id comes from
}

// commonKeys may stand in every table.
var commonKeys = []key[Common]{
	{Key{Name: "variants", Doc: "only for these versions", Default: "all versions", Example: `["two-wire"]`, Refs: []Kind{KindVariant}}, func(c *Common) any { return &c.Variants }},
	{Key{Name: "verify", Doc: "whom or what to ask before the value is used", Example: `"ask the maker's service line"`}, func(c *Common) any { return &c.Verify }},
	{Key{Name: "note", Doc: "Markdown, printed in the book", Example: `"A longer remark."`}, func(c *Common) any { return &c.Note }},
}

// target is one field of one element on a walk through a plan.
type target struct {
	key   *Key
	field any // the pointer that the key fills
	at    *element
}

// path is the field's place: "step[2].say".
func (t target) path() string {
	if t.at.path == "" {
		return t.key.Name
	}
	return t.at.path + "." + t.key.Name
}

// element is one table element on a walk.
type element struct {
	path     string
	kind     Kind
	common   *Common
	parent   *element
	step     int // index of the step it belongs to, or -1
	variants []string
}

// visit walks the keys of one element and of the tables in it, in the order of
// the description.
func (t *table[T]) visit(at *element, v *T, each func(target)) {
	if t.common != nil {
		at.common = t.common(v)
		at.variants = at.common.Variants
		if len(at.variants) == 0 && at.parent != nil {
			at.variants = at.parent.variants
		}
		for i := range commonKeys {
			each(target{&commonKeys[i].Key, commonKeys[i].into(at.common), at})
		}
	}
	for i := range t.keys {
		field := t.keys[i].into(v)
		if inner, ok := field.(part); ok {
			inner.visit(at, t.keys[i].Name, each)
			continue
		}
		each(target{&t.keys[i].Key, field, at})
	}
}

// names are the keys that may stand in the table.
func (t *table[T]) names() []string {
	var names []string
	for i := range t.keys {
		names = append(names, t.keys[i].Name)
	}
	if t.common != nil {
		for i := range commonKeys {
			names = append(names, commonKeys[i].Name)
		}
	}
	return names
}

// has holds for a key that may stand in the table.
func (t *table[T]) has(name string) bool {
	for i := range t.keys {
		if t.keys[i].Name == name {
			return true
		}
	}
	return t.common != nil && slices.ContainsFunc(commonKeys, func(k key[Common]) bool { return k.Name == name })
}

// part is a field that is a table or a list of tables itself.
type part interface {
	read(r *reader, at *element, name string, value any)
	visit(at *element, name string, each func(target))
	describe() Table
}

// listOf makes a list of tables a part: [[step]] or step = [{…}].
func listOf[T any](t *table[T], rows *[]T) part { return &list[T]{t, rows} }

// oneOf makes a single table a part: [video].
func oneOf[T any](t *table[T], row *T) part { return &single[T]{t, row} }

type list[T any] struct {
	table *table[T]
	rows  *[]T
}

type single[T any] struct {
	table *table[T]
	row   *T
}

func (l *list[T]) visit(at *element, name string, each func(target)) {
	for i := range *l.rows {
		l.table.visit(child(at, l.table.kind, name, i), &(*l.rows)[i], each)
	}
}

func (s *single[T]) visit(at *element, name string, each func(target)) {
	s.table.visit(child(at, s.table.kind, name, -1), s.row, each)
}

// Table is a table of the language for readers: the schema and the README.
type Table struct {
	Name string // "step.shot"
	Doc  string
	List bool // [[…]]
	Kind Kind // what its ids name
	Keys []Key
	Sub  []Table // tables inside, in the order of their keys
}

// Language describes the whole plan language, the top table first.
func Language() Table {
	top := describe(&planTable)
	top.Name = ""
	return top
}

func describe[T any](t *table[T]) Table {
	d := Table{Name: t.name, Doc: t.doc, Kind: t.kind}
	var zero T
	for i := range t.keys {
		k := t.keys[i].Key
		field := t.keys[i].into(&zero)
		if inner, ok := field.(part); ok {
			sub := inner.describe()
			k.Type = "table"
			if sub.List {
				k.Type = "list of tables"
			}
			d.Sub = append(d.Sub, sub)
		} else {
			k.Type = typeName(k, field)
		}
		d.Keys = append(d.Keys, k)
	}
	if t.common != nil {
		for _, c := range commonKeys {
			k := c.Key
			k.Type = typeName(k, c.into(&Common{}))
			d.Keys = append(d.Keys, k)
		}
	}
	return d
}

func (l *list[T]) describe() Table {
	d := describe(l.table)
	d.List = true
	return d
}

func (s *single[T]) describe() Table { return describe(s.table) }

// Names lists a table's keys.
func (t Table) Names() []string {
	names := make([]string, len(t.Keys))
	for i, k := range t.Keys {
		names[i] = k.Name
	}
	return names
}

// Find gives the table inside with that last name.
func (t Table) Find(name string) (Table, bool) {
	i := slices.IndexFunc(t.Sub, func(s Table) bool { return s.Name == name || lastName(s.Name) == name })
	if i < 0 {
		return Table{}, false
	}
	return t.Sub[i], true
}
