package captions

import (
	"strings"

	"fixslate/plan/diag"
)

// readWebVTT reads WebVTT by the W3C's parsing algorithm ("WebVTT parser",
// WebVTT §6.1, editor's draft of 2026): the same cues as a browser, from good
// files and from bad ones. Where the algorithm drops something in silence,
// there is a finding here.
func readWebVTT(r *reader) {
	rest, ok := strings.CutPrefix(r.text, "WEBVTT")
	if !ok || rest != "" && rest[0] != ' ' && rest[0] != '\t' && rest[0] != '\n' {
		r.unread(diag.Span{End: 1}, `the first line does not begin with "WEBVTT"`, `begin the file with a line "WEBVTT" and an empty line`)
		return
	}
	v := vttReader{reader: r, at: len("WEBVTT")}
	r.expect(strings.Count(r.text, "-->"))
	header := v.line()
	r.file.Header = r.text[header.Start:header.End]
	if v.at < len(r.text) && r.text[v.at] != '\n' {
		b := v.block(true)
		r.file.Header += "\n" + b.text()
		r.file.Header = strings.TrimSuffix(r.file.Header, "\n")
	}
	v.skipBlank()
	for v.at < len(r.text) {
		v.take(v.block(false))
		v.skipBlank()
	}
}

// vttReader is the parser's state.
type vttReader struct {
	*reader
	at      int // offset in text
	regions []vttRegion
	seenCue bool // style sheets and regions count before the first cue only
}

// vttBlock is what stands between blank lines, or up to a timing line.
type vttBlock struct {
	source string
	kind   vttKind
	lines  []diag.Span // of the buffer: a cue's payload, or what a block holds
	id     string
	timing diag.Span // the timing line of a cue
	cue    vttTiming
	arrow  bool // a line had an arrow and was taken for a timing line
	whole  diag.Span
}

type vttKind int

const (
	vttOther vttKind = iota
	vttCue
	vttStyle
	vttRegionBlock
)

// text joins the lines of the buffer.
func (b *vttBlock) text() string {
	if len(b.lines) == 0 {
		return ""
	}
	// The lines of a buffer follow each other in the source.
	return b.source[b.lines[0].Start:b.lines[len(b.lines)-1].End]
}

// line takes the next line, without its end.
func (v *vttReader) line() diag.Span {
	start := v.at
	n := strings.IndexByte(v.reader.text[start:], '\n')
	if n < 0 {
		v.at = len(v.reader.text)
		return diag.Span{Start: start, End: v.at}
	}
	v.at = start + n + 1
	return diag.Span{Start: start, End: start + n}
}

func (v *vttReader) skipBlank() {
	for v.at < len(v.reader.text) && v.reader.text[v.at] == '\n' {
		v.at++
	}
}

// block is "collect a WebVTT block".
func (v *vttReader) block(inHeader bool) vttBlock {
	text := v.reader.text
	b := vttBlock{source: text, whole: diag.Span{Start: v.at}}
	for count := 1; ; count++ {
		before := v.at
		line := v.line()
		content := text[line.Start:line.End]
		if strings.Contains(content, "-->") {
			if inHeader || !(count == 1 || count == 2 && !b.arrow) {
				v.at = before
				break
			}
			b.arrow, b.timing = true, line
			id := b.text()
			cue, at, ok := parseVTTTiming(content)
			if ok {
				b.kind, b.cue, b.id, b.lines = vttCue, cue, id, nil
				v.seenCue = true
			} else {
				v.badTiming(line, at)
			}
		} else if content == "" {
			break
		} else {
			if !inHeader && count == 2 && b.kind != vttCue && !v.seenCue {
				if name := b.text(); named(name, "STYLE") {
					b.kind, b.lines = vttStyle, nil
				} else if named(name, "REGION") {
					b.kind, b.lines = vttRegionBlock, nil
				}
			}
			b.lines = append(b.lines, line)
		}
		b.whole.End = line.End
		if v.at >= len(text) {
			break
		}
	}
	return b
}

