package order

import "math"

// A search betters a tour.
//
// Problem: good sequences of hundreds of nodes in little time.
//
// Method: iterated local search. A round swaps one or two pairs of
// neighbouring segments at random, repairs the tour by 3-exchange from the touched nodes
// alone, and keeps the result by the rule of simulated annealing. The exchange
// is that of Gambardella and Dorigo (SOP-3-exchange, INFORMS Journal on
// Computing 12, 2000): two neighbouring segments change places, nothing is
// walked backwards, three arcs change. It is found along candidate arcs, as
// long as the arcs put in stay cheaper than those taken out (Lin and Kernighan,
// Operations Research 21, 1973). A stack holds the nodes whose arcs deserve a
// look. Where costs are much alike both ways, segments are also reversed
// (2-exchange).
//
// Costs are reduced by an assignment's prices: that changes no gain, as every
// tour pays every price once, but it puts the promising arcs first and makes
// the gain rule cut early; rounds are up to three times as quick.
//
// Tried and worse: best instead of first gain, candidate lists of 8 to 16
// arcs, accepting improvements only.
type search struct {
	tour
	out, into []arcs // candidate arcs out of and into every node
	rnd       random
	queue     []int32
	queued    []bool
	lo, hi    int32 // positions touched in this round
}

const (
	// heat is the first temperature of the annealing, as a share of what a
	// tour costs above the assignment, to the arc.
	heat = 5.0
	// kicks is the most swaps to a round; reach is the longest segment of those
	// near a random place, lures the number of arcs that those along cheap
	// arcs choose from.
	kicks = 2
	reach = 30
	lures = 8
)

func newSearch(in *instance, d []int32, seed uint64) *search {
	return &search{tour: *newTour(in, d), rnd: random(seed),
		out: candidates(in.n, d, outward), into: candidates(in.n, d, inward),
		queued: make([]bool, in.n+1)}
}

func (s *search) push(i int32) {
	if !s.queued[i] {
		s.queued[i] = true
		s.queue = append(s.queue, i)
	}
}

// exchange swaps the segments a+1..b and b+1..c at a gain.
func (s *search) exchange(a, b, c int32, gain int) {
	for _, p := range [3]int32{a, b, c} {
		s.push(s.at[p])
		s.push(s.at[p+1])
	}
	s.swap(a, b, c)
	s.len -= gain
	s.lo, s.hi = min(s.lo, a+1), max(s.hi, c)
}

// reverse walks i..j backwards if that is allowed and gains.
func (s *search) reverse(i, j int32) bool {
	x, u, v, y := s.at[i-1], s.at[i], s.at[j], s.at[j+1]
	gain := s.arc(x, u) + s.arc(v, y) - s.arc(x, v) - s.arc(u, y) - (s.back[j] - s.back[i])
	if gain <= 0 || !s.canFlip(i, j) {
		return false
	}
	for _, t := range [4]int32{x, u, v, y} {
		s.push(t)
	}
	s.flip(i, j)
	s.len -= gain
	s.lo, s.hi = min(s.lo, i), max(s.hi, j)
	return true
}

// improve makes the first gain it finds that begins with taking out the arc
// from t1.
func (s *search) improve(t1 int32) bool {
	p := s.place(t1)
	t2 := s.at[p+1]
	d12 := s.d[int(t1)*s.w+int(t2)]
	for _, e := range s.out[t1] {
		if e.cost >= d12 {
			break
		}
		q := s.pos[e.node] - 1
		if s.relink(p, q, d12-e.cost) {
			return true
		}
		if q > p && int(q) < s.n && s.reverse(p+1, q+1) {
			return true
		}
	}
	if p == 0 {
		return false
	}
	for _, e := range s.into[t2] {
		if e.cost >= d12 {
			break
		}
		if q := s.pos[e.node]; q < p && s.reverse(q, p) {
			return true
		}
	}
	return false
}

// relink looks for the third arc of an exchange: those after positions p and q
// go, the one from p to q+1 comes, gain so far.
func (s *search) relink(p, q, gain int32) bool {
	t2, t3, t4 := s.at[p+1], s.at[q+1], s.at[q]
	gain += s.d[int(t4)*s.w+int(t3)]
	for _, f := range s.out[t4] {
		if gain <= f.cost {
			return false
		}
		r := s.pos[f.node] - 1
		a, b, c, ok := segments(p, q, r)
		if !ok {
			continue
		}
		row := s.d[int(s.at[r])*s.w:]
		if g := gain - f.cost + row[f.node] - row[t2]; g > 0 && s.canSwap(a, b, c) {
			s.exchange(a, b, c, int(g))
			return true
		}
	}
	return false
}

