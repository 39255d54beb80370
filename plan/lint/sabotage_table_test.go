package lint_test

const (
	washer = "washer-pump"
	van    = "van-blower"
	ebike  = "ebike-brake"
	mower  = "mower-carburettor"
)

// sabotages are ways to spoil a sample, by what is spoiled.
var sabotages = []sabotage{
	// Sources.
	{sample: washer, old: `number = "MB-4417", source = "sheet"`, new: `number = "MB-4417"`, want: "source-missing@part:pump"},
	{sample: washer, old: `number = "MB-4420", source = "sheet"`, new: `number = "MB-4420"`, want: "source-missing@part:seal"},
	{sample: washer, old: `value = "2 L", source = "sheet"`, new: `value = "2 L"`, want: "source-missing@spec:rinse"},
	{sample: washer, old: `value = "60..100 cm", source = "manual"`, new: `value = "60..100 cm"`, want: "source-missing@spec:hose-height"},
	{sample: washer, old: `value = "68 kg", source = "manual"`, new: `value = "68 kg"`, want: "source-missing@spec:weight"},
	{sample: washer, old: `torque = "1.5 N·m", source = "sheet"`, new: `torque = "1.5 N·m"`, want: "source-missing@fastener:panel-screws"},
	{sample: van, old: `colour = "clear", protects = "blower motor", source = "diagram"`, new: `colour = "clear", protects = "blower motor"`, want: "source-missing@fuse:blower-fuse"},
	{sample: van, old: `length = "1.9 m", source = "diagram"`, new: `length = "1.9 m"`, want: "source-missing@wire:feed"},
	{sample: van, old: `value = "at least 12.4 V", source = "batteries"`, new: `value = "at least 12.4 V"`, want: "source-missing@spec:rest-volts"},
	{sample: van, old: `number = "OD-77310", source = "parts-list"`, new: `number = "OD-77310"`, want: "source-missing@part:resistor"},
	{sample: ebike, old: `torque = "12 N·m", source = "bike-manual"`, new: `torque = "12 N·m"`, want: "source-missing@fastener:axle torque-implausible@fastener:axle", why: "only the maker's word makes so little on M12 right"},
	{sample: ebike, old: `number = "CB-0651", source = "bleed-sheet"`, new: `number = "CB-0651"`, want: "source-missing@part:fluid"},
	{sample: ebike, old: `value = "at least 22 mm", source = "bleed-sheet"`, new: `value = "at least 22 mm"`, want: "source-missing@spec:bite-gap"},
	{sample: mower, old: `value = "0.7..0.8 mm", source = "sheet"`, new: `value = "0.7..0.8 mm"`, want: "source-missing@spec:gap"},
	{sample: mower, old: `value = "30 min", source = "manual"`, new: `value = "30 min"`, want: "source-missing@spec:cool-down"},
	{sample: mower, old: `torque = "6 N·m", source = "sheet"`, new: `torque = "6 N·m"`, want: "source-missing@fastener:bowl-bolt"},
	{sample: washer, old: `date = 2019-03-01`, new: `date = 2009-03-01`, want: "source-dated@source:handbook"},
	{sample: mower, old: `date = 2017-05-01`, new: `date = 1999-05-01`, want: "source-dated@source:handbook"},
	{sample: van, old: `kind = "standard" }`, new: `kind = "law" }`, want: "source-dated@source:colours"},

	// Values.
	{sample: washer, old: `value = "150..190 Ω", source = "sheet"`, new: `value = "?", verify = "measure a good one"`, want: "value-open@spec:winding"},
	{sample: van, old: `value = "2.2..2.8 Ω", source = "sheet"`, new: `value = "?", source = "sheet"`, want: "value-open@spec:resistance"},
	{sample: ebike, old: `torque = "5 N·m", source = "bleed-sheet"`, new: `torque = "?", source = "bleed-sheet"`, want: "value-open@fastener:nipple"},
	{sample: van, old: `value = "at least 12.4 V"`, new: `value = "at least 124 V"`, want: "spec-implausible@spec:rest-volts caution-missing@battery-first licence-missing@battery-first", why: "a reading is taken at its word until it is mended"},
	{sample: van, old: `value = "at most 0.2 V"`, new: `value = "at most 20 V"`, want: "spec-implausible@spec:drop"},
	{sample: van, old: `rating = "25 A", form = "regular blade", colour = "clear"`, new: `rating = "23 A", form = "regular blade", colour = "clear"`, want: "spec-implausible@fuse:blower-fuse"},
	{sample: washer, old: `what = "pump bracket screws", thread = "M5"`, new: `what = "pump bracket screws", thread = "M55"`, want: "spec-implausible@fastener:pump-screws"},
	{sample: mower, old: `value = "0.7..0.8 mm"`, new: `value = "7..8 mm"`, want: "spec-implausible@spec:gap"},
	{sample: washer, old: `  { id = "rinse",`, new: "  { id = \"weight-2\", what = \"weight of the empty machine\", value = \"75 kg\", source = \"manual\" },\n  { id = \"rinse\",", want: "number-conflict@spec:weight-2"},
	{sample: washer, old: `pour {rinse} of clean water`, new: `pour 3 L of clean water`, want: "number-loose@drip-check"},
	{sample: washer, old: `Start the three screws by hand.`, new: `Start the four screws by hand.`, want: "number-conflict@pump-in"},
	{sample: ebike, old: `Torque wrench on the axle: {axle.torque}.`, new: `Torque wrench on the axle: 40 newton metres.`, want: "number-conflict@wheel-in torque-unsaid@fastener:axle", why: "the quote was the only word of the torque"},
	{sample: mower, old: `Torque wrench: {bowl-bolt.torque}.`, new: `Torque wrench: 6 N·m.`, want: "number-loose@bowl-on torque-unsaid@fastener:bowl-bolt", why: "a figure that is not quoted is loose, and the torque is then not the fastener's"},
	{sample: washer, old: `Now wait {run-down}.`, new: `Pour half a litre in. Now wait {run-down}.`, want: "number-loose@make-safe"},
	{sample: van, old: `so the battery is fit to measure with.`, new: `so the battery is fit to measure with. A good motor draws 18 amps.`, want: "number-loose@battery-first"},
	{sample: washer, old: `The reading to look for: {winding}.`, new: `The reading to look for: 150 to 190 ohms.`, want: "variant-gap@measure"},
	{sample: van, old: `The feed is on {feed.to_pin}.`, new: `The feed is on pin 1.`, want: "polarity-by-variant@which-wiring"},
	{sample: washer, old: `check the number on the box.`, new: `check the number on the box: MB-9999.`, want: "part-number-unverified@pump-out"},
	{sample: ebike, old: `New seal on the port screw,`, new: `New seal, CB-7777, on the port screw,`, want: "part-number-unverified@close-it"},

	// Fasteners and tools.
	{sample: washer, old: `what = "pump bracket screws", thread = "M5", head = "hex", drive = "8 mm"`, new: `what = "pump bracket screws", thread = "M5", head = "hex", drive = "14 mm"`, want: "drive-unknown@fastener:pump-screws tool-missing@fastener:pump-screws", why: "no tool of the plan is that size"},
	{sample: van, old: `what = "glovebox screws", thread = "M5", head = "pan", drive = "T25"`, new: `what = "glovebox screws", thread = "M5", head = "pan", drive = "T55"`, want: "drive-unknown@fastener:glovebox-screws tool-missing@fastener:glovebox-screws", why: "no tool of the plan is that size"},
	{sample: ebike, old: `what = "caliper bolts", thread = "M6", head = "socket", drive = "5 mm"`, new: `what = "caliper bolts", thread = "M6", head = "socket", drive = "9 mm"`, want: "drive-unknown@fastener:caliper-bolts tool-missing@fastener:caliper-bolts", why: "no tool of the plan is that size"},
	{sample: ebike, old: `name = "T10 screwdriver"`, new: `name = "T8 screwdriver"`, more: []string{`"7 mm", "T10"]`, `"7 mm"]`}, want: "tool-missing@fastener:port-screw"},
	{sample: mower, old: `name = "T20 screwdriver"`, new: `name = "T15 screwdriver"`, want: "tool-missing@fastener:filter-screw"},
	{sample: van, old: `name = "T20 screwdriver"`, new: `name = "T15 screwdriver"`, more: []string{`"10 mm", "T20", "T25"]`, `"10 mm", "T25"]`}, want: "tool-missing@fastener:resistor-screws"},
	{sample: washer, old: `  { id = "torch", name = "torch" },`, new: "  { id = \"torch\", name = \"torch\" },\n  { id = \"saw\", name = \"junior hacksaw\" },", want: "tool-unused@tool:saw"},
	{sample: ebike, old: `  { id = "pliers",`, new: "  { id = \"vice\", name = \"small vice\" },\n  { id = \"pliers\",", want: "tool-unused@tool:vice"},
	{sample: van, old: `number = "OD-77310", source = "parts-list", variants = ["early"] },`, new: "number = \"OD-77310\", source = \"parts-list\", variants = [\"early\"] },\n  { id = \"relay\", name = \"blower relay\", number = \"OD-77001\", source = \"parts-list\" },", want: "part-unused@part:relay"},
	{sample: mower, old: `  { id = "rags",`, new: "  { id = \"string\", name = \"nylon line\" },\n  { id = \"rags\",", want: "supply-unused@supply:string"},
	{sample: ebike, old: `parts     = ["cap-seal", "fluid"]`, new: `parts     = ["fluid"]`, want: "part-unused@part:cap-seal"},
	{sample: ebike, old: `supplies  = ["gloves", "towels", "bag"]`, new: `supplies  = ["gloves", "towels"]`, want: "supply-unused@supply:bag"},
	{sample: washer, old: `torque = "3 N·m", source = "sheet"`, new: `torque = "26 N·m", source = "sheet"`, want: "torque-unit-slip@fastener:pump-screws"},
	{sample: mower, old: `torque = "6 N·m", source = "sheet"`, new: `torque = "24 N·m", source = "log"`, want: "torque-implausible@fastener:bowl-bolt"},
	{sample: ebike, old: `torque = "7 N·m", source = "bleed-sheet"`, new: `torque = "25 N·m", source = "log"`, want: "torque-implausible@fastener:caliper-bolts"},
	{sample: washer, old: `Now the torque driver, set to {pump-screws.torque}, and stop at the click.`, new: `Now the torque driver, and stop at the click.`, want: "torque-unsaid@fastener:pump-screws"},
	{sample: ebike, old: `one and then the other, {caliper-bolts.torque}.`, new: `one and then the other.`, want: "torque-unsaid@fastener:caliper-bolts"},
	{sample: mower, old: `Then the torque wrench: {plug-seat.torque}.`, new: `Then nip it up.`, want: "torque-unsaid@fastener:plug-seat"},
	{sample: van, old: `then the torque wrench: {motor-screws.torque}.`, new: `then the nut driver.`, want: "torque-unsaid@fastener:motor-screws"},
	{sample: van, old: `what = "blower screws", thread = "M5", head = "hex", drive = "8 mm"`, new: `what = "blower screws", thread = "M10", head = "hex", drive = "17 mm"`, more: []string{`drive = "17 mm", count = 3, torque = "3 N·m"`, `drive = "17 mm", count = 3, torque = "30 N·m"`, `name = "8 mm nut driver"`, `name = "17 mm socket"`, `drives = ["8 mm", "10 mm"`, `drives = ["17 mm", "10 mm"`}, want: "drive-older-standard@fastener:motor-screws"},

	// Fuses and wires.
	{sample: van, old: `rating = "25 A", form = "regular blade", colour = "clear"`, new: `rating = "25 A", form = "regular blade", colour = "red"`, want: "fuse-colour@fuse:blower-fuse"},
	{sample: van, old: `at = "the fuse in the test lead", rating = "20 A", form = "regular blade", colour = "yellow"`, new: `at = "the fuse in the test lead", rating = "20 A", form = "regular blade", colour = "green"`, want: "fuse-colour@fuse:lead-fuse"},
	{sample: van, old: `rating = "25 A", form = "regular blade", colour = "clear"`, new: `rating = "40 A", form = "regular blade", colour = "clear"`, want: "fuse-colour@fuse:blower-fuse"},
	{sample: van, old: `colour = "red-yellow", section = "2.5 mm²"`, new: `colour = "red-yellow", section = "0.75 mm²"`, want: "fuse-wire@fuse:blower-fuse"},
	{sample: van, old: `colour = "violet-blue", section = "4 mm²"`, new: `colour = "violet-blue", section = "1 mm²"`, want: "fuse-wire@fuse:blower-fuse"},

	// Tests.
	{sample: washer, old: `tests     = ["dead"]`, new: `tests     = []`, want: "test-unshown@test:dead"},
	{sample: washer, old: "tests    = [\"drips\"]\n", new: "", want: "test-unshown@test:drips"},
	{sample: ebike, old: `tests    = ["hold", "gap-again"]`, new: `tests    = ["hold"]`, want: "test-unshown@test:gap-again"},
	{sample: mower, old: "tests     = [\"filter\"]\n", new: "", want: "test-unshown@test:filter"},
	{sample: van, old: "expect     = \"the wheel runs up to speed\"\n", new: "", want: "test-without-reading@test:spin"},
	{sample: ebike, old: "expect     = \"{lining}\"\n", new: "", more: []string{"You want {pads}, at the thinnest place.", "Look for the thinnest place."}, want: "test-without-reading@test:pads"},
	{sample: mower, old: "expect     = \"a flash at each pull\"\n", new: "", more: []string{"What you want is {spark}, and I have it.", "There it is."}, want: "test-without-reading@test:spark"},
	{sample: washer, old: "fail       = \"test:filter\"\n", new: "", want: "test-dead-end@test:gravity"},
	{sample: washer, old: "means = [\"pump-open\", \"no-feed\"]\ngo    = \"test:ohms\"\n", new: "means = [\"pump-open\", \"no-feed\"]\n", want: "test-dead-end@test:listen"},
	{sample: van, old: "fail       = \"stop: follow the wire with the low reading, back from the plug, and look for green copper\"\n", new: "", want: "test-dead-end@test:load"},
	{sample: mower, old: "fail       = \"stop: fit a new air filter, and pull again\"\n", new: "", want: "test-dead-end@test:filter"},
	{sample: washer, old: `  { id = "no-feed",`, new: "  { id = \"sump\", what = \"a blocked sump\", share = \"rare\" },\n  { id = \"no-feed\",", want: "cause-untested@cause:sump"},
	{sample: ebike, old: `  { id = "leak", what`, new: "  { id = \"hose\", what = \"a swollen hose\", share = \"rare\" },\n  { id = \"leak\", what", want: "cause-untested@cause:hose"},
	{sample: ebike, old: "checks     = [\"leak\"]\n", new: "", want: "causes-alike@cause:leak"},
	{sample: van, old: "Is the battery good enough to measure with?", new: "Is there enough to measure with?", more: []string{`how        = "van at rest overnight, key out, meter across the battery posts"`, `how        = "van at rest overnight, key out"`, `at         = "across the two battery posts"`, `at         = "across the two posts"`, `what = "battery at rest"`, `what = "at rest"`}, want: "battery-unchecked@test:rest"},
	{sample: washer, old: "tried  = 2026-10-02 ", new: "#", want: "object-untried@"},
	{sample: mower, old: "tried  = 2026-04-11\n", new: "", want: "object-untried@"},
	{sample: van, old: `has    = ["worn-motor"]`, new: `has    = ["blown-fuse"]`, want: "outcome-unshown@motor-in outcome-unshown@motor-out", why: "both steps are for the same outcome"},
	{sample: mower, old: `has    = ["stale", "blocked-jet"]`, new: `has    = ["stale"]`, want: "outcome-unshown@clean-jet"},

	// What is asserted.
	{sample: ebike, old: `says = "The wrong one swells the seals"`, new: `says = "nobody says this"`, want: "claim-untested@which-lever"},
	{sample: washer, old: `Write down which one you have got.`, new: `Write down which one you have got. These pumps fail because the bearing rusts.`, want: "claim-untested@listen"},
	{sample: van, old: `Mine clicks, so this is the early wiring.`, new: `Mine clicks, so this is the early wiring. I'm pretty sure that the late one came in 2012.`, want: "unsure@which-wiring"},
	{sample: mower, old: `So the coil is good, and I leave it alone.`, new: `So the coil is good, and I leave it alone. Coils never fail on these.`, want: "always-never@spark-check"},
	{sample: washer, old: `so keep the two pictures in your head.`, new: `so keep the two pictures in your head. These plugs never come off by themselves.`, want: "always-never@which-pump"},

	// States.
	{sample: washer, old: `ends      = ["pump-plug-off", "covers-off"]`, new: `ends      = ["covers-off"]`, want: "refit-missing@unplug-pump"},
	{sample: washer, old: "ends      = [\"old-pump-out\"]\n", new: "", want: "refit-missing@pump-out"},
	{sample: washer, old: `ends     = ["unplugged", "water-off", "discharged"`, new: `ends     = ["unplugged", "discharged"`, want: "refit-missing@make-safe"},
	{sample: van, old: `ends      = ["glovebox-out", "battery-off", "srs-waited", "key-off"]`, new: `ends      = ["battery-off", "srs-waited", "key-off"]`, want: "refit-missing@glovebox-out"},
	{sample: ebike, old: "ends      = [\"brake-open\"]\n", new: "", want: "refit-missing@syringes-on"},
	{sample: ebike, old: "ends      = [\"wheel-out\"]\n", new: "", want: "refit-missing@wheel-out"},
	{sample: mower, old: `ends      = ["plug-out", "spark-off"]`, new: `ends      = ["spark-off"]`, want: "refit-missing@lead-off"},
	{sample: mower, old: `ends      = ["bowl-off", "filter-off"]`, new: `ends      = ["bowl-off"]`, want: "refit-missing@filter-look"},
	{sample: mower, old: `ends     = ["engine-cold"]`, new: `ends     = ["engine-cld"]`, want: "state-misspelt@first-start"},
	{sample: mower, old: `ends     = ["engine-cold"]`, new: `ends     = ["engine-cold", "hood-off"]`, want: "state-gap@first-start"},
	{sample: washer, old: `needs    = ["drum-full"]`, new: `needs    = ["drum-full", "unplugged"]`, want: "state-gap@listen"},
	{sample: ebike, old: `needs    = ["battery-off", "in-stand"]
do       = "pull the lever`, new: `needs    = ["battery-off", "in-stand", "wheel-out"]
do       = "pull the lever`, want: "state-gap@squeeze-it"},
	{sample: mower, old: "cautions = [\"kick\"]\ntests    = [\"spark\"]\nclaims   = [\"spark-first\"]\nneeds    = [\"engine-cold\"]", new: "cautions = [\"kick\"]\ntests    = [\"spark\"]\nclaims   = [\"spark-first\"]\nneeds    = [\"engine-cold\", \"drained\"]", want: "state-gap@spark-check"},

	// Steps.
	{sample: washer, old: "Mine stands free on the workshop floor. If yours is under a worktop, it has to come forward.\n", new: "", want: "differs-unsaid@"},
	{sample: mower, old: "The plastic hood is off mine, so that you can see. Yours is held by two clips at the back.\n", new: "", want: "differs-unsaid@"},
	{sample: washer, old: `id    = "intro"`, new: "id    = \"intro\"\nonly_if = \"test:ohms fails\"", want: "detour-unreached@intro"},
	{sample: mower, old: `only_if = "test:spark fails"`, new: `only_if = "test:bowl fails"`, want: "detour-unreached@no-spark"},
	{sample: washer, old: `supplies  = ["gloves", "towels", "cup"]`, new: "supplies  = [\"gloves\", \"towels\", \"cup\"]\nsides     = [\"right\", \"left\"]", want: "side-unsaid@pump-out"},
	{sample: ebike, old: "say     = \"\"\"\nIf your paper", new: "note    = \"\"\"\nIf your paper", want: "step-silent@leaks"},
	{sample: ebike, old: "[publish]\n", new: "[publish]\nchapters_min = 1\nchapter_shortest = \"20m\"\n", want: "chapter-short@intro"},
	{sample: ebike, old: "parts     = [\"cap-seal\", \"fluid\"]\n", new: "parts     = [\"cap-seal\", \"fluid\"]\ndrop      = [\"cap-seal-fitted\"]\n", want: "shot-missing@close-it"},
	{sample: washer, old: `title  = "Two pins or three"`, new: `title  = "Listen to it first"`, want: "chapter-titles-alike@listen"},
	{sample: ebike, old: "Tug both tabs. They have to stay where they are.\n\"\"\"\n", new: "Tug both tabs. They have to stay where they are.\n\"\"\"\nsides = [\"front\", \"rear\"]\n", want: "side-unsaid@pads-in"},

	// People.
	{sample: van, old: `{ id = "helper", adult = true, from = "10:00", until = "11:00",`, new: `{ id = "helper", adult = true,`, want: "helper-unplanned@power-back"},
	{sample: ebike, old: `{ id = "helper", adult = true, from = "09:30", until = "15:00",`, new: `{ id = "helper", adult = true,`, want: "helper-unplanned@battery-off"},
	{sample: van, old: `adult = true, from`, new: `adult = false, from`, want: "bystander-near@both-legs bystander-near@power-back bystander-near@under-load", why: "the helper is in three steps"},
	{sample: ebike, old: `adult = true, from`, new: `adult = false, from`, want: "bystander-near@battery-off bystander-near@first-roll bystander-near@push-it-up", why: "the helper is in three steps"},
	{sample: van, old: "does  = \"key to on, engine off, fan to the top speed\"\nwhere = \"in the driver's seat, hands on the key and the knob\"\n\n[[step.cue]]\nwho   = \"helper\"\nwhen  = \"\\\"Fan off, key off\\\"\"", new: "does  = \"key to on, engine off, fan to the top speed\"\n\n[[step.cue]]\nwho   = \"helper\"\nwhen  = \"\\\"Fan off, key off\\\"\"", want: "helper-place@both-legs"},
	{sample: ebike, old: "where = \"at the handlebar, face beside the syringe and not over it\"\n", new: "", want: "helper-place@push-it-up"},
	{sample: van, old: "id       = \"motor-alone\"", new: "id       = \"motor-alone\"\npeople   = [\"helper\"]", want: "helper-uncued@motor-alone"},
	{sample: ebike, old: "id        = \"pads-in\"", new: "id        = \"pads-in\"\npeople    = [\"helper\"]", want: "helper-uncued@pads-in"},
	{sample: van, old: `from = "10:00", until = "11:00"`, new: `from = "14:30", until = "15:00"`, want: "day-impossible@person:helper"},

	// Publishing and waivers.
	{sample: washer, old: `title    = "Washer won't drain: test the pump before you buy one"`, new: `title    = "Washer won't drain and you have been told to buy a pump: please do watch this first, and test the old one"`, want: "title-long@"},
	{sample: mower, old: `title    = "Mower won't start in spring? Spark, petrol, then the jet"`, new: `title    = "Mower <won't> start in spring? Spark, petrol, then the jet"`, want: "forbidden-character@"},
	{sample: ebike, old: "[publish]\n", new: "[publish]\nchapters_min = 40\n", want: "chapters-few@"},
	{sample: washer, old: `running_max = "15m"`, new: `running_max = "6m"`, want: "running-long@"},
	{sample: mower, old: "[publish]\n", new: "[publish]\ndescription_max = 900\n", want: "description-long@"},
	{sample: van, old: "[publish]\n", new: "[[correction]]\nnow = \"25 A\"\n\n[publish]\n", want: "correction-undated@"},
	{sample: washer, old: "[publish]\n", new: "[[waiver]]\nrule = \"value-open\"\nat = \"spec:winding\"\n\n[publish]\n", want: "waiver-unexplained@"},
	{sample: washer, old: "[publish]\n", new: "[[waiver]]\nrule = \"value-open\"\nat = \"spec:winding\"\nwhy = \"the maker will not tell\"\nuntil = 2026-01-31\n\n[publish]\n", want: "waiver-expired@"},
	{sample: ebike, old: "[publish]\n", new: "[[waiver]]\nrule = \"torque-unsaid\"\nat = \"fastener:axle\"\nwhy = \"said in the intro\"\n\n[publish]\n", want: "waiver-unused@"},
	{sample: van, old: "[video]\n", new: "[video]\nlanguage = \"de\"\n", want: "language-unread@"},
	{sample: washer, old: `hazard = "water-electricity", say = "A wet floor`, new: `hazard = "water-electricity", signal = "notice", say = "A wet floor`, want: "caution-weak@caution:wet-floor"},
	{sample: ebike, old: `hazard = "critical-fastener", say`, new: `hazard = "critical-fastener", signal = "caution", say`, want: "caution-weak@caution:wheel-and-brake"},
	{sample: mower, old: `hazard = "exhaust-co", say`, new: `hazard = "exhaust-co", signal = "warning", say`, want: "caution-weak@caution:fumes"},
	{sample: washer, old: `say = "Wet hands and a mains plug can kill. Dry your hands and the floor before it goes in."`, new: `say = "Mind yourself here."`, want: "caution-incomplete@caution:dry-hands"},
	{sample: van, old: `say = "A headlamp bulb burns skin within seconds. Stand it in the tin, and hold it by the leads."`, new: `say = "Careful with that."`, want: "caution-incomplete@caution:hot-bulb"},
	{sample: mower, old: `ends      = ["fuel-open", "drained"]`, new: `ends      = ["fuel-open"]`, more: []string{"replaces = [\"sample-look\"]\n", "replaces = [\"sample-look\"]\n\n[[step.shot]]\nsize = \"wide\"\nof = \"the whole path\"\nsetup = \"path, low\"\nneeds = [\"not drained\"]\n", "of    = \"presenter beside the mower, cut grass behind\"\nsetup = \"wide-yard\"", "of    = \"presenter beside the mower, cut grass behind\"\nsetup = \"path, low\""}, want: "last-chance@jar-test"},

	// Cautions taken away.
	{sample: washer, old: `cautions = ["wet-floor", "panels-on", "drum"]`, new: `cautions = ["panels-on", "drum"]`, want: "caution-missing@listen", atLeast: true},
	{sample: washer, old: `cautions = ["wet-floor", "panels-on", "drum"]`, new: `cautions = ["wet-floor", "drum"]`, want: "caution-late@listen"},
	{sample: washer, old: `cautions = ["wet-floor", "panels-on", "drum"]`, new: `cautions = ["wet-floor", "panels-on"]`, want: "caution-missing@listen", atLeast: true},
	{sample: van, old: `cautions = ["rings", "battery-gas-acid"]`, new: `cautions = ["battery-gas-acid"]`, want: "caution-missing@battery-first", atLeast: true},
	{sample: ebike, old: `cautions = ["drive-off", "cells", "two-lift"]`, new: `cautions = ["drive-off", "two-lift"]`, want: "caution-missing@battery-off caution-missing@first-roll", why: "the pack is taken out in one step and put in again in the other"},
	{sample: ebike, old: "cautions  = [\"pad-dust\"]\n", new: "", want: "caution-missing@pads-in", atLeast: true},
	{sample: ebike, old: "cautions  = [\"wheel-and-brake\"]\n", new: "", want: "caution-missing@close-it caution-missing@pads-in caution-missing@pads-out caution-missing@push-it-up caution-missing@syringes-on caution-missing@wheel-in", atLeast: true, why: "it is the only word about fasteners of the brake, which all seven turn"},
	{sample: mower, old: `cautions = ["petrol", "hot-silencer"]`, new: `cautions = ["petrol"]`, want: "caution-missing@out-and-cold", atLeast: true},

	// States that are unsafe, waits, licences, closing checks.
	{sample: washer, old: `ends      = ["pump-plug-off", "covers-off"]`, new: `ends      = ["pump-plug-off"]`, more: []string{`title    = "Back where it lives"`, "title    = \"Back where it lives\"\nends     = [\"covers-off\"]"}, want: "state-unsafe@prove-it state-unsafe@push-back", why: "and the machine is on the mains and open in the step after"},
	{sample: van, old: `value = "3 min", source = "srs-sheet"`, new: `value = "3 min"`, want: "source-missing@spec:srs-wait wait-uncited@battery-off-again wait-uncited@glovebox-out", why: "the wait is quoted in both steps, and nobody says whose it is"},
	{sample: van, old: "tests    = [\"fuse\"]\nfuses    = [\"blower-fuse\"]\nclaims   = [\"legs\"]\nneeds    = [\"glovebox-out\"]\nduring   = [\"key-on\"]", new: "tests    = [\"fuse\"]\nfuses    = [\"blower-fuse\"]\nclaims   = [\"legs\"]\nneeds    = [\"glovebox-out\"]\nduring   = [\"key-on\", \"raised\"]", want: "caution-missing@both-legs occupied-raised@both-legs state-unsafe@both-legs", why: "it is raised on nothing, with the helper in it, and no word of warning"},
	{sample: ebike, old: "[[step]]\nid    = \"wrap-up\"", new: "[[step]]\nid = \"one-more\"\ntitle = \"One more part\"\nchapter = false\nparts = [\"cap-seal\"]\ndo = \"push the cap on\"\nsay = \"Push the cap on.\"\n\n[[step]]\nid    = \"wrap-up\"", want: "final-check-missing@one-more"},
	{sample: van, old: "screws at {resistor-screws.torque}, and the plug back on until it clicks.", new: "screws at {resistor-screws.torque}.", more: []string{"measure it, fit the new one, plug on\"", "measure it, fit the new one\"", "no wire across the opening, the motor plug home, and the yellow plugs just as we found them.", "no wire across the opening, and the yellow ones just as we found them."}, want: "connector-left-off@resistor-pack"},

	// Work that does not belong there.
	{sample: washer, old: "[[step]]\nid       = \"push-back\"", new: "[[step]]\ntitle = \"The gas pipe\"\nchapter = false\ndo = \"undo the gas pipe at the meter\"\nsay = \"Undo the gas pipe at the meter.\"\n\n[[step]]\nid       = \"push-back\"", want: "caution-missing@the-gas-pipe licence-missing@the-gas-pipe refit-unsafe@the-gas-pipe", why: "gas is warned of, left to others and tested for leaks"},
	{sample: washer, old: "[[step]]\nid       = \"push-back\"", new: "[[step]]\ntitle = \"Live reading\"\nchapter = false\nduring = [\"live\"]\ndo = \"measure the mains voltage at the live terminals with the power on\"\nsay = \"Measure the mains voltage at the live terminals, with the power on.\"\n\n[[step]]\nid       = \"push-back\"", want: "live-measure@live-reading"},
	{sample: van, old: "[[step]]\nid    = \"wrap-up\"", new: "[[step]]\ntitle = \"A quick link\"\nchapter = false\ndo = \"bridge the two pins of the blower relay with a piece of wire\"\nsay = \"Bridge the two pins of the relay with a piece of wire.\"\n\n[[step]]\nid    = \"wrap-up\"", want: "jumper-unfused@a-quick-link"},
}
