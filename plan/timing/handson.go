package timing

import (
	"strings"

	"fixslate/plan"
)

// Seconds of hands-on time where the plan says nothing (common practice, no
// source): what it takes to undo or to fit one of them, or to do one thing.
const (
	perAction    = 40.0
	perFastener  = 25.0
	perPart      = 60.0
	perMeasuring = 120.0 // a test with an instrument
	perLook      = 30.0  // a test with eyes, ears, nose or hand
	longestGuess = 100 * 3600.0
)

// handsOn is how long a step's work takes and where that comes from: the work
// it has written; else, where one of its tests has work written, the sum of
// its tests; else a guess from what it undoes, fits, measures and does, or, where
// it only speaks, from what it gives the hands to do. A step that names nothing is the time it is seen over the presenter's screen share.
// A guess runs from half to twice itself. Pace stretches all of them: it
// compares work as it was with work as planned.
func (e estimator) handsOn(s *plan.Step, screen float64) (PERT, Origin) {
	if s.Work.Set && !s.Work.Open {
		return written(s.Work).Times(e.pace.HandsOn), Written
	}
	if work, ok := e.testsWork(s); ok {
		return work.Times(e.pace.HandsOn), Tests
	}
	guess := perAction * float64(actions(s.Do.Print))
	for _, id := range s.Fasteners {
		guess += perFastener * float64(e.fastenerCount(id, s.Variants))
	}
	guess += perPart * float64(len(s.Parts))
	for _, t := range e.testsOf(s) {
		guess += testGuess(t)
	}
	guess += perAction * float64(s.Orders)
	guess *= float64(max(1, len(s.Sides)))
	if guess == 0 {
		guess = screen / e.pace.ScreenShare
	}
	guess = min(guess, longestGuess)
	return PERT{guess / 2, guess, guess * 2}.Times(e.pace.HandsOn), Inferred
}

// testsWork sums the tests of a step if one of them has work written; the
// others count as guessed.
func (e estimator) testsWork(s *plan.Step) (PERT, bool) {
	var sum PERT
	any := false
	for _, t := range e.testsOf(s) {
		if t.Work.Set && !t.Work.Open {
			sum, any = sum.plus(written(t.Work)), true
			continue
		}
		g := testGuess(t)
		sum = sum.plus(PERT{g / 2, g, g * 2})
	}
	return sum, any
}

// testsOf are the tests of a step in its own order. An id that stands for
// several versions counts once: a viewer has one of them.
func (e estimator) testsOf(s *plan.Step) []*plan.Test {
	var tests []*plan.Test
	for _, id := range s.Tests {
		for _, t := range e.plan.Test(id) {
			if plan.Meets(t.Variants, s.Variants) {
				tests = append(tests, t)
				break
			}
		}
	}
	return tests
}

func testGuess(t *plan.Test) float64 {
	for _, by := range t.Instrument {
		switch by {
		case "eyes", "ears", "nose", "hand":
		default:
			return perMeasuring
		}
	}
	return perLook
}

func (e estimator) fastenerCount(id string, variants []string) int {
	for _, f := range e.plan.Fastener(id) {
		if plan.Meets(f.Variants, variants) {
			return max(1, f.Count)
		}
	}
	return 1
}

// actions counts the things done in a text: the stretches between commas,
// semicolons, full stops, line ends, "and" and "then".
func actions(do string) int {
	n, open := 0, false
	for _, word := range strings.Fields(strings.ReplaceAll(do, "\n", " ; ")) {
		joins := word == "and" || word == "then" || word == ";"
		if !joins && !open {
			n, open = n+1, true
		}
		if joins || strings.HasSuffix(word, ",") || strings.HasSuffix(word, ";") || strings.HasSuffix(word, ".") {
			open = false
		}
	}
	return n
}

// TestMinutes is how many minutes a test takes: its likely work where that is
// written, else the guess that the hands-on time of its step is made of.
func TestMinutes(t *plan.Test) float64 {
	if t.Work.Set && !t.Work.Open {
		return t.Work.Minutes()
	}
	return testGuess(t) / 60
}
