package lint_test

import (
	"bytes"
	"fmt"
	"runtime"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"fixslate/plan/diag"
	"fixslate/plan/lint"
)

// hostile is a plan that raises much, with a text put into every place that
// takes one.
func hostile(text string) string {
	return strings.ReplaceAll(`
tool = [{ id = "saw", name = "saw @" }]
part = [{ id = "p", name = "pump @", number = "NV-1 @" }]
fastener = [{ id = "f", what = "bolt @", thread = "M55 @", head = "hex", drive = "14 mm", torque = "26 N·m" }, { id = "g", what = "bolt @", thread = "M5", torque = "3 N·m" }]
fuse = [{ id = "fu", at = "fuse @", rating = "15 A", form = "regular blade", colour = "red @" }]
wire = [{ id = "w", from = "a @", to = "b", colour = "red @", section = "0.5 mm²" }]
spec = [{ id = "s", what = "battery @ at rest", value = "126 V" }, { id = "o", what = "open @", value = "?", verify = "ask @" }]
source = [{ id = "src", title = "law @", kind = "law" }, { id = "old", title = "book @", kind = "handbook", date = 1990-01-01 }]
cause = [{ id = "c1", what = "cause @" }]
claim = [{ id = "cl", text = "claim @", says = "never said @" }]
differs = [{ on_camera = "door off @", viewers = "handle on @" }]
caution = [{ id = "ca", hazard = "mains-isolation", signal = "notice", say = "Mind @.", card = "c @" }]
[video]
title = "T <@>"
subject = "mains washing machine @"
language = "xx@"
[shoot]
people = [{ id = "kid", adult = false }]
[[test]]
id = "t1"
question = "Is it @?"
checks = ["c1"]
[[waiver]]
rule = "value-open@"
at = "spec:@"
[[waiver]]
rule = "object-untried"
why = "why @"
by = "who @"
[[correction]]
now = "now @"
[[step]]
title = "Back @ off"
only_if = "test:t1 fails"
do = "undo the back panel @ and pull the wires"
say = "Undo the back panel @. These always @ fail because @ rusts. It takes 5 bar @. I'm pretty sure @. NV-22 @."
people = ["kid"]
fasteners = ["f"]
parts = ["p"]
[[step.cue]]
who = "kid"
when = "now @"
does = "hold @"
`, "@", text)
}

// Whatever stands in a plan's texts, findings print no control character and
// nothing that turns or hides the text around it, in any form.
func TestHostileCharacters(t *testing.T) {
	findings := lint.Run(pass(t, hostile(`\u001b[31m\u202e\u0007\u2028\u200b\u0085\u007f\u2066\U000e0041é`)))
	rules := map[string]bool{}
	for _, f := range findings {
		rules[f.Rule] = true
	}
	if len(rules) < 25 {
		t.Fatalf("only %d rules speak: the test shows little", len(rules))
	}
	for name, write := range map[string]func(*bytes.Buffer) error{
		"text":        func(b *bytes.Buffer) error { return diag.Text(b, findings, diag.Style{Excerpt: true, Width: 80}) },
		"text, uncut": func(b *bytes.Buffer) error { return diag.Text(b, findings, diag.Style{}) },
		"json":        func(b *bytes.Buffer) error { return diag.JSON(b, findings) },
		"sarif":       func(b *bytes.Buffer) error { return diag.SARIF(b, findings, "1", lint.Page) },
	} {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Error(name, err)
		}
		if !utf8.Valid(b.Bytes()) || !strings.Contains(b.String(), "é") {
			t.Errorf("%s is broken", name)
		}
		for _, r := range b.String() {
			if r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || r == '\u2028' || r == '\u2029') {
				t.Errorf("%s holds %U", name, r)
				break
			}
		}
	}
}

// Messages are bounded whatever a title holds, and what they are about stands
// in front.
func TestHostileLength(t *testing.T) {
	for _, f := range lint.Run(pass(t, hostile(strings.Repeat("word ", 20000)))) {
		if n := utf8.RuneCountInString(f.Message); n > 600 {
			t.Errorf("%s says %d characters", f.Rule, n)
		}
		if n := utf8.RuneCountInString(f.Hint); n > 600 {
			t.Errorf("%s hints %d characters", f.Rule, n)
		}
	}
}

// Thousands of everything are read in a time that grows with them, not with
// their square: the allocations, which no busy machine changes, tell.
func TestHostileNumber(t *testing.T) {
	many := func(n int) string {
		var b strings.Builder
		b.WriteString("caution = [\n")
		for i := range n {
			fmt.Fprintf(&b, "  { id = \"c%d\", hazard = \"mains-isolation\", say = \"Mains kills. Pull the plug first.\" },\n", i)
		}
		b.WriteString("]\n[video]\ntitle = \"T\"\nsubject = \"washing machine\"\n[[step]]\ntitle = \"A\"\ncautions = [")
		for i := range n {
			fmt.Fprintf(&b, "\"c%d\", ", i)
		}
		b.WriteString("]\ndo = \"undo the back panel of the washing machine\"\nsay = \"Off it comes.\"\n")
		return b.String()
	}
	cost := func(n int) float64 {
		text := many(n)
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		lint.Run(pass(t, text))
		runtime.ReadMemStats(&after)
		return float64(after.TotalAlloc - before.TotalAlloc)
	}
	cost(1) // what is made once
	if small, large := cost(200), cost(2000); large > 25*small {
		t.Errorf("ten times the cautions take %.0f times the memory", large/small)
	}
}
