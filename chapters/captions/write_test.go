package captions

import (
	"bytes"
	"encoding/xml"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"github.com/asticode/go-astisub"
	"github.com/google/go-cmp/cmp"
)

// nastyTexts are texts that would be structure of a file, or break it, if they
// were written as they stand.
var nastyTexts = []string{
	"turn it --> that way",
	"-->",
	"1\n00:00:00,000 --> 00:00:01,000\nnot a cue",
	"00:00.000 --> 00:01.000",
	"above\n\n\nbelow",
	"NOTE the torque is 25 N·m",
	"STYLE\nREGION\nWEBVTT",
	"Region: id=1",
	"12",
	"first\n12",
	"R&D and 5 < 6 > 4",
	"&amp;gt; &lt;b&gt; &#39; &nbsp; &copy &bogus;",
	"<script>alert(1)</script> <b>bold</b> </i> <!-- x --> ]]> \"quoted\" 'too'",
	`{\an8}up {\i1`,
	"esc \x1b[31m nul \x00 del \x7f c1 \u009b bom \ufeff",
	"bad \xff\xfe utf-8 \xc3",
	"rtl \u202eoverride\u202c isolate \u2067x\u2069 mark \u200e \u200f",
	"line\u2028separator\u0085next\r\nreturn\rend",
	"\ttabs\tinside",
	"no\u00a0break 3\u202fV",
	"family 👨‍👩‍👧‍👦 flag 🇳🇴 tone 👍🏽",
	"e" + strings.Repeat("\u0301", 1000),
	"שלום עולם مرحبا",
	"ＦＵＬＬ　ＷＩＤＴＨ",
	strings.Repeat("long", 2000),
	"  leading and trailing  ",
	"noncharacter \ufffe\uffff",
}

func nastyFile() File {
	f := File{Language: "en"}
	for i, text := range nastyTexts {
		at := time.Duration(i)*3*time.Second + time.Duration(i)*time.Millisecond
		f.Cues = append(f.Cues, Cue{Start: at, End: at + 2500*time.Millisecond, Text: text})
	}
	f.Cues[3].Speaker = `Nora "the <b>" & co > all`
	f.Cues[4].Speaker = "two dashes --"
	f.Cues = append(f.Cues, Cue{Start: 120 * time.Hour, End: 120*time.Hour + 1500*time.Microsecond, Text: "far away"})
	return f
}

// wantText is the text that a format can hold.
func wantText(text string, format Format) string {
	text = Plain(text)
	if format == SRT {
		text = noArrow(text)
		lines := strings.Split(text, "\n")
		for i := range lines {
			lines[i] = strings.TrimRight(lines[i], " ") // readers of SRT trim
		}
		text = strings.Join(lines, "\n")
	}
	return text
}

// TestWrittenFilesReadBack reads what is written with the package's own
// readers: the same number of cues, the same times and the same text, and
// nothing to find fault with.
func TestWrittenFilesReadBack(t *testing.T) {
	f := nastyFile()
	for _, format := range []Format{SRT, WebVTT, TTML} {
		raw, err := Write(f, format)
		if err != nil {
			t.Fatal(err)
		}
		got, found := Read(raw, "x."+format.String())
		if !got.Whole || got.Format != format {
			t.Errorf("%s: whole %v, format %s: %v", format, got.Whole, got.Format, found)
		}
		if len(got.Cues) != len(f.Cues) {
			t.Fatalf("%s: %d cues, want %d", format, len(got.Cues), len(f.Cues))
		}
		for i, c := range got.Cues {
			start, end := f.Cues[i].milliseconds()
			if c.Start.Milliseconds() != start || c.End.Milliseconds() != end {
				t.Errorf("%s: cue %d from %v to %v, want %d to %d ms", format, i, c.Start, c.End, start, end)
			}
			if want := wantText(f.Cues[i].Text, format); c.Text != want {
				t.Errorf("%s: cue %d: text %q, want %q", format, i, c.Text, want)
			}
			if format != SRT && c.Speaker != f.Cues[i].Speaker {
				t.Errorf("%s: cue %d: speaker %q", format, i, c.Speaker)
			}
		}
		again, err := Write(f, format)
		if err != nil || !bytes.Equal(raw, again) {
			t.Errorf("%s: two writes differ", format)
		}
		back, err := Write(got, format)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(raw), string(back)); diff != "" && format == WebVTT {
			t.Errorf("%s: read and written again:\n%s", format, diff)
		}
	}
}

