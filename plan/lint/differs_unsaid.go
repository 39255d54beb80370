package lint

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var differsUnsaid = Rule{Name: "differs-unsaid", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Differs {
		d := &p.Plan.Differs[i]
		said := false
		for j := range p.Plan.Steps {
			if s := &p.Plan.Steps[j]; d.Step != "" && d.Step != s.ID || !s.Speaks() {
				continue
			}
			for _, l := range p.Plan.Steps[j].Lines {
				said = said || l.Kind == plan.Spoken && tellsDifference(fold(l.Print), d)
			}
		}
		if said {
			continue
		}
		hint := "say it in the step where it matters"
		if d.Step != "" {
			hint = fmt.Sprintf("say it in step %q", p.Plan.Name(plan.Ref{Kind: plan.KindStep, ID: d.Step}))
		}
		report(Report{
			Message: fmt.Sprintf("the filmed object differs (%s; viewers: %s), and nobody says so", d.OnCamera.Print, d.Viewers.Print),
			Hint:    hint, Path: fmt.Sprintf("differs[%d]", i),
		})
	}
}}

// tellsDifference holds for a line that says what differs: a word by which the
// viewer's object is told from the filmed one, half of those by which the
// filmed one is told, or a word of either beside one that compares. That the
// line speaks of the same thing is not enough: most lines of the step do.
func tellsDifference(line string, d *plan.Differs) bool {
	filmed, viewers := contentWords(d.OnCamera.Print), contentWords(d.Viewers.Print)
	own := slices.DeleteFunc(slices.Clone(viewers), func(w string) bool { return slices.Contains(filmed, w) })
	if says(line, own...) {
		return true
	}
	n := 0
	telling := slices.DeleteFunc(slices.Clone(filmed), func(w string) bool { return slices.Contains(viewers, w) })
	for _, w := range telling {
		if says(line, w) {
			n++
		}
	}
	if len(telling) > 0 && 2*n >= len(telling) {
		return true
	}
	return says(line, comparing...) && says(line, slices.Concat(filmed, viewers)...)
}

// tellsVersions holds for a line of which all that means a thing stands in the
// plan's versions and differences: "grey is steel, yellow is brass".
func (p *Pass) tellsVersions(line string) bool {
	var known []string
	for i := range p.Plan.Variants {
		v := &p.Plan.Variants[i]
		known = append(known, contentWords(v.Name.Print+" . "+v.Short.Print+" . "+v.Tell.Print)...)
	}
	for i := range p.Plan.Differs {
		d := &p.Plan.Differs[i]
		known = append(known, contentWords(d.OnCamera.Print+" . "+d.Viewers.Print)...)
	}
	words := contentWords(line)
	return len(words) > 1 && !slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(known, w) })
}

// comparing are words that set the viewer's object beside the filmed one.
var comparing = []string{"mine", "yours", "your own", "on camera", "in the picture", "different", "differs", "if you have", "some have", "others have", "in some", "this one has", "may have", "might have", "other side", "other way", "mirror"}

// contentWords are the words of a text that mean a thing: four letters or
// more, and none that stand in every sentence.
func contentWords(text string) []string {
	var words []string
	for _, w := range strings.Fields(fold(text)) {
		if utf8.RuneCountInString(w) >= 4 && !slices.Contains(emptyWords, w) {
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
