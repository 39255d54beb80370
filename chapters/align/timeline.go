package align

import (
	"cmp"
	"slices"

	"fixslate/plan"
	"fixslate/plan/timing"
)

// Timeline is the edit as it was cut, for all that takes a planned one: its
// steps in the order they are seen, each until the next one starts; a missing
// step is absent. Beats are the lines that were heard. Nothing is known of
// hands-on time, cards and readings: those are zero.
func (m Match) Timeline(p *plan.Plan) timing.Timeline {
	t := timing.Timeline{Real: true, End: m.End}
	for _, s := range m.Steps {
		if s.Status == Missing || s.Index >= len(p.Steps) {
			continue
		}
		t.Steps = append(t.Steps, timing.Step{
			Index: s.Index, ID: s.ID, Start: s.Start, Begin: timing.Exactly(s.Start),
			Detour: p.Steps[s.Index].OnlyIf.Test != "",
		})
	}
	slices.SortStableFunc(t.Steps, func(a, b timing.Step) int { return cmp.Compare(a.Start, b.Start) })
	straight := 0.0
	for i := range t.Steps {
		s := &t.Steps[i]
		s.End = t.End
		if i+1 < len(t.Steps) {
			s.End = t.Steps[i+1].Start
		}
		s.Screen = s.End - s.Start
		s.Beats = m.beats(s.Index)
		for _, b := range s.Beats {
			s.Narration += b.End - b.Start
		}
		if !s.Detour {
			straight += s.Screen
		}
	}
	if len(t.Steps) > 0 {
		straight += t.Steps[0].Start
	}
	t.Running, t.Straight = timing.Exactly(t.End), timing.Exactly(straight)
	for _, v := range p.Variants {
		t.Versions = append(t.Versions, m.version(p, t, v.ID))
	}
	return t
}

// version is what the owner of one version of the object sees of the edit.
func (m Match) version(p *plan.Plan, t timing.Timeline, id string) timing.Version {
	running, straight := 0.0, 0.0
	if len(t.Steps) > 0 {
		running, straight = t.Steps[0].Start, t.Steps[0].Start
	}
	for _, s := range t.Steps {
		if v := p.Steps[s.Index].Variants; len(v) > 0 && !slices.Contains(v, id) {
			continue
		}
		running += s.Screen
		if !s.Detour {
			straight += s.Screen
		}
	}
	return timing.Version{Variant: id, Running: timing.Exactly(running), Straight: timing.Exactly(straight)}
}

// beats are the lines of a step that were heard in it, by start.
func (m Match) beats(step int) []timing.Beat {
	var beats []timing.Beat
	for _, l := range m.Lines {
		if l.Step == step && l.Found && !l.Away {
			beats = append(beats, timing.Beat{
				Kind: l.Kind, Start: l.Start, End: l.End,
				Print: l.Print, Speak: l.Speak, Caution: l.Caution, Line: l.Index,
			})
		}
	}
	slices.SortStableFunc(beats, func(a, b timing.Beat) int { return cmp.Compare(a.Start, b.Start) })
	return beats
}
