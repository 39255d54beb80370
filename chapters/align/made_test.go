package align

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"fixslate/chapters/captions"
	"fixslate/plan"
	"fixslate/plan/prose"
	"fixslate/plan/timing"
)

// Edits made from plans with a known truth. Presenters talk beside the work,
// leave steps out, move them, take them again and say them in other words;
// captions mis-hear them and cut them anew. Plans, variants and talk are
// invented; the kinds and shares of errors follow what is published of
// automatic captions (word error rates of 3 to 30 %: Kuhn et al. 2024, doi
// 10.1145/3636513) and, where nothing is, common practice.

// tale is a plan with the other words its presenter may use.
type tale struct {
	name   string
	plan   *plan.Plan
	timed  timing.Timeline
	spoken [][]string // of each step: as planned, then otherwise
}

// readTale reads a file of testdata/made: "# id: Title", the planned words, and
// a line for each other way to say them.
func readTale(t testing.TB, name string) tale {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join("testdata", "made", name+".txt"))
	if err != nil {
		t.Fatal(err)
	}
	head, rest, _ := strings.Cut(strings.TrimSpace(string(raw)), "\n")
	var src strings.Builder
	fmt.Fprintf(&src, "[video]\ntitle = %q\n", head)
	c := tale{name: name}
	for _, block := range strings.Split(rest, "# ")[1:] {
		lines := strings.Split(strings.TrimSpace(block), "\n")
		id, title, _ := strings.Cut(lines[0], ": ")
		fmt.Fprintf(&src, "[[step]]\nid = %q\ntitle = %q\nsay = %q\n", id, title, lines[1])
		c.spoken = append(c.spoken, lines[1:])
	}
	c.plan, c.timed = decodePlan(t, src.String())
	for i := range c.plan.Steps {
		c.spoken[i][0] = speech(c.plan.Steps[i].Lines)
	}
	return c
}

// sampleTale is one of the project's samples, read out as written.
func sampleTale(t testing.TB, name string) tale {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join("..", "..", "samples", name))
	if err != nil {
		t.Fatal(err)
	}
	c := tale{name: name}
	c.plan, c.timed = decodePlan(t, string(raw))
	c.spoken = make([][]string, len(c.plan.Steps))
	for _, s := range c.timed.Steps {
		var said []string
		for _, b := range s.Beats {
			if b.Spoken() {
				said = append(said, b.Speak)
			}
		}
		c.spoken[s.Index] = []string{strings.Join(said, " ")}
	}
	return c
}

func speech(lines []plan.Line) string {
	var said []string
	for _, l := range lines {
		if l.Kind == plan.Spoken {
			said = append(said, l.Speak)
		}
	}
	return strings.Join(said, " ")
}

// manner is how an edit is made.
type manner struct {
	errors   float64 // share of words mis-heard
	talk     float64 // share of words beside the work
	drops    int     // steps left out
	moves    int     // steps moved
	retakes  int
	remarks  int     // second sentences said in another step
	asIs     float64 // share of steps read out as planned
	long     bool    // talk beside the work may run to a minute
	rolling  bool    // captions roll: each cue shows the line before again
	stops    bool    // captions have capitals and full stops
	letters  int     // characters a cue holds
	drift    float64 // the captions' clock against the film's
	together float64 // silence over which a cue is cut, seconds
}

// anyManner draws one.
func anyManner(r *rand.Rand) manner {
	pick := func(of ...float64) float64 { return of[r.IntN(len(of))] }
	return manner{
		errors: pick(0.03, 0.08, 0.15, 0.22, 0.3), talk: pick(0, 0.2, 0.2, 0.4), asIs: pick(0.15, 0.15, 0.3, 0.6),
		drops: r.IntN(4), moves: r.IntN(3), retakes: r.IntN(3), remarks: r.IntN(2),
		long: r.IntN(5) == 0, rolling: r.IntN(6) == 0, stops: r.IntN(5) == 0,
		letters: 36 + r.IntN(50), drift: 1 + (r.Float64()-0.5)*0.004, together: 0.4 + r.Float64()*1.4,
	}
}

// said is a word of the film.
type said struct {
	text       string
	start, end float64
	stop       bool   // a sentence ends with it
	meant      string // what was really said, where the captions have another word
}

