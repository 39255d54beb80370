package lint

import (
	"fmt"

	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
)

var stateMisspelt = Rule{Name: "state-misspelt", Group: Completeness, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	seen := map[string]bool{}
	look := func(list string, words []string) {
		for i, word := range words {
			if near := misspelt(word); near != "" && !seen[word] {
				seen[word] = true
				report(Report{
					Message: fmt.Sprintf("%q is a state of the plan's own, a letter away from %q", word, near),
					Hint:    fmt.Sprintf("write %q, which the rules on safety know, or another word for what it is", near),
					Path:    p.entry(list, i),
				})
			}
		}
	}
	look("shoot.begins", p.Plan.Shoot.Begins)
	look("shoot.stays", p.Plan.Shoot.Stays)
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		look(stepPath(i, "needs"), s.Needs)
		look(stepPath(i, "starts"), s.Starts)
		look(stepPath(i, "during"), s.During)
		look(stepPath(i, "ends"), s.Ends)
		for k := range s.Shots {
			var words []string
			for _, n := range s.Shots[k].Needs {
				words = append(words, n.State)
			}
			look(stepPath(i, fmt.Sprintf("shot[%d].needs", k)), words)
		}
	}
}}

// misspelt is the known state that a word of the plan's own misses by one letter;
// empty where it misses none. Two letters are too many: "tap-off" is not "gas-off",
// and "water-on" the opposite of "water-off". So are short names: "line" is not
// "live". "On-stand" is one stand.
func misspelt(word string) string {
	const shortest = 6
	if _, known := class.FindState(word); known {
		return ""
	}
	canonical := class.CanonicalState(word)
	for _, s := range class.States() {
		for _, name := range append([]string{s.Name}, s.Aliases...) {
			if len(name) >= shortest && class.Slips(canonical, name, 1) == 1 && canonical+"s" != name && canonical != name+"s" {
				return name
			}
		}
	}
	return ""
}
