package align

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"unicode"

	"fixslate/chapters/captions"
	"fixslate/plan/prose"
)

// How captions are read into words. Lengths are in seconds.
const (
	usualRate  = 14.0 // characters a second where the captions are too few to say (about 150 words a minute)
	slowest    = 6.0  // bounds of a believable rate, characters a second
	fastest    = 30.0
	longest    = 60.0 // a cue that stays longer hides when its words are said
	longShare  = 0.1  // of all words in such cues, from which they matter
	rollShare  = 0.3  // of cues that repeat the one before, from which a file rolls
	rollWords  = 2    // words a cue must repeat to count for that
	lookBehind = 40   // words of earlier cues that a rolling cue may repeat
)

// heard is the talk of an edit: its words, and what says where it halts.
type heard struct {
	words []Word
	keys  [][]string // of each word: what it is compared by, a number in words
	ends  []bool     // a sentence ends with the word
	gap   []float64  // silence before the word that the cues show
	slack []float64  // silence that hides somewhere in the word's cue, spread over its partings
	parts []int      // partings of the word's cue
	rate  float64    // spoken characters a second

	silences []float64 // the gaps, rising; nil until asked for
	marks    bool      // the captions have full stops
}

// listen reads cues into words. Labels of sounds and names of speakers are no
// words; what a rolling cue repeats is taken out.
func listen(cues []captions.Cue) (heard, []Trouble) {
	order, troubles := inOrder(cues)
	spoken := make([][]prose.Span, len(cues))
	for i, c := range cues {
		spoken[i] = spokenWords(c.Text)
	}
	repeats, rolling := repeated(cues, order, spoken)
	if rolling.Count > 0 {
		troubles = append(troubles, rolling)
		for i, n := range repeats {
			spoken[i] = spoken[i][n:]
		}
	}
	h := heard{rate: speed(cues, order, spoken)}
	number := newNumbers()
	stops, long, longWords := 0, Trouble{Kind: LongCue, Cue: -1}, 0
	shown := 0.0 // end of the talk so far
	later := starts(cues, order)
	for n, i := range order {
		if len(spoken[i]) == 0 {
			continue
		}
		start, end := cues[i].Start.Seconds(), cues[i].End.Seconds()
		end = min(end, later[n])
		if end-start > longest {
			if long.Count == 0 {
				long.Cue, long.Start = i, start
			}
			long.Count++
			longWords += len(spoken[i])
		}
		gap := 0.0
		if n := len(h.words); n > 0 {
			gap = max(0, start-shown)
			start = max(start, h.words[n-1].Start) // of two cues that start at once the second goes on
		}
		stops += h.cue(cues[i].Text, spoken[i], Word{Start: start, End: max(start, end), Cue: i}, gap)
		shown = max(shown, end)
	}
	for _, w := range h.words {
		h.keys = append(h.keys, number.keys(w.Text, h.keys))
	}
	h.marks = stops*40 > len(h.words)
	switch {
	case len(h.words) == 0:
		troubles = append(troubles, Trouble{Kind: NoWords, Cue: -1})
	case float64(longWords) > longShare*float64(len(h.words)):
		long.Share = float64(longWords) / float64(len(h.words))
		troubles = append(troubles, long)
	}
	return h, troubles
}

// starts gives for each cue of an order the first start after its own.
func starts(cues []captions.Cue, order []int) []float64 {
	later := make([]float64, len(order))
	next := math.Inf(1)
	for n := len(order) - 1; n >= 0; n-- {
		if n+1 < len(order) && cues[order[n+1]].Start > cues[order[n]].Start {
			next = cues[order[n+1]].Start.Seconds()
		}
		later[n] = next
	}
	return later
}

// cue spreads the words of a cue over its time by their characters and gives
// the number of sentence ends.
func (h *heard) cue(text string, spans []prose.Span, at Word, gap float64) int {
	total := 0
	for _, s := range spans {
		total += s.End - s.Start + 1
	}
	slack := max(0, at.End-at.Start-float64(total)/h.rate)
	done, stops := 0, 0
	for n, s := range spans {
		w := at
		w.Text, w.Span, w.Step, w.Line = s.Of(text), s, -1, -1
		w.Start = at.Start + (at.End-at.Start)*float64(done)/float64(total)
		done += s.End - s.Start + 1
		w.End = at.Start + (at.End-at.Start)*(float64(done)-0.5)/float64(total)
		h.words = append(h.words, w)
		h.parts = append(h.parts, len(spans)-1)
		if n == 0 {
			h.gap, h.slack = append(h.gap, gap), append(h.slack, 0)
		} else {
			h.gap, h.slack = append(h.gap, 0), append(h.slack, slack)
		}
		end := sentenceEnd(text[s.End:])
		h.ends = append(h.ends, end)
		if end {
			stops++
		}
	}
	return stops
}

// sentenceEnd holds where a text goes on with a mark that ends a sentence.
func sentenceEnd(rest string) bool {
	rest = strings.TrimLeft(rest, `"')]’”`)
	return rest != "" && strings.ContainsRune(".?!…", []rune(rest[:min(len(rest), 4)])[0])
}

