package hazard

import (
	"iter"
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
	rejoins    bool
	sentence   int32 // rises at full stops and line ends
	comma      bool  // a comma or the like stands before it
	bar        bool  // a clause ends before it: bracket, semicolon, dash
	blank      bool  // part of a look-alike
}

// tokens appends the words of text: letters, digits and apostrophes; a hyphen
// ends a word, "'s" is left off, digits are parted from the letters of a unit.
func (x *lexicon) tokens(dst []token, text string) []token {
	sentence, comma, bar := int32(0), false, true
	for i := 0; i < len(text); {
		if end, plain := wordEnd(text, i); end > i {
			word := text[i:end]
			if !plain {
				word = strings.Map(fold, word)
			}
			if len(word) <= wordMax {
				dst = append(dst, token{start: int32(i), end: int32(end), sentence: sentence, comma: comma, bar: bar})
				x.lookUp(&dst[len(dst)-1], word)
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

// stretches are the sentences of a text, one longer than a stretch in several.
func stretches(toks []token) iter.Seq[[]token] {
	return func(yield func([]token) bool) {
		for from := 0; from < len(toks); {
			to := from + 1
			for to < len(toks) && to-from < stretchMax && toks[to].sentence == toks[from].sentence {
				to++
			}
			if !yield(toks[from:to]) {
				return
			}
			from = to
		}
	}
}

// wordEnd is where the word that begins at a byte of a text ends, the same byte
// where none does, and whether all its letters are of the plain alphabet.
func wordEnd(text string, start int) (end int, plain bool) {
	i, digits := start, isDigit(rune(text[start]))
	if !digits {
		for i < len(text) && inPlainWord[text[i]] {
			i++
		}
		if i == len(text) || text[i] < utf8.RuneSelf {
			return i, true
		}
	}
	for plain = true; i < len(text); {
		r, size := runeAt(text, i)
		if !inWord(r) || digits && i > start && !isDigit(r) && isUnit(text[i:]) {
			break
		}
		plain = plain && r < utf8.RuneSelf
		i += size
	}
	return i, plain
}

// inPlainWord holds for the bytes that are in a word, whatever stands beside them.
var inPlainWord = func() (is [256]bool) {
	for b := range utf8.RuneSelf {
		is[b] = inWord(rune(b))
	}
	return is
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

// lookUp notes what the lexicon knows of a word, whose plain letters may be
// capitals.
func (x *lexicon) lookUp(t *token, word string) {
	word = strings.Trim(word, "'")
	n := len(word)
	if n == 0 {
		return
	}
	id := x.forms.find(word)
	if id == 0 && n > 2 && word[n-2] == '\'' && word[n-1]|0x20 == 's' {
		id = x.forms.find(word[:n-2])
	}
	digits := isDigit(rune(word[0]))
	if id == 0 && digits {
		id = x.own.number
	}
	f := &x.forms.list[id]
	t.form, t.grammar, t.begins, t.kind, t.rejoins = id, f.grammar, f.begins, f.kind, f.rejoins
	switch {
	case digits:
		t.grammar |= number
	case id == 0 && n > 4 && word[n-1]|0x20 == 'y' && word[n-2]|0x20 == 'l':
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
