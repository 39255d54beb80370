package align

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// How the chances of the model become steps. Lengths are in seconds.
const (
	hiddenShare = 0.6 // of the silence that a cue hides after the words before a start, stands before it …
	hiddenMost  = 1.2 // … up to so many seconds
	nearTime    = 2.0 // starts as near as this count as one
	talkLeast   = 5   // words of talk between those of steps, below which they are no talk beside the work
	overSure    = 2.0 // power of the model's chance
	fairChance  = 0.3 // of a place, from which what is said there counts
)

// settler turns a path and its chances into a Match.
type settler struct {
	*Match
	h      *heard
	t      *trellis
	script *script
	ear    *ear
	odds   odds
	visits []visit
	pres   []presence
}

// spread lays the chances over the words.
func (s *settler) spread(o odds) {
	s.odds = o
	s.place()
	s.visits = visits(s.Words, s.t.words)
	s.pres = s.presences()
}

// starts says of each step whether it is said, and where it starts.
func (s *settler) starts() {
	found := make([]choice, len(s.Steps))
	at := make([]int, len(s.Steps)) // word of each step, -1 for a missing one
	for i := range s.Steps {
		found[i] = s.choices(i)
		at[i] = -1
		if s.pres[i].present() && len(found[i].places) > 0 {
			at[i] = found[i].places[found[i].best].word
		}
	}
	for i := range s.Steps {
		st, f := &s.Steps[i], &found[i]
		if at[i] < 0 {
			st.Confidence = 1 - s.pres[i].chance()
			continue
		}
		best := f.places[f.best]
		turned := disorder(i, best.word, at)
		for _, p := range f.places {
			if n := disorder(i, p.word, at); p.near >= s.t.w.early*f.likely && p.gain >= s.t.w.orderly*f.telling && n < turned {
				best, turned = p, n
			}
		}
		at[i] = best.word
		// One that is said in several places starts in any of them.
		st.Status, st.Start = Found, s.startOf(best.word)
		st.Confidence = s.pres[i].chance() * sureness(min(1, best.near)/math.Sqrt(max(1, f.all)))
	}
}

// sureness makes of the model's chance what it is worth: the model takes words for
// more independent than they are, and of the starts that it gave nine chances in
// ten fewer were right in edits told freely.
func sureness(chance float64) float64 { return math.Pow(chance, overSure) }

// disorder counts the steps that stand the wrong way about if one begins with a
// word.
func disorder(step, word int, at []int) int {
	n := 0
	for other, w := range at {
		if w >= 0 && other != step && (other < step) != (w < word) {
			n++
		}
	}
	return n
}

// choice is where a step may begin.
type choice struct {
	places          []place // by word
	best            int     // the earliest that is nearly as likely as the likeliest and tells nearly as much of the step
	likely, telling float64 // the most of the places' near and gain
	all             float64 // chance of all places
}

// choices gathers where a step may begin.
func (s *settler) choices(step int) choice {
	c := choice{places: s.places(s.odds.entries[step])}
	for i := range c.places {
		p := &c.places[i]
		p.gain = s.told(step, p.word)
		c.all += p.chance
		if p.near >= fairChance {
			c.telling = max(c.telling, p.gain)
		}
	}
	// A remark that is made early is as likely a place as the step itself, but
	// tells less of it.
	for i, p := range c.places {
		if p.near > c.likely && (p.near < fairChance || p.gain >= s.t.w.telling*c.telling) {
			c.likely, c.best = p.near, i
		}
	}
	for i, p := range c.places {
		if p.near >= s.t.w.early*c.likely && p.gain >= s.t.w.telling*c.telling {
			c.best = i
			break
		}
	}
	return c
}

// place is a stretch of two seconds and less in which a step may begin.
type place struct {
	word   int     // the likeliest
	near   float64 // chance of all within two seconds of it
	chance float64 // chance of all that belong to this place
	gain   float64 // what the words that follow say for the step
}

