package lint

import (
	"fmt"
	"strings"

	"fixslate/plan/diag"
)

var forbiddenCharacter = Rule{Name: "forbidden-character", Group: Publish, Severity: diag.Warning, Check: func(p *Pass) []Report {
	var found []Report
	for _, w := range p.texts {
		if !published(w.Path) {
			continue
		}
		if at := strings.IndexAny(w.Print, "<>"); at >= 0 {
			found = append(found, Report{
				Message: fmt.Sprintf("%q can't stand in a title or description", w.Print[at:at+1]),
				Hint:    `write it in words ("under 5 N·m", "to"); the outputs print ‹ and › instead`,
				Path:    w.Path, Span: w.Span(at, at+1),
			})
		}
	}
	return found
}}

// published holds for texts that end in a title, a chapter or the description.
// What is only said, done or printed in the book may hold any character.
func published(path string) bool {
	table, _, _ := strings.Cut(path, ".")
	table, _, _ = strings.Cut(table, "[")
	key := path[strings.LastIndexByte(path, '.')+1:]
	switch table {
	case "video", "variant", "differs", "part", "supply", "source", "correction", "caution":
		return key != "note"
	case "tool":
		return key == "name" || key == "instead_of"
	case "fastener":
		return key == "what" || key == "torque"
	case "step":
		return (key == "title" || key == "chapter") && strings.Count(path, ".") == 1
	}
	return false
}
