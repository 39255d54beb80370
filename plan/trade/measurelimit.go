package trade

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

var aboutWords = []string{"about", "around", "approximately", "approx.", "approx", "roughly", "circa", "ca.", "ca", "c.", "~", "≈"}

// limitWord is a word that makes a limit of the value after it, or before it.
type limitWord struct {
	word   string
	shape  Shape
	strict bool
}

// leading and trailing limits; the longer of two that start alike comes first.
var (
	leading = slices.Concat(
		limitWords(AtMost, "at most", "not more than", "no more than", "not over", "not above", "maximum of", "maximum", "max.", "max", "up to", "≤", "<="),
		strictly(limitWords(AtMost, "under", "below", "less than", "<")),
		limitWords(AtLeast, "at least", "not less than", "no less than", "not under", "not below", "minimum of", "minimum", "min.", "min", "≥", ">="),
		strictly(limitWords(AtLeast, "over", "above", "more than", ">")),
	)
	trailing = slices.Concat(
		limitWords(AtMost, "or less", "or below", "or under", "or lower", "at most", "maximum", "max.", "max"),
		limitWords(AtLeast, "or more", "or above", "or over", "or higher", "at least", "minimum", "min.", "min"),
	)
)

func limitWords(shape Shape, words ...string) []limitWord {
	all := make([]limitWord, len(words))
	for i, w := range words {
		all[i] = limitWord{word: w, shape: shape}
	}
	return all
}

// strictly makes limits of which the value itself is outside.
func strictly(words []limitWord) []limitWord {
	for i := range words {
		words[i].strict = true
	}
	return words
}

// cutLimit takes the limit's word off either end of a text.
func cutLimit(text string) (string, limitWord) {
	for _, l := range leading {
		if rest, ok := cutWord(text, []string{l.word}); ok {
			return rest, l
		}
	}
	for _, l := range trailing {
		head, ok := cutEnd(text, l.word)
		// "5 min" is five minutes: a unit must stand before the limit's word
		if ok && !endsInDigit(head) {
			return head, l
		}
	}
	return text, limitWord{}
}

// cutWord takes one of the words off the front of a text, whatever its case,
// where the word ends there.
func cutWord(text string, words []string) (string, bool) {
	for _, w := range words {
		if len(text) < len(w) || !strings.EqualFold(text[:len(w)], w) {
			continue
		}
		rest := text[len(w):]
		if next, _ := utf8.DecodeRuneInString(rest); endsInLetter(w) && (unicode.IsLetter(next) || next == '-' || rest == "") {
			continue
		}
		return strings.TrimLeft(rest, " \t\u00a0"), true
	}
	return text, false
}

// cutEnd takes a word off the end of a text, with the space or comma before it.
func cutEnd(text, word string) (string, bool) {
	n := len(text) - len(word)
	if n <= 0 || !strings.EqualFold(text[n:], word) {
		return text, false
	}
	head := strings.TrimRight(text[:n], " \t,(\u00a0")
	return head, len(head) < n
}

func endsInLetter(s string) bool {
	r, _ := utf8.DecodeLastRuneInString(s)
	return unicode.IsLetter(r)
}

func endsInDigit(s string) bool {
	r, _ := utf8.DecodeLastRuneInString(s)
	return '0' <= r && r <= '9' || vulgar[r] != 0
}

// slippedLimit finds a limit whose second word has one letter too few, too many,
// wrong or out of turn, "at lest 9 V": the word that is meant and what follows.
func slippedLimit(text string) (word, rest string) {
	fields := strings.Fields(text)
	if len(fields) < 3 || !strings.EqualFold(fields[0], "at") {
		return "", ""
	}
	written := strings.ToLower(fields[1])
	for _, meant := range []string{"least", "most"} {
		if written != meant && oneSlip(written, meant) {
			return "at " + meant, strings.Join(fields[2:], " ")
		}
	}
	return "", ""
}

// oneSlip holds for words that a letter left out, put in, mistaken or out of turn
// makes of each other.
func oneSlip(a, b string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	if len(b)-len(a) > 1 {
		return false
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	if len(a) < len(b) {
		return a[i:] == b[i+1:]
	}
	return i == len(a) || a[i+1:] == b[i+1:] || i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
}
