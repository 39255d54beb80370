package plan_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/samples"
)

// decode reads a plan of the test's own.
func decode(t *testing.T, text string) (*plan.Plan, *plan.Spans, []diag.Finding) {
	t.Helper()
	src, faults := diag.NewSource("plan.toml", []byte(text))
	if len(faults) > 0 {
		return nil, nil, faults
	}
	return plan.Decode(src, nil)
}

// sound decodes a plan that must have no faults.
func sound(t *testing.T, text string) (*plan.Plan, *plan.Spans) {
	t.Helper()
	p, spans, findings := decode(t, text)
	if p == nil {
		t.Fatalf("faults:\n%s", print(findings))
	}
	return p, spans
}

func print(findings []diag.Finding) string {
	var b strings.Builder
	if err := diag.Text(&b, findings, diag.Style{}); err != nil {
		return err.Error()
	}
	return b.String()
}

const video = "[video]\ntitle = \"Clean a chain\"\n"

// whole is the plan that the language's own description shows.
func whole(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", "whole.toml"))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestWholePlan(t *testing.T) {
	p, _, findings := decode(t, whole(t))
	if p == nil || len(findings) > 0 {
		t.Fatalf("the language's own example: %s", print(findings))
	}
	var ids []string
	for _, s := range p.Steps {
		ids = append(ids, s.ID)
	}
	if diff := cmp.Diff([]string{"make-it-safe", "look-then-measure", "swap", "prove-it"}, ids); diff != "" {
		t.Error(diff)
	}
	for _, want := range []struct{ step, line, print string }{
		{"look-then-measure", "want", "Across the two terminals you want 10 to 20 Ω (two-pin), to be found (three-pin)."},
		{"swap", "screws", "Three 8 mm pump bracket screws."},
		{"swap", "New pump", "New pump in, the same three back, 3 N·m: snug, not tight."},
	} {
		if !hasLine(p.Step(want.step)[0].Lines, want.print) {
			t.Errorf("step %s has no line %q", want.step, want.print)
		}
	}
	if got := p.Open; len(got) != 1 || got[0].Ref != (plan.Ref{Kind: plan.KindSpec, ID: "winding"}) || got[0].Verify != "ask the maker's service line" {
		t.Errorf("open values: %+v", got)
	}
	if diff := cmp.Diff([]plan.Interval{{State: "power-off", To: 3}, {State: "water-off", To: 3}}, p.Intervals); diff != "" {
		t.Error(diff)
	}
}

func hasLine(lines []plan.Line, print string) bool {
	for _, l := range lines {
		if l.Print == print {
			return true
		}
	}
	return false
}

func TestSamplesDecode(t *testing.T) {
	for _, name := range samples.Names() {
		text, _ := samples.Plan(name)
		if p, _, findings := decode(t, string(text)); p == nil {
			t.Errorf("%s:\n%s", name, print(findings))
		}
	}
	if p, _, findings := decode(t, string(samples.Starter())); p == nil {
		t.Errorf("starter:\n%s", print(findings))
	}
}

