package sheet

import (
	"strings"
	"testing"
)

// A part of one version says so wherever it is listed: two parts of one name
// can't be told apart otherwise.
func TestBeforeNamesVersions(t *testing.T) {
	p := decode(t, `
variant = [{ id = "early", name = "early ones", short = "early" }, { id = "late", name = "late ones", short = "late" }]
part = [
  { id = "pump", name = "pump", number = "A-1", variants = ["early"] },
  { id = "pump", name = "pump", number = "A-2", variants = ["late"] },
]
[video]
title = "T"
[[step]]
title = "S"
say = "Fit it."
parts = ["pump"]
`)
	text := string(Before(p))
	for _, want := range []string{"pump (early): the one in hand carries the number A-1", "pump (late): the one in hand carries the number A-2", "pump – number A-2 (late)"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
}
