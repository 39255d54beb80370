package lint_test

import (
	"fmt"
	"testing"

	"fixslate/plan/lint"
)

// A bare size is a spanner's, but where the plan has a hex key of that size and
// no spanner.
func TestBareSizes(t *testing.T) {
	for _, c := range []struct {
		drive, tool string
		loud        bool
	}{
		{"2 mm", "2 mm hex key", false},
		{"2 mm hex key", "2 mm hex key", false},
		{"5 mm", "5 mm hex key", false},
		{"7 mm", "7 mm socket", false},
		{"7 mm", "5 mm hex key", true},
		{"8 mm", "7 mm socket", true},
	} {
		text := fmt.Sprintf("tool = [{ id = \"key\", name = %q }]\nfastener = [{ id = \"screws\", what = \"collar screws\", drive = %q }]\n", c.tool, c.drive) +
			whole("[[step]]\ntitle = \"Off\"\ndo = \"undo the screws\"\nsay = \"Undo {screws}.\"\nfasteners = [\"screws\"]\ntools = [\"key\"]\n")
		got := false
		for _, f := range lint.Run(pass(t, text)) {
			got = got || f.Rule == "tool-missing" || f.Rule == "drive-unknown"
		}
		if got != c.loud {
			t.Errorf("%s with a %s: a tool is missed %v, want %v", c.drive, c.tool, got, c.loud)
		}
	}
}

// "6 mm hex" on M8 is the hexagon inside a socket head: nothing outside has that
// size there.
func TestHexInside(t *testing.T) {
	for _, c := range []struct {
		thread, drive, tool string
		loud                bool
	}{
		{"M8", "6 mm hex", "6 mm hex key", false},
		{"M8", "6 mm hex", "6 mm hex bit", false},
		{"M8", "13 mm hex", "13 mm socket", false},
		{"M8", "13 mm hex", "13 mm hex key", true},
		{"M8", "6 mm hex", "6 mm socket", true},
		{"M8", "7 mm hex", "7 mm socket", true},
	} {
		text := fmt.Sprintf("tool = [{ id = \"key\", name = %q }]\nfastener = [{ id = \"screws\", what = \"collar screws\", thread = %q, drive = %q }]\n", c.tool, c.thread, c.drive) +
			whole("[[step]]\ntitle = \"Off\"\ndo = \"undo the screws\"\nsay = \"Undo {screws}.\"\nfasteners = [\"screws\"]\ntools = [\"key\"]\n")
		got := false
		for _, f := range lint.Run(pass(t, text)) {
			got = got || f.Rule == "tool-missing" || f.Rule == "drive-unknown"
		}
		if got != c.loud {
			t.Errorf("%s on %s with a %s: a tool is missed %v, want %v", c.drive, c.thread, c.tool, got, c.loud)
		}
	}
}
