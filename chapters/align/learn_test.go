package align

import (
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The words of phrases.txt and chatter.txt, and what the signs at a parting say for a
// step that begins there, are learned by gradient: how often a word or sign truly stands
// where a step begins, or in talk beside the work, less how often the sums believe it
// (as for conditional random fields, Lafferty et al. 2001, with the sums' other weights
// as they are). They are drawn to what they were, so that few edits change them little.

const (
	learnRounds = 8
	learnRate   = 0.15 // of AdaGrad (Duchi et al. 2011)
	learnPull   = 15.0 // occurrences that what was is worth; an edit comes with three or four noises
	learnPlans  = 4    // plans in which a new word must come
	learnCommon = 1.0 / (1 << 14)
)

// lesson is an edit to learn from.
type lesson struct {
	trial
	from string // its plan; "" for one whose words are made, from which signs alone are learned
}

// lessons are the edits that the lists are learned from.
func lessons(t testing.TB) []lesson {
	tune, held := readMakings(t)
	vocab := append(tune.vocab, held.vocab...)
	var all []lesson
	for _, set := range []string{"read", "apart", "tuner", "more"} {
		for _, c := range readTolds(t, set) {
			for k := range c.tellings {
				for i := range 3 {
					seed := 190000 + uint64(100*k+i)
					m := anyManner(rand.New(rand.NewPCG(seed, 6)))
					if set != "read" {
						m = m.cut(i + k)
					}
					all = append(all, lesson{c.make(k, seed, m, vocab), c.name})
				}
			}
		}
	}
	for _, x := range append(readTrials(t, "testdata/spoken/read-*"), kept(t, "dish-valve")...) {
		plan := strings.TrimRight(x.name, "-L0123456789")
		all = append(all, lesson{x, plan}, lesson{x, plan})
	}
	for k, m := range levels() {
		for _, half := range []makings{tune, held} {
			for n, c := range half.tales[:4] {
				seed := 790000 + uint64(1000*n+100*k)
				all = append(all, lesson{trial: c.make(seed, m, half.talk, half.vocab)})
				all = append(all, lesson{trial: c.make(seed, anyManner(rand.New(rand.NewPCG(seed, 5))), half.talk, half.vocab)})
			}
		}
	}
	return all
}

// lists holds the weights of each list by word; those of signs by number.
type lists map[string]map[string]float64

func (l lists) add(list, word string, x float64) {
	if word == "" {
		return
	}
	if l[list] == nil {
		l[list] = map[string]float64{}
	}
	l[list][word] += x
}

// listsOf takes them out of the weights.
func listsOf(w weights) lists {
	l := lists{"signs": {"open": w.open}}
	for n, x := range w.begin {
		l["signs"][strconv.Itoa(n)] = x
	}
	for name, words := range map[string]map[string]float64{"begin": w.phrases.begin, "second": w.phrases.second, "end": w.phrases.end, "chat": w.phrases.chat} {
		l[name] = maps.Clone(words)
	}
	return l
}

// set puts them into the weights.
func (l lists) set(w *weights) {
	p := *w.phrases
	p.begin, p.second, p.end, p.chat = l["begin"], l["second"], l["end"], l["chat"]
	w.phrases, w.open = &p, l["signs"]["open"]
	for n := range w.begin {
		w.begin[n] = l["signs"][strconv.Itoa(n)]
	}
}

// slope adds up what stands at true beginnings and in true talk of an edit, less what
// the sums expect there; seen notes what stands at true ones, by plan.
func (l lists) slope(x lesson, w weights, seen map[string]map[string]bool) {
	s := locate(x.plan, x.timed, x.cues, w)
	begins := s.trueBeginnings(x.trial)
	for _, entries := range s.odds.entries {
		for _, e := range entries {
			begins[e.word] -= e.chance
		}
	}
	key := func(i int) string {
		if i < 0 || i >= len(s.h.keys) || len(s.h.keys[i]) == 0 {
			return ""
		}
		return s.h.keys[i][0]
	}
	for i, word := range s.Words {
		l.add("signs", "open", begins[i])
		for n, v := range s.h.signs(i, w.phrases) {
			l.add("signs", strconv.Itoa(n), begins[i]*v)
		}
		if x.from == "" {
			continue
		}
		add := func(list, word string, d float64) {
			l.add(list, word, d)
			if d > 0 {
				at := list + " " + word
				if seen[at] == nil {
					seen[at] = map[string]bool{}
				}
				seen[at][x.from] = true
			}
		}
		add("begin", key(i), begins[i])
		add("second", key(i+1), begins[i])
		add("end", key(i-1), begins[i])
		talk := -s.odds.talk[i]
		if mid := (word.Start + word.End) / 2; slices.ContainsFunc(x.truth.added, func(a [2]float64) bool { return mid >= a[0]-0.2 && mid <= a[1]+0.2 }) {
			talk++
		}
		add("chat", key(i), talk*w.chat)
		if key(i-1) != "" && key(i) != "" {
			last := s.h.keys[i-1]
			add("chat", last[len(last)-1]+"_"+key(i), talk*w.chat)
		}
	}
}

// trueBeginnings gives 1 for each word with which a step truly begins or goes on after
// another, else 0.
func (s *settler) trueBeginnings(x trial) []float64 {
	at := make([]float64, len(s.Words))
	mark := func(time float64) {
		if len(at) > 0 {
			near := s.wordAt(time)
			if near+1 < len(at) && s.Words[near+1].Start-time < time-s.Words[near].Start {
				near++
			}
			at[near] = 1
		}
	}
	if x.truth.spans == nil {
		for _, start := range x.truth.starts {
			mark(start)
		}
	}
	last := -1
	for _, span := range x.truth.spans {
		if span.step >= 0 && span.step != last {
			mark(span.start)
			last = span.step
		}
	}
	return at
}

// learn learns the lists.
func learn(from []lesson, w weights) weights {
	was, now, squares := listsOf(w), listsOf(w), lists{}
	for range learnRounds {
		slopes, seen := lists{}, map[string]map[string]bool{}
		for _, x := range from {
			slopes.slope(x, w, seen)
		}
		for list, words := range slopes {
			for word, d := range words {
				if _, old := was[list][word]; !old && (len(seen[list+" "+word]) < learnPlans || !everyday(word)) {
					continue
				}
				d -= learnPull * (now[list][word] - was[list][word])
				squares.add(list, word, d*d)
				now.add(list, word, learnRate*d/math.Sqrt(1+squares[list][word]))
			}
		}
		now.set(&w)
	}
	return w
}

// everyday holds for words of which no trade is made.
func everyday(words string) bool {
	for word := range strings.SplitSeq(words, "_") {
		if english().share(word) < learnCommon {
			return false
		}
	}
	return true
}

// FIXSLATE_LEARN=1 learns the lists and writes them; the signs' weights it prints, for
// weights.go. Otherwise it learns a round from a few edits, which must make their truth
// likelier.
func TestLearn(t *testing.T) {
	w := usualWeights()
	if os.Getenv("FIXSLATE_LEARN") == "" {
		var few []lesson
		for _, x := range readTrials(t, "testdata/spoken/read-*")[:4] {
			few = append(few, lesson{x, x.name})
		}
		before, after := 0.0, 0.0
		learned := learn(few, w)
		for _, x := range few {
			before += truthOf(x, w)
			after += truthOf(x, learned)
		}
		if after <= before {
			t.Errorf("the truth is no likelier after learning: %.3f, was %.3f", after, before)
		}
		return
	}
	w = learn(lessons(t), w)
	p := w.phrases
	writeWeighed(t, "phrases.txt", "%.2f", 0.05, []string{"begin", "second", "end", "aside", "talk"}, []map[string]float64{p.begin, p.second, p.end, p.aside, p.talk})
	writeWeighed(t, "chatter.txt", "%.1f", 0.1, []string{"chat"}, []map[string]float64{p.chat})
	t.Logf("open: %.3g, begin: signs%s", w.open, strings.ReplaceAll(fmt.Sprintf("%.3g", w.begin), " ", ", "))
}

// truthOf is the logarithm of the chance of an edit's true starts.
func truthOf(x lesson, w weights) float64 {
	s := locate(x.plan, x.timed, x.cues, w)
	sum := 0.0
	for i, st := range s.Steps {
		start, said := x.truth.starts[st.ID]
		if !said {
			continue
		}
		chance := 0.01
		for _, e := range s.odds.entries[i] {
			if math.Abs(s.Words[e.word].Start-start) <= nearTime {
				chance += e.chance
			}
		}
		sum += math.Log(chance)
	}
	return sum
}

// writeWeighed writes lists as weighed reads them, below the file's head.
func writeWeighed(t *testing.T, file, format string, step float64, names []string, lists []map[string]float64) {
	raw, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	for line := range strings.Lines(string(raw)) {
		if strings.HasPrefix(line, "#") {
			out.WriteString(line)
		}
	}
	for n, name := range names {
		words := map[int][]string{}
		for word, x := range lists[n] {
			if x := int(math.Round(x / step)); x != 0 {
				words[x] = append(words[x], word)
			}
		}
		for _, x := range slices.Backward(slices.Sorted(maps.Keys(words))) {
			head := name + " " + fmt.Sprintf(format, float64(x)*step)
			line := head
			for _, word := range slices.Sorted(slices.Values(words[x])) {
				if len(line)+len(word) > 88 {
					fmt.Fprintln(&out, line)
					line = head
				}
				line += " " + word
			}
			fmt.Fprintln(&out, line)
		}
	}
	if err := os.WriteFile(file, []byte(out.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}
