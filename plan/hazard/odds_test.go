package hazard

import (
	"cmp"
	"fmt"
	"hash/fnv"
	"os"
	"slices"
	"strconv"
	"testing"

	"fixslate/plan/given"
	"fixslate/plan/hazard/class"
	"fixslate/plan/hazard/odds"
)

// elder reads the rows of before that may be learned from: those that tuners
// read.
func elder(t testing.TB) []row {
	all := rows(t, "testdata/blind.jsonl", func(i int) bool { return i%2 == 0 })
	for _, group := range [...]string{"g0", "g1", "g2", "g3"} {
		all = append(all, rows(t, "testdata/rows-"+group+".jsonl", func(i int) bool { return (i+1)%3 != 0 })...)
	}
	return all
}

// example is a labelled step with its signs.
func (r row) example(t testing.TB) odds.Example {
	reader := &reader{plan: given.Plan(t, r.toml()), lex: compiled(), room: new(room)}
	reader.prepare()
	out := reader.step(0)
	e := odds.Example{Named: r.Hazards, Neutral: r.Tolerated}
	seen := map[odds.Sign]bool{}
	add := func(signs []sign) {
		for _, s := range signs {
			if !seen[s.Sign] {
				seen[s.Sign] = true
				e.Signs = append(e.Signs, s.Sign)
			}
		}
	}
	add(reader.signsAbout(nil, &out))
	for k := range reader.sources {
		if reader.sources[k].kind == "do" {
			reader.sentences(int32(k), reader.whole(int32(k)), func(signs func([]sign) []sign) { add(signs(nil)) })
		}
	}
	return e
}

func examples(t testing.TB, all []row) []odds.Example {
	list := make([]odds.Example, len(all))
	for i := range all {
		list[i] = all[i].example(t)
	}
	return list
}

func families() []string {
	var ids []string
	for _, f := range class.Families() {
		if f.ID != class.NoFamily {
			ids = append(ids, f.ID)
		}
	}
	return ids
}

// held says which rows of steps.tsv are never learned from: every eighth.
func held(i int) bool { return i%8 == 7 }

// learned are the others.
func learned(t testing.TB) []row {
	return rows(t, "testdata/steps.tsv", func(i int) bool { return !held(i) })
}

// The weights in the program were learned from the rows that stand here, read
// with the lexicon that stands here. FIXSLATE_UPDATE=1 learns them anew, which
// takes a minute.
func TestOdds(t *testing.T) {
	lessons := examples(t, append(elder(t), learned(t)...))
	sum := fnv.New64a()
	for i := range lessons {
		fmt.Fprintln(sum, lessons[i])
	}
	stamp := fmt.Sprintf("%d steps, %x", len(lessons), sum.Sum64())
	was := "nothing"
	if data, err := os.ReadFile("odds/net.bin"); err == nil {
		if net, err := odds.Open(string(data)); err == nil {
			was = net.Stamp()
		}
	}
	if was == stamp {
		return
	}
	if os.Getenv("FIXSLATE_UPDATE") == "" {
		t.Fatalf("the weights were learned from %q, these are %q; go generate ./plan/hazard learns them anew", was, stamp)
	}
	if err := os.WriteFile("odds/net.bin", odds.Learn(lessons, families(), stamp, odds.Schooling{}), 0o644); err != nil {
		t.Fatal(err)
	}
}

// How well the odds do on steps they did not learn from, and where the
// thresholds lie best: FIXSLATE_CROSS=1 learns four times from three quarters.
func TestOddsAcross(t *testing.T) {
	if os.Getenv("FIXSLATE_CROSS") == "" {
		t.Skip("FIXSLATE_CROSS=1 cross-validates")
	}
	old, rows := examples(t, elder(t)), learned(t)
	all := examples(t, rows)
	const folds = 4
	odd := make([][]float32, len(all))
	for k := range folds {
		lessons := slices.Clone(old)
		for i := range all {
			if i%folds != k {
				lessons = append(lessons, all[i])
			}
		}
		net, err := odds.Open(string(odds.Learn(lessons, families(), "", schooling())))
		if err != nil {
			t.Fatal(err)
		}
		var layer odds.Layer
		for i := k; i < len(all); i += folds {
			var places []int
			for _, s := range all[i].Signs {
				if p, ok := net.Find(s); ok {
					places = append(places, p)
				}
			}
			odd[i] = slices.Clone(net.Odds(nil, &layer, places))
		}
	}
	for _, low := range [...]float32{0.05, 0.1, 2} {
		for _, high := range [...]float32{0.2, 0.25, 0.3, 0.35, 0.4, 0.5, 1} {
			if low > high && low < 2 {
				continue
			}
			var n [8]int
			for i := range all {
				ruledBy := map[string]bool{}
				for _, s := range all[i].Signs {
					if s.Kind == ruledIn {
						ruledBy[class.Families()[s.Number].ID] = true
					}
				}
				count(&n, rows[i], func(f int, id string) bool {
					return odd[i][f] >= high || ruledBy[id] && odd[i][f] >= low
				})
			}
			t.Logf("drop under %.2f, add from %.2f: must warn %.3f families %.3f precision %.3f quiet %.3f",
				low, high, ratio(n[0], n[1]), ratio(n[2], n[3]), ratio(n[4], n[5]), ratio(n[6], n[7]))
		}
	}
}

func schooling() odds.Schooling {
	number := func(name string) int { n, _ := strconv.Atoi(os.Getenv(name)); return n }
	return odds.Schooling{Hidden: number("HIDDEN"), Rounds: number("ROUNDS"), Rare: number("RARE"), Weight: float32(number("WEIGHT"))}
}

func ratio(a, b int) float64 { return float64(a) / float64(cmp.Or(b, 1)) }

// count adds a row to: rows that must warn with a right family, of; labels
// found, of; shown that are right, of; harmless rows that are quiet, of.
func count(n *[8]int, r row, shown func(f int, id string) bool) {
	right, wrong := 0, 0
	for f, id := range families() {
		named := slices.Contains(r.Hazards, id)
		switch show := shown(f, id); {
		case show && named:
			right++
		case show && !slices.Contains(r.Tolerated, id):
			wrong++
		}
	}
	if r.MustWarn {
		n[1]++
		n[0] += min(right, 1)
	}
	n[2] += right
	n[3] += len(r.Hazards)
	n[4] += right
	n[5] += right + wrong
	if len(r.Hazards) == 0 {
		n[7]++
		if wrong == 0 {
			n[6]++
		}
	}
}