// places gathers what is near to each other round the likeliest words.
func (s *settler) places(entries []entry) []place {
	var all []place
	time := func(e entry) float64 { return s.h.words[e.word].Start }
	near := make([]float64, len(entries)) // chance of all within reach of each
	for k, first := 0, 0; k < len(entries); k++ {
		for time(entries[k])-time(entries[first]) > nearTime {
			first++
		}
		for j := first; j < len(entries) && time(entries[j])-time(entries[k]) <= nearTime; j++ {
			near[k] += entries[j].chance
		}
	}
	taken := make([]bool, len(entries))
	for len(all) < 16 {
		top := -1
		for k, e := range entries {
			if !taken[k] && (top < 0 || near[k]+e.chance > near[top]+entries[top].chance) {
				top = k
			}
		}
		if top < 0 {
			break
		}
		p := place{word: entries[top].word, near: near[top]}
		for k, e := range entries {
			if d := time(e) - time(entries[top]); max(d, -d) <= nearTime && !taken[k] {
				p.chance += e.chance
				taken[k] = true
			}
		}
		all = append(all, p)
	}
	slices.SortFunc(all, func(a, b place) int { return a.word - b.word })
	return all
}

// told is what the words of the visit that starts near a word say for a step.
func (s *settler) told(step, word int) float64 {
	for _, v := range s.visits {
		if v.step == step && v.last >= word && s.h.words[v.first].Start-s.h.words[word].Start < nearTime {
			return v.gain
		}
	}
	return 0
}

// startOf is when a word starts that follows a halt: where its cue is longer
// than its words take, part of the silence stood before it. How much was measured
// on cues of a dozen seconds: all of it is too much.
func (s *settler) startOf(i int) float64 {
	w := s.h.words[i]
	if s.h.slack[i] < someGap {
		return w.Start
	}
	chars, end := 0, w.End
	for k := i; k < len(s.h.words) && s.h.words[k].Cue == w.Cue; k++ {
		chars += s.h.words[k].Span.End - s.h.words[k].Span.Start + 1
		end = s.h.words[k].End
	}
	latest := max(w.Start, min(end, end-float64(chars)/s.h.rate))
	return w.Start + min(hiddenMost, hiddenShare*(latest-w.Start))
}

// order marks the steps that are out of the plan's order: the fewest whose
// leaving puts the others in order, by the longest rising row of starts
// (Schensted 1961).
func (m *Match) order() {
	var found []int
	for i, s := range m.Steps {
		if s.Status != Missing {
			found = append(found, i)
		}
	}
	var tails, before = []int{}, make([]int, len(m.Steps))
	for _, i := range found {
		k, _ := slices.BinarySearchFunc(tails, m.Steps[i].Start, func(j int, start float64) int { return cmp.Compare(m.Steps[j].Start, start) })
		before[i] = -1
		if k > 0 {
			before[i] = tails[k-1]
		}
		if k == len(tails) {
			tails = append(tails, i)
		} else {
			tails[k] = i
		}
	}
	for _, i := range found {
		m.Steps[i].Status = Moved
	}
	if len(tails) > 0 {
		for i := tails[len(tails)-1]; i >= 0; i = before[i] {
			m.Steps[i].Status = Found
		}
	}
}

// place says of each word which step it is in.
func (s *settler) place() {
	talk := 0 // words of talk at hand
	for i := range s.Words {
		s.Words[i].Step = -1
		if s.odds.talk[i] >= s.t.w.beside {
			talk++
			continue
		}
		s.Words[i].Step = s.odds.step[i]
		// A few words that are like talk are a manner of speaking.
		if first := i - talk; talk < talkLeast && first > 0 {
			for k := first; k < i; k++ {
				s.Words[k].Step = s.Words[first-1].Step
			}
		}
		talk = 0
	}
}

// beside gathers the talk that is in no step.
func (s *settler) beside() {
	for i, w := range s.Words {
		if w.Step >= 0 {
			continue
		}
		if n := len(s.Added); n > 0 && s.Added[n-1].Last == i-1 {
			s.Added[n-1].Last, s.Added[n-1].End = i, w.End
		} else {
			s.Added = append(s.Added, Added{Start: w.Start, End: w.End, First: i, Last: i})
		}
	}
	for i := range s.Added {
		a := &s.Added[i]
		a.Text = wordsOf(s.Words[a.First : a.Last+1])
	}
}

// wordsOf is what words say, one after the other.
func wordsOf(words []Word) string {
	texts := make([]string, len(words))
	for i, w := range words {
		texts[i] = w.Text
	}
	return strings.Join(texts, " ")
}
