package shotlist

import (
	"context"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"fixslate/plan/given"
	"fixslate/plan/timing"
)

// longDay is a made plan with shots in steps of four, over places with two
// views each; every third step changes the object's state.
func longDay(shots, places int) string {
	r := rand.New(rand.NewPCG(7, uint64(shots)))
	var b strings.Builder
	b.WriteString("[video]\ntitle = \"T\"\n[shoot]\nend = \"17:00\"\n")
	for i := range shots / 4 {
		fmt.Fprintf(&b, "[[step]]\ntitle = \"S%d\"\nsay = \"Words.\"\n", i)
		switch i % 6 {
		case 2:
			fmt.Fprintf(&b, "starts = [\"part-%d-off\"]\n", i)
		case 5:
			fmt.Fprintf(&b, "ends = [\"part-%d-off\"]\n", i-3)
		}
		for range 4 {
			fmt.Fprintf(&b, "[[step.shot]]\nof = \"it\"\nsetup = \"place %d, view %d\"\n", r.IntN(places), r.IntN(2))
			if r.IntN(8) == 0 {
				b.WriteString("needs = []\n")
			}
		}
	}
	return b.String()
}

func BenchmarkArrange(b *testing.B) {
	for _, n := range []int{40, 120, 400, 2000} {
		for _, places := range []int{4, 40} {
			b.Run(fmt.Sprintf("shots=%d/places=%d", n, places), func(b *testing.B) {
				p := given.Plan(b, longDay(n, places))
				shots, timeline := FromPlan(p), timing.Estimate(p, timing.DefaultPace())
				var d Day
				for b.Loop() {
					d = Arrange(context.Background(), Call{Plan: p, Timeline: timeline, Shots: shots})
				}
				b.ReportMetric(d.Change, "min")
				b.ReportMetric(d.Bound, "bound-min")
				b.ReportMetric(d.StoryChange, "story-min")
			})
		}
	}
}

func BenchmarkCoverage(b *testing.B) {
	p := given.Plan(b, longDay(2000, 20))
	shots := FromPlan(p)
	for b.Loop() {
		Coverage(p, shots)
	}
}
