package captions

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"fixslate/plan/diag"
)

// readTTML reads TTML 1 and 2 and the profiles made of them: every p is one
// cue, with the text of all that is in it and the time in which any of it is
// shown. Times come from p itself, from its spans, and from the div and body
// around it, in parallel or in sequence (TTML 2 §12). Styles, regions and
// animation are passed over.
func readTTML(r *reader) {
	t := ttmlReader{reader: r, agents: map[string]string{}}
	r.expect(strings.Count(r.text, "</p>"))
	d := xml.NewDecoder(strings.NewReader(r.text))
	d.CharsetReader = func(_ string, in io.Reader) (io.Reader, error) { return in, nil } // decoded already
	d.Entity = xml.HTMLEntity
	for {
		at := int(d.InputOffset())
		token, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.broken(int(d.InputOffset()), err)
			break
		}
		switch token := token.(type) {
		case xml.StartElement:
			t.start(token, diag.Span{Start: at, End: int(d.InputOffset())})
		case xml.EndElement:
			t.end()
		case xml.CharData:
			t.characters(token)
		}
		if t.foreign {
			return
		}
	}
	t.finish()
}

// forever is the end of what has none.
const forever = time.Duration(-1)

// ttmlElement is an open element.
type ttmlElement struct {
	name       string
	begin, end time.Duration
	sequence   bool          // its children follow each other
	bounded    bool          // an end or a duration of its own
	reached    time.Duration // where its children end: the last of a sequence, else the latest
	preserve   bool          // xml:space
	skip       bool          // metadata and foreign elements: nothing in it counts
	timed      bool          // begin, end or dur stands here or around it
	agent      string
}

type ttmlReader struct {
	*reader
	clock   ttmlClock
	open    []ttmlElement
	agents  map[string]string // names by id
	named   string            // id of the agent whose name comes
	foreign bool              // no TTML at all

	inside  int // index in open of the p that is being read, 0 for none
	cue     Cue
	words   strings.Builder
	shown   bool          // some words have given the cue its times
	stepped bool          // words of one p come up at different times
	latest  time.Duration // latest time that is known
	endless []int         // cues without an end
	bad     bool          // a time of this p can't be read
	untimed []bool        // for endless: no time at all
}

func (t *ttmlReader) top() *ttmlElement { return &t.open[len(t.open)-1] }

// start opens an element.
func (t *ttmlReader) start(e xml.StartElement, at diag.Span) {
	name := e.Name.Local
	if len(t.open) == 0 {
		if name != "tt" {
			t.foreign = true
			t.unread(at, "the file is XML but no TTML: it begins with <"+diag.Visible(name)+">", "use SRT, WebVTT, TTML, SSA or EBU STL")
			return
		}
		t.clock = newTTMLClock(e.Attr)
		t.open = append(t.open, ttmlElement{name: "tt", end: forever})
		t.inherit(t.top(), e.Attr)
		return
	}
	parent := t.top()
	child := ttmlElement{
		name: name, begin: parent.begin, end: parent.end,
		preserve: parent.preserve, skip: parent.skip || !ttmlName(e.Name.Space), timed: parent.timed, agent: parent.agent,
	}
	if e.Name.Space == ttmlMetadata || strings.HasSuffix(e.Name.Space, "#metadata") {
		t.metadata(e)
	}
	if name == "metadata" || name == "head" {
		child.skip = true
	}
	t.inherit(&child, e.Attr)
	if !child.skip {
		switch name {
		case "body", "div", "p", "span":
			t.place(parent, &child, e.Attr, at)
		case "br":
			t.lineBreak()
		}
	}
	t.open = append(t.open, child)
	if name == "p" && !child.skip && t.inside == 0 {
		t.inside = len(t.open) - 1
		t.beginCue(e, at)
	}
}

// ttmlName holds for the namespaces that TTML has had, and for none.
func ttmlName(space string) bool {
	return space == "" || space == ttmlNamespace || strings.Contains(space, "/ttaf1") && !strings.Contains(space, "#")
}

