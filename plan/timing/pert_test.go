package timing

import (
	"math"
	"testing"
)

// Source: Malcolm, Roseboom, Clark and Fazar 1959, Operations Research 7: mean
// (a + 4m + b) / 6, standard deviation (b - a) / 6. The quantiles that the
// simulation draws must have both.
func TestQuantilesHaveTheMomentsOfPERT(t *testing.T) {
	for _, e := range []PERT{{0, 1, 2}, {3, 4, 9}, {0, 0, 1}, {0, 1, 1}, {240, 480, 1200}, {10, 11, 100}} {
		mean, variance := 0.0, 0.0
		const n = 4096
		q := e.shape().quantiles(n)
		for i, x := range q {
			if i > 0 && x < q[i-1] {
				t.Fatalf("%v: quantile %d falls", e, i)
			}
			mean += (e.Low + (e.High-e.Low)*x) / n
		}
		for _, x := range q {
			d := e.Low + (e.High-e.Low)*x - mean
			variance += d * d / n
		}
		width := e.High - e.Low
		if math.Abs(mean-e.Mean()) > 1e-4*width {
			t.Errorf("%v: mean %v, want %v", e, mean, e.Mean())
		}
		if math.Abs(variance-varianceOf(e)) > 1e-3*varianceOf(e) {
			t.Errorf("%v: variance %v, want %v", e, variance, varianceOf(e))
		}
	}
}

// The symmetric shape is Beta(4,4), whose distribution function is a
// polynomial: 35x⁴ - 84x⁵ + 70x⁶ - 20x⁷ (Abramowitz and Stegun 26.5.4 with
// whole parameters).
func TestQuantilesOfASymmetricEstimate(t *testing.T) {
	s := PERT{0, 1, 2}.shape()
	if math.Abs(s.alpha-4) > 1e-12 || math.Abs(s.beta-4) > 1e-12 {
		t.Fatalf("shape %v, want 4 and 4", s)
	}
	const n = 1000
	for i, x := range s.quantiles(n) {
		x4 := x * x * x * x
		got := x4 * (35 - 84*x + 70*x*x - 20*x*x*x)
		if want := (float64(i) + 0.5) / n; math.Abs(got-want) > 5e-6 {
			t.Fatalf("below quantile %d lie %v, want %v", i, got, want)
		}
	}
}

func TestNormalQuantiles(t *testing.T) {
	// Source: any table of the normal distribution: Φ(1.2816) = 0.9.
	q := normalQuantiles(1000)
	if got := (q[899] + q[900]) / 2; math.Abs(got-1.2816) > 1e-3 {
		t.Errorf("90 %% point %v, want 1.2816", got)
	}
	if math.Abs(q[0]+q[999]) > 1e-9 {
		t.Errorf("ends %v and %v are not alike", q[0], q[999])
	}
}

func TestEstimatesAddUp(t *testing.T) {
	a, b := PERT{1, 2, 9}, PERT{0, 5, 6}
	if got, want := a.plus(b).Mean(), a.Mean()+b.Mean(); math.Abs(got-want) > 1e-12 {
		t.Errorf("mean of the sum %v, want %v", got, want)
	}
	if got, want := a.Times(3).Mean(), 3*a.Mean(); math.Abs(got-want) > 1e-12 {
		t.Errorf("mean of three times %v, want %v", got, want)
	}
}

// varianceOf is that of Malcolm et al. 1959.
func varianceOf(e PERT) float64 { return (e.High - e.Low) * (e.High - e.Low) / 36 }
