package build

import (
	"bytes"
	"context"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fixslate/chapters"
	"fixslate/chapters/align"
	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/given"
	"fixslate/plan/prose"
	"fixslate/samples"
)

// washerEdit is the sample's plan and the rough edit beside it.
func washerEdit(t testing.TB) (Request, Edit) {
	t.Helper()
	text, ok := samples.Plan("washer-pump")
	if !ok {
		t.Fatal("no sample")
	}
	srt, err := os.ReadFile(filepath.Join("..", "..", "..", "samples", "washer-pump", "edit.srt"))
	if err != nil {
		t.Fatal(err)
	}
	src, faults := diag.NewSource("plan.toml", text)
	return Request{Source: src, Faults: faults}, Edit{Captions: srt, Name: "edit.srt"}
}

func match(t testing.TB, r Request, e Edit) Matched {
	t.Helper()
	m, err := Match(r, e)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// The real chapters start where their first words stand in the captions, and a
// step that was cut is in none.
func TestRealChapters(t *testing.T) {
	r, e := washerEdit(t)
	m := match(t, r, e)
	if !m.Usable() {
		t.Fatalf("not usable: %+v", m.Match.Troubles)
	}
	// the first words of each chapter's first step, as they stand in a cue
	for title, words := range map[string]string{
		"Two pins or three": "you have one of two pumps", "Listen to it first": "okay so a wet floor", "Make it safe": "a mains shock can kill",
		"Slide it out": "it weighs sixty eight", "Let the water run out": "after a hot wash", "Open the front and prove it dead": "wear cut resistant gloves",
		"Measure the winding": "set the meter to ohms", "Old pump out": "slide the tray under", "New pump in": "wipe the seat clean",
		"Prove it": "wet hands and a mains", "Back where it lives": "slide it back the way",
	} {
		at := -1.0
		for _, c := range m.Edit.Cues {
			if strings.HasPrefix(strings.ReplaceAll(c.Text, "\n", " "), words) {
				at = c.Start.Seconds()
			}
		}
		i := slices.IndexFunc(m.Chapters, func(c chapters.Chapter) bool { return c.Title == title })
		switch {
		case at < 0:
			t.Fatalf("no cue begins with %q", words)
		case i < 0:
			t.Errorf("no chapter %q", title)
		case math.Abs(m.Chapters[i].Start-at) > 2:
			t.Errorf("chapter %q starts at %.1f, its words at %.1f", title, m.Chapters[i].Start, at)
		}
	}
	if i := slices.IndexFunc(m.Match.Steps, func(s align.Step) bool { return s.ID == "drip-check" }); m.Match.Steps[i].Status != align.Missing {
		t.Error("the step that was cut counts as heard")
	}
}

// The same plan and edit give the same bytes, and a match stands in a build's
// folder without taking from it.
func TestMatchBesideBuild(t *testing.T) {
	r, e := washerEdit(t)
	m := match(t, r, e)
	files := m.Files()
	again := match(t, r, e)
	for i, f := range again.Files() {
		if !bytes.Equal(f.Bytes, files[i].Bytes) {
			t.Errorf("%s differs from one match to the next", f.Name)
		}
	}
	dir := filepath.Join(t.TempDir(), "out")
	planned := []File{{"book.html", []byte("book")}, {"chapters/planned.txt", []byte("0:00 A\n")}, {"description.txt", []byte("planned")}}
	if err := Write(context.Background(), Target{Dir: dir, Version: "test", PlanSum: "0"}, planned); err != nil {
		t.Fatal(err)
	}
	target := Target{Dir: dir, Version: "test", PlanSum: Sum(r.Source.Raw), Set: MatchSet}
	if err := Write(context.Background(), target, files); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"book.html", "chapters/planned.txt", "chapters/final.txt", "review.html"} {
		if _, err := os.Stat(filepath.Join(dir, filepath.FromSlash(name))); err != nil {
			t.Error(err)
		}
	}
	text, err := os.ReadFile(filepath.Join(dir, "description.txt"))
	if err != nil || !bytes.Contains(text, []byte(" Back where it lives")) {
		t.Errorf("the description has no real chapters: %v", err)
	}
}

