package diag

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

func TestPositions(t *testing.T) {
	src, findings := NewSource("p.toml", []byte("\ufeffab\r\ncåd\r\n\r\ne"))
	if len(findings) > 0 {
		t.Fatal(findings)
	}
	if src.Text != "ab\ncåd\n\ne" {
		t.Fatalf("%q", src.Text)
	}
	for offset, want := range map[int]Position{
		-1: {1, 1}, 0: {1, 1}, 2: {1, 3}, 3: {2, 1}, 4: {2, 2}, 6: {2, 3}, 7: {2, 4}, 8: {3, 1}, 9: {4, 1}, 10: {4, 2}, 99: {4, 2},
	} {
		if got := src.Position(offset); got != want {
			t.Errorf("offset %d is %v, want %v", offset, got, want)
		}
	}
	if src.Line(2) != "cåd" || src.Line(3) != "" || src.Line(4) != "e" || src.Line(5) != "" || src.Line(0) != "" {
		t.Error("lines")
	}
}

// Nothing that moves the cursor, hides text or forges a line comes through
// (CWE-150, CWE-117; the characters of CVE-2021-42574).
func TestVisible(t *testing.T) {
	for in, want := range map[string]string{
		"plain 8 mm":         "plain 8 mm",
		"Ω ± å 😀":            "Ω ± å 😀",
		"\x1b[31mred":        `\x1b[31mred`,
		"a\nb\tc\rd":         `a\x0ab\x09c\x0dd`,
		"\u009b2J":           `\u009b2J`,
		"\u202e\u2066\u200f": `\u202e\u2066\u200f`,
		"a\u2028b\u061c":     `a\u2028b\u061c`,
		"\xff\x7f":           `\xff\x7f`,
	} {
		if got := Visible(in); got != want {
			t.Errorf("Visible(%q) = %q, want %q", in, got, want)
		}
	}
}

func FuzzVisible(f *testing.F) {
	f.Add("a\x1b]0;x\x07\u202eb")
	f.Fuzz(func(t *testing.T, s string) {
		out := Visible(s)
		if !utf8.ValidString(out) {
			t.Fatalf("%q", out)
		}
		for _, r := range out {
			if r < ' ' || r == 0x7f || hidden(r) {
				t.Fatalf("%q lets %U through", out, r)
			}
		}
	})
}

func sample(t *testing.T) []Finding {
	t.Helper()
	src, _ := NewSource("dir/p.toml", []byte("[video]\ntitel = \"x\"\n"+strings.Repeat("y", 200)+" MARK\n"))
	at := strings.Index(src.Text, "MARK")
	return []Finding{
		{Rule: "b-rule", Severity: Warning, Message: "long line", At: Place{src, Span{at, at + 4}}},
		{Rule: "a-rule", Severity: Error, Message: "bad \x1b key", Hint: "write title", At: Place{src, Span{8, 13}}, Path: "video.titel", Families: []string{"mains-shock"}},
		{Rule: "c-rule", Severity: Error, Message: "set aside", At: Place{src, Span{0, 1}}, Waived: "because"},
	}
}

