package hazard

import (
	"cmp"
	"slices"
	"strings"

	"fixslate/plan/hazard/class"
	"fixslate/plan/hazard/odds"
)

// What the relations of the lexicon don't reach, odds learned from labelled
// steps do: each sentence of what the hands do is weighed by its words, the
// lexicon's marks and what the rules found. The thresholds were chosen by
// cross-validation over the labelled steps.
const (
	likely   = 0.35 // odds from which a family is a finding
	unlikely = 0.10 // odds under which a rule's finding is only a mention
)

// The kinds of signs. Marks have a letter for where they stand, see place.
const (
	doneWord = 'd' // of the sentence that is weighed
	nearWord = 'o' // of the object and its states
	toolWord = 't'
	ruled    = 'g' // a class that rules show
	ruledIn  = 'f' // a family that they show
	spoken   = 'h' // a family that is only mentioned
)

// sign is a sign of a step with the words that show it, if words do.
type sign struct {
	odds.Sign
	at *hit
}

// weigh holds what the rules found against the odds.
func (r *reader) weigh(out *Step, answered []string) {
	net := r.net
	if net == nil {
		return
	}
	r.verdicts = r.verdicts[:0]
	about := r.signsAbout(out)
	for k := range r.sources {
		if r.sources[k].kind != "do" {
			continue
		}
		for _, sentence := range r.sentences(int32(k)) {
			r.judged(net, append(about[:len(about):len(about)], sentence...))
		}
	}
	r.settle(net, out, answered)
}

// verdict is what the odds say of one family in a step.
type verdict struct {
	odds     float32
	evidence []Evidence
}

// judged weighs one sentence and keeps, for each family, the highest odds.
func (r *reader) judged(net *odds.Net, signs []sign) {
	places := r.places[:0]
	var known []sign
	for _, s := range signs {
		if i, ok := net.Find(s.Sign); ok {
			if !slices.Contains(places, i) {
				places = append(places, i)
			}
			known = append(known, sign{odds.Sign{Number: i}, s.at})
		}
	}
	r.places = places
	r.odds = net.Odds(r.odds, &r.layer, places)
	for len(r.verdicts) < len(r.odds) {
		r.verdicts = append(r.verdicts, verdict{})
	}
	for f, o := range r.odds {
		v := &r.verdicts[f]
		if o <= v.odds {
			continue
		}
		v.odds = o
		if o >= likely {
			v.evidence = r.evidence(r.speakers(net, known, f))
		}
	}
}

// speakersMax is how many words are shown for odds.
const speakersMax = 3

// speakers are the words that speak loudest for a family, in order of place.
func (r *reader) speakers(net *odds.Net, signs []sign, family int) []*hit {
	type speaker struct {
		at  *hit
		say float32
	}
	var all []speaker
	for _, s := range signs {
		if s.at == nil {
			continue
		}
		say := net.Speaks(&r.layer, s.Number, family)
		k := slices.IndexFunc(all, func(o speaker) bool {
			return o.at.text == s.at.text && o.at.start <= s.at.start && s.at.start < o.at.end
		})
		if k < 0 {
			all = append(all, speaker{at: s.at})
			k = len(all) - 1
		}
		all[k].say += say
	}
	slices.SortStableFunc(all, func(a, b speaker) int { return cmp.Compare(b.say, a.say) })
	var at []*hit
	for i, s := range all {
		if i == speakersMax || i > 0 && s.say < all[0].say/3 {
			break
		}
		at = append(at, s.at)
	}
	slices.SortStableFunc(at, func(a, b *hit) int {
		return cmp.Or(cmp.Compare(b.text, a.text), cmp.Compare(a.start, b.start))
	})
	return at
}

// settle adds what the odds are sure of and turns what they hold unlikely into
// a mention, where nothing but the words of the action showed it.
func (r *reader) settle(net *odds.Net, out *Step, answered []string) {
	var unsure []Hazard
	for f, family := range net.Families() {
		if f >= len(r.verdicts) {
			return
		}
		v := &r.verdicts[f]
		switch {
		case v.odds < unlikely:
			out.Hazards = slices.DeleteFunc(out.Hazards, func(h Hazard) bool {
				drop := h.Family == family && h.worded()
				if drop {
					unsure = append(unsure, h)
				}
				return drop
			})
		case v.odds >= likely && !slices.ContainsFunc(out.Hazards, func(h Hazard) bool { return h.Family == family }):
			out.Hazards = append(out.Hazards, r.classed(out, family, v, answered))
		}
	}
	for _, h := range unsure {
		if !slices.ContainsFunc(out.Mentions, func(o Hazard) bool { return o.Class == h.Class }) {
			out.Mentions = append(out.Mentions, h)
		}
	}
	out.Mentions = slices.DeleteFunc(out.Mentions, func(h Hazard) bool {
		return slices.ContainsFunc(out.Hazards, func(o Hazard) bool { return o.Class == h.Class })
	})
	for _, list := range [...][]Hazard{out.Hazards, out.Mentions} {
		slices.SortStableFunc(list, func(a, b Hazard) int {
			return cmp.Or(cmp.Compare(indexOf(a.Class), indexOf(b.Class)), cmp.Compare(a.Family, b.Family))
		})
	}
}

