package picture

import (
	"bytes"
	"context"
	"encoding/json"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fixslate/chapters"
	"fixslate/plan"
	"fixslate/plan/diag/outside"
	"fixslate/plan/diagnose"
	"fixslate/plan/given"
	"fixslate/plan/timing"
	"fixslate/samples"
	"fixslate/shotlist"
)

func treeFile(p *plan.Plan) []byte {
	return File(Tests(p, diagnose.Best(p, timing.TestMinutes))...)
}

func timeFile(p *plan.Plan) []byte {
	t := timing.Estimate(p, timing.DefaultPace())
	return TimeFile(p, t, chapters.FromTimeline(p, t))
}

// hostile is a plan whose every word tries to leave its place, and which is as
// long as words get.
func hostile(t testing.TB) *plan.Plan {
	const evil = `\"/><script>a()</script><![CDATA[ ]]> --> & \u2028\u202e\u001b]0;x\u0007 `
	long := evil + strings.Repeat("unbrechbareswortausvielenteilen", 8) + strings.Repeat(" ΩΩ 漢字漢字漢字漢字漢字漢字漢字 é", 6)
	src := fmt.Sprintf("[video]\ntitle = \"%[1]s\"\n[[variant]]\nid = \"a\"\nname = \"%[1]s\"\n", long)
	for i := range 12 {
		src += fmt.Sprintf("[[cause]]\nid = \"c%d\"\nwhat = \"%s\"\nvariants = [\"a\"]\n", i, long)
	}
	for i := range 8 { // each asks about half of what the one before left: a tree that turns off again and again
		src += fmt.Sprintf("[[test]]\nid = \"t%d\"\nquestion = \"%s\"\nat = \"%[2]s\"\nexpect = \"%[2]s\"\nwork = \"%dm\"\nchecks = [", i, long, i+1)
		for k := i; k < 12; k++ {
			src += fmt.Sprintf("\"c%d\",", k)
		}
		src += fmt.Sprintf("]\nfail = \"stop: %s\"\n", long)
	}
	return given.Plan(t, []byte(src+fmt.Sprintf("[[step]]\nid = \"one\"\ntitle = \"%[1]s\"\nsay = \"%[1]s\"\n", long)))
}

// elements reads a file as XML 1.0 and counts its elements.
func elements(t *testing.T, file []byte) map[string]int {
	t.Helper()
	count := map[string]int{}
	for d := xml.NewDecoder(bytes.NewReader(file)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return count
		}
		if err != nil {
			t.Fatalf("not well-formed: %v", err)
		}
		if e, ok := token.(xml.StartElement); ok {
			count[e.Name.Local]++
			for _, a := range e.Attr {
				if strings.HasPrefix(a.Name.Local, "on") || a.Name.Local == "href" {
					t.Errorf("<%s %s=%q>", e.Name.Local, a.Name.Local, a.Value)
				}
			}
		}
	}
}

func TestFilesAreSoundXML(t *testing.T) {
	plans := map[string]*plan.Plan{"hostile": hostile(t)}
	for _, name := range samples.Names() {
		text, _ := samples.Plan(name)
		plans[name] = given.Plan(t, text)
	}
	for name, p := range plans {
		for kind, file := range map[string][]byte{"tree": treeFile(p), "time": timeFile(p)} {
			if file == nil && (kind == "time" || len(p.Causes) > 0) {
				t.Errorf("%s: no %s", name, kind)
			}
			if count := elements(t, file); count["script"] > 0 || count["image"] > 0 || file != nil && count["text"] == 0 {
				t.Errorf("%s: the %s has %v", name, kind, count)
			}
			if bytes.ContainsAny(file, "\x1b\x07\u202e") {
				t.Errorf("%s: a control character in the %s", name, kind)
			}
		}
	}
}

// Nothing to test, nothing to draw.
func TestNothingToDraw(t *testing.T) {
	p := given.Plan(t, []byte("[video]\ntitle = \"x\"\n[[cause]]\nid = \"a\"\nwhat = \"a\"\n[[cause]]\nid = \"b\"\nwhat = \"b\"\n[[step]]\ntitle = \"y\"\n"))
	if file := treeFile(p); file != nil {
		t.Errorf("%s", file)
	}
}

