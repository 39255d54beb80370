package diagnose

import "math/bits"

// The exact search is dynamic programming over what is known. The problem is
// that of optimal binary identification with costs, which is NP-hard (Hyafil and
// Rivest, "Constructing optimal binary decision trees is NP-complete", 1976);
// the recursion is Garey's ("Optimal binary identification procedures", SIAM
// Journal on Applied Mathematics 23, 1972; both from memory): the best that can
// be done from a set of causes is the cheapest, over the tests that part it, of
// the test and the best from each of its outcomes.
//
// What is known is the set of causes left and, where a cause may show one of
// several outcomes, which such tests were made: they change how likely it is.
// Costs are kept multiplied by the likelihood of the place, so that those of the
// outcomes simply add up.
//
// Cost: sets times tests. It gives up past mostClasses, past 64 tests that may
// go either way, or past mostSteps.
const (
	mostClasses = 17 // 16 causes and the unknown one
	mostSteps   = 6 << 20
	forkedStep  = 16 // what a step counts where tests may go either way: it takes that much longer
	finishing   = 11 // classes from which the quick rule hands over
)

type known struct {
	left uint32 // classes
	made uint64 // tests that may go either way for one of them
}

type best struct {
	cost float64
	test int32 // index into rows and 1; 0: not worked out, -1: an end
}

type row struct {
	test    int // index into the search's tests
	minutes float64
	masks   []uint32
	open    uint32 // classes that may show several outcomes
	bit     uint64 // its bit in made, 0 where none may
	ways    []float64
}

type exact struct {
	s       *search
	weights []float64
	classes []int
	rows    []row
	open    []int // rows by their bit in made
	dense   []best
	memo    map[known]best
	price   int // of a step
	over    bool
}

// exact is the best tree of all, or false where the problem is too large.
func (s *search) exact() (*node, bool) {
	n := s.exactFrom(s.start(), make([]bool, len(s.tests)))
	return n, n != nil
}

// exactFrom is the best tree from a place with the tests that are not made, or
// nil where that is too large.
func (s *search) exactFrom(left []candidate, made []bool) *node {
	if len(left) > mostClasses {
		return nil
	}
	e := &exact{s: s}
	for _, c := range left {
		e.weights, e.classes = append(e.weights, c.weight), append(e.classes, c.class)
	}
	for k := range s.tests {
		if t := &s.tests[k]; !made[k] && t.parts(left) {
			e.add(k, t)
		}
	}
	if len(e.open) > 64 {
		return nil
	}
	if len(e.open) == 0 {
		e.dense, e.price = make([]best, 1<<len(left)), 1
	} else {
		e.memo, e.price = map[known]best{}, forkedStep
	}
	root := known{left: 1<<len(left) - 1}
	e.solve(root)
	if e.over {
		return nil
	}
	return e.grow(root)
}

func (e *exact) add(k int, t *splitter) {
	r := row{test: k, minutes: t.of.minutes}
	for _, show := range t.shows {
		mask := uint32(0)
		for i, c := range e.classes {
			if show[c] {
				mask |= 1 << i
			}
		}
		r.masks = append(r.masks, mask)
	}
	for i, c := range e.classes {
		r.ways = append(r.ways, t.ways[c])
		if t.ways[c] > 1 {
			r.open |= 1 << i
		}
	}
	if r.open != 0 {
		if len(e.open) < 64 {
			r.bit = 1 << len(e.open)
		}
		e.open = append(e.open, len(e.rows))
	}
	e.rows = append(e.rows, r)
}

// after is what is known after outcome k of a row. Tests that no cause left
// could have answered otherwise are forgotten: they part nothing any more.
func (e *exact) after(at known, r *row, k int) known {
	at.left &= r.masks[k]
	at.made |= r.bit
	for made := at.made; made != 0; made &= made - 1 {
		if b := bits.TrailingZeros64(made); e.rows[e.open[b]].open&at.left == 0 {
			at.made &^= 1 << b
		}
	}
	return at
}

// weight is how likely a place is.
func (e *exact) weight(at known) float64 {
	sum := 0.0
	for left := at.left; left != 0; left &= left - 1 {
		i := bits.TrailingZeros32(left)
		w := e.weights[i]
		for made := at.made; made != 0; made &= made - 1 {
			w /= e.rows[e.open[bits.TrailingZeros64(made)]].ways[i]
		}
		sum += w
	}
	return sum
}

func (e *exact) known(at known) best {
	if e.dense != nil {
		return e.dense[at.left]
	}
	return e.memo[at]
}

func (e *exact) solve(at known) float64 {
	if bits.OnesCount32(at.left) < 2 || e.over {
		return 0
	}
	if b := e.known(at); b.test != 0 {
		return b.cost
	}
	b := best{test: -1}
	weight := e.weight(at)
	for i := range e.rows {
		r := &e.rows[i]
		if r.bit&at.made != 0 || !r.parts(at.left) {
			continue
		}
		if e.s.steps += e.price; e.s.steps > mostSteps {
			e.over = true
			return 0
		}
		cost := r.minutes * weight
		for k := range r.masks {
			if b.test > 0 && cost >= b.cost {
				break
			}
			cost += e.solve(e.after(at, r, k))
		}
		// a sum taken in another order may differ in its last digits: such a
		// difference is a tie, and the plan's order settles it
		if b.test < 0 || cost < b.cost*(1-1e-12) {
			b = best{cost, int32(i + 1)}
		}
	}
	if e.dense != nil {
		e.dense[at.left] = b
	} else {
		e.memo[at] = b
	}
	return b.cost
}

func (r *row) parts(left uint32) bool {
	for _, m := range r.masks {
		if m &= left; m != 0 && m != left {
			return true
		}
	}
	return false
}

// grow turns what was worked out into a tree.
func (e *exact) grow(at known) *node {
	n := &node{test: -1}
	for left := at.left; left != 0; left &= left - 1 {
		i := bits.TrailingZeros32(left)
		w := e.weight(known{1 << i, at.made})
		n.left = append(n.left, candidate{e.classes[i], w})
	}
	if len(n.left) < 2 {
		return n
	}
	b := e.known(at)
	if b.test < 0 {
		return n
	}
	if w := total(n.left); w > 0 {
		n.cost = b.cost / w
	}
	if e.s.nodes++; e.s.nodes > mostNodes {
		n.cut = true
		return n
	}
	r := &e.rows[b.test-1]
	n.test = r.test
	for k := range r.masks {
		n.next = append(n.next, e.grow(e.after(at, r, k)))
	}
	return n
}
