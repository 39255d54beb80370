package order

import "math/bits"

// A bitset holds node numbers, 64 to a word. Sets that meet in one operation
// have the same length.
type bitset []uint64

func newBitset(n int) bitset { return make(bitset, (n+63)/64) }

// newBitsets cuts rows sets for n nodes each out of one allocation.
func newBitsets(rows, n int) []bitset {
	w := (n + 63) / 64
	flat := make(bitset, rows*w)
	sets := make([]bitset, rows)
	for i := range sets {
		sets[i] = flat[i*w : (i+1)*w : (i+1)*w]
	}
	return sets
}

func (b bitset) has(i int) bool { return b[i>>6]>>(uint(i)&63)&1 != 0 }
func (b bitset) add(i int)      { b[i>>6] |= 1 << (uint(i) & 63) }
func (b bitset) drop(i int)     { b[i>>6] &^= 1 << (uint(i) & 63) }

func (b bitset) union(o bitset) {
	for w, x := range o {
		b[w] |= x
	}
}

func (b bitset) count() int {
	n := 0
	for _, x := range b {
		n += bits.OnesCount64(x)
	}
	return n
}

// each calls f for every member, in ascending order.
func (b bitset) each(f func(int)) {
	for w, x := range b {
		for ; x != 0; x &= x - 1 {
			f(w<<6 + bits.TrailingZeros64(x))
		}
	}
}

// within reports whether every member of b is also in o.
func (b bitset) within(o bitset) bool {
	for w, x := range b {
		if x&^o[w] != 0 {
			return false
		}
	}
	return true
}

// hash mixes the words of b by multiplication and shift (the finaliser of
// splitmix64).
func (b bitset) hash() uint64 {
	h := uint64(0)
	for _, x := range b {
		h = (h ^ x) * 0xbf58476d1ce4e5b9
		h ^= h >> 29
	}
	return h ^ h>>32
}
