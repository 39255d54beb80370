package lint_test

// completenessSabotages leave something out, or leave it unused or undecided.
var completenessSabotages = []sabotage{
	{sample: van, old: "screws at {resistor-screws.torque}, and the plug back on until it clicks.", new: "screws at {resistor-screws.torque}.", more: []string{"measure it, fit the new one, plug on\"", "measure it, fit the new one\"", "no wire across the opening, the motor plug home, and the yellow plugs just as we found them.", "no wire across the opening, and the yellow ones just as we found them."}, want: "connector-left-off@resistor-pack"},
	{sample: mower, old: "Fuel line back on, right up to the collar, and its clip after it. Tug it.\n", new: "", more: []string{`do        = "fuel line and clip back on, fresh petrol`, `do        = "fresh petrol`}, want: "connector-left-off@jar-test"},
	{sample: van, old: `from = "10:00", until = "11:00"`, new: `from = "14:30", until = "15:00"`, want: "day-impossible@person:helper"},
	{sample: van, old: `until = "11:00", wears`, new: `until = "09:30", wears`, want: "day-impossible@person:helper"},
	{sample: washer, old: `end    = "14:30"`, new: `end    = "09:00"`, want: "day-impossible@"},
	{sample: washer, old: `work      = "8m..12m..25m"`, new: `work      = "8h..12h..25h"`, want: "day-impossible@pump-out"},
	{sample: ebike, old: `end    = "15:00"`, new: `end    = "09:00"`, want: "day-impossible@"},
	{sample: van, old: `from = "10:00", until = "11:00"`, new: `from = "12:00", until = "11:00"`, want: "day-impossible@person:helper"},
	{sample: van, old: `end    = "14:00"`, new: `end    = "10:30"`, want: "day-impossible@"},
	{sample: washer, old: `id    = "intro"`, new: "id    = \"intro\"\nonly_if = \"test:ohms fails\"", want: "detour-unreached@intro"},
	{sample: mower, old: `only_if = "test:spark fails"`, new: `only_if = "test:bowl fails"`, want: "detour-unreached@no-spark"},
	{sample: mower, old: `only_if  = "test:bowl fails"`, new: `only_if  = "test:tight fails"`, want: "detour-unreached@clean-jet"},
	{sample: van, old: `only_if   = "test:speeds top-only"`, new: `only_if   = "test:blows fails"`, want: "detour-unreached@resistor-pack"},
	{sample: ebike, old: "[[step]]\nid    = \"wrap-up\"", new: "[[step]]\nid = \"one-more\"\ntitle = \"One more part\"\nchapter = false\nparts = [\"cap-seal\"]\ndo = \"push the cap on\"\nsay = \"Push the cap on.\"\n\n[[step]]\nid    = \"wrap-up\"", want: "final-check-missing@one-more"},
	{sample: van, old: `{ id = "helper", adult = true, from = "10:00", until = "11:00",`, new: `{ id = "helper", adult = true,`, want: "helper-unplanned@power-back"},
	{sample: ebike, old: `{ id = "helper", adult = true, from = "09:30", until = "15:00",`, new: `{ id = "helper", adult = true,`, want: "helper-unplanned@battery-off"},
	{sample: mower, old: `Every tool off the deck,`, new: `Have somebody hold the mower. Every tool off the deck,`, want: "helper-unplanned@plug-in"},
	{sample: mower, old: `do       = "press the bulb in and let it come back`, new: `do       = "two people tilt the mower, press the bulb in and let it come back`, want: "helper-unplanned@bulb-check"},
	{sample: mower, old: `The plug goes in by hand, three turns at least`, new: `Ask a neighbour to hold the deck. The plug goes in by hand, three turns at least`, want: "helper-unplanned@plug-in"},
	{sample: ebike, old: "  { id = \"helper\", adult = true, from = \"09:30\", until = \"15:00\", wears = [\"safety goggles\", \"nitrile gloves\"] },\n", new: "", want: "helper-unplanned@battery-off" /* once a plan */},
	{sample: mower, old: `Leave it for {cool-down} before you touch that side.`, new: `Leave it for {cool-down}, then two people lift the mower by the far side.`, want: "helper-unplanned@out-and-cold"},
	{sample: mower, old: `Leave it for {cool-down} before you touch that side.`, new: `Leave it for {cool-down}. Two people, and roll it: don't lift.`, want: "helper-unplanned@out-and-cold"},
	{sample: mower, old: `ends      = ["fuel-open", "drained"]`, new: `ends      = ["fuel-open"]`, more: []string{"replaces = [\"sample-look\"]\n", "replaces = [\"sample-look\"]\n\n[[step.shot]]\nsize = \"wide\"\nof = \"the whole path\"\nsetup = \"path, low\"\nneeds = [\"not drained\"]\n", "of    = \"presenter beside the mower, cut grass behind\"\nsetup = \"wide-yard\"", "of    = \"presenter beside the mower, cut grass behind\"\nsetup = \"path, low\""}, want: "last-chance@jar-test"},
	{sample: van, old: `ends      = ["battery-off", "srs-waited", "key-off"]`, new: `ends      = ["srs-waited", "key-off"]`, want: "last-chance@power-back" /* it can still be made before the battery comes off */},
	{sample: van, old: `number = "OD-77310", source = "parts-list", variants = ["early"] },`, new: "number = \"OD-77310\", source = \"parts-list\", variants = [\"early\"] },\n  { id = \"relay\", name = \"blower relay\", number = \"OD-77001\", source = \"parts-list\" },", want: "part-unused@part:relay"},
	{sample: ebike, old: `parts     = ["cap-seal", "fluid"]`, new: `parts     = ["fluid"]`, want: "part-unused@part:cap-seal"},
	{sample: washer, old: `  { id = "seal", name = "pump seal ring"`, new: "  { id = \"belt\", name = \"drive belt\", number = \"MB-1001\", source = \"sheet\" },\n  { id = \"seal\", name = \"pump seal ring\"", want: "part-unused@part:belt"},
	{sample: mower, old: "parts    = [\"bulb\"]\n", new: "", more: []string{`it ought to draw petrol: {bulb}, and it pushes in with a thumb.`, `it ought to draw petrol.`}, want: "part-unused@part:bulb"},
	{sample: washer, old: `ends      = ["pump-plug-off", "covers-off"]`, new: `ends      = ["covers-off"]`, want: "refit-missing@unplug-pump"},
	{sample: washer, old: "ends      = [\"old-pump-out\"]\n", new: "", want: "refit-missing@pump-out"},
	{sample: washer, old: `ends     = ["unplugged", "water-off", "discharged"`, new: `ends     = ["unplugged", "discharged"`, want: "refit-missing@make-safe"},
	{sample: van, old: `ends      = ["glovebox-out", "battery-off", "srs-waited", "key-off"]`, new: `ends      = ["battery-off", "srs-waited", "key-off"]`, want: "refit-missing@glovebox-out"},
	{sample: ebike, old: "ends      = [\"brake-open\"]\n", new: "", want: "refit-missing@syringes-on"},
	{sample: ebike, old: "ends      = [\"wheel-out\"]\n", new: "", want: "refit-missing@wheel-out"},
	{sample: mower, old: `ends      = ["plug-out", "spark-off"]`, new: `ends      = ["spark-off"]`, want: "refit-missing@lead-off"},
	{sample: mower, old: `ends      = ["bowl-off", "filter-off"]`, new: `ends      = ["bowl-off"]`, want: "refit-missing@filter-look"},
	{sample: ebike, old: `ends     = ["in-stand", "battery-off", "cooled"]`, new: `ends     = ["in-stand", "cooled"]`, want: "refit-missing@battery-off"},
	{sample: mower, old: `ends      = ["fuel-open", "drained"]`, new: `ends      = ["drained"]`, want: "refit-missing@jar-test"},
	{sample: van, old: `ends      = ["motor-out", "motor-plug-off"]`, new: `ends      = ["motor-out"]`, want: "refit-missing@under-load"},
	{sample: washer, old: `ends     = ["unplugged", "water-off", "discharged", "proven-dead", "drained"]`, new: `ends     = ["water-off", "discharged", "proven-dead", "drained"]`, want: "refit-missing@make-safe"},
	{sample: washer, old: "fasteners = [\"panel-screws\"]\ntools     = [\"torque-driver\"]\n", new: "", more: []string{`bottom edge in, and the four screws back, {panel-screws.torque}.`, `bottom edge in.`, `panel on its hooks, four screws, kick plate`, `panel on its hooks, kick plate`}, want: "refit-missing@open-up"},
	{sample: ebike, old: `fasteners = ["axle", "caliper-bolts", "lever-clamp"]`, new: `fasteners = ["caliper-bolts", "lever-clamp"]`, more: []string{"Torque wrench on the axle: {axle.torque}. Stop at the click.\n", "", `axle through from the left.`, `and it sits.`, `wheel in, axle to its torque, loosen`, `wheel in, loosen`, `of    = "torque wrench on the axle, disc clean between the pads"`, `of    = "disc clean between the pads"`}, want: "refit-missing@wheel-out"},
	{sample: van, old: `fasteners = ["glovebox-screws", "earth-clamp"]`, new: `fasteners = ["earth-clamp"]`, more: []string{`Glovebox up, sides in past the stops, and the four screws, {glovebox-screws.torque}.`, `Glovebox up, sides in past the stops.`, `glovebox up past its stops, four screws, everyone out`, `glovebox up past its stops, everyone out`}, want: "refit-missing@glovebox-out" /* what never goes back wants no torque */},
	{sample: ebike, old: `ends      = ["pads-out"]`, new: `ends      = ["pads-uot"]`, want: "refit-missing@pads-out"},
	{sample: ebike, old: `ends     = ["in-stand", "battery-off", "cooled"]`, new: `ends     = ["battery-off", "cooled"]`, want: "refit-missing@battery-off"},
	{sample: ebike, old: "parts     = [\"cap-seal\", \"fluid\"]\n", new: "parts     = [\"cap-seal\", \"fluid\"]\ndrop      = [\"cap-seal-fitted\"]\n", want: "shot-missing@close-it"},
	{sample: washer, old: `needs = ["covers-off", "not pump-plug-off"]`, new: `needs = ["not covers-off", "pump-plug-off"]`, want: "shot-missing@open-up state-gap@open-up", why: "the state it needs begins a step later, and never without the other"},
	{sample: washer, old: "claims   = [\"open-winding\"]\n", new: "claims   = [\"open-winding\"]\ndrop     = [\"ohms-display\", \"ohms-display-2\"]\n", more: []string{"replaces = [\"ohms-display-2\"]\n", "", "of    = \"meter display and probe tips on the old pump\"", "of    = \"presenter\"", "of    = \"meter display and probe tips on the new pump: a good reading\"", "of    = \"the new pump\""}, want: "shot-missing@measure shot-missing@measure shot-missing@measure", why: "one for each reading and one for the way they are taken"},
	{sample: van, old: `drop      = ["wide-bench"] `, new: `drop      = ["wide-bnech"] `, want: "shot-unknown@motor-out"},
	{sample: ebike, old: `replaces = ["roll-look"]`, new: `replaces = ["roll-lock"]`, want: "shot-unknown@first-roll"},
	{sample: ebike, old: "drop     = [\"wide\"]\nvariants", new: "drop     = [\"wied\"]\nvariants", want: "shot-unknown@dot-port"},
	{sample: ebike, old: `replaces = ["hold-display"]`, new: `replaces = ["hold-dispaly"]`, want: "shot-unknown@hold-it"},
	{sample: washer, old: `drop      = ["wide-behind"]`, new: `drop      = ["wide-behnd"]`, want: "shot-unknown@close-the-front"},
	{sample: washer, old: `replaces = ["drips-look"]`, new: `replaces = ["drips-loko"]`, want: "shot-unknown@drip-check"},
	{sample: washer, old: `supplies  = ["gloves", "towels", "cup"]`, new: "supplies  = [\"gloves\", \"towels\", \"cup\"]\nsides     = [\"right\", \"left\"]", want: "side-unsaid@pump-out"},
	{sample: ebike, old: "Tug both tabs. They have to stay where they are.\n\"\"\"\n", new: "Tug both tabs. They have to stay where they are.\n\"\"\"\nsides = [\"front\", \"rear\"]\n", want: "side-unsaid@pads-in"},
	{sample: mower, old: `ends     = ["engine-cold"]`, new: `ends     = ["engine-cold", "hood-off"]`, want: "state-gap@first-start"},
	{sample: washer, old: `needs    = ["drum-full"]`, new: `needs    = ["drum-full", "unplugged"]`, want: "state-gap@listen"},
	{sample: ebike, old: `needs    = ["battery-off", "in-stand"]
do       = "pull the lever`, new: `needs    = ["battery-off", "in-stand", "wheel-out"]
do       = "pull the lever`, want: "state-gap@squeeze-it"},
	{sample: mower, old: "cautions = [\"kick\"]\ntests    = [\"spark\"]\nclaims   = [\"spark-first\"]\nneeds    = [\"engine-cold\"]", new: "cautions = [\"kick\"]\ntests    = [\"spark\"]\nclaims   = [\"spark-first\"]\nneeds    = [\"engine-cold\", \"drained\"]", want: "state-gap@spark-check"},
	{sample: van, old: `needs    = ["glovebox-out", "motor-plug-off"]`, new: `needs    = ["glovebox-out", "motor-plug-off", "motor-out"]`, want: "state-gap@motor-alone"},
	{sample: mower, old: "starts   = [\"drained\"]\n", new: "", more: []string{"id       = \"clean-jet\"\n", "id       = \"clean-jet\"\nstarts   = [\"drained\"]\n"}, want: "state-gap@bowl-off"},
	{sample: ebike, old: "needs    = [\"battery-off\", \"in-stand\"]\nsupplies = [\"towels\", \"strap\"]", new: "needs    = [\"battery-off\", \"in-stand\", \"pads-out\"]\nsupplies = [\"towels\", \"strap\"]", want: "state-gap@hold-it"},
	{sample: washer, old: "needs     = [\"unplugged\"]\nends      = [\"pump-plug-off\", \"covers-off\"]", new: "needs     = [\"unplugged\", \"drum-full\"]\nends      = [\"pump-plug-off\", \"covers-off\"]", want: "state-gap@close-the-front"},
	{sample: washer, old: unplugPump, new: "", more: []string{"# A detour: only for the viewer whose test ended that way.\n[[step]]\nid       = \"feed\"", unplugPump + "[[step]]\nid       = \"feed\""}, want: "state-gap@measure"},
	{sample: van, old: "needs     = [\"battery-off\", \"srs-waited\"]\nends", new: "needs     = [\"battery-off\", \"srs-waited\", \"motor-out\"]\nends", want: "state-gap@close-the-dash"},
	{sample: mower, old: "ends     = [\"engine-cold\"]\n", new: "ends     = [\"engine-cold\"]\nneeds    = [\"bowl-off\"]\n", want: "state-gap@first-start"},
	{sample: van, old: "needs    = [\"glovebox-out\"]\nstarts   = [\"motor-plug-off\"]", new: "needs    = [\"glovebox-out\", \"motor-out\"]\nstarts   = [\"motor-plug-off\"]", want: "state-gap@under-load"},
	{sample: washer, old: `ends     = ["unplugged", "water-off", "discharged", "proven-dead", "drained"]`, new: `ends     = ["unplugged", "water-off", "discharged", "proven-dead", "drained"]
needs    = ["covers-off"]`, want: "state-gap@prove-it"},
	{sample: mower, old: `ends     = ["engine-cold"]`, new: `ends     = ["engine-cld"]`, want: "state-misspelt@first-start"},
	{sample: washer, old: "during   = [\"running\"]\ndo       = \"door shut", new: "during   = [\"runing\"]\ndo       = \"door shut", want: "state-misspelt@listen"},
	{sample: ebike, old: "say     = \"\"\"\nIf your paper", new: "note    = \"\"\"\nIf your paper", want: "step-silent@leaks"},
	{sample: ebike, old: "say      = \"\"\"\nOn the black-cap lever", new: "note     = \"\"\"\nOn the black-cap lever", want: "step-silent@dot-port"},
	{sample: mower, old: `  { id = "rags",`, new: "  { id = \"string\", name = \"nylon line\" },\n  { id = \"rags\",", want: "supply-unused@supply:string"},
	{sample: ebike, old: `supplies  = ["gloves", "towels", "bag"]`, new: `supplies  = ["gloves", "towels"]`, want: "supply-unused@supply:bag"},
	{sample: van, old: `supplies  = ["gloves", "tape", "rag"]`, new: `supplies  = ["gloves", "tape"]`, want: "supply-unused@supply:rag"},
	{sample: ebike, old: `"alcohol", "bottle"]`, new: `"alcohol"]`, want: "supply-unused@supply:bottle"},
	{sample: ebike, old: `name = "T10 screwdriver"`, new: `name = "T8 screwdriver"`, more: []string{`"7 mm", "T10"]`, `"7 mm"]`}, want: "tool-missing@fastener:port-screw"},
	{sample: mower, old: `name = "T20 screwdriver"`, new: `name = "T15 screwdriver"`, want: "tool-missing@fastener:filter-screw"},
	{sample: van, old: `name = "T20 screwdriver"`, new: `name = "T15 screwdriver"`, more: []string{`"10 mm", "T20", "T25"]`, `"10 mm", "T25"]`}, want: "tool-missing@fastener:resistor-screws"},
	{sample: washer, old: `name = "PH2 screwdriver"`, new: `name = "PH1 screwdriver"`, more: []string{`drives = ["8 mm", "PH2"]`, `drives = ["8 mm"]`}, want: "tool-missing@fastener:panel-screws"},
	{sample: mower, old: `thread = "M14x1.25", head = "spark plug", drive = "21 mm"`, new: `thread = "M14x1.25", head = "spark plug", drive = "24 mm"`, want: "tool-missing@fastener:plug-seat"},
	{sample: mower, old: `name = "21 mm spark plug socket with a ratchet"`, new: `name = "19 mm spark plug socket with a ratchet"`, more: []string{`drives = ["10 mm", "21 mm"]`, `drives = ["10 mm"]`}, want: "tool-missing@fastener:plug-seat"},
	{sample: van, old: `name = "10 mm spanner"`, new: `name = "11 mm spanner"`, more: []string{`drives = ["8 mm", "10 mm", "T20", "T25"]`, `drives = ["8 mm", "T20", "T25"]`}, want: "tool-missing@fastener:earth-clamp"},
	{sample: ebike, old: `drive = "6 mm", count = 1, torque = "12 N·m"`, new: `drive = "16 mm", count = 1, torque = "12 N·m"`, want: "tool-missing@fastener:axle" /* axles follow no table of drives */},
	{sample: washer, old: `{ id = "nut-driver", name = "8 mm nut driver" }`, new: `{ id = "nut-driver", name = "9 mm nut driver" }`, more: []string{`drives = ["8 mm", "PH2"]`, `drives = ["PH2"]`}, want: "tool-missing@fastener:pump-screws"},
	{sample: van, old: `{ id = "t25", name = "T25 screwdriver" }`, new: `{ id = "t25", name = "T27 screwdriver" }`, more: []string{`"T20", "T25"]`, `"T20"]`}, want: "tool-missing@fastener:glovebox-screws"},
	{sample: mower, old: `name = "21 mm spark plug socket with a ratchet"`, new: `name = "16 mm spark plug socket with a ratchet"`, more: []string{`drives = ["10 mm", "21 mm"]`, `drives = ["10 mm"]`}, want: "tool-missing@fastener:plug-seat"},
	{sample: washer, old: `  { id = "torch", name = "torch" },`, new: "  { id = \"torch\", name = \"torch\" },\n  { id = \"saw\", name = \"junior hacksaw\" },", want: "tool-unused@tool:saw"},
	{sample: ebike, old: `  { id = "pliers",`, new: "  { id = \"vice\", name = \"small vice\" },\n  { id = \"pliers\",", want: "tool-unused@tool:vice"},
	{sample: mower, old: `  { id = "torch", name = "LED torch" },`, new: "  { id = \"torch\", name = \"LED torch\" },\n  { id = \"strap-wrench\", name = \"strap wrench\" },", want: "tool-unused@tool:strap-wrench"},
	{sample: mower, old: `instrument = "spark-tester"`, new: `instrument = "ruler"`, want: "tool-unused@tool:spark-tester"},
	{sample: washer, old: `Now the torque driver, set to {pump-screws.torque}, and stop at the click.`, new: `Now the torque driver, and stop at the click.`, want: "torque-unsaid@fastener:pump-screws"},
	{sample: ebike, old: `one and then the other, {caliper-bolts.torque}.`, new: `one and then the other.`, want: "torque-unsaid@fastener:caliper-bolts"},
	{sample: mower, old: `Then the torque wrench: {plug-seat.torque}.`, new: `Then nip it up.`, want: "torque-unsaid@fastener:plug-seat"},
	{sample: van, old: `then the torque wrench: {motor-screws.torque}.`, new: `then the nut driver.`, want: "torque-unsaid@fastener:motor-screws"},
	{sample: van, old: `{glovebox-screws.torque}.`, new: `done up.`, want: "torque-unsaid@fastener:glovebox-screws"},
	{sample: ebike, old: `and so is its torque: {port-screw.torque}.`, new: `and so is its torque: 0.7 newton metres.`, want: "torque-unsaid@fastener:port-screw variant-gap@close-it", why: "a figure that is not quoted is one version's, and the torque is then not the fastener's"},
	{sample: ebike, old: `and its clamp to {lever-clamp.torque}.`, new: `and its clamp tight.`, want: "torque-unsaid@fastener:lever-clamp"},
	{sample: washer, old: `set to {pump-screws.torque}, and stop at the click.`, new: `set to {panel-screws.torque}, and stop at the click.`, want: "torque-unsaid@fastener:pump-screws"},
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
