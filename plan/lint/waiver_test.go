package lint_test

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"fixslate/plan/diag"
	"fixslate/plan/lint"
)

// dangerous raises an error on safety at its step and a warning at its spec.
const dangerous = `
spec = [{ id = "front", what = "front tyre pressure", value = "25 bar", verify = "ask" }]
[video]
title = "Back off"
subject = "mains-powered washing machine"
[[step]]
id = "back"
title = "Back panel off"
do = "undo the back panel of the washing machine and pull the wires off the terminals"
say = "The panel comes off."
`

// A waiver sets aside what it names, with a reason; a danger only where
// somebody stands for it; and nothing when it has run out. What is wrong with a
// waiver is a finding, and no waiver covers that.
func TestWaivers(t *testing.T) {
	for name, c := range map[string]struct {
		waiver string
		rule   string // the finding it is about …
		aside  bool   // … and whether it is set aside
		raises string // what the waiver itself raises
	}{
		"by id":            {`rule = "spec-implausible"` + "\n" + `at = "front"` + "\n" + `why = "a lorry"`, "spec-implausible", true, ""},
		"by kind and id":   {`rule = "spec-implausible"` + "\n" + `at = "spec:front"` + "\n" + `why = "a lorry"`, "spec-implausible", true, ""},
		"the whole rule":   {`rule = "spec-implausible"` + "\n" + `why = "a lorry"`, "spec-implausible", true, ""},
		"another place":    {`rule = "spec-implausible"` + "\n" + `at = "step:back"` + "\n" + `why = "a lorry"`, "spec-implausible", false, "waiver-unused"},
		"another rule":     {`rule = "spec-implausable"` + "\n" + `why = "a lorry"`, "spec-implausible", false, "waiver-unused"},
		"no reason":        {`rule = "spec-implausible"` + "\n" + `by = "me"`, "spec-implausible", false, "waiver-unexplained"},
		"blank reason":     {`rule = "spec-implausible"` + "\n" + `why = "  "`, "spec-implausible", false, "waiver-unexplained"},
		"run out":          {`rule = "spec-implausible"` + "\n" + `why = "a lorry"` + "\n" + `until = 2026-11-24`, "spec-implausible", false, "waiver-expired"},
		"its last day":     {`rule = "spec-implausible"` + "\n" + `why = "a lorry"` + "\n" + `until = 2026-11-25`, "spec-implausible", true, ""},
		"a danger, signed": {`rule = "caution-missing"` + "\n" + `at = "back"` + "\n" + `why = "a shell without a cord"` + "\n" + `by = "R. Viewer"`, "caution-missing", true, ""},
		"a danger, bare":   {`rule = "caution-missing"` + "\n" + `at = "back"` + "\n" + `why = "a shell without a cord"`, "caution-missing", false, "waiver-unexplained"},
		"a danger, blank":  {`rule = "caution-missing"` + "\n" + `at = "back"` + "\n" + `why = "a shell"` + "\n" + `by = " "`, "caution-missing", false, "waiver-unexplained"},
		"itself":           {`rule = "waiver-unused"` + "\n" + `why = "no"`, "spec-implausible", false, "waiver-unused"},
	} {
		t.Run(name, func(t *testing.T) {
			found := lint.Run(pass(t, dangerous+"[[waiver]]\n"+c.waiver+"\n"))
			aside, all := 0, 0
			var raised []string
			for _, f := range found {
				if f.Rule == c.rule {
					all++
					if f.Waived != "" {
						aside++
						if f.Waiver != 1 || !strings.Contains(c.waiver, strings.TrimSuffix(f.Waived, " (R. Viewer)")) {
							t.Errorf("set aside by %d: %q", f.Waiver, f.Waived)
						}
					}
				}
				if strings.HasPrefix(f.Rule, "waiver-") {
					raised = append(raised, f.Rule)
				}
			}
			if all == 0 || (aside == all) != c.aside || aside > 0 && aside < all {
				t.Errorf("%d of %d set aside", aside, all)
			}
			if !slices.Equal(raised, strings.Fields(c.raises)) {
				t.Errorf("raises %q, want %q", raised, c.raises)
			}
		})
	}
}

// A set-aside finding is no finding in text and counts, is marked in JSON, and
// is a suppression in the source in SARIF.
func TestWaivedIsShown(t *testing.T) {
	found := lint.Run(pass(t, dangerous+"[[waiver]]\nrule = \"spec-implausible\"\nwhy = \"a lorry\"\n"))
	var text, json, sarif bytes.Buffer
	for _, err := range []error{diag.Text(&text, found, diag.Style{}), diag.JSON(&json, found), diag.SARIF(&sarif, found, "1", lint.Page)} {
		if err != nil {
			t.Fatal(err)
		}
	}
	if strings.Contains(text.String(), "spec-implausible") {
		t.Errorf("printed all the same:\n%s", text.String())
	}
	if !strings.Contains(json.String(), `"waived": "a lorry"`) {
		t.Errorf("no reason in\n%s", json.String())
	}
	if got := strings.Join(strings.Fields(sarif.String()), " "); !strings.Contains(got, `"suppressions": [ { "kind": "inSource", "justification": "a lorry" } ]`) {
		t.Errorf("no suppression in\n%s", got)
	}
	if counts := fmt.Sprint(diag.Count(found)); strings.Contains(text.String(), "warning") != (diag.Count(found).Warning > 0) {
		t.Errorf("counted: %s", counts)
	}
}

// A waiver that sets nothing aside keeps no caution from being written.
func TestMissingHeedsWaivers(t *testing.T) {
	for waiver, want := range map[string]int{
		"":                                      1,
		"why = \"a shell\"":                     1,
		"by = \"R. Viewer\"":                    1,
		"why = \"a shell\"\nby = \"R. Viewer\"": 0,
		"why = \"a shell\"\nby = \"R. Viewer\"\nuntil = 2026-01-01": 1,
	} {
		text := dangerous
		if waiver != "" {
			text += "[[waiver]]\nrule = \"caution-missing\"\n" + waiver + "\n"
		}
		families := map[string]bool{}
		for _, a := range lint.Missing(pass(t, text)) {
			families[a.Class] = true
		}
		if got := min(1, len(families)); got != want {
			t.Errorf("%q leaves %d cautions to write, want %d", waiver, len(families), want)
		}
	}
}

// A reason for one danger sets no other aside: the blade stays when only the
// mains is named.
func TestWaiverOfSeveralDangers(t *testing.T) {
	const both = `
[video]
title = "Back off"
subject = "mains-powered washing machine"
[[step]]
id = "back"
title = "Back panel off"
do = "undo the back panel of the washing machine and pull the wires off the terminals. Cut the seized bolt off with the angle grinder"
say = "The panel comes off."
[[waiver]]
rule = "caution-missing"
at = "back"
by = "R. Viewer"
`
	count := func(why string) (aside, left, raised int) {
		for _, f := range lint.Run(pass(t, both+"why = \""+why+"\"\n")) {
			switch {
			case f.Rule == "waiver-unexplained":
				raised++
			case f.Rule == "caution-missing" && f.Waived != "":
				aside++
			case f.Rule == "caution-missing":
				left++
			}
		}
		return aside, left, raised
	}
	if aside, left, raised := count("the mains lead is cut off this shell"); aside != 1 || left == 0 || raised != 1 {
		t.Errorf("mains named: %d set aside, %d left, %d raised", aside, left, raised)
	}
	if aside, left, raised := count("said in another film"); aside != 0 || left < 2 || raised != 1 {
		t.Errorf("none named: %d set aside, %d left, %d raised", aside, left, raised)
	}
}
