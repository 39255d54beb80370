package hazard

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fixslate/plan/given"
)

// share is n of of.
type share struct{ n, of int }

func (s *share) count(hit bool) {
	s.of++
	if hit {
		s.n++
	}
}

func (s share) String() string { return fmt.Sprintf("%d/%d %.2f", s.n, s.of, s.value()) }
func (s share) value() float64 { return float64(s.n) / float64(max(1, s.of)) }

// tally is what was met of the labels: rows that must warn with a right
// family, labels found, families shown that are right (tolerated ones counted
// nowhere), harmless rows that stay quiet.
type tally struct {
	must, labels, right, quiet share
	found                      map[string]*share
	wrong                      map[string]int
}

func (a tally) String() string {
	return fmt.Sprintf("must warn %v, families %v, precision %v, harmless quiet %v", a.must, a.labels, a.right, a.quiet)
}

func measure(t testing.TB, all []row, toml func(row) string, print string) tally {
	t.Helper()
	a := tally{found: map[string]*share{}, wrong: map[string]int{}}
	for _, r := range all {
		var got []string
		for _, h := range Read(given.Plan(t, toml(r))).Steps[0].Hazards {
			if h.Family != "none" && !slices.Contains(got, h.Family) {
				got = append(got, h.Family)
			}
		}
		hit := false
		for _, f := range r.Hazards {
			found := slices.Contains(got, f)
			hit = hit || found
			a.labels.count(found)
			if a.found[f] == nil {
				a.found[f] = &share{}
			}
			a.found[f].count(found)
		}
		good := true
		for _, f := range got {
			if slices.Contains(r.Tolerated, f) && !slices.Contains(r.Hazards, f) {
				continue
			}
			right := slices.Contains(r.Hazards, f)
			a.right.count(right)
			if !right {
				a.wrong[f]++
				good = false
			}
		}
		if r.MustWarn {
			a.must.count(hit)
		}
		if len(r.Hazards) == 0 {
			a.quiet.count(good)
		}
		if print != "" {
			for _, f := range r.Hazards {
				if !slices.Contains(got, f) {
					t.Logf("MISS %s: %s [%s] %s %q", f, r.ID, r.Context, r.Step, r.Tools)
				}
			}
			for _, h := range Read(given.Plan(t, toml(r))).Steps[0].Hazards {
				if h.Family != "none" && !slices.Contains(r.Hazards, h.Family) && !slices.Contains(r.Tolerated, h.Family) {
					t.Logf("WRONG %s %s: %s [%s] %s %q: %s want %v", h.Family, h.Class, r.ID, r.Context, r.Step, r.Tools, h.Shown(), r.Hazards)
				}
			}
		}
	}
	return a
}

func table(t testing.TB, a tally) {
	var names []string
	for f := range a.found {
		names = append(names, f)
	}
	for f := range a.wrong {
		if a.found[f] == nil {
			a.found[f] = &share{}
			names = append(names, f)
		}
	}
	slices.Sort(names)
	for _, f := range names {
		t.Logf("  %-22s found %v, wrongly %d", f, *a.found[f], a.wrong[f])
	}
}

// floor holds the four figures to their least.
func (a tally) floor(t *testing.T, least [4]float64) {
	t.Helper()
	for i, s := range [...]share{a.must, a.labels, a.right, a.quiet} {
		if s.value() < least[i] {
			t.Errorf("%s: %v, under %.2f", [...]string{"must warn", "families", "precision", "harmless quiet"}[i], s, least[i])
		}
	}
}

// sample is rows that were written or read under one rule.
type sample struct {
	name   string
	path   string
	part   func(i int) bool
	floors [4]float64
	read   bool // its rows may be printed
}

// samples are the rows shared by all and, beside them, rows written by somebody
// who had not seen the reader. The figures that count are those of rows that
// were not read; those scored at the end only show how far scoring often has
// pulled the others up.
func samples(dir string) []sample {
	blind := filepath.Join("testdata", "blind.jsonl")
	all := []sample{
		{"blind, read", blind, func(i int) bool { return i%2 == 0 }, [4]float64{0.96, 0.96, 0.93, 0.96}, true},
		{"blind, unread", blind, func(i int) bool { return i%2 == 1 }, [4]float64{0.88, 0.84, 0.85, 0.93}, false},
	}
	all = append(all, groups()...)
	all = append(all, sample{"steps, never learned", filepath.Join("testdata", "steps.tsv"),
		held, [4]float64{0.91, 0.79, 0.79, 0.91}, false})
	if dir == "" {
		return all
	}
	steps := filepath.Join(dir, "safety", "steps.jsonl")
	all = append(all,
		sample{"shared, read", steps, func(i int) bool { return i%3 == 0 }, [4]float64{0.93, 0.82, 0.90, 0.95}, true},
		sample{"shared, unread", steps, func(i int) bool { return i%3 == 1 }, [4]float64{0.93, 0.74, 0.80, 0.93}, false})
	if os.Getenv("HAZARD_LAST") != "" {
		all = append(all, sample{"shared, scored last", steps, func(i int) bool { return i%3 == 2 }, [4]float64{0.85, 0.68, 0.74, 0.91}, false})
	}
	return all
}

