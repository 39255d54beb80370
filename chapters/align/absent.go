package align

import (
	"math"
	"slices"
)

// Problem: tell a step that was left out from one told in other words. The model
// finds some place for nearly every step: a pause that wants to begin something, a
// word or two shared with a neighbour, or talk about why the step is not done.
//
// Method: a logistic regression on the model's chance of it and on what the model does
// not count. How much was said for the step, beside how much was said for the lower
// quarter of this film's (who tells freely says little for any of them); words near to a
// negation, a condition or another day count less. How many of the words that this step
// alone has were said. Steps found absent are taken out of the model and the sums run
// again, so that their neighbours get the words back.
//
// Fitted on the edits to be read and on made ones, and on the first with each step taken
// out in turn, its words away or a sentence in their place that says why it is not done.
// The base was moved since, by the edits to be read: with other words of talk the sums'
// chance of a step is larger.

// The regression's weights.
const (
	presentBase  = -0.55
	presentTold  = 0.82
	presentLeast = -0.40
	presentSaid  = 0.53
	presentOwn   = 1.42

	surestSaid  = 0.997 // as sure as the sums are believed to be
	remoteReach = 15    // words round one that may say that what is named is not done …
	remoteFade  = 0.8   // … and how fast it counts less for them
)

// presence is what speaks for a step's being said.
type presence struct {
	told  float64 // logarithm of what was said for it
	least float64 // the same of the step at the film's lower quarter
	said  float64 // the sums' chance, as the logarithm of odds
	own   float64 // share of the words that only this step has that were said
}

// chance is that of the step's being said.
func (p presence) chance() float64 {
	sum := presentBase + presentTold*p.told + presentLeast*p.least + presentSaid*p.said + presentOwn*p.own
	return 1 / (1 + math.Exp(-sum))
}

// present holds where the step is more likely said than not.
func (p presence) present() bool { return p.chance() >= 0.5 }

// presences gathers what speaks for each step.
func (s *settler) presences() []presence {
	all := make([]presence, len(s.Steps))
	remote := s.remote()
	owner := s.script.owners()
	said := make([]bool, len(owner)) // of each planned word: in the step that alone has it
	for i, w := range s.Words {
		if w.Step < 0 || s.odds.step[i] != w.Step {
			continue
		}
		all[w.Step].told += s.odds.in[i] * gain(s.t.words[i], w.Step) * math.Exp(-remoteFade*remote[i])
		for _, k := range s.h.keys[i] {
			if t, ok := s.script.number[k]; ok && owner[t] == w.Step {
				said[t] = true
			}
		}
	}
	own, heard := make([]float64, len(all)), make([]float64, len(all))
	for t, step := range owner {
		if step >= 0 {
			own[step]++
			if said[t] {
				heard[step]++
			}
		}
	}
	var told []float64
	for i := range all {
		p := &all[i]
		p.told = math.Log(1 + max(0, p.told))
		p.said = logit(s.odds.told(i))
		p.own = (heard[i] + 0.3) / (own[i] + 1)
		told = append(told, p.told)
	}
	slices.Sort(told)
	for i := range all {
		all[i].least = told[len(told)/4]
	}
	return all
}

// leaveOut takes the steps out of the model that it finds somewhere and that are absent,
// and says whether there were any.
func (t *trellis) leaveOut(o odds, all []presence) bool {
	t.absent = make([]bool, t.steps)
	any := false
	for s, chance := range o.said() {
		t.absent[s] = chance >= t.w.said && !all[s].present()
		any = any || t.absent[s]
	}
	return any
}

// logit is the logarithm of a chance's odds, none of them endless.
func logit(chance float64) float64 {
	chance = max(1-surestSaid, min(surestSaid, chance))
	return math.Log(chance / (1 - chance))
}

// owners gives of each planned word the step that alone has it, -1 for none and for
// words of no meaning of their own.
func (s *script) owners() []int {
	owner := make([]int, len(s.types))
	for t, uses := range s.steps {
		owner[t] = -1
		if len(uses) == 1 && !english().function[s.types[t]] {
			owner[t] = uses[0].step
		}
	}
	return owner
}

// remote says of each word how much those round it say that what it names is not
// done here and now: "I won't", "you'd normally", "last week". What the plan of the
// step has so is no such sign.
func (s *settler) remote() []float64 {
	n := len(s.Words)
	out := make([]float64, n)
	words := english().remote
	for i, keys := range s.h.keys {
		most := 0.0
		for _, k := range keys {
			if w := words[k]; w > most && s.times(k, s.odds.step[i]) == 0 {
				most = w
			}
		}
		if most == 0 {
			continue
		}
		for j := max(0, i-remoteReach); j <= min(n-1, i+remoteReach); j++ {
			out[j] += most * (1 - math.Abs(float64(i-j))/(remoteReach+1))
		}
	}
	return out
}
