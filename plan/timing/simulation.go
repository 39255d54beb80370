package timing

import (
	"math"
	"math/bits"
	"math/rand/v2"
	"slices"
	"sync"

	"fixslate/plan"
)

// Problem: the 10, 50 and 90 % points of sums of step times. A step is the
// longer of two uncertain times, and all steps share one uncertain voice, so
// the points have no closed form.
//
// Method: simulation by Latin hypercube sampling (McKay, Beckman and Conover
// 1979, Technometrics 21): each quantity is cut into as many equally likely
// slices as there are runs, and every slice is used once, in shuffled order.
// That makes the points of one quantity exact and those of sums much steadier
// than plain draws. Convolution was rejected: the shared voice would want one
// for each of its values.
//
// The result does not depend on the machine: the shuffle is whole numbers from
// a fixed seed, factors are rounded to one part in 2²⁰ and times to
// microseconds, so a machine that rounds exp or pow differently in the last
// bit still adds the same numbers.
//
// Cost: runs × (steps + versions), in the memory of a few runs: what a step
// takes is added to the sums that it counts in and then forgotten.
const runs = 1024

// one is the factor 1.
const one = 1 << 20

// times holds, run by run, a length of time in microseconds.
type times [runs]int64

// simulation holds the sums.
type simulation struct {
	seed    *rand.PCG
	voice   times // factor on all speech, in parts of one
	normal  []float64
	shapes  map[shape]*times
	shuffle [runs]int32
	ranks   ranks
	so      times // when the next step begins
	hands   times
	sums    []sum
	step    times // screen time of the step being added
	drawn   times
}

// sum is a sum over some of the steps.
type sum struct {
	counts func(*plan.Step) bool
	hands  bool // of hands-on time, else of screen time
	total  times
}

// quantiles are those of the normal distribution, one a run; nothing writes to
// them.
var quantiles = sync.OnceValue(func() []float64 { return normalQuantiles(runs) })

func newSimulation(p *plan.Plan, voiceSigma float64) *simulation {
	s := &simulation{
		seed:   rand.NewPCG(0x6669782d, 0x736c617465), // any fixed numbers
		normal: quantiles(),
		shapes: map[shape]*times{},
	}
	for i := range s.shuffle {
		s.shuffle[i] = int32(i)
	}
	var voice times
	for i, z := range s.normal {
		voice[i] = int64(math.Round(one * math.Exp(voiceSigma*z)))
	}
	s.mix()
	for i, j := range s.shuffle {
		s.voice[i] = voice[j]
	}
	s.sums = append(s.sums, sum{counts: straight})
	for _, v := range p.Variants {
		has := func(st *plan.Step) bool { return plan.Meets(st.Variants, []string{v.ID}) }
		s.sums = append(s.sums, sum{counts: has}, sum{counts: func(st *plan.Step) bool { return has(st) && straight(st) }}, sum{counts: has, hands: true})
	}
	return s
}

// mix puts the slices into another order (Fisher and Yates).
func (s *simulation) mix() {
	for i := uint64(runs - 1); i > 0; i-- {
		j, _ := bits.Mul64(s.seed.Uint64(), i+1)
		s.shuffle[i], s.shuffle[j] = s.shuffle[j], s.shuffle[i]
	}
}

// add takes up the next step, and says when it begins.
func (s *simulation) add(of *plan.Step, step *Step, onScreen PERT) Spread {
	begin := s.ranks.points(&s.so)
	speech := micro(step.Narration)
	fixed := micro(step.Cards) + micro(step.Held) + micro(step.Sounds)
	s.mix()
	sigma := LineSpread * evenness(step.Beats)
	centre := -float64(sigma*sigma) / 2 // a mean of 1: many lines leave the total alone
	for i, j := range s.shuffle {
		line := int64(math.Round(one * math.Exp(float64(sigma*s.normal[j])+centre)))
		s.step[i] = fixed + speech*s.voice[i]/one*line/one
	}
	s.draw(onScreen)
	for i, action := range s.drawn {
		s.step[i] = max(s.step[i], action)
	}
	s.draw(step.HandsOn)
	s.so.add(&s.step)
	s.hands.add(&s.drawn)
	for i := range s.sums {
		switch n := &s.sums[i]; {
		case !n.counts(of):
		case n.hands:
			n.total.add(&s.drawn)
		default:
			n.total.add(&s.step)
		}
	}
	return begin
}

