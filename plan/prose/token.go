package prose

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Words gives the word tokens of a text: letters and digits with the marks that
// stand inside a word, so that "M8", "1.5", "don't", "pump-screws" and
// "N·m" are one word each.
func Words(text string) []Span {
	var line [200]token // enough for most lines
	tokens := appendTokens(line[:0], text)
	return appendWords(make([]Span, 0, len(tokens)/2+1), text, tokens)
}

// Reader reads the words and the figures of one text after another. It looks at
// a text once, and keeps its room: for who reads many short ones.
type Reader struct {
	s         scanner
	words     []Span
	sentences []Span
}

// Read turns to a text.
func (r *Reader) Read(text string) {
	r.s.text = text
	r.s.tokens = appendTokens(r.s.tokens[:0], text)
}

// Words are those of Words, good until the next Read.
func (r *Reader) Words() []Span {
	r.words = appendWords(r.words[:0], r.s.text, r.s.tokens)
	return r.words
}

// Sentences are those of Sentences, good until the next call.
func (r *Reader) Sentences(text string) []Span {
	r.sentences = appendSentences(r.sentences[:0], text)
	return r.sentences
}

// Figures are those of Figures, put behind found.
func (r *Reader) Figures(found []Figure) []Figure { return r.s.figures(found) }

func appendWords(found []Span, text string, tokens []token) []Span {
	for i := 0; i < len(tokens); {
		if !tokens[i].kind.solid() {
			i++
			continue
		}
		from := i
		for i++; i < len(tokens); {
			if tokens[i].kind.solid() {
				i++
				continue
			}
			inner := i+1 < len(tokens) && tokens[i].kind == markToken && tokens[i+1].kind.solid() &&
				strings.ContainsRune("-.'’·_‑", tokens[i].rune(text))
			if !inner {
				break
			}
			i += 2
		}
		found = append(found, Span{int(tokens[from].start), int(tokens[i-1].end)})
	}
	return found
}

// Fold brings a word to the form in which words are compared: lower case, with
// typographic apostrophes and hyphens made plain.
func Fold(word string) string {
	if isSmall(word) {
		return word // as most are
	}
	for i := range len(word) {
		if word[i] >= utf8.RuneSelf {
			return foldMarks.Replace(strings.ToLower(word))
		}
	}
	return strings.ToLower(word)
}

var foldMarks = strings.NewReplacer("’", "'", "ʼ", "'", "‑", "-", "‐", "-")

// tokenKind is the sort of characters a token is made of.
type tokenKind uint8

const (
	noToken    tokenKind = iota // beyond either end of the text
	spaceToken                  // a run of white space
	wordToken                   // a run of letters, with apostrophes inside
	digitToken                  // a run of the digits 0 to 9
	markToken                   // any other single character
)

func (k tokenKind) solid() bool { return k == wordToken || k == digitToken }

// token is a stretch of text that neither the reader of figures nor the speaker
// looks into. The tokens of a text cover it without gaps.
type token struct {
	kind       tokenKind
	small      bool // a word of small letters; false of some that are
	start, end int32
}

func (t token) rune(text string) rune {
	r, _ := utf8.DecodeRuneInString(text[t.start:t.end])
	return r
}

// plainKinds are the kinds of the plain characters.
var plainKinds = func() (kinds [utf8.RuneSelf]tokenKind) {
	for r := range rune(utf8.RuneSelf) {
		switch {
		case r >= '0' && r <= '9':
			kinds[r] = digitToken
		case unicode.IsLetter(r):
			kinds[r] = wordToken
		case unicode.IsSpace(r):
			kinds[r] = spaceToken
		default:
			kinds[r] = markToken
		}
	}
	return kinds
}()

// runKinds are the kinds of the bytes that need no second look in a run of
// their kind.
var runKinds = func() (kinds [256]tokenKind) {
	copy(kinds[:], plainKinds[:])
	kinds['\''] = noToken
	return kinds
}()

