package sheet

import (
	"strings"
	"testing"

	"fixslate/plan/diag"
	"fixslate/plan/given"
	"fixslate/plan/hazard"
)

// What the plan says in a step stands on the sheet also where no word shows a
// hazard: a reviewer judges the author's cautions too. A card that is only
// shown again says nothing.
func TestRisksGiveThePlansOwnCautions(t *testing.T) {
	p := given.Plan(t, `
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
	h := HazardsOf(p, hazard.Read(p), nil)
	if len(h.Steps[0].Rows) > 0 {
		t.Fatalf("the words show a hazard, so this test shows nothing: %+v", h.Steps[0].Rows)
	}
	text := string(Risks(p, hazard.Read(p), nil))
	if n := strings.Count(text, "- warning: Chips fly into eyes. Glasses on. (`ghost`)\n"); n != 1 {
		t.Errorf("%d times in\n%s", n, text)
	}
}

// A waiver that sets nothing aside does not read as a decision.
func TestRisksTellIdleWaivers(t *testing.T) {
	p := given.Plan(t, `
[video]
title = "T"
[[waiver]]
rule = "title-long"
why = "it is a pun"
[[waiver]]
rule = "running-long"
[[step]]
title = "Look"
say = "Look."
`)
	h := HazardsOf(p, hazard.Read(p), []diag.Finding{{Rule: "title-long", Severity: diag.Warning, Message: "too long", Waived: "it is a pun", Waiver: 1}})
	if len(h.Aside) != 1 || len(h.Idle) != 1 || h.Aside[0].Findings[0] != "warning: too long" || !strings.Contains(h.Idle[0], "no reason given") {
		t.Errorf("%+v, %q", h.Aside, h.Idle)
	}
}
