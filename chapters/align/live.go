package align

import (
	"cmp"
	"slices"
)

// How a long film is made short: most steps are nowhere near most words. One
// look over those that words speak for, and over those that may go on, says
// which have a chance where; the sums go over those.
const (
	stretchWords = 64      // words over which the same places are summed over
	fewCells     = 1 << 18 // words times places up to which all always are: half an hour of 40 steps
	lookEvery    = 8       // words after which a look is taken
	lookMost     = 24      // places that a look takes because words speak for them …
	lookLeast    = 1e-5    // … and share of the chance from which one goes on being looked at
	liveLeast    = 1e-4    // chance from which a place is not left out …
	liveMost     = 24      // … as long as they are no more than so many
)

// long holds for a film of so many words that not all places are summed over.
func (t *trellis) long(words int) bool { return words*(t.steps+1) > fewCells }

// narrow finds the places to sum over.
func (t *trellis) narrow() {
	n, places := len(t.words), t.steps+1
	if !t.long(n) {
		return
	}
	best := t.look()
	near := make([]float32, places)
	t.live = nil
	for b := range best {
		copy(near, best[b])
		for _, beside := range [...]int{b - 1, b + 1} {
			if beside >= 0 && beside < len(best) {
				for s, c := range best[beside] {
					near[s] = max(near[s], c)
				}
			}
		}
		sorted := slices.Clone(near)
		slices.Sort(sorted)
		least := max(liveLeast, sorted[max(0, places-liveMost)])
		l := stretch{from: b * stretchWords, to: min(n, (b+1)*stretchWords)}
		for s, c := range near {
			if c >= least || b == 0 && s == 0 {
				l.places = append(l.places, s)
			}
		}
		t.live = append(t.live, l)
	}
}

// look gives for each stretch the best chance of each place in it, at every
// few words.
func (t *trellis) look() [][]float32 {
	n := len(t.words)
	u := newSums(t)
	scales := make([]float64, n)
	seen := make([][]float32, (n+lookEvery-1)/lookEvery)
	var over []stretch
	enter := make([]float64, t.steps+1)
	now, was := newRow(t.parts), stretch{places: []int{0}}
	now.talk[t.parts-1] = 1
	for from := 0; from < n; from += stretchWords {
		l := stretch{from: from, to: min(n, from+stretchWords)}
		l.places = t.sighted(l, now, was.places)
		u.over(l.places)
		now, was = u.carry(now, was, l), l
		over = append(over, l)
		next := newRow(t.parts * len(l.places))
		for i := l.from; i < l.to; i++ {
			scales[i] = u.forward(i, now, next, enter[:len(l.places)])
			now, next = next, now
			if i%lookEvery == 0 {
				seen[i/lookEvery] = now.small()
			}
		}
	}
	return t.lookBack(u, over, scales, seen)
}

// lookBack goes back over what was looked at and reads the chances.
func (t *trellis) lookBack(u *sums, over []stretch, scales []float64, seen [][]float32) [][]float32 {
	best := make([][]float32, len(over))
	was := over[len(over)-1]
	u.over(was.places)
	after := u.last(was.places)
	chances := make([]float64, t.steps+1)
	for b := len(over) - 1; b >= 0; b-- {
		l := over[b]
		u.over(l.places)
		after, was = u.carry(after, was, l), l
		before := newRow(t.parts * len(l.places))
		best[b] = make([]float32, t.steps+1)
		for i := l.to - 1; i >= l.from; i-- {
			if i%lookEvery == 0 {
				kept, total := seen[i/lookEvery], 0.0
				for k := range l.places {
					chances[k] = 0
					for j := k; j < len(after.said); j += len(l.places) {
						chances[k] += float64(kept[2*j])*after.said[j] + float64(kept[2*j+1])*after.talk[j]
					}
					total += chances[k]
				}
				for k, s := range l.places {
					best[b][s] = max(best[b][s], float32(chances[k]/total))
				}
			}
			u.backward(i, scales[i], after, before)
			after, before = before, after
		}
	}
	return best
}

// small is a row in little room.
func (r row) small() []float32 {
	s := make([]float32, 2*len(r.said))
	for k := range r.said {
		s[2*k], s[2*k+1] = float32(r.said[k]), float32(r.talk[k])
	}
	return s
}

// sighted gives the places to look at over a stretch: those that the words in it
// and next to it speak for most, those that have a chance before it, and the two
// that follow each of the likeliest.
func (t *trellis) sighted(l stretch, now row, were []int) []int {
	says := make([]float64, t.steps+1)
	for _, h := range t.words[max(0, l.from-stretchWords/2):min(len(t.words), l.to+stretchWords/2)] {
		for _, g := range h.steps {
			says[g.step+1] += g.gain
		}
	}
	most := make([]int, len(says))
	for s := range most {
		most[s] = s
	}
	slices.SortFunc(most, func(a, b int) int { return cmp.Or(-cmp.Compare(says[a], says[b]), a-b) })
	in := make([]bool, len(says))
	for _, s := range most[:min(lookMost, len(most))] {
		in[s] = says[s] > 0
	}
	total := now.total()
	for k, s := range were {
		share := 0.0
		for j := k; j < len(now.said); j += len(were) {
			share += (now.said[j] + now.talk[j]) / total
		}
		if share < lookLeast {
			continue
		}
		in[s] = true
		if share > 100*liveLeast {
			for next := s + 1; next <= min(s+2, t.steps); next++ {
				in[next] = true
			}
		}
	}
	var places []int
	for s, is := range in {
		if is {
			places = append(places, s)
		}
	}
	return places
}