// Every way of ending lines, and a byte order mark, reads the same.
func TestLineEndings(t *testing.T) {
	text := whole(t)
	want, _ := sound(t, text)
	for name, other := range map[string]string{
		"CRLF":          strings.ReplaceAll(text, "\n", "\r\n"),
		"CR":            strings.ReplaceAll(text, "\n", "\r"),
		"mark":          "\ufeff" + text,
		"mark and CRLF": "\ufeff" + strings.ReplaceAll(text, "\n", "\r\n"),
		"no last line":  strings.TrimRight(text, "\n"),
	} {
		got, _ := sound(t, other)
		if diff := cmp.Diff(linesOf(want), linesOf(got)); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
	broken := strings.Replace(text, "symptom", "symptoms", 1)
	_, _, lf := decode(t, broken)
	_, _, crlf := decode(t, "\ufeff"+strings.ReplaceAll(broken, "\n", "\r\n"))
	if print(lf) != print(crlf) {
		t.Errorf("places differ:\n%s%s", print(lf), print(crlf))
	}
}

func linesOf(p *plan.Plan) []string {
	var lines []string
	for _, s := range p.Steps {
		for _, l := range s.Lines {
			lines = append(lines, l.Print)
		}
	}
	return lines
}

func TestNarrationLines(t *testing.T) {
	p, _ := sound(t, video+`
[[step]]
title = "Brush it"
say = """
Brush each link. Then turn (slowly) and look.
(hold the brush up)
[brush scrapes]

It is *quite* plain: 1.5 mm at most, approx. as wide as a coin.
(not) a direction (here)
"""
`)
	type line struct {
		Kind  plan.LineKind
		Print string
	}
	var got []line
	for _, l := range p.Steps[0].Lines {
		got = append(got, line{l.Kind, l.Print})
	}
	want := []line{
		{plan.Spoken, "Brush each link."},
		{plan.Spoken, "Then turn (slowly) and look."},
		{plan.Direction, "hold the brush up"},
		{plan.Sound, "brush scrapes"},
		{plan.Spoken, "It is quite plain: 1.5 mm at most, approx. as wide as a coin."},
		{plan.Spoken, "(not) a direction (here)"},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// A plan of titles and narration alone is read for what it gives the hands to do;
// where one step says what is done, those that say nothing are talk.
func TestNarrationGivesTheHandsWork(t *testing.T) {
	const text = `[video]
title = "T"
[[step]]
title = "Hello"
say = "The chain squeaks. Hold on to your money. It wants ten minutes and a rag. No tools at all."
[[step]]
title = "Brush"
say = "Brush each link, and turn the cranks. (in the sun)"
[[step]]
title = "Oil"
say = """
(pull the cloth away)
One drop on each roller. Then wipe off what you see.
"""
`
	orders := func(text string) []int {
		p, _ := sound(t, text)
		var counts []int
		for _, s := range p.Steps {
			counts = append(counts, s.Orders)
			if s.HandsOn() != (s.Orders > 0 || !s.Do.Empty()) {
				t.Errorf("%s: hands-on %v with %d orders", s.ID, s.HandsOn(), s.Orders)
			}
		}
		return counts
	}
	if diff := cmp.Diff([]int{0, 2, 1}, orders(text)); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]int{0, 0, 0, 0}, orders(text+"[[step]]\ntitle = \"Ride\"\ndo = \"ride it\"\n")); diff != "" {
		t.Error(diff)
	}
}

func TestUse(t *testing.T) {
	files := fstest.MapFS{
		"shop.toml":      {Data: []byte("[[tool]]\nid = \"brush\"\nname = \"shop brush\"\n[[tool]]\nid = \"pan\"\nname = \"drip pan\"\n")},
		"deep/shop.toml": {Data: []byte("[[spec]]\nid = \"wear\"\nwhat = \"wear\"\nvalue = \"at most 0.75 %\"\n[shoot]\ngear = [\"camera\"]\n")},
		"steps.toml":     {Data: []byte("[[step]]\ntitle = \"No\"\n")},
		"bad.toml":       {Data: []byte("[[tool]]\nname = 7\n")},
	}
	read := func(use, rest string) (*plan.Plan, []diag.Finding) {
		src, _ := diag.NewSource("plan.toml", []byte("use = "+use+"\n"+rest+video+"[[step]]\ntitle = \"Brush\"\nsay = \"Brush: {wear}.\"\ntools = [\"brush\", \"pan\"]\n"))
		p, _, findings := plan.Decode(src, files)
		return p, findings
	}
	p, findings := read(`["shop.toml", "deep/shop.toml"]`, "tool = [{ id = \"brush\", name = \"my brush\" }]\n")
	if p == nil {
		t.Fatal(print(findings))
	}
	if got := p.Tool("brush")[0].Name.Print + ", " + p.Tool("pan")[0].Name.Print + ", " + p.Steps[0].Lines[0].Print; got != "my brush, drip pan, Brush: at most 0.75%." {
		t.Error(got)
	}
	if len(findings) != 1 || findings[0].Severity != diag.Note || findings[0].Rule != "id-duplicate" || findings[0].At.File() != "shop.toml" {
		t.Errorf("want one note in shop.toml:\n%s", print(findings))
	}
	for use, rule := range map[string]string{
		`["../shop.toml"]`: "use-refused", `["/etc/hostname"]`: "use-refused", `["plan.toml"]`: "use-refused", `["none.toml"]`: "use-refused",
		`["deep"]`: "use-refused", `['a\b.toml']`: "use-refused", `["steps.toml"]`: "key-unknown", `["bad.toml"]`: "type-wrong",
	} {
		p, findings := read(use, "spec = [{ id = \"wear\", what = \"wear\", value = \"1 %\" }]\ntool = [{ id = \"brush\", name = \"b\" }, { id = \"pan\", name = \"p\" }]\n")
		if p != nil || !hasRule(findings, rule) {
			t.Errorf("use = %s: want %s:\n%s", use, rule, print(findings))
		}
	}
}

func hasRule(findings []diag.Finding, rule string) bool {
	for _, f := range findings {
		if f.Rule == rule {
			return true
		}
	}
	return false
}

// A caution is spoken once while a state of its step lasts, and again when the
// state was left and entered again; without a state, while the family goes on.
func TestCautionsAreSpokenOnceWhileTheyLast(t *testing.T) {
	p, _ := sound(t, video+`
[[step]]
title = "Raise"
starts = ["raised"]
cautions = ["raised-vehicle"]
[[step]]
title = "Work"
cautions = ["raised-vehicle", "sharp-edges"]
[[step]]
title = "Lower"
ends = ["raised"]
[[step]]
title = "Talk"
[[step]]
title = "Raise again"
starts = ["raised"]
ends = ["raised"]
cautions = ["raised-vehicle"]
[[step]]
title = "Edge"
cautions = ["sharp-edges"]
[[step]]
title = "Edge again"
cautions = ["sharp-edges"]
[[step]]
title = "Rest"
[[step]]
title = "Edge after a rest"
cautions = ["sharp-edges"]
`)
	var got []string
	for _, s := range p.Steps {
		line := s.Title.Print + ":"
		for _, c := range s.Cautions {
			line += " " + c.ID
			if c.Spoken {
				line += " spoken"
			}
			if c.Card {
				line += " card"
			}
			line += ";"
		}
		got = append(got, line)
	}
	want := []string{
		"Raise: raised-vehicle spoken card;",
		"Work: raised-vehicle card; sharp-edges spoken card;",
		"Lower: raised-vehicle card;",
		"Talk:",
		"Raise again: raised-vehicle spoken card;",
		"Edge: sharp-edges spoken card;",
		"Edge again: sharp-edges card;",
		"Rest:",
		"Edge after a rest: sharp-edges spoken card;",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// The form and rating of a fuse settle its colour, where lists agree on it and
// the plan says none.
func TestColourOfAFuse(t *testing.T) {
	p, _, findings := decode(t, `fuse = [
  { id = "inferred", at = "one", rating = "15 A", form = "regular blade" },
  { id = "written", at = "two", rating = "15 A", form = "regular blade", colour = "red" },
  { id = "formless", at = "three", rating = "15 A" },
  { id = "disputed", at = "four", rating = "25 A", form = "maxi blade" },
  { id = "open", at = "five", rating = "?", form = "mini blade" },
]
`+video+"[[step]]\ntitle = \"A\"\nsay = \"The {inferred.colour} one.\"\n")
	if p == nil {
		t.Fatal(print(findings))
	}
	for i, want := range []string{"blue", "red", "", "", ""} {
		if f := p.Fuses[i]; f.Colour != want {
			t.Errorf("fuse %s is %q, want %q", f.ID, f.Colour, want)
		}
	}
	if got := p.Steps[0].Lines[0].Print; got != "The blue one." {
		t.Errorf("said %q", got)
	}
}

// A sense is no tool, however it is written, and neither is a way out advice
// because of a capital letter.
func TestSensesAndExitsInOtherLetters(t *testing.T) {
	p, _, findings := decode(t, video+`[[step]]
title = "Look"
tests = ["a", "b"]
[[test]]
id = "a"
question = "Is it hot?"
instrument = ["Hands", "eye"]
expect = "warm"
pass = "Test:b"
[[test]]
id = "b"
question = "Is it loud?"
instrument = "ear trumpet"
expect = "quiet"
`)
	if p == nil {
		t.Fatal(print(findings))
	}
	if got := p.Tests[0].Instrument; !slices.Equal(got, []string{"hand", "eyes"}) || len(p.Tools) != 1 || p.Tools[0].Name.Print != "ear trumpet" {
		t.Errorf("instruments %q, tools %v", got, p.Tools)
	}
	if got := p.Tests[0].Pass; got.Kind != plan.ToTest || got.ID != "b" {
		t.Errorf("leads to %+v", got)
	}
}
