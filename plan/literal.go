package plan

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// What must be known of TOML's string literals beside the parsers.

// deepest looks for brackets nested over maxDepth, outside strings and
// comments, before any parser sees the text; -1 where there are none. It may
// be wrong only on text that is no TOML anyhow.
func deepest(text string) int {
	depth := 0
	for i := 0; i < len(text); i++ {
		switch text[i] {
		case '[', '{':
			if depth++; depth > maxDepth {
				return i
			}
		case ']', '}':
			depth = max(0, depth-1)
		case '#', '"', '\'':
			i += aside(text[i:]) - 1
		}
	}
	return -1
}

// unclosed is where a multi-line text begins that never ends; -1 where all end.
func unclosed(text string) int {
	for i := 0; i < len(text); i++ {
		n := aside(text[i:])
		if n == 0 {
			continue
		}
		triple := strings.Repeat(text[i:i+1], 3)
		if text[i] != '#' && i+n == len(text) && strings.HasPrefix(text[i:], triple) && (n < 6 || !strings.HasSuffix(text, triple)) {
			return i
		}
		i += n - 1
	}
	return -1
}

// aside is the length of the comment or the string literal at the head of text,
// 0 where there is neither.
func aside(text string) int {
	switch text[0] {
	case '#':
		if n := strings.IndexByte(text, '\n'); n >= 0 {
			return n
		}
		return len(text)
	case '"', '\'':
		return literalLength(text)
	}
	return 0
}

// literalLength is the length of the string literal at the head of text, or of
// what there is of it.
func literalLength(text string) int {
	quote := text[:1]
	if len(text) > 2 && text[1] == text[0] && text[2] == text[0] {
		quote = text[:3]
	}
	for i := len(quote); i < len(text); i++ {
		switch {
		case text[i] == '\\' && quote[0] == '"':
			i++
		case text[i] == '\n' && len(quote) == 1:
			return i
		case text[i] == quote[0] && strings.HasPrefix(text[i:], quote):
			i += len(quote)
			for len(quote) == 3 && i < len(text) && text[i] == quote[0] { // up to two quotes may end the text
				i++
			}
			return i
		}
	}
	return len(text)
}

// literalOffsets turns offsets in a decoded string into offsets in its
// literal, quotes included (TOML 1.0, "String").
func literalOffsets(raw string, start, end int) (int, int) {
	i, quote := 1, raw[:1]
	if triple := strings.Repeat(quote, 3); len(raw) >= 6 && strings.HasPrefix(raw, triple) {
		i = 3
		if i < len(raw) && raw[i] == '\n' {
			i++ // the first newline of a multi-line string is not in the text
		}
	}
	closing := len(raw) - 1
	if i >= 3 {
		closing = len(raw) - 3
	}
	from, decoded := -1, 0
	for i < closing {
		size, bytes := 1, 1
		if quote == `"` && raw[i] == '\\' {
			size, bytes = escape(raw[i:closing])
		}
		if from < 0 && bytes > 0 && decoded+bytes > start {
			from = i
		}
		if decoded >= end && from >= 0 {
			return from, i
		}
		decoded += bytes
		i += size
	}
	if from < 0 {
		from = closing
	}
	return from, max(from, min(i, closing))
}

// escape measures one escape: its length in the literal and in the text.
func escape(raw string) (size, bytes int) {
	if len(raw) < 2 {
		return 1, 1
	}
	digits := map[byte]int{'u': 4, 'U': 8, 'x': 2}[raw[1]]
	if digits > 0 && len(raw) >= 2+digits {
		var r rune
		if _, err := fmt.Sscanf(raw[2:2+digits], "%x", &r); err == nil {
			return 2 + digits, utf8.RuneLen(r)
		}
	}
	if strings.IndexByte(" \t\n", raw[1]) >= 0 { // a backslash at the line's end eats all white space after it
		size = 1
		for size < len(raw) && strings.IndexByte(" \t\n", raw[size]) >= 0 {
			size++
		}
		return size, 0
	}
	return 2, 1
}