func TestText(t *testing.T) {
	findings := sample(t)
	Sort(findings)
	var b strings.Builder
	if err := Text(&b, findings, Style{Excerpt: true}); err != nil {
		t.Fatal(err)
	}
	want := `dir/p.toml:2:1: error: a-rule: bad \x1b key
   2 | titel = "x"
     | ^^^^^
  write title
dir/p.toml:3:202: warning: b-rule: long line
   3 | …yyyyyyyyyyyyyyyyyyyyyy MARK
     |                         ^^^^
`
	if got := b.String(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	for line := range strings.Lines(b.String()) {
		if utf8.RuneCountInString(line) > 81 {
			t.Errorf("over 80 columns: %s", line)
		}
	}
}

func TestTextKeepsWithinTheTerminal(t *testing.T) {
	src, _ := NewSource("a.toml", []byte("say = \"x\"\n"))
	f := Finding{Rule: "rule-name", Severity: Warning, At: Place{Source: src, Span: Span{Start: 0, End: 3}},
		Message: "step \"one\" says that many words are many words", Hint: "write fewer of them, or a-word-that-is-wider-than-all-the-line-is"}
	var b strings.Builder
	if err := Text(&b, []Finding{f}, Style{Width: 40}); err != nil {
		t.Fatal(err)
	}
	want := `a.toml:1:1: warning: rule-name: step
    "one" says that many words are many
    words
  write fewer of them, or
  a-word-that-is-wider-than-all-the-line-is
`
	if b.String() != want {
		t.Errorf("got:\n%s\nwant:\n%s", b.String(), want)
	}
}

// On a narrow terminal the excerpt gives way too, and a message begins on a line
// of its own where its place fills the first.
func TestTextOnANarrowTerminal(t *testing.T) {
	src, _ := NewSource("a-folder/with-a-long-name/plan.toml", []byte("say = \"one two three four five six seven eight nine ten eleven twelve\"\n"))
	f := Finding{Rule: "rule", Severity: Note, At: Place{Source: src, Span: Span{Start: 7, End: 10}}, Message: "said twice", Hint: "say it once"}
	var b strings.Builder
	if err := Text(&b, []Finding{f}, Style{Width: 48, Excerpt: true}); err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(b.String()) {
		if n := utf8.RuneCountInString(strings.TrimRight(line, " \n")); n > 48 && !strings.HasPrefix(line, "a-folder") {
			t.Errorf("%d columns: %s", n, line)
		}
	}
	if !strings.Contains(b.String(), "note: rule: \n    said twice\n") || !strings.Contains(b.String(), "say = \"one two three") {
		t.Errorf("got:\n%s", b.String())
	}
}

func TestCountsAndWorst(t *testing.T) {
	if c := Count(sample(t)); c != (Counts{Error: 1, Warning: 1}) {
		t.Errorf("%+v", c)
	}
	if Worst(sample(t)) != Error || Worst(sample(t)[2:]) != 0 {
		t.Error("a waived finding counts")
	}
}

func TestJSON(t *testing.T) {
	var b bytes.Buffer
	if err := JSON(&b, nil); err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(strings.Fields(b.String()), ""); got != `{"findings":[],"counts":{"error":0,"warning":0,"note":0}}` {
		t.Error(got)
	}
	b.Reset()
	if err := JSON(&b, sample(t)[1:2]); err != nil {
		t.Fatal(err)
	}
	var out struct{ Findings []Entry }
	if err := json.Unmarshal(b.Bytes(), &out); err != nil {
		t.Fatal(err)
	}
	if e := out.Findings[0]; e.Line != 2 || e.Column != 1 || e.Severity != "error" || e.Families[0] != "mains-shock" || e.Help != "write title" {
		t.Errorf("%+v", e)
	}
}

// SARIF 2.1.0 (OASIS): what its schema demands of a log, a run, a result and a
// region is there.
func TestSARIF(t *testing.T) {
	var b bytes.Buffer
	page := func(rule string) (Page, bool) { return Page{Rule: rule, Summary: "what it says"}, rule == "a-rule" }
	if err := SARIF(&b, sample(t), "1", page); err != nil {
		t.Fatal(err)
	}
	var log sarifLog
	if err := json.Unmarshal(b.Bytes(), &log); err != nil {
		t.Fatal(err)
	}
	run := log.Runs[0]
	if log.Version != "2.1.0" || len(run.Results) != 3 || len(run.Tool.Driver.Rules) != 3 {
		t.Fatalf("%s", b.String())
	}
	for _, r := range run.Results {
		if run.Tool.Driver.Rules[r.RuleIndex].ID != r.RuleID {
			t.Errorf("%s points at rule %d", r.RuleID, r.RuleIndex)
		}
		if r.Locations[0].Physical.Artifact.URI != "dir/p.toml" {
			t.Error(r.Locations[0].Physical.Artifact.URI)
		}
	}
	if got := run.Results[0].Locations[0].Physical.Region; *got != (sarifRegion{3, 202, 3, 206}) {
		t.Errorf("%+v", got)
	}
	if run.Results[2].Suppressions[0].Justification != "because" {
		t.Error("the waiver is no suppression")
	}
}

func TestParsePage(t *testing.T) {
	text := "# a-rule\n\nWhat it says.\n\nWhy it matters.\n\nSource: common practice, no source\n\n## Wrong\n\n```toml\na = 1\n```\n\n## Right\n\n```toml\na = 2\n```\n"
	p, err := ParsePage(text)
	if err != nil {
		t.Fatal(err)
	}
	want := Page{Rule: "a-rule", Summary: "What it says.", Text: "Why it matters.", Source: "common practice, no source", Wrong: "a = 1\n", Right: "a = 2\n"}
	if p != want {
		t.Errorf("%+v", p)
	}
	for _, cut := range []string{"# a-rule", "Source: ", "## Right", "What it says.\n\nWhy it matters.\n\n"} {
		if _, err := ParsePage(strings.Replace(text, cut, "", 1)); err == nil {
			t.Errorf("a page without %q is taken", cut)
		}
	}
}

// JSON and SARIF hold no character that moves or hides what stands around it,
// and mean what they held.
func TestPrintJSON(t *testing.T) {
	const evil = "a\u202eb\u0085c\u200bd\u2028e\x7ff\x1bg\U000e0041h ü"
	f := Finding{Rule: "r", Severity: Error, Message: evil, Hint: evil}
	var b strings.Builder
	if err := JSON(&b, []Finding{f}); err != nil {
		t.Fatal(err)
	}
	var got struct{ Findings []Entry }
	if err := json.Unmarshal([]byte(b.String()), &got); err != nil || got.Findings[0].Message != evil || got.Findings[0].Help != evil {
		t.Errorf("%v: %+v is not %q", err, got.Findings, evil)
	}
	if err := SARIF(&b, []Finding{f}, "1", func(string) (Page, bool) { return Page{}, false }); err != nil {
		t.Fatal(err)
	}
	for _, r := range b.String() {
		if r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r)) {
			t.Errorf("%U stands as it is", r)
		}
	}
	if !strings.Contains(b.String(), "ü") {
		t.Error("a letter is escaped")
	}
}

func TestShorten(t *testing.T) {
	for text, want := range map[string]string{"": "", "abc": "abc", "abcd": "abc…", "äöüß": "äöü…"} {
		if got := Shorten(text, 3); got != want {
			t.Errorf("%q is shortened to %q, want %q", text, got, want)
		}
	}
}
