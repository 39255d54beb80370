// Package claim finds what a presenter asserts: values, hedges, universals,
// causes, comparisons, and what of a plan stands behind them.
//
// In goes a sentence, plain text, captions or a plan; out come Claims, one for
// every sentence, also for those that claim nothing. The package judges
// nothing: it never says that a claim is true, and a hedge is no fault.
//
// The language read is English. Lists of hedges made for written text (Hyland,
// Metadiscourse, 2005) transfer badly to spoken instruction, where "should",
// "about" and "never" are ordinary words. So the reader first asks of every
// clause what it does: it states something of the object, tells the viewer what
// to do, says what the speaker does, or asks. A cue counts by what it stands in.
//
// Every look around a word reaches a bounded number of words, so the cost is
// linear in the text.
package claim

import (
	"slices"

	"fixslate/plan/prose"
)

// Kind is what sort of assertion a sentence makes.
type Kind string

// The kinds of claim.
const (
	Spec          Kind = "spec"        // what the object is or takes
	Measurement   Kind = "measurement" // what was read or found on this one
	Hedge         Kind = "hedge"       // said with less than certainty
	Universal     Kind = "universal"   // always, never, every one
	Comparison    Kind = "comparison"  // more or less than something else
	Frequency     Kind = "frequency"   // how often
	Compatibility Kind = "compatibility"
	Causal        Kind = "causal"
	Duration      Kind = "duration"
	Cost          Kind = "cost"
	PartNumber    Kind = "part-number"
	Legal         Kind = "legal"
)

// allKinds are in the order in which a claim gives them.
var allKinds = [...]Kind{Spec, Measurement, Hedge, Universal, Comparison, Frequency, Compatibility, Causal, Duration, Cost, PartNumber, Legal}

// Value is a number with its unit, or a part number.
type Value struct {
	Number float64
	Unit   string // in ASCII: "V", "ohm", "degC", "per week", "link"; empty for none
	Part   string // a part number; Number is then 0
	Quoted bool   // in a plan: it comes from a quoted fact
	prose.Span
}

// Claim is one sentence and what it asserts.
type Claim struct {
	Text          string
	Line          int // from 1 in text and captions; 0 in a plan
	Path          string
	Start, End    int // in a plan: bytes of the decoded text at Path
	Kinds         []Kind
	Values        []Value
	NeedsEvidence bool
	Conditional   bool     // says what to make of what may be seen: "if it binds it's bent", "no flash means the coil is dead"
	Evidence      []string // in a plan: "test:ohms", "source:sheet", "opinion"
}

// Has says whether the claim is of a kind.
func (c Claim) Has(k Kind) bool { return slices.Contains(c.Kinds, k) }

// Sentence reads one line of speech, which may hold more than one sentence. Sums
// without a coin are pounds.
func Sentence(text string) Claim { return sentence(text, pounds) }

// sentence reads a line of speech where sums without a coin are in the money given.
func sentence(text, money string) Claim {
	c := Claim{Text: text}
	var found kinds
	r := readers.Get().(*reader)
	defer r.free()
	r.money = money
	for _, span := range r.prose.Sentences(text) {
		r.turn(span.Of(text))
		r.read()
		found |= r.found
		c.Conditional = c.Conditional || r.conditional()
		for _, v := range r.values {
			v.Start += span.Start
			v.End += span.Start
			c.Values = append(c.Values, v)
		}
	}
	c.Kinds = found.list()
	c.NeedsEvidence = len(c.Kinds) > 0
	return c
}

// kinds is a set of kinds, a bit for each in the order of Kinds.
type kinds uint16

func (s *kinds) add(k Kind) { *s |= bitOf(k) }

func (s kinds) has(k Kind) bool { return s&bitOf(k) != 0 }

// bitOf is a kind's bit, 0 for what is no kind.
func bitOf(k Kind) kinds {
	for i := range allKinds {
		if allKinds[i] == k {
			return 1 << i
		}
	}
	return 0
}

func (s kinds) list() []Kind {
	var list []Kind
	for i, k := range allKinds {
		if s&(1<<i) != 0 {
			list = append(list, k)
		}
	}
	return list
}
