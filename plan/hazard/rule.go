package hazard

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan/hazard/class"
)

// A rule says which marks together show a class of hazard:
//
//	rule CLASS: TERM …
//	rule CLASS!: TERM …          the class's stronger signal is due
//	rule CLASS?: TERM …          a weak sign: it stands back where a rule of less
//	rule CLASS??: TERM …         "?" shows another hazard in the step, and where the
//	                             object is harmless or at rest
//	rule CLASS=FAMILY: TERM …    the hazard counts under another family too
//
// The first term must be met by the words of the action or by a tool in use,
// the others anywhere they say; all must be met.
//
//	open>cover         an act with the mark "open" done to a thing with "cover"
//	open>cover&hot     the thing has both
//	open>*             the act, done to anything that is named or meant
//	open~cover         the same, but anywhere in the sentence
//	do climb           an act, whatever it is done to
//	in child           a thing or state in the words of the action
//	tool saw           a tool in use: of the step, or "with the saw"
//	on mains           anywhere about the step: action, title, tools, object, states
//	not low-power      nowhere about the step
//	unless unplug      not in the sentence
//
// "a|b" is either. An act done to nothing that is named is done to the object
// of the plan.
type rule struct {
	class  int // index in the catalogue
	family string
	strong bool
	weak   int  // how readily it stands back: 0 never, 1, weakest
	loose  bool // any work meets its first term
	terms  []term
}

// weakest is how readily a rule stands back at most.
const weakest = 2

// firm holds for a rule that narration can meet.
func (r *rule) firm() bool { return r.weak == 0 && !r.loose }

type termKind uint8

const (
	binds termKind = iota
	shares
	does
	within
	tool
	about
	nowhere
	unless
)

var termWords = map[string]termKind{"do": does, "in": within, "tool": tool, "on": about, "not": nowhere, "unless": unless}

// term is one condition. For binds and shares, a is of the act, b and c of the
// thing (c empty: nothing more); the others have a alone.
type term struct {
	kind    termKind
	a, b, c set
}

// readGate keeps the terms that every rule of a class has.
func (x *compiler) readGate(l line) error {
	if _, ok := class.Find(l.body); !ok {
		return fmt.Errorf("no hazard class %q", l.body)
	}
	x.gates[l.body] = l.tail
	return nil
}

// readRule compiles a rule. A rule of what a narrator says instead of a caution
// names a class or a family.
func (x *compiler) readRule(l line) error {
	name, family, _ := strings.Cut(l.body, "=")
	name, strong := strings.CutSuffix(name, "!")
	if _, known := class.FindFamily(family); family != "" && !known {
		return fmt.Errorf("no hazard family %q", family)
	}
	firm := strings.TrimRight(name, "?")
	r := rule{strong: strong, weak: len(name) - len(firm), family: family}
	name = firm
	r.class = slices.IndexFunc(catalogue(), func(c class.Class) bool { return c.ID == name })
	if l.word == "avoid" && r.class < 0 {
		r.family = name
	} else if r.class < 0 {
		return fmt.Errorf("no hazard class %q", name)
	}
	if _, ok := class.FindFamily(r.family); r.family != "" && !ok {
		return fmt.Errorf("%s: no hazard family %q", l.body, r.family)
	}
	fields := strings.Fields(l.tail)
	if l.word == "rule" {
		fields = append(fields, strings.Fields(x.gates[name])...)
	}
	for i := 0; i < len(fields); i++ {
		var t term
		var err error
		if kind, ok := termWords[fields[i]]; ok {
			if i++; i == len(fields) {
				return fmt.Errorf("%q lacks marks", fields[i-1])
			}
			t.kind = kind
			t.a, err = x.either(fields[i])
		} else {
			t, err = x.pair(fields[i])
		}
		if err != nil {
			return err
		}
		r.terms = append(r.terms, t)
	}
	if len(r.terms) == 0 || r.terms[0].kind > tool {
		return fmt.Errorf("%s: the first term is no action", l.body)
	}
	if l.word == "avoid" {
		r.weak = 0 // nor loose: it stands back for nothing
		x.avoids.rules = append(x.avoids.rules, r)
		return nil
	}
	first := &r.terms[0]
	r.loose = (first.kind == does || first.kind == shares) && (first.a.has(x.own.work) || first.a.has(x.own.busy))
	x.rules.rules = append(x.rules.rules, r)
	return nil
}

