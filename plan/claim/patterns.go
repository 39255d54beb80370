package claim

import (
	"fmt"
	"math"
	"math/bits"
	"slices"
	"strings"
)

// readCues reads the patterns.
func (m *maker) readCues(text string) error {
	lines := strings.Count(text, "\n") + 1
	book := &m.book
	*book = cueBook{cues: make([]cue, 0, lines), links: make([]link, 1, 4*lines)}
	elements := make([]element, 0, 5*lines)
	var fields []string
	for line := range strings.Lines(text) {
		fields = fields[:0]
		for f := range strings.FieldsSeq(line) {
			fields = append(fields, f)
		}
		if len(fields) == 0 || fields[0][0] == '#' {
			continue
		}
		if len(fields) < 3 {
			return fmt.Errorf("cues: %q has no pattern", line)
		}
		c := cue{kind: Kind(fields[0])}
		c.bit.add(c.kind)
		if c.bit == 0 {
			return fmt.Errorf("cues: %q: no kind %q", line, c.kind)
		}
		for _, letter := range fields[1] {
			m, ok := moodLetters[letter]
			if !ok {
				return fmt.Errorf("cues: %q: no mood %q", line, letter)
			}
			c.moods |= m
		}
		from := len(elements)
		for _, f := range fields[2:] {
			e, err := m.readElement(f)
			if err != nil {
				return fmt.Errorf("cues: %q: %w", line, err)
			}
			elements = append(elements, e)
		}
		c.elements = slices.Clone(elements[from:])
		c.wants = wants(c.elements)
		book.cues = append(book.cues, c)
		m.enter(int32(len(book.cues) - 1))
	}
	return nil
}

// enter files a pattern under everything it may begin with.
func (m *maker) enter(number int32) {
	b := &m.book
	enter := func(lists *[64][]int32, set class) {
		for ; set != 0; set &= set - 1 {
			at := bits.TrailingZeros64(uint64(set))
			lists[at] = append(lists[at], number)
		}
	}
	for _, e := range b.cues[number].elements {
		if e.any || e.numeric || e.plural || e.gap {
			b.open = append(b.open, number)
			return
		}
		for _, id := range e.ids {
			b.links = append(b.links, link{number, m.terms[id].first})
			m.terms[id].first = int32(len(b.links) - 1)
		}
		enter(&b.asked, e.asked)
		enter(&b.others, e.others)
		b.leads.asked |= e.asked
		b.leads.other |= e.others
		if !e.optional {
			return
		}
	}
}

func (m *maker) readElement(f string) (element, error) {
	var e element
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
			list, ok := m.lists[alternative[1:]]
			if !ok {
				return e, fmt.Errorf("no list %q", alternative)
			}
			e.asked |= list.asked
			e.others |= list.other
		default:
			e.ids = append(e.ids, m.id(alternative))
		}
	}
	return e, nil
}

// wants are those of the two elements behind the first that the fewest words
// meet.
func wants(pattern []element) (two [2]want) {
	least := [2]int{65, 65}
	two[0].ids, two[1].ids = math.MaxUint64, math.MaxUint64
	first := true
	for i := range pattern {
		e := &pattern[i]
		if e.optional || e.absent {
			continue
		}
		if first || e.any || e.numeric || e.plural || e.gap {
			first = false
			continue
		}
		w := want{asked: e.asked, others: e.others}
		for _, id := range e.ids {
			w.ids |= bit(id)
		}
		const list = 8 // as many words of a sentence may be in a list
		n := bits.OnesCount64(w.ids) + list*bits.OnesCount64(uint64(w.asked|w.others))
		switch {
		case n < least[0]:
			two[0], two[1], least[0], least[1] = w, two[0], n, least[0]
		case n < least[1]:
			two[1], least[1] = w, n
		}
	}
	return two
}
