package lint_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"fixslate/chapters/captions"
	"fixslate/plan/lint"
	"fixslate/samples"
)

// captionSabotages spoil one cue of the captions that a sample is given, the
// tenth, which stands apart from its neighbours in nothing.
var captionSabotages = []struct {
	what  string
	spoil func(cues []captions.Cue)
	want  string // rule@cue, counted from 1
}{
	{"a third line", func(c []captions.Cue) { c[9].Text = "one\ntwo\nthree" }, "caption-tall@10"},
	{"one long line", func(c []captions.Cue) { c[9].Text = strings.Repeat("i", 38) }, "caption-wide@10"},
	{"gone at once", func(c []captions.Cue) { c[9].Text, c[9].End = "Undo it.", c[9].Start+500*time.Millisecond }, "caption-short@10"},
	{"half the time", func(c []captions.Cue) {
		c[9].Text, c[9].End = "some more words to\nread than one can", c[9].Start+time.Second
	}, "caption-fast@10"},
	{"left standing", func(c []captions.Cue) {
		for i := range c[10:] {
			c[10+i].Start, c[10+i].End = c[10+i].Start+20*time.Second, c[10+i].End+20*time.Second
		}
		c[9].End = c[9].Start + 18*time.Second
	}, "caption-long@10"},
	{"into the next", func(c []captions.Cue) { c[9].End = c[10].Start + 300*time.Millisecond }, "caption-overlap@11"},
	{"no words", func(c []captions.Cue) { c[9].Text = "" }, "caption-empty@10"},
	{"an end before its start", func(c []captions.Cue) { c[9].End = c[9].Start - time.Second }, "caption-unshown@10"},
	{"two in the wrong order", func(c []captions.Cue) { c[9], c[10] = c[10], c[9] }, "caption-order@11"},
	{"another hour", func(c []captions.Cue) {
		last := len(c) - 1
		c[last].Start, c[last].End = c[last].Start+200*time.Hour, c[last].End+200*time.Hour
	}, "caption-far@last"},
}

// A spoiled cue raises the finding that names what was spoiled, and nothing
// else.
func TestCaptionSabotage(t *testing.T) {
	text, _ := samples.Plan(washer)
	whole := pass(t, string(text)).Cues
	profile, _ := captions.ProfileNamed("")
	if got := captions.Check(captions.File{Cues: whole}, profile); len(got) > 0 {
		t.Fatalf("the captions as planned raise\n%s", print(got))
	}
	for _, s := range captionSabotages {
		cues := slices.Clone(whole)
		s.spoil(cues)
		var got []string
		for _, f := range captions.Check(captions.File{Cues: cues}, profile) {
			got = append(got, f.Rule+"@"+strings.Fields(f.Message)[1])
		}
		if want := strings.ReplaceAll(s.want, "@last", fmt.Sprint("@", len(whole))); !slices.Equal(got, []string{want}) {
			t.Errorf("%s raises %q, want %q", s.what, got, want)
		}
	}
}

// Every rule is broken by a sabotage: of a plan, of a cut, of captions.
func TestEveryRuleIsSabotaged(t *testing.T) {
	broken := map[string]bool{}
	note := func(wants string) {
		for want := range strings.FieldsSeq(wants) {
			rule, _, _ := strings.Cut(want, "@")
			broken[rule] = true
		}
	}
	for _, s := range planSabotages() {
		if !s.gap {
			note(s.want)
		}
	}
	for _, s := range editSabotages {
		if !s.gap {
			note(s.want)
		}
	}
	for _, s := range captionSabotages {
		note(s.want)
	}
	for _, r := range lint.Rules() {
		if !broken[r.Name] {
			t.Errorf("no sabotage breaks %s", r.Name)
		}
	}
}
