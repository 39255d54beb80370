// Package book makes the shoot book: one page for the phone in the garage and
// for the printer, with the steps, what to say, the cautions, the shots to tick
// off, the day in shooting order and a prompter.
//
// In go finished values: plan, timeline, shots, day, chapters, findings. Out
// comes one HTML file that needs nothing beside it, asks for nothing on a
// network and runs only the script it was made with. The package looks nothing up, judges
// nothing, and knows no clock: same values, same bytes.
package book

import (
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"fmt"
	"html/template"
	"sync"
	"unicode/utf8"

	"fixslate/chapters"
	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/hazard"
	"fixslate/plan/timing"
	"fixslate/shotlist"
	"fixslate/templates/picture"
)

// Book is what the page is made of.
type Book struct {
	Plan     *plan.Plan
	Timeline timing.Timeline
	Trees    []picture.Picture // of the tests
	Shots    []shotlist.Shot
	Coverage []shotlist.Covered
	Day      *shotlist.Day // nil: the book has none
	Chapters []chapters.Chapter
	Hazards  hazard.Reading
	Findings []diag.Finding
}

// Page is book.html.
//
// The page is written by page.go, which is its templates made into Go: what
// html/template does to each value for where it stands is done there too. The
// one exception is plan.Note.HTML, which is made safe where the Markdown is
// read. Behind that stands a content security policy that lets nothing load and
// only our own style and script run, each by its hash (W3C Content Security
// Policy Level 3, 6.7.2).
func Page(b Book) []byte {
	v := viewOf(b)
	o := out{page: make([]byte, 0, 1<<18)} // as much as most take
	o.book(&v)
	return visible(o.page)
}

// visible writes control characters and those that turn the direction of text
// as their code points: a card that reads "12 V" to the eye must be "12 V" in
// the plan too (Unicode Technical Standard 55, 2024, on text whose order
// deceives). The marks that Arabic and Hebrew need, U+061C, U+200E and U+200F,
// turn nothing beyond themselves and stay.
func visible(page []byte) []byte {
	var out []byte
	kept := 0
	for i := 0; i < len(page); {
		if b := page[i]; ' ' <= b && b < 0x7f {
			i++
			continue
		}
		r, size := utf8.DecodeRune(page[i:])
		if deceives(r) {
			out = fmt.Appendf(append(out, page[kept:i]...), "[U+%04X]", r)
			kept = i + size
		}
		i += size
	}
	if kept == 0 {
		return page
	}
	return append(out, page[kept:]...)
}

func deceives(r rune) bool {
	return r < ' ' && r != '\n' && r != '\t' || 0x7f <= r && r <= 0x9f ||
		0x202a <= r && r <= 0x202e || 0x2066 <= r && r <= 0x2069
}

var (
	//go:embed book.css
	bookStyle string
	//go:embed book.js
	script string
)

// style is the page's with that of its pictures: one element, one hash.
var style = sync.OnceValue(func() string { return bookStyle + picture.Style })

//go:generate env FIXSLATE_UPDATE=1 go test -tags bare -run TestPageIsMadeOfItsTemplates .

// What the templates call.

func css() template.CSS              { return template.CSS(style()) }
func js() template.JS                { return template.JS(script) }
func legend() string                 { return picture.TimeLegend }
func lanes() string                  { return picture.LanesLegend }
func note(n plan.Note) template.HTML { return template.HTML(n.HTML) }

// policy is the page's content security policy.
func policy() string {
	return "default-src 'none'; style-src '" + hash(style()) + "'; script-src '" + hash(script) +
		"'; base-uri 'none'; form-action 'none'"
}

// hash is the source expression that allows one inline text.
func hash(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}
