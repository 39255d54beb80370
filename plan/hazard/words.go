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
	start, end int
	form       int32 // of the lexicon, 0: unknown
	grammar    grammar
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
				t := token{start: i, end: end, sentence: sentence, comma: comma, bar: bar}
				t.form, t.grammar = x.lookUp(lower[:n])
				dst = append(dst, t)
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
	return t.form > 0 && t.form != x.own.number && t.end-t.start == len(x.forms.texts[t.form])
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

// lookUp is what the lexicon knows of a word in lower case.
func (x *lexicon) lookUp(word []byte) (int32, grammar) {
	for len(word) > 0 && word[0] == '\'' {
		word = word[1:]
	}
	for len(word) > 0 && word[len(word)-1] == '\'' {
		word = word[:len(word)-1]
	}
	if id := x.forms.find(word); id > 0 && len(word) > 0 {
		g := x.grammar[id]
		if isDigit(rune(word[0])) {
			g |= number
		}
		return id, g
	}
	if n := len(word); n > 2 && word[n-2] == '\'' && word[n-1] == 's' {
		if id := x.forms.find(word[:n-2]); id > 0 {
			return id, x.grammar[id]
		}
	}
	switch n := len(word); {
	case n > 0 && isDigit(rune(word[0])):
		return x.own.number, number
	case n > 4 && word[n-1] == 'y' && word[n-2] == 'l':
		return 0, adverb // "carefully"
	}
	return 0, 0
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
