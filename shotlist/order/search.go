package order

import "math"

// A search betters a tour.
//
// Problem: good sequences of hundreds of nodes in little time.
//
// Method: iterated local search. A round swaps one or two random pairs of
// neighbouring segments, repairs the tour by 3-exchange from the touched nodes
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
	heat = 3.0
	// kicks is the most swaps to a round, reach their longest segment.
	kicks = 2
	reach = 10
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
		if s.flips && q > p && int(q) < s.n && s.reverse(p+1, q+1) {
			return true
		}
	}
	if !s.flips || p == 0 {
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
		var a, b, c int32
		switch {
		case q > p && r > q:
			a, b, c = p, q, r
		case q > p && r < p:
			a, b, c = r, p, q
		case q < r && r < p:
			a, b, c = q, r, p
		default:
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

// kick swaps random neighbouring segments, whatever the cost.
func (s *search) kick() {
	for range 1 + s.rnd.below(kicks) {
		for range 50 {
			a := s.rnd.below(s.n - 1)
			b := a + 1 + s.rnd.below(min(reach, s.n-1-a))
			c := b + 1 + s.rnd.below(min(reach, s.n-b))
			if a, b, c := int32(a), int32(b), int32(c); s.canSwap(a, b, c) {
				x, y, z := s.at[a], s.at[b], s.at[c]
				x2, y2, z2 := s.at[a+1], s.at[b+1], s.at[c+1]
				s.exchange(a, b, c, s.arc(x, x2)+s.arc(y, y2)+s.arc(z, z2)-s.arc(x, y2)-s.arc(z, x2)-s.arc(y, z2))
				break
			}
		}
	}
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
