package lint_test

import (
	"fmt"
	"testing"

	"fixslate/plan/lint"
)

// What a step for all versions says of a value that only some have: raised where
// it is given bare, quiet where the line names the version.
func TestValuesOfVersions(t *testing.T) {
	const early, both = `
spec = [{ id = "winding", what = "winding", value = "14 Ω", source = "x", variants = ["early"] }]
wire = [{ id = "feed", colour = "red", from = "relay", source = "x", variants = ["early"] }]
`, `
spec = [
  { id = "winding", what = "winding", value = "14 Ω", source = "x", variants = ["early"] },
  { id = "winding", what = "winding", value = "90 Ω", source = "x", variants = ["late"] },
]
wire = [
  { id = "feed", colour = "red", from = "relay", source = "x", variants = ["early"] },
  { id = "feed", colour = "grey", from = "relay", source = "x", variants = ["late"] },
]
`
	for _, c := range []struct{ facts, say, want string }{
		{both, "Across the winding you want 14 ohms.", "variant-gap"},
		{early, "Across the winding you want 14 ohms.", "variant-gap"},
		{both, "Early machines have 14 ohms across the winding.", "number-loose"},
		{both, "Clip onto the red wire.", "variant-gap"},
		{both, "Put the red probe on the pin.", ""},
		{both, "Early machines have a red wire.", ""},
	} {
		text := "variant = [{ id = \"early\", name = \"early machines\" }, { id = \"late\", name = \"late machines\", tell = \"a grey lever\" }]\n" + c.facts +
			fmt.Sprintf("[video]\ntitle = \"T\"\n[[step]]\ntitle = \"Look\"\ndo = \"look\"\nwires = [\"feed\"]\nsay = %q\n", c.say)
		got := ""
		for _, f := range lint.Run(pass(t, whole(text))) {
			if f.Rule == "variant-gap" || f.Rule == "number-loose" {
				got += f.Rule
			}
		}
		if got != c.want {
			t.Errorf("%q with %d facts raises %q, want %q", c.say, len(c.facts), got, c.want)
		}
	}
}
