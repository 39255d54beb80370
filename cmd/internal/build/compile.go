// Package build turns one plan into everything that is made of it.
//
// In goes a Request: the plan's bytes, the files beside it, the day's date; out
// comes a Compiled, a row of finished values, and from it the Files of the
// registry in memory, which Write puts into a folder, all of them or none.
// Match is the other road: a finished edit beside its plan. The package prints
// nothing, knows no flag, and reads only what it is handed and, before it
// writes, the folder it writes to.
package build

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"sync"

	"fixslate/chapters"
	"fixslate/chapters/captions"
	"fixslate/plan"
	"fixslate/plan/claim"
	"fixslate/plan/diag"
	"fixslate/plan/diagnose"
	"fixslate/plan/hazard"
	"fixslate/plan/lint"
	"fixslate/plan/timing"
	"fixslate/shotlist"
	"fixslate/templates/blurb"
	"fixslate/templates/picture"
)

// Compiled is a plan and everything that follows from it, each value made once
// and finished.
type Compiled struct {
	Source      *diag.Source
	Plan        *plan.Plan // nil where faults stopped it
	Spans       *plan.Spans
	Timeline    timing.Timeline
	Hazards     hazard.Reading
	Claims      []claim.Claim
	Tests       diagnose.Result
	Shots       []shotlist.Shot
	Coverage    []shotlist.Covered
	Day         shotlist.Day
	Chapters    []chapters.Chapter
	Cues        []captions.Cue
	Description blurb.Description
	Trees       []picture.Picture // of the tests
	Findings    []diag.Finding    // sorted; faults only where Plan is nil

	pace timing.Pace
}

// Request is what Compile works on.
type Request struct {
	Source *diag.Source
	Files  fs.FS          // the plan's folder, for what it uses; nil: nothing
	Faults []diag.Finding // what reading the source found
	Pace   *timing.Pace   // a measured pace instead of the plan's own; nil: the plan's
	Got    *diag.Source   // list of the shots that are made already; nil: none is
	Stage  lint.Stage
	Today  plan.Date // for what runs out; zero: nothing has
}

// Compile runs a plan through the house. Faults stop it: then only Source,
// Spans and Findings are set.
func Compile(r Request) Compiled {
	c := layOut(r)
	if c.Plan == nil {
		return c
	}
	c.derive(timing.Estimate)
	var found, unknown []diag.Finding
	together(
		func() { found = lint.Run(c.pass(r)) },
		func() {
			c.Day, unknown = c.arrange(r.Got)
			c.Trees = picture.Tests(c.Plan, c.Tests)
		},
	)
	c.Findings = slices.Concat(c.Findings, found, unknown)
	return c
}

// Read is Compile without Day and Trees: all that the rules read, and what they find.
func Read(r Request) Compiled {
	c := layOut(r)
	if c.Plan != nil {
		c.derive(timing.Estimate)
		c.Findings = append(c.Findings, lint.Run(c.pass(r))...)
	}
	return c
}

// Check is what Read finds, for runs over many plans: of all that Read makes it
// leaves out what no rule looks at in this plan.
func Check(r Request) []diag.Finding {
	c := layOut(r)
	if c.Plan == nil {
		return c.Findings
	}
	lay := timing.LayOut
	if lint.ReadsSpread(c.Plan) {
		lay = timing.Estimate
	}
	c.derive(lay)
	return append(c.Findings, lint.Run(c.pass(r))...)
}

// derive makes what the rules read, laid out in time by one of the two ways of
// timing. Its two halves take about as long, and neither knows the other's
// values.
func (c *Compiled) derive(lay func(*plan.Plan, timing.Pace) timing.Timeline) {
	p := c.Plan
	together(
		func() {
			c.layInTime(lay)
			c.Cues = captions.Skeleton(p, c.Timeline)
			c.Description = blurb.Describe(p, c.Chapters)
		},
		func() {
			c.Hazards = hazard.Read(p)
			c.Claims = claim.Plan(p)
			c.Tests = diagnose.Best(p, timing.TestMinutes)
			c.Shots = shotlist.FromPlan(p)
			c.Coverage = shotlist.Coverage(p, c.Shots)
		},
	)
}

// together does both at once: a run on one plan has the machine to itself.
func together(one, other func()) {
	var wg sync.WaitGroup
	wg.Go(other)
	one()
	wg.Wait()
}

