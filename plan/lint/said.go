package lint

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"fixslate/plan"
	"fixslate/plan/claim"
	"fixslate/plan/trade"
)

// said is one spoken line with what it claims.
type said struct {
	claim.Claim
	step int
	line *plan.Line
}

// saidLines ties the claims of the narration to its lines.
func saidLines(p *plan.Plan, claims []claim.Claim) []said {
	type place struct {
		path  string
		start int
	}
	at := make(map[place]said, len(claims))
	for i := range p.Steps {
		s := &p.Steps[i]
		for key, lines := range map[string][]plan.Line{"say": s.Lines, "other_side": s.OtherSaid} {
			for j := range lines {
				at[place{stepPath(i, key), lines[j].Start}] = said{step: i, line: &lines[j]}
			}
		}
	}
	var all []said
	for _, c := range claims {
		if s, ok := at[place{c.Path, c.Start}]; ok {
			s.Claim = c
			all = append(all, s)
		}
	}
	return all
}

// report is a Report about the line, or about a stretch of its printed text.
func (s said) report(start, end int) Report {
	from, to := 0, len(s.line.Source)
	if end > start {
		from, to = s.line.SourceSpan(start, end)
	}
	return Report{Path: s.Path, Span: [2]int{s.line.Start + from, s.line.Start + to}}
}

// quotesFact holds where the line quotes a fact: the fact answers for itself.
func (s said) quotesFact() bool {
	return slices.ContainsFunc(s.line.Quotes, func(q plan.Quote) bool {
		return q.Ref.Kind != plan.KindTool && q.Ref.Kind != plan.KindStep && q.Ref.Kind != plan.KindCaution
	})
}

// quantity is a value that has a unit as a quantity; false for a bare number.
func quantity(v claim.Value) (trade.Quantity, bool) {
	unit, ok := trade.LookupUnit(v.Unit)
	return trade.Quantity{Number: v.Number, Unit: unit}, ok
}

// readAloud holds for a reading that is read aloud: while a test is made, or where
// the words say what shows it here and now.
func (p *Pass) readAloud(s said) bool {
	return s.Has(claim.Measurement) && (len(p.Plan.Steps[s.step].Tests) > 0 || readHere(fold(s.line.Print)))
}

// readHere holds for folded words of what an instrument shows as they are said,
// "my meter says", "I get"; a good one's reading, or what it shows when something is
// so, is a claim about others.
func readHere(folded string) bool {
	return hereAndNow().MatchString(folded) && !says(folded, "good", "healthy", "sound", "new", "should", "want", "wants", "always", "usually", "normally", "when", "if")
}

var hereAndNow = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(` (?:my|the|this|our) (?:\S+ )?(?:meter|multimeter|tester|gauge|display|scales?|clamp|thermometer|screen|needle|readout|tachometer) (?:now |here )?(?:says|reads|shows|gives|stays|stops|is (?:showing|reading|at|on)) ` +
		`| (?:i|we) (?:now |only |just )?(?:get|got|read|measure|measured|see) | (?:mine|ours) (?:now |only |just )?(?:reads|says|shows|measures|gives) | on (?:mine|ours|this one) (?:it|that|i|we) `)
})

// loose are the values of a line that no fact answers for: numbers with a unit
// outside its quotes. Times, turns, shares and counts are no values of the
// object, and money is a cost. A reading that is read aloud is shown as it is said.
func (p *Pass) loose(s said) []claim.Value {
	if s.sourced() || p.readAloud(s) {
		return nil
	}
	var found []claim.Value
	for _, v := range s.Values {
		q, ok := quantity(v)
		if v.Quoted || v.Part != "" || !ok {
			continue
		}
		switch q.Unit.Dimension() {
		case trade.Time, trade.Angle, trade.Ratio:
			continue
		}
		if q.Unit == "ft" && says(fold(s.line.Print), standing...) || travelled(q.Unit) && says(fold(s.line.Print), travelWords...) {
			continue
		}
		if !p.tested(s, q) {
			found = append(found, v)
		}
	}
	return found
}

// travelled holds for units in which one says how far to drive, as one says how
// long to wait.
func travelled(unit trade.Unit) bool { return unit == "km" || unit == "mi" }

// standing are feet that a thing stands on.
var standing = []string{"all three feet", "all four feet", "all its feet", "feet down", "feet flat", "rubber feet"}

// travelWords are in a line that says how far to go, and not how long a thing
// lasts.
var travelWords = []string{"drive", "driving", "ride", "riding", "roll", "walk", "push", "go", "trip", "lap", "road", "away", "first", "next", "home", "far", "took", "takes", "check", "look", "again"}

// sourced holds where more than a test of the step stands behind a line.
func (s said) sourced() bool {
	return slices.ContainsFunc(s.Evidence, func(e string) bool { return !strings.HasPrefix(e, testEvidence) })
}

const testEvidence = "test:"

// tested holds where a test that stands behind a line has a reading that the
// quantity is or lies in; that the test speaks of the same thing is not enough.
// A test made in the step need not speak of it where it states the very figure:
// "under one ohm" beside a test that expects at most 1 Ω.
func (p *Pass) tested(s said, q trade.Quantity) bool {
	for _, e := range s.Evidence {
		if slices.ContainsFunc(p.expected(strings.TrimPrefix(e, testEvidence)), func(m trade.Measure) bool { return m.Contains(q) || states(m, q) }) {
			return true
		}
	}
	return slices.ContainsFunc(p.Plan.Steps[s.step].Tests, func(id string) bool {
		return slices.ContainsFunc(p.expected(id), func(m trade.Measure) bool { return states(m, q) }) || p.setBy(id, q)
	})
}

// setBy holds where the way a test is made has the quantity: "a 50 mm block under
// the door".
func (p *Pass) setBy(id string, q trade.Quantity) bool {
	for _, t := range p.Plan.Test(id) {
		for _, text := range [...]string{t.How.Print, t.At.Print, t.Setting.Print} {
			for _, v := range claim.Sentence(text).Values {
				if set, ok := quantity(v); ok && same(set, q) {
					return true
				}
			}
		}
	}
	return false
}

// allTested holds where each figure of a line about the object is tested.
func (p *Pass) allTested(s said) bool {
	return !slices.ContainsFunc(s.Values, func(v claim.Value) bool {
		q, ok := quantity(v)
		return ofTheObject(v) && !(ok && p.tested(s, q))
	})
}

// expected are the good readings of a test.
func (p *Pass) expected(id string) []trade.Measure {
	var all []trade.Measure
	for _, t := range p.Plan.Test(id) {
		all = append(all, p.Plan.Stated(t.Expect)...)
		for _, r := range t.Readings {
			all = append(all, p.Plan.Stated(r.Expect)...)
		}
	}
	return all
}

// printed is a stretch of the line as it is printed.
func (s said) printed(v claim.Value) string {
	if v.Start < 0 || v.End > len(s.line.Print) || v.Start >= v.End {
		return fmt.Sprint(v.Number, " ", v.Unit)
	}
	return strings.TrimSpace(s.line.Print[v.Start:v.End])
}

// unquoted is a text in words of its own: what its quotes give is left out, for
// that is right for each version.
func unquoted(text string, quotes []plan.Quote) string {
	var b strings.Builder
	at := 0
	for _, q := range quotes {
		if q.Start >= at && q.End <= len(text) {
			b.WriteString(text[at:q.Start] + " , ")
			at = q.End
		}
	}
	return b.String() + text[at:]
}
