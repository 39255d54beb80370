package lint

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"fixslate/chapters"
	"fixslate/chapters/align"
	"fixslate/chapters/captions"
	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
	"fixslate/plan/timing"
)

// Edit is a finished cut beside its plan. A Pass that has one holds the cut's
// own Timeline, Chapters and Description; the planned ones stand here.
type Edit struct {
	Captions captions.File
	Match    align.Match
	Timeline timing.Timeline    // planned
	Chapters []chapters.Chapter // planned
}

// reviewed are the publishing rules that a cut is held to as well. Those on
// captions are not among them: `fixslate captions --profile` has them, and
// automatic captions would drown the review.
var reviewed = []string{"chapters-few", "chapter-short", "description-long", "running-long"}

// Review applies the rules that read a finished cut: the group AfterEdit, the
// hedges that were heard, and the publishing limits over real times. Waivers
// cover what they cover in Run; what is wrong with the waivers themselves is
// told there, where all rules run.
func Review(pass *Pass) []diag.Finding {
	copied := *pass
	p := &copied
	p.gathered = gather(p)
	var all []found
	for _, r := range reviewRules(p) {
		r.Check(p, func(report Report) { all = append(all, p.finding(r, report)) })
	}
	return slices.DeleteFunc(p.waive(all), func(f diag.Finding) bool {
		return slices.ContainsFunc(waiverRules, func(r Rule) bool { return r.Name == f.Rule })
	})
}

// reviewRules are the rules of a review. Where the captions are not the plan's,
// only the rule that says so has anything to say.
func reviewRules(p *Pass) []Rule {
	if _, foreign := p.Edit.foreign(); foreign {
		return []Rule{editForeign}
	}
	rules := append(slices.Clone(editRules), unsureHeard)
	if !p.Edit.Match.Trusted() {
		return rules
	}
	for _, r := range publishRules {
		if slices.Contains(reviewed, r.Name) {
			rules = append(rules, r)
		}
	}
	return rules
}

// heard is the place of words in the edit's captions: the words themselves
// where they are found in their cue, else the cue.
func (e *Edit) heard(cue int, span prose.Span) diag.Place {
	if e.Captions.Source == nil || cue < 0 || cue >= len(e.Captions.Cues) {
		return diag.Place{}
	}
	c := e.Captions.Cues[cue]
	place := diag.Place{Source: e.Captions.Source, Span: c.At}
	if span.Start < 0 || span.End > len(c.Text) || span.Start >= span.End {
		return place
	}
	text := e.Captions.Source.Text
	until := min(len(text), c.At.End+4*len(c.Text)+200) // markup may stand between the words
	if cue+1 < len(e.Captions.Cues) && e.Captions.Cues[cue+1].At.Start > c.At.Start {
		until = min(until, e.Captions.Cues[cue+1].At.Start)
	}
	from := min(c.At.End, until)
	// The words before tell two of the same in one cue apart.
	words := span.Of(c.Text)
	at := strings.Index(text[from:until], words)
	for n := strings.Count(c.Text[:span.Start], words); n > 0 && at >= 0; n-- {
		next := strings.Index(text[from+at+len(words):until], words)
		if next < 0 {
			break
		}
		at += len(words) + next
	}
	if at < 0 {
		return place
	}
	return diag.Place{Source: e.Captions.Source, Span: diag.Span{Start: from + at, End: from + at + len(words)}}
}

// word is the place of one heard word.
func (e *Edit) word(i int) diag.Place {
	if i < 0 || i >= len(e.Match.Words) {
		return diag.Place{}
	}
	return e.heard(e.Match.Words[i].Cue, e.Match.Words[i].Span)
}

// Second is when the word at a place is spoken; false for a place outside the
// captions.
func (e *Edit) Second(at diag.Place) (seconds float64, ok bool) {
	if at.Source == nil || at.Source != e.Captions.Source {
		return 0, false
	}
	cue := -1
	for i, c := range e.Captions.Cues {
		if c.At.Start <= at.Span.Start {
			cue = i
		}
	}
	if cue < 0 {
		return 0, false
	}
	// Words stand in the order of their cues and, within one, of their places.
	words := e.Match.Words
	after := sort.Search(len(words), func(i int) bool {
		return words[i].Cue > cue || words[i].Cue == cue && e.word(i).Span.Start > at.Span.Start
	})
	seconds = e.Captions.Cues[cue].Start.Seconds()
	if after > 0 && words[after-1].Cue == cue {
		seconds = max(seconds, words[after-1].Start)
	}
	return seconds, true
}

