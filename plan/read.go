package plan

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

// reader turns the decoded values of one file into the fields that the keys
// name, and collects a fault for each value that is not what the key takes.
type reader struct {
	src      *diag.Source
	spans    *Spans
	findings []diag.Finding
	rows     int // elements read so far
}

// maxRows bounds the elements of all tables of one file. A long plan has about
// a thousand.
const maxRows = 100_000

// fault reports something at the value of a path, or at the nearest thing
// around it that has a place.
func (r *reader) fault(rule, path, hint, format string, args ...any) {
	r.findings = append(r.findings, diag.Finding{
		Rule: rule, Severity: diag.Error, Path: path, Hint: hint,
		Message: fmt.Sprintf(format, args...), At: r.spans.Value(path),
	})
}

// faultKey reports something at the key of a path.
func (r *reader) faultKey(rule, path, hint, format string, args ...any) {
	r.fault(rule, path, hint, format, args...)
	r.findings[len(r.findings)-1].At = r.spans.Key(path)
}

// read fills one element from its values.
func (t *table[T]) read(r *reader, at *element, m map[string]any, v *T) {
	for name := range m {
		if !t.has(name) {
			r.unknownKey(t.name, t.names(), at, name)
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

// isBlank holds for text without a word in it: a key that is needed is then as
// good as missing.
func isBlank(value any) bool {
	text, ok := value.(string)
	return ok && strings.TrimSpace(text) == ""
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
			r.fault("type-wrong", inner.path, "write it in braces: { … }", "an entry of %q is a table, not %s", name, typeOf(row))
			continue
		}
		var v T
		preset(&v)
		l.table.read(r, inner, m, &v)
		*l.rows = append(*l.rows, v)
	}
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

// value fills one field. A "?" is a value that is not known yet: fields that
// can't hold words stay unset; fill lists them all.
func (r *reader) value(t target, value any) {
	if value == "?" && t.key.Name != "id" {
		switch t.field.(type) {
		case *bool, *int, *float64, *Clock, *Date, *Share, *Exit, *Condition, *ChapterMark, *[]string, *[]Ref, *[]StepCaution:
			return
		case *string:
			if len(t.key.Words) > 0 || len(t.key.Refs) > 0 {
				return
			}
		}
	}
	var err error
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
		*field, err = parsed(r, t, value, "a duration like \"4m\"", parseDuration)
	case *Clock:
		*field = r.clock(t, value)
	case *Date:
		*field = r.date(t, value)
	case *trade.Measure:
		*field, err = parsed(r, t, value, "a value with its unit, as text", measureLike(t.key.Example))
	case *Share:
		*field = r.share(t, value)
	case *Exit:
		*field, err = parsed(r, t, value, "text", parseExit)
	case *Condition:
		*field, err = parsed(r, t, value, "text", parseCondition)
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
	if err != nil {
		r.fault("value-wrong", t.path(), "", "%s: %v", t.key.Name, err)
	}
}

func (r *reader) wrongType(t target, value any, want string) {
	hint := ""
	switch value.(type) {
	case int64, float64, bool, time.Time:
		if strings.Contains(want, "text") || strings.Contains(want, "like") {
			hint = fmt.Sprintf("write %s = %s", t.key.Name, t.key.Example)
		}
	}
	r.fault("type-wrong", t.path(), hint, "%s takes %s, not %s", t.key.Name, want, typeOf(value))
}

func (r *reader) text(t target, value any) string {
	s, ok := value.(string)
	if !ok {
		r.wrongType(t, value, "text in quotes")
	}
	return s
}

// word reads text that may be limited to some words.
func (r *reader) word(t target, value any) string {
	s := r.text(t, value)
	if _, isText := value.(string); isText {
		r.allowed(t, t.path(), s)
	}
	return s
}

func (r *reader) allowed(t target, path, s string) {
	if len(t.key.Words) == 0 || slices.Contains(t.key.Words, s) {
		return
	}
	r.fault("value-wrong", path, "write "+choices(t.key.Words, s), "%s knows no %q", t.key.Name, s)
}

// list reads a list of texts; one text alone is a list of one.
func (r *reader) list(t target, value any) []string {
	return parsedList(r, t, value, func(s string) (string, error) { return s, nil })
}

func parsedList[V any](r *reader, t target, value any, parse func(string) (V, error)) []V {
	entries, isList := value.([]any)
	if !isList {
		s, isText := value.(string)
		if !isText {
			r.wrongType(t, value, "a list of texts like "+t.key.Example)
			return nil
		}
		entries = []any{s}
	}
	var out []V
	for i, entry := range entries {
		path := t.path()
		if isList {
			path = nth(path, i)
		}
		s, ok := entry.(string)
		if !ok {
			r.fault("type-wrong", path, "write a list of texts like "+t.key.Example, "an entry of %s is text in quotes, not %s", t.key.Name, typeOf(entry))
			continue
		}
		v, err := parse(s)
		if err != nil {
			r.fault("value-wrong", path, "", "%s: %v", t.key.Name, err)
			continue
		}
		r.allowed(t, path, s)
		out = append(out, v)
	}
	return out
}

func parsed[V any](r *reader, t target, value any, want string, parse func(string) (V, error)) (V, error) {
	var zero V
	s, ok := value.(string)
	if !ok {
		if n, isNumber := numberOf(value); isNumber {
			hint := fmt.Sprintf("write it in quotes with its unit: %s = %s", t.key.Name, t.key.Example)
			if strings.HasPrefix(want, "a duration") && n >= 0 {
				hint = fmt.Sprintf("write %s = \"%vm\" for minutes, \"%vs\" for seconds, \"%vh\" for hours", t.key.Name, n, n, n)
			}
			r.fault("value-wrong", t.path(), hint, "%s = %v has no unit", t.key.Name, n)
			return zero, nil
		}
		r.wrongType(t, value, want)
		return zero, nil
	}
	return parse(s)
}

func numberOf(value any) (float64, bool) {
	switch v := value.(type) {
	case int64:
		return float64(v), true
	case float64:
		return v, true
	}
	return 0, false
}

// Numbers of a plan are counts and limits: never negative, never over a
// million.
const maxNumber = 1e6

func (r *reader) number(t target, value any) float64 {
	n, ok := numberOf(value)
	switch {
	case !ok:
		r.wrongType(t, value, "a number")
		return 0
	case math.IsNaN(n) || math.IsInf(n, 0):
		r.fault("value-wrong", t.path(), "", "%s is no number that can be counted with", t.key.Name)
		return 0
	case n <= 0:
		r.fault("value-wrong", t.path(), "write "+t.key.Name+" = "+t.key.Example, "%s must be over zero", t.key.Name)
		return 0
	case n > maxNumber:
		r.fault("value-wrong", t.path(), "write "+t.key.Name+" = "+t.key.Example, "%s is over a million", t.key.Name)
		return 0
	}
	return n
}

func (r *reader) whole(t target, value any) int {
	if _, ok := value.(float64); ok {
		r.wrongType(t, value, "a whole number")
		return 0
	}
	return int(r.number(t, value))
}

func (r *reader) clock(t target, value any) Clock {
	if at, ok := value.(time.Time); ok && at.Year() == 0 { // a TOML local time
		return Clock{at.Hour()*60 + at.Minute(), true}
	}
	c, err := parsed(r, t, value, "a time like \"09:30\"", parseClock)
	if err != nil {
		r.fault("value-wrong", t.path(), "", "%s: %v", t.key.Name, err)
	}
	return c
}

func (r *reader) date(t target, value any) Date {
	// BurntSushi/toml puts local dates into the machine's zone; the calendar
	// day in the value's own zone is what stands in the file.
	if at, ok := value.(time.Time); ok && at.Year() > 0 {
		return dateOf(at)
	}
	if s, ok := value.(string); ok && s == "?" {
		return Date{}
	}
	d, err := parsed(r, t, value, "a date like 2026-11-25", parseDate)
	if err != nil {
		r.fault("value-wrong", t.path(), "", "%s: %v", t.key.Name, err)
	}
	return d
}

func (r *reader) share(t target, value any) Share {
	if n, ok := numberOf(value); ok {
		if !(n > 0 && n <= 1) {
			r.fault("value-wrong", t.path(), `write a probability like 0.3, or "usual", "sometimes", "rare"`, "share = %v is no probability from 0 to 1", n)
			return Share{}
		}
		return Share{Number: n}
	}
	s := r.text(t, value)
	if words := []string{"usual", "sometimes", "rare"}; s != "" && !slices.Contains(words, s) {
		r.fault("value-wrong", t.path(), "write "+choices(words, s)+", or a probability like 0.3", "share knows no %q", s)
		return Share{}
	}
	return Share{Word: s}
}

func (r *reader) chapter(t target, value any) ChapterMark {
	switch v := value.(type) {
	case bool:
		return ChapterMark{Joined: !v}
	case string:
		return ChapterMark{Title: Text{Source: v}}
	}
	r.wrongType(t, value, "false, or a title as text")
	return ChapterMark{}
}
