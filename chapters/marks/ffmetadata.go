package marks

import (
	"bytes"
	"fmt"
	"strings"

	"fixslate/chapters"
)

// FFMetadata is FFmpeg's metadata file (FFmpeg documentation, "Metadata").
// TIMEBASE is always written: without one the documentation has said
// milliseconds and nanoseconds. A title that ends in a bare backslash would
// swallow the next section, so `\` is escaped with the rest.
func FFMetadata(f Film) []byte {
	var b bytes.Buffer
	escape := strings.NewReplacer(`\`, `\\`, "=", `\=`, ";", `\;`, "#", `\#`, "\n", "\\\n")
	b.WriteString(";FFMETADATA1\n")
	if f.Title != "" {
		fmt.Fprintf(&b, "title=%s\n", escape.Replace(f.Title))
	}
	for _, c := range f.Chapters {
		fmt.Fprintf(&b, "\n[CHAPTER]\nTIMEBASE=1/1000\nSTART=%d\nEND=%d\ntitle=%s\n",
			chapters.Millisecond(c.Start), chapters.Millisecond(c.End), escape.Replace(c.Title))
	}
	return b.Bytes()
}
