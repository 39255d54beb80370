package hazard

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Bounds of what is read as one stretch of text. A sentence of a million words
// is read in stretches, so that time stays linear; a word longer than a line is
// no word.
const (
	stretchMax = 80 // words
	wordMax    = 40 // bytes
)

// token is one word of a text with what the lexicon knows of it.
type token struct {
	start, end int32
	form       int32 // of the lexicon, 0: unknown
	grammar    grammar
	begins     uint16
	kind       formKind
	sentence   int32 // rises at full stops and line ends
	comma      bool  // a comma or the like stands before it
	bar        bool  // a clause ends before it: bracket, semicolon, dash
	blank      bool  // part of a look-alike
}

// tokens appends the words of text: letters, digits and apostrophes; a hyphen
// ends a word, "'s" is left off, digits are parted from the letters of a unit.
func (x *lexicon) tokens(dst []token, text string) []token {
	var lower [wordMax + utf8.UTFMax]byte
	sentence, comma, bar := int32(0), false, true
	for i := 0; i < len(text); {
		end, n := word(&lower, text, i)
		if end > i {
			if n <= wordMax {
				dst = append(dst, token{start: int32(i), end: int32(end), sentence: sentence, comma: comma, bar: bar})
				x.lookUp(&dst[len(dst)-1], lower[:n])
				comma, bar = false, false
			}
			i = end
			continue
		}
		r, size := runeAt(text, i)
		i += size
		switch r {
		case ' ':
		case '\n':
			sentence++
			bar = true
		case '.', '!', '?':
			if endsHere(text, i) {
				sentence++
				bar = true
			}
		case ',':
			comma = true
		case ';', ':', '(', ')', '[', ']', '–', '—':
			bar = true
		case '-':
			bar = bar || endsHere(text, i)
		}
	}
	return dst
}

// word is where the word that begins at a byte of a text ends, the same byte
// where none does, and how many bytes it has in lower case; those over wordMax
// are not written down.
func word(lower *[wordMax + utf8.UTFMax]byte, text string, start int) (end, n int) {
	i := start
	digit := false
	for i < len(text) {
		b := text[i]
		if b >= utf8.RuneSelf {
			r, size := utf8.DecodeRuneInString(text[i:])
			if !inWord(r) {
				break
			}
			if n <= wordMax {
				n += utf8.EncodeRune(lower[n:], fold(r))
			}
			i += size
			continue
		}
		c := folded[b]
		if c == 0 || digit && !isDigit(rune(c)) && isUnit(text[i:]) {
			break
		}
		if i == start {
			digit = isDigit(rune(c))
		}
		if n <= wordMax {
			lower[n] = c
			n++
		}
		i++
	}
	return i, n
}

// folded is by byte what it is in a word, in lower case; 0 for what is in none.
var folded = func() (t [utf8.RuneSelf]byte) {
	for b := range t {
		if r := rune(b); inWord(r) {
			t[b] = byte(fold(r))
		}
	}
	return t
}()

// spelled says whether a word stands in the text as its form is spelled, but for
// capitals.
func (x *lexicon) spelled(t *token) bool {
	return t.form > 0 && t.form != x.own.number && int(t.end-t.start) == len(x.forms.list[t.form].text)
}

func runeAt(text string, i int) (rune, int) {
	if text[i] < utf8.RuneSelf {
		return rune(text[i]), 1
	}
	return utf8.DecodeRuneInString(text[i:])
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }

// isUnit says whether a number ends here and a unit begins: "12v" is "12 v",
// but "2k" and "r134a" stay whole.
func isUnit(rest string) bool {
	for _, unit := range [...]string{"v", "V", "mm", "kg", "volt"} {
		if after, ok := strings.CutPrefix(rest, unit); ok {
			r, _ := utf8.DecodeRuneInString(after)
			return after == "" || !inWord(r)
		}
	}
	return false
}

// lookUp notes what the lexicon knows of a word in lower case.
func (x *lexicon) lookUp(t *token, word []byte) {
	for len(word) > 0 && word[0] == '\'' {
		word = word[1:]
	}
	for len(word) > 0 && word[len(word)-1] == '\'' {
		word = word[:len(word)-1]
	}
	if len(word) == 0 {
		return
	}
	n := len(word)
	id := x.forms.find(word)
	if id == 0 && n > 2 && word[n-2] == '\'' && word[n-1] == 's' {
		id = x.forms.find(word[:n-2])
	}
	digits := isDigit(rune(word[0]))
	if id == 0 && digits {
		id = x.own.number
	}
	f := &x.forms.list[id]
	t.form, t.grammar, t.begins, t.kind = id, f.grammar, f.begins, f.kind
	switch {
	case digits:
		t.grammar |= number
	case id == 0 && n > 4 && word[n-1] == 'y' && word[n-2] == 'l':
		t.grammar = adverb // "carefully"
	}
}

func inWord(r rune) bool {
	if r < utf8.RuneSelf {
		return 'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z' || isDigit(r) || r == '\''
	}
	return r == '’' || unicode.IsLetter(r) || unicode.IsDigit(r)
}

func fold(r rune) rune {
	switch {
	case 'A' <= r && r <= 'Z':
		return r + 'a' - 'A'
	case r < utf8.RuneSelf:
		return r
	case r == '’':
		return '\''
	}
	return unicode.ToLower(r)
}

// endsHere says whether a full stop ends a sentence: white space or the end of
// the text follows, so that "1.5" stays whole.
func endsHere(text string, i int) bool {
	return i >= len(text) || strings.IndexByte(" \t\r\n\"')", text[i]) >= 0
}
