package align

import (
	"cmp"
	"slices"
	"strings"

	"fixslate/plan"
)

// When captions are not the plan's.
const (
	foreignStep  = 1.5  // what the talk must say for the plan, for each step the film would have …
	foreignLeast = 8    // … and at the least, as a logarithm of likelihood ratios
	englishShare = 0.15 // of words only English goes by, below which talk is not English; ordinary talk has 0.4 to 0.6
	englishLeast = 20   // words from which that can be said
)

// judge says whether the captions are of this plan at all.
func (s *settler) judge(p *plan.Plan) {
	n := len(s.Words)
	if n == 0 || len(s.Steps) == 0 {
		return
	}
	found := 0
	for _, st := range s.Steps {
		if st.Status != Missing {
			found++
		}
	}
	if need := max(foreignLeast, foreignStep*float64(min(len(s.Steps), n/10))); s.odds.evidence < need {
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
