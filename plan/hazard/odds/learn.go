package odds

import (
	"encoding/binary"
	"math"
	"math/bits"
	"math/rand/v2"
	"slices"
	"strings"
)

// Example is a labelled step.
type Example struct {
	Signs   []Sign
	Named   []string // families that must be named
	Neutral []string // families that may be named or not: they teach nothing
}

// Schooling says how to learn. The zero value of a field takes the usual one.
type Schooling struct {
	Hidden int     // width of the hidden layer, a multiple of 16; 192
	Rounds int     // how often all examples are gone through, 20
	Rare   int     // signs met less often are left out, 3
	Weight float32 // what a named family counts of one that is not, 2
	Seed   uint64
}

// Amounts that Adam (Kingma and Ba 2015) is run with, and dropout of signs and
// of the hidden layer (Srivastava and others 2014): chosen by cross-validation
// over the examples. The rate falls evenly to nothing: twice the rate so won .009
// of the F1 of steps never learned over half of it held to the end.
const (
	batch     = 64
	rate      = 0.006
	decay1    = 0.9
	decay2    = 0.999
	shrink    = 1e-5
	signDrop  = 0.2
	layerDrop = 0.5
	signValue = 0.5
)

// Learn makes a network from examples: cross entropy over families and over
// whether there is any at all, minimised by Adam. The same examples and
// schooling give the same network on the same kind of processor.
func Learn(examples []Example, families []string, stamp string, how Schooling) []byte {
	orElse := func(v *int, usual int) {
		if *v == 0 {
			*v = usual
		}
	}
	orElse(&how.Hidden, 192)
	orElse(&how.Rounds, 20)
	orElse(&how.Rare, 3)
	if how.Weight == 0 {
		how.Weight = 2
	}
	signs := vocabulary(examples, how.Rare)
	t := newTrainer(len(signs), how.Hidden, len(families)+1, how.Seed)
	lessons := make([]lesson, len(examples))
	for i := range examples {
		lessons[i] = examples[i].lesson(signs, families, how.Weight)
	}
	for round := range how.Rounds {
		for from, order := 0, t.rand.Perm(len(lessons)); from < len(order); from += batch {
			done := (float64(round) + float64(from)/float64(len(order))) / float64(how.Rounds)
			t.step(lessons, order[from:min(from+batch, len(order))], float32(rate*(1-done)))
		}
	}
	n := t.net(signs, families)
	n.stamp = stamp
	return n.bytes()
}

// vocabulary is the signs that are met often enough, in order, each also
// regardless of its place.
func vocabulary(examples []Example, rare int) []Sign {
	count := map[Sign]int{}
	for i := range examples {
		for _, s := range examples[i].Signs {
			count[s]++
			if s, ok := s.anywhere(); ok {
				count[s]++
			}
		}
	}
	var signs []Sign
	for s, n := range count {
		if n >= rare {
			signs = append(signs, s)
		}
	}
	slices.SortFunc(signs, Sign.compare)
	return signs
}

// lesson is an example in numbers: its signs, where they stand and anywhere, and
// by output what is wanted and how much it counts.
type lesson struct {
	signs        [][2]int
	want, weight []float32
}

func (e *Example) lesson(signs []Sign, families []string, weight float32) lesson {
	l := lesson{want: make([]float32, len(families)+1), weight: make([]float32, len(families)+1)}
	for _, s := range e.Signs {
		var pair [2]int
		at, ok := slices.BinarySearchFunc(signs, s, Sign.compare)
		pair[0] = orNone(at, ok)
		if s, ok = s.anywhere(); ok {
			at, ok = slices.BinarySearchFunc(signs, s, Sign.compare)
		}
		if pair[1] = orNone(at, ok); pair != [2]int{none, none} {
			l.signs = append(l.signs, pair)
		}
	}
	set := func(k int, on bool) {
		l.weight[k] = 1
		if on {
			l.want[k], l.weight[k] = 1, weight
		}
	}
	for k, f := range families {
		named := slices.Contains(e.Named, f)
		if named || !slices.Contains(e.Neutral, f) {
			set(k, named)
		}
	}
	set(len(families), len(e.Named) > 0)
	return l
}

