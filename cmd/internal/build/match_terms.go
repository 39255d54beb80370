package build

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/chapters/align"
	"fixslate/chapters/captions"
	"fixslate/plan"
	"fixslate/plan/prose"
)

// accepted marks the terms that words ask for.
func accepted(terms []align.Term, words []string) ([]bool, error) {
	marks := make([]bool, len(terms))
	for _, word := range words {
		word = strings.TrimSpace(word)
		if word == "" {
			continue
		}
		met := word == "all"
		for i, t := range terms {
			if word == "all" || named(t, word) {
				marks[i], met = true, true
			}
		}
		if !met {
			return marks, unknownTerm(terms, word)
		}
	}
	return marks, nil
}

// named holds where a word means the term: as it is spelled, as it was heard,
// or by its id.
func named(t align.Term, word string) bool {
	same := func(other string) bool {
		return prose.Fold(strings.Join(strings.Fields(other), " ")) == prose.Fold(strings.Join(strings.Fields(word), " "))
	}
	return same(t.Term) || same(t.Heard) || word == t.Ref.ID || word == t.Ref.String()
}

func unknownTerm(terms []align.Term, word string) error {
	var names []string
	for _, t := range terms {
		if !slices.Contains(names, t.Term) {
			names = append(names, t.Term)
		}
	}
	if len(names) == 0 {
		return fmt.Errorf("no term is proposed, so %q can't be accepted", word)
	}
	return fmt.Errorf("no term %q is proposed; accept all, or some of %s", word, strings.Join(names, ", "))
}

func amendments(terms []align.Term, accepted []bool) []captions.Amendment {
	var all []captions.Amendment
	for i, t := range terms {
		if accepted[i] {
			all = append(all, captions.Amendment{Cue: t.Cue, Span: t.Span, Text: t.Term})
		}
	}
	return all
}

// Snippet is TOML for the plan that makes the proposed terms known: the
// accepted ones, or all where none is. A term of the plan stands there whole,
// to be put in place of its own, and only with something new. Empty where
// nothing is new.
func (m *Matched) Snippet() string {
	type entry struct {
		id, text string
		heard    []string
		known    int // of heard, how many the plan has
	}
	var entries []*entry
	any := slices.Contains(m.Accepted, true)
	for i, t := range m.Match.Terms {
		if any && !m.Accepted[i] {
			continue
		}
		at := slices.IndexFunc(entries, func(e *entry) bool { return e.text == t.Term })
		if at < 0 {
			e := &entry{text: t.Term}
			if known := m.term(t); known != nil {
				e.id, e.text, e.heard, e.known = known.ID, known.Text, slices.Clone(known.Misheard), len(known.Misheard)
			}
			if at = slices.IndexFunc(entries, func(o *entry) bool { return o.text == e.text }); at < 0 {
				entries = append(entries, e)
				at = len(entries) - 1
			}
		}
		heard := strings.Join(strings.Fields(t.Heard), " ")
		if !slices.ContainsFunc(entries[at].heard, func(h string) bool { return prose.Fold(h) == prose.Fold(heard) }) {
			entries[at].heard = append(entries[at].heard, heard)
		}
	}
	var b strings.Builder
	inline := m.termsInline()
	for _, e := range entries {
		if len(e.heard) == e.known {
			continue
		}
		var keys []string
		if e.id != "" {
			keys = append(keys, "id = "+tomlString(e.id))
		}
		var heard []string
		for _, h := range e.heard {
			heard = append(heard, tomlString(h))
		}
		keys = append(keys, "text = "+tomlString(e.text), "misheard = ["+strings.Join(heard, ", ")+"]")
		if e.id != "" {
			b.WriteString("# in place of the plan's own\n")
		}
		if inline {
			b.WriteString("{ " + strings.Join(keys, ", ") + " },\n")
		} else {
			b.WriteString("[[term]]\n" + strings.Join(keys, "\n") + "\n")
		}
	}
	return b.String()
}

// termsInline holds where the plan writes its terms as one list, term = [...]:
// TOML 1.0 lets no [[term]] stand beside it.
func (m *Matched) termsInline() bool {
	spans := m.Planned.Spans
	if !spans.Has("term[0]") {
		return false
	}
	at := spans.Value("term[0]")
	return strings.HasPrefix(at.Source.Text[at.Span.Start:], "{")
}

// term is the plan's own term that a proposal is for, nil for a tool or part.
func (m *Matched) term(t align.Term) *plan.Term {
	p := m.Planned.Plan
	for i := range p.Terms {
		if t.Ref.Kind == plan.KindTerm && p.Terms[i].ID == t.Ref.ID || prose.Fold(p.Terms[i].Text) == prose.Fold(t.Term) {
			return &p.Terms[i]
		}
	}
	return nil
}

// tomlString writes a basic string (TOML 1.0, String): quotes, backslashes and
// control characters escaped.
func tomlString(text string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range text {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r < ' ' || r == 0x7f:
			fmt.Fprintf(&b, "\\u%04X", r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}
