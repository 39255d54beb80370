package pace

import "math"

// Speech is learned as three factors on the default rate: how much longer the
// characters, the pauses at commas and the pauses at sentence ends take.
const (
	talk = iota
	comma
	sentence
	factors
)

type (
	vector [factors]float64
	matrix [factors][factors]float64
)

// run is a stretch of speech without a stop, in seconds: how long each factor's
// part takes at the default rate, and how long it took.
type run struct {
	load     vector
	took     float64
	variance float64 // of took, the rate being known, in seconds²
}

// learnSpeech estimates the factors from the runs of some videos.
//
// Problem: a run took φ·load seconds, φ being the presenter's three factors,
// give or take; a presenter differs from the default, and from himself between
// two videos; a few runs are aligned wrongly.
//
// Method: Bayesian linear regression with a normal prior around one for each
// factor and a random effect for each video, which is integrated out: with
// A = Σ xxᵀ/σ² and b = Σ xy/σ² of a video and D the covariance between videos,
// the video says (I+AD)⁻¹A and (I+AD)⁻¹b about the presenter (Lindley and Smith
// 1972, "Bayes estimates for the linear model", Journal of the Royal
// Statistical Society B 34). Runs far off are weighed down as under a Student
// distribution of four degrees (Lange, Little and Taylor 1989, "Robust
// statistical modeling using the t distribution", JASA 84).
//
// Cost: linear in the runs, a fixed number of rounds. Without runs the prior
// comes back. Oddity: what the runs can't tell apart (all of them with the same
// share of pauses) moves all three factors together, as the prior's covariance
// has it.
func learnSpeech(videos [][]run) (mean vector, cov matrix) {
	const rounds = 8 // of weighing; the factors stand still to four digits after five
	prior, between := speechPrior()
	start := prior.inverse()
	weights := make([][]float64, len(videos))
	for v, runs := range videos {
		weights[v] = make([]float64, len(runs))
		for i := range runs {
			weights[v][i] = 1
		}
	}
	for range rounds {
		precision, sum := start, start.times(vector{1, 1, 1})
		for v, runs := range videos {
			a, b := normal(runs, weights[v])
			spread := identity().plus(a.product(between)).inverse()
			precision = precision.plus(spread.product(a))
			sum = sum.plus(spread.times(b))
		}
		cov = precision.inverse()
		mean = cov.times(sum)
		for v, runs := range videos {
			a, b := normal(runs, weights[v])
			own := identity().plus(between.product(a)).inverse().times(between.times(b.minus(a.times(mean))))
			weigh(runs, mean.plus(own), weights[v])
		}
	}
	return mean, cov
}

// normal are the sums of a video's normal equations.
func normal(runs []run, weights []float64) (a matrix, b vector) {
	for i, r := range runs {
		w := weights[i] / r.variance
		for j := range factors {
			b[j] += float64(w * r.load[j] * r.took)
			for k := range factors {
				a[j][k] += float64(w * r.load[j] * r.load[k])
			}
		}
	}
	return a, b
}

// weigh gives each run its Student weight around a video's own factors. The
// numerator makes the weights of Gaussian runs come out at 1 on average: their
// information is neither overstated nor understated.
func weigh(runs []run, factors vector, weights []float64) {
	const degrees, numerator = 4, 4.746
	for i, r := range runs {
		off := r.took - r.load.dot(factors)
		weights[i] = numerator / (degrees + float64(off*off)/r.variance)
	}
}

func (v vector) dot(o vector) float64 {
	total := 0.0
	for i := range factors {
		total += float64(v[i] * o[i])
	}
	return total
}

func (v vector) plus(o vector) vector {
	for i := range factors {
		v[i] += o[i]
	}
	return v
}

func (v vector) minus(o vector) vector {
	for i := range factors {
		v[i] -= o[i]
	}
	return v
}

func identity() (m matrix) {
	for i := range factors {
		m[i][i] = 1
	}
	return m
}

func (m matrix) plus(o matrix) matrix {
	for i := range factors {
		for j := range factors {
			m[i][j] += o[i][j]
		}
	}
	return m
}

func (m matrix) product(o matrix) (out matrix) {
	for i := range factors {
		for j := range factors {
			for k := range factors {
				out[i][j] += float64(m[i][k] * o[k][j])
			}
		}
	}
	return out
}

func (m matrix) times(v vector) (out vector) {
	for i := range factors {
		for j := range factors {
			out[i] += float64(m[i][j] * v[j])
		}
	}
	return out
}

// inverse by cofactors: three rows, well scaled, never singular here, as every
// matrix inverted holds the prior or the identity.
func (m matrix) inverse() (out matrix) {
	minor := func(i, j int) float64 {
		a, b := (i+1)%factors, (i+2)%factors
		c, d := (j+1)%factors, (j+2)%factors
		return float64(m[a][c]*m[b][d]) - float64(m[a][d]*m[b][c])
	}
	det := 0.0
	for j := range factors {
		det += float64(m[0][j] * minor(0, j))
	}
	for i := range factors {
		for j := range factors {
			out[j][i] = minor(i, j) / det
		}
	}
	return out
}

// deviation is the standard deviation of one factor.
func (m matrix) deviation(i int) float64 { return math.Sqrt(m[i][i]) }
