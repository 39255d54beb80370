package align

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"fixslate/plan"
)

// When captions are not the plan's. Three things tell, none of them alone: how
// sure the steps are, how many stand in the plan's order, and how many of the
// words in them answer to a planned line. They are added, weighed as a logistic
// regression on 146 own edits and 342 of other plans weighed them; of those no
// own one stays below and 6 others come above. Whose words answer half as often
// again as any other plan's did is the plan's, however little of it was filmed.
const (
	ownLeast     = 1.15 // sum from which talk is the plan's
	answerWorth  = 1.5  // of the share of words that answer, the mean confidence 1
	orderWorth   = 0.6  // of the share of found steps that stand in order
	answerSure   = 0.12 // share of words that answer from which nothing else is asked
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
	inside, answers := 0, 0
	for _, w := range s.Words {
		if w.Step >= 0 {
			inside++
			if w.Line >= 0 {
				answers++
			}
		}
	}
	found, ordered, sure := 0, 0, 0.0
	for _, st := range s.Steps {
		if st.Status == Missing {
			continue
		}
		found++
		sure += math.Pow(st.Confidence, 1/overSure)
		if st.Status == Found {
			ordered++
		}
	}
	if found == 0 || inside == 0 {
		return true
	}
	answer := float64(answers) / float64(inside)
	sum := sure/float64(len(s.Steps)) + answerWorth*answer + orderWorth*float64(ordered)/float64(found)
	return answer < answerSure && sum < ownLeast
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
