package plan

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fixslate/plan/hazard/class"
	"fixslate/plan/trade"
)

// senses stand in for an instrument, by the words that people write for them.
var senses = map[string]string{
	"eyes": "eyes", "eye": "eyes", "sight": "eyes", "ears": "ears", "ear": "ears", "nose": "nose", "smell": "nose",
	"hand": "hand", "hands": "hand", "finger": "hand", "fingers": "hand", "touch": "hand", "feel": "hand",
}

// resolve turns every entry that names a thing into that thing's id, adds what
// is only named, and reports what is neither.
func (d *decoder) resolve() {
	d.visit(func(t target) {
		switch field := t.field.(type) {
		case *string:
			if len(t.key.Refs) > 0 && *field != "" {
				*field = d.idOf(t, t.path(), *field)
			}
		case *[]string:
			if len(t.key.Refs) == 0 {
				return
			}
			for i := range *field {
				(*field)[i] = d.idOf(t, entryPath(d.spans, t.path(), i), (*field)[i])
			}
		case *[]Ref:
			for i := range *field {
				(*field)[i] = d.refOf(t, entryPath(d.spans, t.path(), i), (*field)[i])
			}
		case *Exit:
			d.resolveExit(t, field)
		case *Condition:
			d.resolveCondition(t, field)
		}
	})
	for i := range d.plan.Steps {
		d.resolvePeople(&d.plan.Steps[i])
		d.resolveShots(i)
	}
	d.plan.Presenter = d.plan.presenter()
	for i := range d.plan.Tools {
		tool := &d.plan.Tools[i]
		if len(tool.Drives) == 0 {
			tool.Drives = trade.DrivesOf(tool.Name.Source)
		}
	}
	for i := range d.plan.Fuses {
		d.plan.Fuses[i].colour()
	}
	for i := range d.plan.Supplies {
		d.resolveGuard(i)
	}
	for i := range d.plan.Cautions {
		d.resolveHazard(i)
	}
	for i := range d.plan.Steps {
		for j := range d.plan.Steps[i].Cautions {
			d.resolveCaution(&d.plan.Steps[i].Cautions[j])
		}
	}
}

// colour fills in the colour that the form and rating of a fuse settle: where
// lists disagree, or nobody wrote the form, they do not.
func (f *Fuse) colour() {
	if amps, ok := f.Rating.Exactly(trade.Ampere); ok && f.Colour == "" && f.Form != "" {
		if known, ok := trade.FuseColour(f.Form, amps); ok && !known.Weak && known.Dispute == "" {
			f.Colour = known.Colour
		}
	}
}

// guarded are other words for what a supply protects, and what the catalogue
// calls it. A part of the body that is in neither is taken as it is written.
var guarded = map[string]string{
	"eye": class.Eyes, "sight": class.Eyes, "ear": class.Hearing, "ears": class.Hearing, "hand": class.Hands, "fingers": class.Hands,
	"lung": class.Lungs, "breath": class.Lungs, "breathing": class.Lungs, "foot": class.Feet, "toes": class.Feet, "heads": class.Head, "bodies": class.Body,
}

// resolveGuard settles what a supply protects, and reports a slip of the pen:
// gear for the "eyse" would be gear for nothing.
func (d *decoder) resolveGuard(i int) {
	s := &d.plan.Supplies[i]
	if known, ok := guarded[s.Protects]; ok {
		s.Protects = known
	}
	if s.Protects == "" || slices.Contains(class.BodyParts(), s.Protects) {
		return
	}
	for _, part := range class.BodyParts() {
		if class.Slips(s.Protects, part, 1) == 1 {
			d.fault("value-wrong", fmt.Sprintf("supply[%d].protects", i), fmt.Sprintf("did you mean %q", part), "protects knows no %q", s.Protects)
		}
	}
}

// entryPath is the path of entry i of a list, or of the list's one value.
func entryPath(spans *Spans, path string, i int) string {
	if inner := nth(path, i); spans.Has(inner) {
		return inner
	}
	return path
}