// groups are the rows written for a group of families each, by somebody who
// tuned the reader for another one. Every third row is kept unread.
func groups() []sample {
	floors := map[string][2][4]float64{
		"g0": {{0.96, 0.96, 0.69, 0.95}, {0.84, 0.83, 0.52, 0.88}},
		"g1": {{0.96, 0.96, 0.92, 0.96}, {0.83, 0.77, 0.71, 0.90}},
		"g2": {{0.96, 0.96, 0.88, 0.96}, {0.82, 0.82, 0.69, 0.86}},
		"g3": {{0.96, 0.96, 0.93, 0.96}, {0.85, 0.80, 0.71, 0.92}},
	}
	var all []sample
	for _, name := range [...]string{"g0", "g1", "g2", "g3"} {
		path := filepath.Join("testdata", "rows-"+name+".jsonl")
		if _, err := os.Stat(path); err != nil {
			continue // not written yet
		}
		all = append(all,
			sample{name + ", read", path, func(i int) bool { return (i+1)%3 != 0 }, floors[name][0], true},
			sample{name + ", unread", path, func(i int) bool { return (i+1)%3 == 0 }, floors[name][1], false})
	}
	return all
}

// A plan of titles and narration alone is read as well as one that says what hands
// do: the steps that are never learned from, every third of them, are spoken.
func TestQualityOfNarration(t *testing.T) {
	all := rows(t, filepath.Join("testdata", "steps.tsv"), func(i int) bool { return held(i) && i%3 == 0 })
	a := measure(t, all, row.spoken, "")
	t.Logf("steps, never learned, spoken: %v", a)
	a.floor(t, [4]float64{0.84, 0.73, 0.82, 0.93})
}

// Of acts listed in one sentence each is read as well as in a sentence of its own: the
// steps never learned from, two of a trade or an object at a time, parted both ways.
func TestQualityOfLists(t *testing.T) {
	all := rows(t, filepath.Join("testdata", "steps.tsv"), held)
	for _, c := range []struct {
		sep   string
		toml  func(row) string
		how   string
		least [4]float64
	}{
		{". ", row.toml, "done", [4]float64{0.88, 0.73, 0.81, 0.88}},
		{", ", row.toml, "done", [4]float64{0.87, 0.71, 0.80, 0.87}},
		{". ", row.spoken, "spoken", [4]float64{0.84, 0.69, 0.83, 0.91}},
		{", ", row.spoken, "spoken", [4]float64{0.80, 0.66, 0.83, 0.91}},
	} {
		a := measure(t, pairs(all, c.sep), c.toml, "")
		t.Logf("steps, never learned, two joined by %q, %s: %v", c.sep, c.how, a)
		a.floor(t, c.least)
	}
}

// pairs joins each step with the one before it of the same object or trade.
func pairs(all []row, sep string) []row {
	const longest = 90 // bytes: two of them stay a sentence that somebody would write
	var joined []row
	waiting := map[string]row{}
	for _, r := range all {
		if len(r.Step) > longest {
			continue
		}
		first, ok := waiting[r.Context]
		if !ok {
			first, ok = waiting[r.Trade]
		}
		if !ok {
			waiting[r.Context], waiting[r.Trade] = r, r
			continue
		}
		delete(waiting, first.Context)
		delete(waiting, first.Trade)
		next := r.Step
		if sep == ", " {
			next = strings.ToLower(next[:1]) + next[1:]
		}
		r.Context = first.Context + "; " + r.Context
		r.Step = strings.TrimRight(first.Step, ". !") + sep + next
		r.Tools = slices.Concat(first.Tools, r.Tools)
		r.Hazards = slices.Concat(first.Hazards, r.Hazards)
		r.Tolerated = slices.Concat(first.Tolerated, r.Tolerated)
		r.MustWarn = first.MustWarn || r.MustWarn
		joined = append(joined, r)
	}
	return joined
}

func TestQuality(t *testing.T) {
	dir := os.Getenv("FIXSLATE_DATA")
	if dir == "" {
		t.Log("the shared steps are not measured: FIXSLATE_DATA is not set")
	}
	for _, s := range samples(dir) {
		print := ""
		if s.read {
			print = os.Getenv("HAZARD_PRINT")
		}
		a := measure(t, rows(t, s.path, s.part), row.toml, print)
		t.Logf("%s: %v", s.name, a)
		table(t, a)
		a.floor(t, s.floors)
	}
}
