package shotlist

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
)

// Trouble is something in the plan that the day can't do as written.
type Trouble struct {
	Message string // what is wrong: lower case, no full stop, thing first
	Hint    string // what to write instead
	Path    string // "step[2].shot[0].needs"
	Step    string // id of its step, or empty
}

// Barred is a shot that can't be filmed on the object, with the reason.
type Barred struct {
	Shot int
	Trouble
	Answered bool // the step has a still, a shot made apart or a differs for it
}

// Impossible lists the shots that can't be filmed: those whose needs no moment
// of the story meets, and those of an action that the filmed object is past:
// it starts a state that holds already, or ends one that the object never
// leaves, and the step does nothing else.
func Impossible(p *plan.Plan, shots []Shot) []Barred {
	s := readStory(p)
	return s.impossible(shots, s.windowsOf(shots))
}

func (s *story) impossible(shots []Shot, windows []Window) []Barred {
	var barred []Barred
	for i := range shots {
		shot := &shots[i]
		switch {
		case !shot.onTheDay():
		case windows[i].Never:
			barred = append(barred, Barred{Shot: i, Trouble: s.contradiction(shot)})
		case shot.Suggested && shot.Covers[0].Why == Place && s.void(shot.Step):
			barred = append(barred, s.past(i, shots))
		}
	}
	return barred
}

// contradiction says which needs of a shot exclude each other.
func (s *story) contradiction(shot *Shot) Trouble {
	t := Trouble{
		Hint: "take one of them out of needs, move the shot to a step where they hold, or write apart = true",
		Path: fmt.Sprintf("step[%d].shot[%d].needs", shot.Step, shot.Index), Step: s.plan.Steps[shot.Step].ID,
	}
	for _, state := range shot.Without {
		if slices.Contains(shot.Needs, state) {
			t.Message = fmt.Sprintf("shot %q needs %q and not %q", shot.ID, s.word(state), s.word(state))
			return t
		}
		if runs := s.runs[state]; len(runs) == 1 && runs[0] == [2]int{0, s.last} {
			t.Message = fmt.Sprintf("shot %q needs the object not %q, and the filmed one always is", shot.ID, s.word(state))
			return t
		}
	}
	needs := s.plan.StateWords(shot.Needs)
	for _, state := range shot.Without {
		needs = append(needs, "not "+s.word(state))
	}
	t.Message = fmt.Sprintf("shot %q can't be filmed: no moment of the story is %s at once", shot.ID, strings.Join(needs, ", "))
	return t
}

// void holds for a step whose only action is a change of state that the filmed
// object can't show.
func (s *story) void(step int) bool {
	w := &s.plan.Steps[step]
	other := len(w.Tests) + len(w.Fasteners) + len(w.Fuses) + len(w.Wires) + len(w.Parts)
	return len(w.Starts)+len(w.Ends) > 0 && !s.changes(step) && other == 0
}

func (s *story) past(i int, shots []Shot) Barred {
	shot := &shots[i]
	w := &s.plan.Steps[shot.Step]
	key, states, why := "starts", w.Starts, "is already"
	if len(states) == 0 {
		key, states, why = "ends", w.Ends, "stays"
	}
	b := Barred{Shot: i, Trouble: Trouble{
		Message: fmt.Sprintf("shot %q can't be filmed: the filmed object %s %s", shot.ID, why, strings.Join(states, ", ")),
		Hint:    "film it on another one (apart = true), use a still, or say in [[differs]] that yours is past it",
		Path:    fmt.Sprintf("step[%d].%s", shot.Step, key), Step: w.ID,
	}}
	b.Answered = slices.ContainsFunc(shots, func(other Shot) bool { return other.Step == shot.Step && (other.Apart || other.Kind == Still) }) ||
		slices.ContainsFunc(s.plan.Differs, func(d plan.Differs) bool { return d.Step == w.ID })
	return b
}

// word is a state as the plan first writes it: the plan says "unplugged" where
// the linter knows "power-off".
func (s *story) word(state string) string { return s.plan.StateWord(state) }

// Hours lists what is wrong with the hours of the day: an end before the start,
// breaks and people outside the day.
func Hours(p *plan.Plan) []Trouble {
	var found []Trouble
	shoot := &p.Shoot
	day := hoursOf(shoot)
	if shoot.End.Set && shoot.End.Minutes <= shoot.Start.Minutes {
		found = append(found, Trouble{
			Message: fmt.Sprintf("the day ends at %s, before it starts at %s", shoot.End, shoot.Start),
			Hint:    "write [shoot] start and end in order, as times of one day; until then the day is planned without an end", Path: "shoot.end",
		})
	}
	for i, b := range shoot.Breaks {
		if b.Length.Open {
			continue
		}
		if at := b.At.Minutes * 60; at >= day.end || at+int(b.Length.Seconds()) <= day.start {
			found = append(found, Trouble{
				Message: fmt.Sprintf("the break at %s is outside the day", b.At),
				Hint:    "take it out, or move it between start and end", Path: fmt.Sprintf("shoot.breaks[%d]", i),
			})
		}
	}
	for i := range p.Steps {
		if w := p.Steps[i].Work; w.Set && !w.Open && !day.open && w.Low.Seconds() > float64(day.end-day.start) {
			found = append(found, Trouble{
				Message: fmt.Sprintf("step %q works for %s at least, longer than the whole day", p.Steps[i].Title.Print, w.Low),
				Hint:    "check the unit of work (m for minutes, h for hours), or end the day later", Path: fmt.Sprintf("step[%d].work", i), Step: p.Steps[i].ID,
			})
		}
	}
	for i := range shoot.People {
		found = append(found, personHours(shoot, day, i)...)
	}
	return found
}

func personHours(shoot *plan.Shoot, day hours, i int) []Trouble {
	person := &shoot.People[i]
	path := fmt.Sprintf("shoot.people[%d]", i)
	from, until := presence(person, day)
	switch {
	case person.From.Set && person.Until.Set && person.Until.Minutes <= person.From.Minutes:
		return []Trouble{{
			Message: fmt.Sprintf("%q goes at %s, before coming at %s", person.ID, person.Until, person.From),
			Hint:    "write from and until in order; until then they count as there all day", Path: path + ".until",
		}}
	case from >= day.end:
		return []Trouble{{
			Message: fmt.Sprintf("%q comes at %s, when the day is over", person.ID, person.From),
			Hint:    "bring them in earlier or end the day later; until then they count as there all day", Path: path + ".from",
		}}
	case until <= day.start:
		return []Trouble{{
			Message: fmt.Sprintf("%q goes at %s, before the day starts", person.ID, person.Until),
			Hint:    "keep them longer or start the day earlier; until then they count as there all day", Path: path + ".until",
		}}
	}
	return nil
}