// film makes one edit.
type film struct {
	r     *rand.Rand
	m     manner
	words []said
	now   float64
	rate  float64 // characters a second
	vocab []string
	talk  []string // what is left to say beside the work: nothing is said twice
}

var leads = []string{"okay", "so", "okay so", "next", "now", "and then", "right", "next up", "alright", "moving on", "and now", "then"}

// make makes an edit of a tale. talk is what may be said beside the work,
// vocab what words may be mis-heard as.
func (c tale) make(seed uint64, m manner, talk, vocab []string) trial {
	f := &film{r: rand.New(rand.NewPCG(seed, 77)), m: m, vocab: vocab, talk: slices.Clone(talk)}
	f.r.Shuffle(len(f.talk), func(i, j int) { f.talk[i], f.talk[j] = f.talk[j], f.talk[i] })
	f.rate = 12 + f.r.Float64()*4.5
	f.now = f.r.Float64() * 4
	out := trial{name: fmt.Sprintf("%s/%d", c.name, seed), plan: c.plan, timed: c.timed, truth: truth{starts: map[string]float64{}}}
	order := f.order(len(c.spoken), &out, c.plan)
	retake := map[int]bool{}
	for range m.retakes {
		retake[order[f.r.IntN(len(order))]] = true
	}
	texts := map[int]string{}
	for _, i := range order {
		v := 0
		if n := len(c.spoken[i]); n > 1 && f.r.Float64() >= m.asIs {
			v = 1 + f.r.IntN(n-1)
		}
		texts[i] = c.spoken[i][v]
	}
	after := f.remarks(order, texts)
	for _, i := range order {
		f.step(c, i, texts[i], retake[i], &out)
		if after[i] != "" {
			f.now += 0.2 + f.r.Float64()*0.4
			f.say(after[i])
		}
	}
	out.cues = f.cues()
	for _, w := range f.words {
		if w.meant != "" {
			out.truth.misheard = append(out.truth.misheard, misheard{w.meant, w.text, w.start * m.drift})
		}
	}
	return out
}

// order says which steps come, in which order.
func (f *film) order(n int, out *trial, p *plan.Plan) []int {
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	for range min(f.m.drops, n-2) {
		k := f.r.IntN(len(order))
		out.truth.dropped = append(out.truth.dropped, p.Steps[order[k]].ID)
		order = slices.Delete(order, k, k+1)
	}
	for range f.m.moves {
		from := f.r.IntN(len(order))
		step := order[from]
		order = slices.Delete(order, from, from+1)
		to := max(0, min(len(order), from+[]int{-2, -1, 1, 2}[f.r.IntN(4)]))
		order = slices.Insert(order, to, step)
	}
	return order
}

// remarks takes the last sentence of some steps to the end of another.
func (f *film) remarks(order []int, texts map[int]string) map[int]string {
	after := map[int]string{}
	for range f.m.remarks {
		i := order[f.r.IntN(len(order))]
		j := order[f.r.IntN(len(order))]
		s := prose.Sentences(texts[i])
		if n := len(s) - 1; n > 0 && i != j && after[j] == "" && len(s[n].Of(texts[i])) < 120 {
			after[j] = s[n].Of(texts[i])
			texts[i] = strings.TrimSpace(texts[i][:s[n].Start])
		}
	}
	return after
}

func (f *film) step(c tale, i int, text string, again bool, out *trial) {
	f.now += 0.3 + f.r.ExpFloat64()*1.2
	if f.r.IntN(3) == 0 {
		f.now += f.r.Float64() * 15 // hands at work
	}
	if f.r.Float64() < f.m.talk*2 {
		f.beside(out)
		f.now += 0.3 + f.r.Float64()*1.5
	}
	start := f.now
	if f.r.IntN(2) == 0 {
		f.say(leads[f.r.IntN(len(leads))])
	}
	if again {
		fields := strings.Fields(text)
		fields = fields[:min(len(fields), 30)]
		f.say(strings.Join(fields[:min(len(fields), max(3, len(fields)*(3+f.r.IntN(8))/10))], " "))
		f.now += 0.6 + f.r.Float64()*2
		out.truth.retakes = append(out.truth.retakes, retake{c.plan.Steps[i].ID, f.now * f.m.drift})
		if f.r.IntN(2) == 0 {
			f.say([]string{"okay again", "let me say that again", "sorry once more", "no wait"}[f.r.IntN(4)])
		}
	}
	out.truth.starts[c.plan.Steps[i].ID] = start * f.m.drift
	fields := strings.Fields(text)
	if f.r.Float64() < f.m.talk && len(fields) > 8 {
		cut := 4 + f.r.IntN(len(fields)-6)
		f.say(strings.Join(fields[:cut], " "))
		f.now += 0.15 + f.r.Float64()*0.5
		f.beside(out)
		f.now += 0.15 + f.r.Float64()*0.5
		fields = fields[cut:]
	}
	f.say(strings.Join(fields, " "))
}

