package lint

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"fixslate/plan/diag"
	"fixslate/plan/prose"
)

var forbiddenCharacter = Rule{Name: "forbidden-character", Group: Publish, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for _, w := range p.texts {
		if at, size := hiddenCharacter(w.Print); size > 0 {
			report(Report{
				Message: fmt.Sprintf("%s holds the hidden character %s", lastKey(w.Path), diag.Visible(w.Print[at:at+size])),
				Hint:    "take it out; the outputs leave it away",
				Path:    w.Path, Span: w.Span(at, at+size),
			})
		}
		if !published(w.Path) {
			continue
		}
		if at := strings.IndexAny(w.Print, "<>"); at >= 0 {
			r := unprintable(w.Path, w.Print[at:at+1])
			r.Span = w.Span(at, at+1)
			report(r)
		}
	}
	for path, note := range map[string]string{"publish.footer": p.Plan.Publish.Footer.Plain, "publish.disclosure": p.Plan.Publish.Disclosure.Plain} {
		if at := strings.IndexAny(note, "<>"); at >= 0 {
			report(unprintable(path, note[at:at+1]))
		}
	}
}}

// unprintable is the report of an angle bracket in what is published.
func unprintable(path, mark string) Report {
	return Report{
		Message: fmt.Sprintf("%q can't stand in a title or description", mark),
		Hint:    `write it in words ("under 5 N·m", "to"); the outputs print ‹ and › instead`,
		Path:    path,
	}
}

// hiddenCharacter finds the first control character or mark that turns the
// direction of text; size is 0 where there is none.
func hiddenCharacter(text string) (at, size int) {
	for i, r := range text {
		if ' ' <= r && r < 0x7f {
			continue
		}
		if s := text[i : i+utf8.RuneLen(r)]; prose.Harmless(s) == "" {
			return i, len(s)
		}
	}
	return 0, 0
}

func lastKey(path string) string { return path[strings.LastIndexByte(path, '.')+1:] }

// published holds for texts that end in a title, a chapter or the description.
// What is only said, done or printed in the book may hold any character.
func published(path string) bool {
	table, _, _ := strings.Cut(path, ".")
	table, _, _ = strings.Cut(table, "[")
	key := lastKey(path)
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
