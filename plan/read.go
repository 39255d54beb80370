package plan

import (
	"fmt"
	"strings"

	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

// reader turns the decoded values of one file into the fields that the keys
// name, and collects a fault for each value that is not what the key takes.
type reader struct {
	faults
	rows int // elements read so far
}

// faults collects what is wrong at the places of a plan.
type faults struct {
	spans    *Spans
	findings []diag.Finding
}

// maxRows bounds the elements of all tables of one file. A long plan has about
// a thousand.
const maxRows = 100_000

// fault reports something at the value of a path, or at the nearest thing
// around it that has a place.
func (f *faults) fault(rule, path, hint, format string, args ...any) {
	f.findings = append(f.findings, diag.Finding{
		Rule: rule, Severity: diag.Error, Path: path, Hint: hint,
		Message: fmt.Sprintf(format, args...), At: f.spans.Value(path),
	})
}

// faultKey reports something at the key of a path.
func (f *faults) faultKey(rule, path, hint, format string, args ...any) {
	f.fault(rule, path, hint, format, args...)
	f.findings[len(f.findings)-1].At = f.spans.Key(path)
}

// read fills one element from its values.
func (t *table[T]) read(r *reader, at *element, m map[string]any, v *T) {
	for name := range m {
		if !t.has(name) {
			r.unknownKey(t.name, t.names(), at, name, m[name])
		}
	}
	for i := range t.keys {
		k := &t.keys[i]
		value, written := m[k.Name]
		if !written || k.Need && isBlank(value) {
			if k.Need {
				r.missingKey(t.name, at, &k.Key)
			}
			continue
		}
		field := k.into(v)
		if inner, ok := field.(part); ok {
			inner.read(r, at, k.Name, value)
			continue
		}
		r.value(target{&k.Key, field, at}, value)
	}
	if t.common == nil {
		return
	}
	common := t.common(v)
	for i := range commonKeys {
		if value, written := m[commonKeys[i].Name]; written {
			r.value(target{&commonKeys[i].Key, commonKeys[i].into(common), at}, value)
		}
	}
}

// isBlank holds for text without a word in it and for a list without an entry: a
// key that is needed is then as good as missing.
func isBlank(value any) bool {
	switch value := value.(type) {
	case string:
		return strings.TrimSpace(value) == ""
	case []any:
		return len(value) == 0
	}
	return false
}

func (s *single[T]) read(r *reader, at *element, name string, value any) {
	m, ok := value.(map[string]any)
	inner := child(at, s.table.kind, name, -1)
	if !ok {
		r.fault("type-wrong", inner.path, fmt.Sprintf("write it as a table: [%s]", s.table.name), "%q is a table, not %s", name, typeOf(value))
		return
	}
	s.table.read(r, inner, m, s.row)
}

func (l *list[T]) read(r *reader, at *element, name string, value any) {
	rows, bad := asRows(value)
	if bad {
		path := child(at, l.table.kind, name, -1).path
		r.fault("type-wrong", path, fmt.Sprintf("write each as [[%s]], or as %s = [{ … }]", l.table.name, name), "%q is a list of tables, not %s", name, typeOf(value))
		return
	}
	if r.rows += len(rows); r.rows > maxRows {
		r.fault("too-large", child(at, l.table.kind, name, -1).path, "split the video into several plans", "the file has more than %d table entries", maxRows)
		return
	}
	*l.rows = make([]T, 0, len(rows))
	for i, row := range rows {
		inner := child(at, l.table.kind, name, i)
		m, ok := row.(map[string]any)
		if !ok {
			r.fault("type-wrong", inner.path, "write it in braces: "+l.table.inBraces(row), "an entry of %q is a table, not %s", name, typeOf(row))
			continue
		}
		var v T
		preset(&v)
		l.table.read(r, inner, m, &v)
		*l.rows = append(*l.rows, v)
	}
}

// inBraces writes a text that stands for an element as the element: the text is
// most likely the first key that it needs.
func (t *table[T]) inBraces(row any) string {
	text, ok := row.(string)
	for i := range t.keys {
		if ok && t.keys[i].Need {
			return fmt.Sprintf("{ %s = %q }", t.keys[i].Name, text)
		}
	}
	return "{ … }"
}

// preset gives an element the defaults that are not Go's zero values.
func preset(v any) {
	switch v := v.(type) {
	case *Part:
		v.Count = 1
	case *Fastener:
		v.Reuse = true
	case *Person:
		v.Adult = true
	case *Shot:
		v.Takes = 1
	}
}

func asRows(value any) (rows []any, bad bool) {
	switch value := value.(type) {
	case []map[string]any:
		for _, m := range value {
			rows = append(rows, m)
		}
	case []any:
		rows = value
	default:
		return nil, true
	}
	return rows, false
}

// holdsWords holds for a field that a "?" can be written into.
func (t *target) holdsWords() bool {
	switch t.field.(type) {
	case *string:
		return len(t.key.Words) == 0 && len(t.key.Refs) == 0 && !t.key.Settles
	case *Text, *Note, *Value, narration, *Duration, *trade.Measure:
		return true
	}
	return false
}

// value fills one field. A "?" is a value that is not known yet: fields that
// can't hold words stay unset; fill lists them all.
func (r *reader) value(t target, value any) {
	if value == "?" && t.key.Name != "id" && !t.holdsWords() {
		return
	}
	switch field := t.field.(type) {
	case *string:
		*field = r.word(t, value)
	case *[]string:
		*field = r.list(t, value)
	case *Text:
		field.Source = r.text(t, value)
	case *Note:
		field.Source = r.text(t, value)
	case *Value:
		field.Source = r.text(t, value)
	case narration:
		field.step.Say = r.text(t, value)
	case *bool:
		v, ok := value.(bool)
		if !ok {
			r.wrongType(t, value, "true or false")
		}
		*field = v
	case *int:
		*field = r.whole(t, value)
	case *float64:
		*field = r.number(t, value)
	case *Duration:
		*field = parsed(r, t, value, "a duration like \"4m\"", ParseDuration)
	case *Clock:
		*field = r.clock(t, value)
	case *Date:
		*field = r.date(t, value)
	case *trade.Measure:
		*field = parsed(r, t, value, "a value with its unit, as text", measureLike(t.key.Example))
	case *Share:
		*field = r.share(t, value)
	case *Exit:
		*field = parsed(r, t, value, "text", parseExit)
	case *Condition:
		*field = parsed(r, t, value, "text", parseCondition)
	case *ChapterMark:
		*field = r.chapter(t, value)
	case *[]Break:
		*field = parsedList(r, t, value, parseBreak)
	case *[]trade.Drive:
		*field = parsedList(r, t, value, parseDrive)
	case *[]ShotNeed:
		*field = parsedList(r, t, value, parseShotNeed)
		if *field == nil {
			*field = []ShotNeed{} // needs = [] says something: it needs nothing
		}
	case *[]Ref:
		*field = parsedList(r, t, value, parseRef)
	case *[]StepCaution:
		*field = r.cautionUses(t, value)
	default:
		panic(fmt.Sprintf("plan: no reader for %T", field)) // a key of our own without a reader; a test reads them all
	}
}
