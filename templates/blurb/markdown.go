package blurb

import (
	"strings"

	"fixslate/plan"
	"fixslate/plan/prose"
)

// markdown writes all parts as Markdown.
func markdown(p *plan.Plan, parts []part) []byte {
	var b strings.Builder
	b.WriteString("# " + prose.Literal(p.Video.Title.Print) + "\n")
	for _, part := range parts {
		if len(part.lines) == 0 || part.titled {
			continue
		}
		b.WriteString("\n")
		if part.heading != "" {
			b.WriteString("## " + part.heading + "\n\n")
		}
		for i, line := range part.lines {
			switch {
			case part.list || part.heading == "Chapters":
				b.WriteString("- " + prose.Literal(line) + "\n")
			case i > 0:
				b.WriteString("\n" + prose.Literal(line) + "\n")
			default:
				b.WriteString(prose.Literal(line) + "\n")
			}
		}
	}
	return []byte(b.String())
}
