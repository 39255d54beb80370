package captions

import (
	"fmt"
	"strconv"
	"time"
)

// Write makes a caption file in one of the formats with Writable: UTF-8
// without byte order mark, lines ending in LF. The same File gives the same
// bytes.
//
// Times are rounded to the nearest millisecond, each by itself, so that nothing
// drifts and cues that did not overlap do not afterwards; a cue that is shown
// for less than a millisecond is written with one, since two formats demand
// an end after the start. Times below zero are written as zero. What would not
// be text in the format (see Plain) is left out of the text.
//
// Identifiers, settings, markup and the blocks between cues are written only
// when the file had that same format. An error names a format that is read
// only.
func Write(f File, to Format) ([]byte, error) {
	switch to {
	case SRT:
		return writeSRT(f), nil
	case WebVTT:
		return writeWebVTT(f), nil
	case TTML:
		return writeTTML(f), nil
	}
	return nil, fmt.Errorf("caption files are not written as %s; use srt, vtt or ttml", to)
}

// milliseconds rounds a cue's times as they are written.
func (c Cue) milliseconds() (start, end int64) {
	start, end = roundMillisecond(c.Start), roundMillisecond(c.End)
	if c.End > c.Start && end == start {
		end++
	}
	return start, end
}

func roundMillisecond(d time.Duration) int64 {
	if d <= 0 {
		return 0
	}
	return int64((d + time.Millisecond/2) / time.Millisecond)
}

// appendStamp writes hours, minutes, seconds and milliseconds: at least two
// digits of hours, more from a hundred hours on.
func appendStamp(b []byte, ms int64, point byte) []byte {
	h := ms / 3_600_000
	if h < 10 {
		b = append(b, '0')
	}
	b = strconv.AppendInt(b, h, 10)
	two := func(n int64, before byte) {
		b = append(b, before, byte('0'+n/10), byte('0'+n%10))
	}
	two(ms/60_000%60, ':')
	two(ms/1000%60, ':')
	b = append(b, point, byte('0'+ms/100%10), byte('0'+ms/10%10), byte('0'+ms%10))
	return b
}

// size guesses how many bytes a written file has, to allocate once.
func (f File) size(each int) int {
	n := 512
	for i := range f.Cues {
		n += len(f.Cues[i].Text) + each
	}
	return n
}
