package book

import (
	"strings"

	"fixslate/plan/trade"
)

// keep keeps a number and its unit on one line: "1.5 N·m" with a no-break
// space. On a phone a lone unit at a line's start reads as the next word.
func keep(text string) string {
	words := strings.Split(text, " ")
	var b strings.Builder
	for i, word := range words {
		if i > 0 {
			space := " "
			if before := words[i-1]; before != "" && '0' <= before[len(before)-1] && before[len(before)-1] <= '9' {
				unit := strings.Trim(word, ".,;:!?()")
				if _, ok := trade.LookupUnit(unit); ok && unit != "in" { // "step 3 in the book"
					space = "\u00a0"
				}
			}
			b.WriteString(space)
		}
		b.WriteString(word)
	}
	return b.String()
}
