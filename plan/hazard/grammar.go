package hazard

import (
	"fmt"
	"strings"
)

// grammar is what part of speech a word may be, as far as the reader cares.
type grammar uint32

const (
	det        grammar = 1 << iota // the, your, that
	adj                            // old, both
	prep                           // of, with; "to" is infinitive
	subject                        // you, we
	object                         // it, them
	aux                            // is, can, will
	sub                            // before, while: begins another clause
	coord                          // and, then
	adverb                         // now, carefully
	part                           // up, off
	neg                            // not, never, without
	endneg                         // but, just: ends what was denied
	cond                           // if
	infinitive                     // to
	with                           // with, using
	aside                          // behind, near
	number                         // 12
)

var grammarNames = map[string]grammar{
	"det": det, "adj": adj, "prep": prep, "subject": subject, "object": object, "aux": aux, "sub": sub,
	"coord": coord, "adverb": adverb, "part": part, "neg": neg, "endneg": endneg, "cond": cond, "infinitive": infinitive, "with": with, "aside": aside,
}

// readWord reads a list of words of one part of speech.
func (x *compiler) readWord(l line) error {
	g, ok := grammarNames[l.body]
	if !ok {
		return fmt.Errorf("%q is no part of speech", l.body)
	}
	for _, w := range strings.Split(l.tail, ",") {
		id := x.form(strings.TrimSpace(w), 0)
		x.forms.list[id].grammar |= g
	}
	return nil
}

// nouny says whether the word at i stands where a noun stands, so that "the
// drill" is a thing and "drill the wall" is not.
func nouny(toks []token, i int) bool {
	if i == 0 || toks[i].bar {
		return !takesObject(toks, i) && i+1 < len(toks) && toks[i+1].grammar&(aux) != 0
	}
	before := toks[i-1].grammar
	switch {
	case toks[i].comma:
		return false
	case before&(infinitive|subject|aux|neg) != 0:
		return before&det != 0
	case before&(coord|sub|adverb|cond) != 0:
		return i+1 == len(toks) || toks[i+1].bar || toks[i+1].comma || toks[i+1].grammar&(aux) != 0
	case before&(det|adj|number) != 0:
		return true
	case before&part != 0 && before&prep == 0:
		return !takesObject(toks, i)
	case before&prep != 0:
		return true
	case before&object != 0:
		return !takesObject(toks, i)
	}
	return !takesObject(toks, i) // after a word of substance
}

// orders says whether the word at i, which the lexicon does not know as a thing
// or an act, stands where an order stands: first in its clause, with something
// behind it that it is done to. Whatever it means, hands do something.
func orders(toks []token, i int) bool {
	t := &toks[i]
	if t.grammar != 0 || i+1 >= len(toks) || toks[i+1].bar || toks[i+1].comma {
		return false
	}
	if i > 0 && !t.bar && !t.comma && toks[i-1].grammar&(coord|adverb) == 0 {
		return false
	}
	return toks[i+1].grammar&(det|object|part|prep) != 0
}

// takesObject says whether what follows the word at i is what follows a verb.
func takesObject(toks []token, i int) bool {
	if i+1 >= len(toks) || toks[i+1].bar || toks[i+1].comma {
		return false
	}
	return toks[i+1].grammar&(det|object|part) != 0
}
