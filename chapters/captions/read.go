package captions

import (
	"fmt"
	"path"
	"strings"
	"time"

	"fixslate/plan/diag"
)

// mostCues bounds what one file takes in memory; ten hours have about 20,000.
const mostCues = 500_000

// MaxBytes bounds a caption file; ten hours of captions are about 1 MB.
const MaxBytes = 24 << 20

// mostHours is the most that a time may have; time.Duration ends at 2,562,047 h.
const mostHours = 2_500_000

// longLine is from how many characters on a line is no caption any more.
const longLine = 1000

// Read reads a caption file: SRT, WebVTT, TTML, SSA or STL, told apart by their
// content; the name decides only where the content doesn't.
//
// Every timing line becomes a cue or a finding with its place. What was left
// out has a finding of severity Error and rule "caption-unread", and the File
// is then not Whole. What was read though it is not as the format writes it
// has a finding of rule "caption-doubtful". Read does not judge what it read:
// see Check.
//
// UTF-8, UTF-16, UTF-32 and windows-1252 are recognised. Tags, entities and
// override codes in a cue are read down to plain text.
func Read(raw []byte, name string) (File, []diag.Finding) {
	if len(raw) > MaxBytes {
		r := newReader(raw, name, "")
		r.unread(diag.Span{}, fmt.Sprintf("the file has more than %d MB", MaxBytes>>20), "part it; ten hours of captions are about 1 MB")
		return r.file, r.found
	}
	if isSTL(raw, name) {
		r := newReader(raw, name, "")
		r.file.Format = STL
		readSTL(r, raw)
		r.finish()
		return r.file, r.found
	}
	d := decode(raw)
	r := newReader(raw, name, d.text)
	r.file.Format = sniff(d.text, name)
	if r.file.Format != Unknown {
		d.report(r) // the bytes of a picture are no badly saved text
	}
	switch r.file.Format {
	case SRT:
		readSRT(r)
	case WebVTT:
		readWebVTT(r)
	case TTML:
		readTTML(r)
	case SSA:
		readSSA(r)
	}
	r.finish()
	return r.file, r.found
}

// reader is a file while it is read.
type reader struct {
	text  string
	file  File
	found []diag.Finding
	full  bool // it holds as many cues as a file may
}

func newReader(raw []byte, name, text string) *reader {
	r := &reader{text: text}
	r.file.Source = diag.NewText(name, raw, text)
	r.file.Whole = true
	return r
}

// unread reports what was left out of the file.
func (r *reader) unread(at diag.Span, message, hint string) {
	r.file.Whole = false
	r.add(at, diag.Finding{Rule: "caption-unread", Severity: diag.Error, Message: message, Hint: hint})
}

// doubt reports what was read though the format does not write it so.
func (r *reader) doubt(severity diag.Severity, at diag.Span, message, hint string) {
	r.add(at, diag.Finding{Rule: "caption-doubtful", Severity: severity, Message: message, Hint: hint})
}

func (r *reader) add(at diag.Span, f diag.Finding) {
	f.At = diag.Place{Source: r.file.Source, Span: at}
	r.found = append(r.found, f)
}

// expect makes room for so many cues.
func (r *reader) expect(cues int) { r.file.Cues = make([]Cue, 0, min(cues, mostCues)) }

// keep adds a cue. raw is its text as the format writes it, empty where that
// is not kept.
func (r *reader) keep(c Cue, raw string) {
	if len(r.file.Cues) == mostCues {
		if !r.full {
			r.full = true
			r.unread(c.At, fmt.Sprintf("the file has more than %d cues; the rest is left out", mostCues), "part it")
		}
		return
	}
	c.Text = Plain(c.Text)
	if c.Text != raw {
		c.Markup = raw
	}
	if len(c.Text) > longLine {
		for line := range strings.SplitSeq(c.Text, "\n") {
			if n := Characters(line); n > longLine {
				r.doubt(diag.Warning, c.At, fmt.Sprintf("the cue has a line of %d characters", n), "part it into cues; no screen shows so much")
			}
		}
	}
	r.file.Cues = append(r.file.Cues, c)
}

