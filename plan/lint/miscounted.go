package lint

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"fixslate/plan"
	"fixslate/plan/prose"
)

// miscounted finds a line that counts a step's fasteners otherwise than the
// plan: "four screws" where there are three. Fewer may be some of them, where
// the line says so.
func (p *Pass) miscounted(s said) (Report, bool) {
	step := &p.Plan.Steps[s.step]
	if !p.mayCount(step, s.line.Print) {
		return Report{}, false
	}
	for _, c := range counted(s.line.Print) {
		if slices.ContainsFunc(s.line.Quotes, func(q plan.Quote) bool { return c.Start < q.End && q.Start < c.End }) {
			continue
		}
		of, ok := p.countedFastener(step, c.words)
		if !ok || c.n == of.Count || c.n < of.Count && (p.quotesCount(step, of) || says(allThere().ReplaceAllString(fold(clauseAt(s.line.Print, c.Start)), " "), someOfThem...)) {
			continue
		}
		r := s.report(c.Start, c.End)
		r.Message = fmt.Sprintf("%q are said here, and the plan has %d %s", s.line.Print[c.Start:c.End], of.Count, of.What.Print)
		r.Hint = fmt.Sprintf("settle which is right, and quote it: {%s}", of.ID)
		return r, true
	}
	return Report{}, false
}

// mayCount holds for a line with the noun of one of the step's fasteners in it:
// to read all numbers of every line took a fiftieth of a check.
func (p *Pass) mayCount(step *plan.Step, line string) bool {
	folded := prose.Fold(line)
	return slices.ContainsFunc(step.Fasteners, func(id string) bool {
		return slices.ContainsFunc(p.Plan.Fastener(id), func(x *plan.Fastener) bool { return strings.Contains(folded, nounOf(ownWords(x.What.Print))) })
	})
}

// quotesCount holds where the step quotes a fastener with its number: fewer of
// the noun are others, or some of them.
func (p *Pass) quotesCount(step *plan.Step, f *plan.Fastener) bool {
	return slices.ContainsFunc(step.Lines, func(l plan.Line) bool {
		return slices.ContainsFunc(l.Quotes, func(q plan.Quote) bool {
			return q.Key == "" && q.Ref == plan.Ref{Kind: plan.KindFastener, ID: f.ID}
		})
	})
}

// clauseAt is the stretch between commas and stops that holds a byte of a text.
func clauseAt(text string, at int) string {
	const marks = ",.;:!?"
	from, to := strings.LastIndexAny(text[:at], marks)+1, len(text)
	if end := strings.IndexAny(text[at:], marks); end >= 0 {
		to = at + end
	}
	return text[from:to]
}

// tally is a number of things in a line, with the words that name them.
type tally struct {
	prose.Span // of the number
	n          int
	words      []string // folded, up to the one that may be the noun
}

// counted finds the numbers of things in a text, "both" among them, with up to
// three words after each.
func counted(text string) []tally {
	words := prose.Words(text)
	var found []tally
	add := func(at prose.Span, n int) {
		t := tally{Span: at, n: n}
		last := at.End
		for _, w := range words {
			if w.Start < at.End || len(t.words) == 3 {
				continue
			}
			if strings.ContainsAny(text[last:w.Start], ".,;:!?()") {
				break
			}
			t.words, last = append(t.words, prose.Fold(text[w.Start:w.End])), w.End
		}
		found = append(found, t)
	}
	for _, f := range prose.Figures(text) {
		if f.Kind == prose.Count && len(f.Values) == 1 {
			add(f.Span, int(f.Values[0].Number))
		}
	}
	for _, w := range words {
		if prose.Fold(text[w.Start:w.End]) == "both" {
			add(w, 2)
		}
	}
	return found
}

// countedFastener is the fastener of a step that words after a number name: its
// noun is the last of them, and what stands before are words of its name. Of
// several with one noun, the one whose name has more of the words; where they
// can't be told apart and have different numbers, none.
func (p *Pass) countedFastener(step *plan.Step, words []string) (*plan.Fastener, bool) {
	var of *plan.Fastener
	best, alike := 0, false
	for _, id := range step.Fasteners {
		for _, x := range p.Plan.Fastener(id) {
			n := namedBy(x.What.Print, words)
			if x.Count == 0 || n == 0 || n < best {
				continue
			}
			alike = n == best && (alike || of != nil && of.Count != x.Count)
			of, best = x, n
		}
	}
	return of, of != nil && !alike
}

// namedBy says how many of the words name a thing, up to its noun; 0 where they
// name something else.
func namedBy(name string, words []string) int {
	own := ownWords(name)
	if len(own) == 0 {
		return 0
	}
	noun := nounOf(own)
	for i, w := range words {
		if strings.TrimSuffix(w, "s") == noun {
			return i + 1
		}
		if !slices.ContainsFunc(own, func(o string) bool { return strings.TrimSuffix(o, "s") == strings.TrimSuffix(w, "s") }) {
			return 0
		}
	}
	return 0
}

// ownWords are the words of a name, folded.
func ownWords(name string) []string {
	return strings.Fields(strings.ReplaceAll(fold(name), " . ", " "))
}

// nounOf is the last of a name's words, in the singular; empty for no words.
func nounOf(own []string) string {
	if len(own) == 0 {
		return ""
	}
	return strings.TrimSuffix(own[len(own)-1], "s")
}

// allThere says where the things are, all of them: "behind it are four screws".
var allThere = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(` (?:behind|under|underneath|below|at|on|by|along) (?:it|this|that|there|here|them) `)
})

// someOfThem tell that a count is of a part of them.
var someOfThem = []string{"of", "last", "first", "other", "more", "top", "bottom", "upper", "lower", "front", "rear", "left", "right", "side", "remaining", "along", "inner", "outer", "long", "short", "only", "just", "another", "at", "on", "under", "underneath", "behind", "by"}
