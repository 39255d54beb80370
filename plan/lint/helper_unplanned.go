package lint

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var helperUnplanned = Rule{Name: "helper-unplanned", Group: Completeness, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	helped := slices.ContainsFunc(p.Plan.Steps, func(s plan.Step) bool { return len(s.People)+len(s.Cues) > 0 })
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		for _, id := range s.People {
			for _, person := range p.Plan.Person(id) {
				if i == p.firstWith(id) && id != p.Plan.Presenter && person.From == (plan.Clock{}) && person.Until == (plan.Clock{}) {
					report(Report{
						Message: fmt.Sprintf("%s is needed from step %q on, and the day does not say when they are there", id, s.Title.Print),
						Hint:    `add from = "11:00", until = "12:00" to them under [shoot] people`,
						Path:    stepPath(i, "people"),
					})
				}
			}
		}
		if helped {
			continue
		}
		key, c := "", pairAsked(p.Plan, s)
		switch {
		case asksPair(s.Do.Print):
			key = "do"
		case says(p.words[i], secondHands...) || handsAsked(p.words[i]):
			key = "title"
		case c != nil:
			report(Report{
				Message: fmt.Sprintf("the caution %q of step %q asks for two people, and nobody is planned for it", c.Card.Print, s.Title.Print),
				Hint:    planHelper,
				Path:    stepPath(i, "cautions"),
			})
		}
		if key != "" {
			report(Report{
				Message: fmt.Sprintf("step %q wants a second pair of hands, and nobody is planned for it", s.Title.Print),
				Hint:    planHelper,
				Path:    stepPath(i, key),
			})
		}
	}
}}

const planHelper = `add people = ["helper"] and a [[step.cue]] with who, when, does and where`

// pairAsked is the first caution spoken in a step that asks for two people.
func pairAsked(p *plan.Plan, s *plan.Step) *plan.Caution {
	for _, use := range s.Cautions {
		if c := p.CautionOf(s, use); c != nil && use.Spoken && asksPair(c.Say.Print) {
			return c
		}
	}
	return nil
}

// asksPair holds where a text asks for two people, and for nothing that would
// do instead ("a second person or a hoist"). A negation counts where it comes
// first: "two people, and don't lift" still asks for them.
func asksPair(text string) bool {
	for sentence := range strings.SplitSeq(fold(text), " . ") {
		sentence = " " + sentence + " "
		for _, pair := range pairWords {
			before, _, found := strings.Cut(sentence, " "+pair+" ")
			if found && !says(before+" ", "no", "not", "never", "don't") && !says(sentence, "or", "if", "unless") {
				return true
			}
		}
	}
	return false
}

// pairWords are ways of asking for two people.
var pairWords = []string{"two people", "two persons", "two adults", "two of you", "two of us", "both of you", "both of us", "a second person", "another person", "a second adult", "another adult", "second pair of hands", "four hands", "a helper", "two-person"}

// secondHands are ways of saying that somebody else takes part.
var secondHands = []string{
	"my helper", "a helper", "the helper", "a second person", "second pair of hands", "somebody hold", "someone hold", "somebody to", "someone to",
	"get someone", "get somebody", "have someone", "have somebody", "a mate", "my mate", "an assistant", "my assistant", "somebody else", "someone else",
}

// firstWith is the first step that takes a person, -1 for none.
func (p *Pass) firstWith(id string) int {
	return slices.IndexFunc(p.Plan.Steps, func(s plan.Step) bool { return slices.Contains(s.People, id) })
}
