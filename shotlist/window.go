package shotlist

import (
	"slices"

	"fixslate/plan"
)

// The object goes through the story once, so the story is a row of moments:
//
//	moment 2i    between step i-1 and step i
//	moment 2i+1  inside step i, from its first action to its last
//
// and 2n after the last of n steps. A state holds in a run of moments: one that
// step i starts from 2i+1 on, one that step j ends up to 2j+1. Each shot has a
// Window, the run of moments in which it can be made:
//
//   - A shot that only needs what its step needs shows the object as it is
//     there: any moment of the block around the step in which exactly the same
//     states hold. Steps that change no state keep no order in it.
//   - A shot of a step that starts or ends a state shows that change, which
//     happens once: only the moment of the step itself.
//   - A shot with needs of its own: the run of moments around its step, or the
//     nearest one, in which all of them are met.
//   - A shot of how a part sits before its step takes it off: any moment of the
//     block that the step finds, up to the step, and before the step's action.
//   - A shot that needs nothing of the object floats: any moment.
//
// States that hold during one step can be had again by doing the same once
// more (key on, running), so they bind no shot to the step.
//
// Shot x must then come before y exactly if x's window closes before y's opens.
// A sequence keeps all of these pairs if and only if the object can be led
// through its moments once, in order, with each shot inside its window: go
// through the sequence and always wait for the latest opening so far; a window
// that has closed by then would have had to come earlier. Nothing else is
// forbidden, and nothing that the object could not do is allowed.

// Window is when a shot can be made: from one moment to another, both included.
type Window struct {
	From, To int
	Floats   bool // any moment: it needs nothing of the object
	Change   bool // it shows a change of state, which its step makes
	Never    bool // no moment of the story meets its needs
}

// momentOf is the moment inside a step.
func momentOf(step int) int { return 2*step + 1 }

// story is a plan's row of moments.
type story struct {
	plan   *plan.Plan
	last   int                 // the last moment
	block  []int               // per moment: number of the run with equal states
	starts [][]string          // per step: states that really begin there
	ends   [][]string          // per step: states that really end there
	runs   map[string][][2]int // per state: the runs of moments in which it holds
	during map[string][]int    // per state: the steps during which it holds
}

func readStory(p *plan.Plan) *story {
	n := len(p.Steps)
	s := &story{
		plan: p, last: 2 * n, block: make([]int, 2*n+1), starts: make([][]string, n), ends: make([][]string, n),
		runs: map[string][][2]int{}, during: map[string][]int{},
	}
	turns := make([]bool, 2*n+1) // the states of a moment differ from those before
	for _, v := range p.Intervals {
		if v.During {
			s.during[v.State] = append(s.during[v.State], v.From)
			continue
		}
		from, to := 0, s.last
		if v.From >= 0 {
			from = momentOf(v.From)
			s.starts[v.From] = append(s.starts[v.From], v.State)
			turns[from] = true
		}
		if !v.Open {
			to = momentOf(v.To)
			s.ends[v.To] = append(s.ends[v.To], v.State)
			turns[to+1] = true
		}
		s.runs[v.State] = append(s.runs[v.State], [2]int{from, to})
	}
	for m := 1; m <= s.last; m++ {
		s.block[m] = s.block[m-1]
		if turns[m] {
			s.block[m]++
		}
	}
	return s
}

// changes holds for a step that starts or ends a state.
func (s *story) changes(step int) bool { return len(s.starts[step])+len(s.ends[step]) > 0 }

// windowsOf gives the window of each shot.
func (s *story) windowsOf(shots []Shot) []Window {
	windows := make([]Window, len(shots))
	for i := range shots {
		windows[i] = s.window(&shots[i])
	}
	return windows
}

func (s *story) window(shot *Shot) Window {
	switch {
	case shot.Bound == Free:
		return Window{From: 0, To: s.last, Floats: true}
	case shot.Bound == ByNeeds:
		return s.byNeeds(shot)
	case shot.Bound == Before:
		m := momentOf(shot.Step) - 1
		w := s.alike(m, shot.Step)
		w.To = min(w.To, m)
		return w
	case s.changes(shot.Step):
		return Window{From: momentOf(shot.Step), To: momentOf(shot.Step), Change: true}
	}
	m := momentOf(shot.Step)
	return s.alike(m, shot.Step)
}

