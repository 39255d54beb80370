package pace

import (
	"math"
)

// belief is what is held about a factor before anything was measured, in
// logarithms.
type belief struct {
	mean float64 // of the logarithm: that of the default
	wide float64 // standard deviation between presenters
	step float64 // standard deviation between the steps of one presenter
}

// learnFactor estimates a factor from the ratios of some steps.
//
// Method: the logarithms of the ratios are normal around the presenter's own,
// which is normal around the default; the mean that comes out lies between
// both, each weighed by its certainty, wide²/(wide² + step²/n) of the way from
// the default to what was seen (normal prior, normal observations: Gelman and
// others, "Bayesian Data Analysis", 2.5). The spread between steps is the
// believed one, corrected by what was seen as if it rested on four steps. In
// logarithms because a step that takes twice as long is as odd as one that
// takes half. The factor is so the middle of the steps, not their mean: one
// seized bolt does not slow the next plan.
func learnFactor(b belief, ratios []float64) (mean, deviation float64) {
	const worth = 4
	n := float64(len(ratios))
	if n == 0 {
		return b.mean, b.wide
	}
	logs := make([]float64, 0, len(ratios))
	seen := 0.0
	for _, r := range ratios {
		logs = append(logs, math.Log(r))
		seen += math.Log(r) / n
	}
	off := 0.0
	for _, l := range logs {
		off += float64((l - seen) * (l - seen))
	}
	step := (float64(worth*b.step*b.step) + off) / (worth + n - 1)
	weight := b.wide * b.wide / (float64(b.wide*b.wide) + step/n)
	return b.mean + float64(weight*(seen-b.mean)), math.Sqrt(weight * step / n)
}
