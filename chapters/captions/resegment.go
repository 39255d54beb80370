package captions

import "strings"

// Resegment cuts a file's captions anew for a profile. Words and their order
// stay; within a cue, time is shared out by characters. A line in brackets or
// parentheses stays a line of its own, and so does a second speaker's after a
// dash. Identifiers, settings, markup and blocks go: they belonged to the old
// cues. Cues that overlap follow each other.
func Resegment(f File, p Profile) File {
	units := make([]Unit, 0, len(f.Cues))
	for _, c := range f.Cues {
		units = appendUnits(units, c)
	}
	f.Cues = Segment(units, p)
	f.Header, f.Blocks = "", nil
	return f
}

// appendUnits takes a cue apart where sounds and speech meet.
func appendUnits(units []Unit, c Cue) []Unit {
	whole := Unit{
		Text: c.Text, Speaker: c.Speaker, At: c.At,
		Start: c.Start.Seconds(), End: max(c.End, c.Start).Seconds(),
	}
	if !strings.ContainsAny(c.Text, "[(") {
		return append(units, whole)
	}
	first := len(units)
	for line := range strings.SplitSeq(c.Text, "\n") {
		kind := Speech
		if isLabel(line) {
			kind = Sound
		}
		if n := len(units); n > first && units[n-1].Kind == Speech && kind == Speech {
			units[n-1].Text += "\n" + line
			continue
		}
		next := whole
		next.Kind, next.Text = kind, line
		units = append(units, next)
	}
	total := Characters(c.Text)
	at := 0
	for i := first; i < len(units); i++ {
		u := &units[i]
		share := func(n int) float64 {
			return whole.Start + (whole.End-whole.Start)*float64(n)/float64(max(total, 1))
		}
		n := Characters(u.Text)
		u.Start, u.End = share(at), share(at+n)
		at += n + 1
	}
	return units
}

// isLabel holds for a line that is all in brackets or parentheses.
func isLabel(line string) bool {
	line = strings.TrimSpace(line)
	if len(line) < 3 {
		return false
	}
	for _, pair := range []string{"[]", "()"} {
		if line[0] == pair[0] && strings.IndexByte(line, pair[1]) == len(line)-1 {
			return true
		}
	}
	return false
}
