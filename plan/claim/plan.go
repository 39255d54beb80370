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
	lines := 0
	for i := range p.Steps {
		lines += len(p.Steps[i].Lines) + len(p.Steps[i].OtherSaid)
	}
	on := shelf{plan: p, money: moneyOf(p.Video.Region), all: make([]Claim, 0, lines)}
	for i := range p.Steps {
		s := &p.Steps[i]
		on.read(s, s.Lines, i, "say")
		on.read(s, s.OtherSaid, i, "other_side")
	}
	return on.all
}

// shelf holds what a plan has as evidence, its words made ready when they are
// first asked for, and the claims read so far.
type shelf struct {
	plan    *plan.Plan
	money   string // of the plan's region
	all     []Claim
	sources map[plan.Ref][]string
	tests   map[string][][]string // of what a test speaks, for each version
	claims  []claim               // nil: not made ready yet
	said    []int                 // of claims: those that say in which words they are made
}

// claim is a [[claim]] of the plan.
type claim struct {
	says string   // its words with a space around each; a space alone for none
	text []string // the words of content of its text
}

// read adds the claims of a step's lines under a key.
func (s *shelf) read(step *plan.Step, lines []plan.Line, i int, key string) {
	if len(lines) == 0 {
		return
	}
	path := fmt.Sprintf("step[%d].%s", i, key)
	for k := range lines {
		l := &lines[k]
		if l.Kind != plan.Spoken {
			continue
		}
		c := sentence(l.Print, s.money)
		c.Path = path
		c.Start, c.End = l.Start, l.Start+len(l.Source)
		for j := range c.Values {
			v := &c.Values[j]
			v.Quoted = slices.ContainsFunc(l.Quotes, func(q plan.Quote) bool { return v.Start < q.End && q.Start < v.End })
		}
		if c.NeedsEvidence {
			c.Evidence = s.evidence(step, l)
		}
		s.all = append(s.all, c)
	}
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
		for _, id := range s.cites(q.Ref) {
			add("source:" + id)
		}
	}
	if len(step.Tests) > 0 || len(s.plan.Claims) > 0 {
		s.told(step, wordsOf(l.Print), add)
	}
	if step.Opinion {
		add("opinion")
	}
	return found
}

// cites are the sources of a fact.
func (s *shelf) cites(ref plan.Ref) []string {
	ids, ok := s.sources[ref]
	if !ok {
		if s.sources == nil {
			s.sources = map[plan.Ref][]string{}
		}
		ids = s.plan.Cites(ref)
		s.sources[ref] = ids
	}
	return ids
}

// test is of what a test speaks: its words of content, for each version.
func (s *shelf) test(id string) [][]string {
	versions, ok := s.tests[id]
	if !ok {
		if s.tests == nil {
			s.tests = map[string][][]string{}
		}
		for _, t := range s.plan.Test(id) {
			versions = append(versions, content(t.Question.Print+" "+t.How.Print+" "+t.At.Print))
		}
		s.tests[id] = versions
	}
	return versions
}

// answers are the plan's [[claim]]s.
func (s *shelf) answers() []claim {
	if s.claims == nil {
		for i := range s.plan.Claims {
			c := &s.plan.Claims[i]
			s.claims = append(s.claims, claim{says: wordsOf(c.Says), text: content(c.Text.Print)})
			if s.claims[i].says != " " {
				s.said = append(s.said, i)
			}
		}
	}
	return s.claims
}

// asked are the claims that may answer for a line of a step, in order: those that
// its words may make, and those that the step names.
func (s *shelf) asked(step *plan.Step) []int {
	if len(step.Claims) == 0 {
		return s.said
	}
	all := slices.Clone(s.said)
	for _, id := range step.Claims {
		all = append(all, s.plan.Find(plan.Ref{Kind: plan.KindClaim, ID: id})...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// told adds the tests of the step that speak of what is said, and the claims
// that answer for it.
func (s *shelf) told(step *plan.Step, said string, add func(string)) {
	for _, id := range step.Tests {
		for _, words := range s.test(id) {
			if shares(said, words) {
				add("test:" + id)
			}
		}
	}
	claims := s.answers()
	for _, i := range s.asked(step) {
		a, c := &claims[i], &s.plan.Claims[i]
		answers := a.says != " " && strings.Contains(said, a.says) || a.says == " " && slices.Contains(step.Claims, c.ID) && shares(said, a.text)
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

// content is the words of content in a text: no joining word, no verb of the
// workshop.
func content(text string) []string {
	v, k := vocabulary(), kindsOfWord()
	var words []string
	for w := range strings.FieldsSeq(wordsOf(text)) {
		c := v.of(w)
		if c&k.weak != 0 {
			c &^= k.order | k.weak // "strap" and "drain" are things too
		}
		if len(w) > 3 && c&(k.glue|k.det|k.prep|k.lead|k.order|k.states|k.modal|k.wh|k.pronoun|k.person) == 0 {
			words = append(words, w)
		}
	}
	return words
}

// shares holds where one of some words stands in what is said.
func shares(said string, words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(said, " "+w+" ") })
}
