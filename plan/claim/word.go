package claim

import (
	"strings"

	"fixslate/plan/prose"
)

// word is one word of a sentence, contractions opened: "it's" is two.
type word struct {
	text       string
	start, end int   // bytes of the sentence; parts of a contraction share theirs
	id         int32 // in the lexicon, 0 for a word it does not know
	hash       uint32
	classes    class
	marks      marks
	mood       mood
	stopped    bool // punctuation that ends a clause stands before it
	number     bool // digits, or a word for a number
}

var tails = []struct{ tail, word string }{
	{"n't", "not"}, {"'ll", "will"}, {"'ve", "have"}, {"'m", "am"}, {"'re", "are"}, {"'d", "would"},
}

// cut cuts a sentence into its words and puts them behind others.
func (v *lexicon) cut(list []word, text string, spans []prose.Span) []word {
	last := 0
	for _, span := range spans {
		first := len(list)
		s := v.spell(span.Of(text))
		t := &v.terms[s.id]
		// "what lets the air in" is no "let us"
		lets := s.folded == "lets" && first > 0 && list[first-1].classes&(v.lead|v.glue) == 0
		number := s.digits || t.marks&figure != 0 || s.marks && v.isNumber(s.folded)
		add := func(part string, id int32, hash uint32) {
			t := &v.terms[id]
			list = append(list, word{text: part, start: span.Start, end: span.End, id: id, hash: hash, classes: t.classes, marks: t.marks, number: number})
		}
		if t.whole == "" && !s.marks || lets {
			add(s.folded, s.id, s.hash)
		} else {
			v.open(s.folded, t.whole, func(part string) { h := hashOf(part); add(part, v.look(h, part), h) })
		}
		if between := text[last:span.Start]; between != " " {
			list[first].stopped = len(between) > 1 && strings.ContainsAny(between, ",;:()?!—–…\"“”") || strings.Contains(between, " - ") || strings.Contains(between, "..")
		}
		last = span.End
	}
	return list
}

// open gives the words of a contraction, or the word itself; whole is what the
// lexicon has for it.
func (v *lexicon) open(folded, whole string, add func(string)) {
	if whole != "" {
		for part := range strings.FieldsSeq(whole) {
			add(part)
		}
		return
	}
	if at := strings.IndexByte(folded, '\''); at > 0 {
		for _, t := range tails {
			if stem, ok := strings.CutSuffix(folded, t.tail); ok && stem != "" {
				add(stem)
				add(t.word)
				return
			}
		}
		if stem, ok := strings.CutSuffix(folded, "'s"); ok && stem != "" {
			add(stem)
			if v.terms[v.find(stem)].marks&beIs != 0 {
				add("is")
			} else {
				add("'s")
			}
			return
		}
	}
	add(folded)
}

// isNumber holds for words that make a figure, or may.
func (v *lexicon) isNumber(w string) bool {
	if strings.ContainsAny(w, "0123456789") || v.terms[v.find(w)].marks&figure != 0 {
		return true
	}
	head, _, hyphened := strings.Cut(w, "-")
	return hyphened && v.terms[v.find(head)].marks&figure != 0
}
