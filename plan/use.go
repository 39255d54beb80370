package plan

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"strings"

	"fixslate/plan/diag"
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
	case name == path.Base(src.Name):
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
	mergeRows(m, &sourceTable, &p.Sources, used.Sources)
	mergeRows(m, &toolTable, &p.Tools, used.Tools)
	mergeRows(m, &partTable, &p.Parts, used.Parts)
	mergeRows(m, &supplyTable, &p.Supplies, used.Supplies)
	mergeRows(m, &fastenerTable, &p.Fasteners, used.Fasteners)
	mergeRows(m, &fuseTable, &p.Fuses, used.Fuses)
	mergeRows(m, &wireTable, &p.Wires, used.Wires)
	mergeRows(m, &specTable, &p.Specs, used.Specs)
	mergeRows(m, &termTable, &p.Terms, used.Terms)
	mergeRows(m, &cautionTable, &p.Cautions, used.Cautions)
	mergeRows(m, &testTable, &p.Tests, used.Tests)
	if p.Voice == (Voice{}) {
		p.Voice = used.Voice
		m.copySpans("voice", "voice")
	}
	if !d.spans.Has("publish") {
		p.Publish = used.Publish
		m.copySpans("publish", "publish")
	}
	if len(p.Shoot.Gear) == 0 {
		p.Shoot.Gear = used.Shoot.Gear
		m.copySpans("shoot.gear", "shoot.gear")
	}
}

type merging struct {
	*decoder
	used *Spans
}

// mergeRows appends the elements whose id the plan does not have.
func mergeRows[T any](m *merging, t *table[T], rows *[]T, used []T) {
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
	}
}

// copySpans takes over the places of one element under its new path.
func (m *merging) copySpans(from, to string) {
	for path, e := range m.used.entries {
		if rest, ok := strings.CutPrefix(path, from); ok && (rest == "" || rest[0] == '.' || rest[0] == '[') {
			m.spans.entries[to+rest] = e
		}
	}
}
