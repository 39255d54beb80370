package picture

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diagnose"
	"fixslate/plan/prose"
)

// Test is a test of a decision tree in the words of the plan, with its number
// in the drawing and in the table.
type Test struct {
	Number   int
	Question string
	Detail   string // with what, where, how long
	Ways     []Way  // in the order they are drawn: the one the stem follows is last
}

// Way is what may be seen at a test and where it leads: to another test, or to
// an end.
type Way struct {
	Seen   string // "bad", or the outcome in the plan's words
	Chance string // "30 %" of all faults come this way; empty where none does
	Next   *Test  // nil at an end
	Found  string // at an end: what is wrong, as far as the tests can tell
	Then   string // at an end: what the plan says to do
	stem   bool   // drawn straight down
}

// mostDrawn bounds a drawing: longer ones nobody follows.
const mostDrawn = 60

// Flow gives a result's tree as tests in the order they are drawn, the first
// test first; none where there is nothing to test.
func Flow(p *plan.Plan, r diagnose.Result) []*Test {
	f := flow{plan: p, versions: versionsOf(r)}
	if r.Tree == nil || r.Tree.Test == "" {
		return nil
	}
	f.test(r.Tree)
	return f.all
}

type flow struct {
	plan     *plan.Plan
	versions []string // that the tree is for; none: all of them
	all      []*Test
}

func versionsOf(r diagnose.Result) []string {
	if r.Variant == "" {
		return nil
	}
	return []string{r.Variant}
}

func (f *flow) test(n *diagnose.Node) *Test {
	row := f.row(n.Test)
	t := &Test{Number: len(f.all) + 1, Question: row.Question.Print, Detail: f.detail(row, n.Minutes)}
	f.all = append(f.all, t)
	stem := stemOf(n)
	order := []int{}
	for k := range n.Branches {
		if k != stem {
			order = append(order, k)
		}
	}
	order = append(order, stem)
	for _, k := range order {
		b := n.Branches[k]
		w := Way{Seen: seen(row, b), Chance: percent(b.Next.Share), stem: k == stem && b.Next.Test != ""}
		switch {
		case b.Next.Test == "":
			w.Found, w.Then = f.found(b.Next), f.then(b)
		case len(f.all) >= mostDrawn:
			w.Found, w.stem = "more tests than are drawn here", false
		default:
			w.Next = f.test(b.Next)
		}
		t.Ways = append(t.Ways, w)
	}
	return t
}

// stemOf is the branch that is followed straight down: the good one where it
// leads to a test, else the one that leads to the most tests.
func stemOf(n *diagnose.Node) int {
	stem, most := len(n.Branches)-1, -1
	for k, b := range n.Branches {
		size := tests(b.Next)
		if b.Good && size > 0 {
			return k
		}
		if size > most {
			stem, most = k, size
		}
	}
	return stem
}

func tests(n *diagnose.Node) int {
	if n.Test == "" {
		return 0
	}
	sum := 1
	for _, b := range n.Branches {
		sum += tests(b.Next)
	}
	return sum
}

// row is the test of an id for the version the tree is for.
func (f *flow) row(id string) *plan.Test {
	rows := f.plan.Test(id)
	for _, t := range rows {
		if plan.Meets(t.Variants, f.versions) {
			return t
		}
	}
	return rows[0]
}

func (f *flow) detail(t *plan.Test, minutes float64) string {
	with := f.plan.NamesFor(plan.KindTool, t.Instrument, f.versions)
	var words []string
	for _, w := range []string{strings.Join(with, " or "), t.At.Print, workTime(minutes)} {
		if w != "" {
			words = append(words, w)
		}
	}
	return strings.Join(words, ", ")
}

// workTime prints a length of work: "under 1 min", "2.5 min", "14 min",
// "1 h 5 min".
func workTime(m float64) string {
	switch tenths := int(m*10 + 0.5); {
	case tenths == 0:
		return "no time"
	case tenths < 10:
		return "under 1 min"
	case tenths < 100:
		return strings.TrimSuffix(fmt.Sprintf("%d.%d", tenths/10, tenths%10), ".0") + " min"
	}
	return prose.Minutes(m)
}

func seen(t *plan.Test, b diagnose.Branch) string {
	for i := range t.Outcomes {
		if t.Outcomes[i].ID == b.Outcome {
			return t.Outcomes[i].Sees.Print
		}
	}
	if b.Outcome == diagnose.Pass && t.Expect.Print != "" {
		return "good: " + t.Expect.Print
	}
	if b.Outcome == diagnose.Pass {
		return "good"
	}
	return "bad"
}

func percent(share float64) string {
	switch n := int(share*100 + 0.5); {
	case share <= 0:
		return ""
	case n == 0:
		return "under 1 %"
	case n == 100 && share < 1-1e-9:
		return "over 99 %"
	default:
		return strconv.Itoa(n) + " %"
	}
}

const unnamed = "a cause that the plan doesn't name"

