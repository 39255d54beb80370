package lint

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var differsUnsaid = Rule{Name: "differs-unsaid", Group: Truth, Severity: diag.Warning, Check: func(p *Pass) []Report {
	var found []Report
	for i := range p.Plan.Differs {
		d := &p.Plan.Differs[i]
		words := contentWords(d.OnCamera.Print + " . " + d.Viewers.Print)
		said := false
		for j := range p.Plan.Steps {
			if s := &p.Plan.Steps[j]; d.Step != "" && d.Step != s.ID || !spoken(s) {
				continue
			}
			for _, l := range p.Plan.Steps[j].Lines {
				said = said || l.Kind == plan.Spoken && says(fold(l.Print), words...)
			}
		}
		if said {
			continue
		}
		hint := "say it in the step where it matters"
		if d.Step != "" {
			hint = fmt.Sprintf("say it in step %q", p.Plan.Name(plan.Ref{Kind: plan.KindStep, ID: d.Step}))
		}
		found = append(found, Report{
			Message: fmt.Sprintf("the filmed object differs (%s; viewers: %s), and nobody says so", d.OnCamera.Print, d.Viewers.Print),
			Hint:    hint, Path: fmt.Sprintf("differs[%d]", i),
		})
	}
	return found
}}

// contentWords are the words of a text that mean a thing: four letters or
// more, and none that stand in every sentence.
func contentWords(text string) []string {
	var words []string
	for _, w := range strings.Fields(fold(text)) {
		if len([]rune(w)) >= 4 && !slices.Contains(emptyWords, w) {
			words = append(words, w)
		}
	}
	return words
}

var emptyWords = []string{
	"this", "that", "these", "those", "with", "without", "have", "your", "yours", "mine", "from", "they", "there", "their", "them", "then", "than", "when", "where",
	"which", "what", "will", "would", "does", "into", "onto", "over", "under", "only", "also", "most", "some", "each", "every", "here", "been", "being", "were",
	"machine", "video", "viewer", "viewers", "filmed", "camera", "keeps", "other", "different", "same",
}
