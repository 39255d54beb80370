package book

import (
	"strings"

	"fixslate/plan/trade"
)

// keep keeps a number and its unit on one line: "1.5 N·m" with a no-break
// space. On a phone a lone unit at a line's start reads as the next word.
func keep(text string) string {
	var b strings.Builder
	from := 0
	for i := 1; i < len(text); i++ {
		if text[i] != ' ' || text[i-1] < '0' || '9' < text[i-1] {
			continue
		}
		unit, _, _ := strings.Cut(text[i+1:], " ")
		unit = strings.Trim(unit, ".,;:!?()")
		if _, ok := trade.LookupUnit(unit); ok && unit != "in" { // "step 3 in the book"
			b.WriteString(text[from:i])
			b.WriteString("\u00a0")
			from = i + 1
		}
	}
	if from == 0 {
		return text
	}
	b.WriteString(text[from:])
	return b.String()
}
