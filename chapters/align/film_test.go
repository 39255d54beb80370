package align

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"time"

	"fixslate/chapters/captions"
	"fixslate/plan"
	"fixslate/plan/prose"
)

// manner is how an edit is made.
type manner struct {
	errors   float64 // share of words mis-heard
	talk     float64 // share of words beside the work
	drops    int     // steps left out
	moves    int     // steps moved
	retakes  int
	remarks  int     // second sentences said in another step
	asIs     float64 // share of steps read out as planned
	bySound  bool    // words are mis-heard as others that sound alike only
	inner    bool    // the first and the last step stay where they are
	rest     float64 // silence before each step at least, more than others have
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
	first, last := 0, 0 // steps at the ends that stay
	if f.m.inner {
		first, last = 1, 1
	}
	for range min(f.m.drops, n-2) {
		k := first + f.r.IntN(len(order)-first-last)
		out.truth.dropped = append(out.truth.dropped, p.Steps[order[k]].ID)
		order = slices.Delete(order, k, k+1)
	}
	for range f.m.moves {
		from := first + f.r.IntN(len(order)-first-last)
		step := order[from]
		order = slices.Delete(order, from, from+1)
		to := max(first, min(len(order)-last, from+[]int{-2, -1, 1, 2}[f.r.IntN(4)]))
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
	f.now += f.m.rest + 0.3 + f.r.ExpFloat64()*1.2
	if f.r.IntN(3) == 0 {
		f.now += f.r.Float64() * 15 // hands at work
	}
	if f.r.Float64() < f.m.talk*2 {
		f.beside(out)
		f.now += f.m.rest + 0.3 + f.r.Float64()*1.5
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

// confuse gives a word spelled like another, drawn from the vocabulary's
// nearest by letters, or the word with letters changed for others that sound
// alike.
func (f *film) confuse(w string) string {
	plain := strings.ToLower(strings.Trim(w, ".,;:?!"))
	if f.m.bySound {
		return f.garble(plain)
	}
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
	return f.garble(plain)
}

// soundAlike are letters that are taken for each other.
var soundAlike = map[byte]string{
	'b': "pdv", 'p': "bt", 't': "dkp", 'd': "tb", 'k': "gct", 'c': "gk", 'g': "kd", 'f': "vth", 'v': "fb", 's': "zf",
	'm': "n", 'n': "m", 'l': "rw", 'r': "lw", 'a': "eo", 'e': "ia", 'i': "ea", 'o': "ua", 'u': "oa",
}

// garble changes a letter in four.
func (f *film) garble(w string) string {
	b := []byte(w)
	for range 1 + len(b)/4 {
		if len(b) == 0 {
			break
		}
		at := f.r.IntN(len(b))
		if s := soundAlike[b[at]]; s != "" {
			b[at] = s[f.r.IntN(len(s))]
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