// evenness turns the spread of one line into that of a step's lines together:
// √(Σ s²) / Σ s, as lines miss independently.
func evenness(beats []Beat) float64 {
	sum, squares := 0.0, 0.0
	for _, b := range beats {
		if b.Spoken() {
			d := b.End - b.Start
			sum += d
			squares += d * d
		}
	}
	if sum == 0 {
		return 0
	}
	return math.Sqrt(squares) / sum
}

// draw gives every run its value of a three-point estimate.
func (s *simulation) draw(e PERT) {
	low, width := micro(e.Low), micro(e.High)-micro(e.Low)
	if width <= 0 {
		for i := range s.drawn {
			s.drawn[i] = low
		}
		return
	}
	unit := s.unit(e.shape())
	s.mix()
	for i, j := range s.shuffle {
		s.drawn[i] = low + width*unit[j]/one
	}
}

// unit is a shape's quantiles in parts of one.
func (s *simulation) unit(sh shape) *times {
	sh = shape{math.Round(sh.alpha*1e9) / 1e9, math.Round(sh.beta*1e9) / 1e9}
	if u, ok := s.shapes[sh]; ok {
		return u
	}
	u := new(times)
	for i, q := range sh.quantiles(runs) {
		u[i] = int64(math.Round(one * q))
	}
	s.shapes[sh] = u
	return u
}

// micro rounds seconds to microseconds. A thousand hours are the most a single
// quantity may be: the products above then fit into 63 bits.
func micro(seconds float64) int64 {
	return int64(math.Round(min(seconds, 3.6e6) * 1e6))
}

// fill writes the spreads of the sums into the timeline.
func (s *simulation) fill(t *Timeline, p *plan.Plan) {
	spread := func(i int) Spread { return s.ranks.points(&s.sums[i].total) }
	t.Running, t.HandsOn, t.Straight = s.ranks.points(&s.so), s.ranks.points(&s.hands), spread(0)
	for i, v := range p.Variants {
		t.Versions = append(t.Versions, Version{Variant: v.ID, Running: spread(3*i + 1), Straight: spread(3*i + 2), HandsOn: spread(3*i + 3)})
	}
}

func straight(s *plan.Step) bool { return s.OnlyIf.Test == "" }

func (t *times) add(more *times) {
	for i, v := range more {
		t[i] += v
	}
}

// ranks finds the values of some ranks without sorting the others: runs are
// dealt out into slots of equal width, and only slots that are asked for are
// put in order.
type ranks struct {
	ends  [257]int32 // of the slots
	dealt times
}

// points are the 10, 50 and 90 % points, between runs by a straight line.
func (r *ranks) points(values *times) Spread {
	low, high := slices.Min(values[:]), slices.Max(values[:])
	shift := max(0, bits.Len64(uint64(high-low))-8)
	clear(r.ends[:])
	for _, v := range values {
		r.ends[(v-low)>>shift+1]++
	}
	for i := range 256 {
		r.ends[i+1] += r.ends[i]
	}
	for _, v := range values { // each slot's end moves up from its start
		slot := (v - low) >> shift
		r.dealt[r.ends[slot]] = v
		r.ends[slot]++
	}
	rank := func(n int) int64 {
		slot := (r.dealt[n] - low) >> shift
		from := int32(0)
		if slot > 0 {
			from = r.ends[slot-1]
		}
		slices.Sort(r.dealt[from:r.ends[slot]])
		return r.dealt[n]
	}
	at := func(percent int) float64 {
		pos := percent*runs - 50 // in hundredths; run i stands at (i+½)/runs
		i, part := pos/100, int64(pos%100)
		return float64(rank(i)*(100-part)+rank(i+1)*part) / 1e8
	}
	return Spread{at(10), at(50), at(90)}
}