func kindOf(r rune) tokenKind {
	switch {
	case r < utf8.RuneSelf:
		return plainKinds[r]
	case unicode.IsLetter(r) || unicode.IsMark(r):
		return wordToken
	case unicode.IsSpace(r):
		return spaceToken
	}
	return markToken
}

// lex cuts a text into tokens.
func lex(text string) []token {
	return appendTokens(make([]token, 0, len(text)*2/5+2), text) // a word and the space behind it take some five letters
}

func appendTokens(tokens []token, text string) []token {
	for i := 0; i < len(text); {
		r, size := runeAt(text, i)
		t := token{kind: kindOf(r), start: int32(i)}
		if i += size; t.kind != markToken {
			i, t.small = run(text, int(t.start), t.kind)
		}
		t.end = int32(i)
		tokens = append(tokens, t)
	}
	return tokens
}

// run is where the run of a kind that begins at i ends, and whether it is all
// small letters, if it is letters.
func run(text string, i int, kind tokenKind) (end int, small bool) {
	const bit = 0x20 // small letters have it, capitals have not
	bits := byte(bit)
	for i < len(text) {
		switch b := text[i]; runKinds[b] {
		case kind:
			bits &= b
			i++
			continue
		case noToken:
		default:
			return i, bits != 0
		}
		bits = 0
		r, size := runeAt(text, i)
		if r == '\'' || r == '’' {
			next, more := runeAt(text, i+size)
			if kind != wordToken || kindOf(next) != wordToken {
				return i, false
			}
			size += more
		} else if kindOf(r) != kind {
			return i, false
		}
		i += size
	}
	return i, bits != 0
}

// runeAt is the character at i and its length; none beyond the end.
func runeAt(text string, i int) (rune, int) {
	if i < len(text) && text[i] < utf8.RuneSelf {
		return rune(text[i]), 1
	}
	return utf8.DecodeRuneInString(text[min(i, len(text)):])
}

// scanner reads expressions from the tokens of a text.
type scanner struct {
	text   string
	tokens []token
}

func newScanner(text string) *scanner { return &scanner{text, lex(text)} }

func (s *scanner) kind(i int) tokenKind {
	if i < 0 || i >= len(s.tokens) {
		return noToken
	}
	return s.tokens[i].kind
}

// at is the text of token i, empty beyond the ends.
func (s *scanner) at(i int) string {
	if s.kind(i) == noToken {
		return ""
	}
	return s.text[s.tokens[i].start:s.tokens[i].end]
}

// word is token i in lower case if it is a word, else empty.
func (s *scanner) word(i int) string {
	if s.kind(i) != wordToken {
		return ""
	}
	w := s.at(i)
	if !s.tokens[i].small {
		w = strings.ToLower(w)
	}
	return w
}

// mark is the character of token i if it is a mark, else 0.
func (s *scanner) mark(i int) rune {
	if s.kind(i) != markToken {
		return 0
	}
	return s.tokens[i].rune(s.text)
}

// over steps over one stretch of white space.
func (s *scanner) over(i int) int {
	if s.kind(i) == spaceToken {
		return i + 1
	}
	return i
}

// back is the token before i, white space left out.
func (s *scanner) back(i int) int {
	if s.kind(i-1) == spaceToken {
		return i - 2
	}
	return i - 1
}

// link steps over what may stand between the words of one number: a space or a
// hyphen. It gives i itself if neither does.
func (s *scanner) link(i int) int {
	if s.kind(i) == spaceToken {
		return i + 1
	}
	if r := s.mark(i); (r == '-' || r == '‑') && s.kind(i+1) == wordToken {
		return i + 1
	}
	return i
}

// span is the stretch of text from token i up to token end.
func (s *scanner) span(i, end int) Span {
	return Span{int(s.tokens[i].start), int(s.tokens[end-1].end)}
}

// slice is the text of that stretch.
func (s *scanner) slice(i, end int) string {
	if i >= end {
		return ""
	}
	return s.span(i, end).Of(s.text)
}

// isGlued says whether token i continues a word: no number or unit ends before
// it.
func (s *scanner) isGlued(i int) bool { return s.kind(i).solid() }
