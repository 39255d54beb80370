package captions

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/encoding/unicode/utf32"

	"fixslate/plan/diag"
)

// decoded is a file's bytes as text.
type decoded struct {
	text   string // UTF-8 without byte order mark, line ends LF
	guess  string // the encoding, where it is not UTF-8
	broken int    // offset of the first byte that is no text, or -1
	count  int    // how many such places
	zero   int    // offset of the first zero byte, or -1
}

// decode finds a file's encoding and decodes it. Bytes that are no text, and
// zero bytes, become U+FFFD, as the WebVTT standard has it.
func decode(raw []byte) decoded {
	d := decodeText(raw)
	if d.zero = strings.IndexByte(d.text, 0); d.zero >= 0 {
		d.text = strings.ReplaceAll(d.text, "\x00", "\ufffd")
	}
	return d
}

func decodeText(raw []byte) decoded {
	name, from := encodingOf(raw)
	if from == nil {
		raw = bytes.TrimPrefix(raw, []byte("\xef\xbb\xbf"))
		if utf8.Valid(raw) {
			return decoded{text: lineEnds(string(raw)), broken: -1}
		}
		if !isWindows1252(raw) {
			return mended(lineEnds(string(raw)))
		}
		name, from = "windows-1252", charmap.Windows1252
	}
	out, err := from.NewDecoder().Bytes(raw)
	if err != nil { // decoders replace what they can't read; no input is known to get here
		return mended(lineEnds(string(raw)))
	}
	d := decoded{text: lineEnds(strings.TrimPrefix(string(out), "\ufeff")), guess: name, broken: -1}
	if at := strings.Index(d.text, "\ufffd"); at >= 0 {
		d.broken, d.count = at, strings.Count(d.text, "\ufffd")
	}
	return d
}

// encodingOf recognises UTF-16 and UTF-32, with their mark or by the zero bytes
// of Latin text; nil for anything else.
func encodingOf(raw []byte) (string, encoding.Encoding) {
	const ignore = utf32.IgnoreBOM
	switch {
	case bytes.HasPrefix(raw, []byte("\xff\xfe\x00\x00")):
		return "UTF-32", utf32.UTF32(utf32.LittleEndian, ignore)
	case bytes.HasPrefix(raw, []byte("\x00\x00\xfe\xff")):
		return "UTF-32", utf32.UTF32(utf32.BigEndian, ignore)
	case bytes.HasPrefix(raw, []byte("\xff\xfe")):
		return "UTF-16", unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM)
	case bytes.HasPrefix(raw, []byte("\xfe\xff")):
		return "UTF-16", unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM)
	}
	head := raw[:min(len(raw), 1024)&^1]
	if len(head) < 8 {
		return "", nil
	}
	var zeros [2]int
	for i, b := range head {
		if b == 0 {
			zeros[i&1]++
		}
	}
	half := len(head) / 2
	switch {
	case zeros[1]*4 > half*3 && zeros[0]*8 < half:
		return "UTF-16", unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM)
	case zeros[0]*4 > half*3 && zeros[1]*8 < half:
		return "UTF-16", unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM)
	}
	return "", nil
}

// isWindows1252 tells the usual 8-bit encoding of Western texts from damaged
// UTF-8. A text with any good sequence of UTF-8 is UTF-8, and so is one whose
// only fault is that it stops inside a sequence.
func isWindows1252(raw []byte) bool {
	if bytes.IndexByte(raw, 0) >= 0 {
		return false
	}
	for i := 0; i < len(raw); {
		if raw[i] < utf8.RuneSelf {
			i++
			continue
		}
		if r, size := utf8.DecodeRune(raw[i:]); r != utf8.RuneError || size > 1 {
			return false
		}
		if raw[i] >= 0xc2 && !utf8.FullRune(raw[i:]) {
			return false // the text stops inside a sequence
		}
		switch raw[i] {
		case 0x81, 0x8d, 0x8f, 0x90, 0x9d: // no characters in windows-1252
			return false
		}
		i++
	}
	return true
}

// mended replaces what is no UTF-8.
func mended(text string) decoded {
	d := decoded{broken: -1}
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRuneInString(text[i:])
		if r == utf8.RuneError && size == 1 {
			if d.broken < 0 {
				d.broken = i
			}
			d.count++
		}
		i += size
	}
	d.text = strings.ToValidUTF8(text, "\ufffd")
	return d
}

// lineEnds makes every line end LF.
func lineEnds(text string) string {
	if strings.IndexByte(text, '\r') < 0 {
		return text
	}
	text = strings.ReplaceAll(text, "\r\n", "\n")
	return strings.ReplaceAll(text, "\r", "\n")
}

// report says what was guessed and what could not be read of the encoding.
func (d decoded) report(r *reader) {
	if d.guess != "" {
		r.doubt(diag.Note, diag.Span{}, "the file is read as "+d.guess, "save it as UTF-8")
	}
	if d.broken >= 0 {
		what := "a byte here is no text"
		if d.count > 1 {
			what = fmt.Sprintf("a byte here is no text, and %d more in the file", d.count-1)
		}
		r.unread(diag.Span{Start: d.broken, End: d.broken + 1}, what+" in "+d.encoding(), "save the file as UTF-8 from the program that made it")
	}
	if d.zero >= 0 {
		r.doubt(diag.Warning, diag.Span{Start: d.zero, End: d.zero + 3}, "a zero byte stands here; it is read as a character that can't be shown", "take it out")
	}
}

func (d decoded) encoding() string {
	if d.guess != "" {
		return d.guess
	}
	return "UTF-8"
}
