package captions

import (
	"fmt"

	"github.com/asticode/go-astisub"
)

// go-astisub reads what is left after this package has looked: v0.34.0 panics
// on simple broken files, stops in silence at a line over 64 kB and drops text
// without an error. So a file is read whole and checked here line by line or
// block by block; the library gets it in the plainest form there is, only
// turns a cue's bytes into words, and must give as many cues as it got.

// longestLine is the most that the library's scanner takes in one line, less
// some room.
const longestLine = 60_000

// guarded calls the library, and turns a panic and a wrong number of cues into
// errors.
func guarded(want int, read func() (*astisub.Subtitles, error)) (items []*astisub.Item, err error) {
	defer func() {
		if p := recover(); p != nil {
			items, err = nil, fmt.Errorf("the file can't be read: %v", p)
		}
	}()
	s, err := read()
	if err != nil {
		return nil, fmt.Errorf("the file can't be read: %w", err)
	}
	if len(s.Items) != want {
		return nil, fmt.Errorf("the file has %d cues and only %d could be read", want, len(s.Items))
	}
	return s.Items, nil
}

// lineText joins the pieces of a line; the library parts it where the style
// changes.
func lineText(l astisub.Line) string {
	if len(l.Items) == 1 {
		return l.Items[0].Text
	}
	text := ""
	for _, item := range l.Items {
		text += item.Text
	}
	return text
}
