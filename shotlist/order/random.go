package order

import "math/bits"

// random is the splitmix64 generator (Steele, Lea, Flood: Fast splittable
// pseudorandom number generators, OOPSLA 2014). It stands here because its
// numbers must stay the same whatever the Go release does.
type random uint64

func (r *random) next() uint64 {
	*r += 0x9e3779b97f4a7c15
	z := uint64(*r)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// below gives 0..n-1.
func (r *random) below(n int) int {
	hi, _ := bits.Mul64(r.next(), uint64(n))
	return int(hi)
}

// unit gives a number in (0, 1].
func (r *random) unit() float64 { return float64(r.next()>>11+1) / (1 << 53) }
