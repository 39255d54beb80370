package claim

import (
	_ "embed"
	"fmt"
	"iter"
	"maps"
	"strings"
	"sync"
)

//go:embed lexicon.txt
var lexiconText string

// class is a set of word classes, a bit for each class that code asks for.
type class uint64

// lexicon is the vocabulary: what is known of each word, by its spelling.
type lexicon struct {
	index index  // a power of two
	terms []term // the first is that of all words not known
	lists map[string]listed
	book  *cueBook
	classes
	seconds
	asked  int // bits given to the lists that code asks for
	others int // and to those that only patterns name
	err    error
}

// term is what is known of a word.
type term struct {
	text    string
	classes class // the lists of it that code asks for
	others  class // and those that only patterns name
	first   int32 // the first of the patterns that begin with the word, 0 for none
	marks   marks
	whole   string // of a contraction or a slurred spelling: what it stands for
}

// marks are what else code asks of a word.
type marks uint16

const (
	figure    marks = 1 << iota // it makes a figure, or may
	article                     // an article makes a figure of it
	spells                      // it is said in a code: a letter by its name, a digit, "double"
	causative                   // a verb by which one thing brings about another
	chaining                    // it joins what happens to what it comes of
	ofFilm                      // it speaks of the picture or the sound
	ofCelsius
	ofFahrenheit
	version // it tells one model or make from another
	joining // a verb of what goes together
	agent   // of the list agency
	stroked // a mark inside a code as it is said: "dash"
)

// listed is a list by its bit, in one of the two sets.
type listed struct{ asked, other class }

// classes are the lists that code asks for; patterns may name any list.
type classes struct {
	self, person, pronoun, det, poss, be, have, modal, wh, prep, glue, particle, lead, greeting,
	order, weak, states, often, seeing, period, periods, perilous, hurt, flesh, harm, damage, property, colour,
	making, fitting, reading, meter, heat, angle, better, best, much, dimension, asadj, about, conductor, thermal,
	thread, maybe, idle, believe, do, resistive, fluid, measured, settling, where, inched, role, settled, poured, long, bought, heavy, priced, symptom, mend, past, filming class
}

// seconds are lists that code asks for of the second set, as the first is full.
type seconds struct{ faulty, seepage, ail, agency class }

// second says whether word i is in a list of the second set.
func (r *reader) second(i int, c class) bool {
	return i >= 0 && i < len(r.words) && r.known.terms[r.words[i].id].others&c != 0
}

// vocabulary reads the word lists and the patterns once, when the first sentence
// is read: a run that reads none should not pay for it.
var vocabulary = sync.OnceValue(func() *lexicon {
	l, err := readLexicon(lexiconText)
	if err == nil {
		l.book, err = readCues(cuesText, l)
	}
	if err != nil {
		panic(err) // the files are part of the program; TestLexiconAndCues reads them
	}
	return l
})

func readLexicon(text string) (*lexicon, error) {
	const about = 6000 // words: room that need not grow
	l := &lexicon{index: make(index, 1<<14), terms: make([]term, 1, about), lists: make(map[string]listed, 128)}
	l.nameClasses()
	filled := map[string]bool{}
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		name, list, ok := strings.Cut(line, ":")
		if verbs, inflect := strings.CutSuffix(name, "+"); inflect {
			name, list = verbs, inflected(list)
		}
		if !ok || filled[name] {
			return nil, fmt.Errorf("lexicon: %q is no list, or a second of that name", line)
		}
		filled[name] = true
		bits, asked := l.lists[name]
		if !asked {
			bits = listed{other: l.bit(&l.others, name)}
			l.lists[name] = bits
		}
		for w := range strings.FieldsSeq(list) {
			t := &l.terms[l.id(w)]
			t.classes |= bits.asked
			t.others |= bits.other
		}
	}
	l.seconds = seconds{l.lists["faulty"].other, l.lists["seepage"].other, l.lists["ail"].other, l.lists["agency"].other}
	for name := range l.lists {
		if !filled[name] && l.err == nil {
			l.err = fmt.Errorf("lexicon: no list %q", name)
		}
	}
	mark := func(m marks, words iter.Seq[string]) {
		for w := range words {
			l.terms[l.id(w)].marks |= m
		}
	}
	mark(figure, strings.FieldsSeq(figureWords))
	mark(article, strings.FieldsSeq(articled))
	mark(causative, strings.FieldsSeq(causatives))
	mark(spells, maps.Keys(letterNames))
	mark(spells, maps.Keys(digitWords))
	mark(spells, strings.FieldsSeq("double triple treble"))
	mark(stroked, maps.Keys(strokes))
	mark(chaining, strings.FieldsSeq("so when if once whenever where as until unless because"))
	mark(ofFilm, strings.FieldsSeq("picture camera microphone mic footage audio video tripod shot filmed filming recorded"))
	mark(ofCelsius, strings.FieldsSeq("celsius centigrade"))
	mark(ofFahrenheit, strings.FieldsSeq("fahrenheit"))
	mark(version, strings.FieldsSeq(versions))
	mark(joining, maps.Keys(joins))
	for i := range l.terms {
		if l.terms[i].others&l.agency != 0 {
			l.terms[i].marks |= agent
		}
	}
	for w, whole := range unwritten {
		l.terms[l.id(w)].whole = whole
	}
	return l, l.err
}

