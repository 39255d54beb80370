package trade

import (
	"slices"
	"strings"
	"testing"
)

// Common practice, no source: four facts of fault tracing that a plan's reviewer
// looks up, each under the words by which it is asked for.
func TestPractice(t *testing.T) {
	for _, c := range []struct {
		key     string
		columns []int
		want    []string
	}{
		{"blade fuse", []int{0, 1}, []string{"blade fuse test both legs, key off", "blade fuse test both legs again, key on"}},
		{"legs key on", []int{1}, []string{"test both legs again, key on"}},
		{"earth poor jamb", []int{0}, []string{"earth point"}},
		{"bench", []int{0, 1}, []string{"bench lead fit a fuse of the lead's own, near the source"}},
		{"pair", []int{0}, []string{"pair"}},
	} {
		if got := find(t, "practice", c.key, c.columns...); !slices.Equal(got, c.want) {
			t.Errorf("look practice %q: %q; want %q", c.key, got, c.want)
		}
	}
	for key, want := range map[string]string{"jamb": "poor", "jump-start stud": "good"} {
		got := find(t, "practice", key, 1)
		if len(got) != 1 || !strings.HasPrefix(got[0], want+":") {
			t.Errorf("look practice %q: %q; want one that is %s", key, got, want)
		}
	}
	tb, _ := TableNamed("practice")
	for _, r := range tb.Rows {
		if r.Source != common {
			t.Errorf("%q names the source %q", r.Cells[0], r.Source)
		}
	}
}
