package prose

import (
	"fmt"
	"html"
	"strings"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// Plain gives block Markdown as plain text: paragraphs with blank lines
// between them and without their inner line ends, "- " and "1. " before the
// items of lists, "> " before quoted lines, the address of a link in brackets
// after its words. There is no line end after the last line.
//
// fill is applied to each merged run of text, also inside code, and its result
// is text and never read as markup; escaped characters are not handed to it. It
// may be nil.
func Plain(md string, fill func(string) string) string {
	p := plain{filler: fill}
	if plainOnly(md) {
		for _, paragraph := range paragraphs(md) {
			p.block(SingleSpaces(p.filled(paragraph)))
		}
		return p.out.String()
	}
	p.source = []byte(md)
	p.blocks(blockParser.Parse(text.NewReader(p.source)))
	return p.out.String()
}

// HTML gives block Markdown as HTML that is safe to put into a page. Its only
// tags are p, h1 to h6, ul, ol, li, blockquote, pre, code, em, strong, a, br and
// hr, its only attributes href and start; links lead to http, https, mailto or
// #fragment, the words of any other stand alone. fill is as for Plain, and its
// result is escaped.
func HTML(md string, fill func(string) string) string {
	w := writer{filler: fill}
	if plainOnly(md) {
		for _, paragraph := range paragraphs(md) {
			w.out.WriteString("<p>")
			w.escape(w.filled(paragraph))
			w.out.WriteString("</p>\n")
		}
		return w.out.String()
	}
	w.source = []byte(md)
	w.blocks(blockParser.Parse(text.NewReader(w.source)))
	return w.out.String()
}

// paragraphs cuts a text at its blank lines.
func paragraphs(s string) []string {
	var found []string
	var lines []string
	for line := range strings.Lines(s + "\n\n") {
		if line = strings.TrimSpace(line); line != "" {
			lines = append(lines, line)
		} else if lines != nil {
			found = append(found, strings.Join(lines, "\n"))
			lines = nil
		}
	}
	return found
}

// blockRuns collects the runs of one block of text.
func blockRuns(n ast.Node, source []byte) []Run {
	c := collector{source: source, text: string(source)}
	if lines := n.Lines(); lines != nil && lines.Len() > 0 {
		c.last = lines.At(0).Start
	}
	c.children(n, look{})
	return c.runs
}

// verbatimLines gives the text of a code block.
func verbatimLines(n ast.Node, source []byte) string {
	var b strings.Builder
	lines := n.Lines()
	for i := range lines.Len() {
		segment := lines.At(i)
		b.Write(segment.Value(source))
	}
	return b.String()
}

// deepest is how many levels of lists and quotes get an indent of their own in
// plain text; deeper ones share the last, which keeps the output in proportion.
const deepest = 8

// filler is what a caller fills in; nil fills in nothing.
type filler func(string) string

func (fill filler) filled(s string) string {
	if fill == nil {
		return s
	}
	return fill(s)
}

type plain struct {
	filler
	source []byte
	out    strings.Builder
	prefix string // before each line but the first of a block
	first  string // before the first line; equals prefix after a list mark
	depth  int
	tight  bool
}

func (p *plain) blocks(parent ast.Node) {
	for n := parent.FirstChild(); n != nil; n = n.NextSibling() {
		switch n := n.(type) {
		case *ast.Paragraph, *ast.TextBlock, *ast.Heading:
			p.block(p.inline(blockRuns(n, p.source)))
		case *ast.FencedCodeBlock:
			p.block(strings.TrimRight(p.filled(verbatimLines(n, p.source)), "\n"))
		case *ast.ThematicBreak:
			p.block("---")
		case *ast.Blockquote:
			p.inside("> ", "> ", n)
		case *ast.List:
			p.list(n)
		default:
			p.blocks(n)
		}
	}
}

func (p *plain) list(list *ast.List) {
	number := list.Start
	outer, nested := list.Parent().(*ast.ListItem)
	tightFirst := nested && list.PreviousSibling() != nil && outer.Parent().(*ast.List).IsTight
	for item := list.FirstChild(); item != nil; item = item.NextSibling() {
		mark := "- "
		if list.IsOrdered() {
			mark = fmt.Sprintf("%d. ", number)
			number++
		}
		p.tight = list.IsTight
		if item == list.FirstChild() {
			p.tight = tightFirst
		}
		p.inside(mark, strings.Repeat(" ", len(mark)), item)
	}
}

// inside writes the blocks of a list item or quotation.
func (p *plain) inside(first, rest string, n ast.Node) {
	if p.depth++; p.depth > deepest {
		first, rest = "", ""
	}
	before, beforeFirst := p.prefix, p.first
	p.first, p.prefix = beforeFirst+first, before+rest
	length := p.out.Len()
	p.blocks(n)
	if p.out.Len() == length {
		p.block("") // an empty item keeps its mark
	}
	p.prefix, p.first = before, before
	p.depth--
}

// block writes one paragraph.
func (p *plain) block(s string) {
	if p.out.Len() > 0 {
		p.out.WriteByte('\n')
		if !p.tight {
			p.out.WriteString(strings.TrimRight(p.prefix, " "))
			p.out.WriteByte('\n')
		}
	}
	p.tight = false
	prefix := p.first
	p.first = p.prefix
	for i, line := range strings.Split(s, "\n") {
		if i > 0 {
			p.out.WriteByte('\n')
			prefix = p.prefix
		}
		if line == "" {
			prefix = strings.TrimRight(prefix, " ")
		}
		p.out.WriteString(prefix)
		p.out.WriteString(line)
	}
}

func (p *plain) inline(runs []Run) string {
	var b strings.Builder
	for i, r := range runs {
		switch {
		case r.Style&Break != 0:
			b.WriteByte('\n')
		case r.Style&Escape != 0:
			b.WriteString(r.Text)
		default:
			b.WriteString(p.filled(strings.ReplaceAll(r.Text, "\n", " ")))
		}
		ends := i+1 == len(runs) || runs[i+1].Link != r.Link
		if r.Link != "" && ends && strings.TrimPrefix(r.Link, "mailto:") != r.Text {
			b.WriteString(" (" + strings.TrimPrefix(r.Link, "mailto:") + ")")
		}
	}
	return b.String()
}

type writer struct {
	filler
	source []byte
	out    strings.Builder
	open   []string // tags open around the current run
}

// escape writes text; what is no character of a page becomes U+FFFD.
func (w *writer) escape(s string) {
	s = strings.Map(func(r rune) rune {
		if r == utf8.RuneError || r < ' ' && r != '\n' && r != '\t' {
			return utf8.RuneError
		}
		return r
	}, s)
	w.out.WriteString(html.EscapeString(s))
}

func (w *writer) blocks(parent ast.Node) {
	for n := parent.FirstChild(); n != nil; n = n.NextSibling() {
		switch n := n.(type) {
		case *ast.Paragraph:
			w.out.WriteString("<p>")
			w.inline(blockRuns(n, w.source))
			w.out.WriteString("</p>\n")
		case *ast.TextBlock:
			w.inline(blockRuns(n, w.source))
			if n.NextSibling() != nil {
				w.out.WriteByte('\n')
			}
		case *ast.Heading:
			fmt.Fprintf(&w.out, "<h%d>", n.Level)
			w.inline(blockRuns(n, w.source))
			fmt.Fprintf(&w.out, "</h%d>\n", n.Level)
		case *ast.FencedCodeBlock:
			w.out.WriteString("<pre><code>")
			w.escape(w.filled(verbatimLines(n, w.source)))
			w.out.WriteString("</code></pre>\n")
		case *ast.ThematicBreak:
			w.out.WriteString("<hr>\n")
		case *ast.Blockquote:
			w.out.WriteString("<blockquote>\n")
			w.blocks(n)
			w.out.WriteString("</blockquote>\n")
		case *ast.List:
			w.list(n)
		default:
			w.blocks(n)
		}
	}
}

func (w *writer) list(list *ast.List) {
	tag := "ul"
	if list.IsOrdered() {
		tag = "ol"
	}
	w.out.WriteString("<" + tag)
	if list.IsOrdered() && list.Start != 1 {
		fmt.Fprintf(&w.out, ` start="%d"`, list.Start)
	}
	w.out.WriteString(">\n")
	for item := list.FirstChild(); item != nil; item = item.NextSibling() {
		w.out.WriteString("<li>")
		if first := item.FirstChild(); first != nil && first.Kind() != ast.KindTextBlock {
			w.out.WriteByte('\n')
		}
		w.blocks(item)
		w.out.WriteString("</li>\n")
	}
	w.out.WriteString("</" + tag + ">\n")
}

// inline writes runs, keeping a tag open while the next run wants it too.
func (w *writer) inline(runs []Run) {
	for _, r := range runs {
		w.tags(r)
		switch {
		case r.Style&Break != 0:
			w.out.WriteString("<br>\n")
		case r.Style&Escape != 0:
			w.escape(r.Text)
		case r.Style&Code != 0:
			w.escape(w.filled(strings.ReplaceAll(r.Text, "\n", " ")))
		default:
			w.escape(w.filled(r.Text))
		}
	}
	w.tags(Run{})
}

// tags closes and opens elements until those around r are open.
func (w *writer) tags(r Run) {
	var want []string
	if r.Link != "" {
		want = append(want, `a href="`+html.EscapeString(r.Link)+`"`)
	}
	for _, t := range [...]struct {
		style Style
		tag   string
	}{{Strong, "strong"}, {Emphasis, "em"}, {Code, "code"}} {
		if r.Style&t.style != 0 {
			want = append(want, t.tag)
		}
	}
	same := 0
	for same < len(want) && same < len(w.open) && want[same] == w.open[same] {
		same++
	}
	for i := len(w.open) - 1; i >= same; i-- {
		name, _, _ := strings.Cut(w.open[i], " ")
		w.out.WriteString("</" + name + ">")
	}
	for _, tag := range want[same:] {
		w.out.WriteString("<" + tag + ">")
	}
	w.open = want
}

// spelling says whether an address may still hold escapes and entities.
type spelling int

const (
	verbatim spelling = iota
	resolved
)

// address gives the target of a link, percent-encoded, or nothing unless it is
// one that a reader of the page can follow without harm.
func address(target string, how spelling) string {
	raw := []byte(target)
	if how == resolved {
		raw = util.ResolveEntityNames(util.ResolveNumericReferences(util.UnescapePunctuations(raw)))
	}
	s := string(raw)
	if strings.ContainsFunc(s, func(r rune) bool { return r < ' ' || r == 0x7f || r == utf8.RuneError }) {
		return ""
	}
	lower := strings.ToLower(s)
	for _, scheme := range [...]string{"http://", "https://", "mailto:", "#"} {
		if strings.HasPrefix(lower, scheme) && len(s) > len(scheme) {
			return string(util.URLEscape(raw, false))
		}
	}
	return ""
}