// worded says whether only the words of the action and what stands about it show
// the hazard: no narration, state or list of the plan.
func (h *Hazard) worded() bool {
	return !slices.ContainsFunc(h.Evidence, func(e Evidence) bool {
		return !slices.Contains([]string{"do", "tool", "subject", "trade", "title", "supply", "part"}, e.Kind)
	})
}

// classed is a hazard of a family that no rule showed: of the class that is
// mentioned, or whose words are nearest to the step's, or that leads the family.
func (r *reader) classed(out *Step, family string, v *verdict, answered []string) Hazard {
	id := ""
	for _, h := range out.Mentions {
		if h.Family == family {
			id = h.Class
			break
		}
	}
	if id == "" {
		var words strings.Builder
		for k := range r.sources {
			if kind := r.sources[k].kind; kind == "do" || kind == "subject" || kind == "tool" {
				words.WriteString(r.sources[k].print + " ")
			}
		}
		id = class.Within(family, words.String()).ID
	}
	s := shown{class: indexOf(id), family: family, evidence: v.evidence}
	h := s.hazard(answered)
	h.Odds = v.odds
	return h
}

// indexOf is the place of a class in the catalogue.
func indexOf(id string) int {
	return slices.IndexFunc(catalogue(), func(c class.Class) bool { return c.ID == id })
}

// signsAbout are the signs of what stands about a step: its object, states and
// tools, and what the rules found in it.
func (r *reader) signsAbout(out *Step) []sign {
	var signs []sign
	for k := range r.sources {
		switch r.sources[k].kind {
		case "subject", "state":
			signs = r.words(signs, int32(k), nearWord)
		case "tool", "supply":
			signs = r.words(signs, int32(k), toolWord)
		}
	}
	for i := range r.past {
		if h := &r.past[i]; h.zone >= gear {
			signs = h.signs(signs)
		}
	}
	add := func(kind byte, n int) {
		if n >= 0 {
			signs = append(signs, sign{Sign: odds.Sign{Kind: kind, Number: n}})
		}
	}
	for _, h := range out.Hazards {
		add(ruled, indexOf(h.Class))
		add(ruledIn, familyNumber(h.Family))
	}
	for _, h := range out.Mentions {
		add(spoken, familyNumber(h.Family))
	}
	return signs
}

func familyNumber(id string) int {
	return slices.IndexFunc(class.Families(), func(f class.Family) bool { return f.ID == id })
}

// sentences are the signs of each sentence of a source.
func (r *reader) sentences(k int32) [][]sign {
	var all [][]sign
	words := r.words(nil, k, doneWord)
	last := int32(-1)
	for i := 0; i < len(words); {
		sentence := words[i].at.from
		to := i
		for to < len(words) && words[to].at.from == sentence {
			to++
		}
		signs := words[i:to:to]
		end := words[to-1].at.end
		for j := range r.past {
			if h := &r.past[j]; h.text == k && h.zone < gear && h.start > last && h.start < end {
				signs = h.signs(signs)
			}
		}
		all = append(all, signs)
		last = end - 1
		i = to
	}
	return all
}

// words appends the words of a source as signs of a kind. The hit's from is the
// number of the sentence.
func (r *reader) words(signs []sign, k int32, kind byte) []sign {
	text := r.sources[k].print
	r.toks = r.lex.tokens(r.toks[:0], text)
	hits := make([]hit, len(r.toks))
	for i := range r.toks {
		t := &r.toks[i]
		h := &hits[i]
		*h = hit{text: k, start: int32(t.start), end: int32(t.end), from: t.sentence}
		word := class.Stem(strings.ToLower(text[t.start:t.end]))
		signs = append(signs, sign{odds.Sign{Kind: kind, Word: word}, h})
	}
	return signs
}

// signs appends the marks of a hit, by where it stands.
func (h *hit) signs(signs []sign) []sign {
	place := h.place()
	h.marks.each(func(m uint16) {
		signs = append(signs, sign{odds.Sign{Kind: place, Number: int(m)}, h})
	})
	return signs
}

// place is the letter of where a hit stands and what it is.
func (h *hit) place() byte {
	switch {
	case h.act && h.quiet:
		return 'Q'
	case h.act:
		return 'A'
	case h.zone == gear:
		return 'G'
	case h.zone == over && h.state:
		return 'S'
	case h.zone == over:
		return 'C'
	case h.state:
		return 'U'
	case h.quiet:
		return 'K'
	case h.modifier:
		return 'M'
	}
	return 'T'
}
