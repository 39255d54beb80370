package prose

import (
	"regexp"
	"strings"
	"unicode"
)

// orderedStart is "1." or "1)" at the head of a line, which would begin a list;
// "0.5 L" would not.
var orderedStart = regexp.MustCompile(`^(\d+)([.)])( |$)`)

// Harmless takes out what is never seen and works on what is around it: control
// characters but line feeds and tabs, and marks that turn the direction of text.
func Harmless(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t':
			return r
		case unicode.IsControl(r), unicode.Is(unicode.Bidi_Control, r):
			return -1
		}
		return r
	}, text)
}

// Literal makes text plain in Markdown: what would be markup is escaped, what
// is harmful taken out, line ends become spaces (CommonMark 0.31, "Backslash
// escapes").
func Literal(text string) string {
	if isPlain(text) {
		return text
	}
	text = Harmless(strings.Join(strings.Fields(text), " "))
	entities := strings.LastIndexByte(text, ';') // an entity ends before it
	var b strings.Builder
	for i, r := range text {
		switch {
		case strings.ContainsRune("\\`*_[]<>|", r),
			r == '~' && strings.HasPrefix(text[i:], "~~"),
			r == '&' && i < entities,
			i == 0 && strings.ContainsRune("-+=#", r):
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return orderedStart.ReplaceAllString(b.String(), `$1\$2$3`)
}

// isPlain holds for a text that Literal leaves alone, as it does with most:
// single spaces between words of letters, digits and what is never markup.
func isPlain(text string) bool {
	space := true // none may stand first
	for i := range len(text) {
		switch b := text[i]; {
		case 'a' <= b && b <= 'z' || 'A' <= b && b <= 'Z' || b == ',' || b == '.' || b == ':' || b == '(' || b == ')' || b == '/' || b == '\'':
			space = false
		case ('0' <= b && b <= '9' || b == '-') && i > 0:
			space = false
		case b == ' ' && !space:
			space = true
		default:
			return false
		}
	}
	return !space
}
