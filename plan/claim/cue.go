package claim

import (
	_ "embed"
	"fmt"
	"strings"
	"sync"
)

//go:embed cues.txt
var cuesText string

// cue is a pattern of words that shows a kind of claim where it stands in a
// clause of one of its moods. The file cues.txt says how patterns are written.
type cue struct {
	kind     Kind
	moods    mood
	elements []element
}

// element is one place of a pattern.
type element struct {
	words    map[string]bool
	any      bool // any word
	numeric  bool // a number
	plural   bool // a word in -s or -ing
	gap      bool // up to longestGap words
	optional bool
	absent   bool // the word must not follow; takes none
}

const longestGap = 3

// cues are the patterns by their first word; those that may begin with a word
// of an open set stand under the empty word.
var cues = sync.OnceValue(func() map[string][]cue {
	c, err := readCues(cuesText, vocabulary())
	if err != nil {
		panic(err) // the file is part of the program; TestCues reads it
	}
	return c
})

func readCues(text string, v *lexicon) (map[string][]cue, error) {
	table := map[string][]cue{}
	for line := range strings.Lines(text) {
		fields := strings.Fields(line)
		if len(fields) == 0 || fields[0] == "#" || fields[0][0] == '#' {
			continue
		}
		if len(fields) < 3 {
			return nil, fmt.Errorf("cues: %q has no pattern", line)
		}
		c := cue{kind: Kind(fields[0])}
		for _, letter := range fields[1] {
			m, ok := moodLetters[letter]
			if !ok {
				return nil, fmt.Errorf("cues: %q: no mood %q", line, letter)
			}
			c.moods |= m
		}
		for _, f := range fields[2:] {
			e, err := readElement(f, v)
			if err != nil {
				return nil, fmt.Errorf("cues: %q: %w", line, err)
			}
			c.elements = append(c.elements, e)
		}
		c.index(table)
	}
	return table, nil
}

// index enters a cue under every word it may begin with.
func (c cue) index(table map[string][]cue) {
	entered := map[string]bool{}
	enter := func(w string) {
		if !entered[w] {
			entered[w] = true
			table[w] = append(table[w], c)
		}
	}
	for i, e := range c.elements {
		if e.any || e.numeric || e.plural || e.gap {
			enter("")
		}
		for w := range e.words {
			enter(w)
		}
		if !c.elements[i].optional {
			return
		}
	}
}

func readElement(f string, v *lexicon) (element, error) {
	e := element{words: map[string]bool{}}
	if inner, ok := strings.CutPrefix(f, "["); ok {
		f, ok = strings.CutSuffix(inner, "]")
		if !ok {
			return e, fmt.Errorf("%q has no closing bracket", f)
		}
		e.optional = true
	}
	if inner, ok := strings.CutPrefix(f, "!"); ok {
		f, e.absent = inner, true
	}
	for alternative := range strings.SplitSeq(f, "|") {
		switch {
		case alternative == "~":
			e.gap = true
		case alternative == "%":
			e.plural = true
		case alternative == "#word":
			e.any = true
		case alternative == "#number":
			e.numeric = true
		case strings.HasPrefix(alternative, "#"):
			list := v.lists[alternative[1:]]
			if list == nil {
				return e, fmt.Errorf("no list %q", alternative)
			}
			for _, w := range list {
				e.words[w] = true
			}
		default:
			e.words[alternative] = true
		}
	}
	return e, nil
}

func (e *element) holds(w *word) bool {
	switch {
	case e.any, e.words[w.text]:
		return true
	case e.numeric && w.number:
		return true
	}
	return e.plural && len(w.text) > 3 && w.text[0] >= 'a' && (strings.HasSuffix(w.text, "s") && !strings.HasSuffix(w.text, "ss") || strings.HasSuffix(w.text, "ing"))
}

// matches says whether the pattern stands at word i. A pattern never reaches
// over the end of a clause that punctuation marks.
func (r *reader) matches(pattern []element, i int) bool {
	for p := range pattern {
		e := &pattern[p]
		if e.absent {
			if i < len(r.words) && !r.words[i].stopped && e.holds(&r.words[i]) {
				return false
			}
			continue
		}
		if e.gap {
			for skip := 0; skip <= longestGap && i+skip <= len(r.words); skip++ {
				if r.matches(pattern[p+1:], i+skip) {
					return true
				}
			}
			return false
		}
		holds := i < len(r.words) && (p == 0 || !r.words[i].stopped) && e.holds(&r.words[i])
		if !holds && !e.optional {
			return false
		}
		if holds {
			if e.optional && r.matches(pattern[p+1:], i) {
				return true
			}
			i++
		}
	}
	return true
}

// phrases applies the cues at every word.
func (r *reader) phrases() {
	table := cues()
	open := table[""]
	for i := range r.words {
		r.tryCues(table[r.words[i].text], i)
		r.tryCues(open, i)
	}
}

// purpose says whether word i stands in what something is done for: "so that they
// can't slip" asserts nothing.
func (r *reader) purpose(i int) bool {
	const reach = 5
	found := false
	r.clauseBefore(i, reach, func(j int) bool {
		found = found || r.is(j, "so") && (r.is(j+1, "that") || r.is(j+1, "they") || r.is(j+1, "it"))
		return !found
	})
	return found
}

func (r *reader) tryCues(list []cue, i int) {
	for c := range list {
		if r.words[i].mood&list[c].moods != 0 && !r.found.has(list[c].kind) && r.matches(list[c].elements, i) {
			if list[c].kind == Universal && r.purpose(i) {
				continue
			}
			r.add(list[c].kind)
		}
	}
}
