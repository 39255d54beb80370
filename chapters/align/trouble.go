package align

import (
	"cmp"
	"slices"
	"strings"

	"fixslate/plan"
)

// When captions are not the plan's. Of made edits with a word in three
// mis-heard, nearly all have more than 4 % of the words in steps answer to a planned
// line; captions of other plans have less, however many steps the model thinks it
// finds.
const (
	foreignWords = 0.04 // share of the words in steps that answer to planned ones, below which talk is foreign …
	foreignLines = 0.3  // … if of the planned lines no more than this share was heard either
	englishShare = 0.15 // of words only English goes by, below which talk is not English; ordinary talk has 0.4 to 0.6
	englishLeast = 20   // words from which that can be said
)

// judge says whether the captions are of this plan at all.
func (s *settler) judge(p *plan.Plan) {
	n := len(s.Words)
	if n == 0 || len(s.Steps) == 0 {
		return
	}
	if s.foreign() {
		found := 0
		for _, st := range s.Steps {
			if st.Status != Missing {
				found++
			}
		}
		t := Trouble{Kind: OtherVideo, Cue: -1, Count: found, Share: float64(found) / float64(len(s.Steps))}
		known := 0
		for _, keys := range s.h.keys {
			if len(keys) > 0 && english().function[keys[0]] {
				known++
			}
		}
		share := float64(known) / float64(n)
		if speaksEnglish(p) && share < englishShare && n >= englishLeast {
			t.Kind, t.Count, t.Share = OtherLanguage, known, share
		}
		s.Troubles = append(s.Troubles, t)
	}
	slices.SortStableFunc(s.Troubles, func(a, b Trouble) int { return cmp.Compare(a.Kind, b.Kind) })
}

func (s *settler) foreign() bool {
	inside, answers, lines := 0, 0, 0
	for _, w := range s.Words {
		if w.Step >= 0 {
			inside++
			if w.Line >= 0 {
				answers++
			}
		}
	}
	for _, l := range s.Lines {
		if l.Found {
			lines++
		}
	}
	return float64(answers) <= foreignWords*float64(inside) && float64(lines) <= foreignLines*float64(len(s.Lines))
}

func speaksEnglish(p *plan.Plan) bool {
	language, _, _ := strings.Cut(strings.ToLower(p.Video.Language), "-")
	return language == "" || language == "en"
}

// drift is how many seconds the edit takes for one planned second, between the
// first and the last step found in order.
func (m *Match) drift(starts []float64) float64 {
	first, last := -1, -1
	for i, s := range m.Steps {
		if s.Status == Found && starts[i] >= 0 {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	if first < 0 || starts[last]-starts[first] < 1 {
		return 0
	}
	return (m.Steps[last].Start - m.Steps[first].Start) / (starts[last] - starts[first])
}
