package align

import (
	"math"
	"slices"
)

// Problem: which planned lines were said, and which heard word answers to which
// planned one.
//
// Method: each line is laid over the words of its step by local alignment
// (Smith and Waterman 1981) with a match worth as much as the word tells; a
// line that is not there is looked for where most of its telling words stand
// together. A line may so be found after the next one: remarks move.
//
// Cost: words of a line times words of its step; elsewhere, words of a line
// times lineReach.

const (
	lineFound  = 0.35 // share of a line's weight from which it counts as said
	lineAway   = 0.55 // … and from which it does outside its step
	lineUnsaid = 0.2  // cost of a planned word that was not heard, against its weight
	lineExtra  = 0.1  // cost of a word that is heard between
	lineReach  = 3    // times its own length: where a line is looked for around its telling words
	lineCommon = 300  // places from which a word tells nothing of where a line is
	lineDegree = 0.25 // degree from which one word stands for another
)

// weigher says how much words tell.
type weigher struct {
	ear     *ear
	weights map[string]float64
}

// weight is 1 for a rare word, near nothing for the commonest.
func (w weigher) weight(key string) float64 {
	v, ok := w.weights[key]
	if !ok {
		lex := english()
		v = max(0.05, min(1, (math.Log(1/lex.share(key))-2.5)/6))
		w.weights[key] = v
	}
	return v
}

// degrees gives how well each of a row of heard words stands for each planned one
// of a line: those of the line's first word come first.
func (s *settler) degrees(keys []string, words []int, w weigher) []float64 {
	m := len(words)
	all := make([]float64, len(keys)*m)
	in := map[int][]int{} // of each planned word, where it is in the line
	for i, k := range keys {
		if t, ok := s.script.number[k]; ok {
			in[t] = append(in[t], i)
		}
	}
	for j, word := range words {
		for _, k := range s.h.keys[word] {
			for _, l := range w.ear.likes(k) {
				for _, i := range in[l.planned] {
					all[i*m+j] = max(all[i*m+j], l.degree, l.sound)
				}
			}
		}
	}
	return all
}

// answer says that a heard word stands for a planned one.
type answer struct {
	word    int // in Match.Words
	key     int // in the line's keys
	degree  float64
	telling float64 // its weight times the degree
}

// lay lays a line over words and gives what answers to what and the share of
// the line's weight that was heard. best is the place with the best score.
func (s *settler) lay(keys []string, words []int, w weigher) ([]answer, float64) {
	n, m := len(keys), len(words)
	if n == 0 || m == 0 {
		return nil, 0
	}
	total := 0.0
	weights := make([]float64, n)
	for i, k := range keys {
		weights[i] = w.weight(k)
		total += weights[i]
	}
	degrees := s.degrees(keys, words, w)
	score := make([]float64, (n+1)*(m+1))
	move := make([]uint8, (n+1)*(m+1))
	best, bestAt := 0.0, 0
	for i := 1; i <= n; i++ {
		for j := 1; j <= m; j++ {
			at := i*(m+1) + j
			v, step := 0.0, uint8(0)
			if x := score[at-m-1] - lineUnsaid*weights[i-1]; x > v {
				v, step = x, 1
			}
			if x := score[at-1] - lineExtra; x > v {
				v, step = x, 2
			}
			if d := degrees[(i-1)*m+j-1]; d >= lineDegree {
				if x := score[at-m-2] + d*weights[i-1]; x > v {
					v, step = x, 3
				}
			}
			score[at], move[at] = v, step
			if v > best {
				best, bestAt = v, at
			}
		}
	}
	var all []answer
	heard := 0.0
	for at := bestAt; move[at] != 0; {
		switch move[at] {
		case 1:
			at -= m + 1
		case 2:
			at--
		case 3:
			i, j := at/(m+1)-1, at%(m+1)-1
			d := degrees[i*m+j]
			// A synonym or a mis-hearing in its place counts in full.
			all = append(all, answer{words[j], i, d, d * weights[i]})
			heard += weights[i] * (0.5 + 0.5*d)
			at -= m + 2
		}
	}
	slices.Reverse(all)
	return all, heard / total
}

// lines finds the planned lines.
func (s *settler) lines() {
	script := s.script
	w := weigher{s.ear, map[string]float64{}}
	of := make([][]int, len(s.Steps)) // the words of each step
	for i := range s.Words {
		if st := s.odds.step[i]; st >= 0 {
			of[st] = append(of[st], i)
		}
	}
	claims := make([]float64, len(s.Words))
	var away []int
	for n := range s.Lines {
		l := &s.Lines[n]
		words := of[l.Step]
		answers, share := s.lay(script.keys[n], words[:min(len(words), 4000)], w)
		l.Share = share
		if share < lineFound {
			away = append(away, n)
			continue
		}
		s.found(n, answers, claims)
	}
	if len(away) > 0 {
		s.elsewhere(away, claims, w)
	}
}

// found takes down where a line was said. A word that answers to two lines
// belongs to the one it tells more of.
func (s *settler) found(n int, answers []answer, claims []float64) {
	l := &s.Lines[n]
	l.Found = true
	l.First, l.Last = answers[0].word, answers[len(answers)-1].word
	l.Start, l.End = s.Words[l.First].Start, s.Words[l.Last].End
	for _, a := range answers {
		if a.telling > claims[a.word] {
			claims[a.word] = a.telling
			s.Words[a.word].Line = n
		}
	}
}

// elsewhere looks for lines that are not in their step.
func (s *settler) elsewhere(away []int, claims []float64, w weigher) {
	places := map[string][]int{} // of each key heard, where
	for i, keys := range s.h.keys {
		for _, k := range keys {
			places[k] = append(places[k], i)
		}
	}
	for _, n := range away {
		keys := s.script.keys[n]
		var at []answer
		for _, k := range keys {
			if p := places[k]; len(p) <= lineCommon && w.weight(k) > 0.4 {
				for _, i := range p {
					if claims[i] == 0 {
						at = append(at, answer{word: i, telling: w.weight(k)})
					}
				}
			}
		}
		from, to := densest(at, len(keys)*lineReach/2)
		if to == 0 {
			continue
		}
		var words []int
		for i := max(0, from-len(keys)); i < min(len(s.Words), to+len(keys)); i++ {
			words = append(words, i)
		}
		answers, share := s.lay(keys, words, w)
		if share < lineAway || len(answers) < 3 {
			s.Lines[n].Share = max(s.Lines[n].Share, min(share, lineFound))
			continue
		}
		s.Lines[n].Share, s.Lines[n].Away = share, true
		s.found(n, answers, claims)
	}
}

// densest is the stretch of at most width words where places tell most.
func densest(places []answer, width int) (from, to int) {
	slices.SortStableFunc(places, func(a, b answer) int { return a.word - b.word })
	sum, best, first := 0.0, 0.0, 0
	for _, p := range places {
		sum += p.telling
		for places[first].word < p.word-width {
			sum -= places[first].telling
			first++
		}
		if sum > best {
			best, from, to = sum, places[first].word, p.word+1
		}
	}
	return from, to
}