// none is a sign that is not learned.
const none = -1

func orNone(at int, ok bool) int {
	if ok {
		return at
	}
	return none
}

// trainer is a network while it learns.
type trainer struct {
	rand                     *rand.Rand
	hidden, outs             int
	inner, bias, outer, rest *tensor
	steps                    int
	// Of one step.
	layer, back []float32
	alive       []int // hidden units
}

// tensor is rows of numbers to learn, with their gradient and Adam's two means.
// Only rows that a batch met move after it: most signs are rare, and to move
// them all after each batch took most of the time and learned no better.
type tensor struct {
	v, grad, mean, square []float32
	width                 int
	isMet                 []bool
	met                   []int
}

func newTensor(rows, width int, fill func() float32) *tensor {
	zeros := func() []float32 { return make([]float32, rows*width) }
	x := &tensor{v: zeros(), grad: zeros(), mean: zeros(), square: zeros(), width: width, isMet: make([]bool, rows)}
	for i := range x.v {
		x.v[i] = fill()
	}
	return x
}

// row is a row's numbers.
func (x *tensor) row(i int) []float32 { return x.v[i*x.width : (i+1)*x.width] }

// slope is a row's gradient, to be added to.
func (x *tensor) slope(i int) []float32 {
	if !x.isMet[i] {
		x.isMet[i] = true
		x.met = append(x.met, i)
	}
	return x.grad[i*x.width : (i+1)*x.width]
}

func newTrainer(signs, hidden, outs int, seed uint64) *trainer {
	t := &trainer{rand: rand.New(rand.NewPCG(seed, 1)), hidden: hidden, outs: outs}
	random := func() float32 { return float32(t.rand.NormFloat64()) * 0.1 }
	t.inner = newTensor(signs, hidden, random)
	t.outer = newTensor(outs, hidden, random)
	t.bias = newTensor(1, hidden, func() float32 { return 0 })
	t.rest = newTensor(1, outs, func() float32 { return -3 }) // most families are rare
	t.layer, t.back = make([]float32, hidden), make([]float32, hidden)
	return t
}

// step learns from one batch, at a rate.
func (t *trainer) step(lessons []lesson, batch []int, rate float32) {
	for _, i := range batch {
		t.learn(&lessons[i], 1/float32(len(batch)))
	}
	t.steps++
	for _, x := range [...]*tensor{t.inner, t.bias, t.outer, t.rest} {
		x.adam(t.steps, rate)
	}
}

// learn adds the gradient of one lesson.
func (t *trainer) learn(l *lesson, share float32) {
	kept := make([]int, 0, 2*len(l.signs))
	for _, pair := range l.signs {
		if t.rand.Float32() < signDrop {
			continue
		}
		for _, s := range pair {
			if s != none {
				kept = append(kept, s)
			}
		}
	}
	copy(t.layer, t.bias.v)
	for _, s := range kept {
		for h, w := range t.inner.row(s) {
			t.layer[h] += signValue * w
		}
	}
	// Units that are dropped or at nothing neither speak nor learn.
	t.alive = t.alive[:0]
	for h, v := range t.layer {
		if v > 0 && t.rand.Float32() >= layerDrop {
			t.layer[h] = v / (1 - layerDrop)
			t.back[h] = 0
			t.alive = append(t.alive, h)
		}
	}
	rest := t.rest.slope(0)
	for k := range t.outs {
		outer, slope := t.outer.row(k), t.outer.slope(k)
		score := t.rest.v[k]
		for _, h := range t.alive {
			score += outer[h] * t.layer[h]
		}
		e := (sigmoid(score) - l.want[k]) * l.weight[k] * share
		rest[k] += e
		for _, h := range t.alive {
			slope[h] += e * t.layer[h]
			t.back[h] += e * outer[h]
		}
	}
	bias := t.bias.slope(0)
	for _, h := range t.alive {
		t.back[h] /= 1 - layerDrop
		bias[h] += t.back[h]
	}
	for _, s := range kept {
		slope := t.inner.slope(s)
		for _, h := range t.alive {
			slope[h] += signValue * t.back[h]
		}
	}
}

