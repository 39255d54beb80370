package captions

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
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
		"ssa", "a.ass", "[Script Info]\nTitle: x\n\n[V4+ Styles]\nFormat: Name, Bogus\nStyle: broken\n\n[Events]\nFormat: Layer, Start, End, Style, Name, MarginL, MarginR, MarginV, Effect, Text\nDialogue: 0,0:00:01.50,0:00:02.00,D,Nora,0,0,0,,{\\i1}One{\\i0}, two\\Nthree\nComment: 0,0:00:01.50,0:00:02.00,D,,0,0,0,,no\nDialogue: 0,0:00:03.00,bad,D,,0,0,0,,lost\nDialogue: 0,0:00:04.00,0:00:05.00,D,,0,0,0,,{\\p1}m 0 0 l 1 1\nDialogue: 0,0:00:06.00\n",
		"1.5s 2s \"One, two\\nthree\"\n", "12:24 error caption-unread\n13:10 note caption-doubtful\n14:10 error caption-unread\n", false,
	},
	{
		"ttml times", "a.ttml",
		`<tt xmlns="http://www.w3.org/ns/ttml" xmlns:ttp="http://www.w3.org/ns/ttml#parameter" ttp:frameRate="25" ttp:tickRate="1000"><body begin="10s"><div begin="1s" timeContainer="seq"><p dur="2s">One<br/> and
		  <span>more</span> </p><p dur="50f">two</p><p end="00:00:01:05">three</p></div><div end="5s"><p begin="1500t" dur="1h">four</p><p><span begin="1s" end="2s">a</span> <span begin="2s" end="4s">b</span></p></div></body></tt>`,
		"11s 13s \"One\\nand more\"\n13s 15s \"two\"\n15s 16.2s \"three\"\n11.5s 15s \"four\"\n11s 14s \"a b\"\n", "2:131 note caption-doubtful\n", true,
	},
	{
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

// TestCrashers reads the files that crash or silently lose text in the
// library: each is read whole, or refused with a place.
func TestCrashers(t *testing.T) {
	folder := testData(t, "captions", "crashers")
	paths, _ := filepath.Glob(filepath.Join(folder, "*"))
	want := map[string]int{ // cues; -1: must be refused
		"srt_missing_end.srt": -1, "srt_fuzz_115.srt": -1, "vtt_missing_end.vtt": -1, "vtt_fuzz_247.vtt": -1,
		"silent_loss_crlf_4108.vtt": 1, "silent_loss_line_over_64k.srt": 2,
		"ttml_p_with_dur.ttml": 1, "ttml_p_without_times.ttml": 1,
		"stl_divzero_616.stl": -1, "stl_divzero_819.stl": -1, "stl_slice_588.stl": -1,
		"stl_slice_609_length_6.stl": 6, "stl_slice_609_length_7.stl": 6,
	}
	seen := 0
	for _, path := range paths {
		name := filepath.Base(path)
		cues, ok := want[name]
		if !ok {
			continue
		}
		seen++
		raw, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		f, found := Read(raw, name)
		if cues < 0 && (f.Whole || len(unreadIn(found)) == 0 || unreadIn(found)[0].At.Position().Line < 1) {
			t.Errorf("%s is not refused: %v", name, found)
		}
		if cues >= 0 && (!f.Whole || len(f.Cues) != cues) {
			t.Errorf("%s: %d cues, whole %v: %v", name, len(f.Cues), f.Whole, found)
		}
	}
	if seen != len(want) {
		t.Errorf("%d of %d files are there", seen, len(want))
	}
}

func TestTooLarge(t *testing.T) {
	f, found := Read(make([]byte, MaxBytes+1), "a.srt")
	if f.Whole || len(found) != 1 {
		t.Errorf("whole %v, %v", f.Whole, found)
	}
}

// stlFile makes an EBU STL file by Tech 3264: one subtitle for each text, a
// second apart, at 25 frames a second from 10:00:00:00.
func stlFile(display byte, texts ...string) []byte {
	h := bytes.Repeat([]byte{' '}, 1024)
	copy(h, "850STL25.01")
	h[11] = display
	copy(h[12:], "0009")
	copy(h[224:], "260101260101")
	copy(h[256:], "10000000")
	for i, text := range texts {
		chunks := []string{text}
		if len(text) > 112 {
			chunks = []string{text[:112], text[112:]}
		}
		for n, chunk := range chunks {
			b := bytes.Repeat([]byte{0x8f}, 128)
			b[0] = 0
			binary.LittleEndian.PutUint16(b[1:], uint16(i))
			b[3] = byte(n)
			if n == len(chunks)-1 {
				b[3] = 0xff
			}
			b[4], b[13], b[14], b[15] = 0, 20, 2, 0
			copy(b[5:], []byte{10, 0, byte(i), 5, 10, 0, byte(i), 20})
			copy(b[16:], chunk)
			h = append(h, b...)
		}
	}
	return h
}

// TestReadSTL reads files made by EBU Tech 3264: text in boxes and without,
// letters with accents (table 00: the accent comes first), a subtitle of two
// blocks, a comment, a maker's block.
func TestReadSTL(t *testing.T) {
	long := strings.Repeat("word ", 22) + "spl" + "it and done"
	raw := stlFile('1', "\x0d\x0b\x0bCaf\xc2e\x8a\x8atwo\x0a\x0a", "plain\x80italic\x81 text", long)
	comment := bytes.Clone(raw[1024:1152])
	comment[15] = 1
	user := bytes.Clone(raw[1024:1152])
	user[3] = 0xfe
	raw = append(raw, append(comment, user...)...)
	f, found := Read(raw, "a.stl")
	want := "200ms 800ms \"Café\\ntwo\"\n1.2s 1.8s \"plainitalic text\"\n2.2s 2.8s \"" + long + "\"\n"
	if diff := cmp.Diff(want, cueLines(f)); diff != "" || !f.Whole {
		t.Errorf("whole %v, %v\n%s", f.Whole, found, diff)
	}
	bad := bytes.Clone(raw)
	bad[1024+8] = 25 // frames run to 24
	if f, found := Read(bad, "a.stl"); f.Whole || len(f.Cues) != 2 {
		t.Errorf("frame 25: %d cues, %v", len(f.Cues), found)
	}
	if f, found := Read(raw[:len(raw)-300], "a.stl"); f.Whole {
		t.Errorf("truncated: %d cues, %v", len(f.Cues), found)
	}
	for _, code := range []string{"STL25.0x", "STL99.01"} {
		bad := bytes.Clone(raw)
		copy(bad[3:], code)
		if f, _ := Read(bad, "a.stl"); f.Whole {
			t.Errorf("format code %s is taken", code)
		}
	}
}

// TestDamage cuts and changes bytes of good files of every format: no panic,
// and a file that says it is whole has a cue for every timing line.
func TestDamage(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for _, c := range append(readCases, readCases...) {
		for range 100 {
			raw := []byte(c.text)
			for range 1 + r.IntN(4) {
				if len(raw) == 0 {
					break
				}
				i := r.IntN(len(raw))
				switch r.IntN(3) {
				case 0:
					raw = append(raw[:i], raw[i+1:]...)
				case 1:
					raw[i] = byte(r.IntN(256))
				case 2:
					raw = raw[:i]
				}
			}
			checkReading(t, raw, c.file)
		}
	}
}

// checkReading holds what must be so for any bytes at all.
func checkReading(t *testing.T, raw []byte, name string) {
	t.Helper()
	f, found := Read(raw, name)
	if f.Whole != (len(unreadIn(found)) == 0) {
		t.Fatalf("whole is %v: %v", f.Whole, found)
	}
	for _, one := range append(found, Check(f, Profiles()[0])...) {
		if s := one.At.Span; s.Start < 0 || s.Start > len(f.Source.Text) || s.End < s.Start {
			t.Fatalf("span %v outside %d bytes", s, len(f.Source.Text))
		}
	}
	if f.Format == SRT || f.Format == WebVTT {
		arrows := 0
		for _, line := range strings.Split(f.Source.Text, "\n") {
			if _, _, ok := parseVTTTiming(line); ok {
				arrows++
			}
		}
		if f.Whole && len(f.Cues) < arrows {
			t.Fatalf("%d timing lines, %d cues, nothing said: %q", arrows, len(f.Cues), f.Source.Text)
		}
	}
	for _, format := range []Format{SRT, WebVTT, TTML} {
		out, err := Write(f, format)
		if err != nil {
			t.Fatal(err)
		}
		back, found := Read(out, "x."+format.String())
		if len(f.Cues) > 0 && len(back.Cues) != len(f.Cues) || !back.Whole && len(f.Cues) > 0 {
			t.Fatalf("%s: %d cues written, %d read, %v\n%q", format, len(f.Cues), len(back.Cues), found, out)
		}
	}
	var want []string
	for _, c := range sortedCues(f.Cues) {
		want = append(want, strings.Fields(c.Text)...)
	}
	var got []string
	for _, c := range Resegment(f, Profiles()[3]).Cues {
		got = append(got, strings.Fields(c.Text)...)
	}
	if a, b := strings.Join(want, ""), strings.Join(got, ""); a != b {
		t.Fatalf("resegmented words differ:\n%q\n%q", a, b)
	}
}

// sortedCues are cues by start, as Resegment takes them.
func sortedCues(cues []Cue) []Cue {
	var units []Unit
	for i, c := range cues {
		units = append(units, Unit{Start: max(c.Start.Seconds(), 0), Text: fmt.Sprint(i)})
	}
	out := make([]Cue, 0, len(cues))
	for _, u := range sorted(units) {
		var i int
		fmt.Sscan(u.Text, &i)
		out = append(out, cues[i])
	}
	return out
}

func TestCheckClock(t *testing.T) {
	const file = "1\n00:00:01,000 --> 00:00:03,000\nfirst\n\n2\n00:00:02,000 --> 00:00:04,000\noverlaps\n\n3\n00:00:01,500 --> 00:00:01,800\nback in time\n\n" +
		"4\n00:00:05,000 --> 00:00:05,000\nno time\n\n5\n00:00:06,000 --> 00:00:05,500\nbackwards\n\n6\n00:00:07,000 --> 00:00:08,000\n\n7\n100:00:00,000 --> 100:00:02,000\nfar\n"
	f, found := Read([]byte(file), "a.srt")
	if len(found) > 0 || len(f.Cues) != 7 {
		t.Fatalf("%d cues, %v", len(f.Cues), found)
	}
	want := "6:1 warning caption-overlap\n10:1 warning caption-order\n14:1 error caption-unshown\n18:1 error caption-unshown\n22:1 note caption-empty\n25:1 warning caption-far\n"
	if diff := cmp.Diff(want, places(Check(f, Profile{}))); diff != "" {
		t.Error(diff)
	}
}

func TestCheckProfile(t *testing.T) {
	p, _ := ProfileNamed("broadcast")
	f := File{Cues: []Cue{
		{Start: 0, End: 2 * time.Second, Text: "fine"},
		{Start: 3 * time.Second, End: 8 * time.Second, Text: strings.Repeat("é", 37) + "\n" + strings.Repeat("e\u0301", 37)},
		{Start: 9 * time.Second, End: 15 * time.Second, Text: strings.Repeat("w", 38)},
		{Start: 16 * time.Second, End: 18 * time.Second, Text: "one\ntwo\nthree"},
		{Start: 19 * time.Second, End: 19*time.Second + 833*time.Millisecond, Text: "20 frames"},
		{Start: 20 * time.Second, End: 20*time.Second + 800*time.Millisecond, Text: "short"},
		{Start: 21 * time.Second, End: 22 * time.Second, Text: "seventeen chars.."},
		{Start: 23 * time.Second, End: 24 * time.Second, Text: "eighteen characters"},
		{Start: 25 * time.Second, End: 33 * time.Second, Text: "eight seconds"},
		{Start: 34 * time.Second, End: 36 * time.Second, Text: "cut", Cut: true},
	}}
	var got []string
	for _, one := range Check(f, p) {
		got = append(got, one.Path+" "+one.Rule)
	}
	want := []string{"cue[2] caption-wide", "cue[3] caption-tall", "cue[5] caption-short", "cue[7] caption-fast", "cue[8] caption-long", "cue[9] caption-wide"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// TestResegmentReadable takes captions that no profile allows and cuts them
// anew.
func TestResegmentReadable(t *testing.T) {
	var b strings.Builder
	b.WriteString("WEBVTT\n\n")
	r := rand.New(rand.NewPCG(11, 12))
	at := int64(0)
	for i, s := range sentences(r, 300) {
		end := at + int64(len(s))*62
		if i%20 == 0 {
			s = "[water runs]\n" + s
			end += 800
		}
		b.Write(appendStamp(nil, at, '.'))
		b.WriteString(" --> ")
		b.Write(appendStamp(nil, end, '.'))
		b.WriteString("\n" + strings.ReplaceAll(s, "<", "&lt;") + "\n\n")
		at = end + int64(r.IntN(1500))
	}
	f, found := Read([]byte(b.String()), "a.vtt")
	if len(found) > 0 || len(f.Cues) != 300 {
		t.Fatalf("%d cues, %v", len(f.Cues), found)
	}
	for _, p := range Profiles() {
		got := Resegment(f, p)
		var before, after []string
		for _, c := range f.Cues {
			before = append(before, strings.Fields(c.Text)...)
		}
		labels := 0
		for _, c := range got.Cues {
			after = append(after, strings.Fields(c.Text)...)
			labels += strings.Count("\n"+c.Text+"\n", "\n[water runs]\n")
		}
		if diff := cmp.Diff(before, after); diff != "" || labels != 15 {
			t.Errorf("%s: %d labels, words %s", p.Name, labels, diff)
		}
		if found := Check(got, p); len(found) > 0 {
			t.Errorf("%s: %d findings in %d cues, the first: %s", p.Name, len(found), len(got.Cues), found[0].Message)
		}
	}
}
