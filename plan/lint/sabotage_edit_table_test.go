package lint_test

import (
	"strings"
	"testing"
)

// editSabotages were written, with what they have to raise, before one of them
// was run. Of 25, 19 came exactly as written.
var editSabotages = []editSabotage{
	// Cautions.
	{washer, "a caution cut", func(t *testing.T, c cut) string {
		return c.without(t, "The control board keeps", "leave the board alone.").srt()
	}, "caution-not-said@make-safe", "", false},
	{van, "a caution cut", func(t *testing.T, c cut) string {
		return c.without(t, "A headlamp bulb burns", "hold it by the leads.").srt()
	}, "caution-not-said@under-load", "", false},
	{ebike, "two of three cautions cut", func(t *testing.T, c cut) string {
		return c.without(t, "One touch on a pedal", "away from tools.").srt()
	}, "caution-not-said@battery-off caution-not-said@battery-off", "one for each caution", false},
	{mower, "the avoidance cut, the hazard said", func(t *testing.T, c cut) string {
		return c.without(t, "Goggles on, gloves on, and", "anywhere near.").srt()
	}, "caution-not-said@clean-jet", "", false},
	{mower, "a caution after the work", func(t *testing.T, c cut) string {
		c = c.without(t, "The plug lead gives", "pulls the cord.")
		return c.with(t, "Tester off again.", "The plug lead gives a vicious shock. Let go of it before anybody pulls the cord.").srt()
	}, "caution-said-late@spark-check", "", false},
	{van, "a caution after the work", func(t *testing.T, c cut) string {
		c = c.without(t, "A ring or a spanner", "before you start. Keep")
		c = c.with(t, "before you start.", "Keep")
		return c.with(t, "not about the blower.", "A ring or a spanner across the battery posts burns to the bone. Rings and watches off before you start.").srt()
	}, "caution-said-late@battery-first", "", false},
	{washer, "a caution in other words", func(t *testing.T, c cut) string {
		return c.instead(t, "A drum full of water shifts, and the machine can topple on you.", "Full of water the drum shifts about, and then the whole machine can topple over onto you.").srt()
	}, "", "", false},

	// Numbers.
	{washer, "a torque misspoken", func(t *testing.T, c cut) string {
		return c.instead(t, "set to 3 N·m,", "set to 30 newton metres,").srt()
	}, "number-misspoken@pump-in", "", false},
	{van, "a voltage misspoken", func(t *testing.T, c cut) string {
		return c.instead(t, "You want at least 12.4 V.", "You want at least 14.2 volts.").srt()
	}, "number-misspoken@battery-first", "", false},
	{ebike, "a torque misspoken", func(t *testing.T, c cut) string {
		return c.instead(t, "Torque wrench on the axle: 12 N·m.", "Torque wrench on the axle: 21 N·m.").srt()
	}, "number-misspoken@wheel-in", "", false},
	{mower, "a volume misspoken", func(t *testing.T, c cut) string {
		return c.instead(t, "Fresh petrol in, 0.5 L,", "Fresh petrol in, 5 litres,").srt()
	}, "number-misspoken@fresh-petrol", "", false},
	{washer, "a torque in words", func(t *testing.T, c cut) string {
		return c.instead(t, "set to 3 N·m,", "set to three newton metres,").srt()
	}, "", "", false},
	{van, "a wait misspoken in a caution", func(t *testing.T, c cut) string {
		return c.instead(t, "Now the wait: 3 min.", "Now the wait: 30 seconds.").srt()
	}, "number-misspoken@glovebox-out", "", true},

	// Steps.
	{washer, "a step cut", func(t *testing.T, c cut) string {
		return c.without(t, "Take a picture first,", "not on the wires.").srt()
	}, "step-not-covered@unplug-pump", "", false},
	{ebike, "a step cut with its caution", func(t *testing.T, c cut) string {
		return c.without(t, "Mine has stood since yesterday,", "come out too far.").srt()
	}, "step-not-covered@wheel-out", "", false},
	{mower, "a step cut", func(t *testing.T, c cut) string {
		return c.without(t, "One screw, and the cover", "the petrol it wastes.").srt()
	}, "step-not-covered@filter-look", "", false},
	{mower, "a step moved", func(t *testing.T, c cut) string {
		i, _ := c.find(t, "One screw, and the cover")
		_, j := c.find(t, "the petrol it wastes.")
		var words []string
		for _, s := range c[i:j] {
			words = append(words, s.text)
		}
		c = c.without(t, "One screw, and the cover", "the petrol it wastes.")
		return c.with(t, "grit falls in.", strings.Join(words, " ")).srt()
	}, "chapter-moved@filter-look", "", false},
	{van, "a minute of silence", func(t *testing.T, c cut) string {
		_, at := c.find(t, "go in behind the glovebox.")
		late := append(cut{}, c[:at]...)
		for _, s := range c[at:] {
			late = append(late, spoken{s.text, s.start + 400, s.end + 400})
		}
		return late.srt()
	}, "chapter-moved@glovebox-out running-long@", "it runs longer, and past its limit", false},

	// Talk.
	{washer, "a claim added", func(t *testing.T, c cut) string {
		return c.with(t, "Mine is silent.", "These pumps fail because the bearing rusts in hard water.").srt()
	}, "claim-added@listen", "", false},
	{van, "a figure added", func(t *testing.T, c cut) string {
		return c.with(t, "it touches nothing.", "A healthy motor draws eighteen amps at the top speed.").srt()
	}, "claim-added@motor-in", "", true},
	{ebike, "a hedge added", func(t *testing.T, c cut) string {
		return c.with(t, "wipe off every drop.", "I'm pretty sure this one takes a different thread.").srt()
	}, "unsure@syringes-on", "", false},
	{mower, "small talk added", func(t *testing.T, c cut) string {
		return c.with(t, "Tester off again.", "Hang on, the dog is at the gate again. Right, where were we?").srt()
	}, "", "", false},
	{washer, "a term misheard", func(t *testing.T, c cut) string {
		return c.instead(t, "at the back is the impeller.", "at the back is the in pillar.").srt()
	}, "term-misheard@filter-out", "", false},
	{ebike, "a term misheard", func(t *testing.T, c cut) string {
		return c.instead(t, "cap with DOT 5.1 printed", "cap with dog 5.1 printed").srt()
	}, "term-misheard@which-lever", "", false},

	// Captions.
	{washer, "times that run backwards", func(t *testing.T, c cut) string {
		_, at := c.find(t, "leave the board alone.")
		back := append(cut{}, c[:at]...)
		for _, s := range c[at:] {
			back = append(back, spoken{s.text, s.start - 90, s.end - 90})
		}
		return back.srt()
	}, "edit-times@", "", false},
	{mower, "another video's captions", func(t *testing.T, _ cut) string {
		return cut{{"Peel", 0, 1}, {"the", 1, 2}, {"onions", 2, 3}}.with(t, "Peel the onions", strings.Repeat("and fry them gently in butter until they are golden brown then add stock and simmer for an hour ", 8)).srt()
	}, "edit-foreign@", "", false},
}
