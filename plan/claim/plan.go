package claim

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/prose"
)

// Plan reads every spoken line of the steps, in story order, with the evidence
// that the plan holds for it. Cautions are left out: "the fan could start" is
// how a warning is worded.
func Plan(p *plan.Plan) []Claim {
	on := newShelf(p)
	var all []Claim
	for i := range p.Steps {
		s := &p.Steps[i]
		for _, part := range []struct {
			key   string
			lines []plan.Line
		}{{"say", s.Lines}, {"other_side", s.OtherSaid}} {
			path := fmt.Sprintf("step[%d].%s", i, part.key)
			for _, l := range part.lines {
				if l.Kind != plan.Spoken {
					continue
				}
				c := Sentence(l.Print)
				c.Path = path
				c.Start, c.End = l.Start, l.Start+len(l.Source)
				for j := range c.Values {
					c.Values[j].Quoted = slices.ContainsFunc(l.Quotes, func(q plan.Quote) bool {
						return c.Values[j].Start < q.End && q.Start < c.Values[j].End
					})
				}
				if c.NeedsEvidence {
					c.Evidence = on.evidence(s, &l)
				}
				all = append(all, c)
			}
		}
	}
	return all
}

// shelf holds what a plan has as evidence, its words made ready once.
type shelf struct {
	plan    *plan.Plan
	sources map[plan.Ref][]string
	tests   map[string][]string // what a test speaks of, a text for each version
	says    []string            // of each [[claim]], its words with a space around each; a space alone for none
	texts   []string
}

func newShelf(p *plan.Plan) *shelf {
	s := &shelf{plan: p, sources: map[plan.Ref][]string{}, tests: map[string][]string{}}
	for _, f := range p.Facts() {
		s.sources[f.Ref] = append(s.sources[f.Ref], p.Cites(f.Ref)...)
	}
	for i := range p.Tests {
		t := &p.Tests[i]
		s.tests[t.ID] = append(s.tests[t.ID], t.Question.Print+" "+t.How.Print+" "+t.At.Print)
	}
	for i := range p.Claims {
		s.says = append(s.says, wordsOf(p.Claims[i].Says))
		s.texts = append(s.texts, p.Claims[i].Text.Print)
	}
	return s
}

// evidence lists what stands behind a line, each once.
func (s *shelf) evidence(step *plan.Step, l *plan.Line) []string {
	var found []string
	add := func(what string) {
		if !slices.Contains(found, what) {
			found = append(found, what)
		}
	}
	for _, q := range l.Quotes {
		if q.Ref.Kind == plan.KindTest {
			add(q.Ref.String())
		}
		for _, id := range s.sources[q.Ref] {
			add("source:" + id)
		}
	}
	if len(step.Tests) > 0 || len(s.says) > 0 {
		s.told(step, wordsOf(l.Print), add)
	}
	if step.Opinion {
		add("opinion")
	}
	return found
}

// told adds the tests of the step that speak of what is said, and the claims
// that answer for it.
func (s *shelf) told(step *plan.Step, said string, add func(string)) {
	for _, id := range step.Tests {
		for _, text := range s.tests[id] {
			if sharesWord(said, text) {
				add("test:" + id)
			}
		}
	}
	for i, says := range s.says {
		c := &s.plan.Claims[i]
		answers := says != " " && strings.Contains(said, says) || says == " " && slices.Contains(step.Claims, c.ID) && sharesWord(said, s.texts[i])
		if !answers {
			continue
		}
		for _, ref := range c.Evidence {
			add(ref.String())
		}
		if c.Opinion {
			add("opinion")
		}
	}
}

// wordsOf is a text's words with a space around each.
func wordsOf(text string) string {
	var b strings.Builder
	b.WriteByte(' ')
	for _, s := range prose.Words(text) {
		b.WriteString(prose.Fold(s.Of(text)))
		b.WriteByte(' ')
	}
	return b.String()
}

// sharesWord holds where a word of content stands in both: no joining word, no
// verb of the workshop.
func sharesWord(said, text string) bool {
	v, k := vocabulary(), kindsOfWord()
	for w := range strings.FieldsSeq(wordsOf(text)) {
		c := v.of(w)
		if c&k.weak != 0 {
			c &^= k.order | k.weak // "strap" and "drain" are things too
		}
		if len(w) > 3 && c&(k.glue|k.det|k.prep|k.lead|k.order|k.states|k.modal|k.wh|k.pronoun|k.person) == 0 && strings.Contains(said, " "+w+" ") {
			return true
		}
	}
	return false
}