// idOf settles one entry of a key that takes ids of one table, and names where
// the key says so.
func (d *decoder) idOf(t target, path, entry string) string {
	kind := t.key.Refs[0]
	id := strings.TrimPrefix(entry, string(kind)+":")
	if len(d.plan.index[Ref{kind, id}]) > 0 {
		return id
	}
	if sense := senses[strings.ToLower(entry)]; t.key.Name == "instrument" && sense != "" {
		return sense
	}
	ids := d.plan.ids(kind)
	if named := d.named(kind, entry); named != "" {
		return named
	}
	near, isNear := Nearest(entry, ids)
	slip := isNear && class.Slips(entry, near, 2) <= 2 && class.Slips(entry, near, 2)*2 < len(entry)
	if t.key.Names && entry != "" && id == entry && !slip && !d.meantAsID(kind, entry) {
		return d.addNamed(kind, entry)
	}
	hint := fmt.Sprintf("add [[%s]] with id = %q", tableOf(kind), entry)
	switch {
	case isNear:
		hint = fmt.Sprintf("did you mean %q", near)
	case len(ids) > 0 && len(ids) <= 12:
		hint = fmt.Sprintf("the ids here are %s", quoted(ids))
	}
	d.fault("id-unknown", path, hint, "%s: there is no %s %q", t.key.Name, kind, entry)
	return entry
}

// meantAsID holds for an entry that is hardly a name: one with a hyphen, and for
// a source one word in small letters where the plan has sources of its own.
func (d *decoder) meantAsID(kind Kind, entry string) bool {
	return isID(entry) && (strings.Contains(entry, "-") || kind == KindSource && slices.ContainsFunc(d.plan.Sources, func(s Source) bool { return !s.Named }))
}

// tableOf is the table whose elements have ids of a kind.
func tableOf(kind Kind) string {
	if kind == KindPerson {
		return personTable.name
	}
	return string(kind)
}

// named finds a thing of a kind by its name, letter case aside.
func (d *decoder) named(kind Kind, name string) string {
	name = strings.TrimSpace(name)
	switch kind {
	case KindTool, KindPart, KindSupply, KindFastener, KindFuse, KindWire, KindCause, KindSource:
		return d.plan.rowsOf(kind).idNamed(name)
	case KindSetup:
		for i := range d.plan.Setups {
			s := &d.plan.Setups[i]
			if strings.EqualFold(name, s.Place.Source+", "+s.View.Source) || strings.EqualFold(name, s.Place.Source) && s.View.Source == "" {
				return s.ID
			}
		}
	}
	return ""
}

// addNamed adds a thing that is only named.
func (d *decoder) addNamed(kind Kind, name string) string {
	p := d.plan
	text := Text{Source: name}
	switch kind {
	case KindTool:
		return addRow(d, &toolTable, &p.Tools, Tool{Name: text, Named: true})
	case KindPart:
		return addRow(d, &partTable, &p.Parts, Part{Name: text, Count: 1, Named: true})
	case KindSupply:
		return addRow(d, &supplyTable, &p.Supplies, Supply{Name: text, Named: true})
	case KindFastener:
		return addRow(d, &fastenerTable, &p.Fasteners, Fastener{What: text, Reuse: true, Named: true})
	case KindFuse:
		return addRow(d, &fuseTable, &p.Fuses, Fuse{At: text, Named: true})
	case KindWire:
		return addRow(d, &wireTable, &p.Wires, Wire{Colour: name, Named: true})
	case KindCause:
		return addRow(d, &causeTable, &p.Causes, Cause{What: text})
	case KindSource:
		return addRow(d, &sourceTable, &p.Sources, Source{Title: text, Named: true})
	case KindSetup:
		place, view, _ := strings.Cut(name, ",")
		return addRow(d, &setupTable, &p.Setups, Setup{Place: Text{Source: strings.TrimSpace(place)}, View: Text{Source: strings.TrimSpace(view)}, Named: true})
	case KindPerson:
		return addRow(d, &personTable, &p.Shoot.People, Person{ID: slug(name), Adult: true})
	}
	return name
}

func addRow[T any](d *decoder, t *table[T], rows *[]T, row T) string {
	id := t.id(&row)
	if *id == "" {
		taken := map[string]bool{}
		for _, other := range d.plan.ids(t.kind) {
			taken[other] = true
		}
		*id = Unused(cmp.Or(slug(t.naming(&row)), string(t.kind)), taken)
	}
	if len(d.plan.index[Ref{t.kind, *id}]) == 0 {
		d.plan.index[Ref{t.kind, *id}] = []int{len(*rows)}
		*rows = append(*rows, row)
	}
	return *id
}

