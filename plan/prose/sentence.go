package prose

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Sentences gives the sentences of a text in order, each without the white
// space around it. A blank line ends a sentence; a single line break is white
// space like any other, so a caller for whom lines count splits them first.
//
// A mark (. ! ? …, with closing quotes and brackets after it) ends a sentence
// if white space follows and what stands around it doesn't speak against: an
// abbreviation ("approx. 5 mm", "No. 4"), the number of a list item ("3. Undo
// it"), a lower-case word after "?)" or "…". Abbreviations that may end a
// sentence ("etc.", "10 a.m.", "3/4 in.") do so before a capital letter. One
// look backward over a word and one forward over a word per mark: linear.
func Sentences(text string) []Span { return appendSentences(nil, text) }

func appendSentences(found []Span, text string) []Span {
	s := sentencer{text: text}
	start := skipSpace(text, 0)
	for i := start; i < len(text); {
		if inner[text[i]] {
			i++
			continue
		}
		if text[i] == '\n' {
			next := skipSpace(text, i)
			if strings.IndexByte(text[i+1:next], '\n') >= 0 {
				found = appendSpan(found, text, start, i)
				start = next
			}
			i = next
			continue
		}
		mark, size := utf8.DecodeRuneInString(text[i:])
		if !isMark(mark) {
			i += size
			continue
		}
		end, next, ends := s.mark(start, i)
		if ends {
			found = appendSpan(found, text, start, end)
			start, i = next, next
			continue
		}
		i = end
	}
	return appendSpan(found, text, start, len(text))
}

// inner holds for the plain characters that say nothing of a sentence's end.
var inner = func() (is [256]bool) {
	for b := range utf8.RuneSelf {
		is[b] = b != '\n' && !isMark(rune(b))
	}
	return is
}()

func appendSpan(found []Span, text string, start, end int) []Span {
	trimmed := strings.TrimRightFunc(text[start:end], unicode.IsSpace)
	if trimmed == "" {
		return found
	}
	return append(found, Span{start, start + len(trimmed)})
}

func skipSpace(text string, i int) int {
	for i < len(text) {
		r, size := runeAt(text, i)
		if !unicode.IsSpace(r) {
			break
		}
		i += size
	}
	return i
}

func isMark(r rune) bool {
	switch r {
	case '.', '!', '?', '…', '‼', '⁇', '⁈', '⁉', '。', '！', '？':
		return true
	}
	return false
}

func isCloser(r rune) bool {
	switch r {
	case '"', '\'', '”', '’', '»', '›', ')', ']', '}', '*', '_':
		return true
	}
	return false
}

type sentencer struct{ text string }

// mark judges the marks that begin at i, in a sentence that began at start: end
// is behind them and their closers, next is where the words go on.
func (s sentencer) mark(start, i int) (end, next int, ends bool) {
	end = i
	marks, last := 0, rune(0)
	for end < len(s.text) {
		r, size := utf8.DecodeRuneInString(s.text[end:])
		if !isMark(r) {
			break
		}
		marks, last = marks+1, r
		end += size
	}
	closed := false
	for end < len(s.text) {
		r, size := utf8.DecodeRuneInString(s.text[end:])
		if !isCloser(r) {
			break
		}
		closed = true
		end += size
	}
	next = skipSpace(s.text, end)
	switch {
	case next == len(s.text):
		return end, next, true
	case last == '。', last == '！', last == '？':
		return end, next, true
	case next == end:
		return end, next, false
	}
	follow := s.follow(next)
	switch {
	case closed && follow == lower:
		return end, next, false
	case marks > 1 && last == '.' || last == '…':
		return end, next, follow != lower && !s.onlyMarks(start, i)
	case last != '.' || marks > 1:
		return end, next, true
	}
	return end, next, s.stopEnds(start, i, next, follow)
}

// onlyMarks holds where nothing but a dash or bracket stands before the mark:
// "… and it stops".
func (s sentencer) onlyMarks(start, i int) bool {
	return !strings.ContainsFunc(s.text[start:min(i, start+8)], func(r rune) bool {
		return unicode.IsLetter(r) || unicode.IsDigit(r)
	})
}

type opening int

const (
	other opening = iota
	lower
	upper
	digit
)

