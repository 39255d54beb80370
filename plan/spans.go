package plan

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2/unstable"

	"fixslate/plan/diag"
)

// Spans tells where everything of a plan stands in its files: "step[2].say"
// and the words in it. BurntSushi/toml, which decodes, keeps no position of a
// value and names the last line for an error in an array of tables; so the
// same bytes are walked once more with go-toml's unstable parser, and this
// file is the only one that knows it. The package promises no API; its version
// is pinned, and a test holds that every decoded key has a span.
type Spans struct {
	entries map[string]entry
	whole   diag.Place // for paths that stand nowhere
}

type entry struct {
	src        *diag.Source
	key, value diag.Span
	literal    bool // the value is a string literal
}

// Value is the place of a path's value, of a table's header, or of the nearest
// thing around a path that was not written.
func (s *Spans) Value(path string) diag.Place {
	e, ok := s.nearest(path)
	if !ok {
		return s.whole
	}
	return diag.Place{Source: e.src, Span: e.value}
}

// Key is the place of a path's key.
func (s *Spans) Key(path string) diag.Place {
	e, ok := s.nearest(path)
	if !ok {
		return s.whole
	}
	return diag.Place{Source: e.src, Span: e.key}
}

// Has holds for a path that stands in the plan.
func (s *Spans) Has(path string) bool {
	_, ok := s.entries[path]
	return ok
}

// Word is the place of the bytes from start to end of the decoded text at
// path: escapes, trimmed line ends and the first newline of a multi-line
// string are accounted for. For anything but a text it is Value.
func (s *Spans) Word(path string, start, end int) diag.Place {
	e, ok := s.entries[path]
	if !ok || !e.literal {
		return s.Value(path)
	}
	raw := e.src.Text[e.value.Start:e.value.End]
	from, to := literalOffsets(raw, start, end)
	return diag.Place{Source: e.src, Span: diag.Span{Start: e.value.Start + from, End: e.value.Start + to}}
}

func (s *Spans) nearest(path string) (entry, bool) {
	for path != "" {
		if e, ok := s.entries[path]; ok {
			return e, true
		}
		if e, ok := s.entries[path+"[0]"]; ok { // [[headers]] have places, their list has none
			return e, true
		}
		path = path[:max(0, strings.LastIndexAny(path, ".["))]
	}
	return entry{}, false
}

// Limits of a plan's shape. Deeper nesting and longer keys say nothing a plan
// could mean, and can keep the decoder busy for minutes (20 KB of dotted key:
// 20 s and 3.8 GB, measured on v1.6.0).
const (
	maxDepth    = 32
	maxKeyParts = 16
	maxEntries  = 500_000
)

// indexer walks the expressions of one file.
type indexer struct {
	src     *diag.Source
	entries map[string]entry
	rows    map[string]int // how many elements an array of tables has so far
	prefix  string         // path of the last header
	faults  []diag.Finding
	newer   diag.Span // the first syntax of TOML 1.1, if any
}

// index finds the places of everything in src. Faults are of rules "syntax"
// and "too-large".
func index(src *diag.Source) (*Spans, []diag.Finding) {
	x := &indexer{src: src, entries: make(map[string]entry, strings.Count(src.Text, "=")), rows: map[string]int{}}
	if at := deepest(src.Text); at >= 0 {
		x.tooLarge(diag.Span{Start: at, End: at + 1}, fmt.Sprintf("more than %d levels of brackets", maxDepth))
		return x.spans(), x.faults
	}
	var p unstable.Parser
	p.Reset([]byte(src.Text))
	for p.NextExpression() {
		x.expression(p.Expression())
		if len(x.faults) > 0 && x.faults[len(x.faults)-1].Rule == "too-large" {
			return x.spans(), x.faults
		}
	}
	if err := p.Error(); err != nil {
		x.faults = append(x.faults, syntaxFault(src, &p, err))
	}
	if x.newer != (diag.Span{}) && len(x.faults) == 0 {
		x.faults = append(x.faults, diag.Finding{
			Rule: "syntax", Severity: diag.Note, At: diag.Place{Source: src, Span: x.newer},
			Message: "this needs TOML 1.1; other programs may refuse the plan",
			Hint:    "write tables in braces on one line without a comma at the end, times in quotes, and \\u and four digits for \\e and \\x",
		})
	}
	return x.spans(), x.faults
}

