package lint_test

import (
	"fmt"
	"testing"

	"fixslate/plan/lint"
)

// What a careful presenter says, and a rule stays quiet about; and beside it
// the nearest thing that it does not.
func TestQuiet(t *testing.T) {
	for _, c := range []struct{ rule, quiet, loud string }{
		{"claim-untested", "Stand out of the line of the disc, because it can burst.", "These discs burst because the glue dries out."},
		{"claim-untested", "Keep your fingers clear, since the spring can let go.", "The spring lets go because the hook wears through."},
		{"claim-untested", "That gives the belt some slack.", "Slack gives the belt a short life, because it slips."},
		{"claim-untested", "The petrol was stale, and it had blocked the jet.", "Stale petrol blocks the jet, because it dries to a varnish."},
		{"claim-untested", "Your washer has stopped with a drum full of water.", "These washers stop because the lint blocks the pump."},
		{"claim-untested", "Tap the hose, and more will let go.", "The cold makes the seal shrink, and it will let go."},
		{"claim-untested", "Lift the card in one piece, because it goes back.", "These discs burst because the glue dries out."},
		{"claim-untested", "Slow, and no pressure, or the plastic melts.", "The plastic melts because the bearing runs hot."},
		{"claim-untested", "A latch costs real money.", "A latch costs 90 euros."},
		{"always-never", "Put it down where nobody can step on it.", "Nobody ever gets one of these to leak."},
		{"always-never", "It hurts your ears for good.", "These seals last for ever and for good."},
		{"always-never", "It comes back by itself, and no crack opens in the rubber.", "No crack ever opens in these."},
		{"always-never", "Now one tip on each of the terminals.", "Each of the seals always leaks."},
		{"number-loose", "Ladder open, all four feet down.", "The hose is four feet long."},
		{"number-loose", "Ride it for 5 km and look again.", "It wears down in 800 km."},
		{"claim-untested", "A lamp trips the breaker as soon as you switch it on.", "A lamp trips the breaker because the seal lets water in."},
		{"claim-untested", "The tank comes out too, so that nothing drips while we work.", "The tank warps in the sun, so that the lid leaks."},
		{"unsure", "Mine has a brass tank, and yours may be steel.", "Mine has a brass tank, and it may be the fault."},
		{"claim-untested", "Two grey rollers, and four clicks.", "The chain on it has 66 links."},
	} {
		for text, want := range map[string]bool{c.quiet: false, c.loud: true} {
			got := false
			for _, f := range lint.Run(pass(t, whole(fmt.Sprintf("differs = [{ on_camera = \"a brass tank\", viewers = \"maybe a steel tank\" }]\n[video]\ntitle = \"T\"\nsymptom = \"The lamp trips the breaker when it is switched on\"\n[[step]]\ntitle = \"Look\"\ndo = \"look\"\nsay = %q\n", text)))) {
				got = got || f.Rule == c.rule
			}
			if got != want {
				t.Errorf("%q raises %s: %v", text, c.rule, got)
			}
		}
	}
}

// Plans that a rule stays quiet about, and beside each the nearest that it does
// not.
func TestQuietPlans(t *testing.T) {
	const oven = `fastener = [{ id = "panel-screws", what = "back panel screws", drive = "PH2" }]
tool = [{ id = "meter", name = "multimeter" }]
test = [{ id = "closes", question = "Does the thermostat close?", instrument = "meter", setting = "ohms", at = "its two terminals", expect = "at most 1 Ω", work = "2m" }, { id = "tone", question = "Is the speed right?", instrument = "meter", expect = "3000 ± 30 Hz" }, { id = "stops", question = "Does the door stop?", how = "a 50 mm block under it", instrument = "eyes", expect = "it stops" }]
[video]
title = "Oven"
subject = "fan oven"
[[step]]
title = "Isolate it"
cautions = ["mains-isolation"]
starts = ["power-off"]
do = "breaker off"
say = "Breaker off, and tape over it so that nobody puts it back."
`
	const cover = "[[step]]\ntitle = \"Back off\"\nstarts = [\"covers-off\"]\nfasteners = [\"panel-screws\"]\ndo = \"take the back panel off\"\nsay = \"Off it comes.\"\n"
	const proof = "[[step]]\ntitle = \"Prove it dead\"\nstarts = [\"proven-dead\"]\ncautions = [\"live-test\"]\ndo = \"measure live to neutral and live to earth at the oven's terminal block\"\nsay = \"Nothing, and nothing.\"\n"
	const tested = "[[step]]\ntitle = \"Thermostat\"\ntests = [\"closes\"]\ndo = \"measure the thermostat\"\nsay = \"Look at it. Less than %s, or it goes.\"\n"
	const block = "[[step]]\ntitle = \"Door\"\ntests = [\"stops\"]\nsay = \"%s\"\n"
	const kit = "[[step]]\ntitle = \"Cord\"\nparts = [\"10 mm glass cord\"]\ntools = [\"torque wrench, 2 to 8 N·m\"]\nsupplies = [\"thin oil, 20 mL\"]\nsay = \"%s\"\n"
	const belt = "[[step]]\ntitle = \"Belt\"\nparts = [\"K7430B belt\"]\nsay = \"It's a %s.\"\n"
	const deck = "[[step]]\ntitle = \"Speed\"\ntests = [\"tone\"]\ndo = \"plug in, switch on, meter on the %s, read the tone\"\nsay = \"Read it.\"\n"
	for _, c := range []struct{ rule, quiet, loud string }{
		{"live-measure", fmt.Sprintf(deck, "headphone socket"), fmt.Sprintf(deck, "live terminal")},
		{"state-unsafe", cover + proof, cover + "[[step]]\ntitle = \"Look\"\ndo = \"look at the terminal block\"\nsay = \"There it is.\"\n" + proof},
		{"number-loose", fmt.Sprintf(tested, "one ohm"), fmt.Sprintf(tested, "two ohms")},
		{"number-loose", fmt.Sprintf(block, "The block is fifty millimetres high."), fmt.Sprintf(block, "The block is eighty millimetres high.")},
		{"number-loose", fmt.Sprintf(kit, "Ten millimetre cord, and twenty millilitres of oil."), fmt.Sprintf(kit, "Twelve millimetre cord, to eight newton metres.")},
		{"part-number-unverified", fmt.Sprintf(belt, "K seven four three zero B"), fmt.Sprintf(belt, "K seven four three one B")},
		{"state-misspelt", "[[step]]\ntitle = \"Leads\"\nstarts = [\"plug-leads-off\"]\nsay = \"Off.\"\n", "[[step]]\ntitle = \"Leads\"\nstarts = [\"plug-lead-of\"]\nsay = \"Off.\"\n"},
		{"correction-unplaced", cover + "[[correction]]\nat = \"0:25\"\nnow = \"5 N·m\"\n", cover + "[[correction]]\nat = \"9:12\"\nnow = \"5 N·m\"\n"},
		{"always-never", cover, cover + "[[step]]\ntitle = \"Say it\"\nsay = \"Nobody ever gets one of these to leak.\"\n"},
	} {
		for text, want := range map[string]bool{c.quiet: false, c.loud: true} {
			got := false
			for _, f := range lint.Run(pass(t, oven+text)) {
				got = got || f.Rule == c.rule
			}
			if got != want {
				t.Errorf("%s: raised %v, want %v, in\n%s", c.rule, got, want, text)
			}
		}
	}
}
