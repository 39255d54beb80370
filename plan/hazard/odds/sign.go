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

// hash is where a sign is looked for in the table of signs.
func (s Sign) hash() uint32 {
	head := [...]byte{s.Kind, byte(s.Number), byte(s.Number >> 8)}
	h := Hash(Hash(Unhashed, head[:]), s.Word)
	return h ^ h>>16
}

// Unhashed is what a Hash begins with.
const Unhashed = 2166136261

// Hash is FNV-1a: it goes on with a text from what was hashed before.
func Hash[T string | []byte](h uint32, text T) uint32 {
	for i := range len(text) {
		h = Hashed(h, text[i])
	}
	return h
}

// Hashed goes on with one byte.
func Hashed(h uint32, c byte) uint32 { return (h ^ uint32(c)) * 16777619 }
