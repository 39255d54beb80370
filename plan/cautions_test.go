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

// A step's own words for a caution are what is told of it: alone where every step
// has its own, beside the stock words where another step gives those, and not
// once more by a step in which they still hold.
func TestToldInOwnWords(t *testing.T) {
	const own, other = `{ id = "hot-surface", say = "The jacket glows. Wait an hour." }`, `{ id = "hot-surface", say = "The muffle stays hot too." }`
	const stock = `"hot-surface"`
	for _, c := range []struct {
		first, second, third string
		own                  []bool // of each that is told: no stock words
	}{
		{own, stock, own, []bool{true}}, // the second still holds
		{own, other, own, []bool{true, true}},
		{stock, own, stock, []bool{false}},
		{stock, stock, stock, []bool{false}},
	} {
		p := decoded(t, "[video]\ntitle = \"T\"\n[[step]]\ntitle = \"A\"\ncautions = ["+c.first+"]\n[[step]]\ntitle = \"B\"\ncautions = ["+c.second+"]\n[[step]]\ntitle = \"C\"\ncautions = ["+c.third+"]\n")
		var got []bool
		for _, told := range p.Told() {
			got = append(got, told.Text != p.Caution("hot-surface")[0].Text)
			if told.Text != told.Say.Print && told.Text != p.Caution("hot-surface")[0].Text {
				t.Errorf("%s: text %q, said %q", c.first, told.Text, told.Say.Print)
			}
		}
		if !slices.Equal(got, c.own) {
			t.Errorf("%s, %s, %s: own words %v, want %v", c.first, c.second, c.third, got, c.own)
		}
	}
}

func decoded(t *testing.T, text string) *Plan {
	t.Helper()
	src, _ := diag.NewSource("plan.toml", []byte(text))
	p, _, faults := Decode(src, nil)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return p
}
