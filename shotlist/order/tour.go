package order

// A tour is a feasible sequence with the depot at both ends, under change.
type tour struct {
	in  *instance
	n   int
	w   int
	d   []int32 // costs of arcs, (n+1)×(n+1)
	at  []int32 // at[1..n] is the sequence, at[0] and at[n+1] the depot
	pos []int32 // pos[depot] = n+1, its place as the head of an arc
	len int
	buf []int32
	// back[p] is what walking at[1..p] backwards costs above walking it
	// forwards.
	back []int
}

func newTour(in *instance, d []int32) *tour {
	n := in.n
	t := &tour{in: in, n: n, w: n + 1, d: d, at: make([]int32, n+2), pos: make([]int32, n+1),
		buf: make([]int32, n/2+1), back: make([]int, n+1)}
	t.at[0], t.at[n+1] = int32(n), int32(n)
	t.pos[n] = int32(n + 1)
	return t
}

func (t *tour) arc(i, j int32) int { return int(t.d[int(i)*t.w+int(j)]) }

// set takes over seq.
func (t *tour) set(seq []int32) {
	copy(t.at[1:], seq)
	t.len = 0
	for p, i := range t.at[1:] {
		t.len += t.arc(t.at[p], i)
	}
	t.mark(1, int32(t.n))
}

// place is the position of a node as the tail of an arc.
func (t *tour) place(i int32) int32 {
	if int(i) == t.n {
		return 0
	}
	return t.pos[i]
}

// mark renews pos and back after a change of at[lo..hi].
func (t *tour) mark(lo, hi int32) {
	for p := lo; p <= hi; p++ {
		t.pos[t.at[p]] = p
	}
	last := min(int(hi)+1, t.n)
	old := t.back[last]
	for p := max(int(lo), 2); p <= last; p++ {
		x, y := t.at[p-1], t.at[p]
		t.back[p] = t.back[p-1] + t.arc(y, x) - t.arc(x, y)
	}
	if shift := t.back[last] - old; shift != 0 {
		rest := t.back[last+1:]
		for p := range rest {
			rest[p] += shift
		}
	}
}

const longest = 50

// canSwap reports whether the segments a+1..b and b+1..c may change places:
// the left must hold no predecessor of the right. A precedence that crosses
// from left to right has an immediate one that crosses too, since positions
// rise along it; so only immediate ones are looked at, from the shorter side. Two
// segments longer than longest stay where they are: looking would take long,
// and such an exchange is rarely free.
func (t *tour) canSwap(a, b, c int32) bool {
	if min(b-a, c-b) > longest {
		return false
	}
	if b-a <= c-b {
		for _, x := range t.at[a+1 : b+1] {
			for _, s := range t.in.next[x] {
				if p := t.pos[s]; p > b && p <= c {
					return false
				}
			}
		}
		return true
	}
	for _, x := range t.at[b+1 : c+1] {
		for _, s := range t.in.prev[x] {
			if p := t.pos[s]; p > a && p <= b {
				return false
			}
		}
	}
	return true
}

// swap exchanges the segments a+1..b and b+1..c.
func (t *tour) swap(a, b, c int32) {
	l, r := t.at[a+1:b+1], t.at[b+1:c+1]
	if len(l) <= len(r) {
		m := copy(t.buf, l)
		copy(t.at[a+1:], r)
		copy(t.at[int(c)+1-m:], t.buf[:m])
	} else {
		m := copy(t.buf, r)
		copy(t.at[int(a)+1+m:c+1], l)
		copy(t.at[a+1:], t.buf[:m])
	}
	t.mark(a+1, c)
}

// canFlip reports whether the segment i..j may be reversed.
func (t *tour) canFlip(i, j int32) bool {
	for _, x := range t.at[i : j+1] {
		for _, s := range t.in.next[x] {
			if t.pos[s] <= j {
				return false
			}
		}
	}
	return true
}

// flip reverses the segment i..j.
func (t *tour) flip(i, j int32) {
	for a, b := i, j; a < b; a, b = a+1, b-1 {
		t.at[a], t.at[b] = t.at[b], t.at[a]
	}
	t.mark(i, j)
}
