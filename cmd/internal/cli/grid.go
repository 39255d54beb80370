package cli

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

// tableText prints a table: cells wrap, sources stand below by number, and where
// the rows of one thing differ by standard it says so.
func tableText(w *paper, t trade.Table) {
	paragraph(w, "", t.Title)
	fmt.Fprintln(w)
	sources, marks := numbered(t.Rows)
	grid := [][]string{append(slices.Clone(t.Columns), "Source")}
	for i, r := range t.Rows {
		grid = append(grid, append(slices.Clone(r.Cells), marks[i]))
	}
	printGrid(w, grid)
	for _, line := range differing(t) {
		fmt.Fprintln(w)
		paragraph(w, "", line)
	}
	fmt.Fprintln(w, "\nSources")
	for i, s := range sources {
		paragraph(w, fmt.Sprintf("%4d  ", i+1), s)
	}
	if len(t.Notes) > 0 {
		fmt.Fprintln(w)
	}
	for _, n := range t.Notes {
		paragraph(w, "", n)
	}
}

// numbered lists the sources of rows, each once, and each row's number.
func numbered(rows []trade.Row) (sources, marks []string) {
	number := map[string]int{}
	for _, r := range rows {
		if number[r.Source] == 0 {
			sources = append(sources, r.Source)
			number[r.Source] = len(sources)
		}
		marks = append(marks, fmt.Sprint(number[r.Source]))
	}
	return sources, marks
}

// differing says for every thing of a table on which standards do not agree what
// each says: the spanner of M10 is 16 mm by ISO and 17 mm by the older DIN.
func differing(t trade.Table) []string {
	standard, value, what := slices.Index(t.Columns, "Standard"), slices.Index(t.Columns, "Value"), slices.Index(t.Columns, "What")
	if standard < 0 || value < 0 || what < 0 {
		return nil
	}
	const most = 12 // of the whole table it would be a second table
	type saying struct{ value, standard string }
	said := map[string][]saying{}
	var order []string
	for _, r := range t.Rows {
		for _, thing := range things(r.Cells[what]) {
			thing = r.Cells[0] + " " + thing
			if said[thing] == nil {
				order = append(order, thing)
			}
			if s := (saying{r.Cells[value], r.Cells[standard]}); !slices.Contains(said[thing], s) {
				said[thing] = append(said[thing], s)
			}
		}
	}
	var lines []string
	for _, thing := range order {
		values := map[string]bool{}
		var parts []string
		for _, s := range said[thing] {
			values[s.value] = true
			parts = append(parts, s.value+" by "+s.standard)
		}
		if len(values) > 1 && !strings.HasSuffix(thing, "pitch") {
			lines = append(lines, "Standards differ on "+thing+": "+strings.Join(parts, ", ")+".")
		}
	}
	if len(lines) > most {
		return []string{fmt.Sprintf("Standards differ on %d of these; look one up by its key to see which.", len(lines))}
	}
	return lines
}

// things are what a row speaks of: "bolt or nut, across flats" of both.
func things(what string) []string {
	head, tail, _ := strings.Cut(what, ",")
	a, b, both := strings.Cut(head, " or ")
	if !both {
		return []string{what}
	}
	return []string{a + "," + tail, b + "," + tail}
}

// printGrid prints rows in columns that together fit a line. The widest
// columns give way first; their cells wrap.
func printGrid(w *paper, grid [][]string) {
	widths := fitted(grid, w.columns-1)
	for n, row := range grid {
		cells := make([][]string, len(row))
		height := 1
		for i, cell := range row {
			cells[i] = strings.Split(broken(diag.Visible(cell), widths[i]), "\n")
			height = max(height, len(cells[i]))
		}
		for line := range height {
			var b strings.Builder
			for i := range row {
				text := ""
				if line < len(cells[i]) {
					text = cells[i][line]
				}
				fmt.Fprintf(&b, "%-*s ", widths[i], text)
			}
			fmt.Fprintln(w, strings.TrimRight(b.String(), " "))
		}
		if n == 0 {
			fmt.Fprintln(w, strings.Repeat("-", w.columns-1))
		}
	}
}

// fitted gives each column a width so that all fit a line. The widest give way
// first, none below its longest word; where that is not enough, words are cut.
func fitted(grid [][]string, line int) []int {
	const narrowest = 6
	widths, words := make([]int, len(grid[0])), make([]int, len(grid[0]))
	for _, row := range grid {
		for i, cell := range row {
			widths[i] = max(widths[i], len([]rune(cell)))
			for _, word := range strings.Fields(cell) {
				words[i] = max(words[i], len([]rune(word)), narrowest)
			}
		}
	}
	total := len(widths) - 1
	for _, n := range widths {
		total += n
	}
	for _, least := range [][]int{words, slices.Repeat([]int{narrowest}, len(widths))} {
		for total > line {
			widest := -1
			for i, n := range widths {
				if n > least[i] && (widest < 0 || n > widths[widest]) {
					widest = i
				}
			}
			if widest < 0 {
				break
			}
			widths[widest]--
			total--
		}
	}
	return widths
}

// broken wraps a cell; a word wider than its column is cut.
func broken(cell string, width int) string {
	var b strings.Builder
	for line := range strings.SplitSeq(wrap(cell, width), "\n") {
		for len([]rune(line)) > width {
			r := []rune(line)
			if b.Len() > 0 {
				b.WriteByte('\n')
			}
			b.WriteString(string(r[:width]))
			line = string(r[width:])
		}
		if b.Len() > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(line)
	}
	return b.String()
}
