package align

import (
	"math"
	"math/rand/v2"
	"testing"
)

// state is one of the model.
type state struct {
	step int // place in a row
	part int
	talk bool
}

// ratio is what going from one state to another over word i is worth, written
// down from the model's description and not from its sums.
func (t *trellis) ratio(i int, from, to state) float64 {
	w := t.w
	way, goes, stays := 0.0, 1.0, 1.0
	if from.step > 0 {
		p := min(goesMost, float64(t.parts)/t.expect[from.step-1])
		goes, stays = math.Pow(p, w.linger), math.Pow(1-p, w.linger)
	}
	switch same := from.step == to.step; {
	case to.step == 0 && !to.talk || to.talk && (!same || from.part != to.part):
	case to.talk && from.talk:
		way = 1
	case to.talk:
		way = t.aside[i]
	case same && from.talk && from.part == to.part:
		way = t.goesOn[i]
	case same && from.talk:
	case same && from.part == to.part:
		way = stays
	case same && from.part+1 == to.part:
		way = goes
	case !same && to.part == 0:
		way = t.open[i] * t.entering(from.step, to.step) * goes
		way *= math.Exp(w.hasty * math.Pow(1-float64(from.part)/float64(t.parts-1), w.unripe))
		factor := t.shun[to.step-1]
		for _, m := range t.spare[i] {
			if m.step == to.step-1 {
				factor *= m.factor
			}
		}
		way *= factor
	}
	h := t.words[i]
	if to.talk {
		return way * math.Exp(h.added) * t.chat[i]
	}
	say := h.step
	if to.step > 0 {
		say += t.base[to.step-1] * (float64(h.keys) + w.small*float64(h.small))
	}
	said := math.Exp(say)
	for _, g := range h.steps {
		if g.step+1 == to.step {
			late := float64(to.part) / float64(t.parts-1)
			said *= (1-late)*g.head + late*g.tail
		}
	}
	return way * said
}

// entering is what going from one step to another is worth wherever it is.
func (t *trellis) entering(from, to int) float64 {
	w := t.w
	switch out := to - from - 1; {
	case out == 0:
		return 1
	case out > 0:
		left := w.skip
		for s := from + 1; s < to; s++ {
			left += w.skipMore * (1 - w.passed*t.told[s-1])
		}
		way := math.Exp(left) + math.Exp(w.skipMost)
		if from == 0 {
			way *= math.Exp(w.first)
		}
		return way
	default:
		way := math.Exp(w.back) + math.Exp(w.backNear-w.backMore*float64(out+2))
		if to == 1 {
			way *= math.Exp(w.first)
		}
		return way
	}
}

// The sums over all ways agree with going through all ways one by one.
func TestOddsAreThoseOfAllWays(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for round := range 40 {
		steps, n := 1+r.IntN(3), 1+r.IntN(4)
		m := &trellis{w: usualWeights(), steps: steps, parts: 2 + r.IntN(3)}
		for range n {
			h := &hearing{again: 1, keys: r.IntN(3), small: r.IntN(2), step: r.NormFloat64() / 3, added: r.NormFloat64() / 3}
			h.told, h.talk = math.Exp(h.step), math.Exp(h.added)
			for s := range steps {
				if r.IntN(2) == 0 {
					h.steps = append(h.steps, score{step: s, ratio: r.Float64() * 30, early: r.Float64() * 10})
				}
			}
			m.heard, m.words = append(m.heard, h), append(m.words, h)
			m.open, m.aside, m.goesOn = append(m.open, r.Float64()), append(m.aside, 3*r.Float64()), append(m.goesOn, 2*r.Float64())
			m.chat = append(m.chat, 0.5+r.Float64())
		}
		m.spare = make([][]mark, n)
		for s := range steps {
			m.expect, m.told, m.shun = append(m.expect, 1+9*r.Float64()), append(m.told, r.Float64()), append(m.shun, r.Float64())
			if k := r.IntN(n + 1); k < n {
				m.spare[k] = append(m.spare[k], mark{s, 1 + r.Float64()})
			}
		}
		m.follow(m.evenly())
		got := m.odds()

		states := []state{{0, m.parts - 1, true}}
		for s := range steps {
			for part := range m.parts {
				states = append(states, state{s + 1, part, false}, state{s + 1, part, true})
			}
		}
		total := 0.0
		talk := make([]float64, n)
		enter := make(map[[2]int]float64)
		way := make([]state, n)
		var walk func(i int, from state, ratio float64)
		walk = func(i int, from state, ratio float64) {
			if ratio == 0 {
				return
			}
			if i == n {
				ratio *= math.Exp(m.w.hasty * math.Pow(1-float64(from.part)/float64(m.parts-1), m.w.unripe))
				if left := steps - from.step; left > 0 {
					ratio *= math.Exp(m.w.cut + m.w.cutMore*float64(min(left, 4)-1))
				}
				total += ratio
				before := 0
				for k, s := range way {
					if s.talk {
						talk[k] += ratio
					}
					if s.step != before {
						enter[[2]int{k, s.step - 1}] += ratio
					}
					before = s.step
				}
				return
			}
			for _, s := range states {
				way[i] = s
				walk(i+1, s, ratio*m.ratio(i, from, s))
			}
		}
		walk(0, states[0], 1)

		evidence := math.Log(total)
		for k, h := range m.words {
			evidence -= h.added + math.Log(m.chat[k])
		}
		if math.Abs(got.evidence-evidence) > 1e-9 {
			t.Fatalf("round %d: evidence %g, all ways give %g", round, got.evidence, evidence)
		}
		for k := range n {
			if d := got.talk[k] - talk[k]/total; math.Abs(d) > 1e-9 {
				t.Errorf("round %d: word %d is talk by %g, all ways give %g", round, k, got.talk[k], talk[k]/total)
			}
		}
		for s, entries := range got.entries {
			seen := map[int]bool{}
			for _, e := range entries {
				seen[e.word] = true
				if want := enter[[2]int{e.word, s}] / total; math.Abs(e.chance-want) > 1e-9 {
					t.Errorf("round %d: step %d begins at word %d by %g, all ways give %g", round, s, e.word, e.chance, want)
				}
			}
			for k := range n {
				if c := enter[[2]int{k, s}] / total; c > 2*tinyChance && !seen[k] {
					t.Errorf("round %d: step %d may begin at word %d by %g, and that is left out", round, s, k, c)
				}
			}
		}
	}
}

