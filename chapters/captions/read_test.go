package captions

import (
	"encoding/binary"
	"fmt"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/google/go-cmp/cmp"

	"fixslate/plan/diag"
)

// unreadIn are the findings that say something was left out.
func unreadIn(found []diag.Finding) (unread []diag.Finding) {
	for _, f := range found {
		if f.Rule == "caption-unread" {
			unread = append(unread, f)
		}
	}
	return unread
}

// places prints findings as "line:column severity rule".
func places(found []diag.Finding) string {
	var b strings.Builder
	for _, f := range found {
		p := f.At.Position()
		fmt.Fprintf(&b, "%d:%d %v %s\n", p.Line, p.Column, f.Severity, f.Rule)
	}
	return b.String()
}

func cueLines(f File) string {
	var b strings.Builder
	for _, c := range f.Cues {
		fmt.Fprintf(&b, "%v %v %q\n", c.Start, c.End, c.Text)
	}
	return b.String()
}

// readCases are files that other people's programs and hands make, and what
// becomes of them.
var readCases = []struct {
	name, file string
	text       string
	cues       string
	found      string
	whole      bool
}{
	{"empty", "a.srt", "", "", "1:1 error caption-unread\n", false},
	{"blank", "a.vtt", "\ufeff \n\n", "", "1:1 error caption-unread\n", false},
	{"no captions", "a.txt", "Dear all,\nsee you at 10:30.\n", "", "1:1 error caption-unread\n", false},
	{"a picture", "a.png", "\x89PNG\r\n\x1a\n\x00\xff\xd8\x81", "", "1:1 error caption-unread\n", false},
	{"seconds without their point", "a.srt", "1\n00:00:01000 --> 00:00:02500\nOne\n", "", "2:1 error caption-unread\n", false},
	{"xml of another kind", "a.xml", "<html><body/></html>", "", "1:1 error caption-unread\n", false},
	{
		"srt", "a.srt", "1\n00:00:01,000 --> 00:00:02,000\nOne\ntwo\n\n2\n00:00:03,000 --> 00:00:04,000\n<i>Three</i> &amp; {\\an8}four\n",
		"1s 2s \"One\\ntwo\"\n3s 4s \"Three & four\"\n", "", true,
	},
	{
		"srt without blank lines", "a.srt", "1\n00:00:01,000 --> 00:00:02,000\nOne\n2\n00:00:03,000 --> 00:00:04,000\n42\n3\n00:00:05,000 --> 00:00:06,000\nthree",
		"1s 2s \"One\"\n3s 4s \"42\"\n5s 6s \"three\"\n", "", true,
	},
	{
		"srt without numbers", "a.srt", "00:00:01,000 --> 00:00:02,000\nOne\n42\n00:00:03,000 --> 00:00:04,000\nTwo",
		"1s 2s \"One\\n42\"\n3s 4s \"Two\"\n", "", true,
	},
	{
		"srt with short times", "a.srt", "1\n0:1.5 --> 00:02\nOne\n\n2\n00 : 00 : 03, 25 --> 00:00:03.7504\nTwo\n\n3\n00:00:04:500 --> 00:00:05,1234567\nThree",
		"1.5s 2s \"One\"\n3.25s 3.75s \"Two\"\n4.5s 5.123s \"Three\"\n", "", true,
	},
	{
		"srt with odd arrows", "a.srt", "1\n00:00:01,000 -> 00:00:02,000\nturn the knob -> right\n\n2\n00:00:03,000 → 00:00:04,000\nTwo",
		"1s 2s \"turn the knob -> right\"\n3s 4s \"Two\"\n", "2:14 warning caption-doubtful\n6:14 warning caption-doubtful\n", true,
	},
	{
		"srt with an arrow in the words", "a.srt", "1\n00:00:01,000 --> 00:00:02,000\nswitch 1 --> 2\n1 --> 2\n\n2\n00:00:03,000 --> 00:00:04,000\nTwo",
		"1s 2s \"switch 1 --> 2\\n1 --> 2\"\n3s 4s \"Two\"\n", "", true,
	},
	{
		"srt with broken timing lines", "a.srt",
		"1\n00:00:01,000 --> \nlost\n\n2\n00:00:03,000 --> 00:00:04,000\nTwo\n\n3\n00:75:00,000 --> 00:76:00,000\nlost\n\n4\n-00:00:01,000 --> 00:00:02,000\nlost\n\n5\n00:00:05,000 00:00:06,000\nlost\n\n6\nlost\n\n7\n9999999999:00:00,000 --> 9999999999:00:01,000\nlost\n",
		"3s 4s \"Two\"\n",
		"2:18 error caption-unread\n10:1 error caption-unread\n14:1 error caption-unread\n18:14 error caption-unread\n21:1 error caption-unread\n25:1 error caption-unread\n", false,
	},
	{
		"srt with blank lines inside", "a.srt", "1\n00:00:01,000 --> 00:00:02,000\nOne\n\nmore\n\n2\n\n00:00:03,000 --> 00:00:04,000\n\nTwo",
		"1s 2s \"One\\nmore\"\n3s 4s \"Two\"\n", "2:1 note caption-doubtful\n", true,
	},
	{
		"srt with words before and beside", "a.srt", "Made by hand\n\n1\n00:00:01,000 --> 00:00:02,000 X1:10 Y2:20\nOne\n\n2\n00:00:03,000 --> 00:00:04,000 Two\nmore",
		"1s 2s \"One\"\n3s 4s \"Two\\nmore\"\n", "1:1 error caption-unread\n8:30 warning caption-doubtful\n", false,
	},
	{"srt named vtt", "a.vtt", "1\n00:00:01,000 --> 00:00:02,000\nOne\n", "1s 2s \"One\"\n", "1:1 note caption-doubtful\n", true},
	{"vtt without its first line", "a.vtt", "00:01.000 --> 00:02.000\nOne\n", "", "1:1 error caption-unread\n", false},
	{"vtt named srt", "a.srt", "WEBVTT\n\n00:01.000 --> 00:02.000\nOne\n", "1s 2s \"One\"\n", "1:1 note caption-doubtful\n", true},
	{
		"vtt with everything", "a.vtt", "WEBVTT\n\nNOTE -- > fine\n\n00:01.000 --> 00:02.000 line:0 bogus:1\n<v Nora>One &lt;1&gt;</v>\n\norphan\n\n00:03.000 --> 00:04.000\nNOTE two\n\n00:05,000 --> 00:06,000\nlost\n\n00:07.000 --> 00:08.000\n5 < 6 V\n",
		"1s 2s \"One <1>\"\n3s 4s \"NOTE two\"\n7s 8s \"5 \"\n",
		"5:32 note caption-doubtful\n8:1 warning caption-doubtful\n13:6 error caption-unread\n17:3 warning caption-doubtful\n", false,
	},
	{"vtt without cues", "a.vtt", "WEBVTT\n", "", "1:1 warning caption-doubtful\n", true},
	{"vtt with many hours", "a.vtt", "WEBVTT\n\n100:00:00.000 --> 100:00:01.000\nfar\n\n9999999999:00:00.000 --> 9999999999:00:01.000\ntoo far\n", "100h0m0s 100h0m1s \"far\"\n", "6:1 error caption-unread\n", false},
	{"zero byte", "a.srt", "1\n00:00:01,000 --> 00:00:02,000\nOne\x00two\n", "1s 2s \"One\ufffdtwo\"\n", "3:4 warning caption-doubtful\n", true},
	{"truncated utf-8", "a.srt", "1\n00:00:01,000 --> 00:00:02,000\nOne\n\n2\n00:00:03,000 --> 00:00:04,000\nna\xc3\xafve caf\xc3", "1s 2s \"One\"\n3s 4s \"naïve caf\ufffd\"\n", "7:10 error caption-unread\n", false},
	{"windows-1252", "a.srt", "1\n00:00:01,000 --> 00:00:02,000\nDon\x92t \x96 caf\xe9 90\xb0\n", "1s 2s \"Don’t – café 90°\"\n", "1:1 note caption-doubtful\n", true},
	{"long line", "a.srt", "1\n00:00:01,000 --> 00:00:02,000\n" + strings.Repeat("x", 70_000) + "\n\n2\n00:00:03,000 --> 00:00:04,000\nTwo", "", "2:1 warning caption-doubtful\n", true},
	{
		// By hand: on line 12 "Dialogue: " ends in column 10, "0," in 12,
		// "0:00:03.00," in 23; "bad" begins in column 24.
		"ssa", "a.ass", "[Script Info]\nTitle: x\n\n[V4+ Styles]\nFormat: Name, Bogus\nStyle: broken\n\n[Events]\nFormat: Layer, Start, End, Style, Name, MarginL, MarginR, MarginV, Effect, Text\nDialogue: 0,0:00:01.50,0:00:02.00,D,Nora,0,0,0,,{\\i1}One{\\i0}, two\\Nthree\nComment: 0,0:00:01.50,0:00:02.00,D,,0,0,0,,no\nDialogue: 0,0:00:03.00,bad,D,,0,0,0,,lost\nDialogue: 0,0:00:04.00,0:00:05.00,D,,0,0,0,,{\\p1}m 0 0 l 1 1\nDialogue: 0,0:00:06.00\n",
		"1.5s 2s \"One, two\\nthree\"\n", "12:24 error caption-unread\n13:10 note caption-doubtful\n14:10 error caption-unread\n", false,
	},
	{
		// By hand: the body begins at 10 s. The first div begins at 11 s and its
		// children follow each other: 2 s, then 50 frames of 25 a second, then 1 s
		// and 5 frames. The second div ends at 15 s and cuts off the hour of "four",
		// which begins 1500 ticks of a thousand a second after 10 s. The last p is
		// seen while one of its spans is, from 1 s to 4 s after 10 s; it opens in
		// column 131 of line 2, as an editor counts.
		"ttml times", "a.ttml",
		`<tt xmlns="http://www.w3.org/ns/ttml" xmlns:ttp="http://www.w3.org/ns/ttml#parameter" ttp:frameRate="25" ttp:tickRate="1000"><body begin="10s"><div begin="1s" timeContainer="seq"><p dur="2s">One<br/> and
		  <span>more</span> </p><p dur="50f">two</p><p end="00:00:01:05">three</p></div><div end="5s"><p begin="1500t" dur="1h">four</p><p><span begin="1s" end="2s">a</span> <span begin="2s" end="4s">b</span></p></div></body></tt>`,
		"11s 13s \"One\\nand more\"\n13s 15s \"two\"\n15s 16.2s \"three\"\n11.5s 15s \"four\"\n11s 14s \"a b\"\n", "2:131 note caption-doubtful\n", true,
	},
	{
		// By hand: the file stops after 26 characters of line 5, so the XML breaks in
		// column 27. The p without times is shown from the start to the latest time
		// the document knows, the 4 s at which the last p would end.
		"ttml with faults", "a.ttml", "<tt xmlns=\"http://www.w3.org/ns/ttml\"><body><div>\n<p>untimed</p>\n<p begin=\"soon\" end=\"2s\">lost</p>\n<p begin=\"1s\" end=\"2s\">good</p>\n<p begin=\"3s\" end=\"4s\">cut",
		"0s 4s \"untimed\"\n1s 2s \"good\"\n", "3:1 error caption-unread\n5:27 error caption-unread\n2:1 warning caption-doubtful\n", false,
	},
	{
		"ttml of ntsc frames", "a.ttml", `<tt xmlns="http://www.w3.org/ns/ttml" xmlns:ttp="http://www.w3.org/ns/ttml#parameter" ttp:timeBase="smpte" ttp:frameRate="30" ttp:frameRateMultiplier="1000 1001" ttp:dropMode="dropNTSC"><body><div><p begin="00:10:00:00" end="01:00:00:00">x</p></div></body></tt>`,
		// 17,982 and 107,892 frames at 30000/1001 (SMPTE ST 12-1 counting; see
		// OpenTimelineIO's tests of drop-frame time code).
		"9m59.9994s 59m59.9964s \"x\"\n", "", true,
	},
}

