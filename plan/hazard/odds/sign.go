package odds

import "strings"

// Sign is one thing that a step shows: a word, or a mark or finding by its
// number. Kind says what it is and where it was seen: a small letter for words
// and findings, a capital for marks.
type Sign struct {
	Kind   byte
	Word   string
	Number int
}

// Kinds of signs that the package itself knows of.
const (
	AnyWord = 'w' // a word wherever it stands
	AnyMark = 'z' // a mark wherever it stands
)

// anywhere is the sign regardless of its place: what is learned of a word or
// mark in one place counts for the others, too. False for findings.
func (s Sign) anywhere() (Sign, bool) {
	switch {
	case s.Word != "":
		s.Kind = AnyWord
	case 'A' <= s.Kind && s.Kind <= 'Z':
		s.Kind = AnyMark
	default:
		return s, false
	}
	return s, true
}

// compare orders signs.
func (s Sign) compare(o Sign) int {
	if s.Kind != o.Kind {
		return int(s.Kind) - int(o.Kind)
	}
	if s.Number != o.Number {
		return s.Number - o.Number
	}
	return strings.Compare(s.Word, o.Word)
}

// hash is FNV-1a.
func (s Sign) hash() uint32 {
	h := uint32(2166136261)
	add := func(b byte) { h = (h ^ uint32(b)) * 16777619 }
	add(s.Kind)
	add(byte(s.Number))
	add(byte(s.Number >> 8))
	for i := range len(s.Word) {
		add(s.Word[i])
	}
	return h ^ h>>16
}
