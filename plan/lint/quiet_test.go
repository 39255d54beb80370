package lint_test

import (
	"fmt"
	"testing"

	"fixslate/plan/lint"
)

// What a careful presenter says, and a rule stays quiet about; and beside it
// the nearest thing that it does not.
func TestQuiet(t *testing.T) {
	for _, c := range []struct{ rule, quiet, loud string }{
		{"claim-untested", "Stand out of the line of the disc, because it can burst.", "These discs burst because the glue dries out."},
		{"claim-untested", "Keep your fingers clear, since the spring can let go.", "The spring lets go because the hook wears through."},
		{"claim-untested", "That gives the belt some slack.", "Slack gives the belt a short life, because it slips."},
		{"claim-untested", "Two grey rollers, and four clicks.", "The chain on it has 66 links."},
	} {
		for text, want := range map[string]bool{c.quiet: false, c.loud: true} {
			got := false
			for _, f := range lint.Run(pass(t, whole(fmt.Sprintf("[[step]]\ntitle = \"Look\"\ndo = \"look\"\nsay = %q\n", text)))) {
				got = got || f.Rule == c.rule
			}
			if got != want {
				t.Errorf("%q raises %s: %v", text, c.rule, got)
			}
		}
	}
}
