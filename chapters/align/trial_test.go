package align

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fixslate/chapters/captions"
	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/timing"
)

// truth is what was really said in a case.
type truth struct {
	starts  map[string]float64 // of the steps said, by id
	dropped []string
	added   [][2]float64
	spans   []span

	retakes  []retake
	misheard []misheard
}

// span is a stretch of talk of one step, or of none (-1).
type span struct {
	step       int
	start, end float64
}

// retake is a second take left in.
type retake struct {
	id    string
	start float64
}

// misheard is a word that the captions have otherwise than it was said.
type misheard struct {
	meant, heard string
	start        float64
}

// trial is a case: a plan, captions, and the truth about them.
type trial struct {
	name  string
	plan  *plan.Plan
	timed timing.Timeline
	cues  []captions.Cue
	truth truth
}

// decodePlan reads a plan that has no faults.
func decodePlan(t testing.TB, src string) (*plan.Plan, timing.Timeline) {
	t.Helper()
	source, faults := diag.NewSource("plan.toml", []byte(src))
	p, _, more := plan.Decode(source, os.DirFS("."))
	for _, f := range append(faults, more...) {
		if f.Severity == diag.Error {
			t.Fatalf("plan: %v\n%s", f.Message, src)
		}
	}
	return p, timing.Estimate(p, timing.DefaultPace())
}

// kept reads the cases of one plan that belong to the shared data.
func kept(t testing.TB, prefix string) []trial {
	t.Helper()
	root := os.Getenv("FIXSLATE_DATA")
	if root == "" {
		t.Skip("figures on the kept edits not measured: FIXSLATE_DATA is not set")
	}
	return readTrials(t, filepath.Join(root, "align", prefix+"*"))
}

// readTrials reads the cases in the folders of a pattern.
func readTrials(t testing.TB, pattern string) []trial {
	t.Helper()
	dirs, err := filepath.Glob(pattern)
	if err != nil || len(dirs) == 0 {
		t.Fatalf("no cases in %s", pattern)
	}
	slices.Sort(dirs)
	var all []trial
	for _, dir := range dirs {
		var steps struct {
			Title string
			Steps []struct{ ID, Title, Narration string }
		}
		var said struct {
			Steps []struct {
				ID     string
				Start  *float64 `json:"start_s"`
				Retake *float64 `json:"retake_s"`
			}
			Dropped []string
			Added   []struct {
				Start float64 `json:"start_s"`
				End   float64 `json:"end_s"`
			}
		}
		readJSON(t, filepath.Join(dir, "steps.json"), &steps)
		readJSON(t, filepath.Join(dir, "truth.json"), &said)
		var src strings.Builder
		fmt.Fprintf(&src, "[video]\ntitle = %q\n", steps.Title)
		for _, s := range steps.Steps {
			fmt.Fprintf(&src, "[[step]]\nid = %q\ntitle = %q\nsay = %q\n", s.ID, s.Title, s.Narration)
		}
		p, timed := decodePlan(t, src.String())
		files, err := filepath.Glob(filepath.Join(dir, "*.srt"))
		if err != nil || len(files) != 1 {
			t.Fatalf("%s: %d caption files", dir, len(files))
		}
		raw, err := os.ReadFile(files[0])
		if err != nil {
			t.Fatal(err)
		}
		file, _ := captions.Read(raw, files[0])
		c := trial{filepath.Base(dir), p, timed, file.Cues, truth{starts: map[string]float64{}, dropped: said.Dropped}}
		for _, s := range said.Steps {
			if s.Start != nil {
				c.truth.starts[s.ID] = *s.Start
			}
			if s.Retake != nil {
				c.truth.retakes = append(c.truth.retakes, retake{s.ID, *s.Retake})
			}
		}
		for _, a := range said.Added {
			c.truth.added = append(c.truth.added, [2]float64{a.Start, a.End})
		}
		all = append(all, c)
	}
	return all
}

func readJSON(t testing.TB, name string, to any) {
	t.Helper()
	raw, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(raw, to); err != nil {
		t.Fatal(err)
	}
}