// follow says how the words at i begin, behind opening quotes and brackets.
func (s sentencer) follow(i int) opening {
	for i < len(s.text) {
		r, size := utf8.DecodeRuneInString(s.text[i:])
		switch {
		case unicode.IsLower(r):
			return lower
		case unicode.IsUpper(r):
			return upper
		case unicode.IsDigit(r):
			return digit
		case strings.ContainsRune("\"'“‘«([{*_", r):
			i += size
		default:
			return other
		}
	}
	return other
}

// stopEnds judges a single full stop at i with white space behind it.
func (s sentencer) stopEnds(start, i, next int, follow opening) bool {
	from := wordStart(s.text, start, i)
	word := strings.ToLower(strings.TrimLeft(s.text[from:i], "\"'“‘«([{*_"))
	if word == "" {
		return true
	}
	if from == start && isListNumber(word) {
		return false
	}
	class := abbreviations[word]
	switch class {
	case unitShort:
		if s.numberBefore(start, from) {
			return follow != lower
		}
		return word == "in" // elsewhere a word: "Push it in."
	case neverEnds:
		return false
	case beforeNumber:
		return follow != digit && !s.codeAt(next)
	case mayEnd:
		return follow == upper && !(strings.Contains(word, ".") && !s.opensSentence(next)) || follow == other
	}
	if initials(word) {
		return follow != lower && s.opensSentence(next)
	}
	if follow == lower {
		// A lower-case word goes on after an abbreviation nobody listed; a
		// careless author forgets a capital. A word with a vowel is a word.
		return len(word) > 1 && (strings.ContainsAny(word, "aeiouy") || !isLetters(word))
	}
	return true
}

// wordStart gives the start of the word that ends at i.
func wordStart(text string, start, i int) int {
	const longest = 64 // bytes; no abbreviation is longer
	limit := max(start, i-longest)
	for j := i; j > limit; {
		r, size := utf8.DecodeLastRuneInString(text[limit:j])
		if unicode.IsSpace(r) || r == '(' || r == '[' || r == '/' || r == '–' || r == '—' {
			return j
		}
		j -= size
	}
	return limit
}

// numberBefore says whether the word at from follows a number: "10 min".
func (s sentencer) numberBefore(start, from int) bool {
	head := strings.TrimRight(s.text[max(start, from-32):from], " -\u00a0/")
	r, _ := utf8.DecodeLastRuneInString(head)
	return unicode.IsDigit(r) || strings.ContainsRune("½¼¾⅛⅜⅝⅞⅓⅔", r)
}

// codeAt says whether a part number or a single letter stands at i: "No. B4".
func (s sentencer) codeAt(i int) bool {
	word, _, _ := strings.Cut(s.text[i:min(len(s.text), i+32)], " ")
	word = strings.TrimRight(word, ".,;:)!?")
	return strings.ContainsAny(word, "0123456789") || len(word) == 1
}

// opensSentence holds for the words with which a sentence opens far more often
// than a name does.
func (s sentencer) opensSentence(i int) bool {
	head := s.text[i:min(len(s.text), i+24)]
	end := strings.IndexFunc(head, func(r rune) bool { return !unicode.IsLetter(r) && r != '\'' && r != '’' })
	if end < 0 {
		end = len(head)
	}
	return openers[strings.ToLower(head[:end])]
}

// isListNumber holds for "3", "12a", "b" and "iv" at the head of a line.
func isListNumber(word string) bool {
	if len(word) > 4 {
		return false
	}
	digits := strings.TrimLeft(word, "0123456789")
	if len(digits) < len(word) {
		return len(digits) <= 1
	}
	return len(word) == 1 && isLetters(word) || strings.Trim(word, "ivx") == ""
}

// initials holds for "u.s" and "e.u": letters with stops between.
func initials(word string) bool {
	if len(word) < 3 || len(word)%2 == 0 {
		return false
	}
	for i := range len(word) {
		if b := word[i]; i%2 == 1 && b != '.' || i%2 == 0 && (b < 'a' || b > 'z') {
			return false
		}
	}
	return true
}

func isLetters(word string) bool {
	return !strings.ContainsFunc(word, func(r rune) bool { return !unicode.IsLetter(r) })
}
