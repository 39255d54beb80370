package book

import (
	"html/template"
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

// whole is keep for a page: a word with a hyphen and a digit or capitals around it, as
// part numbers are, is not broken at its hyphen. The hyphen stays what it is, so that
// what is copied can be ordered by.
func whole(text string) template.HTML {
	text = keep(text)
	if !strings.Contains(text, "-") {
		return template.HTML(template.HTMLEscapeString(text))
	}
	var b strings.Builder
	for i, word := range strings.Split(text, " ") {
		if i > 0 {
			b.WriteByte(' ')
		}
		safe := template.HTMLEscapeString(word)
		if isCode(word) {
			safe = `<span class="unbroken">` + safe + `</span>`
		}
		b.WriteString(safe)
	}
	return template.HTML(b.String())
}

// isCode says whether a word is letters and digits with a hyphen inside, as "NV-2231"
// and "88-2041-C" are and "non-return" is not.
func isCode(word string) bool {
	const longest = 24 // longer ones may break, or a narrow page would scroll
	return len(word) <= longest && strings.Contains(strings.Trim(word, "-,.;:()"), "-") && strings.ContainsAny(word, "0123456789")
}
