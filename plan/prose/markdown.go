package prose

import (
	"bytes"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// Markdown is CommonMark without three of its parts: raw HTML is text like any
// other, images give their words alone, and a line that is indented by four
// columns is no code, because texts in TOML are indented to please the eye.
// Fenced code stays.

// MaxMarkdown is the length in bytes up to which a text is read as Markdown.
// Longer ones, and those with more than maxBrackets opening brackets or
// maxQuotes quotation marks, are taken as plain paragraphs: the parser's cost
// grows with the square of these (200 kB of "[a](" take seconds), and no note
// of a repair plan comes near the limits.
const (
	MaxMarkdown = 16 << 10
	maxBrackets = 400
	maxQuotes   = 1000
)

// plainOnly says whether a text is over the limits.
func plainOnly(md string) bool {
	return len(md) > MaxMarkdown || strings.Count(md, "[") > maxBrackets || strings.Count(md, ">") > maxQuotes
}

// Style says how a run of text is set. Several may hold at once.
type Style uint8

const (
	Emphasis Style = 1 << iota // _so_
	Strong                     // **so**
	Code                       // `so`
	Link                       // the run has an address in Run.Link, or had one that is not allowed
	Escape                     // the run is an escape or an entity: its Text differs from the source
	Break                      // the run is a hard line break; only inside block Markdown
)

// Run is a stretch of text of one style.
type Run struct {
	Text string
	Span // in the source; the markup around the text is not part of it
	Style
	Link string // address of a link: http, https, mailto or #fragment; else empty
}

// inlineParser reads paragraphs and nothing else of the block syntax, so that
// "1. Undo" and "# 4" stay as they are written. blockParser reads all of it.
// A goldmark parser keeps no state between texts and may be shared.
var (
	inlineParser = parser.NewParser(
		parser.WithBlockParsers(util.Prioritized(paragraphParser{parser.NewParagraphParser()}, 1000)),
		parser.WithInlineParsers(inlineParsers()...),
	)
	blockParser = parser.NewParser(
		parser.WithBlockParsers(
			util.Prioritized(parser.NewSetextHeadingParser(), 100),
			util.Prioritized(parser.NewThematicBreakParser(), 200),
			util.Prioritized(parser.NewListParser(), 300),
			util.Prioritized(parser.NewListItemParser(), 400),
			util.Prioritized(parser.NewATXHeadingParser(), 600),
			util.Prioritized(parser.NewFencedCodeBlockParser(), 700),
			util.Prioritized(parser.NewBlockquoteParser(), 800),
			util.Prioritized(paragraphParser{parser.NewParagraphParser()}, 1000),
		),
		parser.WithInlineParsers(inlineParsers()...),
		parser.WithParagraphTransformers(util.Prioritized(parser.LinkReferenceParagraphTransformer, 100)),
	)
)

// paragraphParser takes indented lines too, which goldmark leaves to its parser
// of indented code.
type paragraphParser struct{ parser.BlockParser }

func (paragraphParser) CanAcceptIndentedLine() bool { return true }

func inlineParsers() []util.PrioritizedValue {
	return []util.PrioritizedValue{
		util.Prioritized(parser.NewCodeSpanParser(), 100),
		util.Prioritized(parser.NewLinkParser(), 200),
		util.Prioritized(parser.NewAutoLinkParser(), 300),
		util.Prioritized(parser.NewEmphasisParser(), 500),
	}
}

// inlineMarks are the bytes without which a text holds no inline Markdown.
const inlineMarks = "\\`*_[<&"

// Inline reads the inline Markdown of a line or paragraph. The runs stand in
// the order of the source; white space and line breaks are kept; only markup is
// missing between them. The Text of a run equals its stretch of the source
// unless Style has Escape. Neighbours of one style are one run, so a token such
// as {wire.from_pin} is never split by its underscore.
func Inline(md string) []Run {
	if md == "" {
		return nil
	}
	if plainOnly(md) || !strings.ContainsAny(md, inlineMarks) {
		return []Run{{Text: md, Span: Span{0, len(md)}}}
	}
	source := []byte(md)
	c := collector{source: source, text: md, exact: true}
	for n := inlineParser.Parse(text.NewReader(source)).FirstChild(); n != nil; n = n.NextSibling() {
		lines := n.Lines()
		if lines.Len() == 0 {
			continue
		}
		c.literal(c.last, lines.At(0).Start, look{})
		c.children(n, look{})
		c.last = max(c.last, lines.At(lines.Len()-1).Stop)
	}
	c.literal(c.last, len(md), look{})
	return c.runs
}

// look is the style that the nodes above a text give it.
type look struct {
	style Style
	link  string
}

// collector turns the inline nodes of one block into runs.
type collector struct {
	source []byte
	text   string
	exact  bool // keep the white space at line breaks, for exact places
	last   int  // end of what has been taken from the source
	runs   []Run
}

func (c *collector) children(n ast.Node, l look) {
	for child := n.FirstChild(); child != nil; child = child.NextSibling() {
		c.node(child, l)
	}
}

func (c *collector) node(n ast.Node, l look) {
	switch n := n.(type) {
	case *ast.Text:
		c.textNode(n, l)
	case *ast.CodeSpan:
		l.style |= Code
		c.codeSpan(n, l)
	case *ast.Emphasis:
		if n.Level == 1 {
			l.style |= Emphasis
		} else {
			l.style |= Strong
		}
		c.children(n, l)
	case *ast.Link:
		c.children(n, look{l.style | Link, address(string(n.Destination), resolved)})
	case *ast.AutoLink:
		label := n.Label(c.source)
		url := string(n.URL(c.source))
		if n.AutoLinkType == ast.AutoLinkEmail {
			url = "mailto:" + strings.TrimPrefix(url, "mailto:")
		}
		// The label is a slice of the source right after the "<".
		start := c.find(label)
		c.literal(start, start+len(label), look{l.style | Link, address(url, verbatim)})
		c.last = start + len(label) + 1
	default:
		c.children(n, l)
	}
}

// find gives the place of a label that is known to stand in the source after
// everything taken so far.
func (c *collector) find(label []byte) int {
	open := append([]byte{'<'}, label...)
	at := bytes.Index(c.source[c.last:], open)
	if at < 0 {
		return len(c.source) - len(label)
	}
	return c.last + at + 1
}

func (c *collector) textNode(n *ast.Text, l look) {
	start, stop := n.Segment.Start, n.Segment.Stop
	if n.IsRaw() {
		c.literal(start, stop, l)
	} else {
		c.escaped(start, stop, l)
	}
	c.last = max(c.last, stop)
	if n.SoftLineBreak() || n.HardLineBreak() {
		c.lineBreak(n, l)
	}
}

// lineBreak adds the end of a line. goldmark leaves the white space around it
// out of the nodes.
func (c *collector) lineBreak(n *ast.Text, l look) {
	if !c.exact {
		if n.HardLineBreak() {
			l.style |= Break
		}
		c.add(Run{Text: "\n", Span: Span{c.last, c.last}, Style: l.style, Link: l.link})
		return
	}
	end := c.last
	if n.HardLineBreak() && end < len(c.source) && c.source[end] == '\\' {
		newline := bytes.IndexByte(c.source[end:], '\n') + end + 1
		c.add(Run{Text: "\n", Span: Span{end, newline}, Style: l.style | Escape, Link: l.link})
		end = newline
	}
	start := end
	for end < len(c.source) && isSpaceByte(c.source[end]) {
		end++
	}
	c.literal(start, end, l)
	c.last = end
}

// codeSpan adds the text between backticks; a span over several lines keeps
// its line breaks.
func (c *collector) codeSpan(n *ast.CodeSpan, l look) {
	from := -1
	for child := n.FirstChild(); child != nil; child = child.NextSibling() {
		t, ok := child.(*ast.Text)
		if !ok {
			continue
		}
		start := t.Segment.Start
		if c.exact && from >= 0 && from < start {
			start = from // white space at the head of the line
		}
		c.literal(start, t.Segment.Stop, l)
		from = t.Segment.Stop
	}
	if from >= 0 {
		c.last = max(c.last, from)
	}
}

// literal adds a stretch of the source as it stands.
func (c *collector) literal(start, stop int, l look) {
	if start < stop {
		c.add(Run{Text: c.text[start:stop], Span: Span{start, stop}, Style: l.style, Link: l.link})
		c.last = max(c.last, stop)
	}
}

// escaped adds a stretch whose backslash escapes and entities are still raw.
func (c *collector) escaped(start, stop int, l look) {
	from := start
	for i := start; i < stop; {
		size, value := 0, ""
		switch c.text[i] {
		case '\\':
			if i+1 < stop && util.IsPunct(c.text[i+1]) {
				size, value = 2, c.text[i+1:i+2]
			}
		case '&':
			size, value = entity(c.text[i:stop])
		}
		if size == 0 {
			i++
			continue
		}
		c.literal(from, i, l)
		c.add(Run{Text: value, Span: Span{i, i + size}, Style: l.style | Escape, Link: l.link})
		i += size
		from = i
	}
	c.literal(from, stop, l)
}

// add appends a run, or lengthens the last one if it continues it.
func (c *collector) add(r Run) {
	if n := len(c.runs); n > 0 {
		last := &c.runs[n-1]
		whole := (last.Style|r.Style)&(Escape|Break) == 0
		if whole && last.Style == r.Style && last.Link == r.Link && (!c.exact || last.End == r.Start) {
			if c.exact {
				last.Text = c.text[last.Start:r.End]
			} else {
				last.Text += r.Text
			}
			last.End = r.End
			return
		}
	}
	c.runs = append(c.runs, r)
}

// entity reads the character reference at the head of s: its length in bytes
// and the text it stands for, or 0. A reference to no character gives U+FFFD.
func entity(s string) (int, string) {
	const longest = 33 // "&CounterClockwiseContourIntegral;"
	end := strings.IndexByte(s[:min(len(s), longest)], ';')
	if end < 2 {
		return 0, ""
	}
	name := s[1:end]
	if name[0] != '#' {
		e, ok := util.LookUpHTML5EntityByName(name)
		if !ok {
			return 0, ""
		}
		return end + 1, string(e.Characters)
	}
	digits, base, most := name[1:], 10, 7
	if digits != "" && digits[0]|0x20 == 'x' {
		digits, base, most = digits[1:], 16, 6
	}
	v, err := strconv.ParseUint(digits, base, 32)
	switch {
	case err != nil || len(digits) > most:
		return 0, ""
	case v == 0 || !utf8.ValidRune(rune(v)):
		return end + 1, "\uFFFD"
	}
	return end + 1, string(rune(v))
}

func isSpaceByte(b byte) bool { return b == ' ' || b == '\t' || b == '\n' || b == '\r' }
