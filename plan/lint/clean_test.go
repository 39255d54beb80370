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
// all clean plans: what was counted when the test was written, to be lowered
// and never raised.
const fromHazards = 25

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
	dangers := 0
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
				dangers++
				t.Logf("%s: %s: %s", filepath.Base(file), f.Rule, f.Message)
			default:
				t.Errorf("%s: %s", filepath.Base(file), strings.TrimSpace(print([]diag.Finding{f})))
			}
		}
	}
	if dangers > fromHazards {
		t.Errorf("%d findings from the hazard reader, at most %d", dangers, fromHazards)
	}
}
