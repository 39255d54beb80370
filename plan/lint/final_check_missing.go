package lint

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

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
		last = p.endsWithFitting()
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

// endsWithFitting is the step at whose words a plan without states, parts and
// fasteners ends: something came off before or a new one goes in, it is put on, and
// nothing is done or said after it but goodbye. -1 where it ends otherwise: how a
// result is looked at has no end of words.
func (p *Pass) endsWithFitting() int {
	last, apart := -1, false
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		if last >= 0 && !s.Do.Empty() {
			last = -1
		}
		for _, l := range s.Lines {
			if l.Kind != plan.Spoken {
				continue
			}
			switch words := fold(l.Print); {
			case (apart || says(words, "new")) && s.HandsOn() && putOn().MatchString(words):
				last, apart = i, true
			case takenOff().MatchString(words):
				last, apart = -1, true
			case !says(words, farewells...):
				last = -1
			}
		}
	}
	return last
}

// takenOff and putOn find in folded words what a plan without states tells:
// "old washer out", "undo the lens", and "new washer in", "lens back on".
var (
	takenOff = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(` (?:undo|unscrew|remove|unbolt|unclip|dismantle) | (?:take|pull|lift|prise|slide|pop|twist|knock|tap|cut|wind|press|work|peel) (?:[^ .]+ ){0,5}(?:off|out) | old (?:[^ .]+ ){1,3}(?:out|off) `)
	})
	putOn = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`^ (?:now |then |and |so )?(?:fit|refit) | new (?:[^ .]+ ){1,4}(?:in|on) | (?:goes|go|put|push|screw|slide|bolt|clip|pop) (?:[^ .]+ ){0,5}back (?:in|on|together) | (?:in|on) goes | [^ .]+ back (?:in|on|together) `)
	})
	farewells = []string{"thanks", "thank you", "that's it", "that is it", "that was it", "that was all", "that's all", "that is all", "see you", "bye", "goodbye", "done", "finished", "next time", "next week", "subscribe", "good luck", "job done", "until then", "cheers"}
)

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