// of is the classes of a word.
func (l *lexicon) of(w string) class { return l.terms[l.find(w)].classes }

// nameClasses gives a bit to each list that code asks for.
func (l *lexicon) nameClasses() {
	l.classes = classes{
		self: l.class("self"), person: l.class("person"), pronoun: l.class("pronoun"), det: l.class("det"),
		poss: l.class("poss"), be: l.class("be"), have: l.class("have"), modal: l.class("modal"),
		wh: l.class("wh"), prep: l.class("prep"), glue: l.class("glue"), particle: l.class("particle"),
		lead: l.class("lead"), greeting: l.class("greeting"), order: l.class("order"), weak: l.class("weak"),
		states: l.class("states"), often: l.class("often"), seeing: l.class("seeing"), period: l.class("period"),
		periods: l.class("periods"), perilous: l.class("perilous"), hurt: l.class("hurt"), flesh: l.class("flesh"),
		harm: l.class("harm"), damage: l.class("damage"), property: l.class("property"), colour: l.class("colour"),
		making: l.class("making"), fitting: l.class("fitting"), reading: l.class("reading"), meter: l.class("meter"),
		heat: l.class("heat"), angle: l.class("angle"), better: l.class("better"), best: l.class("best"),
		much: l.class("much"), dimension: l.class("dimension"), asadj: l.class("asadj"), about: l.class("about"),
		conductor: l.class("conductor"), thermal: l.class("thermal"), thread: l.class("thread"), maybe: l.class("maybe"),
		idle: l.class("idle"), believe: l.class("believe"), do: l.class("do"), resistive: l.class("resistive"), fluid: l.class("fluid"), measured: l.class("measured"),
		settling: l.class("settling"), where: l.class("where"), inched: l.class("inched"), role: l.class("role"), settled: l.class("settled"), poured: l.class("poured"), long: l.class("long"), bought: l.class("bought"),
		heavy: l.class("heavy"), priced: l.class("priced"), symptom: l.class("symptom"), mend: l.class("mend"), past: l.class("past"), filming: l.class("filming"),
	}
}

// inflected gives the forms of verbs: "crack" in four; "break/broke/broken" has
// its past forms written out.
func inflected(verbs string) string {
	var b strings.Builder
	b.Grow(6 * len(verbs))
	put := func(parts ...string) {
		for _, p := range parts {
			b.WriteString(p)
		}
		b.WriteByte(' ')
	}
	for v := range strings.FieldsSeq(verbs) {
		base, past, irregular := strings.Cut(v, "/")
		put(base)
		put(thirdPerson(base))
		put(stem(base), "ing")
		if !irregular {
			put(pastOf(base))
			continue
		}
		for form := range strings.SplitSeq(past, "/") {
			put(form)
		}
	}
	return b.String()
}

func thirdPerson(verb string) string {
	switch {
	case strings.HasSuffix(verb, "s"), strings.HasSuffix(verb, "sh"), strings.HasSuffix(verb, "ch"), strings.HasSuffix(verb, "x"), strings.HasSuffix(verb, "o"), strings.HasSuffix(verb, "z"):
		return verb + "es"
	case yAfterConsonant(verb):
		return verb[:len(verb)-1] + "ies"
	}
	return verb + "s"
}

func pastOf(verb string) string {
	switch {
	case yAfterConsonant(verb):
		return verb[:len(verb)-1] + "ied"
	case strings.HasSuffix(verb, "e"):
		return verb + "d"
	}
	return stem(verb) + "ed"
}

// stem is what "-ing" is put behind: "crush", "chaf", "stripp".
func stem(verb string) string {
	n := len(verb)
	switch {
	case strings.HasSuffix(verb, "ee"), n < 3:
		return verb
	case verb[n-1] == 'e':
		return verb[:n-1]
	case vowel(verb[n-2]) && !vowel(verb[n-3]) && !vowel(verb[n-1]) && !strings.ContainsRune("wxy", rune(verb[n-1])) && !unstressed(verb):
		return verb + verb[n-1:]
	}
	return verb
}

// unstressed holds for verbs of two syllables, which do not double their last
// letter: "loosen", "hammer".
func unstressed(verb string) bool {
	groups := 0
	for i := range len(verb) {
		if vowel(verb[i]) && (i == 0 || !vowel(verb[i-1])) {
			groups++
		}
	}
	return groups > 1 && !strings.HasSuffix(verb, "set")
}

func vowel(c byte) bool { return strings.IndexByte("aeiou", c) >= 0 }

func yAfterConsonant(verb string) bool {
	n := len(verb)
	return n > 1 && verb[n-1] == 'y' && !vowel(verb[n-2])
}

// class gives a list that code asks for its bit.
func (l *lexicon) class(name string) class {
	bit := l.bit(&l.asked, name)
	l.lists[name] = listed{asked: bit}
	return bit
}

func (l *lexicon) bit(used *int, name string) class {
	const most = 64
	if l.err == nil && *used == most {
		l.err = fmt.Errorf("lexicon: %q would be the %dth list of its sort, and a set has %d", name, most+1, most)
	}
	bit := class(1) << *used
	*used++
	return bit
}

// kindsOfWord are the classes, for short.
func kindsOfWord() *classes { return &vocabulary().classes }