// finish says what is to be said of the file as a whole.
func (r *reader) finish() {
	format := r.file.Format
	switch {
	case !r.file.Whole && len(r.file.Cues) == 0:
		return
	case strings.TrimSpace(r.text) == "" && format != STL:
		r.unread(diag.Span{}, "the file is empty", "")
	case format == Unknown:
		r.unread(diag.Span{}, "this is no caption file that fixslate reads", "use SRT, WebVTT, TTML, SSA or EBU STL")
	case len(r.file.Cues) == 0 && (format == WebVTT || format == TTML): // both may be without: a part of a live programme, captions as pictures
		r.doubt(diag.Warning, diag.Span{}, "the file holds no cue", "")
	case len(r.file.Cues) == 0:
		r.unread(diag.Span{}, "the file holds no cue", "")
	}
	if named := FormatNamed(extension(r.file.Source.Name)); named != Unknown && format != Unknown && named != format {
		r.doubt(diag.Note, diag.Span{}, fmt.Sprintf("the file is named .%s and holds %s", extension(r.file.Source.Name), format), "rename it")
	}
}

// FormatOf tells by its content alone what caption format a text is; Unknown
// where nothing in it shows one. An arrow makes captions of a text only between
// two times: narration and plans may have arrows too.
func FormatOf(raw []byte) Format {
	if isSTL(raw, "") {
		return STL
	}
	text := decode(raw).text
	format := sniff(text, "")
	if format == SRT && !hasTiming(text) {
		return Unknown
	}
	return format
}

// hasTiming says whether a line has an arrow between two times.
func hasTiming(text string) bool {
	for line := range strings.Lines(text) {
		from, to, ok := strings.Cut(strings.TrimSpace(line), "-->")
		to = strings.TrimSpace(to)
		if ok && from != "" && to != "" && isDigit(from[0]) && isDigit(to[0]) && strings.Contains(from, ":") && strings.Contains(to, ":") {
			return true
		}
	}
	return false
}

// sniff tells a file's format by its content, then by its name.
func sniff(text, name string) Format {
	named := FormatNamed(extension(name))
	begin := strings.TrimLeft(text, " \t\n\f")
	switch {
	case begin == "":
		return named
	case strings.HasPrefix(text, "WEBVTT"):
		return WebVTT
	case strings.HasPrefix(begin, "<"):
		if named == TTML || strings.Contains(begin[:min(len(begin), 4096)], "tt") {
			return TTML
		}
		return Unknown
	case hasSection(begin):
		return SSA
	case named == WebVTT && !numberedComma(begin):
		return WebVTT // and readWebVTT will ask for its first line
	case strings.Contains(text, "-->"), named == SRT:
		return SRT
	case named == SSA:
		return SSA
	}
	return Unknown
}

// hasSection holds for the sections of SSA.
func hasSection(text string) bool {
	head := strings.ToLower(text[:min(len(text), 1<<16)])
	return strings.HasPrefix(head, "[script info]") || strings.HasPrefix(head, "[events]") || strings.Contains(head, "\n[events]")
}

// numberedComma holds for text that begins as SRT alone does: a number on a
// line of its own, then a time with a comma.
func numberedComma(text string) bool {
	number, rest, _ := strings.Cut(text, "\n")
	timing, _, _ := strings.Cut(rest, "\n")
	return isCount(strings.TrimSpace(number)) && strings.Contains(timing, "-->") && strings.Contains(timing, ",")
}

// isCount holds for a whole number in digits, no longer than a cue's number is.
func isCount(s string) bool {
	if s == "" || len(s) > 9 {
		return false
	}
	for i := 0; i < len(s); i++ {
		if !isDigit(s[i]) {
			return false
		}
	}
	return true
}

func extension(name string) string {
	return strings.TrimPrefix(strings.ToLower(path.Ext(strings.ReplaceAll(name, `\`, "/"))), ".")
}

// clock adds up a time; false where a part is out of range. Milliseconds may
// be any number below a thousand.
func clock(h, m, s, ms int64) (time.Duration, bool) {
	if h < 0 || h > mostHours || m < 0 || m > 59 || s < 0 || s > 59 || ms < 0 || ms > 999 {
		return 0, false
	}
	return time.Duration(((h*60+m)*60+s)*1000+ms) * time.Millisecond, true
}

// digits reads the digits that s begins with; a number too large for any clock
// comes back as mostHours+1.
func digits(s string) (n int64, length int) {
	for length < len(s) && isDigit(s[length]) {
		if n <= mostHours {
			n = n*10 + int64(s[length]-'0')
		}
		length++
	}
	return n, length
}
