package marks

import (
	"bytes"
	"fmt"
	"strings"

	"fixslate/chapters"
)

// webVTT is a chapters file as a <track kind=chapters> reads it (W3C WebVTT,
// "file using chapter title text"): cues that follow each other without
// overlap, the titles as plain text with `&`, `<` and `>` as references, so
// that neither a tag nor an arrow can stand in a title.
func webVTT(f Film) []byte {
	var b bytes.Buffer
	b.WriteString("WEBVTT\n")
	escape := strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;")
	for _, c := range f.Chapters {
		start := chapters.Millisecond(c.Start)
		end := max(start+1, chapters.Millisecond(c.End)) // an end must lie after its start
		fmt.Fprintf(&b, "\n%s --> %s\n%s\n", clock(start), clock(end), escape.Replace(c.Title))
	}
	return b.Bytes()
}

// clock writes milliseconds as hh:mm:ss and three digits; hours have two
// digits or more.
func clock(ms int64) string {
	return fmt.Sprintf("%02d:%02d:%02d.%03d", ms/3600000, ms/60000%60, ms/1000%60, ms%1000)
}
