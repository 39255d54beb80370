package align

// Problem: tell a step from a few words that look like it, and two steps in a row from
// one that is told at length. Of one film's steps, each told in its presenter's way, the
// words are in step with those planned: the logarithm of their ratio differs from step
// to step by 0.2 to 0.4 (of the edits to be read), however freely they are told.
//
// Method: a step is a row of parts, each left with the same chance after a word, so that
// all of them last about as many words as are planned times what this film makes of one
// (Erlang's distribution: the more parts, the narrower). Talk inside a step does not
// count, and the step goes on with the part that it was in.

const (
	manyParts   = 6    // a narrow distribution …
	fewParts    = 2    // … and a wide one, for long films, for speed
	goesMost    = 0.9  // a part is left after a word with this chance at most
	lengthLeast = 4.0  // words that a step is told in at least
	usualShare  = 0.95 // of a film's words that its planned steps take, before any was heard
	usualSaid   = 1.15 // words said for one planned …
	usualWorth  = 20.0 // … which is worth this many planned words
)

// plan counts the words to be said in each step; those of which nothing is to be said
// have about as many as others.
func (s *script) plan() {
	s.planned = make([]float64, len(s.of))
	all, steps := 0.0, 0.0
	for i, lines := range s.of {
		for _, n := range lines {
			s.planned[i] += float64(len(s.keys[n]))
		}
		if s.planned[i] > 0 {
			all, steps = all+s.planned[i], steps+1
		}
	}
	for i := range s.planned {
		if s.planned[i] == 0 {
			s.planned[i] = all / max(1, steps)
		}
	}
}

// pace sets how many words each step is likely told in, by what a run before found;
// nil for none.
func (t *trellis) pace(s *script, o *odds) {
	planned, words := 0.0, usualShare*float64(len(t.words))
	if o != nil {
		planned, words = usualWorth, usualWorth*usualSaid
		for _, talk := range o.talk {
			words += 1 - talk
		}
	}
	for i, n := range s.planned {
		if o == nil {
			planned += n
		} else {
			planned += n * o.told(i)
		}
	}
	t.expect = make([]float64, t.steps)
	for i, n := range s.planned {
		t.expect[i] = max(lengthLeast, n*words/max(1, planned))
	}
}
