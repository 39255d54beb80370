package lint_test

import (
	"fmt"
	"strings"
	"testing"

	"fixslate/plan/lint"
)

// A connector that comes off is joined again by its noun, by its verb ("plug the
// connector in") or as what came off last.
func TestConnectorsJoinedAgain(t *testing.T) {
	for _, c := range []struct {
		off, on string
		left    bool
	}{
		{"unplug the fan connector", "plug the connector in", false},
		{"unplug the fan connector", "plug it back in", false},
		{"unplug the fan connector", "reconnect the fan", false},
		{"unplug the fan connector", "plug back on", false},
		{"pull the plug off the coil", "push the connector on", false},
		{"undo the hoses at the ram and pull the hoses off", "pins in, hoses on", false},
		{"unplug the connector on the motor", "look at it", true},
		{"pull the hose off", "hose on the spigot", false},
		{"pull the hose off", "lay the hose on the bench", true},
		{"pull the cable tight by hand", "nip it up", false},
		{"pull the cable off", "nip it up", true},
		{"unplug the fan connector", "put the fan in", true},
		{"pull both plug leads off and earth them", "plug leads on, leg in a bin of water", false},
		{"pull both plug leads off and earth them", "leads back on, start it", false},
		{"pull both plug leads off and earth them", "start it", true},
		{"push a bleed tube on the nipple, open it, take the bleed tube off", "lid on", false},
		{"take the bleed tube off", "lid on", true},
		{"take the drain hose off the standpipe", "hang the hose over the sink again", false},
		{"take the drain hose off the standpipe", "look at it", true},
		{"unplug the fan connector, pull the hose off", "plug the connector in", true},
		{"unplug the fan connector, pull the hose off", "plug the connector in, push the hose on", false},
	} {
		text := fmt.Sprintf("[video]\ntitle = \"T\"\n[[step]]\ntitle = \"Off\"\ndo = %q\nsay = \"Off.\"\n[[step]]\ntitle = \"On\"\ndo = %q\nsay = \"On.\"\n", c.off, c.on)
		if got := raised(t, text, "connector-left-off"); got != c.left {
			t.Errorf("%s, %s: raised %v", c.off, c.on, got)
		}
	}
}

// "Plug it back in" may be the mains plug, where the step ends that isolation.
func TestTheMainsPlugIsNoConnector(t *testing.T) {
	text := "[video]\ntitle = \"T\"\n[[step]]\ntitle = \"Safe\"\nstarts = [\"unplugged\"]\ndo = \"unplug the machine\"\n" +
		"[[step]]\ntitle = \"Off\"\ndo = \"pull the fan connector off\"\n[[step]]\ntitle = \"Run\"\nends = [\"unplugged\"]\ndo = \"plug it back in\"\n"
	if !raised(t, text, "connector-left-off") {
		t.Error("the plug of the machine joined the fan's connector")
	}
}

// The narration may say how the other side is by naming it.
func TestTheOtherSideByItsName(t *testing.T) {
	for say, unsaid := range map[string]bool{
		"The left side is the same.": false, "It is longer on the left.": false, "Turn it to the left.": true, "Off it comes.": true,
	} {
		text := fmt.Sprintf("[video]\ntitle = \"T\"\n[[step]]\ntitle = \"Flap\"\nsides = [\"right\", \"left\"]\nsay = %q\n", say)
		if got := raised(t, text, "side-unsaid"); got != unsaid {
			t.Errorf("%s raised %v", say, got)
		}
	}
}

// A waiver that can meet nothing says why.
func TestWhyAWaiverIsUnused(t *testing.T) {
	for waiver, want := range map[string]string{
		`rule = "step-silnet"`:                       `4:8: warning: waiver-unused|there is no such rule; did you mean "step-silent"`,
		`rule = "key-unknown"`:                       `4:8: warning: waiver-unused|mend the plan: a fault can't be set aside`,
		"rule = \"step-silent\"\nat = \"flop\"":      `5:6: warning: waiver-unused|there is nothing of that name; did you mean "flap"`,
		"rule = \"unsure\"\nat = \"Flap\"":           `3:3: warning: waiver-unused|take it out`,
		"rule = \"step-silent\"\nat = \"Flap\"":      "",
		"rule = \"step-silent\"\nat = \"step:flap\"": "",
	} {
		text := "[video]\ntitle = \"T\"\n[[waiver]]\n" + waiver + "\nwhy = \"seen\"\n[[step]]\ntitle = \"Flap\"\ndo = \"look\"\n"
		var got string
		for _, f := range lint.Run(pass(t, text)) {
			if f.Rule == "waiver-unused" {
				at := f.At.Position()
				got = fmt.Sprintf("%d:%d: %s: %s|%s", at.Line, at.Column, f.Severity, f.Rule, f.Hint)
			}
		}
		if want == "" && got != "" || !strings.HasPrefix(got, want) {
			t.Errorf("%s: got %q, want %q", waiver, got, want)
		}
	}
}

// A slip in a state's name is told where it can be one, and an end of what
// nothing begins.
func TestSlipsOfStates(t *testing.T) {
	for _, c := range []struct{ starts, ends, want string }{
		{"water-off", "water-off", ""},
		{"water-of", "water-of", `6:11 state-misspelt: write "water-off"`},
		{"tap-off", "tap-off", ""},
		{"on-stand", "on-stand", ""},
		{"water-on", "water-on", ""},
		{"on-jack-stands", "on-stands", ""},
		{"unpluged", "unplugged", `6:11 refit-missing: step "Run" ends "unplugged": did you mean that here too 6:11 state-misspelt: write "unplugged"`},
		{"lid-off", "lidoff", `6:11 refit-missing: step "Run" ends "lidoff": did you mean "lid-off"`},
		{"lid-off", "lid-off\", \"tank-out", `11:20 state-gap: add starts = ["tank-out"] to the step that begins it`},
	} {
		text := "[video]\ntitle = \"T\"\n[[step]]\ntitle = \"Safe\"\ndo = \"look\"\nstarts = [\"" + c.starts + "\"]\nsay = \"Look.\"\n[[step]]\ntitle = \"Run\"\ndo = \"look\"\nends = [\"" + c.ends + "\"]\nsay = \"Look.\"\n"
		var got []string
		for _, f := range lint.Run(pass(t, text)) {
			if f.Rule == "state-misspelt" || f.Rule == "state-gap" || f.Rule == "refit-missing" {
				at, hint := f.At.Position(), f.Hint
				hint, _, _ = strings.Cut(hint, ", ")
				got = append(got, fmt.Sprintf("%d:%d %s: %s", at.Line, at.Column, f.Rule, hint))
			}
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s, %s: got %q", c.starts, c.ends, got)
		}
	}
}

func raised(t *testing.T, text, rule string) bool {
	t.Helper()
	for _, f := range lint.Run(pass(t, text)) {
		if f.Rule == rule {
			return true
		}
	}
	return false
}
