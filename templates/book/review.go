package book

import (
	"bytes"
	"cmp"
	_ "embed"
	"fmt"
	"html/template"
	"strings"
	"sync"

	"fixslate/chapters/align"
	"fixslate/chapters/cut"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
	"fixslate/templates/blurb"
)

// ReviewPage is review.html: what is missing first, then the edit as a bar
// under the plan's, the findings at their times, and the words said beside the
// words planned. It is made and guarded like Page, and has no script.
func ReviewPage(r cut.Edit) []byte {
	var out bytes.Buffer
	if err := reviewPage().Execute(&out, reviewOf(r)); err != nil {
		panic(err) // as in Page
	}
	return visible(out.Bytes())
}

var (
	//go:embed review.html.tmpl
	reviewText string
	//go:embed review.css
	reviewStyle string
)

var reviewPage = sync.OnceValue(func() *template.Template {
	whole := bookStyle + reviewStyle
	policy := "default-src 'none'; style-src '" + hash(whole) + "'; base-uri 'none'; form-action 'none'"
	t := template.New("review").Funcs(template.FuncMap{
		"style":  func() template.CSS { return template.CSS(whole) },
		"policy": func() string { return policy },
	})
	return template.Must(t.Parse(reviewText))
})

type reviewView struct {
	Language, Title, Words, Deference string
	Missing                           []missing
	Bars                              []bars // for a phone and for a screen
	Findings, Excepted                []reviewFinding
	Steps                             []reviewStep
	Chapters                          []reviewChapter
	Repeats, Added, Terms             []reviewLine
	Snippet                           string
	Corrections                       []string
}

// missing is something that the plan has and the edit has not.
type missing struct{ What, Words, Anchor string }

type reviewFinding struct {
	Anchor, Clock string
	finding
}

type reviewChapter struct{ Clock, Planned, Title string }

type reviewLine struct{ Clock, Until, Words, Other string }

func reviewOf(r cut.Edit) reviewView {
	v := reviewView{
		Language: cmp.Or(r.Plan.Video.Language, "en"), Title: r.Plan.Video.Title.Print, Words: reviewWords(r), Deference: blurb.Precedence,
		Steps: reviewSteps(r), Snippet: r.Snippet,
	}
	v.findings(r)
	for _, s := range v.Steps {
		if s.Status == align.Missing.String() {
			v.Missing = append(v.Missing, missing{"Step", s.Title, "step-" + s.ID})
		}
	}
	for _, f := range v.Findings {
		if f.Rule == "caution-not-said" {
			v.Missing = append(v.Missing, missing{"Caution", f.Message, f.Anchor})
		}
	}
	v.Bars = []bars{barsOf(r, phoneWidth), barsOf(r, screenWidth)}
	v.chapters(r)
	for _, t := range r.Match.Repeats {
		v.Repeats = append(v.Repeats, reviewLine{stamp(t.Start), stamp(t.End), r.Plan.Steps[t.Index].Title.Print, ""})
	}
	for _, a := range r.Match.Added {
		if a.Slight() {
			continue
		}
		v.Added = append(v.Added, reviewLine{stamp(a.Start), stamp(a.End), a.Text, ""})
	}
	for i, t := range r.Match.Terms {
		row := reviewLine{stamp(t.Start), "", strings.Join(strings.Fields(t.Heard), " "), t.Term}
		if r.Accepted[i] {
			row.Until = "put in"
		}
		v.Terms = append(v.Terms, row)
	}
	for _, c := range blurb.Corrections(r.Plan, r.Chapters) {
		v.Corrections = append(v.Corrections, c.Line())
	}
	return v
}

func (v *reviewView) findings(r cut.Edit) {
	for i, f := range r.Findings {
		row := reviewFinding{fmt.Sprintf("finding-%d", i+1), "plan", findingOf(r.Plan, f)}
		if r.Seconds[i] >= 0 {
			row.Clock = stamp(r.Seconds[i])
		}
		if f.Waived != "" {
			v.Excepted = append(v.Excepted, row)
		} else {
			v.Findings = append(v.Findings, row)
		}
	}
}

// chapters are the real ones with the time each was planned for: that of the
// planned chapter of the same title, else that of its first step, which the
// plan joined to another.
func (v *reviewView) chapters(r cut.Edit) {
	planned := map[string]string{}
	for _, c := range r.PlannedChapters {
		planned[c.Title] = stamp(c.Start)
	}
	steps := r.PlannedStarts()
	for _, c := range r.Chapters {
		row := reviewChapter{stamp(c.Start), planned[c.Title], c.Title}
		if len(c.Steps) > 0 && row.Planned == "" {
			row.Planned = stamp(steps[c.Steps[0]])
		}
		v.Chapters = append(v.Chapters, row)
	}
}

// reviewWords is the edit in two sentences.
func reviewWords(r cut.Edit) string {
	var count [3]int
	for _, s := range r.Match.Steps {
		count[s.Status]++
	}
	words := fmt.Sprintf("The edit runs %s, planned %s. %d of %d steps were heard", stamp(r.Match.End), stamp(r.Planned.End), count[align.Found]+count[align.Moved], len(r.Match.Steps))
	if count[align.Moved] > 0 {
		words += fmt.Sprintf(", %d of them out of order", count[align.Moved])
	}
	c := diag.Count(r.Findings)
	return words + fmt.Sprintf(". Findings: %s, %s, %s.", prose.Counted(c.Error, "error"), prose.Counted(c.Warning, "warning"), prose.Counted(c.Note, "note"))
}
