package align

import "slices"

// How a long film is made short: most steps are nowhere near most words. One
// look over all of them says which have a chance where; the sums go over those.
const (
	stretchWords = 64      // words over which the same places are summed over
	fewCells     = 1 << 18 // words times places up to which all always are: half an hour of 40 steps
	lookEvery    = 8       // words after which a look is taken
	liveLeast    = 1e-4    // chance from which a place is not left out …
	liveMost     = 24      // … as long as they are no more than so many
)

// narrow finds the places to sum over.
func (t *trellis) narrow() {
	n, places := len(t.words), t.steps+1
	if n*places <= fewCells {
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
	n, places := len(t.words), t.steps+1
	all := make([]int, places)
	for s := range all {
		all[s] = s
	}
	u := newSums(t)
	u.over(all)
	scales := make([]float64, n)
	enter := make([]float64, places)
	seen := make([]float32, 3*places*(n/lookEvery+1))
	now, next := newRow(places), newRow(places)
	now.talk[0] = 1
	for i := range n {
		scales[i] = u.forward(i, now, next, enter)
		now, next = next, now
		if i%lookEvery == 0 {
			kept := seen[3*places*(i/lookEvery):]
			for s := range all {
				kept[3*s], kept[3*s+1], kept[3*s+2] = float32(now.head[s]), float32(now.tail[s]), float32(now.talk[s])
			}
		}
	}
	best := make([][]float32, (n+stretchWords-1)/stretchWords)
	for b := range best {
		best[b] = make([]float32, places)
	}
	after, before := u.last(all), next
	chances := make([]float64, places)
	for i := n - 1; i >= 0; i-- {
		if i%lookEvery == 0 {
			kept, total := seen[3*places*(i/lookEvery):], 0.0
			for s := range all {
				c := float64(kept[3*s])*after.head[s] + float64(kept[3*s+1])*after.tail[s] + float64(kept[3*s+2])*after.talk[s]
				chances[s] = c
				total += c
			}
			here := best[i/stretchWords]
			for s, c := range chances {
				here[s] = max(here[s], float32(c/total))
			}
		}
		u.backward(i, scales[i], after, before)
		after, before = before, after
	}
	return best
}
