// Package lint finds in a finished plan what a careful reviewer would stop at:
// cautions that are missing, claims that nothing shows, values that can't be,
// steps that lead nowhere, text that does not fit where it is published.
//
// In goes a Pass, the finished values of one plan (and, after the cut, of its
// edit); out come findings, those that a waiver covers marked. Each rule is one
// file with its page beside it. The package computes nothing that a lower one
// owns, never writes to a value of the Pass, and never says that a plan is
// safe: silence means that these rules found nothing.
package lint

import (
	"cmp"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"fixslate/chapters"
	"fixslate/chapters/captions"
	"fixslate/plan"
	"fixslate/plan/claim"
	"fixslate/plan/diag"
	"fixslate/plan/diagnose"
	"fixslate/plan/hazard"
	"fixslate/plan/timing"
	"fixslate/shotlist"
	"fixslate/templates/blurb"
)

// Pass holds what the rules read. Every field is finished before Run and
// nothing writes to it.
type Pass struct {
	Plan        *plan.Plan
	Spans       *plan.Spans
	Timeline    timing.Timeline
	Hazards     hazard.Reading
	Claims      []claim.Claim
	Tests       diagnose.Result
	Shots       []shotlist.Shot
	Coverage    []shotlist.Covered
	Chapters    []chapters.Chapter
	Cues        []captions.Cue
	Description blurb.Description
	Stage       Stage
	Today       plan.Date // for what runs out; zero: nothing is taken to have run out
	Edit        *Edit     // the finished cut; nil before there is one

	gathered // filled by Run and Review
}

// Stage is how far the work is: the further, the graver a value still open.
type Stage int

// The stages, the zero one first.
const (
	Planning Stage = iota
	Shooting
	Publishing
)

// Stages are the words for the stages, in order.
func Stages() []string { return []string{"plan", "shoot", "publish"} }

// Group is what a rule looks after.
type Group int

// The groups, in the order in which `explain` lists them.
const (
	Safety Group = iota
	Truth
	Completeness
	Publish
	AfterEdit
)

// String is the group's heading.
func (g Group) String() string {
	return [...]string{"Safety", "Truth", "Completeness", "Publishing", "After the edit"}[g]
}

// Rule is one thing to look for.
type Rule struct {
	Name     string // says what is wrong; never changes its meaning
	Group    Group
	Severity diag.Severity // of its reports, unless one says otherwise
	// Check reports every case, in any order; it reads the Pass and nothing else.
	// It is nil for what is reported with the waivers, and not called for a rule
	// AfterEdit where the Pass has no edit.
	Check func(p *Pass, report func(Report))
}

// Report is one case that a rule found.
type Report struct {
	Message  string        // thing, trouble: lower case, no full stop
	Hint     string        // remedy: what to write
	Path     string        // where: "step[2].say"; the nearest thing written is shown
	Span     [2]int        // bytes of the decoded text at Path; both 0: all of it
	Place    diag.Place    // instead of Path: a place in another file, such as the edit's captions
	Step     string        // id of the step; empty: told from Path
	About    plan.Ref      // the thing it is about, for waivers; zero: the step, or what Path names
	Severity diag.Severity // 0: the rule's
	Families []string      // hazard families, for safety
}

// Rules are all rules, by group and name.
func Rules() []Rule { return slices.Clone(allRules()) }

// allRules are sorted once: for each of a thousand plans it was a hundredth of
// its check.
var allRules = sync.OnceValue(func() []Rule {
	all := slices.Concat(safetyRules, truthRules, completenessRules, publishRules, editRules, waiverRules)
	slices.SortStableFunc(all, func(a, b Rule) int {
		return cmp.Or(cmp.Compare(a.Group, b.Group), cmp.Compare(a.Name, b.Name))
	})
	return all
})

// Run applies every rule, on all processors, and then the plan's waivers.
// Findings come sorted.
// Time is linear in the plan, but for rules whose page says otherwise.
func Run(pass *Pass) []diag.Finding {
	copied := *pass
	p := &copied
	p.gathered = gather(p)
	rules := allRules()
	reports := make([][]Report, len(rules))
	var next atomic.Int32
	work := func() {
		for i := int(next.Add(1)) - 1; i < len(rules); i = int(next.Add(1)) - 1 {
			if r := rules[i]; r.Check != nil && (r.Group != AfterEdit || p.Edit != nil) {
				r.Check(p, func(r Report) { reports[i] = append(reports[i], r) })
			}
		}
	}
	var wg sync.WaitGroup
	for range runtime.GOMAXPROCS(0) - 1 {
		wg.Go(work)
	}
	work()
	wg.Wait()
	var found []found
	for i, r := range rules {
		for _, report := range reports[i] {
			found = append(found, p.finding(r, report))
		}
	}
	return p.waive(found)
}

// found is a finding before waivers, with what it is about.
type found struct {
	diag.Finding
	group Group
	about plan.Ref
}

func (p *Pass) finding(r Rule, report Report) found {
	f := found{group: r.Group, about: report.About, Finding: diag.Finding{
		Rule: r.Name, Severity: cmp.Or(report.Severity, r.Severity), Message: report.Message, Hint: report.Hint,
		Path: report.Path, Step: report.Step, Families: report.Families, At: report.Place,
	}}
	if f.At.Source == nil {
		f.At = p.Spans.Value(report.Path)
		if report.Span[1] > report.Span[0] {
			f.At = p.Spans.Word(report.Path, report.Span[0], report.Span[1])
		}
	}
	owner := p.Plan.RefAt(report.Path)
	if f.about == (plan.Ref{}) {
		f.about = owner
	}
	if f.Step == "" && owner.Kind == plan.KindStep {
		f.Step = owner.ID
	}
	return f
}
