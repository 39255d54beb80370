// Package odds weighs what a repair step shows: from the step's signs it says,
// for each family of hazards, how likely a careful reviewer would name it.
//
// In go signs, the words and marks that the hazard reader found; out come odds
// from 0 to 1, and on demand how much each sign speaks for a family. The weights
// are a network of one hidden layer, learned by Learn from labelled steps and
// read in place from bytes made once: nothing is unpacked when a program starts.
// The package knows no words and no hazards of its own. Odds are a reason to
// look, never a proof: low odds do not say that a step is safe.
package odds

import (
	_ "embed"
	"encoding/binary"
	"errors"
	"math"
	"math/bits"
	"slices"
	"strings"
	"sync"
)

// Net is a learned network. Its zero value knows no sign and has no family.
type Net struct {
	families []string
	stamp    string
	signs    int
	hidden   int    // a multiple of block
	slots    string // two bytes each: a hash table of signs by number, from 1
	kinds    string // one byte a sign
	numbers  string // two bytes a sign
	offsets  string // four bytes a sign, and the end: into words
	words    string
	inner    string    // hidden bytes a sign: the weight and zero
	scale    []float32 // by hidden unit: of a step of the inner weights
	bias     []float32
	outer    []float32 // hidden unit after hidden unit, as wide as rest
	rest     []float32 // by family, with zeros up to a multiple of abreast
}

const (
	magic    = "fixslate odds 2\n"
	block    = 16  // inner weights that are summed at once
	abreast  = 8   // families that are
	zero     = 128 // the byte of an inner weight of nothing
	signsMax = 256 // signs that a sum has room for
)

//go:embed net.bin
var learned string

// Learned is the network that the program carries.
var Learned = sync.OnceValue(func() *Net {
	n, err := Open(learned)
	if err != nil {
		panic(err) // a test reads the same bytes
	}
	return n
})

// Open reads a network from its bytes, which it keeps.
func Open(data string) (*Net, error) {
	rest, ok := strings.CutPrefix(data, magic)
	if !ok {
		return nil, errors.New("no weights of this version")
	}
	take := func(size int) string {
		if size < 0 || size > len(rest) {
			ok = false
			return strings.Repeat("\x00", min(max(size, 4), 4))
		}
		part := rest[:size]
		rest = rest[size:]
		return part
	}
	number := func() int { return int(le32(take(4))) }
	floats := func(count int) []float32 {
		s := take(4 * count)
		list := make([]float32, len(s)/4)
		for i := range list {
			list[i] = math.Float32frombits(le32(s[4*i:]))
		}
		return list
	}
	n := &Net{signs: number(), hidden: number()}
	slots, stamp, families, words := number(), number(), number(), number()
	n.stamp, n.families = take(stamp), strings.Fields(take(families))
	n.slots, n.kinds, n.numbers, n.offsets = take(2*slots), take(n.signs), take(2*n.signs), take(4*(n.signs+1))
	n.words, n.inner = take(words), take(n.signs*n.hidden)
	n.scale, n.bias = floats(n.hidden), floats(n.hidden)
	n.outer, n.rest = floats(n.hidden*wide(len(n.families))), floats(wide(len(n.families)))
	if !ok || n.hidden%block != 0 || bits.OnesCount(uint(slots)) != 1 || slots <= n.signs || rest != "" {
		return nil, errors.New("the weights are not whole")
	}
	return n, nil
}

// wide is how many outer weights a unit has for so many families.
func wide(families int) int { return (families + abreast - 1) / abreast * abreast }

func le32(s string) uint32 {
	_ = s[3] // one look at the length, then one load
	return uint32(s[0]) | uint32(s[1])<<8 | uint32(s[2])<<16 | uint32(s[3])<<24
}

func le64(s string) uint64 {
	_ = s[7]
	return uint64(s[0]) | uint64(s[1])<<8 | uint64(s[2])<<16 | uint64(s[3])<<24 |
		uint64(s[4])<<32 | uint64(s[5])<<40 | uint64(s[6])<<48 | uint64(s[7])<<56
}

// Families are the families weighed, in the order of the odds.
func (n *Net) Families() []string { return n.families }

// Family is the place of a family among them.
func (n *Net) Family(id string) (int, bool) {
	at := slices.Index(n.families, id)
	return max(at, 0), at >= 0
}

// Stamp says what the network was learned from.
func (n *Net) Stamp() string { return n.stamp }

// Find is the place of a sign in the network, or of what it knows of the sign
// anywhere; false for one that it never learned.
func (n *Net) Find(s Sign) (int, bool) {
	if at, ok := n.find(s); ok {
		return at, true
	}
	if s, ok := s.anywhere(); ok {
		return n.find(s)
	}
	return 0, false
}

func (n *Net) find(s Sign) (int, bool) {
	if n.signs == 0 {
		return 0, false
	}
	for at, mask := s.hash(), uint32(len(n.slots)/2-1); ; at++ {
		k := 2 * int(at&mask)
		i := int(n.slots[k]) | int(n.slots[k+1])<<8
		if i == 0 {
			return 0, false
		}
		if i--; n.kinds[i] == s.Kind && int(n.numbers[2*i])|int(n.numbers[2*i+1])<<8 == s.Number &&
			n.words[le32(n.offsets[4*i:]):le32(n.offsets[4*i+4:])] == s.Word {
			return i, true
		}
	}
}