// refOf settles one piece of evidence.
func (d *decoder) refOf(t target, path string, ref Ref) Ref {
	var ids []string
	for _, kind := range t.key.Refs {
		if (ref.Kind == "" || ref.Kind == kind) && len(d.plan.index[Ref{kind, ref.ID}]) > 0 {
			return Ref{kind, ref.ID}
		}
		for _, id := range d.plan.ids(kind) {
			ids = append(ids, Ref{kind, id}.String())
		}
	}
	written := ref.ID
	if ref.Kind != "" {
		written = ref.String()
	}
	hint := "write test:ID or source:ID"
	if near, ok := Nearest(written, ids); ok {
		hint = fmt.Sprintf("did you mean %q", near)
	}
	d.fault("id-unknown", path, hint, "%s: there is no test and no source %q", t.key.Name, written)
	return ref
}

func (d *decoder) resolveExit(t target, e *Exit) {
	kind := KindStep
	switch e.Kind {
	case ToTest:
		kind = KindTest
	case ToStep:
	case Advice:
		for _, k := range []Kind{KindTest, KindStep} {
			if id := e.Text.Source; isID(id) && len(d.plan.index[Ref{k, id}]) > 0 {
				d.fault("value-wrong", t.path(), fmt.Sprintf("write %q", string(k)+":"+id), "%q is the id of a %s, and leads nowhere by itself", id, k)
				return
			}
		}
		return
	default:
		return
	}
	if len(d.plan.index[Ref{kind, e.ID}]) == 0 {
		d.unknown(t, kind, e.ID)
	}
}

func (d *decoder) unknown(t target, kind Kind, id string) {
	hint := ""
	if near, ok := Nearest(id, d.plan.ids(kind)); ok {
		hint = fmt.Sprintf("did you mean \"%s:%s\"", kind, near)
	} else if ids := d.plan.ids(kind); len(ids) > 0 && len(ids) <= 12 {
		hint = fmt.Sprintf("the ids of %ss are %s", kind, quoted(ids))
	}
	d.fault("id-unknown", t.path(), hint, "%s: there is no %s %q", t.key.Name, kind, id)
}

func (d *decoder) resolveCondition(t target, c *Condition) {
	if c.Test == "" {
		return
	}
	at := d.plan.index[Ref{KindTest, c.Test}]
	if len(at) == 0 {
		d.unknown(t, KindTest, c.Test)
		return
	}
	words := []string{"passes", "fails"}
	for _, i := range at {
		for _, o := range d.plan.Tests[i].Outcomes {
			words = append(words, o.ID)
		}
	}
	if !slices.Contains(words, c.Outcome) {
		d.fault("id-unknown", t.path(), "write "+choices(words, c.Outcome), "test %q has no outcome %q", c.Test, c.Outcome)
	}
}

// resolvePeople adds whom a step's cues name to its people.
func (d *decoder) resolvePeople(s *Step) {
	for _, c := range s.Cues {
		if c.Who != "" && !slices.Contains(s.People, c.Who) {
			s.People = append(s.People, c.Who)
		}
	}
	s.Narrated = cmp.Or(s.Narrated, d.plan.Voice.Narrated)
}

func (p *Plan) presenter() string {
	const usual = "presenter"
	cued := map[string]bool{}
	for i := range p.Steps {
		for _, c := range p.Steps[i].Cues {
			cued[c.Who] = true
		}
	}
	for _, who := range p.Shoot.People {
		if who.ID == usual {
			return usual
		}
	}
	for _, who := range p.Shoot.People {
		if !cued[who.ID] {
			return who.ID
		}
	}
	return usual
}

// resolveShots gives a step's own shots their ids.
func (d *decoder) resolveShots(step int) {
	s := &d.plan.Steps[step]
	taken := map[string]bool{}
	for i := range s.Shots {
		id := &s.Shots[i].ID
		path := fmt.Sprintf("step[%d].shot[%d].id", step, i)
		switch {
		case *id == "":
			*id = Unused(fmt.Sprintf("%s-%d", s.ID, i+1), taken)
		case !isID(*id):
			d.fault("value-wrong", path, fmt.Sprintf("write id = %q", cmp.Or(slug(*id), "shot")), "%q is no id; ids are lower-case letters, digits and hyphens", *id)
		case taken[*id]:
			d.fault("id-duplicate", path, "give it another id", "shot %q stands twice in the step", *id)
		}
		taken[*id] = true
	}
}
