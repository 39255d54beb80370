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

// A caution of the author's own words, of no class, has those words on its card.
func TestCardOfOwnWords(t *testing.T) {
	for caution, want := range map[string]string{
		`{ id = "soot", say = "Wipe it damp, never blow it." }`:                                           "Wipe it damp, never blow it.",
		`{ id = "soot", say = "Wipe it damp, never blow it.", card = "Wipe, don't blow" }`:                "Wipe, don't blow",
		`{ id = "soot", hazard = "mains-isolation", say = "Pull the plug, and take it along with you." }`: "Power off. Prove it dead.",
	} {
		src, _ := diag.NewSource("plan.toml", []byte("caution = ["+caution+"]\n[video]\ntitle = \"T\"\n[[step]]\ntitle = \"A\"\nsay = \"B.\"\ncautions = [\"soot\"]\n"))
		p, _, faults := Decode(src, nil)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		if got := p.Cautions[0].Card.Print; got != want {
			t.Errorf("%s: card %q, want %q", caution, got, want)
		}
	}
}
