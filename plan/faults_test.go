package plan_test

import (
	"strings"
	"testing"

	"fixslate/plan"
	"fixslate/plan/diag"
)

// Each fault's page shows a plan that raises just it, and one that is mended.
func TestFaultPages(t *testing.T) {
	for _, name := range plan.Faults() {
		page, ok := plan.FaultPage(name)
		if !ok {
			t.Errorf("%s: the page can't be read", name)
			continue
		}
		if _, _, findings := decode(t, page.Right); len(findings) > 0 {
			t.Errorf("%s, right example:\n%s", name, print(findings))
		}
		if page.Wrong == "" {
			continue
		}
		_, _, findings := decode(t, page.Wrong)
		if len(findings) != 1 || findings[0].Rule != name || findings[0].Severity != diag.Error {
			t.Errorf("%s, wrong example: want just %s, got:\n%s", name, name, print(findings))
		}
	}
}

// Places are lines and characters; the message says what to write.
func TestFaults(t *testing.T) {
	step := "[[step]]\ntitle = \"Brush\"\nsay = \"Brush.\"\n"
	for name, c := range map[string]struct{ text, want string }{
		"unknown key": {"[video]\ntitel = \"Å\"\ntitle = \"T\"\n" + step,
			`plan.toml:2:1: error: key-unknown: "titel" is no key in [video] | did you mean "title"`},
		"column in characters": {"[video]\ntitle = \"ÅÅÅ\" ,\n" + step,
			`plan.toml:2:15: error: syntax:`},
		"missing title": {"[video]\nsubject = \"x\"\n" + step,
			`plan.toml:1:2: error: key-missing: [video] needs title`},
		"no step":        {video, `error: key-missing: the plan has no step | add [[step]] with title and say`},
		"a list of none": {"step = []\n" + video, `plan.toml:1:1: error: key-missing: the plan has no step | add [[step]] with title and say`},
		"step key in shot": {video + "[[step]]\ntitle = \"B\"\n[[step.shot]]\nof = \"x\"\nsay = \"no\"\n",
			`plan.toml:7:1: error: key-unknown: "say" is a step's key; move it above [[step.shot]]`},
		"key of a cue cut short": {video + "[[step]]\ntitle = \"B\"\n[[step.cue]]\nwho = \"presenter\"\ndo = \"turns it\"\n",
			`plan.toml:7:1: error: key-unknown: "do" is no key in [step.cue] | did you mean "does"`},
		"table below a header": {video + "tool = [{ name = \"x\" }]\n" + step,
			`plan.toml:3:1: error: key-unknown: "tool" is a table of its own, not a key in [video] | move it above the first [header], or write [[tool]]`},
		"first of three": {video + "[[step]]\ntitle = 1\n[[step]]\ntitle = \"b\"\n[[step]]\ntitle = \"c\"\n",
			`plan.toml:4:9: error: type-wrong: title takes text in quotes, not a whole number`},
		"no unit":                  {video + "[[step]]\ntitle = \"B\"\nwork = 4\n", `plan.toml:5:8: error: value-wrong: work = 4 has no unit | write work = "4m" for minutes, "4s" for seconds, "4h" for hours`},
		"unit unsaid":              {video + "[[step]]\ntitle = \"B\"\nwork = \"4\"\n", `plan.toml:5:8: error: value-wrong: work: "4" has no unit; write "4s", "4m" or "4h"`},
		"a mark for a value":       {"spec = [{ id = \"a\", what = \"jet\", value = \"85\" }]\n" + video + step, `a mark in words, like "marked 12"`},
		"no unit of torque":        {"fastener = [{ id = \"a\", what = \"bolt\", torque = \"5\" }]\n" + video + step, `value-wrong: torque: "5" has no unit; write it with one, like "3 N·m"`},
		"other unit":               {"fastener = [{ id = \"a\", what = \"bolt\", torque = \"5 V\" }]\n" + video + step, `value-wrong: torque: "5 V" measures voltage, and torque is wanted; write it like "3 N·m"`},
		"no area":                  {"wire = [{ id = \"a\", section = \"1.5 mm\" }]\n" + video + step, `value-wrong: section: "1.5 mm" measures length, and area is wanted`},
		"nan is no count":          {video + "[[step]]\ntitle = \"B\"\nwork = \"nan\"\n", `value-wrong: work: "nan" is no duration; write it like "90s"`},
		"beyond a float":           {"[voice]\nwpm = 1e400\n" + video + step, `plan.toml:2:7: error: syntax: voice.wpm: 1e400 is more than fixslate counts with | write a number of at most a million`},
		"power of ten":             {"fastener = [{ id = \"a\", what = \"bolt\", torque = \"1e400 N·m\" }]\n" + video + step, `value-wrong: torque: "1e400 N·m" has a power of ten; write the number out`},
		"minus nothing":            {"fastener = [{ id = \"a\", what = \"bolt\", torque = \"-0.0 N·m\" }]\n" + video + step, `value-wrong: torque: "-0.0 N·m" is negative`},
		"falling":                  {video + "[[step]]\ntitle = \"B\"\nwork = \"4m..3m..9m\"\n", `value-wrong: work: "4m..3m..9m" does not rise`},
		"not a number":             {"[voice]\nwpm = nan\n" + video + step, `plan.toml:2:7: error: value-wrong: wpm is no number`},
		"negative":                 {"[publish]\nfps = -25\n" + video + step, `value-wrong: fps must be over zero`},
		"bad word":                 {"[captions]\nprofile = \"broadcats\"\n" + video + step, `value-wrong: profile knows no "broadcats" | write "broadcast"`},
		"bad date":                 {"[shoot]\ntried = \"2026-02-30\"\n" + video + step, `value-wrong: tried: "2026-02-30" is no date`},
		"bad clock":                {"[shoot]\nstart = \"25:00\"\n" + video + step, `value-wrong: start: "25:00" is no time of day`},
		"header twice":             {video + step + "[video]\nsubject = \"c\"\n", `error: syntax: [video] stands twice | keep one header`},
		"steps in single brackets": {video + "[step]\ntitle = \"B\"\n[step]\ntitle = \"C\"\n[step]\ntitle = \"D\"\n", `plan.toml:7:2: error: syntax: [step] stands twice | keep one header`},
		"date that is none":        {"[[correction]]\nnow = \"x\"\ndate = 29.11.2026\n" + video + step, `error: syntax: expected newline but got U+002E '.' | text needs quotes: key = "…"; a date is`},
		"no comma":                 {"tool = [{ id = \"a\" name = \"b\" }]\n" + video + step, `put a comma between two entries`},
		"bare letters":             {"[video]\ntitle = Über\n" + step, `unexpected character U+00DC 'Ü' at start of value | text needs quotes`},
		"condition in the past":    {video + "[[step]]\ntitle = \"B\"\nonly_if = \"look failed\"\n", `write "test:look fails"`},
		"two forms":                {"caution = []\n" + video + step + "[[caution]]\nsay = \"c\"\n", `error: syntax: [[caution]] stands beside a list caution = [...] | write all entries in the one way`},
		"twice":                    {"[video]\ntitle = \"a\"\ntitle = \"b\"\n" + step, `plan.toml:3:1: error: syntax: video.title stands twice | keep one of the two; the first is in line 2`},
		"single brackets":          {video + step + "[step]\ntitle = \"C\"\n", `plan.toml:6:2: error: syntax: [step] has single brackets where the headers before it have two | write [[step]]`},
		"single brackets below": {video + step + "[[step.shot]]\nof = \"a\"\n[step.shot]\nof = \"b\"\n",
			`plan.toml:8:2: error: syntax: [step.shot] has single brackets where the headers before it have two | write [[step.shot]]`},
		"unknown table in a step": {video + step + "[[step.shots]]\nof = \"a\"\n", `plan.toml:6:3: error: key-unknown: "shots" is no key in [step] | did you mean "shot"`},
		"slip in a quote's key": {"part = [{ id = \"pump\", name = \"pump\" }]\n" + video + "[[step]]\ntitle = \"B\"\nsay = \"It is {part:pump.numbr}.\"\n",
			`quote-unknown: {part:pump.numbr} asks for a key that a part does not have | did you mean {part:pump.number}`},
		"quoted and not written": {"fuse = [{ id = \"f\", at = \"fuse 3\" }]\n" + video + "[[step]]\ntitle = \"B\"\nsay = \"It is {f.rating}.\"\n",
			`quote-unknown: {f.rating} is not written in the plan | add rating to fuse "f", or "?" where it is to be found`},
		"word for another key": {"[[fastener]]\nname = \"bolt\"\nwhat = \"bolt\"\nqty = 3\n" + video + step,
			`plan.toml:2:1: error: key-unknown: "name" is no key in [fastener] | did you mean "what"` + "\n" + `plan.toml:4:1: error: key-unknown: "qty" is no key in [fastener] | did you mean "count"`},
		"capital key of the step": {video + step + "[[step.shot]]\nTitle = \"x\"\n", `plan.toml:7:1: error: key-unknown: "title" is a step's key; move it above [[step.shot]]`},
		"capital key":             {video + "[[step]]\ntitle = \"B\"\nSay = \"C.\"\n", `key-unknown: "Say" is no key in [step] | did you mean "say"`},
		"lines in a list":         {video + "[[step]]\ntitle = \"B\"\nsay = [\"One.\", \"Two.\"]\n", `say takes text in quotes, not a list | write one text; several lines stand between`},
		"hazard of no class": {"caution = [{ id = \"soot\", hazard = \"carbon dust\", say = \"Don't blow it.\" }]\n" + video + step,
			`value-wrong: there is no hazard class or family "carbon dust" | did you mean "`},
		"slip": {"tool = [{ id = \"brush\", name = \"brush\" }]\n" + video + "[[step]]\ntitle = \"B\"\ntools = [\"brsuh\"]\n",
			`plan.toml:6:10: error: id-unknown: tools: there is no tool "brsuh" | did you mean "brush"`},
		"hyphen": {video + "[[step]]\ntitle = \"B\"\ntools = [\"big-brush\"]\n", `id-unknown: tools: there is no tool "big-brush"`},
		"hazard in everyday words": {video + "[[step]]\ntitle = \"B\"\ncautions = [\"electric shock\"]\n",
			`id-unknown: cautions: there is no caution, hazard class or family "electric shock" | did you mean "mains-isolation"`},
		"word in a multi-line text with escapes": {video + "[[step]]\ntitle = \"B\"\nsay = \"\"\"\nÅ \\u00e9 \\\n   go on\nthen {nothing} here\"\"\"\n",
			`plan.toml:8:6: error: quote-unknown: there is nothing with the id "nothing"`},
		"quote without value for the version": {"variant = [{ id = \"a\", name = \"A\" }, { id = \"b\", name = \"B\" }]\nspec = [{ id = \"s\", what = \"s\", value = \"1 mm\", variants = [\"a\"] }]\n" + video + "[[step]]\ntitle = \"B\"\nvariants = [\"b\"]\nsay = \"{s}\"\n",
			`quote-unknown: {s} has no value for the versions of this step`},
		"table below a header like a key there": {video + step + "tool = [{ name = \"x\" }]\n",
			`plan.toml:6:1: error: key-unknown: "tool" is a table of its own, not a key in [step] | move it above the first [header], or write [[tool]]`},
		"shot's key in a step": {video + step + "setup = \"floor, low\"\n",
			`plan.toml:6:1: error: key-unknown: "setup" is a shot's key | put it under a [[step.shot]] of this step, behind the step's own keys`},
		"number in quotes": {"[publish]\nfps = \"25\"\n" + video + step, `type-wrong: fps takes a number, not text | write fps = 25, without quotes`},
		"share in truth":   {"[[cause]]\nwhat = \"x\"\nshare = true\n" + video + step, `type-wrong: share takes a word or a number, not true or false | write share = "usual"`},
		"person by name":   {"[shoot]\npeople = [\"ann\"]\n" + video + step, `an entry of "people" is a table, not text | write it in braces: { id = "ann" }`},
		"text without end": {video + "[[step]]\ntitle = \"B\"\nsay = \"\"\"\nGo # on.\n[[step]]\ntitle = \"C\"\n", `plan.toml:5:7: error: syntax: the text that begins here has no """ at its end`},
		"list not closed":  {"[[step]]\ntools = [\n  \"a\"\n\n[[step]]\ntitle = \"B\"\n", `plan.toml:5:1: error: syntax: expected ',' or ']' after array value | close the list above with ]`},
		"two on a line":    {"[video]\ntitle = \"x\" subject = \"y\"\n", `plan.toml:2:13: error: syntax: expected newline but got U+0073 's' | give each key a line of its own`},
		"comma":            {"[video]\ntitle = \"x\",\n", `plan.toml:2:12: error: syntax: expected newline but got U+002C ',' | give each key a line of its own`},
		"quote in a text":  {"[video]\ntitle = \"a \"b\" c\"\n", `plan.toml:2:13: error: syntax: expected newline but got U+0062 'b' | write \" for a quote within "…"`},
		"unit unquoted":    {"[voice]\nwpm = 150 wpm\n", `plan.toml:2:11: error: syntax: expected newline but got U+0077 'w' | text needs quotes`},
		"like a keyword":   {"[video]\ntitle = two pins\n", `plan.toml:2:9: error: syntax: expected keyword "true" | text needs quotes`},
		"keyword":          {"[shoot.people]\nadult = True\n", `plan.toml:2:9: error: syntax: unexpected character U+0054 'T' at start of value | write true and false in small letters`},
		"slashes":          {"// a plan\n" + video + step, `plan.toml:1:1: error: syntax: invalid character at start of key: U+002F '/' | a comment begins with #`},
		"bracket too many": {"[video]]\ntitle = \"x\"\n", `plan.toml:1:8: error: syntax: expected newline but got U+005D ']' | a header stands alone`},
		"colon":            {"[video]\ntitle: \"x\"\n" + step, `plan.toml:2:6: error: syntax: expected '=' after key | write = for the colon: key = value`},
		"JSON":             {"{\"video\": {\"title\": \"x\"}}\n", `plan.toml:1:1: error: syntax: invalid character at start of key: U+007B '{' | a plan is TOML, not JSON`},
		"half a header":    {video + "[[step]\ntitle = \"B\"\n", `plan.toml:3:7: error: syntax: expected ']]' to close array table name | a header stands alone on its line: [video] or [[step]]`},
		"apostrophe":       {video + "[[step]]\ntitle = \"B\"\nsay = 'don't'\n", `plan.toml:5:12: error: syntax: expected newline but got U+0074 't' | text with an apostrophe stands in "…"`},
		"list without end": {video + "[[step]]\ntitle = \"B\"\ntools = [\"a\",\n[[step]]\ntitle = \"C\"\n", `close the list above with ]`},
		"state": {video + "[[step]]\ntitle = \"B\"\nneeds = [\"unpluged\"]\n[[step]]\ntitle = \"C\"\nstarts = [\"unplugged\"]\n",
			`plan.toml:5:10: error: state-never-started: no step starts the state "unpluged"`},
		"empty":                   {"", `plan.toml:1:1: error: key-missing: the plan is empty`},
		"comments":                {"# only\n", `key-missing: the plan has no [video]`},
		"deep":                    {"a = " + strings.Repeat("[", 40) + strings.Repeat("]", 40) + "\n", `plan.toml:1:37: error: too-large: more than 32 levels of brackets`},
		"text instead of a table": {"video = \"x\"\n" + step, `type-wrong: "video" is a table, not text`},
		"version":                 {"plan = 2\n" + video + step, `plan.toml:1:8: error: version-unknown:`},
	} {
		_, _, findings := decode(t, c.text)
		got := flat(findings)
		if !strings.Contains(got, c.want) {
			t.Errorf("%s: want %q in:\n%s", name, c.want, got)
		}
	}
}

