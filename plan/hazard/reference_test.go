package hazard

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fixslate/plan/given"
)

// Each class of the reference table has a line that must show it and one, of
// look-alikes, that must not.
func TestReferenceLines(t *testing.T) {
	dir := os.Getenv("FIXSLATE_DATA")
	if dir == "" {
		t.Skip("the reference lines are not read: FIXSLATE_DATA is not set")
	}
	raw, err := os.ReadFile(filepath.Join(dir, "..", "reference", "hazards.tsv"))
	if err != nil {
		t.Skip("there is no reference table beside the data")
	}
	shown, quiet, all := 0, 0, 0
	for _, line := range strings.Split(strings.TrimSpace(string(raw)), "\n")[1:] {
		f := strings.Split(line, "\t")
		id, fires, still := f[0], f[13], f[14]
		all++
		if slices.Contains(classes(t, fires), id) {
			shown++
		} else {
			t.Logf("%s: not shown by %q", id, fires)
		}
		if slices.Contains(classes(t, still), id) {
			t.Logf("%s: shown by %q", id, still)
		} else {
			quiet++
		}
	}
	t.Logf("%d of %d lines shown, %d of their look-alikes quiet", shown, all, quiet)
	if shown < 78 || quiet < 79 {
		t.Errorf("%d of %d lines shown, %d of their look-alikes quiet; at least 78 and 79 are due", shown, all, quiet)
	}
}

func classes(t *testing.T, step string) []string {
	var ids []string
	for _, h := range Read(given.Plan(t, row{Step: step}.toml())).Steps[0].Hazards {
		ids = append(ids, h.Class)
	}
	return ids
}