// Rows made again block by block are those of one block.
func TestOddsInBlocks(t *testing.T) {
	_, held := readMakings(t)
	c := held.trials(1)[0]
	s := locate(c.plan, c.timed, c.cues, usualWeights())
	whole, parts := s.t.odds(), s.t.oddsIn(100)
	if math.Abs(whole.evidence-parts.evidence) > 1e-9 {
		t.Fatalf("evidence %g in one block, %g in many", whole.evidence, parts.evidence)
	}
	for i := range whole.talk {
		if math.Abs(whole.talk[i]-parts.talk[i]) > 1e-12 || whole.step[i] != parts.step[i] {
			t.Fatalf("word %d: %g of step %d in one block, %g of %d in many", i, whole.talk[i], whole.step[i], parts.talk[i], parts.step[i])
		}
	}
}

// Leaving out places that are never entered changes nothing.
func TestOddsOverFewerPlaces(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for round := range 30 {
		steps, n := 2+r.IntN(7), 2+r.IntN(20)
		m := &trellis{w: usualWeights(), steps: steps, parts: 2 + r.IntN(3), spare: make([][]mark, n)}
		for range n {
			h := &hearing{again: 1, keys: r.IntN(3), step: r.NormFloat64() / 3, added: r.NormFloat64() / 3}
			h.told, h.talk = math.Exp(h.step), math.Exp(h.added)
			for s := range steps {
				if r.IntN(3) == 0 {
					h.steps = append(h.steps, score{step: s, ratio: r.Float64() * 30, early: r.Float64() * 10})
				}
			}
			m.heard, m.words = append(m.heard, h), append(m.words, h)
			m.open, m.aside, m.goesOn = append(m.open, r.Float64()), append(m.aside, 3*r.Float64()), append(m.goesOn, 2*r.Float64())
			m.chat = append(m.chat, 0.5+r.Float64())
		}
		few := []int{0}
		for s := range steps {
			m.expect, m.told, m.shun = append(m.expect, 1+9*r.Float64()), append(m.told, r.Float64()), append(m.shun, 0)
			if r.IntN(2) == 0 {
				m.shun[s] = r.Float64()
				few = append(few, s+1)
			}
		}
		m.follow(m.evenly())
		all := m.odds()
		cut := 1 + r.IntN(n-1)
		m.live = []stretch{{0, cut, few}, {cut, n, append([]int(nil), few...)}}
		some := m.odds()
		if math.Abs(all.evidence-some.evidence) > 1e-9 {
			t.Fatalf("round %d: evidence %g, over fewer places %g", round, all.evidence, some.evidence)
		}
		for i := range n {
			if math.Abs(all.talk[i]-some.talk[i]) > 1e-9 || all.step[i] != some.step[i] || math.Abs(all.in[i]-some.in[i]) > 1e-9 {
				t.Fatalf("round %d: word %d is step %d by %g, over fewer places %d by %g", round, i, all.step[i], all.in[i], some.step[i], some.in[i])
			}
		}
	}
}

// What a look leaves out in a long film hardly tells.
func TestNarrowHardlyTells(t *testing.T) {
	c := longEdit(t, 0.4)
	s := locate(c.plan, c.timed, c.cues, usualWeights())
	if s.t.live == nil {
		t.Fatal("the edit is not long")
	}
	some := s.t.odds()
	s.t.live = nil
	all := s.t.odds()
	same := 0
	for i := range all.step {
		if all.step[i] == some.step[i] {
			same++
		}
	}
	if share := float64(same) / float64(len(all.step)); share < 0.97 {
		t.Errorf("%.3f of the words are in the step that they are in when no place is left out", share)
	}
}
