package claim

import (
	_ "embed"
	"fmt"
	"strings"
	"sync"
)

//go:embed lexicon.txt
var lexiconText string

// class is a set of word classes, a bit for each class that code asks for.
type class uint64

// lexicon is the vocabulary: the lists of lexicon.txt by name, and the classes
// of each word.
type lexicon struct {
	lists map[string][]string
	words map[string]class
	classes
	used int   // bits given out
	err  error // the first class that could not be made
}

// classes are the lists that code asks for; patterns may name any list.
type classes struct {
	self, person, pronoun, det, poss, be, have, modal, wh, prep, glue, particle, lead, greeting,
	order, weak, states, often, seeing, period, periods, perilous, hurt, flesh, harm, damage, property, colour,
	making, fitting, reading, meter, heat, angle, better, best, much, dimension, asadj, about, conductor, thermal,
	thread, maybe, idle, believe, do, resistive, fluid, measured, settling, where, inched, role, settled, poured, long, bought, heavy, priced, symptom, mend, past, filming class
}

// vocabulary reads the word lists once, when the first sentence is read: a run
// that reads none should not pay for it.
var vocabulary = sync.OnceValue(func() *lexicon {
	l, err := readLexicon(lexiconText)
	if err != nil {
		panic(err) // the file is part of the program; TestLexiconAndCues reads it
	}
	return l
})

func readLexicon(text string) (*lexicon, error) {
	l := &lexicon{lists: map[string][]string{}, words: map[string]class{}}
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		name, list, ok := strings.Cut(line, ":")
		if !ok || l.lists[name] != nil {
			return nil, fmt.Errorf("lexicon: %q is no list, or a second of that name", line)
		}
		words := strings.Fields(list)
		if verbs, ok := strings.CutSuffix(name, "+"); ok {
			name, words = verbs, inflected(words)
		}
		l.lists[name] = words
	}
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
	return l, l.err
}

// inflected gives the forms of verbs: "crack" in four; "break/broke/broken" has
// its past forms written out.
func inflected(verbs []string) []string {
	var all []string
	for _, v := range verbs {
		base, past, irregular := strings.Cut(v, "/")
		all = append(all, base, thirdPerson(base), stem(base)+"ing")
		if !irregular {
			all = append(all, pastOf(base))
			continue
		}
		all = append(all, strings.Split(past, "/")...)
	}
	return all
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

// class gives the words of a list a bit.
func (l *lexicon) class(name string) class {
	const most = 64
	if l.err == nil && (l.lists[name] == nil || l.used == most) {
		l.err = fmt.Errorf("lexicon: no list %q, or more than %d classes", name, most)
	}
	bit := class(1) << l.used
	l.used++
	for _, w := range l.lists[name] {
		l.words[w] |= bit
	}
	return bit
}

// kindsOfWord are the classes, for short.
func kindsOfWord() *classes { return &vocabulary().classes }
