package lint_test

import (
	"strings"
	"testing"

	"fixslate/plan/lint"
)

// What a finding says fits what it speaks of.
func TestWording(t *testing.T) {
	const step = "[video]\ntitle = \"T\"\n[[step]]\ntitle = \"Look\"\ndo = \"look\"\nsay = \"%\"\n"
	said := func(line string) string { return strings.ReplaceAll(step, "%", line) }
	const roll = "caution = [{ id = \"roll\", hazard = \"wheel-chocks\", say = \"%\" }]\n[video]\ntitle = \"T\"\n[[step]]\ntitle = \"Up\"\ncautions = [\"roll\"]\ndo = \"look\"\nsay = \"Look.\"\n"
	const hex = "tool = [{ id = \"key\", name = \"8 mm hex key\" }]\nfastener = [{ id = \"bolts\", what = \"calliper bolts\", drive = \"8 mm hex\", torque = \"% N·m\" }]\n[video]\ntitle = \"T\"\n[[step]]\ntitle = \"Off\"\nfasteners = [\"bolts\"]\ntools = [\"key\"]\ndo = \"undo the bolts\"\nsay = \"Undo {bolts}.\"\n"
	for _, c := range []struct {
		name, rule, plan, want string // want empty: quiet
	}{
		{"called safe", "always-never", said("It is safe to reach in."), "this calls it safe"},
		{"of all", "always-never", said("These seals never leak."), "said of every one"},
		{"a reading", "number-loose", said("It reads 4 volts."), "make it a [[test]]"},
		{"a value", "number-loose", said("The bolt takes 40 newton metres."), "declare it once"},
		{"a wire by its ends", "source-missing", "wire = [{ id = \"hot\", from = \"pot\", to = [\"tip\"], colour = \"white\" }]\n" + said("Look."), "wire from pot to tip: white has no source"},
		{"what rolls, and chocked", "caution-incomplete", strings.ReplaceAll(roll, "%", "It can roll onto you. Level ground, brake on, rear wheels chocked."), ""},
		{"nothing of it", "caution-incomplete", strings.ReplaceAll(roll, "%", "Mind this one."), "names neither"},
		{"a key of 8 mm", "torque-implausible", strings.ReplaceAll(hex, "%", "45"), ""},
		{"bent by it", "torque-implausible", strings.ReplaceAll(hex, "%", "145"), "proved to"},
	} {
		got := ""
		for _, f := range lint.Run(pass(t, c.plan)) {
			if f.Rule == c.rule {
				got += f.Message + " | " + f.Hint + "\n"
			}
		}
		if c.want == "" && got != "" || !strings.Contains(got, c.want) {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
}

// A state that is unsafe for several steps on end is one trouble with one remedy,
// told where it begins; where it comes again it is told again.
func TestUnsafeOnce(t *testing.T) {
	const up = "[[step]]\ntitle = \"Up\"\nstarts = [\"raised\"]\ndo = \"jack the car up\"\n"
	const work = "[[step]]\ntitle = \"Work\"\ndo = \"undo the calliper\"\n"
	const down = "[[step]]\ntitle = \"Down\"\nends = [\"raised\"]\ndo = \"lower the car\"\n"
	for _, c := range []struct{ steps, want string }{
		{up + work + down, `in step "Work" and the step after it the object`},
		{up + work + work + down, `in step "Work" and the 2 steps after it the object`},
		{up + work + down + up + work + down, `in step "Work" and the step after it the object|in step "Work" and the step after it the object`},
	} {
		var got []string
		for _, f := range lint.Run(pass(t, "[video]\ntitle = \"T\"\nsubject = \"car\"\n"+c.steps)) {
			if f.Rule == "state-unsafe" {
				before, _, _ := strings.Cut(f.Message, " is raised")
				got = append(got, before)
			}
		}
		if strings.Join(got, "|") != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

// The fuse that is to go in has the rating of the plan's, however its place is
// called.
func TestOtherFuse(t *testing.T) {
	for line, want := range map[string]bool{
		"If the fuse has gone, put in a ten amp one.":       true,
		"If the fuse has gone, put in a three amp one.":     false,
		"Never put a ten amp one in for the fuse.":          false,
		"A ten amp fuse goes to the radio.":                 false,
		"The motor draws ten amps, and the fuse is glass.":  false,
		"The fuse pops out, and a new 10 amp fuse goes in.": true,
	} {
		text := "fuse = [{ id = \"f1\", at = \"board, F1\", rating = \"3 A\", verify = \"look\" }]\n[video]\ntitle = \"T\"\n[[step]]\ntitle = \"Look\"\ndo = \"look\"\nsay = \"" + line + "\"\n"
		got := false
		for _, f := range lint.Run(pass(t, text)) {
			got = got || f.Rule == "number-conflict"
		}
		if got != want {
			t.Errorf("%q: number-conflict %v, want %v", line, got, want)
		}
	}
}

// A child on the day's list is near the work, also where no step needs them.
func TestChildOnTheDay(t *testing.T) {
	const steps = "[video]\ntitle = \"T\"\nsubject = \"tumble dryer\"\n[[step]]\ntitle = \"Off\"\ndo = \"%\"\n"
	for _, c := range []struct {
		adult, do string
		want      bool
	}{
		{"false", "take the back panel off", true},
		{"true", "take the back panel off", false},
		{"false", "look at the label", false},
	} {
		got := false
		for _, f := range lint.Run(pass(t, "[shoot]\npeople = [{ id = \"presenter\" }, { id = \"son\", adult = "+c.adult+" }]\n"+strings.ReplaceAll(steps, "%", c.do))) {
			got = got || f.Rule == "bystander-near"
		}
		if got != c.want {
			t.Errorf("adult %s, %s: raised %v, want %v", c.adult, c.do, got, c.want)
		}
	}
}
