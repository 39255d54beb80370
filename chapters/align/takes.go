package align

import (
	"cmp"
	"slices"
)

// visit is a stretch of words in one step, with the talk inside it.
type visit struct {
	step        int
	first, last int     // words, both included; both are in the step
	gain        float64 // what the words say for the step
}

// visits gathers words into visits.
func visits(words []Word, heard []*hearing) []visit {
	var all []visit
	for i, w := range words {
		if w.Step < 0 {
			continue
		}
		if n := len(all); n == 0 || all[n-1].step != w.Step {
			all = append(all, visit{step: w.Step, first: i})
		}
		v := &all[len(all)-1]
		v.last = i
		v.gain += gain(heard[i], w.Step)
	}
	return all
}

// gain is what a word says for a step, against nothing.
func gain(h *hearing, step int) float64 {
	sum := h.step
	for _, s := range h.steps {
		if s.step == step {
			sum += s.gain
		}
	}
	return sum
}

// How a take is known for the repeat of another. Words are counted by weight,
// a rare one as 1.
const (
	takeShare = 0.6 // of what is said again
	takeLeast = 2.2 // weight that must be said again …
	takeHalt  = 1.0 // … and after a long halt or a word like "again" …
	takeOften = 0.5 // … with this much of the share
	takeFirst = 0.4 // of either that both takes have, from which one before a step's start is its first
	takeSays  = 8   // words round a repeat among which such a word is
	takeReach = 70  // words before a repeat in which the first take starts
	takeWords = 12  // words of each that are compared
	takeSound = 0.3 // distance of sounds up to which a word is the same one
)

// takes parts visits where their talk starts over, and finds later visits that
// say again what an earlier one said. The others go on with the step: a remark
// that was kept for later.
func (s *settler) takes() {
	w := weigher{s.ear, map[string]float64{}}
	byStep := make([][]visit, len(s.Steps))
	for _, v := range s.visits {
		byStep[v.step] = append(byStep[v.step], v)
	}
	for i := range s.Steps {
		st := &s.Steps[i]
		if st.Status == Missing {
			continue
		}
		at := s.wordAt(st.Start)
		st.Takes = nil
		for _, v := range byStep[i] {
			if v.last < at {
				continue
			}
			v.first = max(v.first, at)
			if len(st.Takes) == 0 || s.again(byStep[i], v, w) {
				s.part(st, v, w)
			}
		}
		if len(st.Takes) == 0 {
			st.Takes = []Take{{st.Start, s.Words[at].End}}
		}
		st.Takes[0].Start = st.Start
		st.End = st.Takes[len(st.Takes)-1].End
		for _, t := range st.Takes[1:] {
			s.Repeats = append(s.Repeats, Repeat{Index: i, ID: st.ID, Start: t.Start, End: t.End})
		}
	}
	slices.SortStableFunc(s.Repeats, func(a, b Repeat) int { return cmp.Compare(a.Start, b.Start) })
}

// firstTakes moves starts to a take before them that the sums took for talk or for the
// end of another step: two takes are twice as long as a step is likely told in.
func (s *settler) firstTakes() {
	w := weigher{s.ear, map[string]float64{}}
	begins := make([]int, len(s.Words)) // of each word, how many steps begin before it
	at := make([]int, len(s.Steps))
	for i, st := range s.Steps {
		if st.Status != Missing {
			at[i] = s.wordAt(st.Start)
			begins[at[i]]++
		}
	}
	for k := 1; k < len(begins); k++ {
		begins[k] += begins[k-1]
	}
	for i := range s.Steps {
		st := &s.Steps[i]
		if st.Status == Missing {
			continue
		}
		k := at[i]
		last := k
		for last+1 < len(s.Words) && s.Words[last+1].Step == i {
			last++
		}
		first, most := k, 0.0
		for j := k - 3; j >= max(0, k-takeReach/2) && begins[j] == begins[k]-1; j-- {
			if j > 0 && !s.halts(j) {
				continue
			}
			said, total, other := s.saidAgain(i, j, k, last, w)
			if said >= takeLeast && said >= takeFirst*max(total, other) && said > most {
				first, most = j, said
			}
		}
		if first == k {
			continue
		}
		for first > 0 && s.leadsOn(first-1) && begins[first-1] == begins[k]-1 && s.h.gap[first] < longGap {
			first--
		}
		st.Start = s.startOf(first)
		for j := first; j < k; j++ {
			s.Words[j].Step = i
		}
	}
	s.visits = visits(s.Words, s.t.words)
}

// wordAt is the word that is said at a time, or the first one after it.
func (s *settler) wordAt(time float64) int {
	at, _ := slices.BinarySearchFunc(s.Words, time, func(w Word, time float64) int {
		if w.End <= time {
			return -1
		}
		return 1
	})
	return min(at, len(s.Words)-1)
}

// part takes a visit apart where it starts over.
func (s *settler) part(st *Step, v visit, w weigher) {
	first := v.first
	before := map[string]int{} // of each telling word, where it was said last
	seen := v.first
	for k := v.first + 3; k+2 <= v.last; k++ {
		for ; seen < k; seen++ {
			if key, ok := s.teller(seen, v.step, w); ok {
				before[key] = seen
			}
		}
		if s.startsOver(first, k, v, before, w) {
			st.Takes = append(st.Takes, Take{s.startOf(first), s.Words[k-1].End})
			first = k
		}
	}
	st.Takes = append(st.Takes, Take{s.startOf(first), s.Words[v.last].End})
}

