package marks

import (
	"bytes"
	"fmt"
	"strings"

	"fixslate/chapters"
)

// ffMetadata is FFmpeg's metadata file (FFmpeg documentation, "Metadata").
// TIMEBASE is always written: without one the documentation has said
// milliseconds and nanoseconds. `=`, `;`, `#`, `\` and line ends are escaped.
func ffMetadata(f Film) []byte {
	var b bytes.Buffer
	b.WriteString(";FFMETADATA1\n")
	if f.Title != "" {
		fmt.Fprintf(&b, "title=%s\n", ffValue(f.Title))
	}
	for _, c := range f.Chapters {
		fmt.Fprintf(&b, "\n[CHAPTER]\nTIMEBASE=1/1000\nSTART=%d\nEND=%d\ntitle=%s\n",
			chapters.Millisecond(c.Start), chapters.Millisecond(c.End), ffValue(c.Title))
	}
	return b.Bytes()
}

// ffValue escapes a value. FFmpeg's reader (5.1) takes the line end after a
// backslash as part of the value even where that backslash is escaped itself,
// and swallows the next section with it, so a value that ends in one gets a
// space after it.
func ffValue(text string) string {
	text = ffEscapes.Replace(text)
	if strings.HasSuffix(text, `\`) {
		text += " "
	}
	return text
}

var ffEscapes = strings.NewReplacer(`\`, `\\`, "=", `\=`, ";", `\;`, "#", `\#`, "\n", "\\\n")