// A browser says where every letter ended up: text must stay inside the
// picture, and no line lie on the next.
func TestTextStaysInThePicture(t *testing.T) {
	browser := outside.Program(t, "chromium")
	plans := map[string]*plan.Plan{"hostile": hostile(t)}
	for _, name := range samples.Names() {
		text, _ := samples.Plan(name)
		plans[name] = given.Plan(t, text)
	}
	html := "<!DOCTYPE html><meta charset=\"utf-8\"><body style=\"margin:0\">\n"
	for name, p := range plans {
		html += fmt.Sprintf("<div id=\"%s, tree\">%s</div>\n<div id=\"%[1]s, time\">%[3]s</div>\n", name, treeFile(p), timeFile(p))
	}
	html += `<pre id="out"></pre><script>
const out = [];
for (const svg of document.querySelectorAll("div > svg")) {
  const width = svg.viewBox.baseVal.width, scale = svg.getBoundingClientRect().width / width;
  const texts = Array.from(svg.querySelectorAll("text"), t => { const r = t.getBoundingClientRect(); return [r.left, r.right, r.top, r.bottom].map(n => n / scale); });
  out.push({name: svg.parentNode.id, width, texts});
}
document.getElementById("out").textContent = JSON.stringify(out);
</script>`
	page := filepath.Join(t.TempDir(), "page.html")
	if err := os.WriteFile(page, []byte(html), 0o600); err != nil {
		t.Fatal(err)
	}
	dom, err := exec.Command(browser, "--headless", "--no-sandbox", "--disable-gpu", "--user-data-dir="+t.TempDir(), "--window-size=390,844", "--dump-dom", "file://"+page).Output()
	if err != nil {
		t.Fatal(err)
	}
	_, out, _ := strings.Cut(string(dom), `<pre id="out">`)
	out, _, _ = strings.Cut(out, "</pre>")
	var got []struct {
		Name  string
		Width float64
		Texts [][4]float64 // left, right, top, bottom
	}
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatal(err)
	}
	if len(got) < len(plans) {
		t.Fatalf("%d pictures of %d plans were measured", len(got), len(plans))
	}
	for _, pic := range got {
		if len(pic.Texts) == 0 {
			t.Errorf("%s: no text", pic.Name)
		}
		for i, r := range pic.Texts {
			if r[0] < 0 || r[1] > pic.Width+0.5 {
				t.Errorf("%s: text %d runs from %.0f to %.0f in a picture of %.0f", pic.Name, i, r[0], r[1], pic.Width)
			}
			if i > 0 && math.Abs(r[0]-pic.Texts[i-1][0]) < 1 && r[2] < pic.Texts[i-1][3]-4 && r[3] > pic.Texts[i-1][2]+4 {
				t.Errorf("%s: lines %d and %d lie on each other", pic.Name, i-1, i)
			}
		}
	}
}

// The tree in the words of the plan: each end says what is wrong and what to
// do, and every number leads to the test that has it.
func TestFlow(t *testing.T) {
	text, _ := samples.Plan("washer-pump")
	p := given.Plan(t, text)
	flow := Flow(p, diagnose.Best(p, timing.TestMinutes))
	for i, test := range flow {
		if test.Number != i+1 {
			t.Errorf("test %d has number %d", i+1, test.Number)
		}
		for _, w := range test.Ways {
			if (w.Next == nil) == (w.Found == "") {
				t.Errorf("test %d, %q: leads to %v and %q", i+1, w.Seen, w.Next, w.Found)
			}
		}
	}
	if w := flow[1].Ways[0]; w.Seen != "bad" || w.Found != "an open pump winding" || w.Then != "go to step 13: Old pump out" || w.Chance != "18 %" {
		t.Errorf("%+v", w)
	}
}

// After a good reading that leaves one cause, the viewer is sent where the test
// of that cause sends him, not where the story stops when all tests were good;
// where no test sends him anywhere, and where a good reading leads to a step,
// the test's own words stay.
func TestFlowAfterAGoodReading(t *testing.T) {
	const plan = `
cause = [{ id = "belt", what = "a slack belt" }, { id = "brush", what = "worn brushes" }]
test = [
  { id = "push", question = "Tight?", instrument = "hand", work = "1m", checks = ["belt"], pass = %q, fail = "step:tighten" },
  { id = "length", question = "Long?", instrument = "eyes", work = "9m", checks = ["brush"], pass = "stop: see a repairer", fail = %q },
]
[video]
title = "Wheel"
[[step]]
id = "tighten"
title = "Tighten it"
tests = ["push", "length"]
[[step]]
id = "renew"
title = "New brushes"
`
	for _, c := range []struct{ pass, fail, want string }{
		{"stop: see a repairer", "step:renew", "go to step 2: New brushes"},
		{"stop: see a repairer", "", "see a repairer"},
		{"test:length", "step:renew", "go to step 2: New brushes"},
		{"step:tighten", "step:renew", "go to step 1: Tighten it"},
	} {
		p := given.Plan(t, fmt.Appendf(nil, plan, c.pass, c.fail))
		flow := Flow(p, diagnose.Best(p, timing.TestMinutes))
		if len(flow) != 1 || len(flow[0].Ways) != 2 {
			t.Fatalf("%+v: %d tests", c, len(flow))
		}
		at := slices.IndexFunc(flow[0].Ways, func(w Way) bool { return w.Found == "worn brushes" })
		if at < 0 || flow[0].Ways[at].Then != c.want {
			t.Errorf("%+v: sent to %+v", c, flow[0].Ways)
		}
	}
}

