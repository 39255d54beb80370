package captions

import (
	"strconv"
	"strings"
)

// The names of TTML 2 (W3C), which TTML 1 shares.
const (
	ttmlNamespace  = "http://www.w3.org/ns/ttml"
	ttmlParameters = ttmlNamespace + "#parameter"
	ttmlStyling    = ttmlNamespace + "#styling"
	ttmlMetadata   = ttmlNamespace + "#metadata"
	xmlNamespace   = "http://www.w3.org/XML/1998/namespace"
)

// ttmlHead is what every file has before its body, but for the language and
// the agents. The region is the BBC's safe area for 16:9 pictures (Subtitle
// Guidelines §10): the central 75 % across and 90 % down.
const (
	ttmlOpen = `<?xml version="1.0" encoding="UTF-8"?>
<tt xmlns="` + ttmlNamespace + `" xmlns:ttm="` + ttmlMetadata + `" xmlns:ttp="` + ttmlParameters + `" xmlns:tts="` + ttmlStyling + `" ttp:timeBase="media" xml:space="preserve" xml:lang="`
	ttmlLayout = `
    <layout>
      <region xml:id="low" tts:origin="12.5% 5%" tts:extent="75% 90%" tts:displayAlign="after" tts:textAlign="center"/>
    </layout>
  </head>
  <body>
    <div region="low">
`
	ttmlClose = "    </div>\n  </body>\n</tt>\n"
)

// writeTTML writes TTML: one p a cue, its lines parted by br, white space kept
// as it is, a speaker as an agent.
func writeTTML(f File) []byte {
	b := append(make([]byte, 0, f.size(80)), ttmlOpen...)
	b = append(b, xmlEscape(oneLine(f.Language))...)
	b = append(b, "\">\n  <head>"...)
	agents := make(map[string]int)
	for _, c := range f.Cues {
		name := oneLine(c.Speaker)
		if name == "" || agents[name] > 0 {
			continue
		}
		if len(agents) == 0 {
			b = append(b, "\n    <metadata>"...)
		}
		agents[name] = len(agents) + 1
		b = append(b, "\n      <ttm:agent type=\"person\" xml:id=\"speaker-"...)
		b = strconv.AppendInt(b, int64(agents[name]), 10)
		b = append(b, "\"><ttm:name type=\"alias\">"...)
		b = append(b, xmlEscape(name)...)
		b = append(b, "</ttm:name></ttm:agent>"...)
	}
	if len(agents) > 0 {
		b = append(b, "\n    </metadata>"...)
	}
	b = append(b, ttmlLayout...)
	used := make(map[string]bool)
	for _, c := range f.Cues {
		b = append(b, "      <p"...)
		if f.Format == TTML && isXMLName(c.ID) && !used[c.ID] {
			used[c.ID] = true
			b = append(b, " xml:id=\""...)
			b = append(b, c.ID...)
			b = append(b, '"')
		}
		start, end := c.milliseconds()
		b = append(b, " begin=\""...)
		b = appendStamp(b, start, '.')
		b = append(b, "\" end=\""...)
		b = appendStamp(b, end, '.')
		if n := agents[oneLine(c.Speaker)]; n > 0 {
			b = append(b, "\" ttm:agent=\"speaker-"...)
			b = strconv.AppendInt(b, int64(n), 10)
		}
		b = append(b, "\">"...)
		b = append(b, xmlEscape(Plain(c.Text))...)
		b = append(b, "</p>\n"...)
	}
	return append(b, ttmlClose...)
}

// xmlEscape escapes text for content and attributes, and parts lines by br.
func xmlEscape(text string) string {
	if !strings.ContainsAny(text, "&<>\"\n") {
		return text
	}
	return xmlEscaper.Replace(text)
}

var xmlEscaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "\n", "<br/>")

// isXMLName holds for plain names that may stand as an xml:id, and that the
// writer does not use itself.
func isXMLName(s string) bool {
	if s == "" || s == "low" || strings.HasPrefix(s, "speaker-") {
		return false
	}
	for i := 0; i < len(s); i++ {
		c := s[i]
		ok := isLetter(c) || c == '_' || i > 0 && (isDigit(c) || c == '-' || c == '.')
		if !ok {
			return false
		}
	}
	return true
}
