package hazard_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"fixslate/plan/hazard"
)

func TestOwn(t *testing.T) {
	path := os.Getenv("HAZARD_OWN")
	if path == "" {
		t.Skip()
	}
	raw, _ := os.ReadFile(path)
	hit, n := 0, 0
	for _, l := range strings.Split(strings.TrimSpace(string(raw)), "\n") {
		f := strings.Split(l, "\t")
		r := row{Context: f[1], Step: f[2]}
		var got, sh []string
		for _, h := range hazard.Read(decode(t, r.toml())).Steps[0].Hazards {
			if h.Family != "none" && !slices.Contains(got, h.Family) {
				got = append(got, h.Family)
				sh = append(sh, h.Family+"("+h.Shown()+")")
			}
		}
		n++
		if f[0] == "none" {
			if len(got) == 0 {
				hit++
			} else {
				t.Logf("LOUD [%s] %s: %v", f[1], f[2], sh)
			}
		} else if slices.Contains(got, f[0]) {
			hit++
		} else {
			t.Logf("MISS %s: [%s] %s: %v", f[0], f[1], f[2], got)
		}
		if len(got) > 2 {
			t.Logf("MANY %s: [%s] %s: %v", f[0], f[1], f[2], sh)
		}
	}
	t.Logf("own %d/%d", hit, n)
}
