package plan

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
)

// Addition is a class of hazard whose caution a step is to list.
type Addition struct {
	Step  int
	Class string
}

// insertion is text put into a source at an offset.
type insertion struct {
	at   int
	text string
}

// AddCautions writes cautions into a plan's own bytes: each class into the
// list of its steps, and a [[caution]] of that id with the class's usual words,
// for the author to make them theirs. Every other byte stays as it was, line
// ends and byte order mark included. The caller decodes the result: a plan laid
// out in a way that this does not foresee must be refused, not guessed at.
func AddCautions(src *diag.Source, spans *Spans, p *Plan, add []Addition) []byte {
	var all []insertion
	bySteps := map[int][]string{}
	var fresh []string // classes that the plan has no words for yet
	for _, a := range add {
		if !slices.Contains(bySteps[a.Step], a.Class) {
			bySteps[a.Step] = append(bySteps[a.Step], a.Class)
		}
		written := slices.ContainsFunc(p.Cautions, func(c Caution) bool { return c.ID == a.Class && !c.Stock })
		if !written && !slices.Contains(fresh, a.Class) {
			fresh = append(fresh, a.Class)
		}
	}
	for step, classes := range bySteps {
		all = append(all, listInStep(src, spans, step, classes)...)
	}
	if len(fresh) > 0 {
		all = append(all, usualWords(src, spans, fresh))
	}
	slices.SortFunc(all, func(a, b insertion) int { return cmp.Compare(a.at, b.at) })
	return insert(src, all)
}

// listInStep puts classes into a step's list of cautions: behind its last
// entry, or as a new key behind the title. One name without brackets is given
// them.
func listInStep(src *diag.Source, spans *Spans, step int, classes []string) []insertion {
	var quoted []string
	for _, c := range classes {
		quoted = append(quoted, fmt.Sprintf("%q", c))
	}
	path := fmt.Sprintf("step[%d].cautions", step)
	last := -1
	for i := 0; spans.Has(nth(path, i)); i++ {
		last = i
	}
	if last >= 0 {
		end := valueEnd(src.Text, spans.entries[nth(path, last)].value)
		return []insertion{{end, ", " + strings.Join(quoted, ", ")}}
	}
	if spans.Has(path) {
		if open := openingBracket(src, spans.Key(path).Span.End); open >= 0 { // an empty list
			return []insertion{{open + 1, strings.Join(quoted, ", ")}}
		}
		at := spans.entries[path].value
		return []insertion{{at.Start, "["}, {at.End, ", " + strings.Join(quoted, ", ") + "]"}}
	}
	key := "cautions = [" + strings.Join(quoted, ", ") + "]"
	title := spans.entries[fmt.Sprintf("step[%d].title", step)]
	if header := spans.entries[fmt.Sprintf("step[%d]", step)].value; strings.HasPrefix(src.Text[header.Start:], "{") {
		return []insertion{{title.value.End, ", " + key}}
	}
	lineStart := strings.LastIndexByte(src.Text[:title.key.Start], '\n') + 1
	indent := src.Text[lineStart:title.key.Start]
	if strings.TrimSpace(indent) != "" {
		indent = ""
	}
	return []insertion{{lineEnd(src.Text, title.value.End), "\n" + indent + key}}
}

// openingBracket is where the list of a key that ends at an offset opens, -1
// where its value is none.
func openingBracket(src *diag.Source, keyEnd int) int {
	value := strings.TrimLeft(src.Text[keyEnd:], " \t=")
	if !strings.HasPrefix(value, "[") {
		return -1
	}
	return len(src.Text) - len(value)
}

// usualWords are tables with the classes' usual words, behind everything else, or
// in the list where the plan writes its cautions as one.
func usualWords(src *diag.Source, spans *Spans, classes []string) insertion {
	last := -1
	for i := 0; spans.entries[fmt.Sprintf("caution[%d]", i)].src == src; i++ {
		last = i
	}
	if last >= 0 {
		at := spans.entries[fmt.Sprintf("caution[%d]", last)].value
		if strings.HasPrefix(src.Text[at.Start:], "{") {
			return insertion{valueEnd(src.Text, at), inlineRows(classes)}
		}
	}
	if open := emptyList(src, spans, "caution"); open >= 0 {
		return insertion{open + 1, strings.TrimPrefix(inlineRows(classes), ",")}
	}
	var b strings.Builder
	if !strings.HasSuffix(src.Text, "\n") {
		b.WriteByte('\n')
	}
	b.WriteString("\n# The usual words; make them yours. Local codes and the maker's instructions come first.")
	for _, id := range classes {
		c, _ := class.Find(id)
		fmt.Fprintf(&b, "\n[[caution]]\nid = %q\nhazard = %q\nsay = %q\ncard = %q\n", id, id, c.Spoken, c.Card)
	}
	return insertion{len(src.Text), b.String()}
}

// inlineRows are entries of an inline list with the classes' usual words, a comma
// before each.
func inlineRows(classes []string) string {
	var b strings.Builder
	for _, id := range classes {
		c, _ := class.Find(id)
		fmt.Fprintf(&b, ",\n  { id = %q, hazard = %q, say = %q, card = %q }", id, id, c.Spoken, c.Card)
	}
	return b.String()
}

// emptyList is where an inline list of tables opens that holds none, -1 where
// there is no such list in the file.
func emptyList(src *diag.Source, spans *Spans, table string) int {
	e, ok := spans.entries[table]
	if !ok || e.src != src || e.key.End <= e.key.Start {
		return -1
	}
	return openingBracket(src, e.key.End)
}

// valueEnd is the end of a value: of an inline table behind its closing brace,
// since its span is the opening one.
func valueEnd(text string, at diag.Span) int {
	if !strings.HasPrefix(text[at.Start:], "{") {
		return at.End
	}
	depth := 0
	for i := at.Start; i < len(text); {
		switch text[i] {
		case '"', '\'':
			i += max(1, literalLength(text[i:]))
			continue
		case '#':
			i = lineEnd(text, i)
			continue
		case '{', '[':
			depth++
		case '}', ']':
			if depth--; depth == 0 {
				return i + 1
			}
		}
		i++
	}
	return at.End
}

// lineEnd is the end of the line that an offset stands in.
func lineEnd(text string, at int) int {
	if n := strings.IndexByte(text[at:], '\n'); n >= 0 {
		return at + n
	}
	return len(text)
}

// insert puts sorted insertions into the raw bytes of a source, in the line
// ends that the file has.
func insert(src *diag.Source, all []insertion) []byte {
	raw := string(src.Raw)
	crlf := strings.Contains(raw, "\r\n")
	var b strings.Builder
	text := strings.TrimPrefix(raw, "\xef\xbb\xbf")
	b.WriteString(raw[:len(raw)-len(text)])
	at, seen := 0, 0 // offset in text, and in src.Text
	for _, in := range all {
		for seen < in.at {
			if text[at] == '\r' && at+1 < len(text) && text[at+1] == '\n' {
				b.WriteByte('\r')
				at++
			}
			b.WriteByte(text[at])
			at++
			seen++
		}
		put := in.text
		if crlf {
			put = strings.ReplaceAll(put, "\n", "\r\n")
		}
		b.WriteString(put)
	}
	b.WriteString(text[at:])
	return []byte(b.String())
}
