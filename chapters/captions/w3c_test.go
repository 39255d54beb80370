package captions

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fixslate/plan/diag/outside"
)

// TestW3CFileParsing runs the file-parsing part of the W3C's WebVTT tests
// (web-platform-tests, webvtt/parsing/file-parsing): every assertion of every
// file.
func TestW3CFileParsing(t *testing.T) {
	folder := outside.Data(t, "captions", "w3c-file-parsing")
	scripts, err := filepath.Glob(filepath.Join(folder, "*.js"))
	if err != nil || len(scripts) < 37 {
		t.Fatalf("%d scripts, %v", len(scripts), err)
	}
	total := 0
	for _, path := range scripts {
		name := strings.TrimSuffix(filepath.Base(path), ".js")
		t.Run(name, func(t *testing.T) {
			source, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			raw, err := os.ReadFile(filepath.Join(folder, name+".vtt"))
			if err != nil {
				t.Fatal(err)
			}
			f, found := Read(raw, name+".vtt")
			s := newScript(t, string(source), map[string]any{"cues": domCues(f)})
			s.run()
			if s.checked == 0 && name != "stylesheets" {
				t.Error("no assertion ran")
			}
			total += s.checked
			twins(t, raw, name+".vtt")
			// Every arrow is accounted for: in a cue, or in a finding.
			if f.Whole != (len(unreadIn(found)) == 0) {
				t.Errorf("whole is %v with %d findings", f.Whole, len(unreadIn(found)))
			}
		})
	}
	t.Logf("%d assertions", total)
}

// domCues are a file's cues as a browser's script sees them.
func domCues(f File) []any {
	var regions []vttRegion
	for _, b := range f.Blocks {
		if rest, ok := strings.CutPrefix(b.Text, "REGION"); ok {
			regions = append(regions, parseVTTRegion(rest))
		}
	}
	auto := func(n float64) any {
		if math.IsNaN(n) {
			return "auto"
		}
		return n
	}
	list := []any{}
	for _, c := range f.Cues {
		s, _ := parseVTTSettings(c.Settings, regions)
		o := object{
			"id": c.ID, "text": c.Text, "startTime": c.Start.Seconds(), "endTime": c.End.Seconds(),
			"vertical": s.vertical, "line": auto(s.line), "snapToLines": s.snapToLines, "lineAlign": s.lineAlign,
			"position": auto(s.position), "positionAlign": s.positionAlign, "size": s.size, "align": s.align, "region": nil,
		}
		if s.region != nil {
			o["region"] = s.region
		}
		list = append(list, o)
	}
	return list
}
