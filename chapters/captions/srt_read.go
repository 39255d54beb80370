package captions

import (
	"fmt"
	"strings"

	"fixslate/plan/diag"
)

// readSRT reads SubRip. There is no standard, and the files in use differ, so
// much is forgiven: no numbers, no blank lines between cues or blank ones
// inside, points for commas, no hours. Nothing is passed over in silence: a
// timing line is a cue or an error, and words belong to a cue or have a
// finding.
func readSRT(r *reader) {
	s := srtReader{reader: r}
	r.expect(strings.Count(r.text, "-->"))
	s.split()
	for s.at < len(s.lines) {
		s.step()
	}
	s.close()
}

// srtReader is the reader's state.
type srtReader struct {
	*reader
	lines []diag.Span
	at    int // index of the next line

	state    srtState
	cue      Cue   // the open cue
	words    []int // its lines, indexes in lines
	loose    bool  // one of them stands after a blank line
	numbered bool  // a cue had a number
	lastID   string
}

type srtState int

const (
	srtBefore srtState = iota // no timing line yet
	srtOpen                   // inside a cue
	srtLost                   // inside a cue whose timing line can't be read
)

// split finds the lines.
func (s *srtReader) split() {
	text := s.reader.text
	s.lines = make([]diag.Span, 0, strings.Count(text, "\n")+1)
	for start := 0; ; {
		n := strings.IndexByte(text[start:], '\n')
		if n < 0 {
			s.lines = append(s.lines, diag.Span{Start: start, End: len(text)})
			return
		}
		s.lines = append(s.lines, diag.Span{Start: start, End: start + n})
		start += n + 1
	}
}

func (s *srtReader) line(i int) string {
	return s.reader.text[s.lines[i].Start:s.lines[i].End]
}

func (s *srtReader) blank(i int) bool {
	return i < 0 || i >= len(s.lines) || strings.TrimSpace(s.line(i)) == ""
}

// step takes one line.
func (s *srtReader) step() {
	i := s.at
	s.at++
	line := s.line(i)
	if t := readSRTTiming(line); t.kind != srtNoTiming && s.wantsTiming(i, t) {
		id := s.takeNumber(i)
		s.close()
		s.open(i, t, id)
		return
	}
	if strings.TrimSpace(line) == "" {
		return
	}
	switch s.state {
	case srtBefore:
		if !isCount(strings.TrimSpace(line)) || !s.timingFollows(i) {
			s.unread(s.lines[i], "these words stand before the first cue: "+quoted(shorten(line)), "give them a time, or take them out")
		}
	case srtOpen:
		if s.blank(i-1) && len(s.words) > 0 && s.words[len(s.words)-1] < i-1 {
			if s.lostTiming(i) {
				return
			}
			s.loose = s.loose || !isCount(strings.TrimSpace(line)) || !s.timingFollows(i)
		}
		s.words = append(s.words, i)
	case srtLost: // with the cue above, but for another cue without times
		if s.blank(i - 1) {
			s.lostTiming(i)
		}
	}
}

// wantsTiming holds where a line is timing and no words: it has the usual arrow
// and a clock time before it, or stands where a timing line has to be.
func (s *srtReader) wantsTiming(i int, t srtTimed) bool {
	if t.plain && t.kind != srtMaybe {
		return true
	}
	return s.blank(i-1) || isCount(strings.TrimSpace(s.line(i-1))) && s.blank(i-2)
}

// timingFollows holds where the next line that is not blank has times, or was
// meant to.
func (s *srtReader) timingFollows(i int) bool {
	for j := i + 1; j < len(s.lines) && j <= i+2; j++ {
		if !s.blank(j) {
			return readSRTTiming(s.line(j)).kind != srtNoTiming
		}
	}
	return false
}

// takeNumber takes the number line before a timing line off the words of the
// cue above. Between cues that have no blank line it is a number only where
// the cues have numbers.
func (s *srtReader) takeNumber(i int) string {
	j := i - 1
	if j >= 1 && s.blank(j) {
		j-- // a blank line between number and times
	}
	if j < 0 || !isCount(strings.TrimSpace(s.line(j))) {
		return ""
	}
	if !s.blank(j-1) && s.state == srtOpen && !s.numbered {
		return ""
	}
	if j < i-1 && !s.blank(j-1) {
		return ""
	}
	if n := len(s.words); n > 0 && s.words[n-1] == j {
		s.words = s.words[:n-1]
	}
	s.numbered = true
	return strings.TrimSpace(s.line(j))
}

// lostTiming reports a cue that has a number and words and no times: the
// number follows on the last one, and no times come after it.
func (s *srtReader) lostTiming(i int) bool {
	number := strings.TrimSpace(s.line(i))
	if !isCount(number) || s.timingFollows(i) || s.blank(i+1) || !follows(s.lastID, number) {
		return false
	}
	s.close()
	s.unread(s.lines[i], fmt.Sprintf("cue %s has no timing line; it is left out", number), `write its times under the number: "00:01:02,500 --> 00:01:04,000"`)
	s.lastID, s.state = number, srtLost
	return true
}

func follows(last, number string) bool {
	a, _ := digits(last)
	b, _ := digits(number)
	return last != "" && b == a+1
}

// open begins a cue with its timing line.
func (s *srtReader) open(i int, t srtTimed, id string) {
	if id != "" {
		s.lastID = id
	}
	at := s.lines[i]
	if t.kind != srtTiming {
		s.state = srtLost
		s.unread(diag.Span{Start: at.Start + t.at, End: at.End}, "the timing line can't be read from here; its cue is left out", t.hint)
		return
	}
	if t.arrow != "-->" {
		s.doubt(diag.Warning, diag.Span{Start: at.Start + t.at, End: at.Start + t.at + len(t.arrow)},
			"the times are parted by "+quoted(t.arrow)+"; few players read it", `write "-->"`)
	}
	s.state = srtOpen
	s.cue = Cue{Start: t.start, End: t.end, ID: id, At: at}
	rest := strings.TrimSpace(t.rest)
	if rest == "" || isSRTPlace(rest) {
		s.cue.Settings = rest
		return
	}
	s.doubt(diag.Warning, diag.Span{Start: at.End - len(t.rest), End: at.End}, "words follow the times on their line; they are read as the cue's", "put them on the next line")
	s.cue.Text = rest // close puts it before the other lines
}

// close ends the open cue.
func (s *srtReader) close() {
	if s.state != srtOpen {
		s.words, s.loose = s.words[:0], false
		return
	}
	raw := s.raw()
	s.cue.Text = readSRTText(raw)
	if s.loose {
		s.doubt(diag.Note, s.cue.At, "the cue has a blank line in its words; players may stop there", "take the blank line out")
	}
	s.keep(s.cue, raw)
	s.state, s.words, s.loose = srtLost, s.words[:0], false
}

// raw joins the open cue's lines. Without blank lines between them they are one
// stretch of the file's text.
func (s *srtReader) raw() string {
	n := len(s.words)
	if s.cue.Text == "" && n > 0 && s.words[n-1]-s.words[0] == n-1 {
		text := s.reader.text[s.lines[s.words[0]].Start:s.lines[s.words[n-1]].End]
		if !strings.Contains(text, " \n") {
			return strings.TrimRight(text, " ")
		}
	}
	var b strings.Builder
	b.WriteString(s.cue.Text)
	for _, i := range s.words {
		if b.Len() > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(strings.TrimRight(s.line(i), " "))
	}
	return b.String()
}