func TestRead(t *testing.T) {
	for _, c := range readCases {
		t.Run(c.name, func(t *testing.T) {
			f, found := Read([]byte(c.text), c.file)
			if diff := cmp.Diff(c.found, places(found)); diff != "" {
				t.Errorf("findings %v:\n%s", found, diff)
			}
			if c.name != "long line" {
				if diff := cmp.Diff(c.cues, cueLines(f)); diff != "" {
					t.Errorf("cues:\n%s", diff)
				}
			} else if len(f.Cues) != 2 || len(f.Cues[0].Text) != 70_000 {
				t.Errorf("%d cues", len(f.Cues))
			}
			if f.Whole != c.whole || f.Whole != (len(unreadIn(found)) == 0) {
				t.Errorf("whole is %v", f.Whole)
			}
		})
	}
}

// TestReadTwins reads every case with CRLF and with CR, and in the encodings
// that are recognised: always the same cues.
func TestReadTwins(t *testing.T) {
	for _, c := range readCases {
		plain, _ := Read([]byte(c.text), c.file)
		want := cueLines(plain)
		crlf := strings.ReplaceAll(c.text, "\n", "\r\n")
		for name, text := range map[string]string{"CRLF": crlf, "CR": strings.ReplaceAll(c.text, "\n", "\r"), "BOM": "\ufeff" + c.text} {
			f, _ := Read([]byte(text), c.file)
			if diff := cmp.Diff(want, cueLines(f)); diff != "" {
				t.Errorf("%s, %s:\n%s", c.name, name, diff)
			}
		}
		if !strings.Contains(c.text, "\xc3") && c.name != "windows-1252" {
			for name, raw := range map[string][]byte{
				"UTF-16LE": utf16Bytes(c.text, binary.LittleEndian, true), "UTF-16BE": utf16Bytes(c.text, binary.BigEndian, true),
				"UTF-32": utf32Bytes(c.text),
			} {
				f, _ := Read(raw, c.file)
				if diff := cmp.Diff(want, cueLines(f)); diff != "" {
					t.Errorf("%s, %s:\n%s", c.name, name, diff)
				}
			}
			if c.cues != "" && c.name != "zero byte" {
				f, _ := Read(utf16Bytes(c.text, binary.LittleEndian, false), c.file)
				if diff := cmp.Diff(want, cueLines(f)); diff != "" {
					t.Errorf("%s, UTF-16LE without mark:\n%s", c.name, diff)
				}
			}
		}
	}
}