// descend repairs the tour until no queued node offers a gain.
func (s *search) descend() {
	for len(s.queue) > 0 {
		i := s.queue[len(s.queue)-1]
		s.queue = s.queue[:len(s.queue)-1]
		s.queued[i] = false
		for s.improve(i) {
		}
	}
}

// kick disturbs the tour, whatever the cost: half of the time near a random
// place, half of the time along cheap arcs, which may lead far away.
func (s *search) kick() {
	for range 1 + s.rnd.below(kicks) {
		for range 50 {
			a, b, c, ok := s.nearby()
			if s.rnd.below(2) == 0 {
				a, b, c, ok = s.lured()
			}
			if ok && s.canSwap(a, b, c) {
				s.exchange(a, b, c, s.gain(a, b, c))
				break
			}
		}
	}
}

// nearby chooses two short neighbouring segments anywhere.
func (s *search) nearby() (a, b, c int32, ok bool) {
	x := s.rnd.below(s.n - 1)
	y := x + 1 + s.rnd.below(min(reach, s.n-1-x))
	z := y + 1 + s.rnd.below(min(reach, s.n-y))
	return int32(x), int32(y), int32(z), true
}

// lured chooses an exchange that puts in two of the cheapest arcs of their
// nodes.
func (s *search) lured() (a, b, c int32, ok bool) {
	t1 := int32(s.rnd.below(s.w))
	t3, ok := s.lure(t1)
	if !ok {
		return 0, 0, 0, false
	}
	q := s.pos[t3] - 1
	t5, ok := s.lure(s.at[q])
	if !ok {
		return 0, 0, 0, false
	}
	return segments(s.place(t1), q, s.pos[t5]-1)
}

// lure is one of the nodes that are cheapest to go to from t.
func (s *search) lure(t int32) (int32, bool) {
	l := s.out[t]
	if len(l) == 0 {
		return 0, false
	}
	return l[s.rnd.below(min(lures, len(l)))].node, true
}

// segments names the exchange that takes out the arcs after p, q and r and puts
// in those from p to q+1 and from q to r+1: a+1..b and b+1..c change places.
func segments(p, q, r int32) (a, b, c int32, ok bool) {
	switch {
	case p < q && q < r:
		return p, q, r, true
	case r < p && p < q:
		return r, p, q, true
	case q < r && r < p:
		return q, r, p, true
	}
	return 0, 0, 0, false
}

// gain is what swapping a+1..b and b+1..c saves.
func (s *search) gain(a, b, c int32) int {
	x, y, z := s.at[a], s.at[b], s.at[c]
	x2, y2, z2 := s.at[a+1], s.at[b+1], s.at[c+1]
	return s.arc(x, x2) + s.arc(y, y2) + s.arc(z, z2) - s.arc(x, y2) - s.arc(z, x2) - s.arc(y, z2)
}

// run anneals from seq, as long as progress stays below 1 (it is asked every
// turn of rounds), and returns the best tour; it stops at one of length goal.
func (s *search) run(seq []int32, goal int, progress func() float64) []int32 {
	s.set(seq)
	for i := range s.n + 1 {
		s.push(int32(i))
	}
	s.descend()
	now, best := append([]int32{}, s.at[1:s.n+1]...), append([]int32{}, s.at[1:s.n+1]...)
	nowLen, bestLen := s.len, s.len
	start, temp := heat*float64(s.len)/float64(s.w), 0.0
	for round := 0; s.n > 1 && bestLen > goal; round++ {
		if round%turn == 0 {
			used := progress()
			if used >= 1 {
				break
			}
			temp = start * (1 - used)
		}
		s.lo, s.hi = int32(s.n+1), 0
		s.kick()
		s.descend()
		if s.len < bestLen {
			bestLen = s.len
			copy(best, s.at[1:])
		}
		if s.lo > s.hi {
			continue
		}
		if s.len <= nowLen || float64(s.len-nowLen) < -temp*math.Log(s.rnd.unit()) {
			nowLen = s.len
			copy(now[s.lo-1:s.hi], s.at[s.lo:s.hi+1])
		} else {
			s.len = nowLen
			copy(s.at[s.lo:s.hi+1], now[s.lo-1:s.hi])
			s.mark(s.lo, s.hi)
		}
	}
	return best
}
