package lint_test

import (
	"strings"
	"testing"

	"fixslate/plan/lint"
)

// Pairs of small plans, told apart by one thing: what a rule is for, and the
// nearest that a good reviewer lets pass. They came of plans written from the
// list of the rules alone.
func TestPairs(t *testing.T) {
	for _, c := range []struct{ name, rule, plan, loud, quiet string }{
		{
			"torque is no test of a brake", "refit-unsafe",
			"[video]\ntitle = \"Pads\"\nsubject = \"small hatchback\"\n" + step("Pads", "undo the slide bolts, hang the caliper on a hook, fit the new brake pads, torque the bolts", "New pads in, bolts to torque.") + "%s",
			step("Tidy up", "take the chocks out", "Chocks out."),
			step("Prove it", "pump the pedal, drive off slowly", "Pump the pedal until it is hard, then try the brakes at walking pace."),
		},
		{
			"power comes back before the reading", "live-measure",
			"[video]\ntitle = \"Heater\"\nsubject = \"electric wall heater\"\n[[step]]\ntitle = \"Off\"\nstarts = [\"unplugged\"]\ndo = \"pull the plug\"\nsay = \"Plug out.\"\n%s",
			"[[step]]\ntitle = \"Read\"\nends = [\"unplugged\"]\ndo = \"plug in, measure the mains voltage at the terminals\"\nsay = \"Plug in, and put the meter across the terminals.\"\n",
			"[[step]]\ntitle = \"Read\"\nends = [\"unplugged\"]\ndo = \"measure ohms across the terminals, plug in\"\nsay = \"Put the meter across the terminals. Then plug in.\"\n",
		},
		{
			"a fuse that is tested guards no link", "jumper-unfused",
			"fuse = [{ id = \"f\", at = \"%s\", rating = \"10 A\" }]\n[video]\ntitle = \"Horn\"\nsubject = \"hatchback\"\n[[step]]\ntitle = \"Bridge it\"\nfuses = [\"f\"]\ndo = \"bridge the relay socket with a wire\"\nsay = \"Bridge the two pins.\"\n",
			"fuse 7 in the box", "in the lead",
		},
		{
			"notes in English beside other narration", "language-unread",
			"[video]\ntitle = \"Mower\"\n[[step]]\ntitle = \"Blade off\"\ndo = \"tip the mower on its side with the filter up, and undo the bolt of the blade\"\nsay = \"%s\"\n",
			"Den Motor abstellen, den Stecker von der Kerze ziehen, dann den Mäher auf die Seite kippen, das Messer sperren und lösen.",
			"Stop the engine, pull the lead off the plug, then tip the mower on its side, jam the blade and undo it.",
		},
		{
			"a limit that is another limit", "number-conflict",
			"spec = [{ id = \"lining\", what = \"least pad lining\", value = \"at least 2 mm\" }]\n" + pump + "\n[video]\ntitle = \"Pads\"\n[[step]]\ntitle = \"Look\"\ntests = [\"look\"]\nsay = \"%s\"\n",
			"You want at least three millimetres of pad lining.", "The pad lining here is three millimetres.",
		},
		{
			"the fuse beside it", "number-conflict",
			"fuse = [{ id = \"f\", at = \"fuse 7\", rating = \"15 A\" }]\n[video]\ntitle = \"Horn\"\n[[step]]\ntitle = \"Look\"\nsay = \"%s\"\n",
			"Fuse seven is a ten amp fuse.", "Fuse nine beside it is a ten amp fuse.",
		},
		{
			"a test that looks for no fault", "object-untried",
			"cause = [{ id = \"b\", what = \"bent blade\" }]\ntest = [{ id = \"shake\", question = \"Does it shake?\", instrument = \"hand\", expect = \"no shake\"%s }]\n[video]\ntitle = \"Mower\"\nsymptom = \"It shakes\"\n[[step]]\ntitle = \"Prove it\"\ntests = [\"shake\"]\nsay = \"No shake.\"\n",
			", checks = [\"b\"]", "",
		},
		{
			"a test that guards the next", "test-dead-end",
			"cause = [{ id = \"b\", what = \"dead horn\" }]\ntest = [{ id = \"batt\", question = \"Is the battery charged?\", instrument = \"eyes\", expect = \"green\", pass = \"test:horn\"%s }, { id = \"horn\", question = \"Does it sound?\", instrument = \"ears\", expect = \"sounds\", checks = [\"b\"], fail = \"stop: fit a horn\" }]\n[video]\ntitle = \"Horn\"\n[[step]]\ntitle = \"Test\"\ntests = [\"batt\", \"horn\"]\nsay = \"Green, and it sounds.\"\n",
			"", ", fail = \"stop: charge it\"",
		},
		{
			"a tool to have if one likes", "tool-unused",
			"tool = [{ id = \"clamp\", name = \"clamp meter\"%s }]\n[video]\ntitle = \"Horn\"\n" + step("Look", "look", "Look at it."),
			"", ", optional = true, why = \"shows the current without a cut\"",
		},
		{
			"changed for show, and told so", "outcome-unshown",
			"cause = [{ id = \"a\", what = \"dead horn\" }, { id = \"b\", what = \"bad ground\" }]\ntest = [{ id = \"horn\", question = \"Does it sound?\", instrument = \"ears\", expect = \"sounds\", checks = [\"a\"] }]\n[video]\ntitle = \"Horn\"\n[shoot]\nhas = [\"b\"]\n[[step]]\ntitle = \"Listen\"\ntests = [\"horn\"]\nsay = \"Listen.\"\n[[step]]\ntitle = \"Swap\"\nonly_if = \"test:horn fails\"\ndo = \"undo the bolt, fit the horn\"\nsay = \"%s\"\n",
			"Bolt out, and the new horn goes on.", "This horn is fine, and I change it to show you. Bolt out, and the new horn goes on.",
		},
		{
			"a pin in words", "polarity-by-variant",
			twoKinds + "wire = [{ id = \"w\", from = \"fuse\", to = \"horn\", to_pin = \"1\", variants = [\"a\"] }, { id = \"w\", from = \"fuse\", to = \"horn\", to_pin = \"2\", variants = [\"b\"] }]\n[video]\ntitle = \"Horn\"\n[[step]]\ntitle = \"Look\"\nsay = \"%s\"\n",
			"Pin one of the plug is plus.", "One of the two pins is plus.",
		},
		{
			"one of a pair", "side-unsaid", "[video]\ntitle = \"Pedal\"\nsubject = \"bicycle\"\n" + step("Off", "undo the pedal", "%s"),
			"Undo the left pedal.", "Turn the key to the left, and the pedal comes off.",
		},
		{
			"a plug by its other names", "connector-left-off",
			"[video]\ntitle = \"Fan\"\nsubject = \"van\"\n" + step("Off", "unplug the connector from the fan", "Pull the plug off the fan.") + step("On", "%s", "There it is."),
			"press the fan home", "plug the fan in",
		},
		{
			"own words that name nothing to wear", "gear-missing",
			"caution = [{ id = \"loud\", hazard = \"hearing\", card = \"Loud\", say = \"%s\" }]\n[video]\ntitle = \"Horn\"\n[[step]]\ntitle = \"Sound it\"\ncautions = [\"loud\"]\ndo = \"press the button\"\nsay = \"There.\"\n",
			"The horn is loud enough to hurt your ears, so stand back.", "The horn is loud enough to hurt your ears, so put ear plugs in.",
		},
		{
			"a cover over capacitors", "state-unsafe",
			"[video]\ntitle = \"Amplifier\"\nsubject = \"guitar amplifier\"\n[[step]]\ntitle = \"Plug out\"\nstarts = [\"unplugged\"]\ndo = \"pull the mains plug\"\nsay = \"Plug out.\"\n[[step]]\ntitle = \"Chassis out\"\nstarts = [\"covers-off\"]\ncautions = [\"capacitor-charge\"]\ndo = \"undo the screws, slide the chassis out\"\nsay = \"Slide the chassis out.\"\n%s[[step]]\ntitle = \"Discharge\"\nstarts = [\"discharged\"]\ndo = \"clip the bleeder across each capacitor\"\nsay = \"Clip it on.\"\n",
			step("Look", "push the capacitors aside", "Push the capacitors aside."), "",
		},
	} {
		for text, want := range map[string]bool{put(c.plan, c.loud): true, put(c.plan, c.quiet): false} {
			got := false
			for _, f := range lint.Run(pass(t, text)) {
				got = got || f.Rule == c.rule
			}
			if got != want {
				t.Errorf("%s: %s raised %v, want %v, in\n%s", c.name, c.rule, got, want, text)
			}
		}
	}
}

const (
	pump     = `test = [{ id = "look", question = "How thick is it?", instrument = "eyes", expect = "thick" }]`
	twoKinds = `variant = [{ id = "a", name = "early", short = "early" }, { id = "b", name = "late", short = "late" }]` + "\n"
)

// step is a step of work and its narration.
func step(title, do, say string) string {
	return "[[step]]\ntitle = \"" + title + "\"\ndo = \"" + do + "\"\nsay = \"" + say + "\"\n"
}

// put sets the part that differs.
func put(text, part string) string { return strings.Replace(text, "%s", part, 1) }
