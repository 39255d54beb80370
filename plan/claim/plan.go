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
	sources := map[plan.Ref][]string{}
	for _, f := range p.Facts() {
		sources[f.Ref] = append(sources[f.Ref], sourcesOf(p, f.Ref)...)
	}
	var all []Claim
	for i := range p.Steps {
		s := &p.Steps[i]
		for _, part := range []struct {
			key   string
			lines []plan.Line
		}{{"say", s.Lines}, {"other_side", s.OtherSaid}} {
			for _, l := range part.lines {
				if l.Kind != plan.Spoken {
					continue
				}
				c := Sentence(l.Print)
				c.Path = fmt.Sprintf("step[%d].%s", i, part.key)
				c.Start, c.End = l.Start, l.Start+len(l.Source)
				for j := range c.Values {
					c.Values[j].Quoted = slices.ContainsFunc(l.Quotes, func(q plan.Quote) bool {
						return c.Values[j].Start < q.End && q.Start < c.Values[j].End
					})
				}
				if c.NeedsEvidence {
					c.Evidence = evidence(p, s, l, sources)
				}
				all = append(all, c)
			}
		}
	}
	return all
}

// evidence lists what stands behind a line, each once.
func evidence(p *plan.Plan, s *plan.Step, l plan.Line, sources map[plan.Ref][]string) []string {
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
		for _, id := range sources[q.Ref] {
			add("source:" + id)
		}
	}
	said := wordsOf(l.Print)
	for _, id := range s.Tests {
		for _, t := range p.Test(id) {
			if sharesWord(said, t.Question.Print+" "+t.How.Print+" "+t.At.Print) {
				add("test:" + id)
			}
		}
	}
	for i := range p.Claims {
		c := &p.Claims[i]
		says := wordsOf(c.Says)
		answers := says != " " && strings.Contains(said, says) || says == " " && slices.Contains(s.Claims, c.ID) && sharesWord(said, c.Text.Print)
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
	if s.Opinion {
		add("opinion")
	}
	return found
}

// sourcesOf lists the sources of a fact in all its versions.
func sourcesOf(p *plan.Plan, ref plan.Ref) []string {
	var ids []string
	switch ref.Kind {
	case plan.KindPart:
		for _, f := range p.Part(ref.ID) {
			ids = append(ids, f.Source...)
		}
	case plan.KindFastener:
		for _, f := range p.Fastener(ref.ID) {
			ids = append(ids, f.Source...)
		}
	case plan.KindFuse:
		for _, f := range p.Fuse(ref.ID) {
			ids = append(ids, f.Source...)
		}
	case plan.KindWire:
		for _, f := range p.Wire(ref.ID) {
			ids = append(ids, f.Source...)
		}
	case plan.KindSpec:
		for _, f := range p.Spec(ref.ID) {
			ids = append(ids, f.Source...)
		}
	case plan.KindTest:
		for _, f := range p.Test(ref.ID) {
			ids = append(ids, f.Source...)
		}
	}
	return ids
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
		if len(w) > 3 && v.words[w]&(k.glue|k.det|k.prep|k.lead|k.order|k.states|k.modal|k.wh|k.pronoun|k.person) == 0 && strings.Contains(said, " "+w+" ") {
			return true
		}
	}
	return false
}
