package hazard_test

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"fixslate/plan/hazard"
)

func TestDiag(t *testing.T) {
	dir := os.Getenv("FIXSLATE_DATA")
	for _, s := range samples(dir) {
		n, mention, weakOnly, none := 0, 0, 0, 0
		byclass := map[string]int{}
		for _, r := range rows(t, s.path, s.part) {
			st := hazard.Read(decode(t, r.toml())).Steps[0]
			for _, f := range r.Hazards {
				if slices.ContainsFunc(st.Hazards, func(h hazard.Hazard) bool { return h.Family == f }) {
					continue
				}
				n++
				if slices.ContainsFunc(st.Mentions, func(h hazard.Hazard) bool { return h.Family == f }) {
					mention++
					byclass[f]++
				} else if len(st.Hazards) == 0 {
					none++
				}
			}
		}
		_ = filepath.Join
		t.Logf("%s: missed %d, of them mentions %d, nothing shown at all %d weak %d %v", s.name, n, mention, none, weakOnly, byclass)
	}
	for _, s := range samples(dir) {
		noact, nothing, nosub, rowsN, unk, tok := hazard.DiagStats(s.path, func(yield func(string, string)) {
			for _, r := range rows(t, s.path, s.part) {
				if len(r.Hazards) > 0 {
					yield(r.Context, r.Step)
				}
			}
		})
		t.Logf("%s: rows %d no busy act %d, no thing in do %d, no thing in subject %d, unknown words %d of %d", s.name, rowsN, noact, nothing, nosub, unk, tok)
	}
}
