package captions

import (
	"html"
	"strings"
	"time"
)

// srtTimed is what a line says as a timing line.
type srtTimed struct {
	kind       srtKind
	start, end time.Duration
	arrow      string
	rest       string // after the end time
	at         int    // offset of the arrow, or of what can't be read
	plain      bool   // the line has the usual arrow
	hint       string
}

type srtKind int

const (
	srtNoTiming srtKind = iota
	srtMaybe            // an arrow, and figures or nothing before it
	srtBroken           // a clock time before the arrow, and something wrong
	srtTiming
)

const srtHint = `write it as "00:01:02,500 --> 00:01:04,000"`

// srtArrows are the ways in which people write the arrow, longest first.
var srtArrows = [...]string{"--->", "-->", "-- >", "- ->", "—>", "–>", "->", "=>", "→"}

// readSRTTiming reads a line as a timing line.
func readSRTTiming(line string) srtTimed {
	// Most lines are words: without a colon there is no clock, and without an
	// arrow no pair of them.
	plain := strings.Contains(line, "-->")
	if !plain && (strings.IndexByte(line, ':') < 0 || !hasTwoClocks(line)) {
		return srtTimed{}
	}
	t := parseSRTTiming(line)
	t.plain = plain
	return t
}

func parseSRTTiming(line string) srtTimed {
	blank := len(line) - len(strings.TrimLeft(line, " \t"))
	start, after, why := srtClock(line, blank)
	if why == srtNoClock {
		if strings.HasPrefix(line[blank:], "-->") || blank < len(line) && (isDigit(line[blank]) || line[blank] == '-') && strings.Contains(line, "-->") {
			return srtTimed{kind: srtMaybe, at: blank, hint: srtHint}
		}
		return srtTimed{}
	}
	if why == srtBadClock {
		return srtTimed{kind: srtBroken, at: blank, hint: srtRange}
	}
	at := after + spaces(line[after:])
	for _, arrow := range srtArrows {
		if !strings.HasPrefix(line[at:], arrow) {
			continue
		}
		from := at + len(arrow)
		from += spaces(line[from:])
		end, after, why := srtClock(line, from)
		switch why {
		case srtBadClock:
			return srtTimed{kind: srtBroken, at: from, hint: srtRange}
		case srtNoClock:
			return srtTimed{kind: srtBroken, at: from, hint: srtHint}
		}
		return srtTimed{kind: srtTiming, start: start, end: end, arrow: arrow, at: at, rest: line[after:]}
	}
	return srtTimed{kind: srtBroken, at: at, hint: srtHint}
}

// hasTwoClocks holds for a line that begins with a digit and has colons enough
// for two clock times: timing without the usual arrow.
func hasTwoClocks(line string) bool {
	trimmed := strings.TrimLeft(line, " \t")
	return trimmed != "" && isDigit(trimmed[0]) && strings.Count(trimmed, ":") >= 2 && hasSecondClock(trimmed)
}

// hasSecondClock holds where, after a first clock time, another one follows.
func hasSecondClock(line string) bool {
	_, after, why := srtClock(line, 0)
	if why == srtNoClock {
		return false
	}
	for i := after; i < len(line); i++ {
		if isDigit(line[i]) {
			_, _, why := srtClock(line, i)
			return why != srtNoClock
		}
		if isLetter(line[i]) {
			return false
		}
	}
	return false
}

type srtWhy int

const (
	srtGoodClock srtWhy = iota
	srtBadClock         // a clock time out of range
	srtNoClock          // no clock time
)

const srtRange = "write times like 00:01:02,500: minutes and seconds run from 00 to 59, hours to 2500000"

// srtClock reads "1:02:03,500" at an offset: hours may be missing, the sign
// before the fraction is a comma, a point or a colon, spaces around the signs
// are passed over, the fraction may be missing or of any length.
func srtClock(line string, at int) (d time.Duration, after int, why srtWhy) {
	var field [3]int64
	n := 0
	for n < len(field) {
		value, length := digits(line[at:])
		if length == 0 || n > 0 && length > 2 {
			break
		}
		field[n] = value
		n++
		at += length
		after = at
		gap := spaces(line[at:])
		if at+gap >= len(line) || line[at+gap] != ':' || n == len(field) {
			break
		}
		at += gap + 1
		at += spaces(line[at:])
	}
	if n < 2 {
		return 0, after, srtNoClock
	}
	if n == 2 {
		field = [3]int64{0, field[0], field[1]}
	}
	ms := int64(0)
	if at := after + spaces(line[after:]); at < len(line) && strings.IndexByte(",.:;", line[at]) >= 0 {
		at++
		at += spaces(line[at:])
		if _, length := digits(line[at:]); length > 0 {
			if line[at-1] == ':' && length != 3 {
				return 0, after, srtBadClock // frames, of no known rate, or seconds that lost their point
			}
			ms = fraction(line[at : at+length])
			after = at + length
		}
	}
	carry := ms / 1000
	d, ok := clock(field[0], field[1], field[2], ms%1000)
	if !ok {
		return 0, after, srtBadClock
	}
	return d + time.Duration(carry)*time.Second, after, srtGoodClock
}

// fraction rounds the digits after the point to milliseconds, 0 to 1000.
func fraction(figures string) int64 {
	ms := int64(0)
	for i := 0; i < 3; i++ {
		ms *= 10
		if i < len(figures) {
			ms += int64(figures[i] - '0')
		}
	}
	if len(figures) > 3 && figures[3] >= '5' {
		ms++
	}
	return ms
}

func spaces(s string) int { return len(s) - len(strings.TrimLeft(s, " \t")) }

// isSRTPlace holds for what may follow the times: coordinates ("X1:100 X2:200")
// or a WebVTT cue's settings, which some programs leave there.
func isSRTPlace(rest string) bool {
	for _, word := range strings.Fields(rest) {
		name, value, ok := strings.Cut(word, ":")
		if !ok || value == "" || len(name) > 9 {
			return false
		}
		switch strings.ToLower(name) {
		case "x1", "x2", "y1", "y2", "align", "position", "line", "size", "vertical", "region":
		default:
			return false
		}
	}
	return true
}

// readSRTText reads a cue's words down to plain text: the tags that players
// know go, override codes go, entities become characters. Any other "<" is
// text.
func readSRTText(raw string) string {
	if !strings.ContainsAny(raw, "<&{") {
		return raw
	}
	var b strings.Builder
	for i := 0; i < len(raw); {
		rest := raw[i:]
		n := 0
		switch rest[0] {
		case '<':
			n = srtTagLength(rest)
		case '{':
			n = overrideLength(rest)
		case '&':
			if n = entityLength(rest); n > 0 {
				b.WriteString(html.UnescapeString(rest[:n]))
			}
		}
		if n == 0 {
			b.WriteByte(rest[0])
			n = 1
		}
		i += n
	}
	return b.String()
}

// srtTagLength is the length of the tag that s begins with, 0 for none.
func srtTagLength(s string) int {
	end := strings.IndexByte(s, '>')
	if end < 0 {
		return 0
	}
	name := strings.TrimPrefix(s[1:end], "/")
	if stop := strings.IndexAny(name, " \t\n="); stop >= 0 {
		name = name[:stop]
	}
	switch strings.ToLower(name) {
	case "b", "i", "u", "s", "font", "c", "ruby", "rt":
		return end + 1
	}
	return 0
}