// starts is the place where a step begins in the edit; none for a missing one.
func (e *Edit) starts(step int) diag.Place {
	s := e.Match.Steps[step]
	if s.Status == align.Missing {
		return diag.Place{}
	}
	for i, w := range e.Match.Words {
		if w.End > s.Start {
			return e.word(i)
		}
	}
	return diag.Place{}
}

// underWay is the step that began last before a time, -1 before the first.
func (e *Edit) underWay(at float64) int {
	step, since := -1, 0.0
	for i := range e.Match.Steps {
		s := &e.Match.Steps[i]
		if s.Status != align.Missing && s.Start <= at && s.Start >= since {
			step, since = s.Index, s.Start
		}
	}
	return step
}

// spokenCaution is a caution that a step of the plan speaks, as it was heard.
type spokenCaution struct {
	step  int
	use   plan.StepCaution
	path  string
	lines []align.Line
}

// cautionsOf are the cautions that the plan's steps speak, in story order.
func (p *Pass) cautionsOf() []spokenCaution {
	lines := map[plan.Ref][]align.Line{}
	key := func(step int, caution string) plan.Ref {
		return plan.Ref{Kind: plan.Kind(p.Plan.Steps[step].ID), ID: caution}
	}
	for _, l := range p.Edit.Match.Lines {
		if l.Kind == timing.Caution {
			k := key(l.Step, l.Caution)
			lines[k] = append(lines[k], l)
		}
	}
	var all []spokenCaution
	for i := range p.Plan.Steps {
		for j, use := range p.Plan.Steps[i].Cautions {
			if said := lines[key(i, use.ID)]; use.Spoken && len(said) > 0 {
				all = append(all, spokenCaution{i, use, fmt.Sprintf("step[%d].cautions[%d]", i, j), said})
			}
		}
	}
	return all
}

// heard weighs what of the caution was heard, and gives its first line that was
// not. Under three fifths is not said: one sentence of two tells half of it.
func (c spokenCaution) heard() (share float64, missing string) {
	said, whole := 0, 0
	for _, l := range c.lines {
		whole += len(l.Speak)
		if l.Found {
			said += len(l.Speak)
		} else if missing == "" {
			missing = l.Print
		}
	}
	return float64(said) / float64(max(1, whole)), missing
}

const cautionHeard = 0.6

// first is when the caution was first heard, and whether it was at all.
func (c spokenCaution) first() (start float64, heard bool) {
	for _, l := range c.lines {
		if l.Found && (!heard || l.Start < start) {
			start, heard = l.Start, true
		}
	}
	return start, heard
}

// leansOn are later steps, in the edit, for which the caution still stands and
// is not spoken again.
func (p *Pass) leansOn(c spokenCaution) []int {
	var steps []int
	for i := c.step + 1; i < len(p.Plan.Steps); i++ {
		for _, use := range p.Plan.Steps[i].Cautions {
			if use.ID != c.use.ID {
				continue
			}
			if use.Spoken {
				return steps
			}
			if p.Edit.Match.Steps[i].Status != align.Missing {
				steps = append(steps, i)
			}
		}
	}
	return steps
}

// cautionName is what people know a caution by: its card, else how it begins.
func (p *Pass) cautionName(c spokenCaution) string {
	if known := p.Plan.CautionOf(&p.Plan.Steps[c.step], c.use); known != nil && known.Card.Print != "" {
		return known.Card.Print
	}
	_, words := p.cautionWords(c)
	return shorten(words)
}

// cautionWords are the hazard family and the printed words of a caution.
func (p *Pass) cautionWords(c spokenCaution) (families []string, words string) {
	if known := p.Plan.CautionOf(&p.Plan.Steps[c.step], c.use); known != nil && known.Family != "none" && known.Family != "" {
		families = []string{known.Family}
	}
	var print []string
	for _, l := range c.lines {
		print = append(print, l.Print)
	}
	return families, strings.Join(print, " ")
}

// title names a step in a message.
func (p *Pass) title(step int) string {
	if t := p.Plan.Steps[step].Title.Print; t != "" {
		return t
	}
	return p.Plan.Steps[step].ID
}

// clock is a time of the edit in a message.
func clock(seconds float64) string { return chapters.Stamp(seconds) }
