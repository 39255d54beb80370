package captions

import (
	"strconv"
	"strings"
)

// writeSRT writes SubRip: a number, the times, the text, a blank line. There is
// no standard; this is what every reader takes. Cues are numbered from 1.
//
// The format has no escapes of its own. Readers differ: some decode HTML
// entities, some show them as they stand. So an escape is written only where a
// character would otherwise be taken for markup.
func writeSRT(f File) []byte {
	b := make([]byte, 0, f.size(48))
	for i, c := range f.Cues {
		start, end := c.milliseconds()
		b = strconv.AppendInt(b, int64(i+1), 10)
		b = append(b, '\n')
		b = appendStamp(b, start, ',')
		b = append(b, " --> "...)
		b = appendStamp(b, end, ',')
		if f.Format == SRT && c.Settings != "" {
			b = append(b, ' ')
			b = append(b, oneLine(c.Settings)...)
		}
		b = append(b, '\n')
		switch {
		case f.Format == SRT && c.Markup != "":
			b = append(b, noArrow(Plain(c.Markup))...)
		default:
			b = append(b, escapeSRT(noArrow(Plain(c.Text)))...)
		}
		b = append(b, "\n\n"...)
	}
	return b
}

// noArrow replaces the mark that opens a timing line by the arrow it depicts:
// many readers look for it anywhere in a line, and the format can't escape it.
func noArrow(text string) string {
	return strings.ReplaceAll(text, "-->", "→")
}

// escapeSRT escapes what readers take for a tag ("<b>"), for an entity
// ("&lt;") and for an override code ("{\an8}"), and nothing else.
func escapeSRT(text string) string {
	if !strings.ContainsAny(text, "&<{") {
		return text
	}
	var b strings.Builder
	for i := 0; i < len(text); i++ {
		rest := text[i:]
		switch {
		case rest[0] == '<' && opensTag(rest):
			b.WriteString("&lt;")
		case rest[0] == '&' && entityLength(rest) > 0:
			b.WriteString("&amp;")
		case rest[0] == '{' && overrideLength(rest) > 0:
			b.WriteString("&#123;")
		default:
			b.WriteByte(rest[0])
		}
	}
	return b.String()
}

// opensTag holds where "<" begins a tag for an HTML-minded reader.
func opensTag(s string) bool {
	if len(s) < 2 {
		return false
	}
	c := s[1]
	return isLetter(c) || c == '/' || c == '!' || c == '?'
}

// entityLength is the length of the character reference that s begins with, 0
// for none: "&amp;", "&#39;", "&#x27;".
func entityLength(s string) int {
	end := strings.IndexByte(s[:min(len(s), 34)], ';')
	if end < 2 {
		return 0
	}
	name := s[1:end]
	if name[0] == '#' {
		name = name[1:]
		if name == "" {
			return 0
		}
	}
	for i := 0; i < len(name); i++ {
		if !isLetter(name[i]) && !isDigit(name[i]) {
			return 0
		}
	}
	return end + 1
}

// overrideLength is the length of the override code that s begins with, 0 for
// none: "{\an8}", "{\i1}".
func overrideLength(s string) int {
	if !strings.HasPrefix(s, `{\`) {
		return 0
	}
	end := strings.IndexAny(s, "}\n")
	if end < 0 || s[end] != '}' {
		return 0
	}
	return end + 1
}

// oneLine brings text to one line without an arrow.
func oneLine(text string) string {
	return strings.ReplaceAll(strings.Join(strings.Fields(Plain(text)), " "), "-->", "->")
}

func isLetter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }
func isDigit(c byte) bool  { return c >= '0' && c <= '9' }
