package lint_test

// fifthSabotages were written after the rules had been mended by the fourth,
// with what they have to raise, before one of them was run. Of 61, 40 came exactly
// as written.
var fifthSabotages = []sabotage{
	// What the reader of plans refuses.
	{sample: mower, old: `drive = "10 mm", count = 1, torque = "6 N·m"`, new: `drive = "10 mm", count = 0, torque = "6 N·m"`, want: "value-wrong@fastener[1]"},
	{sample: van, old: `count = 4, torque = "2.5 N·m"`, new: `count = "four", torque = "2.5 N·m"`, want: "type-wrong@fastener[1]"},
	{sample: ebike, old: `claims   = ["pump-up", "far-but-firm"]`, new: `claims   = ["pump-up", "far-but-frim"]`, want: "id-unknown@step[3]"},
	{sample: ebike, old: `who   = ["presenter", "helper"]`, new: `who   = ["presenter", "helpers"]`, want: "id-unknown@step[2]"},
	{sample: washer, old: `cautions = ["hot-wash", "spill-slip"]`, new: `cautions = ["hot-wahs", "spill-slip"]`, want: "id-unknown@step[5]"},
	{sample: van, old: `fuses    = ["blower-fuse"]`, new: `fuses    = ["blower-fuze"]`, want: "id-unknown@step[6]"},
	{sample: van, old: `wires    = ["feed", "return"]`, new: `wires    = ["feed", "retrun"]`, want: "id-unknown@step[7]"},
	{sample: washer, old: `needs    = ["unplugged", "water-off"]`, new: `needs    = ["unpluged", "water-off"]`, want: "state-never-started@step[4]"},
	{sample: van, old: `needs = ["battery-off", "not motor-out"]`, new: `needs = ["battery-off", "not motor-uot"]`, want: "state-never-started@step[11]"},
	{sample: washer, old: "begins = [\"drum-full\"] ", new: "# ", want: "state-never-started@step[2] state-never-started@step[5]", why: "both steps need what was true before the first"},
	{sample: mower, old: `pass       = "step:first-start"`, new: `pass       = "step:first-strat"`, want: "id-unknown@test[6]"},
	{sample: mower, old: "sees  = \"it fires and dies\"\n", new: "", want: "key-missing@test[0]"},
	{sample: ebike, old: "id    = \"far\"\n", new: "id    = \"spongy\"\n", want: "id-duplicate@test[0]"},
	{sample: ebike, old: `torque = "12 N·m"`, new: `torque = "12 N/m"`, want: "value-wrong@fastener[0]"},
	{sample: ebike, old: "when  = \"\\\"Now the two of us\\\"\"\n", new: "", want: "helper-uncued@battery-off"},
	{sample: ebike, old: "does  = \"hold the top syringe upright with both hands, say stop when it is three parts full\"\n", new: "", want: "key-missing@step[9]"},
	{sample: washer, old: `value = "at most 0.5 Ω", source = "log"`, new: `value = "at most 0.5 Ω", source = "lgo"`, want: "id-unknown@spec[2]"},
	{sample: van, old: "[publish]\n", new: "[captions]\nsounds = \"stars\"\n\n[publish]\n", want: "value-wrong@captions"},
	{sample: washer, old: "subject  = \"Marrowby FL7 front-load washing machine\"\n", new: "subject  = \"Marrowby FL7 front-load washing machine\n", want: "syntax@"},
	{sample: mower, old: "trade    = \"garden machines\"\n", new: "trade    = 5\n", want: "type-wrong@video"},
	{sample: van, old: `adult = true, from`, new: `adult = "yes", from`, want: "type-wrong@shoot"},
	{sample: washer, old: "id       = \"lever\"\n", new: "id       = \"measure\"\n", want: "id-duplicate@step[10]"},
	{sample: van, old: `form = "regular blade", colour = "clear"`, new: `form = "regular blaed", colour = "clear"`, want: "" /* a form is free words, and these still say which */},
	{sample: van, old: `colour = "violet-blue", section = "4 mm²"`, new: `colour = "violet-blue", section = "4 mm"`, want: "value-wrong@wire[0]"},
	{sample: ebike, old: "[publish]\n", new: "[[waiver]]\nwhy = \"the maker will not tell\"\n\n[publish]\n", want: "key-missing@waiver[0]"},
	{sample: mower, old: "[publish]\n", new: "[[correction]]\ndate = 2026-11-02\nat = \"bowl-on\"\nwas = \"60 N·m\"\n\n[publish]\n", want: "key-missing@correction[0]"},

	// Values.
	{sample: washer, old: `set to {pump-screws.torque}, and stop at the click.`, new: `set to {panel-screws.torque}, and stop at the click.`, want: "torque-unsaid@fastener:pump-screws"},
	{sample: washer, old: `and the four screws back,`, new: `and the three screws back,`, want: "number-conflict@close-the-front"},
	{sample: ebike, old: `value = "60 s"`, new: `value = "60 N"`, want: "spec-implausible@spec:hold-time"},
	{sample: ebike, old: `value = "at least 22 mm"`, new: `value = "at least 22 m"`, want: "spec-implausible@test:gap-again spec-implausible@test:squeeze", why: "both tests read it on a ruler"},
	{sample: mower, old: `value = "0.7..0.8 mm"`, new: `value = "0.7..0.8 kg"`, want: "spec-implausible@spec:gap", gap: true},
	{sample: van, old: `value = "at least 12.4 V"`, new: `value = "at least 12.4 Ω"`, want: "spec-implausible@test:rest"},
	{sample: washer, old: `what = "pump bracket screws", thread = "M5"`, new: `what = "pump bracket screws", thread = "M5x5"`, want: "spec-implausible@fastener:pump-screws"},
	{sample: van, old: `what = "resistor screws", thread = "M4"`, new: `what = "resistor screws", thread = "M12"`, want: "drive-unknown@fastener:resistor-screws torque-unit-slip@fastener:resistor-screws", why: "neither drive nor torque is that of so large a screw"},
	{sample: washer, old: `Wait {run-down}, and leave the board alone.`, new: `Wait 2 minutes, and leave the board alone.`, want: "number-conflict@caution:run-down-wait"},
	{sample: washer, old: `card = "Unplug, then wait {run-down}"`, new: `card = "Unplug, then wait 50 min"`, want: "number-conflict@caution:run-down-wait"},
	{sample: washer, old: `say = "It weighs {weight} empty,`, new: `say = "It weighs 30 kg empty,`, want: "number-conflict@caution:machine-weight"},
	{sample: washer, old: `That is what your leads alone read: {tips}.`, new: `That is what your leads alone read: five ohms.`, want: "number-loose@measure" /* the line names nothing */},
	{sample: van, old: `Same rating back in, same colour, and no bigger.`, new: `Put a 30 amp fuse in and it lasts.`, want: "number-conflict@both-legs"},
	{sample: van, old: `and the four screws, {glovebox-screws.torque}.`, new: `and the four screws, two and a half newton metres.`, want: "number-loose@close-the-dash torque-unsaid@fastener:glovebox-screws", why: "a figure that is not quoted is loose, and the torque is then not the fastener's"},
	{sample: washer, old: `check the number on the box.`, new: `check the number on the box, M B forty-four seventy-one.`, want: "part-number-unverified@pump-out"},

	// Evidence.
	{sample: washer, old: `says = "that is an open winding", evidence = ["test:ohms", "source:sheet"]`, new: `says = "that is an open winding", evidence = []`, want: "claim-untested@claim:open-winding"},
	{sample: van, old: `Both legs dead, and the supply is missing`, new: `It might be the relay. Both legs dead, and the supply is missing`, want: "unsure@both-legs"},
	{sample: mower, old: `So this one had a spark all along.`, new: `So this one had a spark all along, as far as I know.`, want: "unsure@wrap-up"},
	{sample: van, old: "Mine is a right-hand-drive van, so the glovebox is on the left. In a left-hand-drive van, all of this is on the right.\n", new: "", want: "differs-unsaid@"},
	{sample: ebike, old: "tests    = [\"squeeze\"]\n", new: "", want: "claim-untested@squeeze-it test-unshown@test:squeeze", why: "what a good pull looks like rested on that test"},
	{sample: van, old: `Now the wait: {srs-wait}. That is the maker's figure for this van. Another van`, new: `Now we wait. Another van`, want: ""},

	// States, fasteners, tools.
	{sample: washer, old: "fasteners = [\"panel-screws\"]\ntools     = [\"torque-driver\"]\n", new: "", more: []string{`bottom edge in, and the four screws back, {panel-screws.torque}.`, `bottom edge in.`, `panel on its hooks, four screws, kick plate`, `panel on its hooks, kick plate`}, want: "refit-missing@open-up"},
	{sample: ebike, old: `fasteners = ["axle", "caliper-bolts", "lever-clamp"]`, new: `fasteners = ["caliper-bolts", "lever-clamp"]`, more: []string{"Torque wrench on the axle: {axle.torque}. Stop at the click.\n", "", `axle through from the left.`, `and it sits.`, `wheel in, axle to its torque, loosen`, `wheel in, loosen`, `of    = "torque wrench on the axle, disc clean between the pads"`, `of    = "disc clean between the pads"`}, want: "refit-missing@wheel-out"},
	{sample: ebike, old: "needs    = [\"battery-off\", \"in-stand\"]\nsupplies = [\"towels\", \"strap\"]", new: "needs    = [\"battery-off\", \"in-stand\", \"pads-out\"]\nsupplies = [\"towels\", \"strap\"]", want: "state-gap@hold-it"},
	{sample: washer, old: `work      = "8m..12m..25m"`, new: `work      = "8h..12h..25h"`, want: "day-impossible@pump-out"},

	// Safety.
	{sample: washer, old: `cautions = ["mains-isolation", "run-down-wait"]`, new: `cautions = ["mains-isolation"]`, want: "caution-unspoken@caution:run-down-wait"},
	{sample: van, old: `{ id = "hot-resistor", hazard = "hot-surface"`, new: `{ id = "hot-resistor", hazard = "rotating-parts"`, want: "caution-mismatch@caution:hot-resistor", gap: true},
	{sample: ebike, old: `hazard = "chemicals-solvents"`, new: `hazard = "heavy-lift"`, want: "caution-mismatch@caution:spirit"},
	{sample: mower, old: `say = "It is loud enough to hurt your ears for good. Ear defenders on before you pull."`, new: `say = "Petrol vapour catches fire at one spark and burns you. Keep every flame away."`, want: "caution-mismatch@caution:loud"},
	{sample: washer, old: `, leave_to = "a licensed electrician or the maker's service engineer"`, new: ``, want: "" /* the step leaves it to them in its own words */},

	// Publishing.
	{sample: ebike, old: "on_screen = \"50s\"\n", new: "on_screen = \"50m\"\n", want: "running-long@"},
	{sample: mower, old: "[publish]\n", new: "[publish]\ndisclosure = \"Petrol given by <a shop>\"\n", want: "forbidden-character@"},
	{sample: van, old: "[publish]\n", new: "[[correction]]\ndate = 2026-11-02\nat = \"59:59\"\nwas = \"pin 2\"\nnow = \"pin 1\"\n\n[publish]\n", want: "correction-unplaced@"},
	{sample: washer, old: `title    = "Listen to it first"`, new: "title    = \"Listen to it\u202e first\"", want: "forbidden-character@listen"},
	{sample: mower, old: "[publish]\n", new: "[publish]\nfooter = \"See [the shop](javascript:buy)\"\n", want: "link-dropped@"},
}
