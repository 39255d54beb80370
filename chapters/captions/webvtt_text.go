package captions

import (
	"html"
	"strings"

	"fixslate/plan/diag"
)

// vttText is a cue's text without its tags.
type vttText struct {
	plain   string
	voice   string // who speaks, where one voice says it all
	strange []strange
}

// strange is a tag that shows nothing and perhaps was none.
type strange struct {
	at      diag.Span // in the cue's text
	message string
}

// readVTTText reads a cue's text by the W3C's tokenizer ("WebVTT cue text
// parsing rules"): from "<" to the next ">" all is a tag, character references
// are HTML's. Annotations and time stamps inside the text show nothing.
func readVTTText(raw string) vttText {
	if strings.IndexByte(raw, '<') < 0 {
		return vttText{plain: html.UnescapeString(raw)}
	}
	var t vttText
	var b strings.Builder
	voices, inVoice, outside := 0, false, false
	for at := 0; at < len(raw); {
		next := strings.IndexByte(raw[at:], '<')
		if next != 0 {
			if next < 0 {
				next = len(raw) - at
			}
			words := html.UnescapeString(raw[at : at+next])
			b.WriteString(words)
			outside = outside || !inVoice && strings.TrimSpace(words) != ""
			at += next
			continue
		}
		end := strings.IndexByte(raw[at:], '>')
		if end < 0 {
			t.strange = append(t.strange, strange{diag.Span{Start: at, End: len(raw)}, "a tag opens here and never closes; what follows in the cue is not shown"})
			break
		}
		tag := raw[at+1 : at+end]
		name, note := vttTag(tag)
		switch {
		case name == "v":
			voices++
			inVoice = true
			t.voice = note
		case name == "/v":
			inVoice = false
		case !vttTagNames[strings.TrimPrefix(name, "/")] && !isVTTStamp(tag):
			t.strange = append(t.strange, strange{diag.Span{Start: at, End: at + end + 1}, quoted(shorten("<"+tag+">")) + " is no tag of the format and is not shown"})
		}
		at += end + 1
	}
	t.plain = b.String()
	if voices != 1 || outside {
		t.voice = ""
	}
	return t
}

var vttTagNames = map[string]bool{"c": true, "i": true, "b": true, "u": true, "ruby": true, "rt": true, "v": true, "lang": true}

// vttTag parts a tag's content into its name and its annotation.
func vttTag(tag string) (name, note string) {
	end := strings.IndexAny(tag, ". \t\n\f")
	if strings.HasPrefix(tag, "/") || end < 0 {
		return tag, ""
	}
	name = tag[:end]
	if blank := strings.IndexAny(tag, " \t\n\f"); blank >= 0 {
		note = strings.Join(strings.Fields(html.UnescapeString(tag[blank:])), " ")
	}
	return name, note
}

// isVTTStamp holds for a time stamp inside a cue's text.
func isVTTStamp(tag string) bool {
	_, end, ok := vttTimestamp(tag, 0)
	return ok && end == len(tag)
}