// adam moves the rows that were met against their gradient, which it clears.
func (x *tensor) adam(steps int, rate float32) {
	c1 := float32(1 - math.Pow(decay1, float64(steps)))
	c2 := float32(1 - math.Pow(decay2, float64(steps)))
	for _, r := range x.met {
		x.isMet[r] = false
		for i := r * x.width; i < (r+1)*x.width; i++ {
			g := x.grad[i] + shrink*x.v[i]
			x.grad[i] = 0
			x.mean[i] = decay1*x.mean[i] + (1-decay1)*g
			x.square[i] = decay2*x.square[i] + (1-decay2)*g*g
			x.v[i] -= rate * (x.mean[i] / c1) / (float32(math.Sqrt(float64(x.square[i]/c2))) + 1e-7)
		}
	}
	x.met = x.met[:0]
}

// net is the network as it is used: no sign is dropped, a sign's weights have
// those that it has anywhere in them, and they are rounded to bytes.
func (t *trainer) net(signs []Sign, families []string) *Net {
	n := &Net{families: families, signs: len(signs), hidden: t.hidden, bias: t.bias.v}
	width := wide(len(families))
	n.rest, n.outer = make([]float32, width), make([]float32, width*t.hidden)
	for f := range families {
		n.rest[f] = t.rest.v[f]
		for h, w := range t.outer.row(f) {
			n.outer[h*width+f] = w
		}
	}
	var kinds, words strings.Builder
	var numbers, offsets []byte
	for _, s := range signs {
		kinds.WriteByte(s.Kind)
		numbers = binary.LittleEndian.AppendUint16(numbers, uint16(s.Number))
		offsets = binary.LittleEndian.AppendUint32(offsets, uint32(words.Len()))
		words.WriteString(s.Word)
	}
	offsets = binary.LittleEndian.AppendUint32(offsets, uint32(words.Len()))
	n.kinds, n.numbers, n.offsets, n.words = kinds.String(), string(numbers), string(offsets), words.String()
	n.slots = slots(signs)
	n.inner, n.scale = t.rounded(signs)
	return n
}

// slots is the hash table of signs.
func slots(signs []Sign) string {
	table := make([]byte, 2*(2<<bits.Len(uint(len(signs)))))
	for i, s := range signs {
		at, mask := s.hash(), uint32(len(table)/2-1)
		for table[2*(at&mask)] != 0 || table[2*(at&mask)+1] != 0 {
			at++
		}
		binary.LittleEndian.PutUint16(table[2*(at&mask):], uint16(i+1))
	}
	return string(table)
}

// rounded is the inner weights in bytes, and the step of each hidden unit's.
func (t *trainer) rounded(signs []Sign) (string, []float32) {
	whole := slices.Clone(t.inner.v)
	for i, s := range signs {
		if wide, ok := s.anywhere(); ok && wide != s {
			if at, ok := slices.BinarySearchFunc(signs, wide, Sign.compare); ok {
				for h := range t.hidden {
					whole[i*t.hidden+h] += t.inner.v[at*t.hidden+h]
				}
			}
		}
	}
	inner, scale := make([]byte, len(whole)), make([]float32, t.hidden)
	for h := range scale {
		most := float32(1e-9)
		for i := h; i < len(whole); i += t.hidden {
			most = max(most, whole[i], -whole[i])
		}
		for i := h; i < len(whole); i += t.hidden {
			inner[i] = byte(zero + int(math.Round(float64(whole[i]/most*(zero-1)))))
		}
		scale[h] = signValue * (1 - signDrop) * most / (zero - 1)
	}
	return string(inner), scale
}
