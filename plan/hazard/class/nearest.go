package class

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"unicode/utf8"
)

// The problem: a plan says hazard = "jacking the car" or "mains-isolaton" and
// wants to be told the class. The method is plain document ranking: every
// class is a small document whose words carry the weight of the field they
// stand in, rare words count more (inverse document frequency; Spärck Jones,
// "A statistical interpretation of term specificity", 1972), and a class that
// answers more of the question is raised. Words that the catalogue does not
// have are compared by a long common beginning or by edit distance, and so is
// the whole question with each id, so slips of the finger cost little.
//
// Cost: the index stands ready made in filed.go, for it is all that a short run
// wants of it; a lookup is linear in its known words, and reads the word list
// once for each unknown word. It gives up on words after the first 40. Known oddity: there is no grammar, so
// "no airbag" is an airbag.
//go:generate env FIXSLATE_UPDATE=1 go test -tags bare -run TestFiled .

const (
	nearestMax   = 6    // most classes returned
	nearestShare = 0.45 // of the best score, below which a class is left out
	wordsMax     = 40   // words of a question that are read
	lettersMax   = 40   // bytes of the longest word that is read
	nearMatch    = 0.6  // what a near word counts, of the exact one
	leadBonus    = 1.15 // for the class that stands for its family
	idScore      = 1000 // an exact name outranks any words
	slipCost     = 250  // for each letter wrong in a name
)

// Weights of a word by where it stands in a class, in halves.
const (
	inName     = 6
	inEveryday = 6
	inFamily   = 4
	inSpoken   = 3
	inText     = 2
)

// Nearest are the classes that everyday words ("electric shock", "jacking the
// car") or a misspelt id are closest to, best first; at most six, none where
// nothing fits. A family's id gives its lead, then its other classes.
func Nearest(words string) []Class {
	asked := question(words)
	scores := filed.score(asked)
	// A word nobody knows may be a slip; where all are known, "electric shock"
	// is not meant to be the family electric-short.
	slipsAllowed := 0
	if slices.ContainsFunc(asked, func(w string) bool { return !filed.has(Stem(w)) && !isStop(w) }) {
		slipsAllowed = 2
	}
	for i, s := range idScores(strings.Join(asked, "-"), slipsAllowed) {
		scores[i] += s
	}
	order := make([]int, 0, len(scores))
	for i, s := range scores {
		if s > 0 {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(scores[b], scores[a]) })
	var near []Class
	for _, i := range order {
		if len(near) == nearestMax || scores[i] < nearestShare*scores[order[0]] {
			break
		}
		near = append(near, index().classes[i].clone())
	}
	return near
}

// Likeness is what a text shares with each class, in the catalogue's order.
type Likeness []Share

// Share is what a text shares with a class: how many different words, their
// weight, in which rare ones count most, and how many of them are in the class's
// name or are its everyday words.
type Share struct {
	Words  int
	Weight float64
	Names  int
}

// Likenesses reads a text. Words that tell nothing of hazards count nowhere, nor
// do the forms of those that are passed over.
func Likenesses(text string, over ...string) Likeness {
	shared := make(Likeness, len(index().classes))
	var seen []string
	for _, w := range over {
		seen = append(seen, Stem(w))
	}
	for _, w := range split(text) {
		s := Stem(w)
		posts := filed.of(s)
		if len(posts) == 0 || slices.Contains(seen, s) {
			continue
		}
		seen = append(seen, s)
		rare := math.Log(1 + float64(len(shared))/float64(len(posts)))
		for _, p := range posts {
			shared[p.class].Words++
			shared[p.class].Weight += p.counts() * rare
			if p.weight >= min(inName, inEveryday) {
				shared[p.class].Names++
			}
		}
	}
	return shared
}

// Within is the class of a family that the text names and is most like: its lead
// where none is more so, for petrol in the text of a class is no oily rag. A single
// word names a class only if what the step was judged by has it too. Off the road,
// what is usual on vehicles alone stands back. The zero Class for a family that is
// not there.
func (l Likeness) Within(family string, where Where, judged string) Class {
	f, ok := FindFamily(family)
	if !ok {
		return Class{}
	}
	var best *Class
	most, isNamed := 0.0, false
	var named Likeness // of what it was judged by, once it is asked for
	for i, c := range index().classes {
		if c.Family != family || where == OffRoad && c.onVehicles() {
			continue
		}
		score, names := l[i].Weight, l[i].Names > 0
		if c.ID == f.Lead {
			score, names = score*leadBonus, true
		} else if l[i].Names == 1 {
			if named == nil {
				named = Likenesses(judged)
			}
			names = named[i].Names > 0
		}
		better := score > most || score == most && c.ID == f.Lead
		if best == nil || names && !isNamed || names == isNamed && better {
			best, most, isNamed = c, score, names
		}
	}
	if best == nil { // all of the family are
		best = index().byID[f.Lead]
	}
	return best.clone()
}