// A letter of several bytes is marked whole: half of one is no text.
func TestALetterIsMarkedWhole(t *testing.T) {
	_, _, findings := decode(t, "[video]\ntitle = “T”\n")
	if at := findings[0].At; at.Source.Text[at.Span.Start:at.Span.End] != "“" {
		t.Errorf("marked: %q", at.Source.Text[at.Span.Start:at.Span.End])
	}
}

// flat prints each finding on one line, its hint behind a bar.
func flat(findings []diag.Finding) string {
	var b strings.Builder
	for _, f := range findings {
		one := print([]diag.Finding{f})
		b.WriteString(strings.Replace(strings.TrimSuffix(one, "\n"), "\n  ", " | ", 1) + "\n")
	}
	return b.String()
}

// All faults of a plan are reported at once, in the order of the file.
func TestAllFaultsAtOnce(t *testing.T) {
	_, _, findings := decode(t, `
plan = "one"
[video]
title = 1
colour = "x"
[[step]]
say = "{nowhere} and {nothing}"
work = 3
tests = ["none"]
[[step]]
title = "Two"
needs = ["never"]
`)
	var lines []int
	for _, f := range findings {
		lines = append(lines, f.At.Position().Line)
	}
	for i := 1; i < len(lines); i++ {
		if lines[i] < lines[i-1] {
			t.Fatalf("not in the order of the file: %v", lines)
		}
	}
	if len(findings) != 9 {
		t.Errorf("want 9 faults, got %d:\n%s", len(findings), print(findings))
	}
}

