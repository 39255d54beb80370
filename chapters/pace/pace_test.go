package pace

import (
	"math"
	"math/rand/v2"
	"testing"

	"fixslate/plan/timing"
)

// truth is a presenter made for a test.
type truth struct {
	speech      vector // factors on the default rate
	share, work float64
}

// made draws a presenter and what his edits would show, as the model has it:
// Gaussian runs whose spread is known.
func made(r *rand.Rand, videos int) (truth, observed) {
	prior, between := speechPrior()
	who := truth{speech: draw(r, prior), share: math.Log(0.5) + screenBelief.wide*r.NormFloat64(), work: workBelief.wide * r.NormFloat64()}
	for i := range factors {
		who.speech[i]++
	}
	var o observed
	for range videos {
		video := draw(r, between)
		var runs []run
		for range 40 {
			characters, commas, stops := 2+8*r.Float64(), 0.3*float64(r.IntN(4)), 0.6*float64(r.IntN(4))
			x := run{load: vector{characters, commas, stops}}
			x.variance = math.Pow(timing.LineSpread*(x.load[talk]+x.load[comma]+x.load[sentence]), 2) + 0.05
			for i := range factors {
				x.took += x.load[i] * (who.speech[i] + video[i])
			}
			x.took += math.Sqrt(x.variance) * r.NormFloat64()
			runs = append(runs, x)
		}
		o.talk = append(o.talk, runs)
		for range 12 {
			o.share = append(o.share, math.Exp(who.share+screenBelief.step*r.NormFloat64()))
			o.work = append(o.work, math.Exp(who.work+workBelief.step*r.NormFloat64()))
		}
	}
	return who, o
}

// draw takes a normal vector with a covariance, by Cholesky's square root.
func draw(r *rand.Rand, cov matrix) (out vector) {
	var root matrix
	for i := range factors {
		for j := 0; j <= i; j++ {
			sum := cov[i][j]
			for k := range j {
				sum -= root[i][k] * root[j][k]
			}
			if i == j {
				root[i][i] = math.Sqrt(sum)
			} else {
				root[i][j] = sum / root[j][j]
			}
		}
	}
	var z vector
	for i := range factors {
		z[i] = r.NormFloat64()
	}
	return root.times(z)
}

// Known factors come back with the error that theory gives. In a Bayesian
// model whose presenters are drawn from its own prior, the error over its
// posterior deviation is standard normal (Cook, Gelman and Rubin 2006,
// "Validation of software for Bayesian models using posterior quantiles",
// Journal of Computational and Graphical Statistics 15): its mean is 0, its
// mean square 1, and four in five true values lie between the 10 and the 90 %
// points. The tolerances are three standard errors over the seeds, and 12 %
// more for the Student weights and the estimated spread between steps.
func TestKnownFactorsComeBack(t *testing.T) {
	const seeds = 800
	for _, videos := range []int{1, 3, 10} {
		var speech [factors][]float64
		var share, work []float64
		inside := 0
		for seed := range uint64(seeds) {
			who, o := made(rand.New(rand.NewPCG(seed, uint64(videos))), videos)
			mean, cov := learnSpeech(o.talk)
			for i := range factors {
				speech[i] = append(speech[i], (mean[i]-who.speech[i])/cov.deviation(i))
			}
			b := screenBelief
			b.mean = math.Log(0.5)
			m, sd := learnFactor(b, o.share)
			share = append(share, (m-who.share)/sd)
			m, sd = learnFactor(workBelief, o.work)
			work = append(work, (m-who.work)/sd)
			l := learn(o)
			if truth := timing.DefaultRate().CharactersPerSecond / who.speech[talk]; l.Speech.Low <= truth && truth <= l.Speech.High {
				inside++
			}
		}
		for name, errors := range map[string][]float64{
			"characters": speech[talk], "commas": speech[comma], "sentence ends": speech[sentence], "screen share": share, "hands-on": work,
		} {
			mean, square := 0.0, 0.0
			for _, e := range errors {
				mean += e / seeds
				square += e * e / seeds
			}
			if math.Abs(mean) > 3/math.Sqrt(seeds) {
				t.Errorf("%d videos, %s: the error is %.3f deviations on average", videos, name, mean)
			}
			if math.Abs(square-1) > 3*math.Sqrt(2.0/seeds)+0.12 {
				t.Errorf("%d videos, %s: the squared error is %.3f of what theory gives", videos, name, square)
			}
		}
		if part := float64(inside) / seeds; math.Abs(part-0.8) > 0.05 {
			t.Errorf("%d videos: %.3f of the rates lie between the 10 and 90 %% points", videos, part)
		}
	}
}

// The more is seen, the closer; nothing seen is the default.
func TestShrinkage(t *testing.T) {
	l := learn(observed{})
	def := timing.DefaultPace()
	if math.Abs(l.Pace.Rate.CharactersPerSecond-def.Rate.CharactersPerSecond) > 1e-9 || math.Abs(l.Pace.ScreenShare-def.ScreenShare) > 1e-9 || math.Abs(l.Pace.HandsOn-1) > 1e-9 {
		t.Errorf("nothing seen gives %+v", l.Pace)
	}
	if l.Speech.Measured > 1e-9 || l.HandsOn.Measured > 1e-9 {
		t.Errorf("nothing seen counts as measured: %v, %v", l.Speech.Measured, l.HandsOn.Measured)
	}
	last := 1.0
	for _, n := range []int{1, 2, 5, 20, 100} {
		var o observed
		for i := range n {
			o.work = append(o.work, 1.5*math.Exp(0.1*float64(i%3-1)))
		}
		got := learn(o).HandsOn
		if got.Value <= last || got.Value >= 1.55 {
			t.Errorf("%d steps of half as long again: %.3f after %.3f", n, got.Value, last)
		}
		last = got.Value
	}
	if math.Abs(last-1.5) > 0.01 {
		t.Errorf("a hundred steps give %.3f", last)
	}
}

// One run in ten that was aligned wrongly hardly moves the rate.
func TestWrongRuns(t *testing.T) {
	_, o := made(rand.New(rand.NewPCG(7, 7)), 2)
	clean, cov := learnSpeech(o.talk)
	for v := range o.talk {
		for i := range o.talk[v] {
			if i%10 == 0 {
				o.talk[v][i].took *= 4
			}
		}
	}
	wrong, _ := learnSpeech(o.talk)
	if off := math.Abs(wrong[talk] - clean[talk]); off > 1.5*cov.deviation(talk) {
		t.Errorf("moved by %.3f, the deviation is %.3f", off, cov.deviation(talk))
	}
}

func BenchmarkLearn(b *testing.B) {
	_, o := made(rand.New(rand.NewPCG(1, 1)), 20)
	for b.Loop() {
		learn(o)
	}
}
