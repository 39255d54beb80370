package blurb

import (
	"bytes"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fixslate/chapters"
	"fixslate/plan"
	"fixslate/plan/given"
	"fixslate/plan/timing"
	"fixslate/plan/trade"
	"fixslate/samples"
)

func describe(t *testing.T, text string) (*plan.Plan, Description) {
	t.Helper()
	p := given.Plan(t, text)
	return p, Describe(p, chapters.FromTimeline(p, timing.Estimate(p, timing.DefaultPace())))
}

// The text keeps to the limit by leaving parts out in the documented order,
// and never a caution, a correction or a chapter.
func TestDescriptionKeepsToItsLimit(t *testing.T) {
	text, _ := samples.Plan("van-blower")
	limited := func(limit string) string {
		return strings.Replace(string(text), "[publish]\n", "[publish]\ndescription_max = "+limit+"\n", 1)
	}
	_, whole := describe(t, limited("20000"))
	if len(whole.LeftOut) > 0 {
		t.Fatalf("the sample's description leaves out %v", whole.LeftOut)
	}
	order := []string{"footer", "What to test", "Sources", "Torque", "Supplies", "Parts", "Tools", "How the filmed one differs", "Versions"}
	for _, limit := range []string{"4000", "3000", "2500", "2000", "100"} {
		p, d := describe(t, limited(limit))
		last := -1
		for _, name := range d.LeftOut {
			at := indexOf(order, name)
			if at <= last {
				t.Errorf("limit %s: %v is not the documented order", limit, d.LeftOut)
			}
			last = at
		}
		if len(d.Text) > p.Publish.DescriptionMax && len(d.LeftOut) < 7 {
			t.Errorf("limit %s: %d bytes, left out only %v", limit, len(d.Text), d.LeftOut)
		}
		for _, c := range Cautions(p) {
			if !bytes.Contains(d.Text, []byte(c.Text)) {
				t.Errorf("limit %s: the caution %q is gone", limit, c.ID)
			}
		}
		if !bytes.Contains(d.Text, []byte("0:00 ")) || !bytes.Contains(d.Text, []byte(deference)) {
			t.Errorf("limit %s: chapters or deference are gone", limit)
		}
		if !bytes.Equal(d.Markdown, whole.Markdown) {
			t.Errorf("limit %s: the Markdown is not whole", limit)
		}
	}
}

// Before a part is left out, the reasons beside tools go.
func TestReasonsGoFirst(t *testing.T) {
	plan := func(limit string) string {
		return "tool = [{ id = \"wrench\", name = \"torque wrench\", drives = [\"8 mm\"], why = \"the threads are in plastic\", instead_of = \"feel\" }]\n" +
			"[publish]\ndescription_max = " + limit + "\nfooter = \"See you.\"\n[video]\ntitle = \"T\"\n[[step]]\ntitle = \"S\"\nsay = \"Look.\"\ntools = [\"wrench\"]\n"
	}
	_, whole := describe(t, plan("5000"))
	if !bytes.Contains(whole.Text, []byte("– torque wrench – 8 mm; the threads are in plastic; instead of feel\n")) {
		t.Fatalf("no reason in:\n%s", whole.Text)
	}
	_, short := describe(t, plan(strconv.Itoa(len(whole.Text)-1)))
	if !bytes.Contains(short.Text, []byte("– torque wrench – 8 mm\n")) || len(short.LeftOut) > 0 || !bytes.Contains(short.Text, []byte("See you.")) {
		t.Errorf("left out %v:\n%s", short.LeftOut, short.Text)
	}
	if !bytes.Equal(short.Markdown, whole.Markdown) {
		t.Error("the Markdown is not whole")
	}
}

// Each reading is told with its moment and its place, and none twice.
func TestReadings(t *testing.T) {
	p, _ := describe(t, `
tool = [{ id = "meter", name = "multimeter" }]
[video]
title = "T"
[[test]]
id = "fuse"
question = "Is it whole?"
instrument = "meter"
expect = "12 V on both legs"
[[test.reading]]
when = "first"
at = "left leg"
expect = "at least 12 V"
[[test]]
id = "coil"
question = "Is it open?"
instrument = "meter"
at = "pin 1 to 2"
expect = "4 Ω"
[[test.reading]]
at = "tips together"
expect = "at most 0.5 Ω"
[[test.reading]]
at = "pin 1 to 2"
expect = "4 Ω"
[[step]]
title = "S"
tests = ["fuse", "coil"]
say = "Look."
`)
	want := []string{
		"Is it whole? Good: 12 V on both legs; first, at least 12 V (left leg)",
		"Is it open? Good: at most 0.5 Ω (tips together); 4 Ω (pin 1 to 2)",
	}
	if got := tests(p); !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}

func indexOf(list []string, word string) int {
	for i, w := range list {
		if w == word {
			return i
		}
	}
	return -1
}

// 1 lbf·ft is 1.355818 N·m (NIST SP 811, B.9).
func TestTorqueInBothUnits(t *testing.T) {
	for written, want := range map[string]string{
		"3 N·m":          "3 N·m (2.2 lb·ft)",
		"110 N·m":        "110 N·m (81.1 lb·ft)",
		"hand tight":     "hand tight",
		"81 lb·ft":       "81 lb·ft (110 N·m)",
		"20..25 N·m":     "20 to 25 N·m (15 to 18 lb·ft)",
		"at most 10 N·m": "at most 10 N·m (7.4 lb·ft)",
		"?":              "to be found",
	} {
		m, err := trade.ParseMeasure(written)
		if err != nil {
			t.Fatal(err)
		}
		if got := Torque(m); got != want {
			t.Errorf("%s prints %q, want %q", written, got, want)
		}
	}
}

func TestDescriptionIsTypable(t *testing.T) {
	_, d := describe(t, "[video]\ntitle = \"T <x>\"\nsymptom = \"a <b>bold</b> claim\"\n[[step]]\ntitle = \"S > T\"\nsay = \"Look.\"\n")
	if bytes.ContainsAny(d.Text, "<>") {
		t.Errorf("angle brackets in:\n%s", d.Text)
	}
}

func TestCommentAndCorrections(t *testing.T) {
	p, d := describe(t, `
[video]
title = "T"
[[correction]]
date = 2026-11-25
at = "s"
was = "5 N·m"
now = "3 N·m"
[[variant]]
name = "early"
tell = "two pins"
[[step]]
id = "s"
title = "Screw"
cautions = ["sharp-edges"]
say = "Look."
`)
	for _, text := range [][]byte{Comment(p, chapters.FromTimeline(p, timing.Estimate(p, timing.DefaultPace()))), d.Text, d.Markdown} {
		for _, want := range []string{"2026-11-25, 0:00 Screw: not 5 N·m but 3 N·m", "early: two pins", deference} {
			if !bytes.Contains(text, []byte(want)) {
				t.Errorf("no %q in:\n%s", want, text)
			}
		}
	}
}

// What a viewer has instead is called theirs once.
func TestViewers(t *testing.T) {
	for in, want := range map[string]string{
		"a hood held by two clips":       "yours: a hood held by two clips",
		"yours keeps its door":           "yours keeps its door",
		"Your oven sits in a cabinet":    "Your oven sits in a cabinet",
		"yourself a hood, if it is wet?": "yours: yourself a hood, if it is wet?",
	} {
		if got := Viewers(in); got != want {
			t.Errorf("%q gives %q, not %q", in, got, want)
		}
	}
}
