package marks

import (
	"bytes"
	"fmt"
	"strings"

	"fixslate/chapters"
)

// description is one line a chapter, "0:00 Title", from one hour on "1:02:03 Title",
// and nothing else. `<` and `>` are refused in titles and descriptions where
// such lists are read (YouTube Data API v3, videos resource,
// snippet.description), so they are written as angle quotes: ‹ ›.
func description(f Film) []byte {
	var b bytes.Buffer
	for _, c := range f.Chapters {
		fmt.Fprintf(&b, "%s %s\n", chapters.Stamp(c.Start), NoAngles(c.Title))
	}
	return b.Bytes()
}

// NoAngles writes `<` and `>` as ‹ and ›.
func NoAngles(text string) string {
	if !strings.ContainsAny(text, "<>") {
		return text
	}
	return angles.Replace(text)
}

var angles = strings.NewReplacer("<", "‹", ">", "›")
