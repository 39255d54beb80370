package align

import "math"

// Problem: say of every word heard which step of the plan it belongs to, or
// that it is talk beside the work, when steps may be skipped, moved or said
// again.
//
// Method: a hidden Markov model whose states are, for each step, "in it" and
// "talk after it", and the most likely path through them (Viterbi 1967). The
// nearest published task is the alignment of recipes to the talk of cooking
// videos (Malmaud et al. 2015, arXiv 1503.01558). A step is entered where the
// talk halts or leads on; the next one costs nothing, leaving out steps and
// going back do.
//
// Cost: words times steps, since the best state to come from is a running
// maximum; memory: the path is found in blocks from rows kept at their heads,
// at most blockCells cells at once.
//
// Oddity: a path never enters the step it is in, so takes of one step in a row
// are one visit; takes.go parts them.

// trellis is the model laid over the words.
type trellis struct {
	w     weights
	steps int
	heard []*hearing // the different words
	words []*hearing // of each word heard, one of heard
	base  []float64  // of each state: what a word says for it that its plan has not
	open  []float64  // of each word: that a step begins there
	halt  []float64  // of each word: that talk beside the work begins or ends there
}

const blockCells = 1 << 23

// state is a place in the model: a step, or talk after it. Step -1 is the time
// before the first step, where there is only talk.
type state struct {
	step  int
	added bool
}

// row is the best score of each state after a word; index 0 is before the first
// step.
type row struct{ in, added []float64 }

func newRow(steps int) row {
	return row{make([]float64, steps+1), make([]float64, steps+1)}
}

// best is the better of a step's two states, and which.
func (r row) best(s int) (float64, bool) {
	if r.added[s] > r.in[s] {
		return r.added[s], true
	}
	return r.in[s], false
}

// came says from where a cell was reached: its own state before, the step's
// other state, or the step it holds.
const (
	stayed  = -1
	crossed = -2
)

// walker goes along the words with its working memory.
type walker struct {
	*trellis
	later     []float64 // of each step, the best score of a later one …
	laterFrom []int32   // … and which
}

// first is the row before any word.
func (t *trellis) first() row {
	r := newRow(t.steps)
	for s := range r.in {
		r.in[s], r.added[s] = math.Inf(-1), math.Inf(-1)
	}
	r.added[0] = 0
	return r
}

// step goes from one row to the next over word i. in and added, where not nil,
// take down from where.
func (t *walker) step(i int, from, to row, in, added []int32) {
	h, open, halt := t.words[i], t.open[i], t.halt[i]
	keys := float64(h.keys)
	t.look(from)
	line, lineFrom := math.Inf(-1), int32(0) // best of from + skipMore for each step between
	far, farFrom := math.Inf(-1), int32(0)   // best of from
	for s := 0; s <= t.steps; s++ {
		best, came := from.in[s], int32(stayed)
		if s > 0 {
			last, _ := from.best(s - 1)
			take := func(v float64, from int32) {
				if v > best {
					best, came = v, from
				}
			}
			take(from.added[s]+t.w.resume+halt, crossed)
			take(last+open, int32(s-1))
			take(line+t.w.skip+open, lineFrom)
			take(far+t.w.skipMost+open, farFrom)
			take(t.later[s]+t.w.back+open, t.laterFrom[s])
			if line += t.w.skipMore; last > line {
				line, lineFrom = last, int32(s-1)
			}
			if last > far {
				far, farFrom = last, int32(s-1)
			}
		}
		talk, talkCame := from.added[s], int32(stayed)
		if v := from.in[s] + t.w.add + halt; v > talk {
			talk, talkCame = v, crossed
		}
		to.in[s], to.added[s] = best+h.step+keys*t.base[s], talk+h.added
		if in != nil {
			in[s], added[s] = came, talkCame
		}
	}
	for _, g := range h.steps {
		to.in[g.step+1] += g.gain
	}
}

// look finds the best later step of each.
func (t *walker) look(from row) {
	best, at := math.Inf(-1), int32(0)
	for s := t.steps; s >= 0; s-- {
		t.later[s], t.laterFrom[s] = best, at
		if v, _ := from.best(s); v > best {
			best, at = v, int32(s)
		}
	}
}

// path gives the most likely state of each word and the score of all.
func (t *trellis) path() ([]state, float64) {
	n, width := len(t.words), t.steps+1
	if n == 0 {
		return nil, 0
	}
	block := max(1, min(n, blockCells/width))
	walk := &walker{t, make([]float64, width), make([]int32, width)}
	heads := []row{t.first()}
	now, next := newRow(t.steps), newRow(t.steps)
	copyRow(now, heads[0])
	for i := range n {
		walk.step(i, now, next, nil, nil)
		now, next = next, now
		if (i+1)%block == 0 && i+1 < n {
			head := newRow(t.steps)
			copyRow(head, now)
			heads = append(heads, head)
		}
	}
	score := math.Inf(-1)
	var end state
	for s := range width {
		if v, talk := now.best(s); v > score {
			score, end = v, state{s, talk}
		}
	}
	states := make([]state, n)
	in, added := make([]int32, block*width), make([]int32, block*width)
	bests := make([]bool, block*width) // talk was the better state before the word
	for b := len(heads) - 1; b >= 0; b-- {
		from, to := b*block, min(n, (b+1)*block)
		copyRow(now, heads[b])
		for i := from; i < to; i++ {
			k := (i - from) * width
			for s := range width {
				_, bests[k+s] = now.best(s)
			}
			walk.step(i, now, next, in[k:k+width], added[k:k+width])
			now, next = next, now
		}
		for i := to - 1; i >= from; i-- {
			states[i] = state{end.step - 1, end.added}
			k := (i - from) * width
			came := in[k+end.step]
			if end.added {
				came = added[k+end.step]
			}
			switch came {
			case stayed:
			case crossed:
				end.added = !end.added
			default:
				end = state{int(came), bests[k+int(came)]}
			}
		}
	}
	return states, score
}

func copyRow(to, from row) {
	copy(to.in, from.in)
	copy(to.added, from.added)
}
