package captions

import (
	"encoding/xml"
	"math"
	"strconv"
	"strings"
	"time"
)

// ttmlClock holds what a document says about its times (TTML 2 §6.2 and
// §12.3).
type ttmlClock struct {
	frames    float64 // a second, as counted in a time
	rate      float64 // a second, as they pass: frames times the multiplier
	subFrames float64
	ticks     float64
	smpte     bool // times are labels of frames, not of seconds
	drop      int  // labels dropped a minute, but for every tenth (PAL: other minutes)
	pal       bool
}

// newTTMLClock reads the parameters of the tt element.
func newTTMLClock(attrs []xml.Attr) ttmlClock {
	c := ttmlClock{frames: 30, subFrames: 1, ticks: 1}
	multiplier, framed, ticked := 1.0, false, false
	for _, a := range attrs {
		value := strings.TrimSpace(a.Value)
		number, err := strconv.ParseFloat(value, 64)
		positive := err == nil && number > 0 && !math.IsInf(number, 0)
		switch a.Name.Local {
		case "frameRate":
			if positive {
				c.frames, framed = number, true
			}
		case "subFrameRate":
			if positive {
				c.subFrames = number
			}
		case "tickRate":
			if positive {
				c.ticks, ticked = number, true
			}
		case "frameRateMultiplier":
			multiplier = ratio(value)
		case "timeBase":
			c.smpte = value == "smpte"
		case "dropMode":
			switch value {
			case "dropNTSC":
				c.drop = 2
			case "dropPAL":
				c.drop, c.pal = 4, true
			}
		}
	}
	c.rate = c.frames * multiplier
	if framed && !ticked {
		c.ticks = c.rate * c.subFrames
	}
	return c
}

// ratio reads "1000 1001", or "1000:1001" as TTML 1 drafts had it.
func ratio(text string) float64 {
	parts := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ':' })
	if len(parts) == 2 {
		a, errA := strconv.ParseFloat(parts[0], 64)
		b, errB := strconv.ParseFloat(parts[1], 64)
		if errA == nil && errB == nil && a > 0 && b > 0 && a/b > 1e-3 && a/b < 1e3 {
			return a / b
		}
	}
	return 1
}

// time reads a time expression: a clock time "01:02:03.4", one with frames
// "01:02:03:12.1", or an offset "3.5s", "90f", "120t".
func (c ttmlClock) time(text string) (time.Duration, bool) {
	text = strings.TrimSpace(text)
	if strings.IndexByte(text, ':') >= 0 {
		return c.clockTime(text)
	}
	end := strings.IndexFunc(text, func(r rune) bool { return r != '.' && (r < '0' || r > '9') })
	if end <= 0 || !decimal(text[:end]) {
		return 0, false
	}
	n, err := strconv.ParseFloat(text[:end], 64)
	if err != nil {
		return 0, false
	}
	switch text[end:] {
	case "h":
		n *= 3600
	case "m":
		n *= 60
	case "s":
	case "ms":
		n /= 1000
	case "f":
		n /= c.rate
	case "t":
		n /= c.ticks
	default:
		return 0, false
	}
	return toDuration(n)
}

func (c ttmlClock) clockTime(text string) (time.Duration, bool) {
	parts := strings.Split(text, ":")
	if len(parts) < 3 || len(parts) > 4 || len(parts[0]) < 2 || len(parts[1]) != 2 || !allDigits(parts[0]) || !allDigits(parts[1]) {
		return 0, false
	}
	h, _ := digits(parts[0])
	m, _ := digits(parts[1])
	whole, _, _ := strings.Cut(parts[2], ".")
	s, err := strconv.ParseFloat(parts[2], 64)
	if len(whole) != 2 || !decimal(parts[2]) || err != nil || h > mostHours || m > 59 || s >= 61 {
		return 0, false
	}
	frames := 0.0
	if len(parts) == 4 {
		f, sub, _ := strings.Cut(parts[3], ".")
		if !decimal(parts[3]) || strings.Contains(parts[2], ".") {
			return 0, false
		}
		n, _ := digits(f)
		frames = float64(n)
		if sub != "" {
			n, _ := digits(sub)
			frames += float64(n) / c.subFrames
		}
		if frames >= max(c.frames, 1) {
			return 0, false
		}
	}
	minutes := float64(h*60 + m)
	if c.smpte {
		count := (minutes*60+s)*c.frames + frames - c.dropped(float64(h*60+m))
		return toDuration(count / c.rate)
	}
	return toDuration(minutes*60 + s + frames/c.rate)
}

// dropped counts the labels left out before a minute: of drop-frame NTSC, two
// in each minute but every tenth; of drop-frame PAL, four in each second minute
// but every twentieth (TTML 2 §7.2.3).
func (c ttmlClock) dropped(minutes float64) float64 {
	if c.pal {
		return float64(c.drop) * (math.Floor(minutes/2) - math.Floor(minutes/20))
	}
	return float64(c.drop) * (minutes - math.Floor(minutes/10))
}

// toDuration rounds seconds to nanoseconds.
func toDuration(seconds float64) (time.Duration, bool) {
	if !(seconds >= 0) || seconds > mostHours*3600 {
		return 0, false
	}
	return time.Duration(math.Round(seconds * 1e9)), true
}

// later is the later of two ends, of which either may be forever.
func later(a, b time.Duration) time.Duration {
	if a == forever || b == forever {
		return forever
	}
	return max(a, b)
}

// plus adds times up to the most that a time may be.
func plus(a, b time.Duration) (time.Duration, bool) {
	if a > mostHours*time.Hour-b {
		return 0, false
	}
	return a + b, true
}

// sooner is the earlier of two ends, of which either may be forever.
func sooner(a, b time.Duration) time.Duration {
	if a == forever || b != forever && b < a {
		return b
	}
	return a
}
