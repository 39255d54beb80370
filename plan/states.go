package plan

import (
	"cmp"
	"fmt"
	"slices"

	"fixslate/plan/hazard/class"
)

// states finds the stretches in which each state holds, and reports needs that
// nothing in the plan ever meets.
func (d *decoder) states() {
	p := d.plan
	p.Intervals = intervals(p)
	p.reaches, p.stateWords, p.ofState = reaches(p.Intervals), stateWords(p), map[string][]int{}
	var names []string
	for i, v := range p.Intervals {
		if p.ofState[v.State] == nil {
			names = append(names, v.State)
		}
		p.ofState[v.State] = append(p.ofState[v.State], i)
	}
	need := func(path, state string) {
		if p.ofState[class.CanonicalState(state)] != nil {
			return
		}
		hint := fmt.Sprintf("add starts = [%q] to an earlier step, or [shoot] begins = [%q]", state, state)
		if near, ok := Nearest(state, names); ok {
			hint = fmt.Sprintf("did you mean %q", near)
		}
		d.fault("state-never-started", path, hint, "no step starts the state %q", state)
	}
	for i := range p.Steps {
		s := &p.Steps[i]
		for j, state := range s.Needs {
			need(entryPath(d.spans, fmt.Sprintf("step[%d].needs", i), j), state)
		}
		for k := range s.Shots {
			for j, n := range s.Shots[k].Needs {
				if _, near := Nearest(n.State, names); n.Not && (!near || len(n.State) < shortest) {
					continue // "not wet" of what never is; beside "not motor-uot" stands motor-out
				}
				need(entryPath(d.spans, fmt.Sprintf("step[%d].shot[%d].needs", i, k), j), n.State)
			}
		}
	}
}

// shortest is how long a state's name must be for a likeness to another to mean a
// slip of the pen. Common practice, no source.
const shortest = 6

// stateWords are the states in the words in which the plan first writes them.
func stateWords(p *Plan) map[string]string {
	words := map[string]string{}
	read := func(lists ...[]string) {
		for _, list := range lists {
			for _, word := range list {
				if state := class.CanonicalState(word); words[state] == "" {
					words[state] = word
				}
			}
		}
	}
	read(p.Shoot.Begins, p.Shoot.Stays)
	for i := range p.Steps {
		s := &p.Steps[i]
		read(s.Starts, s.During, s.Needs, s.Ends)
	}
	return words
}

// StateWord is a canonical state as the plan first writes it: the plan says
// "unplugged" where the linter knows "power-off".
func (p *Plan) StateWord(state string) string { return cmp.Or(p.stateWords[state], state) }

// StateWords are those of several states.
func (p *Plan) StateWords(states []string) []string {
	var words []string
	for _, state := range states {
		words = append(words, p.StateWord(state))
	}
	return words
}

// intervals walks the story once.
func intervals(p *Plan) []Interval {
	var done []Interval
	open := map[string]int{}
	begin := func(state string, from int) {
		state = class.CanonicalState(state)
		if at, ok := open[state]; ok && done[at].Open {
			return // it holds already
		}
		open[state] = len(done)
		done = append(done, Interval{State: state, From: from, To: len(p.Steps) - 1, Open: true})
	}
	for _, state := range slices.Concat(p.Shoot.Begins, p.Shoot.Stays) {
		begin(state, -1)
	}
	stays := map[string]bool{}
	for _, state := range p.Shoot.Stays {
		stays[class.CanonicalState(state)] = true
	}
	for i := range p.Steps {
		s := &p.Steps[i]
		for _, state := range s.Starts {
			begin(state, i)
		}
		for _, state := range s.During {
			done = append(done, Interval{State: class.CanonicalState(state), From: i, To: i, During: true})
		}
		for _, state := range s.Ends {
			state = class.CanonicalState(state)
			if at, ok := open[state]; ok && done[at].Open && !stays[state] {
				done[at].To, done[at].Open = i, false
			}
		}
	}
	return done
}

// stretch is how many intervals are looked at one by one.
const stretch = 32

// reaches gives the last step of stretches of intervals, of two neighbouring
// stretches together, of four and so on: a heap, whose node n has 2n and 2n+1
// below it.
func reaches(all []Interval) []int {
	leaves := 1
	for leaves*stretch < len(all) {
		leaves *= 2
	}
	last := make([]int, 2*leaves)
	for n := range last {
		last[n] = -2 // before everything
	}
	for i := range all {
		leaf := leaves + i/stretch
		last[leaf] = max(last[leaf], all[i].To)
	}
	for n := leaves - 1; n > 0; n-- {
		last[n] = max(last[2*n], last[2*n+1])
	}
	return last
}

// In lists the intervals that hold at some moment of a step.
func (p *Plan) In(step int) []Interval {
	return p.inBelow(1, 0, len(p.reaches)/2*stretch, step, nil)
}

// Holding lists the intervals of one state, by its canonical name, that hold at
// some moment of a step: it does not go through all that hold there, as In does.
func (p *Plan) Holding(state string, step int) []Interval {
	var in []Interval
	for _, i := range p.ofState[state] {
		if v := p.Intervals[i]; v.From <= step && step <= v.To {
			in = append(in, v)
		}
	}
	return in
}

// inBelow adds the intervals of a node, those from one to another, that hold in
// a step. Intervals stand in the order of their beginnings.
func (p *Plan) inBelow(node, from, to, step int, in []Interval) []Interval {
	if from >= len(p.Intervals) || p.Intervals[from].From > step || p.reaches[node] < step {
		return in
	}
	if to-from > stretch {
		middle := (from + to) / 2
		return p.inBelow(2*node+1, middle, to, step, p.inBelow(2*node, from, middle, step, in))
	}
	for i := from; i < min(to, len(p.Intervals)); i++ {
		if v := &p.Intervals[i]; v.From <= step && step <= v.To {
			in = append(in, *v)
		}
	}
	return in
}

// Begun lists the intervals that begin in a step.
func (p *Plan) Begun(step int) []Interval {
	from, _ := slices.BinarySearchFunc(p.Intervals, step, func(v Interval, step int) int { return cmp.Compare(v.From, step) })
	to := from
	for to < len(p.Intervals) && p.Intervals[to].From == step {
		to++
	}
	return p.Intervals[from:to]
}
