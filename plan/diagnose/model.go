package diagnose

import (
	"slices"

	"fixslate/plan"
)

// model is one version's causes and tests as the search sees them.
type model struct {
	causes  []string  // ids; the unknown cause has none and stands last in weights
	weights []float64 // probabilities, summing to 1
	tests   []test
}

// test is a test of the plan: outcome k may show under the causes of shows[k].
type test struct {
	plan     *plan.Test
	minutes  float64
	outcomes []outcome
	shows    [][]bool
	good     int // the outcome that counts as passing
}

type outcome struct {
	id   string
	exit plan.Exit
}

func modelOf(p *plan.Plan, variant string, minutes func(*plan.Test) float64) *model {
	serves := func(variants []string) bool { return variant == "" || plan.Meets(variants, []string{variant}) }
	m := &model{}
	var causes []plan.Cause
	for _, c := range p.Causes {
		if serves(c.Variants) {
			causes = append(causes, c)
			m.causes = append(m.causes, c.ID)
		}
	}
	m.weights = shares(causes)
	for i := range p.Tests {
		if t := &p.Tests[i]; serves(t.Variants) {
			m.tests = append(m.tests, m.read(t, max(0, minutes(t))))
		}
	}
	return m
}

// parts of what the written probabilities leave, by the word of a share.
var parts = map[string]float64{"usual": 6, "sometimes": 2, "": 2, "rare": 1}

// shares are the probabilities of the causes, summing to 1, with that of an
// unknown cause at the end where written ones leave room for it. Words divide
// what is left and so leave none. Where the written ones leave nothing for the
// words, each word counts as the smallest written one does: a cause that is
// named is possible.
func shares(causes []plan.Cause) []float64 {
	w := make([]float64, len(causes))
	sum, words, least := 0.0, 0.0, 1.0
	for i, c := range causes {
		if c.Share.Word == "" && c.Share.Number > 0 {
			w[i] = c.Share.Number
			sum += w[i]
			least = min(least, w[i])
		} else {
			words += parts[c.Share.Word]
		}
	}
	const rounding = 1e-9 // 0.1 ten times is not quite 1
	left := 1 - sum
	for i, c := range causes {
		switch {
		case w[i] > 0:
		case left > rounding:
			w[i] = left * parts[c.Share.Word] / words
		default:
			w[i] = least
		}
	}
	if words == 0 && left > rounding && len(causes) > 0 {
		w = append(w, left)
	}
	total := 0.0
	for _, n := range w {
		total += n
	}
	for i := range w {
		w[i] /= total
	}
	return w
}

func (m *model) unknown() float64 {
	if len(m.weights) > len(m.causes) {
		return m.weights[len(m.causes)]
	}
	return 0
}

// read says under which causes each outcome of a test may show.
func (m *model) read(t *plan.Test, minutes float64) test {
	c := test{plan: t, minutes: minutes}
	in := slices.Contains[[]string]
	add := func(o outcome, allows func(cause string) bool) {
		show := make([]bool, len(m.weights))
		for i := range show {
			id := "" // the unknown cause
			if i < len(m.causes) {
				id = m.causes[i]
			}
			show[i] = allows(id)
		}
		c.outcomes, c.shows = append(c.outcomes, o), append(c.shows, show)
	}
	pass, fail := outcome{Pass, t.Pass}, outcome{Fail, t.Fail}
	switch {
	case len(t.Outcomes) > 0:
		c.good = goodOutcome(t)
		for _, o := range t.Outcomes {
			add(outcome{o.ID, o.Go}, func(id string) bool {
				if len(o.Means) == 0 {
					return !in(t.Checks, id)
				}
				return in(o.Means, id)
			})
		}
	case len(t.Clears)+len(t.Blames) > 0:
		// checks beside them are causes it fails on, like blames; a cause that
		// two of the lists claim goes by blames, then by clears
		fails := func(id string) bool { return in(t.Blames, id) || in(t.Checks, id) && !in(t.Clears, id) }
		passes := func(id string) bool { return in(t.Clears, id) && !in(t.Blames, id) }
		add(pass, func(id string) bool { return !fails(id) })
		add(fail, func(id string) bool { return !passes(id) })
	default:
		add(pass, func(id string) bool { return !in(t.Checks, id) })
		add(fail, func(id string) bool { return in(t.Checks, id) })
	}
	for i := range m.weights {
		if !slices.ContainsFunc(c.shows, func(s []bool) bool { return s[i] }) {
			for _, s := range c.shows {
				s[i] = true
			}
		}
	}
	return c
}

// goodOutcome is the outcome of several that counts as passing: the one without
// means; else the first that means none of the causes the test checks; else the
// first.
func goodOutcome(t *plan.Test) int {
	if k := slices.IndexFunc(t.Outcomes, func(o plan.Outcome) bool { return len(o.Means) == 0 }); k >= 0 {
		return k
	}
	clean := func(o plan.Outcome) bool {
		return !slices.ContainsFunc(o.Means, func(id string) bool { return slices.Contains(t.Checks, id) })
	}
	if k := slices.IndexFunc(t.Outcomes, clean); k >= 0 && len(t.Checks) > 0 {
		return k
	}
	return 0
}

// splits holds where some outcome rules out some cause and leaves another.
func (t *test) splits() bool {
	return slices.ContainsFunc(t.shows, func(s []bool) bool { return slices.Contains(s, true) && slices.Contains(s, false) })
}

// names holds where the test says something of a cause.
func (t *test) names(id string) bool {
	for _, list := range [][]string{t.plan.Checks, t.plan.Clears, t.plan.Blames} {
		if slices.Contains(list, id) {
			return true
		}
	}
	return slices.ContainsFunc(t.plan.Outcomes, func(o plan.Outcome) bool { return slices.Contains(o.Means, id) })
}

// idle are the tests that tell no causes apart.
func (m *model) idle() []string {
	var ids []string
	for i := range m.tests {
		if !m.tests[i].splits() {
			ids = append(ids, m.tests[i].plan.ID)
		}
	}
	return ids
}

// untested are the causes that no test names.
func (m *model) untested() []string {
	var ids []string
	for _, id := range m.causes {
		if !slices.ContainsFunc(m.tests, func(t test) bool { return t.names(id) }) {
			ids = append(ids, id)
		}
	}
	return ids
}

// classes groups causes that show the same outcomes in every test: indexes
// into weights, in the plan's order.
func (m *model) classes() [][]int {
	at := map[string]int{}
	var groups [][]int
	for i := range m.weights {
		var key []byte
		for _, t := range m.tests {
			for _, s := range t.shows {
				bit := byte('0')
				if s[i] {
					bit = '1'
				}
				key = append(key, bit)
			}
		}
		k, seen := at[string(key)]
		if !seen {
			k = len(groups)
			at[string(key)] = k
			groups = append(groups, nil)
		}
		groups[k] = append(groups[k], i)
	}
	return groups
}

// alike are the named causes that no test tells apart.
func (m *model) alike() [][]string {
	var same [][]string
	for _, group := range m.classes() {
		var ids []string
		for _, i := range group {
			if i < len(m.causes) {
				ids = append(ids, m.causes[i])
			}
		}
		if len(ids) > 1 {
			same = append(same, ids)
		}
	}
	return same
}
