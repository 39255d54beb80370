package timing

import (
	"strings"
	"unicode/utf8"
)

// ReadingSpeed is how fast a viewer reads words on the screen.
type ReadingSpeed struct {
	WordsPerMinute      float64 // 0: no limit in words
	CharactersPerSecond float64 // 0: no limit in characters
	Least               float64 // seconds that anything stays
}

// ReadingSpeedOf is the reading speed of a caption profile; a profile it does
// not know reads like "broadcast".
//
// Sources: 160 words a minute is the lower end of the BBC Subtitle Guidelines
// 1.2.5 §4 (160 to 180) and the upper level of the DCMP Captioning Key,
// "Presentation Rate"; 17 characters a second is the adult figure of the
// Netflix English template (older copy, §2), which allows 42 characters a
// line. Least, 5/6 s: the shortest event of its general requirements, §1.
func ReadingSpeedOf(profile string) ReadingSpeed {
	if profile == "wide" {
		return ReadingSpeed{CharactersPerSecond: 17, Least: 5.0 / 6}
	}
	return ReadingSpeed{WordsPerMinute: 160, Least: 5.0 / 6}
}

// Seconds is how long words must stay on the screen to be read. Every word
// counts, one-letter words too.
func (s ReadingSpeed) Seconds(print string) float64 {
	long := s.Least
	if s.WordsPerMinute > 0 {
		long = max(long, float64(len(strings.Fields(print)))*60/s.WordsPerMinute)
	}
	if s.CharactersPerSecond > 0 {
		long = max(long, float64(utf8.RuneCountInString(print))/s.CharactersPerSecond)
	}
	return long
}
