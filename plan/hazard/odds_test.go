package hazard

import (
	"bufio"
	"cmp"
	"encoding/json"
	"fmt"
	"hash/fnv"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
	"fixslate/plan/hazard/odds"
)

// labelled is a step with the families that a careful reviewer names.
type labelled struct {
	id, context, step string
	tools             []string
	named, neutral    []string
	must              bool
}

// toml is the step as a plan.
func (l *labelled) toml() string {
	q := func(s string) string { b, _ := json.Marshal(s); return string(b) }
	var b strings.Builder
	fmt.Fprintf(&b, "[video]\ntitle = \"Row\"\nsubject = %s\n", q(l.context))
	for i, tool := range l.tools {
		fmt.Fprintf(&b, "[[tool]]\nid = \"t%d\"\nname = %s\n", i, q(tool))
	}
	fmt.Fprintf(&b, "[[step]]\ntitle = \"Step\"\ndo = %s\n", q(l.step))
	return b.String()
}

// steps reads testdata/steps.tsv: trade, context, step, tools, families, must
// warn, tolerated families, trap. The number in an id is the line's.
func steps(t testing.TB) []labelled {
	t.Helper()
	f, err := os.Open("testdata/steps.tsv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	list := func(s string) []string { return strings.FieldsFunc(s, func(r rune) bool { return r == ';' }) }
	var all []labelled
	sc := bufio.NewScanner(f)
	for n := 1; sc.Scan(); n++ {
		c := strings.Split(sc.Text(), "\t")
		if len(c) != 8 {
			t.Fatalf("steps.tsv:%d: %d columns", n, len(c))
		}
		all = append(all, labelled{
			id: strconv.Itoa(n), context: c[1], step: c[2], tools: list(c[3]), named: list(c[4]), must: c[5] == "1", neutral: list(c[6]),
		})
	}
	return all
}

// elder reads the rows of before that may be learned from: those that tuners
// read.
func elder(t testing.TB) []labelled {
	t.Helper()
	var all []labelled
	for _, src := range [...]struct {
		path   string
		unread func(n int) bool
	}{
		{"testdata/blind.jsonl", func(n int) bool { return n%2 == 0 }},
		{"testdata/rows-g0.jsonl", func(n int) bool { return n%3 == 0 }},
		{"testdata/rows-g1.jsonl", func(n int) bool { return n%3 == 0 }},
		{"testdata/rows-g2.jsonl", func(n int) bool { return n%3 == 0 }},
		{"testdata/rows-g3.jsonl", func(n int) bool { return n%3 == 0 }},
	} {
		f, err := os.Open(src.path)
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		sc := bufio.NewScanner(f)
		for line := 1; sc.Scan(); line++ {
			var r struct {
				ID, Trade, Context, Step  string
				Tools, Hazards, Tolerated []string
				MustWarn                  bool `json:"must_warn"`
			}
			if err := json.Unmarshal(sc.Bytes(), &r); err != nil {
				t.Fatal(err)
			}
			n := line
			if _, after, ok := strings.Cut(r.ID, "-"); ok {
				n, _ = strconv.Atoi(after)
				r.Context = r.Trade + ": " + r.Context
			}
			if !src.unread(n) {
				all = append(all, labelled{r.ID, r.Context, r.Step, r.Tools, r.Hazards, r.Tolerated, r.MustWarn})
			}
		}
	}
	return all
}

// example is a labelled step with its signs.
func (l *labelled) example(t testing.TB) odds.Example {
	src, _ := diag.NewSource("plan.toml", []byte(l.toml()))
	p, _, _ := plan.Decode(src, nil)
	if p == nil {
		t.Fatalf("%s is no plan", l.id)
	}
	r := &reader{plan: p, lex: compiled(), room: new(room)}
	r.prepare()
	out := r.step(0)
	e := odds.Example{Named: l.named, Neutral: l.neutral}
	seen := map[odds.Sign]bool{}
	add := func(signs []sign) {
		for _, s := range signs {
			if !seen[s.Sign] {
				seen[s.Sign] = true
				e.Signs = append(e.Signs, s.Sign)
			}
		}
	}
	add(r.signsAbout(nil, &out))
	for k := range r.sources {
		if r.sources[k].kind == "do" {
			r.sentences(int32(k), func(signs func([]sign) []sign) { add(signs(nil)) })
		}
	}
	return e
}

func examples(t testing.TB, all []labelled) []odds.Example {
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

// The weights in the program were learned from the rows that stand here, read
// with the lexicon that stands here. FIXSLATE_UPDATE=1 learns them anew, which
// takes a minute.
func TestOdds(t *testing.T) {
	all := elder(t)
	for i, l := range steps(t) {
		if !held(i) {
			all = append(all, l)
		}
	}
	lessons := examples(t, all)
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
	old, rows := examples(t, elder(t)), steps(t)
	rows = slices.DeleteFunc(rows, func(l labelled) bool { n, _ := strconv.Atoi(l.id); return held(n - 1) })
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
func count(n *[8]int, l labelled, shown func(f int, id string) bool) {
	right, wrong := 0, 0
	for f, id := range families() {
		named := slices.Contains(l.named, id)
		switch show := shown(f, id); {
		case show && named:
			right++
		case show && !slices.Contains(l.neutral, id):
			wrong++
		}
	}
	if l.must {
		n[1]++
		n[0] += min(right, 1)
	}
	n[2] += right
	n[3] += len(l.named)
	n[4] += right
	n[5] += right + wrong
	if len(l.named) == 0 {
		n[7]++
		if wrong == 0 {
			n[6]++
		}
	}
}
