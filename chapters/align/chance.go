package align

import (
	"math"
	"slices"
)

// Problem: say of every word heard which step of the plan it belongs to, or
// that it is talk beside the work, and how sure that is, when steps may be
// skipped, moved or said again.
//
// Method: a hidden Markov model whose states are, for each step, its parts one
// after the other (lengths.go says what for) and talk inside or after each; the nearest published task is the
// alignment of recipes to the talk of cooking videos (Malmaud et al. 2015,
// arXiv 1503.01558). Forward and backward sums (Baum et al. 1970) give the
// chance of each state at each word over all ways to explain the talk; the best
// single way (Viterbi) was as good at finding steps and could not say how sure
// it was. A step is entered where the talk halts or leads on; the next one
// costs nothing, leaving out steps and going back do. That a step is said once,
// as a rule, no chain of states can know: the sums are run again with what the
// run before said of where each step is (once.go).
//
// Cost: words times the steps that may be said there, which in a long film are
// those that the words so far speak for (live.go); memory: forward rows are
// kept for a block of words at a time and made again from the row at its head.
//
// Oddity: the step that is said is never entered, so takes of one step in a row
// are one visit; takes.go parts them.

// trellis is the model laid over the words.
type trellis struct {
	w      weights
	steps  int
	parts  int        // how many a step is told in, one after the other
	heard  []*hearing // the different words
	words  []*hearing // of each word heard, one of heard
	base   []float64  // of each step: logarithm of a word's ratio that its plan has not
	open   []float64  // of each word: what speaks for a step's beginning there, as a ratio
	aside  []float64  // of each word: the same for talk beside the work that begins there …
	goesOn []float64  // … and for a step that goes on there
	chat   []float64  // of each word: what speaks for talk beside the work, as a ratio, by the words next to it too
	expect []float64  // of each step: words that it is likely told in

	// Of a run before.
	told  []float64 // of each step: that it is said somewhere
	shun  []float64 // of each step: what is left of the chance to enter it, since it is said elsewhere …
	spare [][]mark  // … but for places where it may be said

	absent []bool // of each step: that it is left out for sure; nil for none

	live []stretch // which steps are summed over where; nil for all everywhere
}

// stretch is a row of words over which the same places are summed over.
type stretch struct {
	from, to int
	places   []int // rising
}

// row holds the likelihood of each state after a word, for the places of its
// stretch: part by part, in each the places in a row. Place 0 is the time before the
// first step, where there is only talk; step s is place s+1.
type row struct{ said, talk []float64 }

func newRow(states int) row {
	all := make([]float64, 2*states)
	return row{all[:states:states], all[states:]}
}

func (r row) total() float64 {
	sum := 0.0
	for s := range r.said {
		sum += r.said[s] + r.talk[s]
	}
	return sum
}

// times is the sum over all states of two rows' products.
func (r row) times(o row) float64 {
	sum := 0.0
	for k := range r.said {
		sum += r.said[k]*o.said[k] + r.talk[k]*o.talk[k]
	}
	return sum
}

// entry is the chance that a step begins with a word.
type entry struct {
	word   int
	chance float64
}

// odds are the chances that come of the model.
type odds struct {
	entries [][]entry // of each step, by word; tiny ones left out
	talk    []float64 // of each word: that it is in no step
	step    []int     // of each word: the likeliest step
	in      []float64 // of each word: the chance of that one

	evidence float64 // logarithm of how much likelier the talk is with the plan than as talk beside any work
}

func newOdds(words, steps int) odds {
	return odds{entries: make([][]entry, steps), talk: make([]float64, words), step: make([]int, words), in: make([]float64, words)}
}

// said is the chance of each step that it is said.
func (o odds) said() []float64 {
	all := make([]float64, len(o.entries))
	for s := range all {
		all[s] = o.told(s)
	}
	return all
}

// told is that of one step.
func (o odds) told(step int) float64 {
	sum := 0.0
	for _, e := range o.entries[step] {
		sum += e.chance
	}
	return min(1, sum)
}

const (
	tinyChance = 1e-3
	blockCells = 3 << 18 // places times words whose rows are kept at once
	scaleEvery = 8       // words after which a row is brought to a total of one; in so few none can run out of a float
)

// odds sums over all ways through the model.
func (t *trellis) odds() odds { return t.oddsIn(blockCells) }

// oddsIn does so with so many cells kept at once.
func (t *trellis) oddsIn(cells int) odds {
	o := newOdds(len(t.words), t.steps)
	if len(t.words) == 0 {
		return o
	}
	p := newPass(t, cells)
	heads := p.there()
	places := p.end(len(p.blocks) - 1).places
	after := p.u.last(places)
	o.evidence = math.Log(p.rows[len(p.rows)-1].times(after))
	for i, scale := range p.scales {
		o.evidence -= math.Log(scale*t.chat[i]) + t.words[i].added
	}
	p.back(heads, after, &o)
	for _, e := range o.entries {
		slices.Reverse(e)
	}
	return o
}

