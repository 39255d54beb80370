package captions

import (
	"encoding/binary"
	"strings"
	"testing"
)

// seeds adds the cases of one format.
func seeds(f *testing.F, format Format) {
	for _, c := range readCases {
		if sniff(c.text, c.file) == format {
			f.Add([]byte(c.text))
		}
	}
	if out, err := Write(nastyFile(), format); err == nil {
		f.Add(out)
	}
}

func FuzzSRT(f *testing.F) {
	seeds(f, SRT)
	f.Add([]byte("1:0-->"))
	f.Fuzz(func(t *testing.T, raw []byte) { checkReading(t, raw, "x.srt") })
}

func FuzzWebVTT(f *testing.F) {
	seeds(f, WebVTT)
	f.Add([]byte("WEBVTT\n0:7-->"))
	f.Fuzz(func(t *testing.T, raw []byte) { checkReading(t, raw, "x.vtt") })
}

func FuzzTTML(f *testing.F) {
	seeds(f, TTML)
	f.Fuzz(func(t *testing.T, raw []byte) { checkReading(t, raw, "x.ttml") })
}

func FuzzSSA(f *testing.F) {
	seeds(f, SSA)
	f.Fuzz(func(t *testing.T, raw []byte) { checkReading(t, raw, "x.ass") })
}

func FuzzSTL(f *testing.F) {
	f.Add(stlFile('1', "\x0d\x0b\x0bCaf\xc2e\x8a\x8atwo\x0a\x0a"))
	f.Add(stlFile('0', "plain\x80italic\x81 text"))
	f.Fuzz(func(t *testing.T, raw []byte) { checkReading(t, raw, "x.stl") })
}

// FuzzText writes any words as a cue of every format, and reads them back.
func FuzzText(f *testing.F) {
	for _, text := range nastyTexts {
		f.Add(text, "Nora")
	}
	f.Fuzz(func(t *testing.T, text, speaker string) {
		file := File{Cues: []Cue{{Start: 0, End: 1e9, Text: text, Speaker: speaker}, {Start: 2e9, End: 3e9, Text: "next"}}}
		for _, format := range []Format{SRT, WebVTT, TTML} {
			raw, err := Write(file, format)
			if err != nil {
				t.Fatal(err)
			}
			got, found := Read(raw, "x."+format.String())
			if len(got.Cues) != 2 || got.Cues[1].Text != "next" {
				t.Fatalf("%s: %v, %q\n%q", format, found, cueLines(got), raw)
			}
			if want := wantText(text, format); got.Cues[0].Text != want {
				t.Fatalf("%s: %q read as %q", format, want, got.Cues[0].Text)
			}
		}
	})
}

// FuzzSegment cuts any words at any times: lines hold, words stay, and no two
// cues are shown at once.
func FuzzSegment(f *testing.F) {
	f.Add("Turn it to 12 V. Then\nwait!", []byte{0, 0, 0, 1}, uint8(0))
	f.Add("word", []byte{}, uint8(3))
	f.Fuzz(func(t *testing.T, text string, times []byte, profile uint8) {
		var units []Unit
		for i := 0; i+4 <= len(times) && i < 40; i += 4 {
			start := float64(int16(binary.LittleEndian.Uint16(times[i:]))) / 50
			units = append(units, Unit{Text: text, Start: start, End: start + float64(int8(times[i+2]))/10, Kind: UnitKind(times[i+3] % 3)})
		}
		p := Profiles()[profile%4]
		cues := Segment(units, p)
		for i, c := range cues {
			lines := 0
			for line := range strings.SplitSeq(c.Text, "\n") {
				lines++
				if Characters(line) > p.Width {
					t.Fatalf("line of %d: %q", Characters(line), line)
				}
			}
			if lines > p.Lines || c.Duration() <= 0 || i > 0 && c.Start < cues[i-1].End {
				t.Fatalf("%+v after %+v", c, cues[max(i-1, 0)])
			}
		}
	})
}
