package claim

import (
	"strings"
	"testing"
)

// talkRows are the sentences of testdata/talk.txt.
func talkRows(t *testing.T) []row {
	var all []row
	for line := range strings.Lines(string(read(t, "testdata/talk.txt"))) {
		if line = strings.TrimSpace(line); line == "" || line[0] == '#' {
			continue
		}
		text, claims := strings.CutPrefix(line, "+ ")
		all = append(all, row{Text: text, Needs: claims})
	}
	return all
}

// Of whole narrations the talk is left alone and the claims beside it are found. No
// weight is learned from these sentences.
func TestQualityTalk(t *testing.T) {
	loud, talk, missed, claims := 0, 0, 0, 0
	for _, r := range talkRows(t) {
		got := Sentence(r.Text).NeedsEvidence
		switch {
		case r.Needs:
			if claims++; !got {
				missed++
				t.Logf("missed: %s", r.Text)
			}
		default:
			if talk++; got {
				loud++
				t.Logf("taken for a claim: %s %v", r.Text, Sentence(r.Text).Kinds)
			}
		}
	}
	t.Logf("%d of %d sentences of talk are taken for claims, %d of %d claims are missed", loud, talk, missed, claims)
	if loud > 51 || missed > 4 {
		t.Error("they were 51 and 4")
	}
}