func TestMinutes(t *testing.T) {
	for m, want := range map[float64]string{0: "no time", 0.5: "under 1 min", 1: "1 min", 2.5: "2.5 min", 9.97: "10 min", 14.4: "14 min", 60: "1 h", 65: "1 h 5 min", 59.6: "1 h"} {
		if got := workTime(m); got != want {
			t.Errorf("%v: %q, want %q", m, got, want)
		}
	}
}

func TestEither(t *testing.T) {
	for want, names := range map[string][]string{"": nil, "a": {"a"}, "a or b": {"a", "b"}, "a, b or c": {"a", "b", "c"}, "a or b; or c, d": {"a or b", "c, d"}} {
		if got := either(names); got != want {
			t.Errorf("%v: %q, want %q", names, got, want)
		}
	}
}

// The lanes of a day: as many as set-ups and helpers, nothing drawn outside the
// picture, a break left open, and well-formed XML whatever the plan says.
func TestLanes(t *testing.T) {
	for _, name := range samples.Names() {
		text, _ := samples.Plan(name)
		p := given.Plan(t, text)
		shots := shotlist.FromPlan(p)
		day := shotlist.Arrange(context.Background(), shotlist.Call{Plan: p, Timeline: timing.Estimate(p, timing.DefaultPace()), Shots: shots})
		file := LanesFile(p, shots, &day)
		decoder := xml.NewDecoder(bytes.NewReader(file))
		bars := 0
		for {
			token, err := decoder.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			e, ok := token.(xml.StartElement)
			if !ok || e.Name.Local != "rect" {
				continue
			}
			at := map[string]float64{}
			class := ""
			for _, a := range e.Attr {
				if a.Name.Local == "class" {
					class = a.Value
				}
				if n, err := strconv.ParseFloat(a.Value, 64); err == nil {
					at[a.Name.Local] = n
				}
			}
			if class == "pic-bar" {
				bars++
			}
			if class != "pic-paper" && (at["x"] < 0 || at["x"]+at["width"] > Width+1) {
				t.Errorf("%s: %s from %v, %v wide", name, class, at["x"], at["width"])
			}
		}
		if bars == 0 || day.Setups > 0 && bars < day.Setups {
			t.Errorf("%s: %d bars for %d set-ups", name, bars, day.Setups)
		}
	}
	if LanesFile(given.Plan(t, []byte("[video]\ntitle = \"T\"\n[[step]]\ntitle = \"S\"\nsay = \"W.\"\n")), nil, &shotlist.Day{}) != nil {
		t.Error("a picture of nothing")
	}
	r := lane{}
	r.fill(shotlist.Entry{Start: 0, End: 100}, false)
	r.fill(shotlist.Entry{Start: 130, End: 900, Rests: [][2]int{{300, 600}}}, true)
	r.fill(shotlist.Entry{Start: 2000, End: 2100}, true)
	if got := fmt.Sprint(r.filled); got != "[[0 300] [600 900] [2000 2100]]" {
		t.Error(got)
	}
}

// A line of a picture never begins with a lone per cent sign.
func TestPerCentStaysWithItsNumber(t *testing.T) {
	for width := 20.0; width < 400; width++ {
		for _, line := range wrapped("good: 24 to 29 Ω, of 45 % and so on · 9 %", 10, width) {
			if strings.HasPrefix(line, "%") && width > 45 { // narrower, the number itself is broken
				t.Errorf("at %v a line is %q", width, line)
			}
		}
	}
}

// A version's tree has its own words for a cause.
func TestCausesOfAVersion(t *testing.T) {
	p := given.Plan(t, `
variant = [{ id = "old", name = "old" }, { id = "new", name = "new" }]
cause = [
  { id = "worn", what = "worn brushes", variants = ["old"] },
  { id = "worn", what = "a dead controller", variants = ["new"] },
  { id = "belt", what = "a slack belt" },
]
test = [{ id = "push", question = "Tight?", instrument = "hand", checks = ["belt"] }]
[video]
title = "Wheel"
[[step]]
title = "S"
tests = ["push"]
`)
	for _, r := range diagnose.Best(p, timing.TestMinutes).Versions {
		want := map[string]string{"old": "worn brushes", "new": "a dead controller"}[r.Variant]
		if flow := Flow(p, r); !slices.ContainsFunc(flow[0].Ways, func(w Way) bool { return w.Found == want }) {
			t.Errorf("%s: no end says %q: %+v", r.Variant, want, flow[0].Ways)
		}
	}
}