// inherit reads the attributes that go down to children.
func (t *ttmlReader) inherit(e *ttmlElement, attrs []xml.Attr) {
	for _, a := range attrs {
		switch {
		case a.Name.Local == "space" && a.Name.Space == xmlNamespace:
			e.preserve = a.Value == "preserve"
		case a.Name.Local == "lang" && a.Name.Space == xmlNamespace && e.name == "tt":
			t.file.Language = a.Value
		case a.Name.Local == "agent" && strings.HasSuffix(a.Name.Space, "#metadata"):
			e.agent, _, _ = strings.Cut(strings.TrimSpace(a.Value), " ")
		case a.Name.Local == "timeContainer":
			e.sequence = a.Value == "seq"
		}
	}
}

// metadata keeps the names of agents.
func (t *ttmlReader) metadata(e xml.StartElement) {
	if e.Name.Local != "agent" {
		return
	}
	for _, a := range e.Attr {
		if a.Name.Local == "id" {
			t.named = a.Value
		}
	}
}

// place finds an element's times: begin, end and dur count from the parent's
// begin, or in a sequence from the end of the child before; nothing outlasts
// the parent.
func (t *ttmlReader) place(parent, child *ttmlElement, attrs []xml.Attr, at diag.Span) {
	from := parent.begin
	if parent.sequence {
		from = max(parent.reached, parent.begin)
		if parent.reached == forever {
			from = parent.begin // the child before has no end: SMIL would never show this one
		}
	}
	begin, end := from, forever
	dur := forever
	for _, a := range attrs {
		name := a.Name.Local
		if a.Name.Space != "" || name != "begin" && name != "end" && name != "dur" {
			continue
		}
		value, ok := t.clock.time(a.Value)
		if ok && name != "dur" {
			value, ok = plus(from, value)
		}
		if !ok {
			t.bad = t.bad || t.inside > 0 || child.name == "p"
			t.unread(at, name+" "+quoted(shorten(a.Value))+" is no time", `write it as "00:01:02.500" or "62.5s"`)
			continue
		}
		child.timed = true
		switch name {
		case "begin":
			begin = value
		case "end":
			end = value
		case "dur":
			dur = value
		}
	}
	if dur != forever {
		if until, ok := plus(begin, dur); ok {
			end = sooner(end, until)
		}
	}
	child.begin, child.end, child.bounded = begin, sooner(end, parent.end), end != forever
	child.reached = begin
	t.latest = max(t.latest, child.begin, child.end)
}

// left takes an element's end to the element around it: the end it has, else
// where the last of what it holds ends (SMIL 3.0 §5.4.4, implicit durations; as
// TTML 2 §12.2 has it, words in an element that is no sequence have no end).
func (parent *ttmlElement) left(child *ttmlElement) {
	end := child.end
	if !child.bounded {
		end = sooner(child.reached, child.end)
	}
	if parent.sequence {
		parent.reached = end
	} else {
		parent.reached = later(parent.reached, end)
	}
}

func (t *ttmlReader) beginCue(e xml.StartElement, at diag.Span) {
	t.cue = Cue{At: at}
	for _, a := range e.Attr {
		if a.Name.Local == "id" && (a.Name.Space == xmlNamespace || a.Name.Space == "") {
			t.cue.ID = a.Value
		}
	}
	t.words.Reset()
	t.shown, t.stepped = false, false
}

// characters takes text. White space is collapsed unless xml:space keeps it.
func (t *ttmlReader) characters(text []byte) {
	if len(t.open) == 0 {
		return
	}
	e := t.top()
	if t.inside == 0 || e.skip {
		if e.name == "name" && t.named != "" && t.inside == 0 {
			t.agents[t.named] += strings.TrimSpace(string(text))
		}
		return
	}
	words := false
	for _, c := range text {
		switch c {
		case ' ', '\t', '\n', '\r':
			t.blank(e.preserve, c)
		default:
			words = true
			t.words.WriteByte(c)
		}
	}
	if words {
		t.show(e)
	}
}

