package sheet

import (
	"bytes"
	"context"
	"encoding/csv"
	"strings"
	"testing"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"

	"fixslate/chapters"
	"fixslate/plan"
	"fixslate/plan/given"
	"fixslate/plan/timing"
	"fixslate/samples"
	"fixslate/shotlist"
)

// hostile is a plan whose texts try to be markup, formulas and escapes.
const hostile = `
[video]
title = "# A <b>bold</b> [link](javascript:alert(1)) | *title*"
[shoot]
gear = ["- [x] done", "1. camera"]
people = [{ id = "helper", from = "10:00", until = "11:00" }]
[[tool]]
id = "meter"
name = "=1+1 meter"
[[step]]
title = "@SUM(A1) | step\n\n# not a heading"
say = "-5 V is {{not}} a formula."
do = "=HYPERLINK(\"http://example.org\")"
tools = ["meter"]
[[step.shot]]
of = "+1 | **frame**"
[[step.cue]]
who = "helper"
does = "<script>alert(1)</script>"
`

// Text of the plan stays text: a Markdown reader of others sees no link, no
// markup and no heading that is not ours.
func TestMarkdownStaysPlain(t *testing.T) {
	p := given.Plan(t, hostile)
	line := timing.Estimate(p, timing.DefaultPace())
	shots := shotlist.FromPlan(p)
	md := goldmark.New(goldmark.WithExtensions(extension.Table))
	for name, sheet := range map[string][]byte{
		"before": Before(p), "day": Day(p, shots, dayOf(p, shots, line)), "shots": Shots(p, shots, shotlist.Coverage(p, shots)), "helper": Helper(p, shots, dayOf(p, shots, line), nil), "edit": Edit(p, line, chapters.FromTimeline(p, line), nil),
	} {
		var html bytes.Buffer
		if err := md.Convert(sheet, &html); err != nil {
			t.Fatal(err)
		}
		for _, bad := range []string{"<a ", "<b>", "<script", "<em>title", "<strong>frame", "javascript:alert(1)\"", "<h1>not a heading"} {
			if strings.Contains(html.String(), bad) {
				t.Errorf("%s.md makes %s:\n%s", name, bad, sheet)
			}
		}
	}
}

func dayOf(p *plan.Plan, shots []shotlist.Shot, line timing.Timeline) *shotlist.Day {
	day := shotlist.Arrange(context.Background(), shotlist.Call{Plan: p, Timeline: line, Shots: shots})
	return &day
}

// Each shot of the day stands on its sheet once, in a table that a Markdown
// reader of others sees as one, with the clock in its first column.
func TestDaySheet(t *testing.T) {
	for _, name := range samples.Names() {
		text, _ := samples.Plan(name)
		p := given.Plan(t, string(text))
		shots := shotlist.FromPlan(p)
		day := dayOf(p, shots, timing.Estimate(p, timing.DefaultPace()))
		sheet := Day(p, shots, day)
		var html bytes.Buffer
		if err := goldmark.New(goldmark.WithExtensions(extension.Table)).Convert(sheet, &html); err != nil {
			t.Fatal(err)
		}
		rows := 0
		for i := range day.Sessions {
			rows += len(day.Lines(i, p, shots))
		}
		if n := strings.Count(html.String(), "<tr>"); n != rows+len(day.Sessions) {
			t.Errorf("%s: %d rows of %d", name, n, rows)
		}
		if n := strings.Count(html.String(), "☐"); n != day.Filmed() {
			t.Errorf("%s: %d boxes for %d shots", name, n, day.Filmed())
		}
	}
}

// No cell of the CSV is a formula, and a CSV reader of others gets every row
// whole.
func TestCSVIsSafe(t *testing.T) {
	p := given.Plan(t, hostile)
	rows, err := csv.NewReader(bytes.NewReader(ShotsCSV(p, shotlist.FromPlan(p)))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) < 3 {
		t.Fatalf("%d rows", len(rows))
	}
	for _, row := range rows {
		for _, cell := range row {
			if cell != "" && strings.ContainsRune("=+-@\t\r", rune(cell[0])) {
				t.Errorf("cell %q is a formula", cell)
			}
		}
	}
}

// Each sheet says so where there is nothing.
func TestEmptySheetsSaySo(t *testing.T) {
	p := given.Plan(t, "[video]\ntitle = \"T\"\n[[step]]\ntitle = \"S\"\nsay = \"Look.\"\n")
	line := timing.Estimate(p, timing.DefaultPace())
	for want, sheet := range map[string][]byte{
		"Nothing is open.": Before(p), "No helper is planned.": Helper(p, nil, &shotlist.Day{}, nil), "The plan has none.": Edit(p, line, chapters.FromTimeline(p, line), nil),
	} {
		if !bytes.Contains(sheet, []byte(want)) {
			t.Errorf("no %q in:\n%s", want, sheet)
		}
	}
	if Voice(p, line) != nil {
		t.Error("a voice sheet without lines for it")
	}
}

func TestVoice(t *testing.T) {
	p := given.Plan(t, "[voice]\nnarrated = \"later\"\n[video]\ntitle = \"T\"\n[[step]]\ntitle = \"S\"\nsay = \"Look here.\"\n[[step]]\ntitle = \"Live\"\nnarrated = \"live\"\nsay = \"Not this.\"\n")
	sheet := string(Voice(p, timing.Estimate(p, timing.DefaultPace())))
	if !strings.Contains(sheet, "s – Look here.") || strings.Contains(sheet, "Not this") {
		t.Error(sheet)
	}
}

// A line that quotes a value nobody knows yet says so to whom reads it out;
// the same words of the author's own do not.
func TestVoiceMarksWhatIsMissing(t *testing.T) {
	p := given.Plan(t, "spec = [{ id = \"gap\", what = \"gap\", value = \"?\" }]\n[voice]\nnarrated = \"later\"\n[video]\ntitle = \"T\"\n[[step]]\ntitle = \"S\"\nsay = \"The gap: {gap}. Easy to be found.\"\n[[step]]\ntitle = \"U\"\nsay = \"No leak is to be found.\"\n")
	sheet := string(Voice(p, timing.Estimate(p, timing.DefaultPace())))
	if n := strings.Count(sheet, "a value is missing"); n == 0 || strings.Contains(sheet, "leak is to be found. **") {
		t.Error(sheet)
	}
}