// beside talks beside the work: one sentence, or up to a minute of them.
func (f *film) beside(out *trial) {
	n := 1
	if f.m.long {
		n = 1 + f.r.IntN(12)
	}
	start := f.now
	n = min(n, len(f.talk))
	for _, text := range f.talk[:n] {
		f.say(text)
		f.now += 0.2
	}
	f.talk = f.talk[n:]
	if n == 0 {
		return
	}
	out.truth.added = append(out.truth.added, [2]float64{start * f.m.drift, f.now * f.m.drift})
}

// say says words, mis-heard here and there.
func (f *film) say(text string) {
	fields := strings.Fields(text)
	for i, w := range fields {
		length := (float64(len(w)) + 1) / f.rate * (0.8 + 0.4*f.r.Float64())
		stop := i+1 == len(fields) || strings.ContainsAny(w[len(w)-1:], ".?!:;")
		heard := f.mishear(w)
		if heard != "" {
			word := said{text: heard, start: f.now, end: f.now + length*0.9, stop: stop}
			if plain := strings.ToLower(strings.Trim(w, ".,;:?!")); !strings.HasPrefix(heard, w) {
				word.meant = plain
			}
			f.words = append(f.words, word)
		}
		f.now += length
		if stop && i+1 < len(fields) || strings.HasSuffix(w, ",") && f.r.IntN(2) == 0 {
			f.now += 0.1 + f.r.Float64()*0.5
		}
	}
}

// mishear gives what the captions make of a word; "" for nothing.
func (f *film) mishear(w string) string {
	if f.r.Float64() >= f.m.errors {
		return w
	}
	switch x := f.r.Float64(); {
	case x < 0.2 || x < 0.4 && len(w) < 4:
		return ""
	case x < 0.5:
		return w + " " + []string{"the", "a", "it", "is", "and", "uh", "of", "in"}[f.r.IntN(8)]
	case x < 0.6 && len(w) > 5:
		cut := 2 + f.r.IntN(len(w)-4)
		return w[:cut] + " " + w[cut:]
	}
	return f.confuse(w)
}

// confuse gives a word spelled like another: one of four drawn from the
// vocabulary's nearest by letters, or the word with letters changed.
func (f *film) confuse(w string) string {
	plain := strings.ToLower(strings.Trim(w, ".,;:?!"))
	best, cost := "", 1<<30
	for range 250 {
		v := f.vocab[f.r.IntN(len(f.vocab))]
		if v == plain {
			continue
		}
		if d := letters(plain, v); d < cost {
			best, cost = v, d
		}
	}
	if cost*10 <= len(plain)*7 || f.r.IntN(3) == 0 {
		return best
	}
	b := []byte(plain)
	for range 1 + len(b)/4 {
		swap := map[byte]string{'b': "pdv", 'p': "bt", 't': "dkp", 'd': "tb", 'k': "gct", 'c': "gk", 'g': "kd", 'f': "vth", 'v': "fb", 's': "zf", 'm': "n", 'n': "m", 'l': "rw", 'r': "lw", 'a': "eo", 'e': "ia", 'i': "ea", 'o': "ua", 'u': "oa"}
		at := f.r.IntN(max(1, len(b)))
		if len(b) > 0 {
			if s := swap[b[at]]; s != "" {
				b[at] = s[f.r.IntN(len(s))]
			}
		}
	}
	return string(b)
}

// letters is the edit distance of two spellings (Levenshtein 1966).
func letters(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		corner := row[0]
		row[0]++
		for j := range len(b) {
			cost := corner
			if a[i] != b[j] {
				cost++
			}
			corner, row[j+1] = row[j+1], min(cost, row[j+1]+1, row[j]+1)
		}
	}
	return row[len(b)]
}

