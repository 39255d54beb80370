package plan

import (
	"fmt"
	"strings"
)

// Remark is what somebody wrote beside a thing: a note, or whom to ask about it.
type Remark struct {
	Path   string // of the thing's table
	What   string // the thing in words
	Common *Common
}

// Remarks are the tables with a note or something to verify, in the order of the
// language; for what stands again for other versions, one each.
func (p *Plan) Remarks() []Remark {
	var out []Remark
	planTable.visit(&element{step: -1}, p, func(t target) {
		c := t.at.common
		if t.key.Name != "note" || c.Spare || c.Verify == "" && c.Note.Source == "" {
			return // once a table, at the last of the keys that all have
		}
		out = append(out, Remark{t.at.path, p.inWords(t.at), c})
	})
	return out
}

// inWords is what the thing of a table is called; one without a name is the first,
// second … of its kind in what holds it.
func (p *Plan) inWords(at *element) string {
	if ref := p.RefAt(at.path); ref.ID != "" && at.kind == ref.Kind {
		return p.NameFor(ref, at.common.Variants)
	}
	words := at.path
	if at.parent != nil && at.parent.path != "" {
		words = strings.TrimPrefix(words, at.parent.path+".")
	}
	if name, rest, isList := strings.Cut(words, "["); isList {
		var i int
		_, _ = fmt.Sscanf(rest, "%d", &i) // a path of ours
		words = fmt.Sprintf("%s %d", name, i+1)
	}
	if at.parent != nil && at.parent.kind != "" {
		words += " of " + p.inWords(at.parent)
	}
	return words
}