// pass is what the rules read.
func (c *Compiled) pass(r Request) *lint.Pass {
	return &lint.Pass{
		Plan: c.Plan, Spans: c.Spans, Timeline: c.Timeline, Hazards: c.Hazards, Claims: c.Claims, Tests: c.Tests,
		Shots: c.Shots, Coverage: c.Coverage, Chapters: c.Chapters, Cues: c.Cues, Description: c.Description, Stage: r.Stage, Today: r.Today,
	}
}

// AddCautions is the plan's own text with the cautions written in that its
// steps lack, and how many those are; 0 leaves it as it is. An error says that
// the plan is laid out in a way in which that can't be done safely: nothing but
// the additions may change.
func AddCautions(r Request) ([]byte, int, error) {
	c := Read(r)
	if c.Plan == nil {
		return nil, 0, nil
	}
	add := lint.Missing(c.pass(r))
	if len(add) == 0 {
		return nil, 0, nil
	}
	amended := plan.AddCautions(r.Source, c.Spans, c.Plan, add)
	src, faults := diag.NewSource(r.Source.Name, amended)
	again := Read(Request{Source: src, Files: r.Files, Faults: faults, Pace: r.Pace, Stage: r.Stage, Today: r.Today})
	if again.Plan == nil || len(again.Plan.Steps) != len(c.Plan.Steps) || len(lint.Missing(again.pass(r))) > 0 {
		return nil, 0, errors.New("its cautions can't be written by program; add them by hand as check says")
	}
	return amended, len(add), nil
}

// layOut reads the plan and finds its pace: what a build and a match both begin
// with.
func layOut(r Request) Compiled {
	c := Compiled{Source: r.Source, Findings: r.Faults}
	if diag.Worst(r.Faults) == diag.Error {
		return c
	}
	p, spans, findings := plan.Decode(r.Source, r.Files)
	c.Spans, c.Findings = spans, append(c.Findings, findings...)
	if p == nil {
		return c
	}
	pace, fault := paceOf(r, p, spans)
	if fault != nil {
		c.Findings = append(c.Findings, *fault)
		return c
	}
	c.Plan, c.pace = p, pace
	return c
}

// layInTime lays the plan out in time.
func (c *Compiled) layInTime(lay func(*plan.Plan, timing.Pace) timing.Timeline) {
	c.Timeline = lay(c.Plan, c.pace)
	c.Chapters = chapters.FromTimeline(c.Plan, c.Timeline)
}

// arrange puts the shots that are left into the order of the day, and finds
// what the list of those made already names in vain.
func (c *Compiled) arrange(list *diag.Source) (shotlist.Day, []diag.Finding) {
	var got []string
	var unknown []diag.Finding
	if list != nil {
		got, unknown = shotlist.ReadGot(list, c.Shots)
	}
	return shotlist.Arrange(context.Background(), shotlist.Call{Plan: c.Plan, Timeline: c.Timeline, Shots: c.Shots, Got: got}), unknown
}

// paceOf is the pace asked for, else the one that the plan names, else the
// default.
func paceOf(r Request, p *plan.Plan, spans *plan.Spans) (timing.Pace, *diag.Finding) {
	if r.Pace != nil {
		return *r.Pace, nil
	}
	if p.Pace.File == "" {
		return timing.DefaultPace(), nil
	}
	refuse := func(why string) (timing.Pace, *diag.Finding) {
		return timing.Pace{}, &diag.Finding{
			Rule: "use-refused", Severity: diag.Error, Path: "pace.file", At: spans.Value("pace.file"),
			Message: fmt.Sprintf("%q %s", p.Pace.File, why), Hint: "name a pace file beside the plan or below it",
		}
	}
	name := path.Clean(p.Pace.File)
	if r.Files == nil || path.IsAbs(name) || !fs.ValidPath(name) {
		return refuse("is not inside the plan's folder")
	}
	raw, err := fs.ReadFile(r.Files, name)
	if err != nil {
		return refuse("can't be read")
	}
	pace, err := timing.ReadPace(raw)
	if err != nil {
		return refuse(fmt.Sprintf("is no pace file: %v", err))
	}
	return pace, nil
}

// Stem is the name that a plan's outputs go by: the file's name without .toml,
// or its folder's where the file is just called plan.toml.
func Stem(file string) string {
	name := path.Base(file)
	stem := name
	if ext := path.Ext(name); ext == ".toml" {
		stem = name[:len(name)-len(ext)]
	}
	if stem == "plan" {
		if dir := path.Base(path.Dir(file)); dir != "." && dir != "/" && dir != ".." {
			return dir
		}
	}
	return cmp.Or(stem, "plan")
}