func (x *indexer) spans() *Spans {
	return &Spans{x.entries, diag.Place{Source: x.src}}
}

func (x *indexer) tooLarge(at diag.Span, what string) {
	x.faults = append(x.faults, diag.Finding{
		Rule: "too-large", Severity: diag.Error, At: diag.Place{Source: x.src, Span: at},
		Message: what, Hint: "a plan needs tables, keys and texts only",
	})
}

func (x *indexer) fault(at diag.Span, path, message, hint string) {
	x.faults = append(x.faults, diag.Finding{
		Rule: "syntax", Severity: diag.Error, At: diag.Place{Source: x.src, Span: at}, Path: path, Message: message, Hint: hint,
	})
}

// tooLong refuses a key of too many parts.
func (x *indexer) tooLong(n *unstable.Node) bool {
	parts := 0
	for it := n.Key(); it.Next(); {
		if parts++; parts > maxKeyParts {
			x.tooLarge(spanOf(it.Node().Raw), fmt.Sprintf("a key of more than %d parts", maxKeyParts))
			return true
		}
	}
	return false
}

func (x *indexer) expression(n *unstable.Node) {
	switch n.Kind {
	case unstable.Table, unstable.ArrayTable:
		x.header(n)
	case unstable.KeyValue:
		x.keyValue(x.prefix, n)
	}
}

// header follows [a.b] or [[a.b]] down the arrays of tables seen so far.
func (x *indexer) header(n *unstable.Node) {
	path, name, span := "", "", diag.Span{Start: -1}
	if x.tooLong(n) {
		return
	}
	for it := n.Key(); it.Next(); {
		k := it.Node()
		name = join(name, string(k.Data))
		if span.Start < 0 {
			span.Start = int(k.Raw.Offset)
		}
		span.End = spanOf(k.Raw).End
		path = join(path, string(k.Data))
		last := it.IsLast()
		single := n.Kind == unstable.Table && last && x.rows[path] > 0
		if single {
			x.fault(span, path, fmt.Sprintf("[%s] has single brackets where the headers before it have two", name), fmt.Sprintf("write [[%s]]", name))
		}
		if single || n.Kind == unstable.ArrayTable && last {
			x.rows[path]++
			path = nth(path, x.rows[path]-1)
		} else if rows := x.rows[path]; rows > 0 {
			path = nth(path, rows-1)
		}
	}
	if x.has(path) {
		x.fault(span, path, fmt.Sprintf("[%s] stands twice", name), oneHeader)
		path = fmt.Sprintf("%s, byte %d", path, span.Start) // so that its keys don't stand twice as well
	}
	x.prefix = path
	x.put(path, entry{src: x.src, key: span, value: span})
}

const oneHeader = "keep one header and put the keys of both below it; a list of tables has [[double brackets]] each time"

func (x *indexer) keyValue(prefix string, n *unstable.Node) {
	path, key := prefix, diag.Span{Start: -1}
	if x.tooLong(n) {
		return
	}
	for it := n.Key(); it.Next(); {
		k := it.Node()
		path = join(path, string(k.Data))
		key = spanOf(k.Raw)
		if !it.IsLast() && !x.has(path) { // a dotted key makes the tables on its way
			x.put(path, entry{src: x.src, key: key, value: key})
		}
	}
	if first, twice := x.entries[path]; twice {
		x.fault(key, path, path+" stands twice", fmt.Sprintf("keep one of the two; the first is in line %d", x.src.Position(first.key.Start).Line))
		return
	}
	span, literal := x.value(path, n.Value(), key)
	x.put(path, entry{src: x.src, key: key, value: span, literal: literal})
}

