package captions

import (
	"strings"
	"testing"

	"fixslate/plan/prose"
)

// amend replaces each of the words found in the cues.
func amend(f File, pairs ...string) File {
	var all []Amendment
	for i := 0; i < len(pairs); i += 2 {
		for c, cue := range f.Cues {
			if at := strings.Index(cue.Text, pairs[i]); at >= 0 {
				all = append(all, Amendment{c, prose.Span{Start: at, End: at + len(pairs[i])}, pairs[i+1]})
			}
		}
	}
	return Amend(f, all)
}

func TestAmend(t *testing.T) {
	f := File{Cues: []Cue{
		{Text: "In pillar first,\nthen the in\npillar screw"},
		{Text: "set it to page two", Markup: "set it to <b>page two</b>"},
		{Text: "the sand pipe", Markup: "the <i>sand</i> pipe"},
	}}
	got := amend(f, "In pillar", "impeller", "in\npillar", "impeller", "page two", "PH2", "sand pipe", "standpipe")
	for i, want := range []Cue{
		{Text: "Impeller first,\nthen the impeller screw"},
		{Text: "set it to PH2", Markup: "set it to <b>PH2</b>"},
		{Text: "the standpipe"},
	} {
		if got.Cues[i].Text != want.Text || got.Cues[i].Markup != want.Markup {
			t.Errorf("cue %d is %q, markup %q", i, got.Cues[i].Text, got.Cues[i].Markup)
		}
	}
	if f.Cues[1].Text != "set it to page two" {
		t.Error("the file given was changed")
	}
}

// What names no stretch of the file, or a changed one, changes nothing.
func TestAmendRefuses(t *testing.T) {
	f := File{Cues: []Cue{{Text: "undo the screw"}}}
	for _, span := range []prose.Span{{Start: -1, End: 3}, {Start: 5, End: 5}, {Start: 9, End: 99}} {
		if got := Amend(f, []Amendment{{0, span, "x"}, {-1, prose.Span{End: 1}, "x"}, {7, prose.Span{End: 1}, "x"}}); got.Cues[0].Text != f.Cues[0].Text {
			t.Errorf("%v gives %q", span, got.Cues[0].Text)
		}
	}
	twice := []Amendment{{0, prose.Span{Start: 5, End: 14}, "a bolt"}, {0, prose.Span{Start: 0, End: 8}, "turn"}}
	if got := Amend(f, twice); got.Cues[0].Text != "undo a bolt" {
		t.Errorf("two over each other give %q", got.Cues[0].Text)
	}
}
