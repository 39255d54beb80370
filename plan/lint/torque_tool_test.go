package lint_test

import (
	"fmt"
	"strings"
	"testing"

	"fixslate/plan/lint"
)

// A torque that would bend the key is told where no thread is known; JIS B 4648
// has 52 N·m for a 6 mm key, ISO 1711-1 107 N·m for a 13 mm spanner.
func TestTorqueOfTheTool(t *testing.T) {
	for _, c := range []struct {
		drive, head, torque, kind string
		want                      bool
	}{
		{"6 mm hex key", "", "60 N·m", "own-measurement", true},
		{"6 mm", "socket", "60 N·m", "own-measurement", true},
		{"6 mm hex key", "", "50 N·m", "own-measurement", false},
		{"6 mm hex key", "", "60 N·m", "maker", false},
		{"13 mm", "", "90 lb·ft", "own-measurement", true},
		{"13 mm", "", "60 N·m", "own-measurement", false},
		{"T25", "", "60 N·m", "own-measurement", false}, // no table says what it bears
		{"13 mm or T25", "", "300 N·m", "own-measurement", false},
		{"6 mm hex key", "", "hand tight", "own-measurement", false},
	} {
		text := fmt.Sprintf(`source = [{ id = "s", title = "Notes", kind = %q, date = 2025-05-01 }]
fastener = [{ id = "pivot", what = "pivot bolt", drive = %q, head = %q, torque = %q, source = "s" }]
[video]
title = "T"
[[step]]
title = "Tighten"
fasteners = ["pivot"]
`, c.kind, c.drive, c.head, c.torque)
		got := false
		for _, f := range lint.Run(pass(t, whole(strings.ReplaceAll(text, "head = \"\", ", "")))) {
			got = got || f.Rule == "torque-implausible"
		}
		if got != c.want {
			t.Errorf("%s at %s, by %s: %v, want %v", c.drive, c.torque, c.kind, got, c.want)
		}
	}
}
