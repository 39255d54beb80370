package plan_test

import (
	"testing"

	"fixslate/plan"
	"fixslate/plan/given"
)

func TestDetour(t *testing.T) {
	p := given.Plan(t, "test = [{ id = \"push\", question = \"Is it tight?\" }, { id = \"look\", question = \"the lamp\", outcome = [{ id = \"dim\", sees = \"it glows dimly\" }] }]\n"+
		"[video]\ntitle = \"T\"\n[[step]]\ntitle = \"A\"\nsay = \"B.\"\ntests = [\"push\", \"look\"]\n")
	for want, c := range map[string]plan.Condition{
		"":                                       {},
		"only after a bad reading: Is it tight?": {Test: "push", Outcome: "fails"},
		"only after a good reading: the lamp":    {Test: "look", Outcome: "passes"},
		"only if it glows dimly (the lamp)":      {Test: "look", Outcome: "dim"},
	} {
		if got := p.Detour(c); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
