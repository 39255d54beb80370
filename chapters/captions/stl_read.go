package captions

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"strings"
	"time"

	"github.com/asticode/go-astisub"

	"fixslate/plan/diag"
)

// The blocks of EBU Tech 3264: one with general information, then any number
// with text and times.
const (
	stlGeneral = 1024
	stlBlock   = 128
	stlText    = 16 // offset of the text in a block

	stlUnused  = 0x8f // fills a text field up
	stlNewLine = 0x8a
	stlLast    = 0xff // extension block number of a subtitle's last block
	stlUser    = 0xfe // of a block with a maker's own data
)

// isSTL holds for EBU STL by its format code, or by its name.
func isSTL(raw []byte, name string) bool {
	return len(raw) >= stlGeneral && string(raw[3:6]) == "STL" || FormatNamed(extension(name)) == STL
}

// readSTL reads EBU STL: the subtitles, not the comments nor a maker's data.
// Times count from the start of the programme. Colours, boxes and places go.
func readSTL(r *reader, raw []byte) {
	if len(raw) < stlGeneral || string(raw[3:6]) != "STL" {
		r.unread(diag.Span{}, "the file is no EBU STL: it does not begin with the general block of one", "use SRT, WebVTT, TTML, SSA or EBU STL")
		return
	}
	s := stlReader{reader: r}
	rate, ok := stlRate(string(raw[3:11]))
	if !ok {
		r.unread(diag.Span{}, "the format code "+quoted(string(raw[3:11]))+` is none of "STL24.01", "STL25.01", "STL30.01", "STL50.01"`, "")
		return
	}
	if table := string(raw[12:14]); table != "00" {
		r.unread(diag.Span{}, "the character table "+quoted(table)+" is not the Latin one, 00", "convert the file with a program that has the table")
		return
	}
	s.rate = rate
	for at := stlGeneral; at < len(raw); at += stlBlock {
		if len(raw)-at < stlBlock {
			r.unread(diag.Span{}, fmt.Sprintf("the file stops inside its last block, after %d of %d bytes", len(raw)-at, stlBlock), "get the file again from where it came")
			break
		}
		s.block(raw[at : at+stlBlock])
	}
	s.finish(stlHeader(raw[:stlGeneral]), string(raw[256:264]))
}

type stlReader struct {
	*reader
	rate   int64
	blocks []byte    // for the library
	pieces []stlCue  // one for each of blocks
	before [2]uint16 // group and number of the block before, where more of it follows
	more   bool
}

// stlCue is a block's part of a cue.
type stlCue struct {
	cue   Cue
	joins bool // goes on with the cue of the piece before
	join  string
}

func stlRate(code string) (int64, bool) {
	rate, known := map[string]int64{"STL24.01": 24, "STL25.01": 25, "STL30.01": 30, "STL50.01": 50}[code]
	return rate, known
}

// block takes one block of text and times.
func (s *stlReader) block(b []byte) {
	extension, comment := b[3], b[15] == 1
	if extension == stlUser || comment {
		return
	}
	id := [2]uint16{uint16(b[0]), binary.LittleEndian.Uint16(b[1:3])}
	joins := s.more && id == s.before
	s.before, s.more = id, extension != stlLast
	text := stlPlainText(b[stlText:])
	c := Cue{ID: fmt.Sprint(id[1])}
	if !joins {
		var okStart, okEnd bool
		c.Start, okStart = s.time(b[5:9])
		c.End, okEnd = s.time(b[9:13])
		if !okStart || !okEnd {
			s.unread(diag.Span{}, fmt.Sprintf("subtitle %d has a time out of range; it is left out", id[1]), "")
			s.more = false
			return
		}
	}
	piece := stlCue{cue: c, joins: joins}
	if joins && len(s.pieces) > 0 {
		piece.join = stlJoin(s.blocks[len(s.blocks)-stlBlock+stlText:], text)
	}
	s.pieces = append(s.pieces, piece)
	plain := make([]byte, stlBlock)
	plain[3] = stlLast
	n := copy(plain[stlText:], text)
	for i := stlText + n; i < stlBlock; i++ {
		plain[i] = stlUnused
	}
	s.blocks = append(s.blocks, plain...)
}

func (s *stlReader) time(b []byte) (time.Duration, bool) {
	if int64(b[3]) >= s.rate || b[0] > 99 {
		return 0, false
	}
	d, ok := clock(int64(b[0]), int64(b[1]), int64(b[2]), 0)
	return d + time.Duration(b[3])*time.Second/time.Duration(s.rate), ok
}

// stlPlainText takes what is no letter out of a text field: style codes go,
// the control codes of teletext become the spaces they are shown as.
func stlPlainText(field []byte) []byte {
	text := make([]byte, 0, len(field))
	for _, c := range field {
		switch {
		case c == stlUnused:
			return text
		case c >= 0x80 && c <= 0x85:
		case c < 0x20:
			text = append(text, ' ')
		default:
			text = append(text, c)
		}
	}
	return text
}

// stlJoin is what stands between the words of two blocks of one subtitle.
func stlJoin(before, after []byte) string {
	before = bytes.TrimRight(before, "\x8f")
	switch {
	case len(before) == 0 || len(after) == 0:
		return ""
	case before[len(before)-1] == stlNewLine || after[0] == stlNewLine:
		return "\n"
	case before[len(before)-1] == ' ' || after[0] == ' ':
		return " "
	}
	return ""
}

// stlHeader is a general block with nothing in it that the library can stumble
// over: open subtitles, no dates, no counts, no times.
func stlHeader(general []byte) []byte {
	h := bytes.Repeat([]byte{' '}, stlGeneral)
	copy(h, general[:3])
	copy(h[3:], "STL25.01000")
	return h
}

// finish has the library read the letters, and counts times from the start of
// the programme.
func (s *stlReader) finish(header []byte, programme string) {
	items, err := guarded(len(s.pieces), func() (*astisub.Subtitles, error) {
		return astisub.ReadFromSTL(bytes.NewReader(append(header, s.blocks...)), astisub.STLOptions{IgnoreTimecodeStartOfProgramme: true})
	})
	if err != nil {
		s.unread(diag.Span{}, err.Error(), "")
		return
	}
	var cues []Cue
	for i, item := range items {
		var lines []string
		for _, l := range item.Lines {
			lines = append(lines, strings.Join(strings.Fields(lineText(l)), " "))
		}
		text := strings.Join(lines, "\n")
		if p := s.pieces[i]; p.joins && len(cues) > 0 {
			cues[len(cues)-1].Text += p.join + text
			continue
		}
		c := s.pieces[i].cue
		c.Text = text
		cues = append(cues, c)
	}
	s.shift(cues, programme)
	for _, c := range cues {
		s.keep(c, "")
	}
}

// shift takes the time code of the programme's start off, unless a cue comes
// before it.
func (s *stlReader) shift(cues []Cue, programme string) {
	var b [4]byte
	for i := range b {
		pair := programme[2*i : 2*i+2]
		if !allDigits(pair) {
			return // no start given
		}
		b[i] = (pair[0]-'0')*10 + pair[1] - '0'
	}
	start, ok := s.time(b[:])
	if !ok || start == 0 {
		return
	}
	for _, c := range cues {
		if c.Start < start {
			s.doubt(diag.Warning, diag.Span{}, "a cue comes before the start of the programme, "+clockTime(start)+"; times are left as they stand", "")
			return
		}
	}
	for i := range cues {
		cues[i].Start -= start
		cues[i].End -= start
	}
}
