package lint_test

// seventhSabotages, and the eighth and ninth, were written by the documents of
// the language and the rules alone, 180 with what they have to raise, before
// one of them was run. Of these 60, 48 came exactly as written; six of the rest
// were the rules' fault, six the list's.
var seventhSabotages = []sabotage{
	// The film, where it is published, the day.
	{sample: washer, old: "plan = 1\n", new: "plan = 3\n", want: "version-unknown@plan"},
	{sample: van, old: `title    = "Van blower dead? Find out: fuse, wire or motor"`, new: `title    = ""`, want: "key-missing@video"},
	{sample: ebike, old: `trade    = "bicycle"`, new: "trade    = \"bicycle\"\nlanguage = \"de\"", want: "language-unread@"},
	{sample: mower, old: `running_max = "15m"`, new: `running_max = "5m"`, want: "running-long@"},
	{sample: washer, old: `running_max = "15m"`, new: "running_max = \"15m\"\ntitle_max = 20", want: "title-long@"},
	{sample: van, old: `present  = ["low-voltage", "airbag", "motion", "heat"]`, new: `present  = ["low-voltage", "airbag", "motion", "heet"]`, want: "value-wrong@video"},
	{sample: ebike, old: `end    = "15:00"`, new: `end    = "09:00"`, want: "day-impossible@"},
	{sample: mower, old: `breaks = ["12:30 45m"]`, new: `breaks = ["12:30"]`, want: "value-wrong@shoot"},
	{sample: washer, old: `has    = ["pump-open"]`, new: `has    = ["pump-opne"]`, want: "id-unknown@shoot"},
	{sample: van, old: `tried  = 2026-09-24`, new: `tried  = "last week"`, want: "value-wrong@shoot"},
	{sample: washer, old: `begins = ["drum-full"]`, new: `begins = []`, want: "state-never-started@step[2] state-never-started@step[5]", why: "two steps need a full drum"},
	{sample: van, old: `{ id = "presenter", wears = ["safety goggles"] }`, new: `{ id = "helper", wears = ["safety goggles"] }`, want: "id-duplicate@shoot"},

	// Facts.
	{sample: ebike, old: `number = "CB-1142", count = 1`, new: `number = "CB-1142", count = -1`, want: "value-wrong@part[2]"},
	{sample: washer, old: `drive = "8 mm", count = 3`, new: `drive = "8 mm", count = "three"`, want: "type-wrong@fastener[1]"},
	{sample: mower, old: `thread = "M14x1.25"`, new: `thread = "M14x12.5"`, want: "spec-implausible@fastener:plug-seat"},
	{sample: washer, old: `count = 3, torque = "3 N·m", source`, new: `count = 3, source`, want: "quote-unknown@step[13]"},
	{sample: van, old: `drive = "8 mm", count = 3, torque = "3 N·m"`, new: `drive = "8 mm", count = 3, torque = "30 N·m"`, want: "torque-unit-slip@fastener:motor-screws"},
	{sample: mower, old: `torque = "6 N·m", source = "sheet"`, new: `torque = "6 N·m", source = "shet"`, want: "id-unknown@fastener[1]"},
	{sample: ebike, old: `kind = "handbook", date = 2020-02-01`, new: `kind = "hanbook", date = 2020-02-01`, want: "value-wrong@source[3]"},
	{sample: washer, old: "  { id = \"log\", title = \"Our readings on the old pump and the new one\", where = \"workshop log\", kind = \"own-measurement\", date = 2026-10-02 },\n", new: "", want: "id-unknown@spec[2]"},
	{sample: washer, old: `value = "5 min", source = "sheet"`, new: `value = "5", source = "sheet"`, want: "value-wrong@spec[3]"},
	{sample: washer, old: `value = "at most 0.5 Ω"`, new: `value = "at most 5 Ω"`, want: "spec-implausible@spec:tips"},
	{sample: van, old: `tell = "a fan knob with four clicks"`, new: `tel = "a fan knob with four clicks"`, want: "key-unknown@variant[0] quote-unknown@step[1]", why: "the tell is quoted"},
	{sample: ebike, old: `number = "CB-0610", source = "bleed-sheet", variants = ["green-cap"]`, new: `number = "CB-0610", source = "bleed-sheet", variants = ["green-cup"]`, want: "id-unknown@part[0]"},
	{sample: mower, old: `step = "which-carb" }`, new: `step = "which-card" }`, want: "id-unknown@differs[1]"},
	{sample: van, old: `rating = "25 A", form = "regular blade"`, new: `rating = "25 A", form = "regular blad"`, want: "" /* it is read as a regular blade all the same */},
	{sample: van, old: `to_pin = "pin 1", colour = "violet-blue"`, new: `colour = "violet-blue"`, want: "quote-unknown@step[1] quote-unknown@step[7]", why: "two steps quote it"},
	{sample: van, old: `colour = "brown-white", section = "4 mm²"`, new: `colour = "brown-white", section = "0.5 mm²"`, want: "fuse-wire@fuse:blower-fuse"},
	{sample: mower, old: `value = "0.5 L"`, new: `value = "500 L"`, want: "spec-implausible@spec:top-up"},
	{sample: ebike, old: `value = "at least 1 mm"`, new: `value = "at least 10 mm"`, want: "spec-implausible@spec:lining"},

	// Tests, claims, cautions.
	{sample: washer, old: `checks     = ["blocked", "hose"]`, new: `checks     = ["blockd", "hose"]`, want: "id-unknown@test[1]"},
	{sample: van, old: `pass       = "test:spin"`, new: `pass       = "test:spni"`, want: "id-unknown@test[3]"},
	{sample: mower, old: "sees  = \"not one cough\"\n", new: "", want: "key-missing@test[0]"},
	{sample: ebike, old: `work       = "6m"`, new: `work       = "6"`, want: "value-wrong@test[5]"},
	{sample: washer, old: `evidence = ["test:gravity"]`, new: `evidence = ["test:gravty"]`, want: "id-unknown@claim[2]"},
	{sample: van, old: `says = "a meter across its pins tells you nothing useful", evidence = ["source:sheet"]`, new: `says = "a meter across its pins tells you nothing useful"`, want: "claim-untested@claim:module-ohms"},
	{sample: mower, old: `hazard = "exhaust-co", say`, new: `hazard = "exhaust-co", signal = "dangerous", say`, want: "value-wrong@caution[1]"},
	{sample: ebike, old: `hazard = "hot-surface"`, new: `hazard = "hot-surfice"`, want: "value-wrong@caution[3]"},
	{sample: washer, old: `say = "A turning drum can break an arm. Door shut and panels on until it stands still."`, new: `say = "Mind the drum."`, want: "caution-incomplete@caution:drum"},
	{sample: mower, old: `Leave it for {cool-down} before you touch that side.`, new: `Leave it for 5 min before you touch that side.`, want: "number-conflict@caution:hot-silencer"},
	{sample: van, old: "cautions  = [\"battery-short\", \"airbag\"]\nneeds ", new: "cautions  = [\"battery-short\"]\nneeds ", want: "" /* the step says it in its own words before the action: battery off, wait, an airbag is near */},
	{sample: ebike, old: "cautions  = [\"spirit\"]\n", new: "", more: []string{"cautions  = [\"fluid-on-pads\"]\nneeds     = [\"cooled\"", "cautions  = [\"fluid-on-pads\", \"spirit\"]\nneeds     = [\"cooled\""}, want: "" /* the fluid's caution is of the same family and still lasts */},
	{sample: van, old: `say = "A headlamp bulb burns skin within seconds. Stand it in the tin, and hold it by the leads.", `, new: ``, want: ""},
	{sample: washer, old: `say_as = "P H two"`, new: `say_as = 2`, want: "type-wrong@term[1]"},

	// Steps, their shots and cues.
	{sample: mower, old: "title = \"Bulb or lever\"\n", new: "", want: "key-missing@step[1]"},
	{sample: van, old: "needs     = [\"glovebox-out\"]\nends      = [\"battery-off\"", new: "needs     = [\"glovebox-uot\"]\nends      = [\"battery-off\"", want: "state-never-started@step[5]"},
	{sample: ebike, old: `ends      = ["pads-out"]`, new: `ends      = ["pads-uot"]`, want: "refit-missing@pads-out"},
	{sample: washer, old: `tools    = ["jug", "torch"]`, new: `tools    = ["jug", "troch"]`, want: "id-unknown@step[14]"},
	{sample: mower, old: `only_if  = "test:bowl fails"`, new: `only_if  = "test:bowl"`, want: "value-wrong@step[12]"},
	{sample: van, old: "size  = \"close-up\"\nof    = \"ribbon at the vent", new: "size  = \"closeup\"\nof    = \"ribbon at the vent", want: "value-wrong@step[15]"},
	{sample: ebike, old: "takes = 3\nreplaces = [\"roll-look\"]", new: "takes = 0\nreplaces = [\"roll-look\"]", want: "value-wrong@step[14]"},
	{sample: washer, old: "kind  = \"insert\"\napart = true\nsound", new: "kind  = \"photo\"\napart = true\nsound", want: "value-wrong@step[2]"},
	{sample: mower, old: "setup = \"engine\"\nneeds = [\"bowl-off\"]", new: "setup = \"engne\"\nneeds = [\"bowl-off\"]", want: "id-unknown@step[10]"},
	{sample: van, old: `needs = ["not glovebox-out"]`, new: `needs = ["not glovebox-uot"]`, want: "state-never-started@step[4]"},
	{sample: ebike, old: `replaces = ["hold-display"]`, new: `replaces = ["hold-dispaly"]`, want: "shot-unknown@hold-it"},
	{sample: washer, old: `card  = "Plug out and in sight"`, new: "card  = \"Plug out and in sight\"\nwork = \"3m\"", want: "key-unknown@step[3]"},
	{sample: ebike, old: "when  = \"\\\"two people again\\\"\"", new: "whn   = \"\\\"two people again\\\"\"", want: "key-unknown@step[14]"},
	{sample: van, old: "who   = \"helper\"\nneeds = [\"not battery-off\"]", new: "who   = \"helpr\"\nneeds = [\"not battery-off\"]", want: "id-unknown@step[5]"},
	{sample: mower, old: `I have needed it once in twenty years, and once was plenty.`, new: `Petrol gives off vapour down to minus 43 degrees.`, want: "number-loose@out-and-cold"},
	{sample: washer, old: unplugPump, new: "", more: []string{"# A detour: only for the viewer whose test ended that way.\n[[step]]\nid       = \"feed\"", unplugPump + "[[step]]\nid       = \"feed\""}, want: "state-gap@measure"},
}

// unplugPump is a whole step of the washer, to be moved.
const unplugPump = `[[step]]
id       = "unplug-pump"
title    = "Take the plug off the pump"
needs    = ["covers-off", "proven-dead"]
starts   = ["pump-plug-off"]
do       = "photograph the plug and the wires, press the catch and pull the plug off the pump"
work     = "2m"
say      = """
Take a picture first, with the wires and the clips in it. You will want it when you close up.
Thumb on the catch, and pull on the plug, not on the wires.
"""

[[step.shot]]
size  = "close-up"
of    = "thumb on the catch, plug coming off the pump"
setup = "floor"
takes = 2

`
