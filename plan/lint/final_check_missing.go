package lint

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
)

var finalCheckMissing = Rule{Name: "final-check-missing", Group: Completeness, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	last := -1 // the last step that puts something back or fits it
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		if p.putsBack(s, p.words[i]) || len(s.Parts) > 0 || len(s.Fasteners) > 0 && says(p.words[i], refitWords...) {
			last = i
		}
	}
	if last < 0 {
		return
	}
	for i := last; i < len(p.Plan.Steps); i++ {
		s := &p.Plan.Steps[i]
		if len(s.Tests) > 0 || says(p.words[i], checkWords...) || s.HandsOn() && says(p.words[i], useWords...) {
			return
		}
	}
	report(Report{
		Message: fmt.Sprintf("after %q nothing shows that the repair worked", p.Plan.Steps[last].Title.Print),
		Hint:    "add a last step that runs it, with a test or what to look and listen for",
		Path:    stepPath(last, "title"),
	})
}}

// putsBack holds for a step that ends a state of something taken off, out or
// apart, or one that the linter knows; "ladder-up" and "laid-down" are where
// somebody works, unless the step's words tell of putting back.
func (p *Pass) putsBack(s *plan.Step, folded string) bool {
	return slices.ContainsFunc(s.Ends, func(state string) bool {
		_, known := class.FindState(class.CanonicalState(state))
		words := strings.Split(state, "-")
		apart := slices.Contains([]string{"off", "out", "open", "apart", "loose", "removed", "undone", "down"}, words[len(words)-1]) && !slices.Contains(words, "laid") && !slices.Contains(words, "upside")
		return known || apart || says(folded, refitWords...)
	})
}

// checkWords tell that a result is looked at.
var checkWords = []string{
	"check", "checks", "test", "tests", "tested", "try", "tries", "prove", "proves", "listen", "look for", "looks for", "watch", "watch for", "see if", "see whether",
	"run a", "run it", "runs", "let it run", "leak", "leaks", "drip", "drips", "works", "working", "spin", "spins", "turns freely", "no play", "no noise",
	"start it", "starts", "switch on", "switch it on", "turn it on", "measure", "feel for", "make sure", "brake test", "road test", "lights up", "comes on", "goes out", "tug", "tug it", "holds", "count",
}

// useWords tell that the thing is used, or what the senses say of it: a check,
// where hands are at it and nobody only talks.
var useWords = []string{
	"feel", "hear", "smell", "smells", "no smell", "quiet", "silent", "not a sound", "blows", "lights", "glows", "lit", "rings", "buzzes", "hums", "heats", "warms", "cools", "boils", "charges", "opens and shuts", "opens and closes", "flows", "fills", "empties", "drains", "drive", "ride", "print", "play", "pour", "on full", "like new", "as good as new",
}