// alike is the run of equal states around a moment. Blocks are numbered as they
// come, so their ends are searched for: in a long plan of one block a walk from
// each shot to both ends took most of a check.
func (s *story) alike(m, step int) Window {
	from, _ := slices.BinarySearch(s.block, s.block[m])
	next, _ := slices.BinarySearch(s.block, s.block[m]+1)
	return s.own(Window{From: from, To: next - 1}, step)
}

// byNeeds is the run in which a shot's own needs are met: the one around its
// step, else the nearest, of two as near the earlier.
func (s *story) byNeeds(shot *Shot) Window {
	met := func(m int) bool {
		for _, state := range shot.Needs {
			if !s.holds(state, m) {
				return false
			}
		}
		for _, state := range shot.Without {
			if s.lasts(state, m) {
				return false
			}
		}
		return true
	}
	home := momentOf(shot.Step)
	for away := 0; away <= s.last; away++ {
		for _, m := range []int{home - away, home + away} {
			if m >= 0 && m <= s.last && met(m) {
				return s.around(m, shot.Step, met)
			}
		}
	}
	return Window{Never: true}
}

// around widens a moment to the run that meets a condition.
func (s *story) around(m, step int, met func(int) bool) Window {
	w := Window{From: m, To: m}
	for w.From > 0 && met(w.From-1) {
		w.From--
	}
	for w.To < s.last && met(w.To+1) {
		w.To++
	}
	return s.own(w, step)
}

// own takes the moment of another step's change off the ends of a run: it is
// that step's own.
func (s *story) own(w Window, step int) Window {
	others := func(m int) bool { return m%2 == 1 && m/2 != step && s.changes(m/2) }
	if w.From < w.To && others(w.From) {
		w.From++
	}
	if w.From < w.To && others(w.To) {
		w.To--
	}
	return w
}

// lasts holds for a state, by its canonical name, that is in force at a moment and
// stays so beyond one step.
func (s *story) lasts(state string, m int) bool {
	return slices.ContainsFunc(s.runs[state], func(r [2]int) bool { return r[0] <= m && m <= r[1] })
}

// holds is lasts, or a moment of a block in which a step has the state while it
// runs.
func (s *story) holds(state string, m int) bool {
	if s.lasts(state, m) {
		return true
	}
	return slices.ContainsFunc(s.during[state], func(step int) bool { return s.block[momentOf(step)] == s.block[m] })
}

// Turn is a change of the object's state, with what must be in the can before
// it.
type Turn struct {
	Step         int      // whose action it is
	Starts, Ends []string // canonical states
	Shots        []int    // those whose window closes with it: in story order
	before       int      // the last moment before it
}

// LastChances are the changes of state after which some shot can't be made any
// more, in story order. Shots that no camera makes and those that are made
// apart don't count.
func LastChances(p *plan.Plan, shots []Shot) []Turn {
	s := readStory(p)
	return s.lastChances(shots, s.windowsOf(shots))
}

func (s *story) lastChances(shots []Shot, windows []Window) []Turn {
	var turns []Turn
	for i := range s.starts {
		if len(s.starts[i]) > 0 {
			turns = append(turns, Turn{Step: i, Starts: s.starts[i], before: momentOf(i) - 1})
		}
		if len(s.ends[i]) > 0 {
			turns = append(turns, Turn{Step: i, Ends: s.ends[i], before: momentOf(i)})
		}
	}
	for i, w := range windows {
		if !shots[i].onTheDay() || w.Never || w.Floats {
			continue
		}
		at, _ := slices.BinarySearchFunc(turns, w.To, func(t Turn, m int) int { return t.before - m })
		if at < len(turns) {
			turns[at].Shots = append(turns[at].Shots, i)
		}
	}
	return slices.DeleteFunc(turns, func(t Turn) bool { return len(t.Shots) == 0 })
}