// inOrder gives the cues by start, and tells of those that run backwards.
func inOrder(cues []captions.Cue) ([]int, []Trouble) {
	order := make([]int, len(cues))
	back := Trouble{Kind: Backwards, Cue: -1}
	for i := range cues {
		order[i] = i
		if cues[i].End < cues[i].Start || i > 0 && cues[i].Start < cues[i-1].Start {
			if back.Count == 0 {
				back.Cue, back.Start = i, cues[i].Start.Seconds()
			}
			back.Count++
		}
	}
	if back.Count == 0 {
		return order, nil
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(cues[a].Start, cues[b].Start) })
	back.Share = float64(back.Count) / float64(len(cues))
	return order, []Trouble{back}
}

// spokenWords gives the words of a cue's text but for labels in brackets.
func spokenWords(text string) []prose.Span {
	spans := prose.Words(text)
	if !strings.ContainsAny(text, "[(♪") {
		return spans
	}
	depth, at := 0, 0
	return slices.DeleteFunc(spans, func(s prose.Span) bool {
		for ; at < s.Start; at++ {
			switch text[at] {
			case '[', '(':
				depth++
			case ']', ')':
				depth = max(0, depth-1)
			}
		}
		return depth > 0
	})
}

// repeated counts the words at the head of each cue that the cues before it
// have shown, and says whether the file rolls. Where it does not, a repeat is
// speech.
func repeated(cues []captions.Cue, order []int, spoken [][]prose.Span) ([]int, Trouble) {
	repeats := make([]int, len(cues))
	var tail, now []string
	rolls := Trouble{Kind: Rolling, Cue: -1}
	worded := 0
	for _, i := range order {
		now = now[:0]
		for _, s := range spoken[i] {
			now = append(now, prose.Fold(s.Of(cues[i].Text)))
		}
		if len(now) > 0 {
			worded++
		}
		k := overlap(tail, now)
		repeats[i] = k
		if k >= rollWords || k > 0 && k == len(now) {
			if rolls.Count == 0 {
				rolls.Cue, rolls.Start = i, cues[i].Start.Seconds()
			}
			rolls.Count++
		}
		tail = append(tail, now[k:]...)
		tail = tail[max(0, len(tail)-lookBehind):]
	}
	if float64(rolls.Count) <= rollShare*float64(worded) || worded < 3 {
		return nil, Trouble{}
	}
	rolls.Share = float64(rolls.Count) / float64(worded)
	return repeats, rolls
}

// overlap is the longest head of now that is the end of tail.
func overlap(tail, now []string) int {
	for k := min(len(tail), len(now)); k > 0; k-- {
		if slices.Equal(tail[len(tail)-k:], now[:k]) {
			return k
		}
	}
	return 0
}

// speed is how fast the presenter talks while talking: the upper third of the
// cues, since pauses that hide in cues only make them slower.
func speed(cues []captions.Cue, order []int, spoken [][]prose.Span) float64 {
	var rates []float64
	for n, i := range order {
		start, end := cues[i].Start.Seconds(), cues[i].End.Seconds()
		if n+1 < len(order) {
			if s := cues[order[n+1]].Start.Seconds(); s > start {
				end = min(end, s)
			}
		}
		chars := 0
		for _, s := range spoken[i] {
			chars += s.End - s.Start + 1
		}
		if rate := float64(chars) / (end - start); chars >= 15 && end > start && rate >= slowest && rate <= fastest {
			rates = append(rates, rate)
		}
	}
	if len(rates) < 4 {
		return usualRate
	}
	slices.Sort(rates)
	return rates[len(rates)*2/3]
}

// numbers brings words to what they are compared by, with numbers and units in
// words, and remembers those it has read.
type numbers struct {
	read  map[string][]string
	units map[string][]string
}

func newNumbers() numbers {
	return numbers{map[string][]string{}, map[string][]string{}}
}

// keys gives what a word is compared by; before are those of the words before
// it.
func (n numbers) keys(word string, before [][]string) []string {
	word = prose.Fold(word)
	if len(before) > 0 && len(word) <= 4 {
		if last := before[len(before)-1]; len(last) > 0 && english().numerals[last[len(last)-1]] {
			if unit := n.unit(word); unit != nil {
				return unit
			}
		}
	}
	if keys, ok := n.read[word]; ok {
		return keys
	}
	keys := split(word)
	if strings.ContainsFunc(word, unicode.IsDigit) || strings.ContainsAny(word, "/°%·") {
		keys = split(prose.Fold(prose.Spoken(word)))
	}
	n.read[word] = keys
	return keys
}

// unit reads a short word as the unit of the number before it: "mm" is a
// millimetre. nil where it is none.
func (n numbers) unit(word string) []string {
	keys, ok := n.units[word]
	if !ok {
		if said := prose.Fold(prose.Spoken("2 " + word)); said != "two "+word {
			if keys = split(said); len(keys) > 1 {
				keys = keys[1:]
			} else {
				keys = nil
			}
		}
		n.units[word] = keys
	}
	return keys
}

// split cuts at everything but letters, digits and apostrophes and stems.
func split(words string) []string {
	fields := strings.FieldsFunc(words, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '\''
	})
	keys := fields[:0]
	for _, f := range fields {
		if k := stem(f); k != "" {
			keys = append(keys, k)
		}
	}
	return keys
}
