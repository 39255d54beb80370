package lint_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fixslate/plan/diag"
	"fixslate/plan/lint"
)

// told is a plan of narration alone: a subject, and a step for each line.
func told(subject string, lines ...string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "[video]\ntitle = \"How to mend it\"\nsubject = %q\n", subject)
	for i, line := range lines {
		fmt.Fprintf(&b, "[[step]]\ntitle = \"Part %d\"\nsay = %q\n", i+1, line)
	}
	return b.String()
}

// fact is a plan of a van with one fact.
func fact(what, value string) string {
	return fmt.Sprintf("spec = [{ id = \"f\", what = %q, value = %q, verify = \"the maker\" }]\n%s", what, value, told("van", "It is {f}."))
}

// chain is a plan of three tests that pass on as told.
func chain(first, second, third string) string {
	return fmt.Sprintf(`cause = [{ id = "stuck", what = "stuck fan" }]
test = [
  { id = "one", question = "Does it turn?", instrument = "eyes", expect = "it turns", checks = ["stuck"], pass = %q, fail = "stop: clean it" },
  { id = "two", question = "Does it hum?", instrument = "ears", expect = "it hums", checks = ["stuck"], pass = %q, fail = "stop: clean it" },
  { id = "three", question = "Does it blow?", instrument = "hands", expect = "it blows", checks = ["stuck"], pass = %q, fail = "stop: clean it" },
]
[video]
title = "Fan"
[[step]]
title = "Test"
tests = ["one", "two", "three"]
say = "Spin it, then listen."
`, first, second, third)
}

// bolts is a plan whose bolts come out and go back in as told.
func bolts(said string) string {
	return fmt.Sprintf(`fastener = [{ id = "bolts", what = "pump bolts", thread = "M8", drive = "13 mm", count = 4 }]
[video]
title = "Pump"
[[step]]
title = "Off"
fasteners = ["bolts"]
say = "Four bolts out."
[[step]]
title = "On"
fasteners = ["bolts"]
say = %q
`, said)
}

