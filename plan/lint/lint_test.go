package lint_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fixslate/chapters"
	"fixslate/chapters/captions"
	"fixslate/plan"
	"fixslate/plan/claim"
	"fixslate/plan/diag"
	"fixslate/plan/diagnose"
	"fixslate/plan/given"
	"fixslate/plan/hazard"
	"fixslate/plan/lint"
	"fixslate/plan/timing"
	"fixslate/shotlist"
	"fixslate/templates/blurb"
)

// today is the day of all tests.
var today = plan.Date{Year: 2026, Month: 11, Day: 25}

// pass makes what the rules read from a plan's text, which has no faults.
func pass(t testing.TB, text string) *lint.Pass {
	t.Helper()
	p, spans := given.Spans(t, text)
	line := timing.Estimate(p, timing.DefaultPace())
	chaps := chapters.FromTimeline(p, line)
	shots := shotlist.FromPlan(p)
	return &lint.Pass{
		Plan: p, Spans: spans, Timeline: line, Hazards: hazard.Read(p), Claims: claim.Plan(p),
		Tests: diagnose.Best(p, timing.TestMinutes), Shots: shots, Coverage: shotlist.Coverage(p, shots), Chapters: chaps,
		Cues: captions.Skeleton(p, line), Description: blurb.Describe(p, chaps), Today: today,
	}
}

// whole makes an example a plan: a page shows only what matters. A [video]
// and a step are added behind it where it has none.
func whole(example string) string {
	if !strings.Contains(example, "[video]") {
		example += "\n[video]\ntitle = \"Example\"\n"
	}
	if !strings.Contains(example, "[[step]]") {
		example += "\n[[step]]\ntitle = \"Look\"\nsay = \"Here it is.\"\n"
	}
	return example
}

func print(findings []diag.Finding) string {
	var b strings.Builder
	_ = diag.Text(&b, findings, diag.Style{})
	return b.String()
}

// Every rule has a page with a source; its wrong example raises the rule, and
// its right one, which differs in nothing but the remedy, does not.
func TestRulePages(t *testing.T) {
	for _, r := range lint.Rules() {
		if r.Group == lint.AfterEdit || strings.HasPrefix(r.Name, "caption-") && r.Group == lint.Publish {
			continue // these need an edit (TestEditPages) or a caption file (where the page stands)
		}
		t.Run(r.Name, func(t *testing.T) {
			page, ok := lint.Page(r.Name)
			if !ok {
				t.Fatal("no page, or it can't be read")
			}
			if page.Wrong == "" {
				t.Fatal("the page shows no wrong example")
			}
			about := func(f diag.Finding) bool { return f.Rule == r.Name && f.Waived == "" }
			if got := lint.Run(pass(t, whole(page.Wrong))); !slices.ContainsFunc(got, about) {
				t.Errorf("the wrong example raises no %s:\n%s", r.Name, print(got))
			}
			if got := lint.Run(pass(t, whole(page.Right))); slices.ContainsFunc(got, about) {
				t.Errorf("the right example raises %s:\n%s", r.Name, print(got))
			}
		})
	}
}

// No page without a rule, no rule twice, and names are words with hyphens.
func TestRuleNames(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range lint.Rules() {
		if seen[r.Name] {
			t.Errorf("%s stands twice", r.Name)
		}
		seen[r.Name] = true
		if strings.Trim(r.Name, "abcdefghijklmnopqrstuvwxyz-") != "" {
			t.Errorf("%s is no name of a rule", r.Name)
		}
	}
	files, err := filepath.Glob("*.md")
	if err != nil || len(files) == 0 {
		t.Fatal("no pages", err)
	}
	for _, f := range files {
		if _, err := os.Stat(f); err != nil || !seen[strings.TrimSuffix(f, ".md")] {
			t.Errorf("%s is the page of no rule", f)
		}
	}
}

// Every message is lower case without a full stop, names what to write, and
// points at a place of the plan.
func TestRuleWording(t *testing.T) {
	for _, r := range lint.Rules() {
		page, ok := lint.Page(r.Name)
		if !ok || r.Group == lint.AfterEdit {
			continue
		}
		for _, f := range lint.Run(pass(t, whole(page.Wrong))) {
			if f.Rule != r.Name {
				continue
			}
			switch {
			case f.Message == "" || strings.HasSuffix(f.Message, "."):
				t.Errorf("%s: %q ends with a full stop, or is empty", r.Name, f.Message)
			case f.Hint == "":
				t.Errorf("%s: %q says no remedy", r.Name, f.Message)
			case strings.HasSuffix(f.Hint, "."):
				t.Errorf("%s: the remedy %q ends with a full stop", r.Name, f.Hint)
			case f.At.Source == nil:
				t.Errorf("%s: %q has no place", r.Name, f.Message)
			}
		}
	}
}

// The plan's own captions are held to its profile.
func TestOwnCaptions(t *testing.T) {
	for rule, text := range map[string]string{
		"caption-wide": "[[step]]\ntitle = \"Look\"\nsay = \"Here is the " + strings.Repeat("overhead", 8) + " bracket.\"\n",
		"caption-fast": "[voice]\nwpm = 900\n[[step]]\ntitle = \"Look\"\nsay = \"" + strings.Repeat("Undo the three screws and lift the pump off its seat. ", 20) + "\"\n",
	} {
		got := lint.Run(pass(t, whole(text)))
		n := 0
		for _, f := range got {
			if f.Rule == rule {
				n++
			}
		}
		if n != 1 {
			t.Errorf("%s is raised %d times, want once a step:\n%s", rule, n, print(got))
		}
	}
	for _, f := range lint.Run(pass(t, whole("[[step]]\ntitle = \"Look\"\nsay = \"Undo the three screws.\"\n"))) {
		if strings.HasPrefix(f.Rule, "caption-") && f.Rule != "caption-missing" {
			t.Errorf("plain narration raises %s", f.Rule)
		}
	}
}
