package lint_test

import (
	"slices"
	"strings"
	"testing"

	"fixslate/chapters"
	"fixslate/chapters/align"
	"fixslate/chapters/captions"
	"fixslate/plan/diag"
	"fixslate/plan/lint"
	"fixslate/templates/blurb"
)

// editPass lays captions beside a plan.
func editPass(t testing.TB, text, srt string) *lint.Pass {
	t.Helper()
	p := pass(t, text)
	file, _ := captions.Read([]byte(srt), "edit.srt")
	match := align.Read(p.Plan, p.Timeline, file.Cues)
	p.Edit = &lint.Edit{Captions: file, Match: match, Timeline: p.Timeline, Chapters: p.Chapters}
	p.Timeline = match.Timeline(p.Plan)
	p.Chapters = chapters.FromTimeline(p.Plan, p.Timeline)
	p.Description = blurb.Describe(p.Plan, p.Chapters)
	return p
}

// Every rule of a finished edit has a page with a plan and captions for wrong
// and right; the wrong ones raise the rule, the right ones raise nothing.
func TestEditPages(t *testing.T) {
	rules := 0
	for _, r := range lint.Rules() {
		if r.Group != lint.AfterEdit {
			continue
		}
		rules++
		t.Run(r.Name, func(t *testing.T) {
			page, ok := lint.Page(r.Name)
			if !ok || page.WrongEdit == "" || page.RightEdit == "" {
				t.Fatalf("no page with captions: %v", ok)
			}
			about := func(f diag.Finding) bool { return f.Rule == r.Name }
			got := lint.Review(editPass(t, whole(page.Wrong), page.WrongEdit))
			if !slices.ContainsFunc(got, about) {
				t.Errorf("the wrong example raises no %s:\n%s", r.Name, print(got))
			}
			for _, f := range got {
				switch {
				case f.Message == "" || strings.HasSuffix(f.Message, "."):
					t.Errorf("%q ends with a full stop, or is empty", f.Message)
				case f.Hint == "":
					t.Errorf("%q says no remedy", f.Message)
				case f.At.Source == nil:
					t.Errorf("%q has no place", f.Message)
				}
			}
			if got := lint.Review(editPass(t, whole(page.Right), page.RightEdit)); len(got) > 0 {
				t.Errorf("the right example raises\n%s", print(got))
			}
		})
	}
	if rules < 6 {
		t.Errorf("%d rules", rules)
	}
}

// A wrong figure that a correction takes back, in its step, at its time or in no
// place, is a note; another figure, or another step's, is an error as before.
func TestCorrectedFigure(t *testing.T) {
	page, _ := lint.Page("number-misspoken") // nine millimetres are said, the plan has five
	for correction, want := range map[string]diag.Severity{
		"": diag.Error,
		"at = \"measure\"\nwas = \"9 mm\"\nnow = \"5 mm\"":  diag.Note,
		"at = \"0:28\"\nwas = \"9 mm\"\nnow = \"5 mm\"":     diag.Note,
		"was = \"nine millimetres\"\nnow = \"5 mm\"":        diag.Note,
		"at = \"measure\"\nwas = \"8 mm\"\nnow = \"5 mm\"":  diag.Error,
		"at = \"unplug\"\nwas = \"9 mm\"\nnow = \"5 mm\"":   diag.Error,
		"at = \"measure\"\nnow = \"5 mm, not what I said\"": diag.Error,
	} {
		text := whole(page.Wrong)
		if correction != "" {
			text += "[[correction]]\ndate = 2026-11-25\n" + correction + "\n"
		}
		var got diag.Severity
		for _, f := range lint.Review(editPass(t, text, page.WrongEdit)) {
			if f.Rule == "number-misspoken" {
				got = f.Severity
			}
		}
		if got != want {
			t.Errorf("with\n%s\nit is %v, want %v", correction, got, want)
		}
	}
}

// A finding stands at the second of its word, not of its cue; what stands in the
// plan has none.
func TestEditSecond(t *testing.T) {
	const srt = "1\n00:00:10,000 --> 00:00:20,000\nset it to six bar\n\n2\n00:00:20,000 --> 00:00:21,000\nand go\n"
	p := editPass(t, "[video]\ntitle = \"Boiler\"\n[[step]]\nid = \"set\"\ntitle = \"Set it\"\nsay = \"Set it to one bar.\"\n", srt)
	at := func(word string) diag.Place {
		start := strings.Index(p.Edit.Captions.Source.Text, word)
		return diag.Place{Source: p.Edit.Captions.Source, Span: diag.Span{Start: start, End: start + len(word)}}
	}
	var seconds []float64
	for _, word := range []string{"set", "six", "and"} {
		s, ok := p.Edit.Second(at(word))
		if !ok {
			t.Fatalf("%q has no second", word)
		}
		seconds = append(seconds, s)
	}
	if seconds[0] != 10 || seconds[1] < 14 || seconds[1] > 18 || seconds[2] != 20 {
		t.Errorf("words are heard at %v", seconds)
	}
	if _, ok := p.Edit.Second(diag.Place{Source: &diag.Source{}}); ok {
		t.Error("a place in the plan has a second in the edit")
	}
}
