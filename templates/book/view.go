package book

import (
	"cmp"
	"fmt"
	"html/template"
	"strings"

	"fixslate/chapters"
	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/kit"
	"fixslate/templates/blurb"
	"fixslate/templates/picture"
)

// view is the page in the words it prints.
type view struct {
	Language  string // for the page's lang: our own words are English, but most of what is read aloud is the plan's
	Title     string
	Head      []pair // subject, fits, symptom …
	Note      plan.Note
	Deference string
	Versions  []version
	Time      drawing
	Tests     []drawing
	Lists     []list // what to have at hand
	Differs   []differs
	Open      []open
	Cautions  []caution // all of them, gravest first
	Corrected []corrected
	Summary   []string // of the day
	Days      []day
	Steps     []step
	Shots     int
	Coverage  []covered
	Sources   []source
	Notes     []remark
	Faults    []finding
	Excepted  []finding
}

type pair struct{ Name, Words string }

type version struct{ ID, Name, Tell string }

type list struct {
	Title string
	Items []item
}

type item struct {
	Line template.HTML
	For  string
}

// corrected is a correction, with the step it is about where that is known.
type corrected struct{ Line, Step string }

type differs struct {
	OnCamera, Viewers string
	For               string
}

type open struct {
	What, Ask string
	For       string
	Versions  string
}

type source struct {
	Title, Where, Kind string
	Link               string
}

// remark is a note on something that stands nowhere else in the book.
type remark struct {
	What, Versions, For string
	Note                plan.Note
}

type finding struct {
	Severity, Message, Hint, Rule string
	Step, StepTitle               string
	Why                           string // of an exception
}

func viewOf(b Book) view {
	p := b.Plan
	v := view{
		Language: cmp.Or(p.Video.Language, "en"), Title: p.Video.Title.Print, Head: head(p), Note: p.Video.Note,
		Deference: blurb.Precedence, Shots: len(b.Shots),
	}
	for i := range p.Variants {
		v.Versions = append(v.Versions, version{p.Variants[i].ID, p.Variants[i].Name.Print, p.Variants[i].Tell.Print})
	}
	v.Time = drawingOf(picture.Time(p, b.Timeline, b.Chapters), "time-picture")
	for i, pic := range b.Trees {
		v.Tests = append(v.Tests, drawingOf(pic, fmt.Sprintf("tests-picture-%d", i+1)))
	}
	v.Lists = lists(p)
	for _, d := range p.Differs {
		v.Differs = append(v.Differs, differs{d.OnCamera.Print, blurb.Viewers(d.Viewers.Print), attr(d.Variants)})
	}
	for _, o := range p.Open {
		v.Open = append(v.Open, open{o.What, o.Verify, attr(o.Variants), kit.VersionNames(p, o.Variants)})
	}
	for _, c := range blurb.Cautions(p) {
		v.Cautions = append(v.Cautions, cautionOf(c))
	}
	if b.Day != nil {
		v.Summary, v.Days = b.Day.Summary(), daysOf(b)
	}
	v.Coverage = coverage(b)
	for _, c := range blurb.Corrections(p, b.Chapters) {
		row := corrected{Line: c.Line()}
		if c.Step >= 0 {
			row.Step = p.Steps[c.Step].ID
		}
		v.Corrected = append(v.Corrected, row)
	}
	v.Steps = steps(b)
	for i := range p.Sources {
		s := &p.Sources[i]
		if s.Spare {
			continue
		}
		v.Sources = append(v.Sources, source{s.Title.Print, kit.Join(s.Where.Print, s.Date.String()), s.Kind, s.Link})
	}
	v.Notes = v.remarks(p)
	v.Faults, v.Excepted = findings(p, b.Findings)
	return v
}

// remarks are the notes that no other part of the page has printed.
func (v *view) remarks(p *plan.Plan) []remark {
	printed := map[template.HTML]bool{note(v.Note): true}
	for _, c := range v.Cautions {
		printed[note(c.Note)] = true
	}
	for _, s := range v.Steps {
		printed[note(s.Note)] = true
		for _, f := range s.Facts {
			printed[note(f.Note)] = true
		}
		for _, t := range s.Tests {
			printed[note(t.Note)] = true
		}
		for _, c := range s.Cues {
			printed[note(c.Note)] = true
		}
	}
	var out []remark
	for _, r := range p.Remarks() {
		if n := r.Common.Note; n.HTML != "" && !printed[note(n)] {
			out = append(out, remark{r.What, kit.VersionNames(p, r.Common.Variants), attr(r.Common.Variants), n})
		}
	}
	return out
}

// drawing is a picture as the page holds it.
type drawing struct {
	SVG   template.HTML
	Words string
	Title string // the version's name
	For   string
}

// drawingOf trusts the picture's markup: picture escapes what is the plan's.
func drawingOf(p picture.Picture, name string) drawing {
	return drawing{template.HTML(p.Inline(name)), p.Words, p.Version, p.For}
}

// head says what the video is about.
func head(p *plan.Plan) []pair {
	var out []pair
	add := func(name, words string) {
		if words != "" {
			out = append(out, pair{name, words})
		}
	}
	v := &p.Video
	add("Subject", v.Subject.Print)
	add("On camera", p.Shoot.Object.Print)
	add("Fits", v.Fits.Print)
	add("Symptom", v.Symptom.Print)
	add("Outcome", v.Outcome.Print)
	add("For", v.Audience.Print)
	switch start, end := p.Shoot.Start.String(), p.Shoot.End.String(); {
	case end != "":
		add("Day", strings.TrimSpace(start+" to "+end))
	case start != "":
		add("Day", "from "+start)
	}
	return out
}

// lists are what to have at hand, each thing with the versions it is for.
func lists(p *plan.Plan) []list {
	var out []list
	add := func(title string, items []kit.Item) {
		l := list{Title: title}
		for _, it := range items {
			l.Items = append(l.Items, item{Line: whole(it.Line()), For: attr(it.Variants)})
		}
		if len(l.Items) > 0 {
			out = append(out, l)
		}
	}
	add("Protective gear", kit.Gear(p))
	add("Tools", kit.Tools(p))
	add("Parts", kit.Parts(p))
	add("Supplies", kit.Supplies(p))
	return out
}

// findings parts what is to be mended from what was set aside with a reason.
func findings(p *plan.Plan, all []diag.Finding) (faults, excepted []finding) {
	for _, f := range all {
		if row := findingOf(p, f); f.Waived != "" {
			excepted = append(excepted, row)
		} else {
			faults = append(faults, row)
		}
	}
	return faults, excepted
}

func findingOf(p *plan.Plan, f diag.Finding) finding {
	row := finding{f.Severity.String(), f.Message, f.Hint, f.Rule, f.Step, "", f.Waived}
	if f.Step != "" {
		row.StepTitle = p.Name(plan.Ref{Kind: plan.KindStep, ID: f.Step})
	}
	return row
}

// attr is a list of versions for the page's script: ids between spaces.
func attr(variants []string) string { return strings.Join(variants, " ") }

// stamp is a time in the video.
func stamp(seconds float64) string { return chapters.Stamp(seconds) }
