package captions

import (
	"fixslate/plan"
	"fixslate/plan/timing"
)

// Skeleton makes the captions of a planned video: what is spoken, cautions and
// the other side included, and the labels of sounds, cut to the plan's profile
// and placed where the timeline has them. They are a skeleton: the edit moves
// every word, and BBC Subtitle Guidelines §3.9 want breaks looked over by a
// person.
//
// A spoken caution has cues of its own, apart from the narration. A card's
// words are not captioned: captions stand for what is heard (WCAG 2.2 SC
// 1.2.2), and the card is in the picture already. Stage directions are neither.
func Skeleton(p *plan.Plan, t timing.Timeline) []Cue {
	profile, ok := ProfileNamed(p.Captions.Profile)
	if !ok {
		profile, _ = ProfileNamed("")
	}
	var units []Unit
	for _, s := range t.Steps {
		for _, b := range s.Beats {
			u := Unit{Text: b.Print, Start: b.Start, End: b.End - b.Rest}
			switch b.Kind {
			case timing.Narration, timing.OtherSide:
			case timing.Caution:
				u.Kind = Card
			case timing.Sound:
				u.Kind, u.Text = Sound, label(p.Captions.Sounds, b.Print)
			default:
				continue
			}
			units = append(units, u)
		}
	}
	return Segment(units, profile)
}