// pass goes through the words there and back.
type pass struct {
	u      *sums
	blocks [][]stretch
	scales []float64 // of each word

	// Of each word of the block at hand.
	rows   []row
	enters [][]float64 // what arrive gives
	room   []float64   // where they lie
}

func newPass(t *trellis, cells int) *pass {
	p := &pass{u: newSums(t), blocks: t.blocks(cells), scales: make([]float64, len(t.words))}
	most := 0
	for _, block := range p.blocks {
		size := 0
		for _, l := range block {
			size += len(l.places) * (l.to - l.from)
		}
		most = max(most, size)
	}
	p.room = make([]float64, (2*t.parts+1)*most)
	return p
}

// end is the last stretch of a block; before the first block there is only the
// time before the first step.
func (p *pass) end(block int) stretch {
	if block < 0 {
		return stretch{places: []int{0}}
	}
	return p.blocks[block][len(p.blocks[block])-1]
}

// there goes through all blocks, keeps the last one's rows, and gives the row
// at the head of each.
func (p *pass) there() []row {
	var heads []row
	now := newRow(p.u.parts)
	now.talk[p.u.parts-1] = 1
	for b := range p.blocks {
		heads = append(heads, now)
		p.forward(b, now)
		last := p.rows[len(p.rows)-1]
		now = newRow(len(last.said))
		copy(now.said, last.said)
		copy(now.talk, last.talk)
	}
	return heads
}

// forward makes the rows of a block.
func (p *pass) forward(block int, from row) {
	p.rows, p.enters = p.rows[:0], p.enters[:0]
	room, was := p.room, p.end(block-1)
	for _, l := range p.blocks[block] {
		p.u.over(l.places)
		from, was = p.u.carry(from, was, l), l
		n := len(l.places)
		for i := l.from; i < l.to; i++ {
			m := p.u.parts * n
			to, enter := row{room[:m:m], room[m : 2*m : 2*m]}, room[2*m:2*m+n:2*m+n]
			room = room[2*m+n:]
			p.scales[i] = p.u.forward(i, from, to, enter)
			p.rows, p.enters = append(p.rows, to), append(p.enters, enter)
			from = to
		}
	}
}

// back goes back through all blocks and reads the chances of each word.
func (p *pass) back(heads []row, after row, o *odds) {
	was := p.end(len(p.blocks) - 1)
	for b := len(p.blocks) - 1; b >= 0; b-- {
		block := p.blocks[b]
		if b+1 < len(p.blocks) {
			p.forward(b, heads[b])
		}
		for j := len(block) - 1; j >= 0; j-- {
			l := block[j]
			p.u.over(l.places)
			after, was = p.u.carry(after, was, l), l
			before := newRow(p.u.parts * len(l.places))
			for i := l.to - 1; i >= l.from; i-- {
				k := i - block[0].from
				o.take(i, p.rows[k], after, p.enters[k], l.places)
				p.u.backward(i, p.scales[i], after, before)
				after, before = before, after
			}
		}
	}
}

// blocks are stretches taken together as far as their cells go.
func (t *trellis) blocks(cells int) [][]stretch {
	live := t.live
	if live == nil {
		all := []int{0}
		for s := range t.steps {
			if !t.isAbsent(s + 1) {
				all = append(all, s+1)
			}
		}
		words := max(1, min(stretchWords, cells/len(all)))
		for from := 0; from < len(t.words); from += words {
			live = append(live, stretch{from, min(len(t.words), from+words), all})
		}
	}
	var blocks [][]stretch
	size := 0
	for _, l := range live {
		n := len(l.places) * (l.to - l.from)
		if len(blocks) == 0 || size+n > cells {
			blocks, size = append(blocks, nil), 0
		}
		blocks[len(blocks)-1] = append(blocks[len(blocks)-1], l)
		size += n
	}
	return blocks
}

// isAbsent holds for a place that is left out for sure.
func (t *trellis) isAbsent(place int) bool { return t.absent != nil && place > 0 && t.absent[place-1] }

// take reads the chances of a word.
func (o *odds) take(i int, at, after row, enter []float64, places []int) {
	told, talk, best, step := 0.0, 0.0, 0.0, 0
	n := len(places)
	for k := range places {
		in := 0.0
		for j := k; j < len(at.said); j += n {
			in += at.said[j] * after.said[j]
			talk += at.talk[j] * after.talk[j]
		}
		told += in
		if in > best {
			best, step = in, places[k]
		}
	}
	total := told + talk
	least := tinyChance * total
	for k, e := range enter {
		if c := e * after.said[k]; c > least {
			s := places[k] - 1
			o.entries[s] = append(o.entries[s], entry{i, c / total})
		}
	}
	o.talk[i], o.step[i], o.in[i] = talk/total, step-1, best/total
}
