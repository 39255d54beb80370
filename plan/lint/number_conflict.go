package lint

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var numberConflict = Rule{Name: "number-conflict", Group: Truth, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	p.factConflicts(report)
	p.cautionConflicts(report)
	p.saidTwice(report)
	for _, s := range p.said {
		for _, v := range s.Values {
			q, ok := quantity(v)
			if v.Quoted || v.Part != "" || !ok {
				continue
			}
			if f, other := p.contradicted(s, q); other {
				r := s.report(v.Start, v.End)
				r.Message = fmt.Sprintf("%s is said to be %s here, and %s in the plan", f.what, s.printed(v), f.measure)
				r.Hint = fmt.Sprintf("settle which is right, and quote it: {%s}", f.quote)
				report(r)
			}
		}
		if r, ok := p.miscounted(s); ok {
			report(r)
		}
	}
}}

// valued is a fact with a measured value.
type valued struct {
	what, quote string
	ref         plan.Ref
	variants    []string
	measure     trade.Measure
	path        string
}

// valuedFacts are the facts with a measured value.
func valuedFacts(p *plan.Plan) []valued {
	var all []valued
	for i, s := range p.Specs {
		all = append(all, valued{s.What.Print, s.ID, plan.Ref{Kind: plan.KindSpec, ID: s.ID}, s.Variants, s.Value.Measure, row(plan.KindSpec, i, "value")})
	}
	for i, f := range p.Fasteners {
		all = append(all, valued{"the torque of " + f.What.Print, f.ID + ".torque", plan.Ref{Kind: plan.KindFastener, ID: f.ID}, f.Variants, f.Torque, row(plan.KindFastener, i, "torque")})
	}
	for i, f := range p.Fuses {
		all = append(all, valued{f.At.Print, f.ID + ".rating", plan.Ref{Kind: plan.KindFuse, ID: f.ID}, f.Variants, f.Rating, row(plan.KindFuse, i, "rating")})
	}
	return slices.DeleteFunc(all, func(v valued) bool { return !v.measure.Measured() })
}

// factConflicts are facts of one name with two values.
func (p *Pass) factConflicts(report func(Report)) {
	facts := p.facts
	byName := map[string][]int{}
	for i, f := range facts {
		name := f.measure.Unit.Dimension()
		key := strings.Join(contentWords(f.what), " ") + "/" + string(name)
		for _, j := range byName[key] {
			o := facts[j]
			if o.ref != f.ref && o.ref.Kind == f.ref.Kind && plan.Meets(o.variants, f.variants) && !agree(o.measure, f.measure) {
				report(Report{
					Message: fmt.Sprintf("%s has two values: %s (%s) and %s (%s)", f.what, o.measure, o.ref.ID, f.measure, f.ref.ID),
					Hint:    "keep the one that its source gives, or say in what how the two differ",
					Path:    f.path,
				})
			}
		}
		byName[key] = append(byName[key], i)
	}
}

func agree(a, b trade.Measure) bool {
	if a.Equal(b) {
		return true
	}
	for _, q := range b.Quantities() {
		if !a.Contains(q) {
			return false
		}
	}
	return len(b.Quantities()) > 0
}

// contradicted finds the fact that a line speaks of and whose value it gets
// wrong: the fact is quoted in the line, or most words of its name stand there.
// A line that agrees with one such fact contradicts none.
func (p *Pass) contradicted(s said, q trade.Quantity) (valued, bool) {
	folded := fold(s.line.Print)
	if f, other := p.otherTorque(s, q); other || q.Unit.Dimension() == trade.Torque {
		return f, other
	}
	if f, other := p.otherFuse(s, q); other {
		return f, true
	}
	var wrong valued
	found := false
	for _, f := range p.facts {
		if f.measure.Unit.Dimension() != q.Unit.Dimension() || !plan.Meets(f.variants, p.Plan.Steps[s.step].Variants) {
			continue
		}
		quoted := slices.ContainsFunc(s.line.Quotes, func(x plan.Quote) bool { return x.Ref == f.ref })
		if quoted && slices.ContainsFunc(s.line.Quotes, func(x plan.Quote) bool { return f.quote == x.Ref.ID || f.quote == x.Ref.ID+"."+x.Key }) {
			return valued{}, false // its value stands in the line: "{fall} in a metre"
		}
		if !quoted && !namedIn(folded, f.what) && !(p.quotesNear(s.step, f.ref) && says(folded, headNoun(f.what))) {
			continue
		}
		if states(f.measure, q) || f.measure.Contains(q) && !(says(folded, wanted...) && otherLimit(folded, f.measure)) {
			return valued{}, false
		}
		if f.ref.Kind == plan.KindFuse && !quoted && numberedOther(folded, f.what) {
			continue
		}
		wrong, found = f, true
	}
	// A reading read aloud is what it is: it may be bad on purpose. What is wanted
	// of it is none.
	return wrong, found && (!p.readAloud(s) || says(folded, wanted...))
}

// otherLimit holds where a line gives a limit and the fact is one of the same
// kind: "at least three" lies within "at least 2" and is another limit.
func otherLimit(folded string, m trade.Measure) bool {
	return m.Shape == trade.AtLeast && says(folded, "at least", "no less than", "not less than") ||
		m.Shape == trade.AtMost && says(folded, "at most", "no more than", "not more than")
}

