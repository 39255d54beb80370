// Package picture draws: the running time as bars to scale, the order of tests
// as a decision tree, and the shoot day as lanes over the clock.
//
// In go finished values; out come Pictures, each a piece of SVG 1.1 that stands
// in a page of ours, or in a file of its own that any browser or viewer opens.
// The package decides nothing and measures no letter: text is broken by an
// estimate on the wide side.
package picture

import (
	"bytes"
	_ "embed"
	"fmt"
	"html"
	"strconv"
	"strings"

	"fixslate/plan/diag"
)

// Width is how wide every picture is at least, in its own units: one of them is
// a pixel on a phone of 390 pixels.
const Width = 358.0

// Picture is one drawing.
type Picture struct {
	Width, Height float64
	Title         string // a few words
	Words         string // what it shows, for those who can't see it
	Version       string // the name of the version it is for; empty: all
	For           string // its id
	body          []byte
}

// empty holds where there is nothing to see.
func (p Picture) empty() bool { return len(p.body) == 0 }

// Style is the style of every picture, for the page that holds one. The page
// may set --paper, --ink, --soft, --rule, --bar; a file of its own sets them.
//
//go:embed picture.css
var Style string

//go:embed file.css
var fileStyle string

// Inline is the picture as an element of a page. name is an id no other
// element of the page begins with.
func (p Picture) Inline(name string) []byte {
	if p.empty() {
		return nil
	}
	var b bytes.Buffer
	fmt.Fprintf(&b, `<svg class="pic" viewBox="0 0 %s %s" role="img" aria-labelledby="%s-title %s-words">`, Units(p.Width), Units(p.Height), name, name)
	p.describe(&b, name)
	b.Write(p.body)
	b.WriteString("</svg>")
	return b.Bytes()
}

func (p Picture) describe(b *bytes.Buffer, name string) {
	fmt.Fprintf(b, "<title id=\"%s-title\">%s</title>\n<desc id=\"%s-words\">%s</desc>\n", name, plain(p.Title), name, plain(p.Words))
}

// File is a file of pictures, each below its title, or nil where there is
// nothing to see.
func File(pictures ...Picture) []byte {
	const edge = 16.0
	width, height := 0.0, edge
	var inner bytes.Buffer
	for i, p := range pictures {
		if p.empty() {
			continue
		}
		fmt.Fprintf(&inner, "<g transform=\"translate(%s %s)\">\n", Units(edge), Units(height))
		p.describe(&inner, "picture-"+strconv.Itoa(i+1))
		head := drawing{width: p.Width}
		head.lines(0, p.Width, headText, p.Title)
		fmt.Fprintf(&inner, "%s<g transform=\"translate(0 %s)\">\n", head.Bytes(), Units(head.y+2))
		inner.Write(p.body)
		inner.WriteString("</g>\n</g>\n")
		width, height = max(width, p.Width), height+head.y+2+p.Height+edge
	}
	if inner.Len() == 0 {
		return nil
	}
	width += 2 * edge
	var b bytes.Buffer
	// a viewer without style sheets takes the colours written at each shape, and
	// these measures
	fmt.Fprintf(&b, "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"pic pic-file\" width=\"%s\" height=\"%s\" viewBox=\"0 0 %[1]s %[2]s\" font-family=\"system-ui, sans-serif\" role=\"img\" aria-label=\"%s\">\n",
		Units(width), Units(height), plain(pictures[0].Title))
	fmt.Fprintf(&b, "<style>\n%s%s</style>\n", fileStyle, Style)
	fmt.Fprintf(&b, "<rect class=\"pic-paper\" width=\"%s\" height=\"%s\" fill=\"#fdfdfb\"/>\n", Units(width), Units(height))
	b.Write(inner.Bytes())
	b.WriteString("</svg>\n")
	return b.Bytes()
}

// canvas collects shapes. The colours written at each are those of picture.css
// in daylight.
type canvas struct{ bytes.Buffer }

// look is a class of picture.css with the attributes that stand in for it.
type look struct {
	class, instead string
	size           float64 // of its letters: as wide as a plain face of so many pixels
	height         float64 // of its lines
}

var (
	inkText    = look{"pic-text", `fill="#16181a" font-size="14"`, 14, tall}
	strongText = look{"pic-strong", `fill="#16181a" font-size="14" font-weight="700"`, 15.4, tall}
	softText   = look{"pic-soft", `fill="#50565c" font-size="12"`, 12, small}
	labelText  = look{"pic-label", `fill="#16181a" font-size="12"`, 12, small}
	headText   = look{"pic-head", `fill="#16181a" font-size="16" font-weight="700"`, 17.6, 22}
	bar        = look{"pic-bar", `fill="#3c5a73" stroke="#3c5a73" stroke-width="1.5"`, 0, 0}
	hollow     = look{"pic-hollow", `fill="#fdfdfb" stroke="#3c5a73" stroke-width="1.5"`, 0, 0}
	end        = look{"pic-end", `fill="none" stroke="#50565c" stroke-width="1" stroke-dasharray="4 3"`, 0, 0}
	wire       = look{"pic-wire", `fill="none" stroke="#3c5a73" stroke-width="2"`, 0, 0}
	tick       = look{"pic-tick", `stroke="#b9bec3" stroke-width="0.5"`, 0, 0}
	stroke     = look{"pic-stroke", `stroke="#16181a" stroke-width="1.5"`, 0, 0}
	outline    = look{"pic-outline", `fill="none" stroke="#16181a" stroke-width="1"`, 0, 0}
	shade      = look{"pic-shade", `fill="#dcdfe2"`, 0, 0}
)

// put writes parts one after the other; a picture has hundreds of them, and
// formats are slow to read.
func (c *canvas) put(parts ...string) {
	for _, part := range parts {
		c.WriteString(part)
	}
}

// shape begins an element.
func (c *canvas) shape(name string, l look) {
	c.put("<", name, ` class="`, l.class, `" `, l.instead)
}

// at gives it an attribute of a number.
func (c *canvas) at(name string, n float64) { c.put(" ", name, `="`, Units(n), `"`) }

// point is a place in the picture's units, right of and below its corner.
type point struct{ x, y float64 }

// box is a rectangle by its corner, width and height.
type box struct{ x, y, width, height float64 }

func (c *canvas) text(x, y float64, l look, words string) {
	c.anchored(point{x, y}, "start", l, words)
}

// anchored writes words that have their start or their end at a point.
func (c *canvas) anchored(at point, anchor string, l look, words string) {
	if words == "" {
		return
	}
	c.shape("text", l)
	c.at("x", at.x)
	c.at("y", at.y)
	if anchor != "start" {
		c.put(` text-anchor="`, anchor, `"`)
	}
	c.put(">", plain(words), "</text>\n")
}

func (c *canvas) rect(b box, l look) {
	c.shape("rect", l)
	c.at("x", b.x)
	c.at("y", b.y)
	c.at("width", b.width)
	c.at("height", b.height)
	c.put("/>\n")
}

func (c *canvas) line(from, to point, l look) {
	c.shape("line", l)
	c.at("x1", from.x)
	c.at("y1", from.y)
	c.at("x2", to.x)
	c.at("y2", to.y)
	c.put("/>\n")
}

// plain is text of the plan for an element or an attribute. XML 1.0 has no
// control characters, and one that turns the direction of text would make "12 V"
// of "V 21": both are written out.
func plain(words string) string { return html.EscapeString(diag.Visible(words)) }

// Units writes a length of a drawing, to a tenth.
func Units(n float64) string {
	return strings.TrimSuffix(strconv.FormatFloat(n, 'f', 1, 64), ".0")
}
