package diag

import (
	"bytes"
	"fmt"
	"sort"
	"strings"
	"unicode/utf8"
)

// Source is a file's text, read once: UTF-8 without byte order mark, every
// line end a single LF. Offsets in Spans count in Text.
type Source struct {
	Name string
	Text string
	Raw  []byte // the bytes as they came, for whoever must hash or edit them

	lines []int // offset of each line's first byte
}

// MaxBytes bounds a source. A plan of a long video is about 100 kB.
const MaxBytes = 4 << 20

// NewSource reads raw as UTF-8 text. A byte order mark is dropped and CRLF and
// lone CR become LF, so that positions are the same for every line ending.
// What can't be read as text comes back as findings of severity Error (rules
// "encoding" and "too-large") and the source then has no text.
func NewSource(name string, raw []byte) (*Source, []Finding) {
	s := &Source{Name: name, Raw: raw}
	if len(raw) > MaxBytes {
		s.setText("")
		return s, []Finding{{
			Rule: "too-large", Severity: Error, At: Place{Source: s},
			Message: fmt.Sprintf("the file has more than %d MB", MaxBytes>>20),
			Hint:    "split the video: one plan a video, long lists in a file named by use",
		}}
	}
	body := bytes.TrimPrefix(raw, []byte("\xef\xbb\xbf"))
	if what, hint := foreign(body); what != "" {
		s.setText("")
		return s, []Finding{{Rule: "encoding", Severity: Error, At: Place{Source: s}, Message: what, Hint: hint}}
	}
	text := string(body)
	if strings.IndexByte(text, '\r') >= 0 {
		text = strings.ReplaceAll(text, "\r\n", "\n")
		text = strings.ReplaceAll(text, "\r", "\n")
	}
	s.setText(text)
	if bad := badByte(text); bad >= 0 {
		what, hint := fmt.Sprintf("byte 0x%02x is no text in UTF-8", text[bad]), "save the file as UTF-8"
		if text[bad] == 0 {
			what, hint = "byte 0x00 is no text", "delete it, or save the file as text"
		}
		return s, []Finding{{
			Rule: "encoding", Severity: Error, At: Place{s, Span{bad, bad + 1}},
			Message: what, Hint: hint,
		}}
	}
	return s, nil
}

// foreign recognises the encodings an editor may have chosen instead of UTF-8.
func foreign(b []byte) (what, hint string) {
	switch {
	case bytes.HasPrefix(b, []byte("\xff\xfe\x00\x00")), bytes.HasPrefix(b, []byte("\x00\x00\xfe\xff")):
		return "the file is UTF-32", "save it as UTF-8"
	case bytes.HasPrefix(b, []byte("\xff\xfe")), bytes.HasPrefix(b, []byte("\xfe\xff")):
		return "the file is UTF-16", "save it as UTF-8"
	}
	// UTF-16 without a mark: every other byte of Latin text is NUL.
	if head := b[:min(len(b), 512)]; len(head) >= 4 && bytes.Count(head, []byte{0})*3 > len(head) {
		return "the file looks like UTF-16", "save it as UTF-8"
	}
	return "", ""
}

// badByte finds the first byte that is NUL or no UTF-8, or -1.
func badByte(text string) int {
	nul := strings.IndexByte(text, 0)
	if utf8.ValidString(text) {
		return nul
	}
	for i, r := range text {
		if r == 0 {
			return i
		}
		if r == utf8.RuneError {
			if _, size := utf8.DecodeRuneInString(text[i:]); size == 1 {
				return i
			}
		}
	}
	return nul
}

func (s *Source) setText(text string) {
	s.Text = text
	s.lines = append(make([]int, 0, 1+strings.Count(text, "\n")), 0)
	for i := 0; ; {
		n := strings.IndexByte(text[i:], '\n')
		if n < 0 {
			return
		}
		i += n + 1
		s.lines = append(s.lines, i)
	}
}

// Position turns a byte offset into line and column, both from 1, the column
// in characters. Offsets outside the text are moved to its nearest end.
func (s *Source) Position(offset int) Position {
	offset = max(0, min(offset, len(s.Text)))
	line := sort.SearchInts(s.lines, offset+1) - 1
	return Position{line + 1, utf8.RuneCountInString(s.Text[s.lines[line]:offset]) + 1}
}

// Line is the text of one line, counted from 1, without its line end; empty
// outside the file.
func (s *Source) Line(n int) string {
	if n < 1 || n > len(s.lines) {
		return ""
	}
	end := len(s.Text)
	if n < len(s.lines) {
		end = s.lines[n] - 1
	}
	return s.Text[s.lines[n-1]:end]
}
