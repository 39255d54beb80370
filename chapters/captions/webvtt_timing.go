package captions

import (
	"math"
	"strconv"
	"strings"
	"time"

	"fixslate/plan/diag"
)

// vttSpace is what the WebVTT standard calls white space.
const vttSpace = " \t\n\f\r"

// vttTiming is what a timing line says.
type vttTiming struct {
	start, end time.Duration
	settings   string
	settingsAt int // offset in the line
}

// parseVTTTiming is "collect WebVTT cue timings and settings". Where it fails,
// at is the offset of what it stumbled over.
func parseVTTTiming(line string) (t vttTiming, at int, ok bool) {
	skip := func() {
		for at < len(line) && strings.IndexByte(vttSpace, line[at]) >= 0 {
			at++
		}
	}
	skip()
	if t.start, at, ok = vttTimestamp(line, at); !ok {
		return t, at, false
	}
	skip()
	if !strings.HasPrefix(line[at:], "-->") {
		return t, at, false
	}
	at += len("-->")
	skip()
	if t.end, at, ok = vttTimestamp(line, at); !ok {
		return t, at, false
	}
	t.settings, t.settingsAt = line[at:], at
	return t, at, true
}

// vttTimestamp is "collect a WebVTT timestamp".
func vttTimestamp(line string, at int) (d time.Duration, end int, ok bool) {
	from := at
	var field [4]int64
	hours := false
	number := func(i, want int) bool {
		n, length := digits(line[at:])
		field[i] = n
		at += length
		if i == 0 {
			hours = length != 2 || n > 59
			return length > 0
		}
		return length == want
	}
	sign := func(c byte) bool {
		if at < len(line) && line[at] == c {
			at++
			return true
		}
		return false
	}
	if !number(0, 0) || !sign(':') || !number(1, 2) {
		return 0, at, false
	}
	if hours || at < len(line) && line[at] == ':' {
		if !sign(':') || !number(2, 2) {
			return 0, at, false
		}
	} else {
		field[0], field[1], field[2] = 0, field[0], field[1]
	}
	if !sign('.') || !number(3, 3) {
		return 0, at, false
	}
	if d, ok = clock(field[0], field[1], field[2], field[3]); !ok {
		return 0, from, false
	}
	return d, at, true
}

// vttSettings are a cue's settings as the standard reads them. They are kept
// whole so that the W3C's tests can be run; conversion copies the text.
type vttSettings struct {
	region        *vttRegion
	vertical      string  // "", "rl", "lr"
	line          float64 // NaN for auto
	snapToLines   bool
	lineAlign     string
	position      float64 // NaN for auto
	positionAlign string  // "auto" for none
	size          float64
	align         string
}

// vttRegion is a region block.
type vttRegion struct {
	id               string
	width, lines     float64
	anchor, viewport [2]float64
	scroll           string
}

// parseVTTSettings is "parse the WebVTT cue settings"; bad are the settings
// that it passes over.
func parseVTTSettings(text string, regions []vttRegion) (s vttSettings, bad []diag.Span) {
	s = vttSettings{line: math.NaN(), snapToLines: true, lineAlign: "start", position: math.NaN(), positionAlign: "auto", size: 100, align: "center"}
	eachSetting(text, func(name, value string, span diag.Span) {
		if name == "" || !s.set(name, value, regions) {
			bad = append(bad, span)
		}
	})
	if s.region != nil && (s.vertical != "" || !math.IsNaN(s.line) || s.size != 100) {
		s.region = nil
	}
	return s, bad
}

// eachSetting calls for every setting; the name is empty where there is none.
func eachSetting(text string, setting func(name, value string, span diag.Span)) {
	for at := 0; at < len(text); {
		if strings.IndexByte(vttSpace, text[at]) >= 0 {
			at++
			continue
		}
		end := at
		for end < len(text) && strings.IndexByte(vttSpace, text[end]) < 0 {
			end++
		}
		name, value, found := strings.Cut(text[at:end], ":")
		if !found || value == "" {
			name = ""
		}
		setting(name, value, diag.Span{Start: at, End: end})
		at = end
	}
}

// set is one setting; false leaves things as they were.
func (s *vttSettings) set(name, value string, regions []vttRegion) bool {
	switch name {
	case "region":
		s.region = nil
		for i := range regions {
			if regions[i].id == value {
				s.region = &regions[i]
			}
		}
		return s.region != nil
	case "vertical":
		return choose(&s.vertical, value, "rl", "lr")
	case "align":
		return choose(&s.align, value, "start", "center", "end", "left", "right")
	case "size":
		return percentage(value, &s.size)
	case "position":
		where, align, aligned := strings.Cut(value, ",")
		number, side := s.position, s.positionAlign
		if !percentage(where, &number) || aligned && !choose(&side, align, "line-left", "center", "line-right") {
			return false
		}
		s.position, s.positionAlign = number, side
		return true
	case "line":
		return s.setLine(value)
	}
	return false
}

func (s *vttSettings) setLine(value string) bool {
	where, align, aligned := strings.Cut(value, ",")
	number, side := 0.0, s.lineAlign
	percent := strings.HasSuffix(where, "%")
	if percent && !percentage(where, &number) || !percent && !lineNumber(where, &number) {
		return false
	}
	if aligned && !choose(&side, align, "start", "center", "end") {
		return false
	}
	s.line, s.lineAlign, s.snapToLines = number, side, !percent
	return true
}

func choose(to *string, value string, allowed ...string) bool {
	for _, a := range allowed {
		if value == a {
			*to = value
			return true
		}
	}
	return false
}

// percentage is "parse a percentage string": digits, perhaps a point and more
// digits, "%"; 0 to 100.
func percentage(text string, to *float64) bool {
	number, ok := strings.CutSuffix(text, "%")
	if !ok || !decimal(number) {
		return false
	}
	n, err := strconv.ParseFloat(number, 64)
	if err != nil || n > 100 {
		return false
	}
	*to = n
	return true
}

// lineNumber reads a line's number: a decimal with perhaps a minus sign that a
// double can hold.
func lineNumber(text string, to *float64) bool {
	if !decimal(strings.TrimPrefix(text, "-")) {
		return false
	}
	n, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return false
	}
	*to = n + 0 // no minus zero
	return true
}

// decimal holds for digits, perhaps with a point between them.
func decimal(text string) bool {
	whole, part, point := strings.Cut(text, ".")
	return allDigits(whole) && (!point || allDigits(part))
}

func allDigits(s string) bool {
	_, n := digits(s)
	return n > 0 && n == len(s)
}

// parseVTTRegion is "collect WebVTT region settings".
func parseVTTRegion(text string) vttRegion {
	g := vttRegion{width: 100, lines: 3, anchor: [2]float64{0, 100}, viewport: [2]float64{0, 100}}
	pair := func(value string, to *[2]float64) {
		x, y, _ := strings.Cut(value, ",")
		var both [2]float64
		if percentage(x, &both[0]) && percentage(y, &both[1]) {
			*to = both
		}
	}
	eachSetting(text, func(name, value string, _ diag.Span) {
		switch name {
		case "id":
			g.id = value
		case "width":
			percentage(value, &g.width)
		case "lines":
			if allDigits(value) {
				if n, err := strconv.ParseFloat(value, 64); err == nil {
					g.lines = n
				}
			}
		case "regionanchor":
			pair(value, &g.anchor)
		case "viewportanchor":
			pair(value, &g.viewport)
		case "scroll":
			choose(&g.scroll, value, "up")
		}
	})
	return g
}