// cues cuts the words into captions.
func (f *film) cues() []captions.Cue {
	var cues []captions.Cue
	var line []string
	var from, to float64
	before := ""
	flush := func() {
		if len(line) == 0 {
			return
		}
		text := strings.Join(line, " ")
		shown := text
		if f.m.rolling && before != "" {
			shown = before + "\n" + text
		}
		at := func(s float64) time.Duration { return time.Duration(s * f.m.drift * float64(time.Second)) }
		cues = append(cues, captions.Cue{Start: at(from), End: at(to), Text: shown})
		before, line = text, nil
	}
	capital := true
	for i, w := range f.words {
		text := strings.ToLower(strings.Trim(w.text, ".,;:?!"))
		if f.m.stops {
			if capital && text != "" {
				text = strings.ToUpper(text[:1]) + text[1:]
			}
			if capital = w.stop; capital {
				text += "."
			}
		}
		if len(line) > 0 && (w.start-f.words[i-1].end > f.m.together || len(strings.Join(line, " "))+len(text) > f.m.letters || f.m.stops && f.words[i-1].stop) {
			flush()
		}
		if len(line) == 0 {
			from = w.start
		}
		line = append(line, text)
		to = w.end
	}
	flush()
	return cues
}

// makings are tales and what surrounds them, in two halves that share nothing
// but the generator.
type makings struct {
	tales []tale
	talk  []string
	vocab []string
	seed  uint64
}

func readMakings(t testing.TB) (tune, held makings) {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join("testdata", "made", "talk.txt"))
	if err != nil {
		t.Fatal(err)
	}
	talk := strings.Split(strings.TrimSpace(strings.ToLower(string(raw))), "\n")
	tune = makings{talk: talk[:len(talk)/2], seed: 1000}
	held = makings{talk: talk[len(talk)/2:], seed: 900000}
	for _, name := range []string{"hood", "hub"} {
		tune.tales = append(tune.tales, readTale(t, name))
	}
	for _, name := range []string{"roller", "pump"} {
		held.tales = append(held.tales, readTale(t, name))
	}
	tune.tales = append(tune.tales, sampleTale(t, filepath.Join("van-blower", "plan.toml")))
	held.tales = append(held.tales, sampleTale(t, filepath.Join("washer-pump", "plan.toml")))
	for _, m := range []*makings{&tune, &held} {
		seen := map[string]bool{}
		for _, text := range append(slices.Clone(m.talk), commonWords) {
			for _, w := range strings.Fields(text) {
				seen[w] = true
			}
		}
		for _, c := range m.tales {
			for _, ways := range c.spoken {
				for _, text := range ways {
					for _, w := range prose.Words(text) {
						seen[strings.ToLower(w.Of(text))] = true
					}
				}
			}
		}
		for w := range seen {
			m.vocab = append(m.vocab, w)
		}
		slices.Sort(m.vocab)
	}
	return tune, held
}

// trials makes n edits, the tales in turn.
func (m makings) trials(n int) []trial {
	var all []trial
	for i := range n {
		seed := m.seed + uint64(i)
		all = append(all, m.tales[i%len(m.tales)].make(seed, anyManner(rand.New(rand.NewPCG(seed, 5))), m.talk, m.vocab))
	}
	return all
}

func TestQualityMade(t *testing.T) {
	tune, held := readMakings(t)
	out := tallyHeading()
	for _, half := range []struct {
		name string
		made makings
	}{{"tuned on", tune}, {"held out", held}} {
		byTale := map[string]*tally{}
		var sum tally
		for _, c := range half.made.trials(90) {
			name, _, _ := strings.Cut(c.name, "/")
			if byTale[name] == nil {
				byTale[name] = &tally{}
			}
			m := Read(c.plan, c.timed, c.cues)
			byTale[name].add(c, m)
			sum.add(c, m)
		}
		for _, c := range half.made.tales {
			name, _, _ := strings.Cut(c.name, "/")
			out += byTale[name].line(half.name + " " + name)
		}
		out += sum.line(half.name + ", all")
	}
	t.Log("\n" + out)
}
