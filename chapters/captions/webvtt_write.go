package captions

import "strings"

// writeWebVTT writes WebVTT (W3C). "&", "<" and the arrow of a timing line are
// escaped; a ">" by itself need not be. A line that begins like a block of
// the file ("NOTE …") is wrapped in a class span, which shows nothing: the
// standard's reader would take it for text as it stands, simpler ones would
// not.
func writeWebVTT(f File) []byte {
	same := f.Format == WebVTT
	b := append(make([]byte, 0, f.size(48)), "WEBVTT"...)
	if same {
		b = appendHeader(b, f.Header)
	}
	b = append(b, '\n')
	blocks := f.Blocks
	if !same {
		blocks = nil
	}
	for i, c := range f.Cues {
		for len(blocks) > 0 && blocks[0].Before <= i {
			b = appendBlock(b, blocks[0])
			blocks = blocks[1:]
		}
		b = append(b, '\n')
		if id := oneID(c.ID); id != "" && (same || f.Format == TTML) {
			b = append(b, id...)
			b = append(b, '\n')
		}
		start, end := c.milliseconds()
		b = appendStamp(b, start, '.')
		b = append(b, " --> "...)
		b = appendStamp(b, end, '.')
		if settings := oneLine(c.Settings); same && settings != "" {
			b = append(b, ' ')
			b = append(b, settings...)
		}
		b = append(b, '\n')
		b = append(b, cueTextWebVTT(c, same)...)
		b = append(b, '\n')
	}
	for _, block := range blocks {
		b = appendBlock(b, block)
	}
	return b
}

// appendHeader writes what follows the signature: on its line after a blank,
// then lines of their own. An arrow would begin a cue there; taking control
// characters out may have made one.
func appendHeader(b []byte, header string) []byte {
	first, rest, _ := strings.Cut(header, "\n")
	if first = Plain(first); strings.HasPrefix(first, " ") && !strings.Contains(first, "-->") {
		b = append(b, first...)
	}
	if rest = Plain(rest); rest != "" && !strings.Contains(rest, "-->") {
		b = append(b, '\n')
		b = append(b, rest...)
	}
	return b
}

func appendBlock(b []byte, block Block) []byte {
	text := Plain(block.Text)
	if text == "" || strings.Contains(text, "-->") {
		return b
	}
	b = append(b, '\n')
	b = append(b, text...)
	return append(b, '\n')
}

// oneID keeps an identifier as it is, spaces too, where a line can hold it.
func oneID(id string) string {
	id = Plain(id)
	if strings.ContainsRune(id, '\n') || strings.Contains(id, "-->") {
		return ""
	}
	return id
}

func cueTextWebVTT(c Cue, same bool) string {
	if markup := Plain(c.Markup); same && markup != "" && !strings.Contains(markup, "-->") {
		return markup
	}
	text := Plain(c.Text)
	if text == "" {
		return ""
	}
	if strings.ContainsAny(text, "&<") || strings.Contains(text, "-->") {
		text = webvttEscaper.Replace(text)
	}
	text = wrapBlockNames(text)
	if name := strings.Join(strings.Fields(Plain(c.Speaker)), " "); name != "" {
		name = annotationEscaper.Replace(name)
		if dash, ends := strings.CutSuffix(name, "-"); ends {
			name = dash + "&#45;" // with the tag's end two of them would make an arrow
		}
		return "<v " + name + ">" + text + "</v>"
	}
	return text
}

var (
	webvttEscaper     = strings.NewReplacer("&", "&amp;", "<", "&lt;", "-->", "--&gt;")
	annotationEscaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;")
)

var blockNames = [...]string{"NOTE", "STYLE", "REGION", "Region:", "WEBVTT", "X-TIMESTAMP-MAP"}

func wrapBlockNames(text string) string {
	found := false
	for _, name := range blockNames {
		found = found || strings.Contains(text, name)
	}
	if !found {
		return text
	}
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		for _, name := range blockNames {
			if strings.HasPrefix(strings.TrimSpace(line), name) {
				lines[i] = "<c>" + line + "</c>"
				break
			}
		}
	}
	return strings.Join(lines, "\n")
}