func (t *ttmlReader) blank(preserve bool, c byte) {
	if preserve {
		t.words.WriteByte(c)
		return
	}
	if s := t.words.String(); s != "" && s[len(s)-1] != ' ' && s[len(s)-1] != '\n' {
		t.words.WriteByte(' ')
	}
}

func (t *ttmlReader) lineBreak() {
	if t.inside > 0 {
		t.words.WriteByte('\n')
	}
}

// show widens the cue's time to that of words in it.
func (t *ttmlReader) show(e *ttmlElement) {
	if !e.sequence {
		e.reached = forever
	}
	c := &t.cue
	if !t.shown {
		c.Start, c.End, t.shown = e.begin, e.end, true
		c.Speaker = e.agent
		return
	}
	if c.Start != e.begin || c.End != e.end {
		t.stepped = true
	}
	if c.Speaker != e.agent {
		c.Speaker = ""
	}
	c.Start = min(c.Start, e.begin)
	if c.End != forever && (e.end == forever || e.end > c.End) {
		c.End = e.end
	}
}

// end closes an element.
func (t *ttmlReader) end() {
	if len(t.open) == 0 {
		return
	}
	e := *t.top()
	t.open = t.open[:len(t.open)-1]
	if timed := e.name == "div" || e.name == "p" || e.name == "span"; timed && !e.skip && len(t.open) > 0 {
		t.top().left(&e)
	}
	if t.inside > 0 && len(t.open) == t.inside {
		t.inside = 0
		t.endCue(e)
	}
}

func (t *ttmlReader) endCue(p ttmlElement) {
	if !t.shown {
		t.cue.Start, t.cue.End = p.begin, p.end
	}
	if t.bad {
		t.bad = false
		return // reported
	}
	t.cue.Text = t.words.String()
	if !p.preserve {
		t.cue.Text = trimLines(t.cue.Text)
	}
	if t.stepped {
		t.doubt(diag.Note, t.cue.At, "the words of this p come up one after another; the cue shows them together", "")
	}
	if t.cue.End == forever {
		t.endless = append(t.endless, len(t.file.Cues))
		t.untimed = append(t.untimed, !p.timed && !t.stepped)
	}
	t.keep(t.cue, "")
}

// trimLines takes the blanks off the ends of lines that collapsing left.
func trimLines(text string) string {
	if !strings.Contains(text, " \n") && !strings.HasSuffix(text, " ") {
		return text
	}
	lines := strings.Split(text, "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return strings.Join(lines, "\n")
}

// finish names the speakers and ends what has no end: with the latest time the
// document knows, or when it has been read.
func (t *ttmlReader) finish() {
	broadcast := Profiles()[0]
	for n, i := range t.endless {
		c := &t.file.Cues[i]
		c.End = t.latest
		if c.End <= c.Start {
			words := len(strings.Fields(c.Text))
			c.End = c.Start + time.Duration(broadcast.comfort(broadcast.reading(Characters(c.Text)), words))*time.Millisecond
		}
		what := "the p has no end"
		if t.untimed[n] {
			what = "the p has no times"
		}
		t.doubt(diag.Warning, c.At, fmt.Sprintf("%s; it is read as shown from %s to %s", what, clockTime(c.Start), clockTime(c.End)), "give it begin and end")
	}
	for i := range t.file.Cues {
		c := &t.file.Cues[i]
		if c.Speaker != "" {
			c.Speaker = t.agents[c.Speaker]
		}
	}
}

// broken reports where the XML stops being XML.
func (t *ttmlReader) broken(at int, err error) {
	what := err.Error()
	var syntax *xml.SyntaxError
	if errors.As(err, &syntax) {
		what = syntax.Msg
	}
	t.unread(diag.Span{Start: at, End: at}, "the XML can't be read from here: "+diag.Visible(what), "mend it; what stands before has been read")
}
