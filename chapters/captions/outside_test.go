package captions

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"fixslate/plan/diag/outside"
)

// outsideFiles are what outside programs get to read.
func outsideFiles() map[string]File {
	var units []Unit
	at := 0.0
	for _, s := range sentences(rand.New(rand.NewPCG(13, 14)), 300) {
		end := at + float64(len(s))/16
		units = append(units, Unit{Text: s, Start: at, End: end})
		at = end + 0.6
	}
	return map[string]File{
		"nasty":     nastyFile(),
		"sentences": {Language: "en", Cues: Segment(units, Profiles()[0])},
		"none":      {},
	}
}

func written(t *testing.T, f File, format Format) string {
	t.Helper()
	raw, err := Write(f, format)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "captions."+format.String())
	if err := os.WriteFile(path, raw, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func output(t *testing.T, program string, args ...string) []byte {
	t.Helper()
	cmd := exec.Command(program, args...)
	var complaint strings.Builder
	cmd.Stderr = &complaint
	out, err := cmd.Output()
	if err != nil || complaint.Len() > 0 {
		t.Fatalf("%s %v: %v\n%s", program, args, err, complaint.String())
	}
	return out
}

// parserScript prints what the npm package webvtt-parser, a validator by the
// authors of the standard, makes of a file.
const parserScript = `
const { WebVTTParser } = require(process.argv[1] + "/webvtt-parser");
const text = require("fs").readFileSync(process.argv[2], "utf8");
const parsed = new WebVTTParser().parse(text, "captions");
const words = node => node.type === "text" ? node.value : (node.children || []).map(words).join("");
console.log(JSON.stringify({
  errors: parsed.errors,
  cues: parsed.cues.map(c => ({ start: c.startTime, end: c.endTime, text: words(c.tree) })),
}));`

// TestWebVTTParserAgrees has webvtt-parser find no fault, the same cues and
// the same words.
func TestWebVTTParserAgrees(t *testing.T) {
	node := outside.Program(t, "node")
	modules := outside.Modules(t, "webvtt-parser")
	for name, f := range outsideFiles() {
		t.Run(name, func(t *testing.T) {
			var got struct {
				Errors []struct {
					Message   string
					Line, Col int
				}
				Cues []struct {
					Start, End float64
					Text       string
				}
			}
			out := output(t, node, "-e", parserScript, modules, written(t, f, WebVTT))
			if err := json.Unmarshal(out, &got); err != nil {
				t.Fatal(err)
			}
			if len(got.Errors) > 0 {
				t.Errorf("%v", got.Errors)
			}
			if len(got.Cues) != len(f.Cues) {
				t.Fatalf("%d cues, want %d", len(got.Cues), len(f.Cues))
			}
			for i, c := range got.Cues {
				start, end := f.Cues[i].milliseconds()
				if !near(c.Start, start) || !near(c.End, end) {
					t.Errorf("cue %d from %v to %v s, want %d to %d ms", i, c.Start, c.End, start, end)
				}
				// That reader takes "&amp" for the reference and leaves its semicolon.
				want := strings.ReplaceAll(wantText(f.Cues[i].Text, WebVTT), ";", "")
				if diff := cmp.Diff(want, strings.ReplaceAll(c.Text, ";", "")); diff != "" {
					t.Errorf("cue %d:\n%s", i, diff)
				}
			}
		})
	}
}

func near(seconds float64, ms int64) bool { return math.Abs(seconds*1000-float64(ms)) < 0.5 }

// TestFFmpegAgrees has ffprobe read SRT and WebVTT: the same cues at the same
// times; and ffmpeg convert them: the same words.
func TestFFmpegAgrees(t *testing.T) {
	ffprobe, ffmpeg := outside.Program(t, "ffprobe"), outside.Program(t, "ffmpeg")
	for name, f := range outsideFiles() {
		if len(f.Cues) == 0 {
			continue // it reads no file without cues
		}
		for _, format := range []Format{SRT, WebVTT} {
			t.Run(name+" "+format.String(), func(t *testing.T) {
				path := written(t, f, format)
				var got struct {
					Packets []struct {
						PTS      string `json:"pts_time"`
						Duration string `json:"duration_time"`
					}
				}
				out := output(t, ffprobe, "-v", "error", "-of", "json", "-show_entries", "packet=pts_time,duration_time", path)
				if err := json.Unmarshal(out, &got); err != nil {
					t.Fatal(err)
				}
				if len(got.Packets) != len(f.Cues) {
					t.Fatalf("%d cues, want %d", len(got.Packets), len(f.Cues))
				}
				for i, p := range got.Packets {
					from, err := strconv.ParseFloat(p.PTS, 64)
					long, err2 := strconv.ParseFloat(p.Duration, 64)
					start, end := f.Cues[i].milliseconds()
					if err != nil || err2 != nil || !near(from, start) || !near(long, end-start) {
						t.Errorf("cue %d at %s for %s s, want %d to %d ms", i, p.PTS, p.Duration, start, end)
					}
				}
				if name != "sentences" {
					return // it reads no character references and drops some signs
				}
				converted := output(t, ffmpeg, "-v", "error", "-i", path, "-f", "srt", "-")
				back, _ := Read(converted, "converted.srt")
				for i, c := range back.Cues {
					if diff := cmp.Diff(f.Cues[i].Text, c.Text); diff != "" {
						t.Errorf("cue %d:\n%s", i, diff)
					}
				}
			})
		}
	}
}

// TestXMLLintAgrees has libxml read the TTML.
func TestXMLLintAgrees(t *testing.T) {
	xmllint := outside.Program(t, "xmllint")
	for name, f := range outsideFiles() {
		path := written(t, f, TTML)
		output(t, xmllint, "--noout", "--nonet", path)
		if len(f.Cues) == 0 {
			continue
		}
		count := output(t, xmllint, "--xpath", "count(//*[local-name()='p'])", path)
		if got := strings.TrimSpace(string(count)); got != strconv.Itoa(len(f.Cues)) {
			t.Errorf("%s: %s p elements, want %d", name, got, len(f.Cues))
		}
	}
}

// manyCues makes a file of about 55 bytes a cue, as films have them.
func manyCues(count int) File {
	f := File{Format: SRT}
	list := []string{
		"Undo the three screws\nand lift it off.", "Now measure across both terminals.",
		"If it reads open,\nthe winding is gone.", "Then set the meter to ohms, and wait.",
	}
	for i := range count {
		at := time.Duration(i) * 2500 * time.Millisecond
		f.Cues = append(f.Cues, Cue{Start: at, End: at + 2400*time.Millisecond, Text: list[i%len(list)]})
	}
	return f
}

// BenchmarkConvert reads, cuts anew and writes. The figure that counts is
// 200,000 cues, 11 MB, in under 5 s; the smaller size shows that time grows in
// proportion.
func BenchmarkConvert(b *testing.B) {
	for _, format := range []Format{SRT, WebVTT, TTML} {
		for _, count := range []int{20_000, 200_000} {
			raw, err := Write(manyCues(count), format)
			if err != nil {
				b.Fatal(err)
			}
			b.Run(format.String()+"/"+strconv.Itoa(count), func(b *testing.B) {
				b.SetBytes(int64(len(raw)))
				b.ReportAllocs()
				for b.Loop() {
					f, _ := Read(raw, "x")
					f = Resegment(f, Profiles()[0])
					out, err := Write(f, format)
					if err != nil || len(out) < len(raw)/4 || !f.Whole {
						b.Fatalf("%d cues, %d bytes, %v", len(f.Cues), len(out), err)
					}
				}
			})
		}
	}
}