// value indexes one value and gives its span; around is the span to use where
// the parser has none.
func (x *indexer) value(path string, n *unstable.Node, around diag.Span) (diag.Span, bool) {
	switch n.Kind {
	case unstable.Array:
		span, i := around, 0
		for it := n.Children(); it.Next(); {
			child := it.Node()
			if child.Kind == unstable.Comment {
				continue
			}
			inner := nth(path, i)
			s, literal := x.value(inner, child, around)
			x.put(inner, entry{src: x.src, key: s, value: s, literal: literal})
			if i == 0 {
				span.Start = s.Start
			}
			span.End, i = s.End, i+1
		}
		return span, false
	case unstable.InlineTable:
		span := spanOf(n.Raw)
		for it := n.Children(); it.Next(); {
			child := it.Node()
			if child.Kind != unstable.KeyValue {
				continue
			}
			x.keyValue(path, child)
			if s := spanOf(child.Raw); s.End > span.End {
				if strings.Contains(x.src.Text[span.End:s.Start], "\n") {
					x.needsNewer(s)
				}
				span.End = s.End
			}
		}
		if rest := strings.TrimLeft(x.src.Text[span.End:], " \t\r\n"); strings.HasPrefix(rest, ",") {
			at := len(x.src.Text) - len(rest)
			x.needsNewer(diag.Span{Start: at, End: at + 1})
		}
		return span, false
	}
	span := spanOf(n.Raw)
	if n.Kind == unstable.LocalTime && span.End-span.Start == len("09:30") {
		x.needsNewer(span)
	}
	if n.Kind == unstable.String {
		x.escapes(span)
	}
	return span, n.Kind == unstable.String
}

// needsNewer keeps the first place that TOML 1.0 does not know.
func (x *indexer) needsNewer(at diag.Span) {
	if x.newer == (diag.Span{}) {
		x.newer = at
	}
}

// escapes looks for those that came with TOML 1.1: \e and \x.
func (x *indexer) escapes(at diag.Span) {
	raw := x.src.Text[at.Start:at.End]
	if raw[0] != '"' {
		return
	}
	for i := 0; i+1 < len(raw); i++ {
		next := strings.IndexByte(raw[i:], '\\')
		if next < 0 {
			return
		}
		if i += next + 1; raw[i] == 'e' || raw[i] == 'x' {
			x.needsNewer(diag.Span{Start: at.Start + i - 1, End: at.Start + i + 1})
		}
	}
}

func (x *indexer) has(path string) bool {
	_, ok := x.entries[path]
	return ok
}

func (x *indexer) put(path string, e entry) {
	if len(x.entries) >= maxEntries {
		if len(x.faults) == 0 || x.faults[len(x.faults)-1].Rule != "too-large" {
			x.tooLarge(e.key, fmt.Sprintf("more than %d values", maxEntries))
		}
		return
	}
	x.entries[path] = e
}

func spanOf(r unstable.Range) diag.Span {
	return diag.Span{Start: int(r.Offset), End: int(r.Offset + r.Length)}
}

// join makes a path; a key that is not bare keeps its quotes in it, so that
// "a.b" and a.b are two.
func join(prefix, name string) string {
	for _, r := range name {
		if !(r == '_' || r == '-' || '0' <= r && r <= '9' || 'A' <= r && r <= 'Z' || 'a' <= r && r <= 'z') {
			name = strconv.Quote(name)
			break
		}
	}
	if prefix == "" {
		return name
	}
	return prefix + "." + name
}

// nth is the path of an element of a list.
func nth(path string, i int) string { return path + "[" + strconv.Itoa(i) + "]" }

// syntaxFault puts a parser's error into our form.
func syntaxFault(src *diag.Source, p *unstable.Parser, err error) diag.Finding {
	f := diag.Finding{Rule: "syntax", Severity: diag.Error, Message: err.Error(), At: diag.Place{Source: src}}
	var broken *unstable.ParserError
	if errors.As(err, &broken) {
		f.Message = broken.Message
		if len(broken.Highlight) > 0 {
			f.At.Span = spanOf(p.Range(broken.Highlight))
			// The parser names the first byte of a letter that has several.
			letter, size := utf8.DecodeRuneInString(src.Text[f.At.Span.Start:])
			f.At.Span.End = max(f.At.Span.End, f.At.Span.Start+size)
			f.Message = strings.Replace(f.Message, fmt.Sprintf("%#U", rune(broken.Highlight[0])), fmt.Sprintf("%#U", letter), 1)
		} else {
			f.At.Span = diag.Span{Start: len(src.Text), End: len(src.Text)}
		}
	}
	f.Message = strings.TrimPrefix(f.Message, "toml: ")
	if open := unclosed(src.Text); open >= 0 && strings.Contains(f.Message, "not terminated") {
		quotes := src.Text[open : open+3]
		f.At.Span = diag.Span{Start: open, End: open + 3}
		f.Message = "the text that begins here has no " + quotes + " at its end"
		f.Hint = "put " + quotes + " on the line after its last"
		return f
	}
	f.Hint = syntaxHint(src, f.At, f.Message)
	return f
}