func (x *compiler) pair(text string) (term, error) {
	t := term{kind: binds}
	act, thing, ok := strings.Cut(text, ">")
	if !ok {
		t.kind = shares
		if act, thing, ok = strings.Cut(text, "~"); !ok {
			return t, fmt.Errorf("%q is no term", text)
		}
	}
	var err error
	if t.a, err = x.either(act); err != nil {
		return t, err
	}
	if thing == "*" {
		return t, nil
	}
	b, c, both := strings.Cut(thing, "&")
	if t.b, err = x.either(b); err == nil && both {
		t.c, err = x.either(c)
	}
	return t, err
}

// either is the set of alternatives.
func (x *compiler) either(text string) (set, error) {
	var s set
	for _, name := range strings.Split(text, "|") {
		m, ok := x.marks[name]
		if !ok {
			return s, fmt.Errorf("nothing is %q", name)
		}
		s.add(m)
	}
	return s, nil
}

// scene is one sentence of an action and all that stands around it.
type scene struct {
	toks   []token
	hits   []hit // of the sentence, in order
	around []hit // of everything else: what was said before, title, tools, object, states
	sums   [wheres]set
	strict bool   // only what stands in the act's own clause counts
	body   uint16 // the mark of hands and feet
	object hit    // the plan's object, for acts that name nothing
	used   []bool

	harmless bool // weak rules are silent
}

// meets says whether a rule that may be met is met with the act, thing or tool at k as its
// first term, and by which hits.
func (s *scene) meets(r *rule, k int, by []*hit) ([]*hit, bool) {
	for i := range r.terms {
		t := &r.terms[i]
		if t.kind >= nowhere {
			continue // the rule's needs
		}
		met := false
		if i == 0 {
			by, met = s.starts(t, k, by)
		} else {
			by, met = s.also(t, by)
		}
		if !met {
			return by, false
		}
	}
	return by, true
}

// starts tests the first term against the hit at k.
func (s *scene) starts(t *term, k int, by []*hit) ([]*hit, bool) {
	h := &s.hits[k]
	switch t.kind {
	case binds, shares, does:
		if !h.act {
			return by, false
		}
	case tool:
		if !s.used[k] {
			return by, false
		}
	}
	by = append(by, &s.hits[k])
	switch t.kind {
	case binds:
		return s.doneTo(t, k, by)
	case shares:
		if s.strict {
			return s.doneTo(t, k, by)
		}
		return s.anyThing(t, by)
	}
	return by, true
}

// doneTo looks for a thing that the act at k is done to.
func (s *scene) doneTo(t *term, k int, by []*hit) ([]*hit, bool) {
	met := false
	s.bound(k, func(h *hit) bool {
		if t.fits(h) {
			by, met = append(by, h), true
		}
		return met
	})
	return by, met
}

// fits says whether a thing has the marks that the term asks of it.
func (t *term) fits(h *hit) bool {
	return (t.b.empty() || h.marks.meets(&t.b)) && (t.c.empty() || h.marks.meets(&t.c))
}

func (s *scene) anyThing(t *term, by []*hit) ([]*hit, bool) {
	for i := range s.hits {
		h := &s.hits[i]
		if !h.act && t.fits(h) {
			return append(by, h), true
		}
	}
	return by, false
}

// also tests a further term.
func (s *scene) also(t *term, by []*hit) ([]*hit, bool) {
	switch t.kind {
	case binds, shares:
		for i := range s.hits {
			if h := &s.hits[i]; h.act && h.marks.meets(&t.a) {
				if with, ok := s.starts(t, i, by); ok {
					return with, true
				}
			}
		}
		return by, false
	case does:
		return pick(s.hits, by, func(h *hit) bool { return h.act && h.marks.meets(&t.a) })
	case within:
		return pick(s.hits, by, func(h *hit) bool { return !h.act && h.marks.meets(&t.a) })
	case tool:
		for i := range s.hits {
			if s.used[i] && s.hits[i].marks.meets(&t.a) {
				return append(by, &s.hits[i]), true
			}
		}
		return pick(s.around, by, func(h *hit) bool { return h.zone == gear && h.marks.meets(&t.a) })
	}
	by, met := pick(s.hits, by, func(h *hit) bool { return h.marks.meets(&t.a) })
	if !met {
		by, met = pick(s.around, by, func(h *hit) bool { return h.marks.meets(&t.a) })
	}
	return by, met
}

func pick(hits []hit, by []*hit, fits func(*hit) bool) ([]*hit, bool) {
	for i := range hits {
		if fits(&hits[i]) {
			return append(by, &hits[i]), true
		}
	}
	return by, false
}
