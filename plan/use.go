package plan

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"reflect"
	"slices"
	"strings"

	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
	"fixslate/plan/trade"
)

// useFiles reads the files that the plan uses and adds what they hold. Their
// elements stand behind the plan's own, so that paths of the plan keep their
// numbers; the same id in the plan wins, with a note.
func (d *decoder) useFiles(src *diag.Source, files fs.FS) {
	for i, name := range d.plan.Use {
		at := fmt.Sprintf("use[%d]", i)
		if !d.spans.Has(at) {
			at = "use"
		}
		raw, why, hint := readUse(src, files, name)
		if slices.ContainsFunc(d.plan.Use[:i], func(n string) bool { return path.Clean(n) == path.Clean(name) }) {
			why, hint = "stands in the list twice", "take one of the two out"
		}
		if why != "" {
			d.fault("use-refused", at, hint, "%q %s", name, why)
			continue
		}
		used, faults := diag.NewSource(path.Join(path.Dir(src.Name), name), raw)
		if len(faults) > 0 {
			d.findings = append(d.findings, faults...)
			continue
		}
		var p Plan
		spans, findings := decodeFile(used, &p, usable)
		d.findings = append(d.findings, findings...)
		if spans != nil {
			d.merge(&p, spans)
		}
	}
}

// readUse opens a used file, only inside the folder of the plan and below.
func readUse(src *diag.Source, files fs.FS, name string) (raw []byte, why, hint string) {
	switch {
	case path.Clean(name) == path.Base(src.Name):
		return nil, "is the plan itself", "name another file"
	case strings.Contains(name, `\`), path.IsAbs(name), !fs.ValidPath(path.Clean(name)), strings.ContainsRune(name, 0):
		return nil, "is not inside the plan's folder", "name a file beside the plan, or in a folder below it, with /"
	case files == nil:
		return nil, "can't be read: the plan came without a folder", "save the plan in a folder of its own"
	}
	info, err := fs.Stat(files, path.Clean(name))
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, "is not there", "check the name; it is read from the plan's folder"
	case err != nil:
		return nil, "can't be read: " + reason(err), "name a file beside the plan, or in a folder below it"
	case !info.Mode().IsRegular():
		return nil, "is no file", "name a TOML file"
	case info.Size() > diag.MaxBytes:
		return nil, fmt.Sprintf("has more than %d MB", diag.MaxBytes>>20), "name a smaller file"
	}
	raw, err = fs.ReadFile(files, path.Clean(name))
	if err != nil {
		return nil, "can't be read: " + reason(err), "check the file"
	}
	return raw, "", ""
}

// reason is an error without the operation and the path in front: those are
// the machine's, and the name stands in the message.
func reason(err error) string {
	var at *fs.PathError
	if errors.As(err, &at) {
		err = at.Err
	}
	if strings.Contains(err.Error(), "escapes from parent") { // os.Root has no error value of it
		return "it is a link that leads out of the plan's folder"
	}
	return err.Error()
}

// merge adds what a used file holds.
func (d *decoder) merge(used *Plan, spans *Spans) {
	p := d.plan
	m := &merging{d, spans}
	for _, kind := range quotable { // of those that no used file may hold there are none
		p.rowsOf(kind).merge(m, used.rowsOf(kind))
	}
	mergeKeys(m, &voiceTable, &p.Voice, &used.Voice)
	mergeKeys(m, &publishTable, &p.Publish, &used.Publish)
	if len(p.Shoot.Gear) == 0 {
		p.Shoot.Gear = used.Shoot.Gear
		m.copySpans("shoot.gear", "shoot.gear")
	}
}

type merging struct {
	*decoder
	used *Spans
}

// merge appends the elements whose id the plan does not have.
func (l *list[T]) merge(m *merging, shared rows) {
	t, rows, used := l.table, l.rows, *shared.(*list[T]).rows
	own := map[string]int{}
	for i := range *rows {
		own[*t.id(&(*rows)[i])] = i
	}
	for i := range used {
		id := *t.id(&used[i])
		from := nth(t.name, i)
		if at, taken := own[id]; taken && id != "" {
			m.findings = append(m.findings, diag.Finding{
				Rule: "id-duplicate", Severity: diag.Note, Path: fmt.Sprintf("%s[%d].id", t.name, at), At: m.used.Value(from + ".id"),
				Message: fmt.Sprintf("%s %q stands in the plan too; the plan's is used", t.name, id),
				Hint:    "give one of them another id if both are wanted",
			})
			continue
		}
		m.copySpans(from, nth(t.name, len(*rows)))
		*rows = append(*rows, used[i])
		t.common(&(*rows)[len(*rows)-1]).used = true
	}
}

// mergeKeys takes over the keys of a table that the plan does not write itself.
func mergeKeys[T any](m *merging, t *table[T], row, used *T) {
	take := func(name string, to, from any) {
		if path := join(t.name, name); m.used.Has(path) && !m.spans.Has(path) {
			reflect.ValueOf(to).Elem().Set(reflect.ValueOf(from).Elem())
			m.copySpans(path, path)
		}
	}
	for i := range t.keys {
		take(t.keys[i].Name, t.keys[i].into(row), t.keys[i].into(used))
	}
	for i := range commonKeys {
		take(commonKeys[i].Name, commonKeys[i].into(t.common(row)), commonKeys[i].into(t.common(used)))
	}
}

// spare marks what a used file offers and this plan does not take: a file that
// many plans share puts nothing on the lists of one that leaves it alone.
func (d *decoder) spare() {
	p := d.plan
	for i := range p.Tools {
		t := &p.Tools[i]
		t.Spare = t.used && !p.takes(func(s *Step) []string { return s.Tools }, t.ID) && !p.measuresWith(t.ID) && !p.turnsWith(t)
	}
	for i := range p.Parts {
		v := &p.Parts[i]
		v.Spare = v.used && !p.takes(func(s *Step) []string { return s.Parts }, v.ID)
	}
	for i := range p.Cautions {
		c := &p.Cautions[i]
		c.Spare = c.used && !p.takes(func(s *Step) []string {
			var ids []string
			for _, use := range s.Cautions {
				ids = append(ids, use.ID)
			}
			return ids
		}, c.ID)
	}
	for i := range p.Supplies {
		v := &p.Supplies[i]
		v.Spare = v.used && !p.takes(func(s *Step) []string { return s.Supplies }, v.ID) && !p.guards(v.Protects)
	}
	p.spareSources()
}

// spareSources marks the sources of used files that nothing in the plan cites:
// no fact of its own, none of a used file that a step takes or a text quotes,
// no claim.
func (p *Plan) spareSources() {
	if !slices.ContainsFunc(p.Sources, func(s Source) bool { return s.used }) {
		return
	}
	met := map[Ref]bool{} // quoted by a text, taken by a step
	for _, w := range p.Texts() {
		for _, q := range w.Quotes {
			met[q.Ref] = true
		}
	}
	for i := range p.Steps {
		s := &p.Steps[i]
		for kind, ids := range map[Kind][]string{KindPart: s.Parts, KindFastener: s.Fasteners, KindFuse: s.Fuses, KindWire: s.Wires, KindTest: s.Tests} {
			for _, id := range ids {
				met[Ref{kind, id}] = true
			}
		}
	}
	cited := map[string]bool{}
	for _, f := range p.Facts() {
		for _, id := range p.Cites(f.Ref) {
			cited[id] = cited[id] || !f.Common.used || met[f.Ref]
		}
	}
	for i := range p.Claims {
		for _, ref := range p.Claims[i].Evidence {
			cited[ref.ID] = cited[ref.ID] || ref.Kind == KindSource
		}
	}
	for i := range p.Sources {
		s := &p.Sources[i]
		s.Spare = s.used && !cited[s.ID] && !met[Ref{KindSource, s.ID}]
	}
}

func (p *Plan) takes(list func(*Step) []string, id string) bool {
	return slices.ContainsFunc(p.Steps, func(s Step) bool { return slices.Contains(list(&s), id) })
}

// guards holds where a caution of the plan asks for gear of that kind.
func (p *Plan) guards(protects string) bool {
	return protects != "" && slices.ContainsFunc(p.Cautions, func(c Caution) bool {
		stock, ok := class.Find(c.Class)
		return ok && !c.Spare && slices.ContainsFunc(stock.Gear, func(g class.Gear) bool { return g.Protects == protects })
	})
}

func (p *Plan) measuresWith(tool string) bool {
	return slices.ContainsFunc(p.Tests, func(t Test) bool {
		return slices.Contains(t.Instrument, tool) ||
			slices.ContainsFunc(t.Readings, func(r Reading) bool { return slices.Contains(r.Instrument, tool) })
	})
}

// turnsWith holds for a tool that turns a fastener of a step.
func (p *Plan) turnsWith(t *Tool) bool {
	for i := range p.Fasteners {
		f := &p.Fasteners[i]
		if !p.takes(func(s *Step) []string { return s.Fasteners }, f.ID) {
			continue
		}
		for _, drive := range trade.ParseDrives(f.Drive) {
			if slices.ContainsFunc(t.Drives, func(d trade.Drive) bool { return d.Turns(drive) }) {
				return true
			}
		}
	}
	return false
}

// copySpans takes over the places of one element under its new path.
func (m *merging) copySpans(from, to string) {
	for path, e := range m.used.entries {
		if rest, ok := strings.CutPrefix(path, from); ok && (rest == "" || rest[0] == '.' || rest[0] == '[') {
			m.spans.entries[to+rest] = e
		}
	}
}
