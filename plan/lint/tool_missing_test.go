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
