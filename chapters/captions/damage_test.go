package captions

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fixslate/plan/diag/outside"
)

// TestCrashers reads the files that crash or silently lose text in the
// library: each is read whole, or refused with a place.
func TestCrashers(t *testing.T) {
	folder := outside.Data(t, "captions", "crashers")
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
		if !strings.HasSuffix(name, ".stl") { // bytes, no lines
			twins(t, raw, name)
		}
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
