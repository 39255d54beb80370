package timing

import (
	"strings"
	"unicode/utf8"
)

// readingSeconds is how long words must stand on the screen to be read: 0.3 s
// a word, every word counted (BBC Subtitle Guidelines 1.2.5 §4.1), at most 17
// characters a second (Netflix English template §2, adults) and 5/6 s at least
// (its general requirements §1). The caption profiles differ in width, not in
// how fast people read.
func readingSeconds(print string) float64 {
	words := 0.3 * float64(len(strings.Fields(print)))
	characters := float64(utf8.RuneCountInString(print)) / 17
	return max(5.0/6, words, characters)
}

// cardSeconds is how long a card stands: a second to find it beside a busy
// picture (BBC §4.3 gives a label about that much more), then to be read.
func cardSeconds(print string) float64 { return 1 + readingSeconds(print) }

// soundSeconds is how long the talk waits for a sound: a second at least, and
// until its label can be read.
func soundSeconds(label string) float64 { return max(1, readingSeconds(label)) }
