package order

// A tour is a feasible sequence with the depot at both ends, under change.
type tour struct {
	in  *instance
	n   int
	w   int
	d   []int32 // cost of arcs
	at  []int32
	pos []int32 // pos[depot] = n+1, its place as a target
	len int
}

func newTour(in *instance, d []int32) *tour {
	t := &tour{in: in, n: in.n, w: in.n + 1, d: d, at: make([]int32, in.n+2), pos: make([]int32, in.n+1)}
	t.at[0], t.at[in.n+1] = int32(in.n), int32(in.n)
	t.pos[in.n] = int32(in.n + 1)
	return t
}

func (t *tour) arc(i, j int32) int32 { return t.d[int(i)*t.w+int(j)] }

// set takes over seq.
func (t *tour) set(seq []int32) {
	copy(t.at[1:], seq)
	t.len = 0
	for p, i := range t.at[1:] {
		t.pos[i] = int32(p + 1)
		t.len += int(t.arc(t.at[p], i))
	}
}

// canSwap reports whether the segments a+1..b and b+1..c may change places:
// the left must hold no predecessor of the right. A precedence that crosses
// from left to right has an immediate one that crosses too, since positions
// rise along it; so only immediate ones are looked at.
func (t *tour) canSwap(a, b, c int32) bool {
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
func (t *tour) swap(a, b, c int32, buf []int32) {
	l, r := t.at[a+1:b+1], t.at[b+1:c+1]
	if len(l) <= len(r) {
		m := copy(buf, l)
		copy(t.at[a+1:], r)
		copy(t.at[int(c)+1-m:], buf[:m])
	} else {
		m := copy(buf, r)
		copy(t.at[int(a)+1+m:c+1], l)
		copy(t.at[a+1:], buf[:m])
	}
	for p := a + 1; p <= c; p++ {
		t.pos[t.at[p]] = p
	}
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
	for ; i < j; i, j = i+1, j-1 {
		x, y := t.at[i], t.at[j]
		t.at[i], t.at[j] = y, x
		t.pos[y], t.pos[x] = i, j
	}
}
