package captions

import (
	"math"
	"strings"
	"time"
)

// Profile is what a caption may be, so that it can be read.
type Profile struct {
	Name     string
	Width    int           // grapheme clusters in a line
	Lines    int           // lines in a cue
	Speed    float64       // characters a second, spaces and line breaks counted
	Word     time.Duration // time wished for each word, where there is room
	Shortest time.Duration // a cue stays at least so long
	Longest  time.Duration // and at most so long
	Gap      time.Duration // least time between two cues
	Pause    time.Duration // a shorter time than this between two cues is closed to Gap
	Linger   time.Duration // how long a cue may stay after its last word
	Shift    time.Duration // how far a cue may start from its first word, to be read in time
}

// What the published guides say, by short names used below:
//
//	BBC      BBC Subtitle Guidelines 1.2.5 (2026)
//	Netflix  Timed Text Style Guide: general requirements, timing guidelines
//	         and the English template (older stored copies)
//	WAI      W3C WAI, "Transcribing Audio to Text", on captions
//	DCMP     Captioning Guidelines for the DCMP (2011)
const (
	// Netflix, English template §2: adults 17 characters a second, which it
	// calls 200 words a minute; 0.3 s a word in BBC §4.1 is the same speed.
	adultSpeed = 17.0
	// BBC §4.1: the least time to aim for is 0.3 s a word.
	wordTime = 300 * time.Millisecond
	// Netflix, general requirements §1: 5/6 s to 7 s, rounded inwards.
	shortest = 834 * time.Millisecond
	longest  = 7 * time.Second
	// Netflix, general requirements §3: two frames at any frame rate; 83.4 ms
	// at 23.976, the slowest rate in use.
	twoFrames = 84 * time.Millisecond
	// BBC §4.5: a gap at a pause is at least 1 s, a shorter one looks jerky.
	// Netflix closes gaps below half a second (timing guidelines).
	pauseBBC, pauseNetflix = time.Second, 500 * time.Millisecond
	// BBC §5.1: at most 1.5 s early and 1.5 s after the speech, never more than
	// 2 s late. Netflix: at most half a second after the speech.
	lingerBBC, lingerNetflix = 1500 * time.Millisecond, 500 * time.Millisecond
	shift                    = 1500 * time.Millisecond
)

// Profiles lists the profiles, the default first.
func Profiles() []Profile {
	bbc := Profile{
		Speed: adultSpeed, Word: wordTime, Shortest: shortest, Longest: longest,
		Gap: twoFrames, Pause: pauseBBC, Linger: lingerBBC, Shift: shift,
	}
	of := func(name string, width, lines int) Profile {
		p := bbc
		p.Name, p.Width, p.Lines = name, width, lines
		return p
	}
	broadcast := of("broadcast", 37, 2) // BBC §3.1 and §3.3
	wide := of("wide", 42, 2)           // Netflix, English template §2
	wide.Pause, wide.Linger = pauseNetflix, lingerNetflix
	narrow := of("narrow", 32, 2)     // WAI: under 32 is best; DCMP: a line has 32
	vertical := of("vertical", 25, 3) // BBC §3.1 and §3.3 for 9:16 pictures
	return []Profile{broadcast, wide, narrow, vertical}
}

// ProfileNamed finds a profile; the empty name is the default, "broadcast".
func ProfileNamed(name string) (Profile, bool) {
	all := Profiles()
	if name == "" {
		return all[0], true
	}
	for _, p := range all {
		if p.Name == name {
			return p, true
		}
	}
	return Profile{}, false
}

// reading is the least time in milliseconds to read so many characters.
func (p Profile) reading(characters int) int64 {
	need := p.Shortest.Milliseconds()
	if p.Speed > 0 {
		need = max(need, int64(math.Ceil(float64(characters)*1000/p.Speed)))
	}
	return need
}

// comfort is the time in milliseconds wished for so many words that take at
// least so long to read, never more than a cue may stay.
func (p *Profile) comfort(need int64, words int) int64 {
	wish := max(need, int64(words)*p.Word.Milliseconds())
	return max(need, min(wish, p.Longest.Milliseconds()))
}

// label writes a sound in the plan's style: "[pump hums]", "(pump hums)" or
// "PUMP HUMS". Guides disagree, so a plan chooses one for all its captions:
// brackets (DCMP, for sounds), parentheses (WAI), capitals (BBC §17.3 and §7.1).
// A text that is in brackets or parentheses already changes to the style.
func label(style, text string) string {
	text = bare(text)
	switch {
	case text == "":
		return ""
	case style == "parentheses":
		return "(" + text + ")"
	case style == "capitals":
		return strings.ToUpper(text)
	}
	return "[" + text + "]"
}

// bare takes the brackets off a label.
func bare(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	for _, pair := range []string{"[]", "()"} {
		if len(text) >= 2 && text[0] == pair[0] && text[len(text)-1] == pair[1] {
			return strings.TrimSpace(text[1 : len(text)-1])
		}
	}
	return text
}
