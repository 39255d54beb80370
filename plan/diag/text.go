package diag

import (
	"bufio"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// Style says how Text prints.
type Style struct {
	Colour  bool // ANSI colour, for terminals only
	Excerpt bool // the source line with a marker under it
	Brief   bool // without the hint
	Width   int  // columns of the terminal, 0: lines are not broken
}

const (
	bold  = "\x1b[1m"
	dim   = "\x1b[2m"
	red   = "\x1b[31m"
	brown = "\x1b[33m"
	blue  = "\x1b[34m"
	reset = "\x1b[0m"
)

// Text writes one block a finding:
//
//	washer.toml:41:9: warning: caution-missing: step "meter" measures on mains …
//	  41 | say = "Across the two terminals …"
//	     |        ^^^^^^
//	  add cautions = ["mains-isolation"] to the step
//
// Waived findings are left out; they have their own list in the risks sheet.
func Text(w io.Writer, findings []Finding, style Style) error {
	out := bufio.NewWriter(w)
	for _, f := range findings {
		if f.Waived == "" {
			writeText(out, f, style)
		}
	}
	return out.Flush()
}

func writeText(out *bufio.Writer, f Finding, style Style) {
	paint := func(colour, text string) string {
		if !style.Colour || colour == "" {
			return text
		}
		return colour + text + reset
	}
	at := 0 // columns written of the line
	head := func(colour, text string) {
		fmt.Fprintf(out, "%s: ", paint(colour, text))
		at += cells(text) + 2
	}
	if f.At.Source != nil {
		pos := f.At.Position()
		head(bold, fmt.Sprintf("%s:%d:%d", Visible(f.At.File()), pos.Line, pos.Column))
	}
	head(map[Severity]string{Error: red, Warning: brown, Note: blue}[f.Severity], f.Severity.String())
	if f.Rule != "" {
		head("", f.Rule)
	}
	fmt.Fprintln(out, Broken(Visible(f.Message), at, style.Width, 4))
	if style.Excerpt {
		writeExcerpt(out, f.At, style.excerptWidth(), paint)
	}
	if f.Hint != "" && !style.Brief {
		for line := range strings.Lines(f.Hint) {
			fmt.Fprintf(out, "  %s\n", Broken(Visible(strings.TrimSuffix(line, "\n")), 2, style.Width, 2))
		}
	}
}

// Broken is a line that begins at a column, broken between words where it would
// go beyond the width; further lines are indented. A word wider than a line is
// left whole, and all of it where the width is 0.
func Broken(text string, at, width, indent int) string {
	if width <= 0 || at+cells(text) <= width {
		return text
	}
	var b strings.Builder
	for i, word := range strings.Split(text, " ") {
		n := cells(word)
		switch {
		case i == 0 && (at+n <= width || at <= indent):
		case i == 0 || at+1+n > width:
			b.WriteString("\n" + strings.Repeat(" ", indent))
			at = indent
		default:
			b.WriteByte(' ')
			at++
		}
		b.WriteString(word)
		at += n
	}
	return b.String()
}

// excerptWidth keeps an excerpt within 80 columns beside its line number, and
// within a terminal that has fewer.
func (s Style) excerptWidth() int {
	const usual, least, beside = 70, 20, 10
	if s.Width <= 0 {
		return usual
	}
	return max(least, min(usual, s.Width-beside))
}

func writeExcerpt(out *bufio.Writer, at Place, width int, paint func(colour, text string) string) {
	if at.Source == nil || at.Source.Text == "" {
		return
	}
	pos := at.Position()
	line := at.Source.Line(pos.Line)
	start := at.Span.Start - at.Source.lines[pos.Line-1]
	end := min(len(line), max(start+1, start+at.Span.End-at.Span.Start))
	start = min(start, len(line))
	from := 0
	if cells(line[:end]) > width { // show the marked end of a long line
		from = runeStart(line, max(0, start-width/3))
	}
	before, marked := clip(line[from:start]), clip(line[start:max(start, end)])
	room := max(0, width-cells(before))
	if cells(marked) > room {
		marked = cut(marked, room)
	}
	after := cut(clip(line[max(start, end):]), max(0, room-cells(marked)))
	number := fmt.Sprintf("%4d", pos.Line)
	lead := ""
	if from > 0 {
		lead = "…"
	}
	fmt.Fprintf(out, "%s %s%s%s%s\n", paint(dim, number+" |"), lead, before, marked, after)
	fmt.Fprintf(out, "%s %s%s\n", paint(dim, "     |"), strings.Repeat(" ", cells(lead)+cells(before)),
		paint(bold, strings.Repeat("^", max(1, cells(marked)))))
}

func clip(text string) string { return Visible(strings.ReplaceAll(text, "\t", " ")) }

// cells counts runes: near enough for the marker under Latin text, and never
// less than zero for any.
func cells(text string) int { return utf8.RuneCountInString(text) }

func cut(text string, width int) string {
	for i := range text {
		if width == 0 {
			return text[:i]
		}
		width--
	}
	return text
}

func runeStart(text string, i int) int {
	for i > 0 && i < len(text) && !utf8.RuneStart(text[i]) {
		i--
	}
	return i
}
