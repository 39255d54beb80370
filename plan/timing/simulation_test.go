package timing

import (
	"fmt"
	"math"
	"testing"
	"time"

	"fixslate/plan"
)

// acts is a plan of silent steps that stay in the cut for a written time.
func acts(each ...plan.Duration) *plan.Plan {
	p := &plan.Plan{}
	for i, d := range each {
		p.Steps = append(p.Steps, plan.Step{ID: fmt.Sprint("s", i), OnScreen: d})
	}
	return p
}

func spread(low, likely, high float64) plan.Duration {
	s := func(v float64) time.Duration { return time.Duration(v * float64(time.Second)) }
	return plan.Duration{Low: s(low), Likely: s(likely), High: s(high), Set: true, Spread: true}
}

// Exact: the sum of two Beta(4,4) variables on 0 to 60 s, integrated finely.
func TestRunningOfTwoActionsIsExact(t *testing.T) {
	const steps = 4000
	density := func(x float64) float64 { return 140 * math.Pow(x*(1-x), 3) }
	below := func(total float64) float64 { // P(X+Y ≤ total) for X, Y on 0 to 1
		sum := 0.0
		for i := range steps {
			x := (float64(i) + 0.5) / steps
			y := min(1, max(0, total-x))
			y4 := y * y * y * y
			sum += density(x) / steps * y4 * (35 - 84*y + 70*y*y - 20*y*y*y)
		}
		return sum
	}
	got := Estimate(acts(spread(0, 30, 60), spread(0, 30, 60)), Pace{}).Running
	for _, c := range []struct{ got, want float64 }{{got.Low, 0.1}, {got.Likely, 0.5}, {got.High, 0.9}} {
		if p := below(c.got / 60); math.Abs(p-c.want) > 0.01 {
			t.Errorf("%.2f s is the %.1f %% point, want the %.0f %% point", c.got, 100*p, 100*c.want)
		}
	}
}

// One quantity alone has no sampling error at all: the 10 and 90 % points of
// Beta(4,4) are where 35x⁴ - 84x⁵ + 70x⁶ - 20x⁷ is 0.1 and 0.9.
func TestRunningOfOneAction(t *testing.T) {
	got := Estimate(acts(spread(0, 500, 1000)), Pace{}).Running
	cdf := func(x float64) float64 { return x * x * x * x * (35 - 84*x + 70*x*x - 20*x*x*x) }
	for _, c := range []struct{ got, want float64 }{{got.Low, 0.1}, {got.Likely, 0.5}, {got.High, 0.9}} {
		if p := cdf(c.got / 1000); math.Abs(p-c.want) > 1e-4 {
			t.Errorf("%.2f s is the %.3f %% point, want the %.0f %% point", c.got, 100*p, 100*c.want)
		}
	}
}

// Source: Malcolm et al. 1959: means and variances of independent activities
// add, and the sum of many is nearly normal (10 and 90 % points at ±1.2816 σ).
func TestRunningOfManyActions(t *testing.T) {
	var each []plan.Duration
	mean, variance := 0.0, 0.0
	for i := range 60 {
		low := float64(i % 7)
		e := PERT{low, low + 10 + float64(i%5), low + 40 + float64(i%11)}
		each = append(each, spread(e.Low, e.Likely, e.High))
		mean, variance = mean+e.Mean(), variance+varianceOf(e)
	}
	sigma := math.Sqrt(variance)
	line := Estimate(acts(each...), Pace{})
	if math.Abs(line.End-mean) > 1e-6 {
		t.Errorf("the timeline ends at %v s, want the mean %v", line.End, mean)
	}
	for _, c := range []struct{ got, want float64 }{
		{line.Running.Low, mean - 1.2816*sigma}, {line.Running.Likely, mean}, {line.Running.High, mean + 1.2816*sigma},
	} {
		if math.Abs(c.got-c.want) > 0.12*sigma {
			t.Errorf("%.1f s, want %.1f s (σ %.1f s)", c.got, c.want, sigma)
		}
	}
}

// Source: measured for this project: the total of 150 narration lines fitted on
// one synthetic voice and tried on two others was 10 % short to 11 % long.
func TestNarrationSpread(t *testing.T) {
	p := talk(40, "Set the meter to ohms and put the probes on the two terminals of the pump.")
	line := Estimate(p, Pace{})
	low, high := line.Running.Low/line.End, line.Running.High/line.End
	if math.Abs(low-0.90) > 0.005 || math.Abs(high-1.11) > 0.005 {
		t.Errorf("spread %.3f to %.3f of the likely time, want 0.90 to 1.11", low, high)
	}
	if math.Abs(line.Running.Likely/line.End-1) > 0.005 {
		t.Errorf("half of the runs are below %.1f s, the timeline ends at %.1f s", line.Running.Likely, line.End)
	}
	before := high - low
	for _, videos := range []int{1, 3, 10} {
		pace := DefaultPace()
		pace.Counts.Videos = videos
		line := Estimate(p, pace)
		now := (line.Running.High - line.Running.Low) / line.End
		if now >= before {
			t.Errorf("after %d videos the spread is %.3f, before it was %.3f: measuring must narrow it", videos, now, before)
		}
		before = now
	}
}

func TestSpreadsAreOrdered(t *testing.T) {
	p := talk(12, "Turn the impeller with a finger, then look for hair and coins.")
	p.Steps[4].OnScreen = spread(5, 60, 300)
	p.Steps[7].OnlyIf = plan.Condition{Test: "ohms", Outcome: "fails"}
	line := Estimate(p, Pace{})
	if line.Steps[0].Begin != (Spread{}) {
		t.Errorf("the first step begins at %v, want 0", line.Steps[0].Begin)
	}
	for i := 1; i < len(line.Steps); i++ {
		a, b := line.Steps[i-1].Begin, line.Steps[i].Begin
		if !(b.Low > a.Low && b.Likely > a.Likely && b.High > a.High && b.Low < b.Likely && b.Likely < b.High) {
			t.Errorf("step %d begins at %v after %v", i, b, a)
		}
	}
	if line.Straight.Likely >= line.Running.Likely {
		t.Errorf("without its detour the video runs %v, with it %v", line.Straight, line.Running)
	}
}

func TestEstimateRepeats(t *testing.T) {
	p := talk(5, "Take the cover off.")
	p.Steps[2].OnScreen = spread(5, 60, 300)
	first := Estimate(p, Pace{})
	if second := Estimate(p, Pace{}); first.Running != second.Running || first.Steps[4].Begin != second.Steps[4].Begin {
		t.Errorf("twice the same plan gives %v and %v", first.Running, second.Running)
	}
	// Kept to the microsecond: another machine, another Go or another map order
	// must not move it.
	if got, want := fmt.Sprintf("%.6f %.6f %.6f", first.Running.Low, first.Running.Likely, first.Running.High), repeatable; got != want {
		t.Errorf("running %s, want %s", got, want)
	}
}

const repeatable = "37.794735 90.833665 166.454070"

func BenchmarkEstimate300Steps(b *testing.B) {
	p := talk(300, "Set the meter to ohms and put the probes on the two terminals of the pump.")
	for i := range p.Steps {
		p.Steps[i].OnScreen = spread(5, float64(10+i%13), 60)
	}
	for b.Loop() {
		Estimate(p, Pace{})
	}
}
