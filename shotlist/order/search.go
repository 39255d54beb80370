package order

import "math"

type knobs struct {
	kickMin, kickMax int
	kickSeg          int
	temp             float64
	power            float64
	flip             bool
	first            int
	drag             float64
	dragLen          int
	cap, queue       int
}

var defaultKnobs = knobs{kickMin: 1, kickMax: 3, kickSeg: 10, temp: 1.5, power: 1, flip: true}

type search struct {
	tour
	k         knobs
	out, into [][]near
	rnd       random
	queue     []int32
	queued    []bool
	buf       []int32
	back      []int32 // back[p]: cost of walking at[1..p] backwards minus forwards
	lo, hi    int32   // positions touched since the last mark
	its       int
}

func newSearch(in *instance, d []int32, k knobs, seed uint64) *search {
	s := &search{tour: *newTour(in, d), k: k, rnd: random(seed)}
	s.out = neighbours(in.n, d, false)
	s.into = neighbours(in.n, d, true)
	if k.cap > 0 {
		for i := range s.out {
			s.out[i] = s.out[i][:min(len(s.out[i]), k.cap)]
			s.into[i] = s.into[i][:min(len(s.into[i]), k.cap)]
		}
	}
	s.queued = make([]bool, in.n+1)
	s.buf = make([]int32, in.n+1)
	s.back = make([]int32, in.n+2)
	return s
}

func (s *search) push(i int32) {
	if !s.queued[i] {
		s.queued[i] = true
		s.queue = append(s.queue, i)
	}
}

func (s *search) rebuildBack(from int32) {
	if !s.k.flip {
		return
	}
	b := s.back[from]
	w := s.n + 1
	for p := int(from); p < s.n; p++ {
		x, y := int(s.at[p]), int(s.at[p+1])
		if p > 0 {
			b += s.d[y*w+x] - s.d[x*w+y]
		}
		s.back[p+1] = b
	}
}

func (s *search) doSwap(a, b, c int32) {
	for _, p := range [3]int32{a, b, c} {
		s.push(s.at[p])
		s.push(s.at[p+1])
	}
	s.swap(a, b, c, s.buf)
	s.lo, s.hi = min(s.lo, a+1), max(s.hi, c)
	s.rebuildBack(a)
}

func (s *search) doFlip(i, j int32) {
	s.push(s.at[i-1])
	s.push(s.at[i])
	s.push(s.at[j])
	s.push(s.at[j+1])
	s.flip(i, j)
	s.lo, s.hi = min(s.lo, i), max(s.hi, j)
	s.rebuildBack(i - 1)
}

// improve finds the best move starting with the arc out of t1; applies it.
func (s *search) improve(t1 int32) bool {
	p := int32(0)
	if int(t1) < s.n {
		p = s.pos[t1]
	}
	w := s.n + 1
	at, pos, d := s.at, s.pos, s.d
	t2 := at[p+1]
	d12 := d[int(t1)*w+int(t2)]
	best, ba, bb, bc := int32(0), int32(0), int32(0), int32(0)
	flip := false
outer:
	for _, e := range s.out[t1] {
		if e.cost >= d12 {
			break
		}
		t3 := e.node
		q := pos[t3] - 1
		t4 := at[q]
		g := d12 - e.cost + d[int(t4)*w+int(t3)]
		for _, f := range s.out[t4] {
			if g-f.cost <= best {
				break
			}
			r := pos[f.node] - 1
			var a, b, c int32
			if q > p {
				if r > q {
					a, b, c = p, q, r
				} else if r < p {
					a, b, c = r, p, q
				} else {
					continue
				}
			} else {
				if r > q && r < p {
					a, b, c = q, r, p
				} else {
					continue
				}
			}
			r6 := d[int(at[r])*w:]
			gain := g - f.cost + r6[f.node] - r6[t2]
			if gain > best && s.canSwap(a, b, c) {
				best, ba, bb, bc, flip = gain, a, b, c, false
				if s.k.first > 1 {
					break outer
				}
			}
		}
		if s.k.flip && q > p && int(q) < s.n {
			// reverse p+1..q+1: t1→t3, t2→t4'
			x := at[q+2]
			gain := d12 - e.cost + d[int(t3)*w+int(x)] - d[int(t2)*w+int(x)] - (s.back[q+1] - s.back[p+1])
			if gain > best && s.canFlip(p+1, q+1) {
				best, ba, bb, flip = gain, p+1, q+1, true
			}
		}
		if s.k.first > 0 && best > 0 {
			break
		}
	}
	if s.k.flip && int(p) < s.n && (best == 0 || s.k.first == 0) {
		// arc t1→t2 replaced by t3→t2 with t3 earlier; reverse pos(t3)..p
		for _, e := range s.into[t2] {
			if e.cost >= d12 {
				break
			}
			t3 := e.node
			q := s.pos[t3]
			if q >= p {
				continue
			}
			r4 := d[int(s.at[q-1])*w:]
			gain := d12 - e.cost + r4[t3] - r4[t1] - (s.back[p] - s.back[q])
			if gain > best && s.canFlip(q, p) {
				best, ba, bb, flip = gain, q, p, true
				if s.k.first > 0 {
					break
				}
			}
		}
	}
	if best <= 0 {
		return false
	}
	if flip {
		s.doFlip(ba, bb)
	} else {
		s.doSwap(ba, bb, bc)
	}
	s.len -= int(best)
	return true
}

