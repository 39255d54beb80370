package build

import (
	"slices"

	"fixslate/chapters"
	"fixslate/chapters/align"
	"fixslate/chapters/captions"
	"fixslate/chapters/cut"
	"fixslate/chapters/pace"
	"fixslate/plan/diag"
	"fixslate/plan/lint"
	"fixslate/plan/timing"
	"fixslate/templates/blurb"
)

// Edit is a finished edit to lay beside a plan.
type Edit struct {
	Captions []byte
	Name     string   // of the caption file, as shown
	Accept   []string // terms to put into the captions: "all", a term, its id, or the words heard
}

// Matched is a plan, the captions of its edit, and everything that follows
// from both, each value made once and finished.
type Matched struct {
	Source      *diag.Source
	Planned     Compiled        // the plan's side: no shots, cues and description
	Edit        captions.File   // as read
	Match       align.Match     // with all terms, accepted or not
	Accepted    []bool          // for each of Match.Terms
	Final       captions.File   // Edit with the accepted terms put in
	Timeline    timing.Timeline // real
	Chapters    []chapters.Chapter
	Description blurb.Description
	Findings    []diag.Finding // about the edit, sorted; of the plan only where its faults stopped it
}

// Match lays an edit beside a plan. Faults of the plan stop it: then only
// Source and Findings are set. An error names what Accept asks for in vain.
func Match(r Request, e Edit) (Matched, error) {
	c := layOut(r)
	m := Matched{Source: r.Source, Planned: c}
	if c.Plan == nil {
		m.Findings = c.Findings
		return m, nil
	}
	c.layInTime(timing.Estimate)
	m.Planned = c
	file, findings := captions.Read(e.Captions, e.Name)
	m.Edit, m.Match = file, align.Read(c.Plan, c.Timeline, file.Cues)
	var err error
	if m.Accepted, err = accepted(m.Match.Terms, e.Accept); err != nil {
		return m, err
	}
	m.Final = captions.Amend(file, amendments(m.Match.Terms, m.Accepted))
	m.Final.Language = c.Plan.Video.Language
	m.Timeline = m.Match.Timeline(c.Plan)
	m.Chapters = chapters.FromTimeline(c.Plan, m.Timeline)
	m.Description = blurb.Describe(c.Plan, m.Chapters)
	m.Findings = append(findings, lint.Review(m.pass(r))...)
	diag.Sort(m.Findings)
	return m, nil
}

// pass is what the rules read: the cut's own values, and the plan's for
// comparison. A term that was accepted is settled.
func (m *Matched) pass(r Request) *lint.Pass {
	match := m.Match
	match.Terms = nil
	for i, t := range m.Match.Terms {
		if !m.Accepted[i] {
			match.Terms = append(match.Terms, t)
		}
	}
	return &lint.Pass{
		Plan: m.Planned.Plan, Spans: m.Planned.Spans, Timeline: m.Timeline, Chapters: m.Chapters,
		Cues: m.Edit.Cues, Description: m.Description, Stage: r.Stage, Today: r.Today,
		Edit: &lint.Edit{Captions: m.Edit, Match: match, Timeline: m.Planned.Timeline, Chapters: m.Planned.Chapters},
	}
}

// Usable holds where files may be made of the match unasked.
func (m *Matched) Usable() bool { return m.Doubt() == "" }

// Doubt says why no files may be made of the match unasked, in the words of a
// message: the captions were not read whole, their times can't be trusted, or no
// step is in them. It is empty where they may.
func (m *Matched) Doubt() string {
	if !m.Edit.Whole {
		return "the captions could not be read whole"
	}
	if trouble, doubted := m.Match.Doubt(); doubted {
		return "the captions show " + trouble.String()
	}
	if !slices.ContainsFunc(m.Match.Steps, func(s align.Step) bool { return s.Status != align.Missing }) {
		return "no step of the plan is heard in the captions"
	}
	return ""
}

// heardAt is the second in the edit at which a finding stands; false where it
// stands in the plan only.
func (m *Matched) heardAt(f diag.Finding) (seconds float64, ok bool) {
	e := lint.Edit{Captions: m.Edit, Match: m.Match}
	return e.Second(f.At)
}

// review is what the review page and sheet are made of.
func (m *Matched) review() cut.Edit {
	r := cut.Edit{
		Plan: m.Planned.Plan, Planned: m.Planned.Timeline, PlannedChapters: m.Planned.Chapters,
		Match: m.Match, Accepted: m.Accepted, Timeline: m.Timeline, Chapters: m.Chapters,
		Findings: m.Findings, Snippet: m.Snippet(),
	}
	for _, f := range m.Findings {
		at, heard := m.heardAt(f)
		if !heard {
			at = -1
		}
		r.Seconds = append(r.Seconds, at)
	}
	return r
}

// Measured is the match as an edit to learn a pace from.
func (m *Matched) Measured() pace.Edit {
	return pace.Edit{Plan: m.Planned.Plan, Match: m.Match}
}