// found is what an end means.
func (f *flow) found(n *diagnose.Node) string {
	names := f.plan.NamesFor(plan.KindCause, n.Causes, f.versions)
	if n.Unknown {
		names = append(names, unnamed)
	}
	switch {
	case len(names) == 0:
		return "none of the causes that the plan names"
	case len(names) == 1:
		return names[0]
	case n.Cut:
		return either(names) + ": more tests than were worked out"
	}
	return either(names) + ": no test here tells them apart"
}

// either is a list of which one holds: "a, b or c", with semicolons where a
// name has a comma or an "or" of its own.
func either(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	comma, or := ", ", " or "
	if slices.ContainsFunc(names, func(n string) bool { return strings.Contains(n, ",") || strings.Contains(n, " or ") }) {
		comma, or = "; ", "; or "
	}
	return strings.Join(names[:len(names)-1], comma) + or + names[len(names)-1]
}

// then is what the plan says to do at an end: where the outcome itself sends
// the viewer, unless that is another test, which is not needed any more; then
// where an outcome that means the one cause left does. After a good reading that
// comes first: the words to stop with were written for a viewer who has done the
// story's earlier tests too.
func (f *flow) then(b diagnose.Branch) string {
	own := f.exit(b.Exit)
	if own != "" && (!b.Good || b.Exit.Kind == plan.ToStep) || len(b.Next.Causes) != 1 || b.Next.Unknown {
		return own
	}
	return cmp.Or(f.blamed(b.Next.Causes), own)
}

// blamed is where an outcome that means just these causes sends the viewer.
func (f *flow) blamed(only []string) string {
	for i := range f.plan.Tests {
		t := &f.plan.Tests[i]
		if !plan.Meets(t.Variants, f.versions) {
			continue
		}
		if len(t.Outcomes) == 0 && slices.Equal(f.served(t.Checks), only) {
			if words := f.exit(t.Fail); words != "" {
				return words
			}
		}
		for _, o := range t.Outcomes {
			if slices.Equal(f.served(o.Means), only) {
				if words := f.exit(o.Go); words != "" {
					return words
				}
			}
		}
	}
	return ""
}

// served are the causes that the version can have.
func (f *flow) served(causes []string) []string {
	var out []string
	for _, id := range causes {
		if slices.ContainsFunc(f.plan.Cause(id), func(c *plan.Cause) bool {
			return plan.Meets(c.Variants, f.versions)
		}) {
			out = append(out, id)
		}
	}
	return out
}

func (f *flow) exit(e plan.Exit) string {
	switch e.Kind {
	case plan.ToStep:
		for i := range f.plan.Steps {
			s := &f.plan.Steps[i]
			switch {
			case s.ID != e.ID:
			case !plan.Meets(s.Variants, f.versions):
				return fmt.Sprintf("step %d is not for this version", i+1)
			default:
				return fmt.Sprintf("go to step %d: %s", i+1, f.plan.Name(plan.Ref{Kind: plan.KindStep, ID: e.ID}))
			}
		}
	case plan.Stop, plan.Advice:
		return e.Text.Print
	}
	return ""
}

// Summary says how long the search for the fault takes.
func Summary(r diagnose.Result) string {
	words := fmt.Sprintf("%s to the fault on average", workTime(r.Minutes))
	switch {
	case r.Cut:
		words = fmt.Sprintf("at most %s to the fault on average, by a quick rule that stopped early", workTime(r.Minutes))
	case !r.Exact:
		words += ", by a quick rule: there are too many causes and tests to try every order"
	case r.AsWritten > r.Minutes*1.005+0.05:
		words += fmt.Sprintf("; %s in the order of the story", workTime(r.AsWritten))
	}
	return words
}

// Notes are what a reader of a tree must know, gravest first.
func Notes(p *plan.Plan, r diagnose.Result) []string {
	var notes []string
	if len(r.Order) > 0 {
		notes = []string{
			"The order is by time alone. Cautions, the maker's instructions and the steps that make the work safe come first.",
			"One fault is taken to be present. Percentages are of all faults, by the plan's shares.",
		}
	}
	names := func(kind plan.Kind, ids []string) []string { return p.NamesFor(kind, ids, versionsOf(r)) }
	for _, group := range r.Same {
		notes = append(notes, "No test tells apart: "+either(names(plan.KindCause, group))+".")
	}
	if len(r.Untested) > 0 {
		notes = append(notes, "No test names: "+strings.Join(names(plan.KindCause, r.Untested), ", ")+".")
	}
	if len(r.TellsNothing) > 0 {
		notes = append(notes, "Not in this order, for they tell no causes apart: “"+strings.Join(names(plan.KindTest, r.TellsNothing), "”, “")+"”.")
	}
	return notes
}

// VersionName is the version a result is for, or empty.
func VersionName(p *plan.Plan, r diagnose.Result) string {
	if r.Variant == "" {
		return ""
	}
	return p.Name(plan.Ref{Kind: plan.KindVariant, ID: r.Variant})
}
