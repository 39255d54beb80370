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
	"strings"
	"sync"
)

// Net is a learned network. Its zero value knows no sign and has no family.
type Net struct {
	families []string
	stamp    string
	signs    int
	hidden   int    // a multiple of lanes
	slots    string // two bytes each: a hash table of signs by number, from 1
	kinds    string // one byte a sign
	numbers  string // two bytes a sign
	offsets  string // four bytes a sign, and the end: into words
	words    string
	inner    string    // hidden bytes a sign: the weight and zero
	scale    []float32 // by hidden unit: of a step of the inner weights
	bias     []float32
	outer    []float32 // family after family, hidden each
	rest     []float32 // by family
}

const (
	magic    = "fixslate odds 1\n"
	lanes    = 8   // inner weights that are summed at once
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
	n.outer, n.rest = floats(n.hidden*len(n.families)), floats(len(n.families))
	if !ok || n.hidden%lanes != 0 || bits.OnesCount(uint(slots)) != 1 || slots <= n.signs || rest != "" {
		return nil, errors.New("the weights are not whole")
	}
	return n, nil
}

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
	for i, f := range n.families {
		if f == id {
			return i, true
		}
	}
	return 0, false
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
	base sums // of the signs that several questions share
	sum  sums
	out  []float32
}

// sums are the inner weights of signs added up in lanes of sixteen bits: of each
// eight bytes first the even ones, then the odd ones.
type sums struct {
	lanes []uint64
	signs int // that were added
}

// Share makes signs the ones that Odds goes on from, so that what is about a
// step is not summed again for each of its sentences. Each is given once by its
// place; the first 256 count.
func (n *Net) Share(layer *Layer, signs []int) {
	layer.base.lanes = append(layer.base.lanes[:0], make([]uint64, n.hidden/lanes*2)...)
	layer.base.signs = 0
	layer.base.add(n, signs)
}

// Odds weighs signs beside those that Share was given, each given once by its
// place; the first 256 of all count. It appends to dst[:0] and leaves in layer
// what Speaks asks for.
func (n *Net) Odds(dst []float32, layer *Layer, signs []int) []float32 {
	if layer.base.lanes == nil {
		n.Share(layer, nil)
	}
	layer.sum.lanes, layer.sum.signs = append(layer.sum.lanes[:0], layer.base.lanes...), layer.base.signs
	layer.sum.add(n, signs)
	layer.out = layer.out[:0]
	for h := range n.hidden {
		// A lane of each pair of sums has the even bytes, the other the odd ones.
		lane := layer.sum.lanes[h/lanes*2+h%2] >> (h % lanes / 2 * 16) & 0xffff
		layer.out = append(layer.out, max(0, float32(int(lane)-zero*layer.sum.signs)*n.scale[h]+n.bias[h]))
	}
	dst = n.scores(dst[:0], layer.out)
	for f, score := range dst {
		dst[f] = sigmoid(score)
	}
	return dst
}

// add adds the inner weights of signs, four bytes of eight at a time.
func (s *sums) add(n *Net, signs []int) {
	const even = 0x00ff00ff00ff00ff
	signs = signs[:min(len(signs), signsMax-s.signs)]
	s.signs += len(signs)
	for _, i := range signs {
		row := n.inner[i*n.hidden : (i+1)*n.hidden]
		for k := 0; k+1 < len(s.lanes) && len(row) >= lanes; k += 2 {
			w := le64(row)
			s.lanes[k] += w & even
			s.lanes[k+1] += w >> 8 & even
			row = row[lanes:]
		}
	}
}

// scores appends what the families add up to. Four go side by side: a sum must
// wait for the one before it, and four need not wait for each other.
func (n *Net) scores(dst, out []float32) []float32 {
	row := func(f int) []float32 { return n.outer[f*len(out) : (f+1)*len(out)] }
	f := 0
	for ; f+4 <= len(n.families); f += 4 {
		r0, r1, r2, r3 := row(f), row(f+1), row(f+2), row(f+3)
		s0, s1, s2, s3 := n.rest[f], n.rest[f+1], n.rest[f+2], n.rest[f+3]
		for h, v := range out {
			s0 += v * r0[h]
			s1 += v * r1[h]
			s2 += v * r2[h]
			s3 += v * r3[h]
		}
		dst = append(dst, s0, s1, s2, s3)
	}
	for ; f < len(n.families); f++ {
		score := n.rest[f]
		for h, w := range row(f) {
			score += out[h] * w
		}
		dst = append(dst, score)
	}
	return dst
}

// Speaks is how much a sign speaks for a family among the signs that layer was
// made of: its share of the family's score, above 0 for, below against.
func (n *Net) Speaks(layer *Layer, sign, family int) float32 {
	row := n.inner[sign*n.hidden : (sign+1)*n.hidden]
	outer := n.outer[family*n.hidden : (family+1)*n.hidden]
	total := float32(0)
	for h, out := range layer.out {
		if out > 0 {
			total += float32(int(row[h])-zero) * n.scale[h] * outer[h]
		}
	}
	return total
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
