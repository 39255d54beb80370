package claim

import (
	"strings"
	"unicode/utf8"

	"fixslate/plan/prose"
)

// index finds the words of the lexicon by their spelling: a hash table with open
// places. It is no map, since a word is hashed while it is brought to lower case,
// and most that are asked for are not there, which their hash says.
type index []place

// place is a word's; id 0 where there is none.
type place struct {
	hash uint32
	id   int32
}

const unhashed = 2166136261

// hashed is FNV-1a.
func hashed(h uint32, c byte) uint32 { return (h ^ uint32(c)) * 16777619 }

// spelled is what a word's letters say of it.
type spelled struct {
	folded        string // in the form in which words are compared
	id            int32  // in the lexicon, 0 for a word it does not know
	hash          uint32
	digits, marks bool // it has digits, hyphens or apostrophes
}

// spell reads a word letter by letter.
func (v *lexicon) spell(word string) spelled {
	h, small := uint32(unhashed), true
	s := spelled{folded: word}
	for i := range len(word) {
		c := word[i]
		switch {
		case 'a' <= c && c <= 'z':
		case '0' <= c && c <= '9':
			s.digits = true
		case c == '-' || c == '\'':
			s.marks = true
		case 'A' <= c && c <= 'Z':
			small = false
			c += 'a' - 'A'
		case c >= utf8.RuneSelf:
			if folded := prose.Fold(word); folded != word {
				return v.spell(folded)
			}
		}
		h = hashed(h, c)
	}
	s.hash = h
	if s.id = v.look(h, word); !small {
		if s.folded = v.terms[s.id].text; s.id == 0 {
			s.folded = prose.Fold(word)
		}
	}
	return s
}

// look finds a word by the hash of it in lower case, however it is written.
func (v *lexicon) look(hash uint32, word string) int32 {
	for at := hash; ; at++ {
		p := v.index[at&uint32(len(v.index)-1)]
		if p.id == 0 || p.hash == hash && isFold(v.terms[p.id].text, word) {
			return p.id
		}
	}
}

// isFold says whether a word is another but for capitals.
func isFold(small, word string) bool {
	return small == word || len(small) == len(word) && strings.EqualFold(small, word)
}

// find is the place of a word in small letters in terms, 0 for one that is not
// known.
func (v *lexicon) find(w string) int32 { return v.look(hashOf(w), w) }

func hashOf(w string) uint32 {
	h := uint32(unhashed)
	for i := range len(w) {
		h = hashed(h, w[i])
	}
	return h
}