// Where says whether a step is at a vehicle.
type Where int

// The places.
const (
	Anywhere Where = iota
	OffRoad
)

// onVehicles holds for a class that is usual nowhere else.
func (c *Class) onVehicles() bool {
	return !slices.ContainsFunc(c.Domains, func(d string) bool { return d != "car" && d != "electric-vehicle" && d != "engine" })
}

// question is the words of a text that are read.
func question(text string) []string {
	words := slices.DeleteFunc(split(text), func(w string) bool { return len(w) > lettersMax })
	return words[:min(len(words), wordsMax)]
}

// idScores compares a question with the id of each class and family, with so
// many slips allowed.
func idScores(id string, allowed int) []float64 {
	classes := index().classes
	scores := make([]float64, len(classes))
	for i, c := range classes {
		scores[i] = nameScore(id, c.ID, allowed)
		f, _ := FindFamily(c.Family)
		if s := nameScore(id, f.ID, allowed); s > 0 && f.ID != NoFamily {
			// Under the score of the class of that very name.
			s -= 2
			if f.Lead == c.ID {
				s++
			}
			scores[i] = max(scores[i], s)
		}
	}
	return scores
}

// nameScore is how surely a word is meant to be the name. At most the slips
// allowed count, in names under eight letters one, under four none.
func nameScore(word, name string, allowed int) float64 {
	switch n := len(name); {
	case n < 4:
		allowed = 0
	case n < 8:
		allowed = min(allowed, 1)
	}
	if d := Slips(word, name, allowed); d <= allowed {
		return idScore - slipCost*float64(d)
	}
	return 0
}

// vocabulary is the inverted index: for each stem, the classes that have it with
// the weight of its best place.
type vocabulary struct {
	stems []string // sorted
	from  []uint16 // where a stem's posts begin; one more at the end
	posts []post   // of a stem by class
}

type post struct{ class, weight uint8 }

// counts is the weight of a word in the class.
func (p post) counts() float64 { return float64(p.weight) / 2 }

// of are the posts of a stem.
func (ix *vocabulary) of(stem string) []post {
	i, ok := slices.BinarySearch(ix.stems, stem)
	if !ok {
		return nil
	}
	return ix.posts[ix.from[i]:ix.from[i+1]]
}

func (ix *vocabulary) has(stem string) bool { return len(ix.of(stem)) > 0 }

// score ranks every class against the words of a question.
func (ix *vocabulary) score(asked []string) []float64 {
	classes := index().classes
	scores := make([]float64, len(classes))
	met := make([]float64, len(classes)) // share of the question answered
	var whole float64
	for _, t := range ix.terms(asked) {
		posts := ix.of(t.stem)
		idf := math.Log(1 + float64(len(classes))/float64(max(1, len(posts))))
		whole += idf
		for _, p := range posts {
			scores[p.class] += idf * p.counts() * t.sure
			met[p.class] += idf * t.sure
		}
	}
	for i, c := range classes {
		if whole > 0 {
			scores[i] *= met[i] / whole
		}
		if f, _ := FindFamily(c.Family); f.Lead == c.ID {
			scores[i] *= leadBonus
		}
	}
	return scores
}

// term is a word of a question as the index knows it; sure is below 1 for a
// near match and the stem empty for a word without any.
type term struct {
	stem string
	sure float64
}

// terms finds each word of a question in the index. Two words written apart
// ("air bag") count as the one the index has, too.
func (ix *vocabulary) terms(asked []string) []term {
	var terms []term
	for i, w := range asked {
		if i > 0 {
			if s := Stem(asked[i-1] + w); ix.has(s) {
				terms = append(terms, term{s, 1})
			}
		}
		if isStop(w) {
			continue
		}
		s := Stem(w)
		if ix.has(s) {
			terms = append(terms, term{s, 1})
			continue
		}
		terms = append(terms, ix.near(s))
	}
	return terms
}

// near is the stem most like a word the index lacks: the longest common
// beginning, or the fewest slips.
func (ix *vocabulary) near(word string) term {
	best, bestScore := "", 0.0
	n := utf8.RuneCountInString(word)
	if n < 4 {
		return term{}
	}
	allowed := 1
	if n >= 8 {
		allowed = 2
	}
	for _, s := range ix.stems {
		long := max(len(word), len(s))
		score := 0.0
		if p := commonPrefix(word, s); p >= 5 && float64(p) >= 0.6*float64(long) {
			score = float64(p) / float64(long)
		}
		if d := Slips(word, s, allowed); d <= allowed && len(s) >= 4 {
			score = max(score, 1-float64(d)/float64(long))
		}
		if score > bestScore {
			best, bestScore = s, score
		}
	}
	if best == "" {
		return term{}
	}
	return term{best, nearMatch}
}
