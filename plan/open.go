package plan

import (
	"cmp"
	"strconv"
	"strings"
)

// What is written "?" is listed while the texts are filled, and named when all are.

// openPaths are the places of values that are written "?".
func (d *decoder) openPaths() map[string]bool {
	open := map[string]bool{}
	for path, e := range d.spans.entries {
		if !e.literal || e.value.End-e.value.Start != len(`"?"`) {
			continue
		}
		if raw := e.src.Text[e.value.Start:e.value.End]; raw == `"?"` || raw == `'?'` {
			open[path] = true
			if entry := strings.LastIndexByte(path, '['); strings.HasSuffix(path, "]") { // one of a list
				open[path[:entry]] = true
			}
		}
	}
	return open
}

// noteOpen lists a value that is written "?".
func (d *decoder) noteOpen(t target) {
	o := Open{Path: t.path(), Key: t.key.Name, Variants: t.at.variants}
	for at := t.at; at != nil; at = at.parent {
		if at.common != nil && o.Verify == "" {
			o.Verify = at.common.Verify
		}
		if at.kind != "" {
			if rows := d.rowOf(at); rows != "" {
				o.Ref = Ref{at.kind, rows}
				break
			}
		}
	}
	d.plan.Open = append(d.plan.Open, o)
}

// rowOf is the id of the element at a path like "fastener[2]".
func (d *decoder) rowOf(at *element) string {
	open := strings.LastIndexByte(at.path, '[')
	i, err := strconv.Atoi(strings.TrimSuffix(at.path[open+1:], "]"))
	if err != nil {
		return ""
	}
	return d.plan.rowsOf(at.kind).idAt(i)
}

// nameOpen puts the things of open values into words, when all are filled.
func (d *decoder) nameOpen() {
	for i := range d.plan.Open {
		o := &d.plan.Open[i]
		o.What = cmp.Or(strings.TrimSuffix(strings.TrimSuffix(o.Path, o.Key), "."), o.Key)
		if o.Ref.ID != "" {
			o.What = d.plan.Name(o.Ref)
		}
	}
}