// Plans written from the contract alone, by what a rule is for: those that must
// raise it, and near ones that must not. Common practice, no source.
func TestContract(t *testing.T) {
	for _, c := range []struct {
		rule        string
		loud, quiet []string
	}{
		{"number-conflict", []string{
			told("mower", "The plug gap is 0.7 mm.", "Remember, the plug gap is 0.9 mm."),
			told("car", "Torque the drain plug to 25 newton metres.", "Drain plug back in, 35 newton metres."),
			told("bicycle", "Inflate the tyre to 60 psi.", "The tyre wants 80 psi, so check it."),
			told("bathroom fan", "The run-on time is 15 minutes.", "Out of the box the run-on time is twenty minutes."),
		}, []string{
			told("mower", "The plug gap is 0.7 mm.", "The valve gap is 0.15 mm."),
			told("mower", "The plug gap is 0.7 mm.", "The plug gap is 0.028 inches."),
			told("bicycle", "The front tyre wants 60 psi.", "The rear tyre wants 70 psi."),
			told("amplifier", "Set the meter to 20 volts.", "Set the meter to 200 volts."),
			told("sewing machine", "The belt is 5 millimetres.", "The belt is 60 centimetres."),
			told("clock", "The spring is 40 millimetres.", "The new spring is 45 millimetres."),
			told("pump", "The gap was 0.9 mm.", "The gap is 0.7 mm."),
		}},
		{"number-loose", []string{
			told("van", "A good one reads 20 ohms."),
			told("van", "You want 12.4 volts."),
		}, []string{
			told("van", "My meter says 12.4 volts right now."),
			told("oven", "I get 20 ohms."),
		}},
		{"unsure", []string{
			told("tap", "The valve may be stuck."),
			told("tap", "The seal might be worn, so we change it."),
		}, []string{
			told("tap", "Careful: hot water may still be in the pipe and can scald you."),
			told("flash", "The capacitor may still hold a charge, so don't touch it yet."),
		}},
		{"final-check-missing", []string{
			told("tap", "Old washer out.", "New washer in."),
			told("kettle", "Undo the base.", "Old switch out, new switch in.", "Base back on, and that is it."),
			told("drawer", "Take the old runner off.", "Screw the new runner on.", "New handle on, too. See you next week."),
		}, []string{
			told("kettle", "Undo the base.", "Old switch out, new switch in.", "Base back on, fill it and see that it boils."),
			told("zip", "Slide the old slider out.", "New slider on and crimp the stop. Zip it up and down: smooth."),
			told("lamp", "Take the shade off and dust it.", "Next week I show you how to fit the new one."),
			told("shelf", "Here is how shelves are made."),
		}},
		{"test-dead-end", []string{
			chain("test:two", "test:one", "stop: look elsewhere"),
			chain("test:two", "test:three", "test:one"),
			chain("test:one", "test:three", "stop: look elsewhere"),
		}, []string{
			chain("test:two", "test:three", "stop: look elsewhere"),
			chain("test:three", "test:three", "stop: look elsewhere"),
		}},
		{"spec-implausible", []string{
			fact("charging voltage", "18.5 V"),
			fact("battery, fully charged", "11.2 V"),
			fact("blow gun pressure", "120 psi"),
			fact("horn loudness at 2 m", "160 dB(A)"),
		}, []string{
			fact("charging voltage", "13.8..14.7 V"),
			fact("charging voltage", "28.4 V"),
			fact("battery, fully charged", "12.7 V"),
			fact("battery at rest", "11.2 V"),
			fact("blow gun pressure", "25 psi"),
			fact("horn loudness at 2 m", "112 dB(A)"),
		}},
		{"language-unread", []string{
			told("lamp", "Débranchez la lampe et ouvrez le boîtier, puis retirez les deux vis."),
			told("washer", "Pull the plug and wait until the drum has stopped, then take the lid off.", "Jetzt die Schrauben aus dem Rahmen drehen und das Rad mit der Hand anheben."),
		}, []string{
			told("lamp", "The label says Les Arcs du Lac, and that is the maker."),
			told("roller", "Undo screws. Lift lid. Pull belt off rollers. Brush lint away."),
		}},
		{"refit-unsafe", []string{
			told("car", "Caliper back on, two bolts, wheel on, and we are done."),
			told("cargo bike", "New brake cable in, clamp it, cut the end off."),
			told("trailer", "New wheel bearing in, hub on, wheel on."),
			told("gas heater", "Do the gas nut up again and light it."),
			told("toaster", "Green-yellow wire back on the chassis screw, then the cover."),
			told("steel lamp", "The earth wire goes back on its tag. Close it."),
		}, []string{
			told("car", "Caliper back on, two bolts, wheel on. Pump the pedal until it is firm, then try the brakes at walking pace."),
			told("cargo bike", "New brake cable in, clamp it. Pull the lever hard ten times: it holds."),
			told("gas heater", "Do the gas nut up and brush soapy water round it: no bubbles."),
			told("toaster", "Green-yellow wire back on the chassis screw. Meter from the earth pin to the chassis: under one ohm."),
			told("shopping trolley", "New wheel on."),
			told("record player", "The brake pad of the platter goes back on."),
		}},
		{"occupied-raised", []string{
			told("van", "Jack it up and lie underneath, the bolt is right above you."),
			told("caravan", "Raise it with the bottle jack, crawl under and undo the step."),
		}, []string{
			told("van", "Jack it up, lower it onto two axle stands, and lie underneath."),
			told("car", "Jack it up and spin the wheel from the side."),
			told("sink", "Lie under the sink and undo the trap."),
		}},
		{"live-measure", []string{
			told("well pump", "With the breaker on, check the voltage at the pressure switch terminals."),
		}, []string{
			told("doorbell", "Measure the bell transformer: 8 volts."),
			told("dishwasher", "Unplugged, measure across the heater: you want 25 ohms."),
		}},
		{"state-unsafe", []string{
			told("tube amplifier", "Turn the chassis over and cut the wires off the filter capacitor."),
			told("coupe", "Undo two bolts and remove the airbag, unplug its yellow connector."),
		}, []string{
			told("tube amplifier", "Discharge the filter capacitor through the resistor and measure zero.", "Now cut the wires off the filter capacitor."),
			told("coupe", "Disconnect the battery and wait ten minutes.", "Undo two bolts and remove the airbag, unplug its yellow connector."),
		}},
		{"jumper-unfused", []string{
			told("motorcycle", "Bridge the starter relay with a screwdriver."),
		}, []string{
			told("PC", "Short the two power pins for a second with a screwdriver."),
		}},
		{"connector-left-off", []string{
			told("espresso machine", "Pull the grey hose off the pump.", "Rinse the filter and shake it dry."),
			told("treadmill", "Unclip the sensor cable.", "Vacuum the dust."),
		}, []string{
			told("guitar amplifier", "Pull the guitar cable out and put it away."),
			told("compressor", "Take the hose off the tank for transport."),
			told("treadmill", "Unclip the sensor cable.", "New sensor in, clip its cable on."),
		}},
		{"part-number-unverified", []string{
			told("printer", "Order the roller, part number RK-4410-B."),
			told("pump", "Order the H7120 pump."),
		}, []string{
			told("lamp", "It takes an E27, and a CR2032 for the clock."),
			told("motorcycle", "An H7 bulb, and a 608ZZ bearing."),
			told("radio", "Set it to FM 101."),
		}},
		{"torque-unsaid", []string{
			bolts("Four bolts in."),
		}, []string{
			bolts("Four bolts back in to 20 newton metres."),
			bolts("Bolts back in, finger tight and then a quarter turn."),
		}},
	} {
		raises := func(text string) bool {
			return slices.ContainsFunc(lint.Run(pass(t, text)), func(f diag.Finding) bool { return f.Rule == c.rule })
		}
		for _, text := range c.loud {
			if !raises(text) {
				t.Errorf("%s is not raised by\n%s", c.rule, text)
			}
		}
		for _, text := range c.quiet {
			if raises(text) {
				t.Errorf("%s is raised by\n%s", c.rule, text)
			}
		}
	}
}
