package plan

import (
	"slices"
	"testing"

	"fixslate/plan/diag"
)

// "Power off" stands no more over the step that plugs in, but over one that
// works under it first and plugs in at its end.
func TestCardOfAStateThatEnds(t *testing.T) {
	const head = `
[video]
title = "Pump"
subject = "washing machine"
[[step]]
title = "Make it safe"
cautions = ["mains-isolation"]
starts = ["unplugged"]
[[step]]
title = "Work"
needs = ["unplugged"]
[[step]]
title = "Prove it"
`
	for ends, want := range map[string]bool{"ends = [\"unplugged\"]\n": false, "needs = [\"unplugged\"]\nends = [\"unplugged\"]\n": true} {
		src, _ := diag.NewSource("plan.toml", []byte(head+ends))
		p, _, faults := Decode(src, nil)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		shows := func(i int) bool {
			return slices.ContainsFunc(p.Steps[i].Cautions, func(c StepCaution) bool { return c.ID == "mains-isolation" && c.Card })
		}
		if !shows(1) || shows(2) != want {
			t.Errorf("%q: shown over the work %v, over the end %v", ends, shows(1), shows(2))
		}
	}
}
