package hazard

import (
	"iter"
	"slices"
	"strings"
	"sync"

	"fixslate/plan/hazard/class"
	"fixslate/plan/hazard/odds"
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

// sign is a sign of a step with the words that show it; none show what rules
// found.
type sign struct {
	odds.Sign
	at    spot
	place int32 // in the network, from 1; 0: not looked for, below 0: not there
}

// speaks holds for a sign that the network knows and words show.
func (s *sign) speaks() bool { return s.place > 0 && s.at.end > s.at.start }

// signsAbout appends the signs of what stands about a step: its object, states
// and tools, and what the rules found in it.
func (r *reader) signsAbout(signs []sign, out *Step) []sign {
	for _, b := range r.about {
		b.sign(r, namingWords[r.sources[b.text].kind], b.text)
	}
	signs = append(signs, r.subject.words...)
	for _, b := range r.about {
		signs = b.put(signs, b.words)
	}
	signs = append(signs, r.subject.marks...)
	for _, b := range r.about {
		signs = b.put(signs, b.marks)
	}
	add := func(kind byte, n int) {
		if n >= 0 {
			signs = append(signs, sign{Sign: odds.Sign{Kind: kind, Number: n}})
		}
	}
	for i := range out.Hazards {
		h := &out.Hazards[i]
		add(ruled, indexOf(h.Class))
		add(ruledIn, familyNumber(h.Family))
	}
	for i := range out.Mentions {
		add(spoken, familyNumber(out.Mentions[i].Family))
	}
	return signs
}

// namingWords are the kinds of signs that words beside the action are.
var namingWords = map[string]byte{"state": nearWord, "tool": toolWord, "supply": toolWord}

// sign makes the signs of what stands about a step, if they are not made yet: its
// words are of a kind, 0 for words that the odds don't ask for.
func (a *naming) sign(r *reader, kind byte, text int32) {
	if a.words != nil {
		return
	}
	a.words = []sign{}
	if kind != 0 {
		a.words = r.words(a.words, text, kind, r.stretch(text))
	}
	for i := range a.hits {
		if h := &a.hits[i]; h.zone >= gear {
			a.marks = r.signs(a.marks, h)
		}
	}
	if r.net == nil {
		return
	}
	for i := range a.words {
		a.words[i].place = r.place(a.words[i].Sign)
	}
}

// put appends signs of a text, which is the step's own number for it.
func (b placed) put(signs, add []sign) []sign {
	from := len(signs)
	signs = append(signs, add...)
	for i := range signs[from:] {
		signs[from+i].at.text = b.text
	}
	return signs
}

// familyNumber is the place of a family, below 0 for what is none.
func familyNumber(id string) int {
	if n, ok := familyNumbers()[id]; ok {
		return n
	}
	return -1
}

var familyNumbers = sync.OnceValue(func() map[string]int {
	at := map[string]int{}
	for i, f := range class.Families() {
		at[f.ID] = i
	}
	return at
})

// sentences calls do for each sentence of the source k, a text that may be weighed, with
// what appends its signs; of says how the text is parted.
func (r *reader) sentences(k int32, of iter.Seq[[]token], do func(add func([]sign) []sign)) {
	for toks := range of {
		end := toks[len(toks)-1].end
		do(func(signs []sign) []sign {
			signs = r.words(signs, k, doneWord, toks)
			for j := range r.past {
				if h := &r.past[j]; h.text == k && h.zone < gear && h.start >= toks[0].start && h.start < end {
					signs = r.signs(signs, h)
				}
			}
			return signs
		})
	}
}

// whole are the sentences of a text that is weighed.
func (r *reader) whole(k int32) iter.Seq[[]token] {
	return stretches(r.done[r.sources[k].from:r.sources[k].to])
}

// listMin is how long a sentence that tells the work is in words, from which on it is
// taken for a list where it has several acts. Joined to one sentence by a comma, two
// steps never learned from lost a quarter of what they show apart: some .57 of the families
// in place of .74; act by act it is .72. The odds are learned from whole sentences, most of them shorter.
const listMin = 16

// acts are the sentences of a text that is weighed, and of a list that tells the work each
// act with what follows it: "undo the plug, drain the oil, refit the plug".
func (r *reader) acts(k int32) iter.Seq[[]token] {
	return func(yield func([]token) bool) {
		for toks := range r.whole(k) {
			from := 0
			if r.sources[k].weight == telling && len(toks) >= listMin {
				heads := r.heads(k, toks)
				for i := actMin; i+1 < len(toks); i++ {
					if toks[i].comma && i-from >= actMin && slices.Contains(heads, toks[i].start) {
						if !yield(toks[from:i]) {
							return
						}
						from = i
					}
				}
			}
			if !yield(toks[from:]) {
				return
			}
		}
	}
}

// actMin is how many words an act has with what it is done to.
const actMin = 3

// heads are where the acts of a sentence begin.
func (r *reader) heads(k int32, toks []token) []int32 {
	list := r.starts[:0]
	for i := range r.past {
		if h := &r.past[i]; h.act && h.text == k && h.start >= toks[0].start && h.start <= toks[len(toks)-1].start {
			list = append(list, h.start)
		}
	}
	r.starts = list
	return list
}

// stretch is the words of a source that says what stands about a step, good until
// the next call: an object has no longer name.
func (r *reader) stretch(k int32) []token {
	r.toks = r.tokens(k)
	return r.toks[:min(len(r.toks), stretchMax)]
}

// words appends words of a source as signs of a kind.
func (r *reader) words(signs []sign, k int32, kind byte, toks []token) []sign {
	text := r.sources[k].print
	for i := range toks {
		at := spot{k, toks[i].start, toks[i].end}
		if kind == doneWord && r.net != nil && r.lex.spelled(&toks[i]) {
			place := r.weighing.known.word(toks[i].form)
			if *place == 0 {
				*place = r.place(odds.Sign{Kind: kind, Word: class.Stem(r.lex.forms.list[toks[i].form].text)})
			}
			signs = append(signs, sign{Sign: odds.Sign{Kind: kind}, at: at, place: *place})
			continue
		}
		word := class.Stem(strings.ToLower(text[at.start:at.end]))
		signs = append(signs, sign{Sign: odds.Sign{Kind: kind, Word: word}, at: at})
	}
	return signs
}

// signs appends the marks of a hit, by where it stands.
func (r *reader) signs(signs []sign, h *hit) []sign {
	kind := h.place()
	h.marks.each(func(m uint16) {
		s := sign{Sign: odds.Sign{Kind: kind, Number: int(m)}, at: h.spot()}
		if r.net != nil {
			place := r.weighing.known.mark(kind, m)
			if *place == 0 {
				*place = r.place(s.Sign)
			}
			s.place = *place
		}
		signs = append(signs, s)
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
