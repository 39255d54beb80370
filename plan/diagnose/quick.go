package diagnose

import "math"

// quick is for problems too large for the exact search. Two rules that look one
// test ahead are followed, and the cheaper tree is kept:
//
//   - the most information per minute (Johnson, "An information theory approach
//     to diagnosis", 1960; from memory), which is at most a factor of about the
//     logarithm of the number of causes above the best where tests cost the same
//     (Garey and Graham, 1974; from memory);
//   - the most share found per minute, which is best where every test checks one
//     cause (Smith, "Various optimizers for single-stage production", Naval
//     Research Logistics Quarterly 3, 1956).
//
// A branch with few enough classes is finished by the exact search. Cost: places
// of the tree times tests times classes.
func (s *search) quick() *node {
	var least *node
	cut := false
	s.steps = 0 // the exact search spent them in vain
	for _, rule := range []func(*splitter, []candidate) float64{information, found} {
		s.nodes, s.cut = 0, false
		n := s.follow(s.start(), make([]bool, len(s.tests)), s.greedy(rule), s.finish)
		if least == nil || n.cost < least.cost*(1-1e-12) {
			least, cut = n, s.cut
		}
	}
	s.cut = cut
	return least
}

func (s *search) finish(left []candidate, made []bool) *node {
	if len(left) > finishing || s.steps > mostSteps {
		return nil
	}
	return s.exactFrom(left, made)
}

// greedy chooses the test with the most gain per minute; a tie goes to the test
// earlier in the plan.
func (s *search) greedy(gain func(*splitter, []candidate) float64) func([]candidate, []bool) int {
	return func(left []candidate, made []bool) int {
		choice, most := -1, 0.0
		for k := range s.tests {
			t := &s.tests[k]
			if made[k] || !t.parts(left) {
				continue
			}
			rate := math.Inf(1)
			if t.of.minutes > 0 {
				rate = gain(t, left) / t.of.minutes
			}
			if choice < 0 || rate > most*(1+1e-12) {
				choice, most = k, rate
			}
		}
		return choice
	}
}

// information is what a test tells about which class it is, in nats: the
// entropy of the classes less the expected entropy after it.
func information(t *splitter, left []candidate) float64 {
	gain := disorder(total(left), left, nil, nil)
	for _, show := range t.shows {
		sum := 0.0
		for _, c := range left {
			if show[c.class] {
				sum += c.weight / t.ways[c.class]
			}
		}
		gain -= disorder(sum, left, show, t.ways)
	}
	return max(0, gain)
}

// disorder is the entropy of the classes that show times how likely they are
// together, sum.
func disorder(sum float64, left []candidate, show []bool, ways []float64) float64 {
	if sum <= 0 {
		return 0
	}
	h := 0.0
	for _, c := range left {
		w := c.weight
		if show != nil {
			if !show[c.class] {
				continue
			}
			w /= ways[c.class]
		}
		if w > 0 {
			h -= w * math.Log(w/sum)
		}
	}
	return h
}

// found is how likely a test is not to pass.
func found(t *splitter, left []candidate) float64 {
	sum := 0.0
	for k, show := range t.shows {
		if k == t.of.good {
			continue
		}
		for _, c := range left {
			if show[c.class] {
				sum += c.weight / t.ways[c.class]
			}
		}
	}
	return sum
}
