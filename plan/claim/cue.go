package claim

import (
	"math/bits"
	"slices"
	"strings"
)

// cue is a pattern of words that shows a kind of claim where it stands in a
// clause of one of its moods. The file cues.txt says how patterns are written.
type cue struct {
	kind     Kind
	bit      kinds
	moods    mood
	wants    [2]want
	elements []element
}

// want is what a sentence must have somewhere, or an element of a pattern holds
// nowhere in it: most patterns begin with words that stand in every sentence, and
// a glance at the rest saves walking along them.
type want struct {
	ids           uint64 // words, a bit for many
	asked, others class
}

// bit is the bit of a word, which it shares with others.
func bit(id int32) uint64 { return 1 << (uint32(id) % 64) }

// met says whether a sentence may have what is wanted; has is what all its words
// are.
func (w *want) met(has *want) bool {
	return w.ids&has.ids != 0 || w.asked&has.asked != 0 || w.others&has.others != 0
}

// element is one place of a pattern.
type element struct {
	ids           []int32 // words
	asked, others class   // lists
	any           bool    // any word
	numeric       bool    // a number
	plural        bool    // a word in -s or -ing
	gap           bool    // up to longestGap words
	optional      bool
	absent        bool // the word must not follow; takes none
}

const longestGap = 3

// cueBook has the patterns by what they begin with: a word (chains of links from
// its term), a list (by its bit) or anything.
type cueBook struct {
	cues   []cue
	links  []link
	asked  [64][]int32
	others [64][]int32
	leads  listed // the lists that patterns begin with
	open   []int32
}

// link is one pattern of a chain, and the next link.
type link struct{ cue, next int32 }

func (e *element) holds(v *lexicon, w *word) bool {
	switch {
	case e.any, w.id > 0 && (w.classes&e.asked != 0 || e.others != 0 && v.terms[w.id].others&e.others != 0 || slices.Contains(e.ids, w.id)):
		return true
	case e.numeric && w.number:
		return true
	}
	return e.plural && len(w.text) > 3 && w.text[0] >= 'a' && (strings.HasSuffix(w.text, "s") && !strings.HasSuffix(w.text, "ss") || strings.HasSuffix(w.text, "ing"))
}

// matches says whether the pattern stands at word i. A pattern never reaches
// over the end of a clause that punctuation marks.
func (r *reader) matches(pattern []element, i int) bool {
	for p := range pattern {
		e := &pattern[p]
		if e.absent {
			if i < len(r.words) && !r.words[i].stopped && e.holds(r.known, &r.words[i]) {
				return false
			}
			continue
		}
		if e.gap {
			for skip := 0; skip <= longestGap && i+skip <= len(r.words); skip++ {
				if r.matches(pattern[p+1:], i+skip) {
					return true
				}
			}
			return false
		}
		holds := i < len(r.words) && (p == 0 || !r.words[i].stopped) && e.holds(r.known, &r.words[i])
		if !holds && !e.optional {
			return false
		}
		if holds {
			if e.optional && r.matches(pattern[p+1:], i) {
				return true
			}
			i++
		}
	}
	return true
}

// phrases applies the cues at every word.
func (r *reader) phrases() {
	book := &r.known.book
	r.whole = want{}
	for i := range r.words {
		t := &r.known.terms[r.words[i].id]
		r.whole.ids |= bit(r.words[i].id)
		r.whole.asked |= t.classes
		r.whole.others |= t.others
	}
	for i := range r.words {
		t := &r.known.terms[r.words[i].id]
		for at := t.first; at > 0; at = book.links[at].next {
			r.try(book, book.links[at].cue, i)
		}
		for set := t.classes & book.leads.asked; set != 0; set &= set - 1 {
			r.tryAll(book, book.asked[bits.TrailingZeros64(uint64(set))], i)
		}
		for set := t.others & book.leads.other; set != 0; set &= set - 1 {
			r.tryAll(book, book.others[bits.TrailingZeros64(uint64(set))], i)
		}
		r.tryAll(book, book.open, i)
	}
}

func (r *reader) tryAll(book *cueBook, list []int32, i int) {
	for _, c := range list {
		r.try(book, c, i)
	}
}

func (r *reader) try(book *cueBook, number int32, i int) {
	c := &book.cues[number]
	if r.words[i].mood&c.moods == 0 || r.found&c.bit != 0 || !c.wants[0].met(&r.whole) || !c.wants[1].met(&r.whole) || !r.matches(c.elements, i) {
		return
	}
	if c.kind == Frequency && r.in(i, r.known.often) && r.said(i, r.known.self) && !r.in(i+1, r.known.seeing) {
		return // "where I'd normally stop"
	}
	if c.kind == Comparison && r.figurative(i) {
		return
	}
	if c.kind == Causal && r.films() {
		return
	}
	if c.kind != Universal || !r.purpose(i) && !r.conditioned(i) && !r.besetting(i) {
		r.found |= c.bit
	}
}

// purpose says whether word i stands in what something is done for: "so that they
// can't slip" asserts nothing.
func (r *reader) purpose(i int) bool {
	const reach = 5
	found := false
	r.clauseBefore(i, reach, func(j int) bool {
		found = found || r.is(j, "so") && (r.is(j+1, "that") || r.is(j+1, "they") || r.is(j+1, "it") || j+1 == i && r.words[0].mood == order)
		return !found
	})
	return found
}

// besetting says whether people at word i are whom a thing besets: "the one everybody
// forgets" tells where to look.
func (r *reader) besetting(i int) bool {
	return (r.is(i, "everybody") || r.is(i, "everyone")) && !r.words[i].stopped && (r.is(i-1, "one") || r.is(i-1, "ones") || r.in(i-1, r.known.idle))
}