// review.json has the fields that other programs rely on.
func TestMatchJSON(t *testing.T) {
	r, e := washerEdit(t)
	m := match(t, r, e)
	var got struct {
		Sum   string `json:"plan_sha256"`
		Steps []struct {
			ID         string   `json:"id"`
			Status     string   `json:"status"`
			Start      *float64 `json:"start_seconds"`
			End        *float64 `json:"end_seconds"`
			Confidence float64  `json:"confidence"`
		} `json:"steps"`
		Repeats, Added, Terms []map[string]any
		Findings              []map[string]any `json:"findings"`
	}
	if err := json.Unmarshal(m.JSON(), &got); err != nil {
		t.Fatal(err)
	}
	if got.Sum != Sum(r.Source.Raw) || len(got.Steps) != len(m.Planned.Plan.Steps) || got.Repeats == nil || got.Added == nil || got.Terms == nil {
		t.Errorf("%+v", got)
	}
	for i, s := range got.Steps {
		missing := m.Match.Steps[i].Status == align.Missing
		if (s.Start == nil) != missing || (s.End == nil) != missing || s.Confidence < 0 || s.Confidence > 1 {
			t.Errorf("step %+v", s)
		}
	}
	for _, f := range got.Findings {
		for _, key := range []string{"rule", "severity", "message", "file", "line", "column", "path", "step", "families", "help", "start_seconds"} {
			if _, ok := f[key]; !ok {
				t.Errorf("finding %v has no %s", f["rule"], key)
			}
		}
	}
}

// Words are accepted by term, heard words or id, and only those asked for.
func TestAcceptedTerms(t *testing.T) {
	terms := []align.Term{
		{Heard: "in pillar", Term: "impeller", Ref: plan.Ref{Kind: plan.KindTerm, ID: "wheel"}, Cue: 0, Span: prose.Span{Start: 4, End: 13}},
		{Heard: "sand\npipe", Term: "standpipe", Ref: plan.Ref{Kind: plan.KindTerm, ID: "standpipe"}, Cue: 1, Span: prose.Span{Start: 0, End: 9}},
		{Heard: "in pillow", Term: "impeller", Ref: plan.Ref{Kind: plan.KindTerm, ID: "wheel"}, Cue: 2},
	}
	for _, c := range []struct {
		words []string
		want  []bool
	}{
		{nil, []bool{false, false, false}},
		{[]string{"all"}, []bool{true, true, true}},
		{[]string{"Impeller"}, []bool{true, false, true}},
		{[]string{"wheel"}, []bool{true, false, true}},
		{[]string{"term:standpipe", ""}, []bool{false, true, false}},
		{[]string{"sand pipe", "in pillow"}, []bool{false, true, true}},
	} {
		if got, err := accepted(terms, c.words); err != nil || !slices.Equal(got, c.want) {
			t.Errorf("%v accepts %v, %v", c.words, got, err)
		}
	}
	if _, err := accepted(terms, []string{"gasket"}); err == nil || !strings.Contains(err.Error(), "accept all, or some of impeller, standpipe") {
		t.Errorf("an unknown term gives %v", err)
	}
	if _, err := accepted(nil, []string{"all"}); err != nil {
		t.Errorf("all of nothing gives %v", err)
	}
}

