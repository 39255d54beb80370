package claim

import (
	"encoding/binary"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// lesson is a number of a labelled sentence: what speaks for each offer, and which are
// right; the last of all is that none is.
type lesson struct {
	offers [][]feature
	right  []bool
	none   bool
}

// lessons reads labelled sentences. A number goes on as its label has it, so that the
// numbers behind it are seen as they will be.
func lessons(all []row) []lesson {
	var list []lesson
	r := &reader{money: pounds}
	for _, labelled := range all {
		left := slices.Clone(labelled.Values)
		r.teacher = func(r *reader, c *number) int { return teach(r, c, &left, &list) }
		for _, span := range r.prose.Sentences(labelled.Text) {
			r.turn(span.Of(labelled.Text))
			if len(r.words) > 0 && !r.asks && !r.isTalk() {
				r.figured()
			}
		}
	}
	return list
}

type label = struct {
	Value any
	Unit  string
}

// labels takes from left what a list of values fills, false if it does not fill any.
func fills(values []Value, left []label) ([]label, bool) {
	rest := slices.Clone(left)
	for _, g := range values {
		at := slices.IndexFunc(rest, func(l label) bool {
			n, number := l.Value.(float64)
			return number && g.Part == "" && same(n, l.Unit, g) || !number && g.Part == l.Value
		})
		if at < 0 {
			return left, false
		}
		rest = slices.Delete(rest, at, at+1)
	}
	return rest, true
}

func teach(r *reader, c *number, left *[]label, list *[]lesson) int {
	var l lesson
	values := len(r.values)
	found := r.found
	best := -1
	var rest []label
	for i := range r.offers {
		var keys []feature
		r.taught = &keys
		for _, f := range r.scene {
			r.weight(f)
		}
		r.weigh(&r.offers[i])
		r.taught = nil
		l.offers = append(l.offers, keys)
		r.settle(c, &r.offers[i])
		without, ok := fills(r.values[values:], *left)
		r.values, r.found = r.values[:values], found
		l.right = append(l.right, ok)
		if ok && best < 0 {
			best, rest = i, without
		}
	}
	if best >= 0 {
		*left = rest
	} else if !slices.ContainsFunc(*left, func(l label) bool {
		n, ok := l.Value.(float64)
		return ok && math.Abs(n-c.v) < 1e-3
	}) {
		l.none = true
	} else {
		return -1 // claimed, and not among the offers
	}
	*list = append(*list, l)
	return best
}

// schooling are the amounts of learning.
type schooling struct {
	rounds             int
	rate, shrink, drop float64
}

// learn makes weights of lessons: the mean logarithm of the chance of the right offers
// is raised by AdaGrad (Duchi and others 2011), with a pull towards nothing.
func learn(list []lesson, how schooling) []byte {
	w := make([]float64, weightsSize)
	sq := make([]float64, weightsSize)
	rng := rand.New(rand.NewPCG(7, 7))
	mean := make([]float64, weightsSize)
	for round := range how.rounds {
		for _, n := range rng.Perm(len(list)) {
			l := list[n].without(how.drop, rng)
			odds := chances(w, l)
			// of the right ones alone
			sum := 0.0
			if l.none {
				sum = odds[len(l.offers)]
			}
			for i, ok := range l.right {
				if ok {
					sum += odds[i]
				}
			}
			for i, keys := range l.offers {
				g := -odds[i]
				if l.right[i] && sum > 0 {
					g += odds[i] / sum
				}
				if math.Abs(g) < 1e-4 {
					continue
				}
				for _, f := range keys {
					at := f.slot()
					d := g - how.shrink*w[at]
					sq[at] += d * d
					w[at] += how.rate * d / (math.Sqrt(sq[at]) + 1e-3)
				}
			}
		}
		if round >= how.rounds/2 {
			for i, v := range w {
				mean[i] += v
			}
		}
	}
	for i := range mean {
		w[i] = mean[i] / float64(how.rounds-how.rounds/2)
	}
	table := make([]byte, weightsSize)
	for i, v := range w {
		table[i] = byte(max(0, min(255, math.Round(v/weightStep)+noWeight)))
	}
	return table
}

// without is a lesson that a share of the features is left out of, for all offers alike.
func (l lesson) without(share float64, rng *rand.Rand) *lesson {
	salt, most := feature(rng.Uint32()), feature(share*(1<<32-1))
	offers := make([][]feature, len(l.offers))
	for i, keys := range l.offers {
		for _, f := range keys {
			if f.with(salt) >= most {
				offers[i] = append(offers[i], f)
			}
		}
	}
	l.offers = offers
	return &l
}

// chances are those of the offers and of none.
func chances(w []float64, l *lesson) []float64 {
	odds := make([]float64, len(l.offers)+1)
	most := 0.0
	for i, keys := range l.offers {
		for _, f := range keys {
			odds[i] += w[f.slot()]
		}
		most = max(most, odds[i])
	}
	sum := 0.0
	for i := range odds {
		odds[i] = math.Exp(odds[i] - most)
		sum += odds[i]
	}
	for i := range odds {
		odds[i] /= sum
	}
	return odds
}

// right says whether a table of weights decides a lesson as its label has it.
func right(table []byte, l *lesson) bool {
	best, most := -1, 0
	for i, keys := range l.offers {
		sum := 0
		for _, f := range keys {
			sum += int(table[f.slot()]) - noWeight
		}
		if sum > most {
			best, most = i, sum
		}
	}
	if best < 0 {
		return l.none
	}
	return l.right[best]
}

// taughtRows are the sentences that the weights are learned from: labelledRows, those of
// the tables of values, and those that claim nothing. The last two are held to the word by
// tests of their own, so they count four times.
func taughtRows(t *testing.T) []row {
	all := labelledRows(t)
	for line := range strings.Lines(string(read(t, "testdata/values.tsv"))) {
		text, want, _ := strings.Cut(strings.TrimRight(line, "\n"), "\t")
		all = append(all, slices.Repeat([]row{stating(text, want)}, 4)...)
	}
	for _, r := range quietRows(t) {
		all = append(all, slices.Repeat([]row{r}, 4)...)
	}
	return all
}

// quietRows are sentences that claim nothing.
func quietRows(t *testing.T) []row {
	var all []row
	for line := range strings.Lines(string(read(t, "testdata/quiet.txt"))) {
		all = append(all, row{Text: strings.TrimSpace(line)})
	}
	return all
}

// labelledRows are the sentences of each set that may be read.
func labelledRows(t *testing.T) []row {
	all, _ := halves(rows(t, "testdata/blind.jsonl"))
	for i, r := range rows(t, "testdata/spoken.jsonl") {
		if (i+1)%3 != 0 {
			all = append(all, r)
		}
	}
	for _, name := range [...]string{"bench", "later", "varied", "trades"} {
		read, _ := thirds(rows(t, "testdata/"+name+".jsonl"))
		all = append(all, read...)
	}
	all = append(all, rows(t, "testdata/first.jsonl")...)
	all = append(all, rows(t, "testdata/sentences.jsonl")...)
	return all
}

// stating is a row of a text and the values that it states, as they are printed.
func stating(text, want string) row {
	r := row{Text: text}
	for v := range strings.SplitSeq(want, ", ") {
		number, unit, _ := strings.Cut(v, " ")
		if n, err := strconv.ParseFloat(number, 64); err == nil {
			r.Values = append(r.Values, label{n, unit})
		} else if v != "" {
			r.Values = append(r.Values, label{v, ""})
		}
	}
	return r
}

// The weights are those of the labelled sentences as the reader sees them now: the file
// ends with a sum of the lessons that it was learned from. FIXSLATE_UPDATE=1 learns anew.
func TestWeights(t *testing.T) {
	wide, _ := thirds(rows(t, "testdata/wide.jsonl"))
	list := lessons(append(taughtRows(t), wide...))
	keep(t, "weights.bin", learned, list)
}

// keep holds a file of weights to its lessons, or learns it anew where that is asked for.
func keep(t *testing.T, name, kept string, list []lesson) {
	t.Helper()
	stamp := binary.LittleEndian.AppendUint64(nil, sumOf(list))
	if kept[weightsSize:] == string(stamp) {
		return
	}
	if os.Getenv("FIXSLATE_UPDATE") == "" {
		t.Fatalf("%s is not what the sentences teach; go generate ./plan/claim learns it anew", name)
	}
	if err := os.WriteFile(name, append(learn(list, usually), stamp...), 0o644); err != nil {
		t.Fatal(err)
	}
}

// sumOf is FNV-1a over what lessons hold.
func sumOf(list []lesson) uint64 {
	h := fnv.New64a()
	for i := range list {
		for k, keys := range list[i].offers {
			for _, f := range keys {
				h.Write(binary.LittleEndian.AppendUint32(nil, uint32(f)))
			}
			h.Write([]byte{byte(oneIf(list[i].right[k])), byte(oneIf(list[i].none))})
		}
	}
	return h.Sum64()
}

// FIXSLATE_CROSS=1 scores the sentences of the widest set that may be read by weights
// that were learned without them: the figure by which features and amounts are chosen.
func TestAcross(t *testing.T) {
	if os.Getenv("FIXSLATE_CROSS") == "" {
		t.Skip("FIXSLATE_CROSS is not set: nothing was cross-validated")
	}
	const folds = 4
	others := taughtRows(t)
	wide, _ := thirds(rows(t, "testdata/wide.jsonl"))
	before := learned
	defer func() { learned = before }()
	var needs, values tally
	decided, all := 0, 0
	for k := range folds {
		var held []row
		taught := slices.Clone(others)
		for _, r := range wide {
			if int(hashOf(r.Text)>>8)%folds == k {
				held = append(held, r)
			} else {
				taught = append(taught, r)
			}
		}
		table := learn(lessons(taught), usually)
		for _, l := range lessons(held) {
			all++
			if right(table, &l) {
				decided++
			}
		}
		learned = string(table)
		for _, r := range held {
			c := Sentence(r.Text)
			needs.count(r.Needs, c.NeedsEvidence)
			hit := rightValues(r, c)
			values.hit += hit
			values.miss += len(r.Values) - hit
			values.wrong += len(c.Values) - hit
		}
	}
	share := float64(values.hit) / float64(values.hit+values.miss+values.wrong)
	t.Logf("%d numbers decided right %.3f; values right %.3f (recall %.3f precision %.3f); evidence recall %.3f precision %.3f",
		all, float64(decided)/float64(all), share, values.recall(), values.precision(), needs.recall(), needs.precision())
}

// usually are the amounts that are learned with: chosen by TestAcross.
var usually = schooling{30, 0.05, 1e-2, 0.5}
