package build

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"

	"fixslate/chapters"
	"fixslate/chapters/align"
	"fixslate/plan"
	"fixslate/plan/diag"
)

// The form of review.json and of `match --format json`; documented and stable.
type (
	matchJSON struct {
		PlanSum  string            `json:"plan_sha256"`
		EditSum  string            `json:"edit_sha256"`
		Trusted  bool              `json:"trusted"` // the times can be relied on
		End      float64           `json:"end_seconds"`
		Steps    []matchStepJSON   `json:"steps"`
		Repeats  []repeatJSON      `json:"repeats"`
		Added    []addedJSON       `json:"added"`
		Terms    []termJSON        `json:"terms"`
		Numbers  []numberJSON      `json:"numbers"`
		Chapters []realChapterJSON `json:"chapters"`
		Findings []reviewEntry     `json:"findings"`
		Counts   diag.Counts       `json:"counts"`
	}
	matchStepJSON struct {
		ID         string   `json:"id"`
		Title      string   `json:"title"`
		Status     string   `json:"status"`
		Start      *float64 `json:"start_seconds"` // null for a missing step
		End        *float64 `json:"end_seconds"`
		Planned    float64  `json:"planned_seconds"`
		Confidence float64  `json:"confidence"`
		Sum        string   `json:"sha256"` // of the step as planned, to see later whether it was changed
	}
	repeatJSON struct {
		ID    string  `json:"id"`
		Start float64 `json:"start_seconds"`
		End   float64 `json:"end_seconds"`
	}
	addedJSON struct {
		Start float64 `json:"start_seconds"`
		End   float64 `json:"end_seconds"`
		Text  string  `json:"text"`
	}
	termJSON struct {
		Heard      string  `json:"heard"`
		Term       string  `json:"term"`
		Start      float64 `json:"start_seconds"`
		Confidence float64 `json:"confidence"`
		Accepted   bool    `json:"accepted"`
	}
	numberJSON struct {
		Said    string  `json:"said"`
		Planned string  `json:"planned"`
		Step    string  `json:"step"`
		Start   float64 `json:"start_seconds"`
	}
	realChapterJSON struct {
		Title string   `json:"title"`
		Start float64  `json:"start_seconds"`
		Steps []string `json:"steps"`
	}
	reviewEntry struct {
		diag.Entry
		Seconds *float64 `json:"start_seconds"` // in the edit; null where it stands in the plan only
	}
)

// JSON is review.json, and what `match --format json` prints. Seconds are
// rounded to milliseconds, and what a terminal would obey is spelled out.
func (m *Matched) JSON() []byte {
	out := matchJSON{
		PlanSum: Sum(m.Source.Raw), Trusted: m.Usable(), End: milli(m.Match.End),
		Steps: []matchStepJSON{}, Repeats: []repeatJSON{}, Added: []addedJSON{}, Terms: []termJSON{}, Numbers: []numberJSON{},
		Chapters: []realChapterJSON{}, Findings: []reviewEntry{}, Counts: diag.Count(m.Findings),
	}
	if m.Edit.Source != nil {
		out.EditSum = Sum(m.Edit.Source.Raw)
	}
	m.stepsJSON(&out)
	for _, r := range m.Match.Repeats {
		out.Repeats = append(out.Repeats, repeatJSON{r.ID, milli(r.Start), milli(r.End)})
	}
	for _, a := range m.Match.Added {
		out.Added = append(out.Added, addedJSON{milli(a.Start), milli(a.End), a.Text})
	}
	for i, t := range m.Match.Terms {
		out.Terms = append(out.Terms, termJSON{t.Heard, t.Term, milli(t.Start), milli(t.Confidence), m.Accepted[i]})
	}
	for _, n := range m.Match.Numbers {
		entry := numberJSON{Said: n.Said, Planned: n.Print, Start: milli(n.Start)}
		if n.Line >= 0 {
			entry.Step = m.Match.Lines[n.Line].ID
		}
		out.Numbers = append(out.Numbers, entry)
	}
	for _, c := range m.Chapters {
		if !m.Usable() {
			break // they would be invented
		}
		entry := realChapterJSON{Title: c.Title, Start: milli(c.Start), Steps: []string{}}
		for _, s := range c.Steps {
			entry.Steps = append(entry.Steps, m.Planned.Plan.Steps[s].ID)
		}
		out.Chapters = append(out.Chapters, entry)
	}
	entries := diag.Entries(m.Findings)
	for i, f := range m.Findings {
		entry := reviewEntry{Entry: entries[i]}
		if at, heard := m.heardAt(f); heard {
			entry.Seconds = seconds(at)
		}
		out.Findings = append(out.Findings, entry)
	}
	var b bytes.Buffer
	if err := diag.PrintJSON(&b, out); err != nil {
		panic(err) // strings, numbers that are finite, and lists of them
	}
	return b.Bytes()
}

func (m *Matched) stepsJSON(out *matchJSON) {
	p := m.Planned.Plan
	if p == nil {
		return
	}
	starts := map[int]float64{}
	for _, s := range m.Planned.Timeline.Steps {
		starts[s.Index] = s.Start
	}
	for _, s := range m.Match.Steps {
		entry := matchStepJSON{
			ID: s.ID, Title: p.Steps[s.Index].Title.Print, Status: s.Status.String(),
			Planned: milli(starts[s.Index]), Confidence: milli(s.Confidence), Sum: stepSum(&p.Steps[s.Index]),
		}
		if s.Status != align.Missing {
			entry.Start, entry.End = seconds(s.Start), seconds(s.End)
		}
		out.Steps = append(out.Steps, entry)
	}
}

// milli rounds to thousandths, by which captions are timed.
func milli(v float64) float64 { return float64(chapters.Millisecond(v)) / 1000 }

func seconds(v float64) *float64 {
	v = milli(v)
	return &v
}

// stepSum tells two versions of a step apart by what a viewer sees of it: its
// title, its chapter, its words and its cautions.
func stepSum(s *plan.Step) string {
	h := sha256.New()
	write := func(parts ...string) {
		for _, p := range parts {
			h.Write([]byte(p))
			h.Write([]byte{0})
		}
	}
	write(s.ID, s.Title.Print, s.Chapter.Title.Print, s.Do.Print)
	if s.Chapter.Joined {
		write("joined")
	}
	for _, l := range s.Lines {
		write("line", l.Print)
	}
	for _, l := range s.OtherSaid {
		write("other", l.Print)
	}
	for _, c := range s.Cautions {
		if c.Spoken {
			write("caution", c.ID)
			for _, l := range c.Lines {
				write(l.Print)
			}
		}
	}
	return hex.EncodeToString(h.Sum(nil))[:16]
}
