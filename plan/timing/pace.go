package timing

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"

	"fixslate/plan/diag"
)

// Pace is how one presenter talks and works. A rate, share or factor of zero is
// that of DefaultPace, so the zero Pace is DefaultPace.
type Pace struct {
	Rate        Rate
	ScreenShare float64 // seconds in the cut for each second of hands-on time
	HandsOn     float64 // hands-on time as it was, over hands-on time as planned
	Counts      Counts
}

// Counts is how much was measured to get a Pace; all zero: nothing.
type Counts struct {
	Videos int // finished edits
	Lines  int // lines of narration heard in them
	Steps  int // steps whose screen time is known
	Works  int // steps whose hands-on time is known
}

// DefaultPace is the presenter nobody has measured yet. ScreenShare one half:
// common practice, no source.
func DefaultPace() Pace {
	return Pace{Rate: DefaultRate(), ScreenShare: 0.5, HandsOn: 1}
}

// filled is the pace with what is zero taken from DefaultPace.
func (p Pace) filled() Pace {
	d := DefaultPace()
	if p.Rate.CharactersPerSecond <= 0 {
		p.Rate = d.Rate
	}
	if p.ScreenShare <= 0 {
		p.ScreenShare = d.ScreenShare
	}
	if p.HandsOn <= 0 {
		p.HandsOn = d.HandsOn
	}
	return p
}

// rate is how the lines of a plan are spoken. A measured rate stands for
// itself; [voice] wpm then says nothing new.
func (p Pace) rate(wpm float64) Rate {
	if p.Rate == DefaultRate() {
		return p.Rate.AtWPM(wpm)
	}
	return p.Rate
}

// Spread of one voice, as standard deviations of the logarithm of the rate.
//
// VoiceSpread: totals fitted on one voice and tried on another were between
// -10 and +11 % off; as 10 and 90 % points that is 0.105/1.2816 = 0.082.
// SittingSpread: how much one presenter varies from one video to the next
// (common practice, no source). LineSpread: what is left on a single line with
// the voice known: a mean error of 5.5 % (TestSpeechData) is a standard deviation of 5.5 · √(π/2).
const (
	VoiceSpread   = 0.082
	SittingSpread = 0.04
	LineSpread    = 0.07
)

// spread is the standard deviation of the logarithm of the next video's rate.
// Presenters differ, and one presenter differs between videos; the more videos
// were measured, the less of the first is left (normal prior, normal
// observations).
func (p Pace) spread() float64 {
	between := VoiceSpread*VoiceSpread - SittingSpread*SittingSpread
	left := 1 / (1/between + float64(p.Counts.Videos)/(SittingSpread*SittingSpread))
	return math.Sqrt(left + SittingSpread*SittingSpread)
}

// paceKey is one key of a pace file.
type paceKey struct {
	name      string
	low, high float64 // what the file may say
	number    *float64
	count     *int
	comment   string
}

func (p *Pace) keys() []paceKey {
	return []paceKey{
		{name: "characters_per_second", low: 5, high: 40, number: &p.Rate.CharactersPerSecond, comment: "speech between pauses, numbers and units written out in words"},
		{name: "comma_pause", low: 0, high: 5, number: &p.Rate.Comma, comment: "seconds after a long phrase"},
		{name: "sentence_pause", low: 0, high: 10, number: &p.Rate.Sentence, comment: "seconds after a long sentence"},
		{name: "screen_share", low: 0.01, high: 10, number: &p.ScreenShare, comment: "seconds in the cut for each second of hands-on time"},
		{name: "hands_on_factor", low: 0.1, high: 10, number: &p.HandsOn, comment: "hands-on time as it was, over hands-on time as planned"},
		{name: "videos", high: 1e6, count: &p.Counts.Videos, comment: "finished edits measured; more narrow the spread"},
		{name: "lines", high: 1e6, count: &p.Counts.Lines, comment: "lines of narration heard"},
		{name: "steps", high: 1e6, count: &p.Counts.Steps, comment: "steps whose screen time is known"},
		{name: "works", high: 1e6, count: &p.Counts.Works, comment: "steps whose hands-on time is known"},
	}
}

// File is the pace as a TOML file: a comment and a key a line, nothing else.
// Numbers are written so that ReadPace gets the same ones back.
func (p Pace) File() []byte {
	p = p.filled()
	var b bytes.Buffer
	b.WriteString("# How one presenter talks and works; [pace] file = \"…\" in a plan uses it.\n")
	for _, k := range p.keys() {
		value := ""
		if k.count != nil {
			value = strconv.Itoa(*k.count)
		} else {
			value = strconv.FormatFloat(*k.number, 'f', -1, 64)
		}
		fmt.Fprintf(&b, "\n# %s\n%s = %s\n", k.comment, k.name, value)
	}
	return b.Bytes()
}

// ReadPace reads what File writes. Keys left out keep their default. An error
// names the line and what to write instead; the pace is then DefaultPace.
//
// The form is the part of TOML that a pace needs: comments and `key = number`.
// Tables and strings have no meaning here and are refused.
func ReadPace(file []byte) (Pace, error) {
	p := DefaultPace()
	keys := p.keys()
	seen := map[string]bool{}
	text := strings.TrimPrefix(string(file), "\ufeff")
	n := 0
	for line := range strings.Lines(text) {
		n++
		line, _, _ = strings.Cut(line, "#")
		line = strings.TrimSpace(line)
		if line == "" {
			continue
		}
		name, value, ok := strings.Cut(line, "=")
		name, value = strings.TrimSpace(name), strings.TrimSpace(value)
		if !ok {
			return DefaultPace(), fmt.Errorf("line %d: %s is no line of a pace file; write a key and a number, like \"comma_pause = 0.3\"", n, short(line))
		}
		i := 0
		for i < len(keys) && keys[i].name != name {
			i++
		}
		switch {
		case i == len(keys):
			return DefaultPace(), fmt.Errorf("line %d: key %s is not known; the keys are %s", n, short(name), keyNames(keys))
		case seen[name]:
			return DefaultPace(), fmt.Errorf("line %d: key %q stands twice; remove one", n, name)
		}
		seen[name] = true
		if err := keys[i].set(value); err != nil {
			return DefaultPace(), fmt.Errorf("line %d: %w", n, err)
		}
	}
	return p, nil
}

// set reads a number as TOML writes it. TOML has underscores between digits,
// hexadecimal and infinities; a pace needs none of them.
func (k paceKey) set(value string) error {
	v, err := strconv.ParseFloat(value, 64)
	if err != nil || strings.ContainsAny(value, "xXpP_") || strings.HasPrefix(value, ".") || strings.HasSuffix(value, ".") {
		return fmt.Errorf("%s is %s; write a plain number", k.name, short(value))
	}
	if !(v >= k.low && v <= k.high) { // NaN fails both
		return fmt.Errorf("%s is %s; write %s to %s", k.name, short(value), decimal(k.low), decimal(k.high))
	}
	if k.number != nil {
		*k.number = v
		return nil
	}
	if v != math.Trunc(v) {
		return fmt.Errorf("%s is %s; write a whole number", k.name, short(value))
	}
	*k.count = int(v)
	return nil
}

func decimal(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// short quotes a stranger's text for a message.
func short(text string) string {
	return strconv.Quote(diag.Shorten(text, 40))
}

func keyNames(keys []paceKey) string {
	names := make([]string, len(keys))
	for i, k := range keys {
		names[i] = k.name
	}
	return strings.Join(names, ", ")
}