// TestAnotherReaderAgrees reads what is written with go-astisub.
func TestAnotherReaderAgrees(t *testing.T) {
	f := nastyFile()
	// What that reader can't: more than 64 kB on a line, character references
	// but for three, and a hundred hours.
	skip := map[Format]string{SRT: `{\`, WebVTT: "-->", TTML: "\x00never"}
	for format, read := range map[Format]func([]byte) (*astisub.Subtitles, error){
		SRT:    func(b []byte) (*astisub.Subtitles, error) { return astisub.ReadFromSRT(bytes.NewReader(b)) },
		WebVTT: func(b []byte) (*astisub.Subtitles, error) { return astisub.ReadFromWebVTT(bytes.NewReader(b)) },
		TTML:   func(b []byte) (*astisub.Subtitles, error) { return astisub.ReadFromTTML(bytes.NewReader(b)) },
	} {
		raw, err := Write(f, format)
		if err != nil {
			t.Fatal(err)
		}
		got, err := read(raw)
		if err != nil {
			t.Fatalf("%s: %v", format, err)
		}
		if len(got.Items) != len(f.Cues) {
			t.Fatalf("%s: %d cues, want %d", format, len(got.Items), len(f.Cues))
		}
		for i, item := range got.Items {
			start, end := f.Cues[i].milliseconds()
			if item.StartAt.Milliseconds() != start || item.EndAt.Milliseconds() != end {
				t.Errorf("%s: cue %d from %v to %v", format, i, item.StartAt, item.EndAt)
			}
			if strings.Contains(f.Cues[i].Text, skip[format]) {
				continue
			}
			if got, want := trimmed(astisubText(item)), trimmed(wantText(f.Cues[i].Text, format)); got != want {
				t.Errorf("%s: cue %d: text %q, want %q", format, i, got, want)
			}
		}
	}
}

func astisubText(item *astisub.Item) string {
	var lines []string
	for _, l := range item.Lines {
		if text := lineText(l); strings.TrimSpace(text) != "" {
			lines = append(lines, text)
		}
	}
	return strings.Join(lines, "\n")
}

func trimmed(text string) string {
	lines := strings.Split(text, "\n")
	for i := range lines {
		lines[i] = strings.TrimSpace(lines[i])
	}
	return strings.Join(lines, "\n")
}

// TestRounding holds times to the nearest millisecond, without drift, overlap
// or cues of no length.
func TestRounding(t *testing.T) {
	var f File
	at := time.Duration(0)
	r := rand.New(rand.NewPCG(7, 8))
	for range 2000 {
		long := 1999500*time.Microsecond + time.Duration(r.IntN(3))*333*time.Microsecond + time.Duration(r.IntN(1000))
		f.Cues = append(f.Cues, Cue{Start: at, End: at + long, Text: "x"})
		at += long
	}
	for _, format := range []Format{SRT, WebVTT, TTML} {
		raw, _ := Write(f, format)
		got, _ := Read(raw, "x")
		for i, c := range got.Cues {
			want := f.Cues[i]
			if d := c.Start - want.Start; d > 500*time.Microsecond || d < -500*time.Microsecond {
				t.Fatalf("%s: cue %d starts %v off", format, i, d)
			}
			if c.End <= c.Start || i > 0 && c.Start < got.Cues[i-1].End {
				t.Fatalf("%s: cue %d: %v to %v after %v", format, i, c.Start, c.End, got.Cues[i-1].End)
			}
		}
	}
	odd := File{Cues: []Cue{{Start: -time.Second, End: time.Second, Text: "before"}, {Start: time.Second, End: time.Second + 100*time.Microsecond, Text: "short"}}}
	raw, _ := Write(odd, WebVTT)
	want := "WEBVTT\n\n00:00:00.000 --> 00:00:01.000\nbefore\n\n00:00:01.000 --> 00:00:01.001\nshort\n"
	if diff := cmp.Diff(want, string(raw)); diff != "" {
		t.Error(diff)
	}
}

// TestWebVTTKeeps converts a file to its own format: what only that format
// has stays.
func TestWebVTTKeeps(t *testing.T) {
	const file = "WEBVTT - pump\nKind: captions\n\nNOTE\ntwo lines\nof it\n\nSTYLE\n::cue { color: lime }\n\nREGION\nid:low\nlines:2\n\n" +
		"intro\n00:00:01.000 --> 00:00:02.000 line:0 align:start\n<v Nora>Pull <i>the</i> plug</v>\n\n" +
		"NOTE between\n\n00:00:03.000 --> 00:00:04.000 region:low\nR&amp;D\n\nNOTE at the end\n"
	f, found := Read([]byte(file), "a.vtt")
	if len(found) > 0 {
		t.Errorf("findings: %v", found)
	}
	raw, _ := Write(f, WebVTT)
	if diff := cmp.Diff(file, string(raw)); diff != "" {
		t.Error(diff)
	}
	srt, _ := Write(f, SRT)
	want := "1\n00:00:01,000 --> 00:00:02,000\nPull the plug\n\n2\n00:00:03,000 --> 00:00:04,000\nR&D\n\n"
	if diff := cmp.Diff(want, string(srt)); diff != "" {
		t.Error(diff)
	}
}

// TestTTMLIsXML reads the written TTML as XML and looks at what a player needs.
func TestTTMLIsXML(t *testing.T) {
	f := File{Language: "nb-NO", Cues: []Cue{{Start: time.Second, End: 2 * time.Second, Text: "a\nb", Speaker: "Nora"}}}
	raw, _ := Write(f, TTML)
	var doc struct {
		XMLName xml.Name `xml:"http://www.w3.org/ns/ttml tt"`
		Lang    string   `xml:"http://www.w3.org/XML/1998/namespace lang,attr"`
		Agent   struct {
			ID   string `xml:"http://www.w3.org/XML/1998/namespace id,attr"`
			Name string `xml:"http://www.w3.org/ns/ttml#metadata name"`
		} `xml:"head>metadata>agent"`
		Region struct {
			ID string `xml:"http://www.w3.org/XML/1998/namespace id,attr"`
		} `xml:"head>layout>region"`
		Div struct {
			Region string `xml:"region,attr"`
			P      struct {
				Begin string     `xml:"begin,attr"`
				End   string     `xml:"end,attr"`
				Agent string     `xml:"http://www.w3.org/ns/ttml#metadata agent,attr"`
				BR    []struct{} `xml:"br"`
			} `xml:"p"`
		} `xml:"body>div"`
	}
	if err := xml.Unmarshal(raw, &doc); err != nil {
		t.Fatal(err)
	}
	if doc.Lang != "nb-NO" || doc.Div.P.Begin != "00:00:01.000" || doc.Div.P.End != "00:00:02.000" || len(doc.Div.P.BR) != 1 {
		t.Errorf("%+v", doc)
	}
	if doc.Agent.ID == "" || doc.Agent.ID != doc.Div.P.Agent || doc.Agent.Name != "Nora" || doc.Region.ID != doc.Div.Region {
		t.Errorf("references: %+v", doc)
	}
}

func TestWriteRefuses(t *testing.T) {
	for _, format := range []Format{Unknown, SSA, STL} {
		if raw, err := Write(File{}, format); err == nil {
			t.Errorf("%s: wrote %d bytes", format, len(raw))
		}
		if format.Writable() {
			t.Errorf("%s claims to be written", format)
		}
	}
}