// named holds for a line that is a block's name and nothing else.
func named(line, name string) bool {
	rest, ok := strings.CutPrefix(line, name)
	return ok && strings.Trim(rest, vttSpace) == ""
}

// take keeps a block.
func (v *vttReader) take(b vttBlock) {
	text := v.reader.text
	switch {
	case b.kind == vttCue:
		v.cue(b)
	case b.kind == vttRegionBlock:
		v.regions = append(v.regions, parseVTTRegion(b.text()))
		fallthrough
	case b.kind == vttStyle, isNote(b.text()):
		v.file.Blocks = append(v.file.Blocks, Block{len(v.file.Cues), text[b.whole.Start:b.whole.End]})
	case b.arrow: // reported
	case isLate(b.text()):
		name, _, _ := strings.Cut(b.text(), "\n")
		v.file.Blocks = append(v.file.Blocks, Block{len(v.file.Cues), text[b.whole.Start:b.whole.End]})
		v.doubt(diag.Note, diag.Span{Start: b.whole.Start, End: b.whole.Start + len(name)}, "the "+strings.TrimRight(name, vttSpace)+" block stands after a cue, and players pass over it", "move it before the first cue")
	case b.whole.End > b.whole.Start:
		v.doubt(diag.Warning, diag.Span{Start: b.whole.Start, End: b.whole.Start + 1}, "these words stand in no cue and are not shown: "+quoted(shorten(b.text())),
			"take out the blank line before them, or give them a time")
	}
}

func isNote(text string) bool {
	rest, ok := strings.CutPrefix(text, "NOTE")
	return ok && (rest == "" || rest[0] == ' ' || rest[0] == '\t' || rest[0] == '\n')
}

// isLate holds for a style sheet or region where none counts any more.
func isLate(text string) bool {
	name, _, more := strings.Cut(text, "\n")
	return more && (named(name, "STYLE") || named(name, "REGION"))
}

func (v *vttReader) cue(b vttBlock) {
	raw := b.text()
	words := readVTTText(raw)
	c := Cue{
		Start: b.cue.start, End: b.cue.end, ID: b.id,
		Text: words.plain, Speaker: words.voice, At: b.timing,
		Settings: strings.Trim(b.cue.settings, vttSpace),
	}
	if len(words.strange) > 0 {
		raw = Plain(words.plain) // no reader need be asked the same question again
	}
	v.keep(c, raw)
	if c.Settings != "" {
		v.checkSettings(b)
	}
	for _, s := range words.strange {
		at := diag.Span{Start: b.lines[0].Start + s.at.Start, End: b.lines[0].Start + s.at.End}
		v.doubt(diag.Warning, at, s.message, `write "&lt;" for a "<" that is no tag`)
	}
}

// checkSettings reports what players pass over in a timing line.
func (v *vttReader) checkSettings(b vttBlock) {
	_, bad := parseVTTSettings(b.cue.settings, v.regions)
	from := b.timing.Start + b.cue.settingsAt
	for _, s := range bad {
		at := diag.Span{Start: from + s.Start, End: from + s.End}
		setting := v.reader.text[at.Start:at.End]
		why := " means nothing and is ignored"
		if strings.HasPrefix(setting, "region:") {
			why = " names no region that stands before it, and is ignored"
		}
		v.doubt(diag.Note, at, "the setting "+quoted(shorten(setting))+why, "")
	}
}

// badTiming reports a line with an arrow that gives no times.
func (v *vttReader) badTiming(line diag.Span, at int) {
	v.unread(diag.Span{Start: line.Start + at, End: line.End}, "the timing line can't be read from here; its cue is left out",
		`write it as "00:01:02.500 --> 00:01:04.000"`)
}

func quoted(text string) string { return `"` + diag.Visible(text) + `"` }
