package lint_test

import (
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fixslate/plan/diag"
	"fixslate/plan/lint"
	"fixslate/samples"
)

// fromHazards is how many findings the reader of hazards may still raise over
// the clean plans, fromLater how many over those that came later: what was
// counted when they came, to be lowered and never raised.
const (
	fromHazards = 24
	fromLater   = 18
)

// laterPlans were written to measure silence: twelve trades, each run once before
// anything was mended by it.
var laterPlans = []string{
	"film-camera.toml", "gutter.toml", "headlight-bulb.toml", "outboard-impeller.toml", "piano-pedal.toml", "robot-vacuum.toml",
	"stove-rope.toml", "toilet-fill-valve.toml", "turntable-belt.toml", "typewriter.toml", "wall-clock.toml", "wheelchair-castor.toml",
}

// Honest plans of other trades, and the samples, raise no error and no warning.
// Those that rest on what the hazard reader takes for a danger are counted.
func TestCleanPlans(t *testing.T) {
	files, err := filepath.Glob("testdata/clean/*.toml")
	if err != nil || len(files) < 20 {
		t.Fatalf("%d clean plans, %v", len(files), err)
	}
	groups := map[string]lint.Group{}
	for _, r := range lint.Rules() {
		groups[r.Name] = r.Group
	}
	dangers, later := 0, 0
	plans := map[string][]byte{}
	for _, name := range samples.Names() {
		plans[name], _ = samples.Plan(name)
	}
	for _, file := range files {
		if plans[file], err = os.ReadFile(file); err != nil {
			t.Fatal(err)
		}
	}
	for _, file := range slices.Sorted(maps.Keys(plans)) {
		for _, f := range lint.Run(pass(t, string(plans[file]))) {
			switch {
			case f.Severity < diag.Warning || f.Waived != "":
			case groups[f.Rule] == lint.Safety && len(f.Families) > 0:
				if slices.Contains(laterPlans, filepath.Base(file)) {
					later++
				} else {
					dangers++
				}
				t.Logf("%s: %s: %s", filepath.Base(file), f.Rule, f.Message)
			default:
				t.Errorf("%s: %s", filepath.Base(file), strings.TrimSpace(print([]diag.Finding{f})))
			}
		}
	}
	if dangers > fromHazards || later > fromLater {
		t.Errorf("%d and %d findings from the hazard reader, at most %d and %d", dangers, later, fromHazards, fromLater)
	}
}