func (s *search) descend() {
	for len(s.queue) > 0 {
		var i int32
		switch s.k.queue {
		case 0:
			i = s.queue[len(s.queue)-1]
			s.queue = s.queue[:len(s.queue)-1]
		case 1:
			i = s.queue[0]
			s.queue = s.queue[1:]
		case 2:
			k := s.rnd.below(len(s.queue))
			i = s.queue[k]
			s.queue[k] = s.queue[len(s.queue)-1]
			s.queue = s.queue[:len(s.queue)-1]
		}
		s.queued[i] = false
		for s.improve(i) {
		}
	}
}

func (s *search) kick() {
	k := s.k.kickMin + s.rnd.below(s.k.kickMax-s.k.kickMin+1)
	for range k {
		if s.k.drag > 0 && s.rnd.unit() < s.k.drag {
			s.dragKick()
			continue
		}
		for range 50 {
			if s.n < 2 {
				return
			}
			ia := s.rnd.below(s.n - 1)
			m := min(s.k.kickSeg, s.n-ia-1)
			ib := ia + 1 + s.rnd.below(m)
			ic := ib + 1 + s.rnd.below(min(s.k.kickSeg, s.n-ib))
			a, b, c := int32(ia), int32(ib), int32(ic)
			if !s.canSwap(a, b, c) {
				continue
			}
			x1, x2, x3 := s.at[a], s.at[b], s.at[c]
			y1, y2, y3 := s.at[a+1], s.at[b+1], s.at[c+1]
			s.len += int(s.arc(x1, y2) + s.arc(x3, y1) + s.arc(x2, y3) - s.arc(x1, y1) - s.arc(x2, y2) - s.arc(x3, y3))
			s.doSwap(a, b, c)
			break
		}
	}
}

// run anneals; progress gives 0..1; returns the best.
func (s *search) run(seq []int32, progress func() float64, t0 float64) ([]int32, int) {
	s.set(seq)
	s.lo, s.hi = int32(s.n+1), 0
	s.rebuildBack(0)
	for i := range s.n + 1 {
		s.push(int32(i))
	}
	s.descend()
	cur := append([]int32{}, s.at[1:s.n+1]...)
	best := append([]int32{}, cur...)
	curLen, bestLen := s.len, s.len
	t0 *= float64(s.in.length(cur)+s.in.fixed) / float64(s.n+1)
	temp := t0
	for it := 0; ; it++ {
		s.its++
		if it%64 == 0 {
			f := progress()
			if f >= 1 {
				break
			}
			temp = t0 * math.Pow(1-f, s.k.power)
			if s.k.power < 0 {
				temp = t0 * math.Exp(s.k.power*f)
			}
		}
		s.lo, s.hi = int32(s.n+1), 0
		s.kick()
		s.descend()
		if s.lo > s.hi {
			continue
		}
		if s.len < bestLen {
			bestLen = s.len
			copy(best, s.at[1:])
		}
		if s.len <= curLen || float64(s.len-curLen) < -temp*math.Log(s.rnd.unit()) {
			curLen = s.len
			copy(cur[s.lo-1:s.hi], s.at[s.lo:s.hi+1])
		} else {
			copy(s.at[s.lo:s.hi+1], cur[s.lo-1:s.hi])
			for p := s.lo; p <= s.hi; p++ {
				s.pos[s.at[p]] = p
			}
			s.len = curLen
			s.rebuildBack(s.lo - 1)
		}
	}
	return best, bestLen
}

func (s *search) dragKick() {
	px := 1 + s.rnd.below(s.n)
	x := s.at[px]
	dist := 1 + s.rnd.below(min(s.k.dragLen, s.n-1))
	var lo, hi int
	m, r := 0, 0
	early := s.rnd.next()&1 == 0
	if early {
		lo, hi = max(1, px-dist), px
	} else {
		lo, hi = px, min(s.n, px+dist)
	}
	if lo == hi {
		return
	}
	old := 0
	for p := lo - 1; p <= hi; p++ {
		old += int(s.arc(s.at[p], s.at[p+1]))
	}
	rest := make([]int32, 0, 128)
	for p := lo; p <= hi; p++ {
		y := s.at[p]
		moved := y == x
		if early {
			moved = moved || s.in.pred[x].has(int(y))
		} else {
			moved = moved || s.in.succ[x].has(int(y))
		}
		if moved {
			s.buf[m] = y
			m++
		} else {
			rest = append(rest, y)
			r++
		}
	}
	if r == 0 {
		return
	}
	prev := s.at[lo-1]
	for p := lo; p <= hi; p++ {
		var y int32
		k := p - lo
		if early {
			if k < m {
				y = s.buf[k]
			} else {
				y = rest[k-m]
			}
		} else {
			if k < r {
				y = rest[k]
			} else {
				y = s.buf[k-r]
			}
		}
		s.back[p] = y // scratch
	}
	_ = prev
	nw := 0
	for p := lo; p <= hi; p++ {
		y := s.back[p]
		if p == lo || s.back[p-1] != s.at[s.pos[y]-1] || s.pos[y] == int32(lo) {
			s.push(y)
			s.push(s.at[s.pos[y]-1])
			if p > lo {
				s.push(s.back[p-1])
			}
		}
	}
	s.push(s.at[hi])
	s.push(s.at[hi+1])
	for p := lo; p <= hi; p++ {
		y := s.back[p]
		s.at[p] = y
	}
	for p := lo; p <= hi; p++ {
		s.pos[s.at[p]] = int32(p)
	}
	for p := lo - 1; p <= hi; p++ {
		nw += int(s.arc(s.at[p], s.at[p+1]))
	}
	s.push(s.at[hi])
	s.len += nw - old
	s.lo, s.hi = min(s.lo, int32(lo)), max(s.hi, int32(hi))
	s.rebuildBack(int32(lo - 1))
}
