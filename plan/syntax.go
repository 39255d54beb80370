package plan

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"fixslate/plan/diag"
)

// What to write where the file is not TOML. The parser says what it found; what
// was meant is guessed from that and from the line it stands in.
const (
	needsQuotes = `text needs quotes: key = "…"`
	needsKey    = "write key = value, or put longer text between \"\"\" and \"\"\""
	needsEnd    = "close the quotes in the same line, or put longer text between \"\"\" and \"\"\""
	needsList   = "close the list above with ]"
	needsHeader = "a header stands alone on its line: [video] or [[step]]"
	needsOneKey = "give each key a line of its own, without a mark at its end"
)

func syntaxHint(src *diag.Source, at diag.Place, found string) string {
	line := strings.TrimSpace(src.Line(at.Position().Line))
	_, value, assigns := strings.Cut(line, "=")
	value = strings.TrimSpace(value)
	letter, _ := utf8.DecodeRuneInString(src.Text[at.Span.Start:])
	header := strings.HasPrefix(line, "[")
	bare := strings.HasSuffix(found, "at start of value") && unicode.IsLetter(letter)
	switch {
	case strings.HasPrefix(strings.TrimSpace(src.Text), "{"):
		return "a plan is TOML, not JSON: [video] on a line of its own, below it title = \"…\""
	case bare && header, letter == '[' && strings.Contains(found, "expected ','"):
		return needsList
	case strings.Contains(found, "expected ','"):
		return "put a comma between two entries: a = 1, b = 2"
	case bare && (strings.EqualFold(value, "true") || strings.EqualFold(value, "false")):
		return "write true and false in small letters"
	case bare:
		return needsQuotes
	case strings.HasSuffix(found, "is incomplete"):
		return "close it: each [ has its ], and each { its }"
	case header:
		return needsHeader
	case strings.HasPrefix(found, "expected '=") && letter == ':':
		return "write = for the colon: key = value"
	case strings.HasPrefix(line, "//"), strings.HasPrefix(line, ";"):
		return "a comment begins with #"
	case !assigns && line != "":
		return needsKey
	case assigns && value == "":
		return "a value is missing after ="
	case assigns:
		return valueHint(value, found, src.Text[at.Span.Start:])
	}
	return "see the TOML 1.0 specification for the form of values"
}

// valueHint is for a line that gives a key a value; from on stands what the parser
// did not take.
func valueHint(value, found, from string) string {
	trails := strings.HasPrefix(found, "expected newline")
	after, _, _ := strings.Cut(from, "\n")
	switch {
	case trails && (strings.HasPrefix(after, ",") || strings.HasPrefix(after, ";")):
		return needsOneKey
	case trails && value[0] == '\'':
		return `text with an apostrophe stands in "…"`
	case trails && strings.Contains(after, "="):
		return needsOneKey
	case strings.Count(value, `"`)%2 == 1 && !strings.Contains(value, `"""`):
		return needsEnd
	case trails && value[0] == '"':
		return `write \" for a quote within "…"`
	case strings.Contains(value, `\`):
		return `a backslash in "…" starts an escape; write \\ or use '…'`
	case strings.ContainsAny(value, "“”"):
		return `use straight quotes: "…"`
	case value[0] >= '0' && value[0] <= '9' && strings.ContainsAny(value, "-./"):
		return needsQuotes + "; a date is year, month and day, and one that the calendar has: 2026-11-25"
	case trails, strings.HasPrefix(found, "expected keyword"), strings.HasPrefix(found, "expected digit"), !strings.ContainsAny(value[:1], `"'[{0123456789+-tf`):
		return needsQuotes
	}
	return "see the TOML 1.0 specification for the form of values"
}
