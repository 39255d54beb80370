package lint

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan/diag"
)

var chapterTitlesAlike = Rule{Name: "chapter-titles-alike", Group: Publish, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	first := map[string]int{}
	for i, c := range p.Chapters {
		words := titleWords(c.Title)
		if at, twice := first[words]; twice && words != "" && len(c.Steps) > 0 {
			report(Report{
				Message: fmt.Sprintf("chapters %d and %d have the same words for a title: %q", at+1, i+1, c.Title),
				Hint:    "say what differs: the part, the side, off or on again",
				Path:    stepPath(c.Steps[0], "title"),
			})
			continue
		}
		first[words] = i
	}
}}

// titleWords are a title's words in the order of the alphabet: "Cover off" and
// "Off: the cover" are told apart by no viewer.
func titleWords(title string) string {
	var words []string
	for _, w := range strings.Fields(fold(title)) {
		if w != "." && w != "the" && w != "a" && w != "an" {
			words = append(words, w)
		}
	}
	slices.Sort(words)
	return strings.Join(words, " ")
}
