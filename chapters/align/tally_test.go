package align

import (
	"fmt"
	"math"
	"slices"
	"testing"
)

// tally adds up how well matches agree with the truth.
type tally struct {
	steps, within1, within2, within5, falseSkips int
	dropped, missedDrops                         int
	pairs, pairsFound, pairsFalse                int
	words, addedTrue, addedSaid, addedBoth       float64
	errors                                       []float64
	sure, sureRight                              int // of confidence over 0.9
	retakes, repeatsFound, repeatsFalse          int
}

func (y *tally) add(c trial, m Match) {
	starts := map[string]float64{}
	for _, s := range m.Steps {
		want, said := c.truth.starts[s.ID]
		if s.Status != Missing {
			starts[s.ID] = s.Start
		}
		switch {
		case !said:
			y.dropped++
			if s.Status != Missing {
				y.missedDrops++
				if s.Confidence > 0.9 {
					y.sure++
				}
			}
			continue
		case s.Status == Missing:
			y.falseSkips++
		default:
			d := math.Abs(s.Start - want)
			y.errors = append(y.errors, d)
			within(d, 1, &y.within1)
			within(d, 2, &y.within2)
			within(d, 5, &y.within5)
			if s.Confidence > 0.9 {
				y.sure++
				within(d, 2, &y.sureRight)
			}
		}
		y.steps++
	}
	y.order(m, c.truth.starts, starts)
	y.retakes += len(c.truth.retakes)
	for _, r := range m.Repeats {
		if slices.ContainsFunc(c.truth.retakes, func(t retake) bool { return t.id == r.ID && math.Abs(t.start-r.Start) <= 5 }) {
			y.repeatsFound++
		} else {
			y.repeatsFalse++
		}
	}
	for _, w := range m.Words {
		mid := (w.Start + w.End) / 2
		is := slices.ContainsFunc(c.truth.added, func(a [2]float64) bool { return mid >= a[0]-0.2 && mid <= a[1]+0.2 })
		said := w.Step < 0
		y.words++
		if is {
			y.addedTrue++
		}
		if said {
			y.addedSaid++
		}
		if is && said {
			y.addedBoth++
		}
	}
}

func within(d, limit float64, n *int) {
	if d <= limit {
		*n++
	}
}

// order counts pairs of steps said in another order than planned.
func (y *tally) order(m Match, want, got map[string]float64) {
	for i := range m.Steps {
		for j := i + 1; j < len(m.Steps); j++ {
			a, b := m.Steps[i].ID, m.Steps[j].ID
			turned := func(starts map[string]float64) bool {
				x, ok := starts[a]
				z, too := starts[b]
				return ok && too && x > z
			}
			switch was, is := turned(want), turned(got); {
			case was && is:
				y.pairs++
				y.pairsFound++
			case was:
				y.pairs++
			case is:
				y.pairsFalse++
			}
		}
	}
}

func percent(a, b int) float64 { return 100 * float64(a) / math.Max(1, float64(b)) }

func (y *tally) precision() float64 { return y.addedBoth / math.Max(1, y.addedSaid) }
func (y *tally) recall() float64    { return y.addedBoth / math.Max(1, y.addedTrue) }

const tallyHead = "%-22s %5s %6s %6s %6s %7s %7s %6s %7s %11s %11s %11s %12s\n"

func tallyHeading() string {
	return fmt.Sprintf(tallyHead, "", "steps", "<=1 s", "<=2 s", "<=5 s", "median", "90 %", "skips", "missed", "order r/p", "added p/r", "takes r/p", ">0.9: <=2 s")
}

func (y *tally) line(name string) string {
	slices.Sort(y.errors)
	at := func(q float64) float64 {
		if len(y.errors) == 0 {
			return math.NaN()
		}
		return y.errors[int(q*float64(len(y.errors)-1))]
	}
	return fmt.Sprintf("%-22s %5d %5.1f%% %5.1f%% %5.1f%% %6.2fs %6.2fs %5.1f%% %3d/%3d %5.2f/%5.2f %5.2f/%5.2f %5.2f/%5.2f %5.1f%% of %d\n", name, y.steps,
		percent(y.within1, y.steps), percent(y.within2, y.steps), percent(y.within5, y.steps), at(0.5), at(0.9), percent(y.falseSkips, y.steps),
		y.missedDrops, y.dropped, percent(y.pairsFound, y.pairs)/100, percent(y.pairsFound, y.pairsFound+y.pairsFalse)/100, y.precision(), y.recall(),
		percent(y.repeatsFound, y.retakes)/100, percent(y.repeatsFound, y.repeatsFound+y.repeatsFalse)/100, percent(y.sureRight, y.sure), y.sure)
}

// floors are what a tally must reach: shares in per cent, recall and precision
// from 0 to 1.
type floors struct {
	within2, within5, skips, missed, sure float64
	turned, turnedTrue                    float64 // recall and precision of pairs out of order
	added, addedFound                     float64 // precision and recall of words beside the work
}

func (y *tally) hold(t *testing.T, f floors) {
	t.Helper()
	for _, c := range []struct {
		name         string
		got, atLeast float64
	}{
		{"starts within 2 s", percent(y.within2, y.steps), f.within2},
		{"starts within 5 s", percent(y.within5, y.steps), f.within5},
		{"steps not skipped falsely", 100 - percent(y.falseSkips, y.steps), 100 - f.skips},
		{"drops noticed", 100 - percent(y.missedDrops, y.dropped), 100 - f.missed},
		{"pairs out of order found", percent(y.pairsFound, y.pairs), 100 * f.turned},
		{"pairs out of order true", percent(y.pairsFound, y.pairsFound+y.pairsFalse), 100 * f.turnedTrue},
		{"added words true", 100 * y.precision(), 100 * f.added},
		{"added words found", 100 * y.recall(), 100 * f.addedFound},
		{"sure starts within 2 s", percent(y.sureRight, y.sure), f.sure},
	} {
		if c.got < c.atLeast {
			t.Errorf("%s: %.1f %%, floor %.1f %%", c.name, c.got, c.atLeast)
		}
	}
}
