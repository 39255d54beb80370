package prose

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Harmless takes out what is never seen and works on what is around it: control
// characters but line feeds and tabs, and marks that turn the direction of text.
func Harmless(text string) string {
	harmful := func(r rune) bool { return Harmful(r) && r != '\n' && r != '\t' }
	if strings.IndexFunc(text, harmful) < 0 && utf8.ValidString(text) {
		return text
	}
	return strings.Map(func(r rune) rune {
		if harmful(r) {
			return -1
		}
		return r
	}, text)
}

// Harmful holds for control characters and for the marks that turn the direction
// of text, those with the property Bidi_Control; a test holds it to unicode's
// tables, whose search takes longer than all else that is done with a character.
func Harmful(r rune) bool {
	return r < ' ' || 0x7f <= r && r <= 0x9f || r == 0x061c ||
		0x200e <= r && r <= 0x200f || 0x202a <= r && r <= 0x202e || 0x2066 <= r && r <= 0x2069
}

// SingleSpaces has one space for each stretch of white space, and none at the
// ends.
func SingleSpaces(text string) string {
	space := true // none may stand first
	for _, r := range text {
		if r == ' ' && space || r != ' ' && unicode.IsSpace(r) {
			return strings.Join(strings.Fields(text), " ")
		}
		space = r == ' '
	}
	return strings.TrimSuffix(text, " ")
}

// Literal makes text plain in Markdown: what would be markup is escaped, what
// is harmful taken out, line ends become spaces (CommonMark 0.31, "Backslash
// escapes").
func Literal(text string) string {
	if isPlain(text) {
		return text
	}
	text = Harmless(SingleSpaces(text))
	entities := strings.LastIndexByte(text, ';') // an entity ends before it
	ordered := orderedStart(text)
	var b strings.Builder
	from := 0
	for i := range len(text) {
		switch c := text[i]; {
		case strings.IndexByte("\\`*_[]<>|", c) >= 0,
			c == '~' && strings.HasPrefix(text[i:], "~~"),
			c == '&' && i < entities,
			i == 0 && strings.IndexByte("-+=#", c) >= 0,
			i == ordered:
			b.WriteString(text[from:i])
			b.WriteByte('\\')
			from = i
		}
	}
	if from == 0 && b.Len() == 0 {
		return text
	}
	b.WriteString(text[from:])
	return b.String()
}

// orderedStart is where the sign stands in "1." or "1)" at the head of a line,
// which would begin a list, else -1; "0.5 L" would not.
func orderedStart(text string) int {
	rest := strings.TrimLeft(text, "0123456789")
	if at := len(text) - len(rest); at > 0 && rest != "" && (rest[0] == '.' || rest[0] == ')') && (len(rest) == 1 || rest[1] == ' ') {
		return at
	}
	return -1
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
