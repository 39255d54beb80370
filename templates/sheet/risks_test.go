package sheet

import (
	"strings"
	"testing"

	"fixslate/plan/hazard"
)

// What the plan says in a step stands on the sheet also where no word shows a
// hazard: a reviewer judges the author's cautions too. A card that is only
// shown again says nothing.
func TestRisksGiveThePlansOwnCautions(t *testing.T) {
	p := decode(t, `
caution = [{ id = "ghost", hazard = "eye-impact", say = "Chips fly into eyes. Glasses on." }]
[video]
title = "T"
[[step]]
title = "Look at it"
cautions = ["ghost"]
say = "Look at it."
[[step]]
title = "Look again"
cautions = ["ghost"]
say = "Look again."
`)
	h := HazardsOf(p, hazard.Read(p))
	if len(h.Steps[0].Rows) > 0 {
		t.Fatalf("the words show a hazard, so this test shows nothing: %+v", h.Steps[0].Rows)
	}
	text := string(Risks(p, hazard.Read(p)))
	if n := strings.Count(text, "- warning: Chips fly into eyes. Glasses on. (`ghost`)\n"); n != 1 {
		t.Errorf("%d times in\n%s", n, text)
	}
}
