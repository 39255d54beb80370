package odds

import "math/bits"

// Pair is the sign of two words in their order, each given by the Hash of its stem,
// 0 for where a clause begins; where says in what text they stand. "Not plugged" and
// "plugged in" have a word in common, and a sum of words knows no order. A pair is
// known by a hash alone: beside 60,000 pairs one in 36,000 that were never met is
// taken for one of them.
func Pair(where byte, first, second uint32) Sign {
	h := (uint32(where)*16777619^first)*0x9e3779b1 ^ second
	h = (h ^ h>>15) * 0x85ebca6b
	return Sign{Kind: pair, Number: int((h ^ h>>13) & (1<<31 - 1))}
}

// pairs are what a network knows of pairs. They are many, so each speaks straight
// for the families, past the hidden layer: a byte for each in place of one for
// each unit.
type pairs struct {
	count   int
	slots   string    // two bytes each: a hash table of pairs by number, from 1
	ids     string    // four bytes a pair
	weights string    // a byte a family, as wide as Net.rest: the weight and zero
	scale   []float32 // by family: of a step of the weights
}

// slotsOf is how many slots so many signs have.
func slotsOf(signs int) int { return 2 << bits.Len(uint(signs)) }

func (p *pairs) find(s Sign) (int, bool) {
	if p.count == 0 {
		return 0, false
	}
	for at, mask := s.hash(), uint32(len(p.slots)/2-1); ; at++ {
		k := 2 * int(at&mask)
		i := int(p.slots[k]) | int(p.slots[k+1])<<8
		if i == 0 {
			return 0, false
		}
		if i--; le32(p.ids[4*i:]) == uint32(s.Number) {
			return i, true
		}
	}
}

// add adds what a pair says of each family, in steps.
func (p *pairs) add(says []int, i int) {
	row := p.weights[i*len(says) : (i+1)*len(says)]
	for f := range row {
		says[f] += int(row[f]) - zero
	}
}

// says is how much a pair speaks for a family.
func (p *pairs) says(i, family int) float32 {
	return float32(int(p.weights[i*len(p.scale)+family])-zero) * p.scale[family]
}