func TestEncodings(t *testing.T) {
	for name, c := range map[string]struct{ text, want string }{
		"escape of TOML 1.1":       {"[video]\ntitle = \"a\\\\e\\e\"\n[[step]]\ntitle = \"B\"\nsay = \"C.\"\n", `plan.toml:2:14: note: syntax: this needs TOML 1.1`},
		"comma of TOML 1.1":        {"tool = [{ name = \"a\", }]\n[video]\ntitle = \"a\"\n[[step]]\ntitle = \"B\"\nsay = \"C.\"\n", `plan.toml:1:21: note: syntax: this needs TOML 1.1`},
		"UTF-16 LE":                {"\xff\xfe[\x00v\x00]\x00", "plan.toml:1:1: error: encoding: the file is UTF-16"},
		"UTF-16 BE without a mark": {"\x00[\x00v\x00i\x00d\x00e\x00o\x00]", "encoding: the file looks like UTF-16"},
		"UTF-32":                   {"\xff\xfe\x00\x00[\x00\x00\x00", "encoding: the file is UTF-32"},
		"windows-1252":             {"[video]\ntitle = \"\xe4\"\n", "plan.toml:2:10: error: encoding: byte 0xe4 is no text in UTF-8"},
		"NUL":                      {"[video]\ntitle = \"a\x00\"\n", "plan.toml:2:11: error: encoding: byte 0x00 is no text | delete it"},
		"too large":                {strings.Repeat("#", diag.MaxBytes+1), "too-large: the file has more than 4 MB"},
	} {
		_, _, findings := decode(t, c.text)
		if !strings.Contains(flat(findings), c.want) {
			t.Errorf("%s: want %q in:\n%s", name, c.want, flat(findings))
		}
	}
}