// startsOver holds where a word begins again what was said since first.
func (s *settler) startsOver(first, k int, v visit, before map[string]int, w weigher) bool {
	if k-first < 3 || !s.halts(k) {
		return false
	}
	for x := k; x < min(k+9, v.last+1); x++ {
		key, ok := s.teller(x, v.step, w)
		if !ok {
			continue
		}
		was, said := before[key]
		if !said || was < first || was < k-takeReach {
			continue
		}
		for j := min(was, k-3); j >= max(first, was-9); j-- {
			if (j == first || s.halts(j)) && s.same(v.step, j, k, v.last, w) {
				return true
			}
		}
	}
	return false
}

// teller is the key of a word that tells of a repeat: a rare one that the plan
// of the step has no more than once.
func (s *settler) teller(i, step int, w weigher) (string, bool) {
	for _, k := range s.h.keys[i] {
		if w.weight(k) >= 0.5 && s.times(k, step) < 2 {
			return k, true
		}
	}
	return "", false
}

// times is how often a word is planned in a step.
func (s *settler) times(key string, step int) float64 {
	if t, ok := s.script.number[key]; ok {
		for _, u := range s.script.steps[t] {
			if u.step == step {
				return u.times
			}
		}
	}
	return 0
}

// halts holds where a take may begin with a word.
func (s *settler) halts(i int) bool {
	if i == 0 || s.h.gap[i] >= 0.2 || s.h.slack[i] >= 0.4 || s.h.ends[i-1] {
		return true
	}
	keys := s.h.keys[i]
	return s.leadsOn(i) || len(keys) > 0 && english().again[keys[0]]
}

// leadsOn holds for a word that may lead into the next thing.
func (s *settler) leadsOn(i int) bool {
	keys := s.h.keys[i]
	return len(keys) > 0 && (english().lead[keys[0]] || english().link[keys[0]])
}

// same holds where the talk from word k on says again what was said from j to k.
func (s *settler) same(step, j, k, last int, w weigher) bool {
	heard, total, other := s.saidAgain(step, j, k, last, w)
	least, share := takeLeast, takeShare
	if s.h.gap[k] >= 1 || s.retakes(step, k-takeSays, k+takeSays) {
		least, share = takeHalt, takeShare*takeOften
	}
	return heard >= least && heard >= share*min(total, other) && heard >= share/2*max(total, other)
}

// saidAgain weighs the words from j to k that the talk from k on says again in their
// order, all of them, and those from k on.
func (s *settler) saidAgain(step, j, k, last int, w weigher) (heard, total, other float64) {
	toA, toB := min(k, j+takeWords), min(last+1, k+takeWords, k+(k-j)+5)
	row := make([]float64, toB-k+1)
	for i := j; i < toA; i++ {
		corner := 0.0
		weight := s.telling(i, step, w)
		total += weight
		for n := range row[1:] {
			best := max(row[n], row[n+1])
			if weight > 0 && s.alike(i, k+n) {
				best = max(best, corner+weight)
			}
			corner, row[n+1] = row[n+1], best
		}
	}
	for i := k; i < toB; i++ {
		other += s.telling(i, step, w)
	}
	return row[len(row)-1], total, other
}

// retakes holds where one of a few words leads into another take, and is not the
// plan's own: many a step is to be done again.
func (s *settler) retakes(step, from, to int) bool {
	for i := max(0, from); i < min(to, len(s.Words)); i++ {
		for _, k := range s.h.keys[i] {
			if english().again[k] && s.times(k, step) == 0 {
				return true
			}
		}
	}
	return false
}

// telling is how much a word heard tells of a repeat.
func (s *settler) telling(i, step int, w weigher) float64 {
	sum := 0.0
	for _, k := range s.h.keys[i] {
		if s.times(k, step) < 2 {
			sum = max(sum, w.weight(k))
		}
	}
	return sum
}

// alike holds for two words heard that may be one.
func (s *settler) alike(i, j int) bool {
	a, b := s.h.keys[i], s.h.keys[j]
	if len(a) != len(b) || len(a) == 0 {
		return false
	}
	if slices.Equal(a, b) {
		return true
	}
	return len(a) == 1 && len(a[0]) > 3 && len(b[0]) > 3 && s.ear.apart.apart(s.ear.sound(a[0]), s.ear.sound(b[0])) < takeSound
}

// again holds where a visit says again what an earlier one of the step said,
// and is not the head of the next step, which may be planned to say the same.
func (s *settler) again(all []visit, v visit, w weigher) bool {
	said := map[string]bool{}
	for _, o := range all {
		if o.first >= v.first {
			break
		}
		for i := o.first; i <= o.last; i++ {
			for _, k := range s.h.keys[i] {
				said[k] = true
			}
		}
	}
	next := -1
	for i := v.last + 1; i < len(s.Words) && next < 0; i++ {
		next = s.Words[i].Step
	}
	sum, twice, others := 0.0, 0.0, 0.0
	for i := v.first; i <= v.last; i++ {
		for _, k := range s.h.keys[i] {
			weight := w.weight(k)
			sum += weight
			if said[k] {
				twice += weight
				if s.times(k, next) > 0 {
					others += weight
				}
			}
		}
	}
	return twice >= takeLeast && twice >= takeShare*sum && others < takeShare*twice
}
