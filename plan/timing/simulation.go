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
// Cost: runs × (steps + versions), and a sort of the runs for every step: about
// 15 ms for 300 steps.
const runs = 1024

// one is the factor 1.
const one = 1 << 20

// simulation holds, run by run, the times in microseconds.
type simulation struct {
	seed    *rand.PCG
	voice   []int64 // factor on all speech, in parts of one
	normal  []float64
	shapes  map[shape][]int64
	screen  [][]int64 // step by step
	hands   [][]int64
	shuffle []int32
}

// quantiles are those of the normal distribution, one a run; nothing writes to
// them.
var quantiles = sync.OnceValue(func() []float64 { return normalQuantiles(runs) })

func newSimulation(voiceSigma float64) *simulation {
	s := &simulation{
		seed:    rand.NewPCG(0x6669782d, 0x736c617465), // any fixed numbers
		normal:  quantiles(),
		shapes:  map[shape][]int64{},
		shuffle: make([]int32, runs),
	}
	for i := range s.shuffle {
		s.shuffle[i] = int32(i)
	}
	s.voice = s.logNormal(voiceSigma)
	s.mix()
	voice := make([]int64, runs)
	for i, j := range s.shuffle {
		voice[i] = s.voice[j]
	}
	s.voice = voice
	return s
}

// logNormal gives the factors of a quantity whose logarithm spreads by sigma.
func (s *simulation) logNormal(sigma float64) []int64 {
	factors := make([]int64, runs)
	for i, z := range s.normal {
		factors[i] = int64(math.Round(one * math.Exp(sigma*z)))
	}
	return factors
}

// mix puts the slices into another order (Fisher and Yates).
func (s *simulation) mix() {
	for i := uint64(runs - 1); i > 0; i-- {
		j, _ := bits.Mul64(s.seed.Uint64(), i+1)
		s.shuffle[i], s.shuffle[j] = s.shuffle[j], s.shuffle[i]
	}
}

// add takes up the next step.
func (s *simulation) add(step Step, onScreen PERT) {
	speech := micro(step.Narration)
	fixed := micro(step.Cards) + micro(step.Held) + micro(step.Sounds)
	screen := make([]int64, runs)
	s.mix()
	sigma := LineSpread * evenness(step.Beats)
	centre := -float64(sigma*sigma) / 2 // a mean of 1: many lines leave the total alone
	for i, j := range s.shuffle {
		line := int64(math.Round(one * math.Exp(float64(sigma*s.normal[j])+centre)))
		screen[i] = fixed + speech*s.voice[i]/one*line/one
	}
	for i, action := range s.draw(onScreen) {
		screen[i] = max(screen[i], action)
	}
	s.screen = append(s.screen, screen)
	s.hands = append(s.hands, s.draw(step.HandsOn))
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

// draw gives every run its value of a three-point estimate, in microseconds.
func (s *simulation) draw(e PERT) []int64 {
	values := make([]int64, runs)
	low, width := micro(e.Low), micro(e.High)-micro(e.Low)
	if width <= 0 {
		for i := range values {
			values[i] = low
		}
		return values
	}
	unit := s.unit(e.shape())
	s.mix()
	for i, j := range s.shuffle {
		values[i] = low + width*unit[j]/one
	}
	return values
}

// unit is a shape's quantiles in parts of one.
func (s *simulation) unit(sh shape) []int64 {
	sh = shape{math.Round(sh.alpha*1e9) / 1e9, math.Round(sh.beta*1e9) / 1e9}
	if u, ok := s.shapes[sh]; ok {
		return u
	}
	u := make([]int64, runs)
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

// fill writes the spreads of everything into the timeline.
func (s *simulation) fill(t *Timeline, p *plan.Plan) {
	so := make([]int64, runs)
	for i := range t.Steps {
		t.Steps[i].Begin = points(so)
		addTo(so, s.screen[i])
	}
	t.Running = points(so)
	all := func(*plan.Step) bool { return true }
	t.HandsOn = s.sum(s.hands, t.Steps, p, all)
	t.Straight = s.sum(s.screen, t.Steps, p, straight)
	for _, v := range p.Variants {
		has := func(st *plan.Step) bool { return share(st.Variants, []string{v.ID}) }
		t.Versions = append(t.Versions, Version{
			Variant:  v.ID,
			Running:  s.sum(s.screen, t.Steps, p, has),
			Straight: s.sum(s.screen, t.Steps, p, func(st *plan.Step) bool { return has(st) && straight(st) }),
			HandsOn:  s.sum(s.hands, t.Steps, p, has),
		})
	}
}

func straight(s *plan.Step) bool { return s.OnlyIf.Test == "" }

// sum is the spread of the steps that count, added up.
func (s *simulation) sum(of [][]int64, steps []Step, p *plan.Plan, counts func(*plan.Step) bool) Spread {
	total := make([]int64, runs)
	for i := range steps {
		if counts(&p.Steps[steps[i].Index]) {
			addTo(total, of[i])
		}
	}
	return points(total)
}

func addTo(total, more []int64) {
	for i, v := range more {
		total[i] += v
	}
}

// points are the 10, 50 and 90 % points, between runs by a straight line.
func points(values []int64) Spread {
	sorted := slices.Clone(values)
	slices.Sort(sorted)
	at := func(percent int) float64 {
		pos := percent*runs - 50 // in hundredths; run i stands at (i+½)/runs
		i, part := pos/100, int64(pos%100)
		return float64(sorted[i]*(100-part)+sorted[i+1]*part) / 1e8
	}
	return Spread{at(10), at(50), at(90)}
}