// wanted are words of what a reading has to be.
var wanted = []string{"you want", "we want", "it wants", "has to be", "must be", "should be", "should read", "has to read", "must read", "ought to be"}

// numberedOther holds where a line speaks of a numbered fuse, and not of the one
// of that name: "fuse nine beside it".
func numberedOther(folded, name string) bool {
	own := numbered().FindStringSubmatch(fold(name))
	of := numbered().FindAllStringSubmatch(folded, -1)
	return own != nil && len(of) > 0 && !slices.ContainsFunc(of, func(m []string) bool { return digits(m[1]) == digits(own[1]) })
}

var numbered = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\bfuse (?:number )?(\d+|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\b`)
})

var smallNumbers = []string{"zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}

// digits is a small number word in digits, else the word as it is.
func digits(word string) string {
	if i := slices.Index(smallNumbers, word); i >= 0 {
		return strconv.Itoa(i)
	}
	return word
}

// quotesNear holds where the step quotes the fact elsewhere, or a caution that it
// speaks does.
func (p *Pass) quotesNear(step int, ref plan.Ref) bool {
	if p.quotesIn(step, ref) {
		return true
	}
	s := &p.Plan.Steps[step]
	return slices.ContainsFunc(s.Cautions, func(use plan.StepCaution) bool {
		c := p.Plan.CautionOf(s, use)
		return c != nil && slices.ContainsFunc(c.Say.Quotes, func(q plan.Quote) bool { return q.Ref == ref })
	})
}

// otherFuse finds the fuse that a line wants replaced by another rating: "if the
// fuse blows, put a 10 amp one in". It is the step's, or the plan's only one where
// the line speaks of "the fuse". What is not to be fitted is no conflict.
func (p *Pass) otherFuse(s said, q trade.Quantity) (valued, bool) {
	folded := fold(s.line.Print)
	if q.Unit.Dimension() != trade.Current || !says(folded, "fuse") || !says(folded, fuseFitting...) || says(folded, "never", "not", "don't", "no", "instead", "nor") {
		return valued{}, false
	}
	var wrong valued
	n := 0
	for _, f := range p.facts {
		if f.ref.Kind != plan.KindFuse || f.measure.Unit.Dimension() != trade.Current || !plan.Meets(f.variants, p.Plan.Steps[s.step].Variants) {
			continue
		}
		if states(f.measure, q) {
			return valued{}, false
		}
		if n++; n == 1 || slices.Contains(p.Plan.Steps[s.step].Fuses, f.ref.ID) {
			wrong = f
		}
	}
	here := slices.Contains(p.Plan.Steps[s.step].Fuses, wrong.ref.ID)
	return wrong, n > 0 && (here || n == 1 && says(folded, "the fuse", "this fuse", "that fuse", "your fuse"))
}

// fuseFitting are words of putting a fuse in.
var fuseFitting = []string{"put", "fit", "use", "push", "swap", "replace", "change", "stick", "try", "pop", "takes", "take", "goes"}

// otherTorque finds the fact that a line gives a torque which the plan
// doesn't: of the fasteners that the step turns the one that the line names, else the
// only one. A torque of any of them is none of the others'.
func (p *Pass) otherTorque(s said, q trade.Quantity) (valued, bool) {
	if q.Unit.Dimension() != trade.Torque {
		return valued{}, false
	}
	var wrong valued
	n, best := 0, 0
	for _, f := range p.facts {
		if f.measure.Unit.Dimension() != trade.Torque || !plan.Meets(f.variants, p.Plan.Steps[s.step].Variants) {
			continue
		}
		here := f.ref.Kind == plan.KindFastener && slices.Contains(p.Plan.Steps[s.step].Fasteners, f.ref.ID) || slices.ContainsFunc(s.line.Quotes, func(x plan.Quote) bool { return x.Ref == f.ref })
		called := nounIn(fold(s.line.Print), f.what)
		if !here && !called {
			continue
		}
		if states(f.measure, q) || f.measure.Contains(q) {
			return valued{}, false
		}
		// Turned here and named is more than named, which is more than turned here.
		rank := 1
		if called && here {
			rank = 3
		} else if called {
			rank = 2
		}
		if n++; rank > best || rank == best && rank < 3 {
			wrong, best = f, rank
		}
	}
	return wrong, n == 1 || best > 1
}

// nounIn holds where a line has the noun of a name, its last word, in one number
// or the other.
func nounIn(folded, name string) bool {
	words := strings.Fields(strings.ReplaceAll(fold(name), " . ", " "))
	if len(words) == 0 {
		return false
	}
	noun := strings.TrimSuffix(words[len(words)-1], "s")
	return says(folded, noun, noun+"s")
}

// namedIn holds where a line names a thing: the last word of its name, its
// noun, and at least half of the others.
func namedIn(folded, name string) bool {
	words := contentWords(name)
	if len(words) == 0 || !says(folded, words[len(words)-1]) {
		return false
	}
	n := 0
	for _, w := range words {
		if says(folded, w) {
			n++
		}
	}
	return n >= 2 || len(words) == 1
}
