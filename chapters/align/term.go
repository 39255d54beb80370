package align

import (
	"slices"
	"strings"
	"unicode"

	"fixslate/plan"
	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// Problem: which words of the captions are terms of the trade mis-heard.
// Against a whole glossary correcting by sound does more harm than good, so
// only the terms, tools and parts of the step a word is in are offered, never
// in place of a word of that step's own text, of a number or of a unit; and
// they are offered, not put in. What the plan declares as a mis-hearing is its
// author's word, and is offered wherever it is heard.
//
// Method: weighted distance of sounds, with more leave where the planned line
// has the term at that place and it was not heard.
//
// Cost: words of a step times its terms.

const (
	termSounds   = 4    // sounds a term must have
	termApart    = 0.3  // distance of sounds up to which a word is offered …
	termExpected = 0.5  // … and where the line has the term there
	termCommon   = 0.75 // share of these left for a common word
	termPieces   = 3    // words a term may be heard as

	termDeclared  = 0.97 // confidence of a mis-hearing that the plan declares …
	termElsewhere = 0.8  // … where the step's text does not have the term
)

// name is a word, or a few that belong together, that may be mis-heard.
type name struct {
	text   string
	words  []string // stems
	sounds string
	ref    plan.Ref
	heard  []string // how the plan says it is mis-heard
	sure   float64  // that one of heard means it
}

// names are the terms, tools and parts of a step. Other terms have no sounds
// there: they are known by their declared mis-hearings alone.
func (s *settler) names(p *plan.Plan, step int) []name {
	st := &p.Steps[step]
	var all []name
	add := func(text string, ref plan.Ref, heard []string) {
		words := split(prose.Fold(text))
		if len(words) == 0 || len(words) > termPieces || strings.ContainsFunc(text, unicode.IsDigit) {
			return
		}
		n := name{text, words, sounds(strings.Join(strings.Fields(prose.Fold(text)), "")), ref, heard, termDeclared}
		if len(n.sounds) < termSounds && len(heard) == 0 || slices.ContainsFunc(all, func(o name) bool { return strings.EqualFold(o.text, text) }) {
			return
		}
		all = append(all, n)
	}
	own := strings.ToLower(st.Say + " " + st.Title.Print + " " + st.Do.Print + " " + strings.Join(hints(p, st), " "))
	for _, l := range st.Lines {
		own += " " + strings.ToLower(l.Print)
	}
	for i := range p.Terms {
		t := &p.Terms[i]
		if t.Text != "" && strings.Contains(own, strings.ToLower(t.Text)) {
			ref := plan.Ref{Kind: plan.KindTerm, ID: t.ID}
			all = append(all, name{t.Text, split(prose.Fold(t.Text)), sounds(strings.Join(strings.Fields(prose.Fold(t.Text)), "")), ref, t.Misheard, termDeclared})
		} else {
			all = append(all, declared(t)...)
		}
	}
	words := func(kind plan.Kind, ids []string) {
		for _, id := range ids {
			ref := plan.Ref{Kind: kind, ID: id}
			text := p.Name(ref)
			for _, w := range prose.Words(text) {
				word := w.Of(text)
				key := split(prose.Fold(word))
				if len(key) == 1 && !english().function[key[0]] && !english().numerals[key[0]] && !isUnit(word) {
					add(word, ref, nil)
				}
			}
		}
	}
	words(plan.KindTool, st.Tools)
	words(plan.KindPart, st.Parts)
	return all
}

// declared is a term where nothing but its declared mis-hearings may stand for
// it.
func declared(t *plan.Term) []name {
	if t.Text == "" || len(t.Misheard) == 0 {
		return nil
	}
	return []name{{text: t.Text, ref: plan.Ref{Kind: plan.KindTerm, ID: t.ID}, heard: t.Misheard, sure: termElsewhere}}
}

// pieces is how many words the name may be heard as.
func (n name) pieces() int {
	most := max(2, len(n.words)+1)
	for _, h := range n.heard {
		most = max(most, len(strings.Fields(h)))
	}
	return most
}

func isUnit(word string) bool {
	_, ok := trade.LookupUnit(word)
	return ok
}

// terms proposes terms for words that sound like them.
func (s *settler) terms(p *plan.Plan) {
	names := make([][]name, len(s.Steps))
	own := make([]map[string]bool, len(s.Steps))
	heard := make([]map[string]bool, len(s.Lines)) // the planned words a line was heard with
	for n := range s.Lines {
		heard[n] = map[string]bool{}
	}
	for i, w := range s.Words {
		if w.Line >= 0 {
			for _, k := range s.h.keys[i] {
				heard[w.Line][k] = true
			}
		}
	}
	var talk []name // for talk in no step
	for i := range p.Terms {
		talk = append(talk, declared(&p.Terms[i])...)
	}
	for i := 0; i < len(s.Words); i++ {
		step := s.Words[i].Step
		offered, spared := talk, map[string]bool(nil)
		if step >= 0 {
			if own[step] == nil {
				names[step], own[step] = s.names(p, step), s.ownWords(p, step)
			}
			offered, spared = names[step], own[step]
		}
		best, pieces := Term{}, 0
		for _, n := range offered {
			for k := 1; k <= n.pieces() && i+k <= len(s.Words); k++ {
				if s.Words[i+k-1].Step != step || s.Words[i+k-1].Cue != s.Words[i].Cue {
					break
				}
				if c := s.offer(n, i, k, spared, heard); c > best.Confidence {
					best, pieces = Term{Term: n.text, Ref: n.ref, Step: step, Confidence: c}, k
				}
			}
		}
		if pieces == 0 {
			continue
		}
		first, last := s.Words[i], s.Words[i+pieces-1]
		best.Start, best.Cue = first.Start, first.Cue
		best.Span = prose.Span{Start: first.Span.Start, End: last.Span.End}
		best.Heard = s.passage(i, i+pieces).text
		s.Terms = append(s.Terms, best)
		i += pieces - 1
	}
}

// ownWords are the stems of all that a step's text says, its titles and names
// included.
func (s *settler) ownWords(p *plan.Plan, step int) map[string]bool {
	own := map[string]bool{}
	for _, n := range s.script.of[step] {
		for _, k := range s.script.keys[n] {
			own[k] = true
		}
	}
	for _, text := range append(hints(p, &p.Steps[step]), p.Steps[step].Say) {
		for _, k := range split(prose.Fold(text)) {
			own[k] = true
		}
	}
	return own
}

// offer is how likely k words from word i on are a term mis-heard; 0 where they
// are not to be touched or sound otherwise.
func (s *settler) offer(n name, i, k int, own map[string]bool, heard []map[string]bool) float64 {
	if c := s.oddOne(n, i, k, own); c > 0 {
		return c
	}
	// Words that the plan says the term is heard as are offered whatever they
	// are, unless they are the step's own.
	if said := s.passage(i, i+k).text; slices.ContainsFunc(n.heard, func(m string) bool { return strings.EqualFold(m, said) }) {
		if s.notOwn(i, k, own) {
			return n.sure
		}
		return 0
	}
	joined, common := "", k == 1
	if !s.notOwn(i, k, own) {
		return 0
	}
	for _, w := range s.Words[i : i+k] {
		text := prose.Fold(w.Text)
		keys := split(text)
		if strings.ContainsFunc(text, unicode.IsDigit) || len(keys) != 1 || english().numerals[keys[0]] || len(text) > 2 && isUnit(text) {
			return 0
		}
		// Only a small word of the step may be a piece of a term, beside one
		// that is not the step's.
		if own[keys[0]] && (k == 1 || !english().function[keys[0]]) {
			return 0
		}
		if _, ok := english().common[keys[0]]; !ok {
			common = false
		}
		joined += text
	}
	if len(n.sounds) < termSounds {
		return 0
	}
	limit, sure := termApart, 0.75
	if s.expected(n, i, k, heard) {
		limit, sure = termExpected, 0.95
	}
	if common {
		limit *= termCommon
	}
	snd := sounds(joined)
	if len(snd) < 3 {
		return 0
	}
	d := s.ear.apart.apart(snd, n.sounds)
	if k > 1 {
		d += 0.03
	}
	if d >= limit {
		return 0
	}
	return sure * (1 - d)
}

// notOwn holds where one of k words from word i on is not the step's own.
func (s *settler) notOwn(i, k int, own map[string]bool) bool {
	return slices.ContainsFunc(s.Words[i:i+k], func(w Word) bool {
		return slices.ContainsFunc(split(prose.Fold(w.Text)), func(key string) bool { return !own[key] })
	})
}

// oddOne is how likely words are a term of which all but one stand as they are
// and that one sounds otherwise: "resistor" beside "pogk".
func (s *settler) oddOne(n name, i, k int, own map[string]bool) float64 {
	texts := strings.Fields(n.text)
	if k < 2 || k != len(n.words) || k != len(texts) {
		return 0
	}
	odd := -1
	for j, planned := range n.words {
		heard := split(prose.Fold(s.Words[i+j].Text))
		switch {
		case len(heard) == 1 && heard[0] == planned:
		case odd < 0:
			odd = j
		default:
			return 0
		}
	}
	if odd < 0 || english().function[n.words[odd]] {
		return 0
	}
	text := prose.Fold(s.Words[i+odd].Text)
	key := stem(text)
	if strings.ContainsFunc(text, unicode.IsDigit) || own[key] || english().numerals[key] || english().function[key] || len(text) > 2 && isUnit(text) {
		return 0
	}
	limit := termExpected
	if _, common := english().common[key]; common {
		limit *= termCommon
	}
	d := s.ear.apart.apart(sounds(text), sounds(prose.Fold(texts[odd])))
	if d >= limit {
		return 0
	}
	return 0.95 * (1 - d)
}

// expected holds where the planned line around the words has the term, and it
// was not heard.
func (s *settler) expected(n name, i, k int, heard []map[string]bool) bool {
	for _, j := range [...]int{i - 1, i + k, i - 2, i + k + 1, i} {
		if j < 0 || j >= len(s.Words) || s.Words[j].Line < 0 {
			continue
		}
		line := s.Words[j].Line
		keys := s.script.keys[line]
		has := true
		for _, w := range n.words {
			has = has && slices.Contains(keys, w)
		}
		if has && !heard[line][n.words[len(n.words)-1]] {
			return true
		}
	}
	return false
}
