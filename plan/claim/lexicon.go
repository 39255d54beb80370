package claim

import (
	_ "embed"
	"fmt"
	"strings"
	"sync"
)

//go:embed lexicon.txt
var lexiconText string

// class is a set of word classes, a bit for each class of lexicon.txt.
type class uint64

// lexicon is the vocabulary: the classes by name, and each word's.
type lexicon struct {
	named map[string]class
	words map[string]class
}

// vocabulary reads the word classes once, when the first sentence is read: a
// run that reads none should not pay for it.
var vocabulary = sync.OnceValue(func() *lexicon {
	l, err := readLexicon(lexiconText)
	if err != nil {
		panic(err) // the file is part of the program; TestLexicon reads it
	}
	return l
})

func readLexicon(text string) (*lexicon, error) {
	l := &lexicon{named: map[string]class{}, words: map[string]class{}}
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		name, list, ok := strings.Cut(line, ":")
		if !ok || l.named[name] != 0 {
			return nil, fmt.Errorf("lexicon: %q is no class, or a second of that name", line)
		}
		bit := class(1) << len(l.named)
		if bit == 0 {
			return nil, fmt.Errorf("lexicon: more than 64 classes")
		}
		l.named[name] = bit
		for word := range strings.FieldsSeq(list) {
			l.words[word] |= bit
		}
	}
	return l, nil
}

// classes holds the bits of the classes that code asks for by name.
type classes struct {
	self, person, pronoun, det, poss, be, have, modal, wh, prep, glue, particle, lead, greeting,
	order, weak, states, often, seeing, period, periods, perilous, hurt, flesh, harm, harms, property,
	colour, making, fitting, reading, meter, heat, angle, better, best, much, dimension, asadj, about, conductor class
}

// kindsOfWord resolves the names once.
var kindsOfWord = sync.OnceValue(func() *classes {
	v := vocabulary().named
	return &classes{
		self: v["self"], person: v["person"], pronoun: v["pronoun"], det: v["det"], poss: v["poss"], be: v["be"], have: v["have"],
		modal: v["modal"], wh: v["wh"], prep: v["prep"], glue: v["glue"], particle: v["particle"], lead: v["lead"], greeting: v["greeting"],
		order: v["order"], weak: v["weak"], states: v["states"], often: v["often"], seeing: v["seeing"], period: v["period"], periods: v["periods"],
		perilous: v["perilous"], hurt: v["hurt"], flesh: v["flesh"], harm: v["harm"], harms: v["harms"], property: v["property"],
		colour: v["colour"], making: v["making"], fitting: v["fitting"], reading: v["reading"], meter: v["meter"], heat: v["heat"],
		angle: v["angle"], better: v["better"], best: v["best"], much: v["much"], dimension: v["dimension"], asadj: v["asadj"], about: v["about"],
		conductor: v["conductor"],
	}
})
