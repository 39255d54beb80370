package timing

import (
	"math"
	"sync"

	"fixslate/plan"
)

// PERT is a length of time in seconds estimated in three points: it can't be
// shorter than Low, is most often near Likely and can't be longer than High.
type PERT struct{ Low, Likely, High float64 }

// Mean is (low + 4 likely + high) / 6 (Malcolm, Roseboom, Clark and Fazar
// 1959, "Application of a Technique for Research and Development Program
// Evaluation", Operations Research 7).
func (e PERT) Mean() float64 { return (e.Low + float64(4*e.Likely) + e.High) / 6 }

// plus adds two estimates point by point; the means add exactly.
func (e PERT) plus(other PERT) PERT {
	return PERT{e.Low + other.Low, e.Likely + other.Likely, e.High + other.High}
}

// Times stretches an estimate.
func (e PERT) Times(factor float64) PERT {
	return PERT{e.Low * factor, e.Likely * factor, e.High * factor}
}

// written turns a plan's duration into an estimate. One written without a
// spread gets ±20 %, even on both sides so that its mean is what was written
// (common practice, no source).
func written(d plan.Duration) PERT {
	if d.Spread {
		return PERT{d.Low.Seconds(), d.Likely.Seconds(), d.High.Seconds()}
	}
	s := d.Likely.Seconds()
	return PERT{0.8 * s, s, 1.2 * s}
}

// shape is a beta distribution on 0 to 1 with the mean of a PERT estimate scaled
// to that range and the variance that goes with it, ((high - low) / 6)²: both
// formulas of Malcolm et al. then hold exactly. A beta with the same mean and its mode exactly at Likely would have
// another variance; the mode here is at most 3 % of the range from Likely.
type shape struct{ alpha, beta float64 }

func (e PERT) shape() shape {
	mu := (e.Mean() - e.Low) / (e.High - e.Low) // 1/6 to 5/6
	n := 36*mu*(1-mu) - 1                       // 4 to 8
	return shape{mu * n, (1 - mu) * n}
}

// quantiles gives the values below which a beta variable falls with
// probability (i+½)/n, rising.
//
// The density is summed along θ with x = sin²θ, where it is
// 2 sin^(2α-1) cos^(2β-1): smooth to both ends, as α and β are at least 2/3.
// Trapezoids on the grid, read back by straight lines. The error was under
// 1e-4 of the range against Simpson's rule on 200,000 steps in x.
func (s shape) quantiles(n int) []float64 {
	var sum [grid + 1]float64
	sines := logSines()
	before := 0.0
	for i := 1; i <= grid; i++ {
		density := math.Exp((2*s.alpha-1)*sines[i] + (2*s.beta-1)*sines[grid-i])
		sum[i] = sum[i-1] + before + density
		before = density
	}
	points := make([]float64, n)
	at := 1
	for i := range points {
		want := sum[grid] * (float64(i) + 0.5) / float64(n)
		for sum[at] < want {
			at++
		}
		part := (want - sum[at-1]) / (sum[at] - sum[at-1])
		sine := math.Sin(math.Pi / 2 * (float64(at-1) + part) / grid)
		points[i] = sine * sine
	}
	return points
}

// grid is how many steps of θ the density is summed over.
const grid = 1024

// logSines are the logarithms of sin θ along the grid; those of cos θ are the
// same backwards. Nothing writes to them.
var logSines = sync.OnceValue(func() *[grid + 1]float64 {
	var logs [grid + 1]float64
	for i := range logs {
		logs[i] = math.Log(math.Sin(math.Pi / 2 * float64(i) / grid))
	}
	return &logs
})

// normalQuantiles gives the same for the standard normal distribution.
func normalQuantiles(n int) []float64 {
	points := make([]float64, n)
	for i := range points {
		points[i] = math.Sqrt2 * math.Erfinv(2*(float64(i)+0.5)/float64(n)-1)
	}
	return points
}
