package order

import "math"

// fine is the resolution of prices: bounds are computed in units of 1/fine,
// in integers, so that rounding never makes one invalid.
const fine = 64

// An ascent moves prices uphill on a bound: along the subgradient, by Polyak's
// length (the distance to the known upper limit over the squared norm), scaled
// down when the bound has not risen for a while.
type ascent struct {
	upper int // fine
	value int // at the prices now
	top   int // the best value, at the prices of best
	best  []int
	scale float64
	stale int
}

func newAscent(price []int, upper, value int) *ascent {
	return &ascent{upper: fine * upper, value: value, top: value, best: append([]int{}, price...), scale: 1}
}

// bound is the best value in whole units of cost.
func (a *ascent) bound() int { return (a.top + fine - 1) / fine }

// over reports whether no more can be gained, or hardly.
func (a *ascent) over() bool { return a.top > a.upper-fine || a.scale < 0.004 }

// step moves the prices; slope is what one unit more on a price adds. It
// reports false where the bound is flat, at a relaxed solution that is one.
func (a *ascent) step(price []int, slope func(i int) int) bool {
	norm := 0
	for i := range price {
		norm += slope(i) * slope(i)
	}
	if norm == 0 {
		return false
	}
	size := a.scale * float64(a.upper-a.value) / float64(norm)
	for i := range price {
		price[i] += int(math.Round(size * float64(slope(i))))
		price[i] = max(-maxPrice, min(maxPrice, price[i]))
	}
	return true
}

// maxPrice keeps sums of prices far from overflow.
const maxPrice = fine * maxCost

// note records the value at the prices as they are now.
func (a *ascent) note(price []int, value int) {
	a.value = value
	if value > a.top {
		a.top, a.stale = value, 0
		copy(a.best, price)
	} else if a.stale++; a.stale >= 5 {
		a.scale, a.stale = a.scale*0.6, 0
	}
}
