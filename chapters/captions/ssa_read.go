package captions

import (
	"fmt"
	"strings"
	"time"

	"github.com/asticode/go-astisub"

	"fixslate/plan/diag"
)

// readSSA reads SubStation Alpha and its later dialect: the Dialogue lines of
// the section [Events]. Override codes go, "\N" is a line break, the Name is
// the speaker. Styles, comments and drawings are passed over.
func readSSA(r *reader) {
	s := ssaReader{reader: r, fields: ssaFields}
	at := 0
	for line := range strings.SplitSeq(r.text, "\n") {
		s.line(line, diag.Span{Start: at, End: at + len(line)})
		at += len(line) + 1
	}
	s.finish()
}

type ssaReader struct {
	*reader
	events bool
	fields []string // of the section's Format line
	cues   []Cue
	script strings.Builder // for the library
}

// ssaFields is the Format of both dialects, where a file has none: the first
// field is Marked or Layer.
var ssaFields = []string{"layer", "start", "end", "style", "name", "marginl", "marginr", "marginv", "effect", "text"}

func (s *ssaReader) line(line string, at diag.Span) {
	trimmed := strings.TrimSpace(line)
	if strings.HasPrefix(trimmed, "[") && strings.HasSuffix(trimmed, "]") {
		s.events = strings.EqualFold(trimmed, "[events]")
		return
	}
	kind, content, ok := strings.Cut(line, ":")
	if !ok || !s.events {
		return
	}
	switch kind := strings.TrimSpace(kind); {
	case strings.EqualFold(kind, "Format"):
		s.format(content, at)
	case strings.EqualFold(kind, "Dialogue"):
		s.dialogue(content, diag.Span{Start: at.End - len(content), End: at.End})
	}
}

func (s *ssaReader) format(content string, at diag.Span) {
	var fields []string
	have := map[string]bool{}
	for _, name := range strings.Split(content, ",") {
		name = strings.ToLower(strings.TrimSpace(name))
		fields = append(fields, name)
		have[name] = true
	}
	if !have["start"] || !have["end"] || fields[len(fields)-1] != "text" {
		s.unread(at, "the Format of [Events] has no Start and End, or Text is not its last", "use: Format: "+strings.Join(ssaFields, ", "))
		return
	}
	s.fields = fields
}

// dialogue reads one event; at is where its fields stand.
func (s *ssaReader) dialogue(content string, at diag.Span) {
	c := Cue{At: at}
	offset, rest, text := 0, content, ""
	for i, name := range s.fields {
		field := rest
		if i+1 < len(s.fields) {
			var ok bool
			if field, rest, ok = strings.Cut(rest, ","); !ok {
				s.unread(at, fmt.Sprintf("the Dialogue line has %d of %d fields; it is left out", i+1, len(s.fields)), "")
				return
			}
		}
		switch name {
		case "start", "end":
			d, ok := ssaTime(field)
			if !ok {
				s.unread(diag.Span{Start: at.Start + offset, End: at.Start + offset + len(field)},
					quoted(shorten(strings.TrimSpace(field)))+" is no time; the Dialogue line is left out", `write it as "0:01:02.50"`)
				return
			}
			if name == "start" {
				c.Start = d
			} else {
				c.End = d
			}
		case "name":
			c.Speaker = strings.TrimSpace(field)
		case "text":
			text = field
		}
		offset += len(field) + 1
	}
	if len(text) > longestLine {
		s.unread(at, fmt.Sprintf("the Dialogue line has %d bytes; it is left out", len(content)), "part it")
		return
	}
	if isSSADrawing(text) {
		s.doubt(diag.Note, at, "the Dialogue line draws a shape; it is no caption and is left out", "")
		return
	}
	s.cues = append(s.cues, c)
	text = strings.ReplaceAll(strings.TrimSpace(text), `\h`, "\u00a0")
	fmt.Fprintf(&s.script, "Dialogue: 0:00:00.00,0:00:00.00,%s\n", text)
}

func ssaTime(field string) (time.Duration, bool) {
	field = strings.TrimSpace(field)
	d, after, why := srtClock(field, 0)
	return d, why == srtGoodClock && after == len(field)
}

// isSSADrawing holds for text in drawing mode: "{\p1}m 0 0 l 100 0".
func isSSADrawing(text string) bool {
	for {
		_, rest, ok := strings.Cut(text, `\p`)
		if !ok {
			return false
		}
		if rest != "" && rest[0] >= '1' && rest[0] <= '9' && strings.Contains(rest, "}") {
			return true
		}
		text = rest
	}
}

// finish has the library read the words.
func (s *ssaReader) finish() {
	script := "[Events]\nFormat: Start, End, Text\n" + s.script.String()
	quiet := astisub.SSAOptions{OnUnknownSectionName: func(string) {}, OnInvalidLine: func(string) {}}
	items, err := guarded(len(s.cues), func() (*astisub.Subtitles, error) {
		return astisub.ReadFromSSAWithOptions(strings.NewReader(script), quiet)
	})
	if err != nil {
		s.unread(diag.Span{}, err.Error(), "")
		return
	}
	for i, item := range items {
		lines := make([]string, len(item.Lines))
		for k, l := range item.Lines {
			lines[k] = lineText(l)
		}
		c := s.cues[i]
		c.Text = strings.Join(lines, "\n")
		s.keep(c, "")
	}
}
