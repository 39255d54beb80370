package cli

import (
	"bufio"
	"fmt"
	"strings"

	"fixslate/plan/diag"
	"fixslate/plan/prose"
)

// paper is what a command prints its text on.
type paper struct {
	*bufio.Writer
	columns int // that its lines keep to
}

// Lines keep to the usual columns, and on a terminal to its own: within these
// bounds, since a narrower line holds no table and a wider one is hard to read.
const (
	usualColumns     = 80
	narrowestColumns = 40
	widestColumns    = 100
)

// paper is standard output as paper.
func (s streams) paper() *paper {
	return &paper{bufio.NewWriter(s.out), fitting(s.columns)}
}

// done ends what was printed on the paper, err being what the last print said.
func (w *paper) done(err error) error {
	if err != nil {
		return err
	}
	return w.Flush()
}

// fitting is the columns of lines for a terminal's, 0 being none.
func fitting(terminal int) int {
	if terminal <= 0 {
		return usualColumns
	}
	return min(max(terminal, narrowestColumns), widestColumns)
}

// narrow holds where tables have no room for a column of words beside figures.
func (w *paper) narrow() bool { return w.columns < 72 }

// paragraph prints text behind a lead that the lines after the first keep free.
func paragraph(w *paper, lead, text string) {
	if text == "" {
		return
	}
	at := len(lead)
	fmt.Fprintln(w, lead+diag.Broken(diag.Visible(prose.SingleSpaces(text)), at, w.columns-1, at))
}

// margined prints words beside a margin; the first line has a mark in it.
func margined(w *paper, mark, words string, margin int) {
	fmt.Fprintf(w, "%-*s%s\n", margin, mark, diag.Broken(diag.Visible(prose.SingleSpaces(words)), max(margin, len(mark)), w.columns, margin))
}

// wrap breaks a paragraph at a number of columns.
func wrap(text string, columns int) string {
	return diag.Broken(prose.SingleSpaces(text), 0, max(columns, 1), 0)
}

// hanging breaks a line that is too long; what follows hangs under its second
// column, or a little further in where it has one.
func hanging(line string, columns int) string {
	if len([]rune(line)) <= columns {
		return line
	}
	text := strings.TrimLeft(line, " ")
	hang := len(line) - len(text) + 2
	if name, rest, listed := strings.Cut(text, "   "); listed {
		rest = strings.TrimLeft(rest, " ")
		hang = len(line) - len(rest)
		text, line = rest, line[:hang]
		if strings.HasPrefix(name, "-") && hang > columns/2 { // flags have long names and longer words
			line, hang = strings.TrimRight(line, " ")+"\n"+strings.Repeat(" ", 10), 10
		}
	} else {
		line = line[:hang-2]
	}
	return line + strings.ReplaceAll(wrap(text, columns-hang), "\n", "\n"+strings.Repeat(" ", hang))
}

// tell prints one line of a command's product. A terminal has it broken between
// words; a program finds it whole.
func (s streams) tell(line string) error {
	line = diag.Visible(line)
	if s.columns > 0 {
		line = hanging(line, fitting(s.columns)-1)
	}
	_, err := fmt.Fprintln(s.out, line)
	return err
}

// clip makes a name of a file's fit for a column of the terminal, with a mark
// where it was cut.
func clip(name string, width int) string {
	name = diag.Visible(name)
	if r := []rune(name); len(r) > width {
		return string(r[:width-1]) + "…"
	}
	return name
}

// some is a list that JSON prints as [] where it is empty.
func some[T any](list []T) []T { return append([]T{}, list...) }
