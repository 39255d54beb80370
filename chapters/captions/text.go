package captions

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/rivo/uniseg"
)

// Characters counts what a viewer sees as characters: grapheme clusters
// (Unicode TR 29). None of the guides says what it counts; bytes and code
// points would make an accent or an emoji cost several.
func Characters(text string) int {
	for i := 0; i < len(text); i++ {
		if text[i] >= utf8.RuneSelf {
			return uniseg.GraphemeClusterCount(text)
		}
	}
	return len(text)
}

// Plain makes text fit for any caption file: valid UTF-8, no control
// characters, lines parted by \n and none of them blank. Tabs become spaces,
// other line separators line breaks. Directional embeddings and overrides go
// (a caption's line is its own paragraph and gets its direction from its
// letters; an unclosed one would turn what follows); the marks LRM, RLM and
// ALM stay.
func Plain(text string) string {
	if clean(text) {
		return text
	}
	text = strings.ToValidUTF8(text, "\uFFFD")
	text = strings.ReplaceAll(text, "\r\n", "\n")
	text = strings.Map(plainRune, text)
	lines := strings.Split(text, "\n")
	kept := lines[:0]
	for _, line := range lines {
		if strings.TrimSpace(line) != "" {
			kept = append(kept, line)
		}
	}
	return strings.Join(kept, "\n")
}

// clean holds for text that Plain would not change, quickly: most text is.
func clean(text string) bool {
	if !utf8.ValidString(text) {
		return false
	}
	blank := true // the line so far
	for _, r := range text {
		switch {
		case r == '\n':
			if blank {
				return false
			}
			blank = true
		case r < utf8.RuneSelf:
			if r < ' ' || r == 0x7f {
				return false
			}
			blank = blank && r == ' '
		case plainRune(r) != r:
			return false
		default:
			blank = blank && unicode.IsSpace(r)
		}
	}
	return !blank || text == ""
}

// plainRune maps a character to the one that a caption file holds, -1 for none.
func plainRune(r rune) rune {
	switch {
	case r == '\n', r == '\r', r == '\u0085', r == '\u2028', r == '\u2029':
		return '\n'
	case r == '\t':
		return ' '
	case r < ' ', r >= 0x7f && r <= 0x9f:
		return -1
	case r >= '\u202a' && r <= '\u202e', r >= '\u2066' && r <= '\u2069', r == '\ufeff':
		return -1
	case r == '\ufffe', r == '\uffff':
		return '\ufffd' // XML can't hold them
	}
	return r
}
