package diag

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Visible makes text from a file harmless on a terminal: control characters,
// bidirectional marks, line and paragraph separators and broken bytes appear
// as escapes (\x1b, \u202e). Line feeds and tabs are escaped too: a value must
// not forge a line of its own (CWE-150, CWE-117; Unicode TR 36).
func Visible(text string) string {
	clean := true
	for i := 0; i < len(text) && clean; i++ {
		clean = text[i] >= ' ' && text[i] < 0x7f
	}
	if clean {
		return text
	}
	var b strings.Builder
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRuneInString(text[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			fmt.Fprintf(&b, `\x%02x`, text[i])
		case r < ' ' || r == 0x7f:
			fmt.Fprintf(&b, `\x%02x`, r)
		case hidden(r):
			fmt.Fprintf(&b, `\u%04x`, r)
		default:
			b.WriteString(text[i : i+size])
		}
		i += size
	}
	return b.String()
}

// hidden holds for characters that move or hide what stands around them.
func hidden(r rune) bool {
	switch {
	case r >= 0x80 && r <= 0x9f, r == 0xad, r == 0x61c, r == 0x200b, r == 0x200e, r == 0x200f,
		r >= 0x2028 && r <= 0x202e, r >= 0x2060 && r <= 0x206f, r == 0xfeff:
		return true
	}
	return r > 0xffff && unicode.Is(unicode.Cf, r) // tag characters
}

// Shorten keeps a quoted text to what a message has room for, in characters.
func Shorten(text string, most int) string {
	n := 0
	for i := range text {
		if n++; n > most {
			return text[:i] + "…"
		}
	}
	return text
}