// twins holds a file against itself with other line ends: the same cues, and
// as much of it read.
func twins(t *testing.T, raw []byte, name string) {
	t.Helper()
	lf := strings.ReplaceAll(strings.ReplaceAll(string(raw), "\r\n", "\n"), "\r", "\n")
	want, _ := Read([]byte(lf), name)
	for ends, text := range map[string]string{"as it is": string(raw), "CRLF": strings.ReplaceAll(lf, "\n", "\r\n"), "CR": strings.ReplaceAll(lf, "\n", "\r")} {
		got, _ := Read([]byte(text), name)
		if diff := cmp.Diff(vttCues(want), vttCues(got)); diff != "" || got.Whole != want.Whole {
			t.Errorf("%s, %s: whole %v and %v\n%s", name, ends, want.Whole, got.Whole, diff)
		}
	}
}

func utf16Bytes(text string, order binary.ByteOrder, mark bool) []byte {
	var b []byte
	if mark {
		text = "\ufeff" + text
	}
	for _, u := range utf16.Encode([]rune(text)) {
		b = append(b, 0, 0)
		order.PutUint16(b[len(b)-2:], u)
	}
	return b
}

func utf32Bytes(text string) []byte {
	b := []byte("\xff\xfe\x00\x00")
	for _, r := range text {
		b = binary.LittleEndian.AppendUint32(b, uint32(r))
	}
	return b
}

// TestCRLFAtAnyPlace holds well-formed CRLF files of every length round a
// reader's buffer against their LF twins (a known defect of other readers).
func TestCRLFAtAnyPlace(t *testing.T) {
	for pad := 3900; pad < 4300; pad++ {
		lf := "WEBVTT\n\nNOTE " + strings.Repeat("p", pad) + "\n\n00:01.000 --> 00:02.000\nfirst\nsecond\n\n00:03.000 --> 00:04.000\nthird\n"
		a, _ := Read([]byte(lf), "a.vtt")
		b, _ := Read([]byte(strings.ReplaceAll(lf, "\n", "\r\n")), "a.vtt")
		if len(a.Cues) != 2 || cueLines(a) != cueLines(b) {
			t.Fatalf("padding %d: %q and %q", pad, cueLines(a), cueLines(b))
		}
	}
}

func TestTooLarge(t *testing.T) {
	f, found := Read(make([]byte, MaxBytes+1), "a.srt")
	if f.Whole || len(found) != 1 {
		t.Errorf("whole %v, %v", f.Whole, found)
	}
}