// The snippet is TOML that the plan takes, with what it had before.
func TestSnippet(t *testing.T) {
	src, _ := diag.NewSource("plan.toml", []byte("[video]\ntitle = \"T\"\n[[term]]\nid = \"wheel\"\ntext = \"impeller\"\nmisheard = [\"in pillar\"]\n[[step]]\ntitle = \"S\"\nsay = \"Turn the impeller.\"\n"))
	m := match(t, Request{Source: src}, Edit{Captions: []byte("1\n00:00:01,000 --> 00:00:03,000\nturn it\n"), Name: "e.srt"})
	m.Match.Terms = []align.Term{
		{Heard: "in\npillow", Term: "impeller", Ref: plan.Ref{Kind: plan.KindTerm, ID: "wheel"}},
		{Heard: `odd "x" \`, Term: "drain pump", Ref: plan.Ref{Kind: plan.KindPart, ID: "pump"}},
	}
	m.Accepted = []bool{false, false}
	want := "# in place of the plan's own\n[[term]]\nid = \"wheel\"\ntext = \"impeller\"\nmisheard = [\"in pillar\", \"in pillow\"]\n[[term]]\ntext = \"drain pump\"\nmisheard = [\"odd \\\"x\\\" \\\\\"]\n"
	if got := m.Snippet(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	p := given.Plan(t, "[video]\ntitle = \"T\"\n[[step]]\ntitle = \"S\"\n"+want)
	if got := p.Terms[1].Misheard; got[0] != `odd "x" \` {
		t.Errorf("the plan takes it as %q", got)
	}
	src, _ = diag.NewSource("plan.toml", []byte("term = [{ id = \"wheel\", text = \"impeller\" }]\n[video]\ntitle = \"T\"\n[[step]]\ntitle = \"S\"\nsay = \"Turn the impeller.\"\n"))
	list := match(t, Request{Source: src}, Edit{Captions: []byte("1\n00:00:01,000 --> 00:00:03,000\nturn it\n"), Name: "e.srt"})
	list.Match.Terms, list.Accepted = m.Match.Terms, m.Accepted
	rows := list.Snippet()
	if want := "# in place of the plan's own\n{ id = \"wheel\", text = \"impeller\", misheard = [\"in pillow\"] },\n"; !strings.HasPrefix(rows, want) {
		t.Errorf("a plan that lists its terms gets\n%s\nnot\n%s", rows, want)
	}
	given.Plan(t, "term = [\n"+rows+"]\n[video]\ntitle = \"T\"\n[[step]]\ntitle = \"S\"\n")
	m.Match.Terms[0].Heard = "In  pillar"
	if got := m.Snippet(); strings.Contains(got, "impeller") || !strings.Contains(got, "drain pump") {
		t.Errorf("what the plan knows already comes again:\n%s", got)
	}
	m.Accepted[0] = true
	if got := m.Snippet(); strings.Contains(got, "drain pump") {
		t.Errorf("with one accepted, the others stay away; got\n%s", got)
	}
}

// A plan changed since the match names the chapters whose steps were changed,
// and only those.
func TestStaleChapters(t *testing.T) {
	r, e := washerEdit(t)
	m := match(t, r, e)
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "review.json"), m.JSON(), 0o600); err != nil {
		t.Fatal(err)
	}
	decode := func(from, to string) (*plan.Plan, string) {
		text := bytes.Replace(r.Source.Raw, []byte(from), []byte(to), 1)
		return given.Plan(t, text), Sum(text)
	}
	p, sum := decode("x-none", "")
	if s, matched, err := StaleIn(dir, p, sum); err != nil || !matched || s.Any() {
		t.Errorf("the same plan gives %+v, %v, %v", s, matched, err)
	}
	p, sum = decode("three old towels and a cup", "four old towels and a cup")
	s, matched, err := StaleIn(dir, p, sum)
	if err != nil || !matched || len(s.Chapters) != 1 || len(s.New) != 0 || !strings.Contains(s.Chapters[0], "Make it safe") {
		t.Errorf("a changed step gives %+v, %v, %v", s, matched, err)
	}
	p, sum = decode("kind = \"handbook\"", "kind = \"maker\"")
	if s, _, _ := StaleIn(dir, p, sum); s.Any() {
		t.Errorf("a changed source gives %+v", s)
	}
	if _, matched, err := StaleIn(t.TempDir(), p, sum); matched || err != nil {
		t.Errorf("an empty folder gives %v, %v", matched, err)
	}
	if err := os.WriteFile(filepath.Join(dir, "review.json"), []byte("{"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, matched, err := StaleIn(dir, p, sum); matched || err != nil {
		t.Errorf("a broken review gives %v, %v", matched, err)
	}
}

// Whatever captions come, a match makes its files without failing.
func FuzzMatch(f *testing.F) {
	src, _ := diag.NewSource("plan.toml", []byte("[video]\ntitle = \"Change a brush\"\n[[term]]\ntext = \"commutator\"\n[[step]]\ntitle = \"Out\"\ncautions = [\"sharp-edges\"]\nsay = \"Unscrew the black cap. Lift out the worn brush.\"\n[[step]]\ntitle = \"In\"\nsay = \"Slide the new brush in, 5 mm of it.\"\n"))
	for _, seed := range []string{
		"", "x", "1\n00:00:01,000 --> 00:00:03,000\nunscrew the black cap\n\n2\n00:00:02,000 --> 00:00:01,000\nlift out the worn brush\n",
		"WEBVTT\n\n00:01.000 --> 99:59:59.000\nslide the <b>new</b> brush in nine mm of it\n",
		"1\n00:00:01,000 --> 00:00:03,000\nthe come you tater\n\n2\n00:00:03,000 --> 00:00:03,000\n\u202e\n",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, captions []byte) {
		m, err := Match(Request{Source: src}, Edit{Captions: captions, Name: "e", Accept: []string{"all"}})
		if err != nil {
			t.Fatal(err)
		}
		for _, file := range m.Files() {
			if file.Name == "review.json" && !json.Valid(file.Bytes) {
				t.Errorf("review.json is no JSON:\n%s", file.Bytes)
			}
		}
		last := -1.0
		for _, c := range m.Chapters {
			if c.Start < last || math.IsNaN(c.Start) {
				t.Errorf("chapters %v", m.Chapters)
			}
			last = c.Start
		}
	})
}

func BenchmarkMatch(b *testing.B) {
	r, e := washerEdit(b)
	for b.Loop() {
		match(b, r, e)
	}
}