// Layer is what the hidden layer said of some signs.
type Layer struct {
	base  []sums // of the signs that several questions share, by block of units
	signs int    // that are in base
	alive []unit
}

// unit is a hidden unit that is above 0. The others say nothing, and of most
// steps they are the half.
type unit struct {
	at  int
	out float32
}

// sums are the inner weights of signs added up for one block of units, in lanes
// of sixteen bits: of each eight bytes the even ones and the odd ones.
type sums struct{ even, odd, even2, odd2 uint64 }

// Share makes signs the ones that Odds goes on from, so that what is asked with
// every question is summed once. Each is given once by its place; the first 256
// count.
func (n *Net) Share(layer *Layer, signs []int) {
	signs = signs[:min(len(signs), signsMax)]
	layer.base, layer.signs = layer.base[:0], len(signs)
	for h := 0; h < n.hidden; h += block {
		layer.base = append(layer.base, n.add(sums{}, h, signs))
	}
}

// Odds weighs signs beside those that Share was given, each given once by its
// place; the first 256 of all count. It appends to dst[:0] and leaves in layer
// what Speaks asks for.
func (n *Net) Odds(dst []float32, layer *Layer, signs []int) []float32 {
	if layer.base == nil {
		n.Share(layer, nil)
	}
	signs = signs[:min(len(signs), signsMax-layer.signs)]
	nothing := zero * (layer.signs + len(signs))
	layer.alive = layer.alive[:0]
	for k, base := range layer.base {
		s := n.add(base, k*block, signs)
		lanes := [...]uint64{s.even, s.odd, s.even2, s.odd2}
		scale, bias := n.scale[k*block:(k+1)*block], n.bias[k*block:(k+1)*block]
		for h := range block {
			lane := int(lanes[h/8*2+h%2]>>(h%8/2*16)) & 0xffff
			if out := float32(lane-nothing)*scale[h] + bias[h]; out > 0 {
				layer.alive = append(layer.alive, unit{k*block + h, out})
			}
		}
	}
	dst = n.scores(dst[:0], layer.alive)
	for f, score := range dst {
		dst[f] = sigmoid(score)
	}
	return dst
}

// add adds the inner weights of signs for the block of units at h.
func (n *Net) add(s sums, h int, signs []int) sums {
	const even = 0x00ff00ff00ff00ff
	for _, i := range signs {
		at := i*n.hidden + h
		row := n.inner[at : at+block]
		w, w2 := le64(row), le64(row[8:])
		s.even += w & even
		s.odd += w >> 8 & even
		s.even2 += w2 & even
		s.odd2 += w2 >> 8 & even
	}
	return s
}

// scores appends what the families add up to. Eight go side by side: a sum must
// wait for the one before it, and eight need not wait for each other.
func (n *Net) scores(dst []float32, alive []unit) []float32 {
	width := len(n.rest)
	for f := 0; f < width; f += abreast {
		r := (*[abreast]float32)(n.rest[f:])
		s0, s1, s2, s3, s4, s5, s6, s7 := r[0], r[1], r[2], r[3], r[4], r[5], r[6], r[7]
		for _, u := range alive {
			w := (*[abreast]float32)(n.outer[u.at*width+f:])
			s0 += u.out * w[0]
			s1 += u.out * w[1]
			s2 += u.out * w[2]
			s3 += u.out * w[3]
			s4 += u.out * w[4]
			s5 += u.out * w[5]
			s6 += u.out * w[6]
			s7 += u.out * w[7]
		}
		dst = append(dst, s0, s1, s2, s3, s4, s5, s6, s7)
	}
	return dst[:len(n.families)]
}

// Speaks appends to dst[:0] how much each of some signs speaks for a family among
// the signs that layer was made of: its share of the family's score, above 0 for,
// below against.
func (n *Net) Speaks(dst []float32, layer *Layer, signs []int, family int) []float32 {
	dst = append(dst[:0], make([]float32, len(signs))...)
	for _, u := range layer.alive {
		scale, outer := n.scale[u.at], n.outer[u.at*len(n.rest)+family]
		for k, i := range signs {
			dst[k] += float32(int(n.inner[i*n.hidden+u.at])-zero) * scale * outer
		}
	}
	return dst
}

func sigmoid(x float32) float32 { return float32(1 / (1 + math.Exp(-float64(x)))) }

// bytes is the network as Open reads it.
func (n *Net) bytes() []byte {
	families := strings.Join(n.families, "\n")
	b := []byte(magic)
	for _, v := range [...]int{n.signs, n.hidden, len(n.slots) / 2, len(n.stamp), len(families), len(n.words)} {
		b = binary.LittleEndian.AppendUint32(b, uint32(v))
	}
	for _, s := range [...]string{n.stamp, families, n.slots, n.kinds, n.numbers, n.offsets, n.words, n.inner} {
		b = append(b, s...)
	}
	for _, list := range [...][]float32{n.scale, n.bias, n.outer, n.rest} {
		for _, v := range list {
			b = binary.LittleEndian.AppendUint32(b, math.Float32bits(v))
		}
	}
	return b
}
