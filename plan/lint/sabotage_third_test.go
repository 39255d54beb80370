package lint_test

// thirdSabotages were written after the rules had been mended by the second,
// and run once before anything was mended by them. Of 25, 22 came exactly as
// written.
var thirdSabotages = []sabotage{
	{sample: van, old: `count = 2, torque = "1.5 N·m"`, new: `count = 2, torque = "1.5 mm"`, want: "value-wrong@fastener[3]"},
	{sample: van, old: `length = "0.4 m"`, new: `length = "0.4 Ω"`, want: "value-wrong@wire[2]"},
	{sample: washer, old: `value = "at most 2 min"`, new: `value = "at most 2 min", sorce = "sheet"`, want: "key-unknown@spec[7]"},
	{sample: mower, old: `number = "FK-1204", source = "parts-list"`, new: `number = "FK-1204"`, want: "source-missing@part:spark-plug"},
	{sample: ebike, old: `torque = "1 N·m", source = "bleed-sheet"`, new: `torque = "1 N·m"`, want: "source-missing@fastener:pad-pin"},
	{sample: mower, old: `says = "Petrol loses the part that lights first"`, new: `says = "Petrol looses the part that lights first"`, want: "claim-untested@claim:goes-stale"},
	{sample: van, old: `says = "The bulb makes the wire work for its living", evidence = ["test:load"]`, new: `says = "The bulb makes the wire work for its living"`, want: "claim-untested@claim:under-bulb"},
	{sample: van, old: "  { id = \"blower-fuse\", at = \"fuse 31\", rating = \"20 A\", form = \"regular blade\", colour = \"yellow\", protects = \"blower motor\", source = \"diagram\", variants = [\"late\"] },\n", new: "", want: "variant-gap@both-legs"},
	{sample: ebike, old: "  { id = \"port-screw\", what = \"port screw\", thread = \"M4\", head = \"socket\", drive = \"3 mm\", count = 1, torque = \"1.2 N·m\", source = \"bleed-sheet\", variants = [\"black-cap\"] },\n", new: "", want: "variant-gap@close-it"},
	{sample: washer, old: `I have the two-pin pump in this machine. Where the three-pin one is different, I will stop and show you on the bench.`, new: `Keep that in mind.`, want: "differs-unsaid@"},
	{sample: mower, old: `Mine is the primer carburettor. I show you the choke carburettor on the table.`, new: `Right, on we go.`, want: "" /* both carburettors are still told apart in the step */},
	{sample: washer, old: `cautions = ["hot-wash", "spill-slip"]`, new: `cautions = ["spill-slip"]`, want: "caution-unspoken@caution:hot-wash"},
	{sample: van, old: "cautions  = [\"hot-resistor\"]\n", new: "", want: "caution-unspoken@caution:hot-resistor"},
	{sample: mower, old: "cautions = [\"spray\"]\n", new: "", want: "caution-missing@clean-jet", atLeast: true},
	{sample: van, old: `hazard = "unfused-jumper", say`, new: `hazard = "unfused-jumper", signal = "notice", say`, want: "caution-weak@caution:own-fuse"},
	{sample: ebike, old: `drive = "7 mm", count = 1, torque = "5 N·m"`, new: `drive = "7 mm", count = 1, torque = "50 N·m"`, want: "torque-unit-slip@fastener:nipple"},
	{sample: mower, old: `value = "0.7..0.8 mm"`, new: `value = "0.7..0.8 in"`, want: "spec-implausible@spec:gap"},
	{sample: van, old: `value = "55 W"`, new: `value = "5500 W"`, want: "spec-implausible@spec:test-bulb"},
	{sample: washer, old: "fail       = \"stop: unplug it and ask the maker's service line\"\n", new: "", want: ""},
	{sample: ebike, old: "pass       = \"test:pads\"\nfail       = \"step:leaks\"\n", new: "pass       = \"test:pads\"\n", want: ""},
	{sample: mower, old: `thread = "M14x1.25", head = "spark plug", drive = "21 mm"`, new: `thread = "M14x1.25", head = "spark plug", drive = "24 mm"`, want: "tool-missing@fastener:plug-seat"},
	{sample: ebike, old: `who   = "helper"
when  = "\"and push\""`, new: `who   = "helpr"
when  = "\"and push\""`, want: "id-unknown@step[9]"},
	{sample: van, old: `until = "11:00", wears`, new: `until = "09:30", wears`, want: "day-impossible@person:helper"},
	{sample: washer, old: `ends     = ["unplugged", "water-off", "discharged", "proven-dead", "drained"]`, new: `ends     = ["water-off", "discharged", "proven-dead", "drained"]`, want: "refit-missing@make-safe"},
	{sample: mower, old: "title    = \"Mower won't start in spring? Spark, petrol, then the jet\"\n", new: "", want: "key-missing@video"},
}
