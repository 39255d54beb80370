package blurb

import (
	"strings"
	"testing"

	"fixslate/chapters"
)

// A correction at a time lands in the chapter of that time, one at a step in
// the chapter that holds it; the planned and the real chapters may differ.
func TestCorrectionsLandInChapters(t *testing.T) {
	p, _ := describe(t, `[video]
title = "Change a brush"
[[step]]
id = "out"
title = "Old brush out"
say = "Unscrew the cap."
[[step]]
id = "in"
title = "New brush in"
say = "Slide it in."
[[correction]]
date = 2026-11-25
at = "1:00"
was = "5 N·m"
now = "3 N·m"
[[correction]]
at = "in"
now = "curve towards the copper"
[[correction]]
at = "9:59"
now = "the cap is black"
[[correction]]
at = "in the title"
now = "it is a drill"
[[correction]]
at = "new brush IN"
now = "two springs, one a side"
`)
	all := []chapters.Chapter{
		{Title: "Old brush out", End: 59.7, Steps: []int{0}},
		{Title: "New brush in", Start: 59.7, End: 120, Steps: []int{1}},
	}
	var got []string
	for _, c := range Corrections(p, all) {
		got = append(got, c.Line())
	}
	want := []string{
		"2026-11-25, 1:00 New brush in: not 5 N·m but 3 N·m",
		"1:00 New brush in: curve towards the copper",
		"9:59: the cap is black",
		"in the title: it is a drill",
		"1:00 New brush in: two springs, one a side",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	for name, text := range map[string][]byte{"description.txt": Describe(p, all).Text, "description.md": Describe(p, all).Markdown, "comment.txt": Comment(p, all)} {
		if !strings.Contains(string(text), "1:00 New brush in: not 5 N·m but 3 N·m") {
			t.Errorf("%s does not have it:\n%s", name, text)
		}
	}
}
