package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/hazard"
	"fixslate/plan/hazard/class"
)

// Hazards is the job hazard sheet as values: what a job hazard analysis holds
// (OSHA 3071, Job Hazard Analysis: the steps of the job, the hazards of each,
// the controls), with what shows each hazard, who may do the work, and where
// the caution comes from.
type Hazards struct {
	Title    string
	Head     []string // what was read, what that is worth, what comes first
	Steps    []HazardStep
	Controls []Control // of the hazards found, in catalogue order
	Aside    []Aside   // findings set aside, with their reasons
	Idle     []string  // waivers that set nothing aside
}

// Aside is a waiver in a line, and what it sets aside.
type Aside struct {
	Waiver   string
	Findings []string
}

// HazardStep is one step of the job.
type HazardStep struct {
	Number    int
	ID, Title string
	Rows      []HazardRow
	Spoken    []Spoken // what the plan says in this step, shown by its words or not
	Lasting   []string // what it lists and has said in an earlier step
	Named     []string // hazards that are only talked of or shown
}

// Spoken is a caution of the plan with its words.
type Spoken struct{ Caution, Words string }

// HazardRow is one hazard of a step. One class that counts under two families
// is one row.
type HazardRow struct {
	Class  string
	Name   string
	Signal string
	Shown  string // what shows it
	Told   string // how the viewer is told
	Short  string // the control in a few words
	Held   string // states in force that answer it: "power off"
}

// Control is what is done about a class of hazard.
type Control struct {
	Class    string
	Name     string
	Signal   string
	Text     string
	Stronger string // when the signal is a stronger one
	Gear     string
	Kit      string
	Who      string
	When     string
	Source   string
}

// Risks is risks.md.
func Risks(p *plan.Plan, r hazard.Reading, findings []diag.Finding) []byte {
	h := HazardsOf(p, r, findings)
	return write((*out).risks, &h)
}

// HazardsOf gathers the sheet; the findings are all of the plan, those that were
// set aside marked.
func HazardsOf(p *plan.Plan, r hazard.Reading, findings []diag.Finding) Hazards {
	h := Hazards{Title: p.Video.Title.Print, Head: head(p)}
	found := map[string]bool{}
	leave := map[string]string{}
	said := map[string]int{} // in which step each caution was last spoken
	for i := range r.Steps {
		s := &r.Steps[i]
		step := HazardStep{Number: i + 1, ID: s.ID, Title: cmp.Or(s.Title, s.ID)}
		for j := range s.Hazards {
			hz := &s.Hazards[j]
			found[hz.Class] = true
			if to := leaveTo(p, i, hz); to != "" {
				leave[hz.Class] = to
			}
			step.add(hz)
		}
		for _, use := range p.Steps[i].Cautions {
			c := p.Given(&p.Steps[i], use)
			switch {
			case c == nil:
			case use.Spoken:
				step.Spoken = append(step.Spoken, Spoken{use.ID, c.Signal.String() + ": " + c.Say.Print})
				said[use.ID] = i + 1
			case use.Listed:
				step.Lasting = append(step.Lasting, fmt.Sprintf("%s (step %d)", c.Card.Print, said[use.ID]))
			}
		}
		for j := range s.Mentions {
			if c, ok := class.Find(s.Mentions[j].Class); ok && !slices.Contains(step.Named, lowerFirst(c.Name)) {
				step.Named = append(step.Named, lowerFirst(c.Name))
			}
		}
		h.Steps = append(h.Steps, step)
	}
	for _, c := range class.All() {
		if found[c.ID] {
			h.Controls = append(h.Controls, controlOf(c, leave[c.ID]))
		}
	}
	h.setAside(p, findings)
	return h
}

// setAside lists the waivers with what each sets aside, and those that do
// nothing: without a reason, run out, or with nothing to meet. They must not
// read as if somebody had decided.
func (h *Hazards) setAside(p *plan.Plan, findings []diag.Finding) {
	for i := range p.Waivers {
		w := &p.Waivers[i]
		a := Aside{Waiver: waived(w)}
		for _, f := range findings {
			if f.Waived != "" && f.Waiver == i+1 {
				a.Findings = append(a.Findings, f.Severity.String()+": "+f.Message)
			}
		}
		if len(a.Findings) > 0 {
			h.Aside = append(h.Aside, a)
		} else {
			h.Idle = append(h.Idle, a.Waiver)
		}
	}
}

// head says what was checked and what that is worth.
func head(p *plan.Plan) []string {
	all := []string{
		"Read: each step's action, narration, tests, tools, parts, supplies, fasteners and states, and the plan's " +
			"subject, against a list of trade words and the hazards they bring. Where that list shows nothing, odds say how " +
			"like a step is to steps that are known to hurt (\"odds 0.4\"): reason to look, and from 0.9 on to warn. What neither " +
			"shows is not here: this sheet does not prove that the plan is safe.",
		"Local law and code, the maker's instructions for the exact model and licensed practice come first. Nothing " +
			"here is a safe-work procedure.",
	}
	if p.Video.Region == "" {
		all = append(all, "No region is set, so notes on who may do the work are in their general form.")
	} else {
		all = append(all, fmt.Sprintf("Region: %s. Notes on who may do the work are in their general form; look up what the law there says.", p.Video.Region))
	}
	if lang := p.Video.Language; lang != "en" && !strings.HasPrefix(lang, "en-") {
		all = append(all, fmt.Sprintf("The narration is in a language that is not read here (%s): an empty step means nothing.", lang))
	}
	return all
}

func (s *HazardStep) add(h *hazard.Hazard) {
	c, ok := class.Find(h.Class)
	if !ok || slices.ContainsFunc(s.Rows, func(r HazardRow) bool { return r.Class == h.Class }) {
		return
	}
	row := HazardRow{Class: c.ID, Name: c.Name, Signal: h.Signal.String(), Shown: h.Shown(), Told: told(h), Short: c.Card,
		Held: strings.ReplaceAll(strings.Join(h.Answered, ", "), "-", " ")}
	s.Rows = append(s.Rows, row)
}

// told is how the viewer is told of a hazard.
func told(h *hazard.Hazard) string {
	switch h.Cover {
	case hazard.Spoken:
		return "spoken: " + h.Caution
	case hazard.Said:
		return "in the narration"
	case hazard.Carded:
		return "on a card only"
	case hazard.Late:
		return "too late: " + cmp.Or(h.Caution, "after the action")
	case hazard.Stale:
		return "worn off: " + h.Caution
	}
	switch {
	case h.Family == class.NoFamily && h.Signal <= class.Notice:
		return "not told; a notice needs no caution"
	case h.Family == class.NoFamily:
		return "not told; this one needs no caution of its own"
	}
	return "not told"
}

// leaveTo is whom the plan's own caution names for a hazard.
func leaveTo(p *plan.Plan, step int, h *hazard.Hazard) string {
	if h.Caution == "" {
		return ""
	}
	for _, c := range p.Caution(h.Caution) {
		if plan.Meets(c.Variants, p.Steps[step].Variants) && !c.LeaveTo.Empty() {
			return c.LeaveTo.Print
		}
	}
	return ""
}

func controlOf(c class.Class, leave string) Control {
	out := Control{
		Class: c.ID, Name: c.Name, Signal: c.Signal.String(), Text: c.Text,
		Kit: strings.Join(c.Kit, ", "), Who: c.Who.Text, When: c.When.Sentence(), Source: c.Source,
	}
	if leave != "" {
		out.Who += " This plan leaves it to " + leave + "."
	}
	if c.Escalation.To > 0 {
		out.Stronger = c.Escalation.To.String() + " " + c.Escalation.When
	}
	var gear []string
	for _, g := range c.Gear {
		gear = append(gear, g.Name)
	}
	out.Gear = cmp.Or(strings.Join(gear, ", "), "none: "+c.NoGear)
	return out
}

// waived is a waiver in a line.
func waived(w *plan.Waiver) string {
	line := w.Rule
	if w.At != "" {
		line += " at " + w.At
	}
	line += ": " + cmp.Or(w.Why, "no reason given")
	if w.By != "" {
		line += " (" + w.By + ")"
	}
	if w.Until != (plan.Date{}) {
		line += ", until " + w.Until.String()
	}
	return line
}

// lowerFirst is a title inside a sentence.
func lowerFirst(s string) string {
	if len(s) > 1 && s[1] >= 'a' && s[1] <= 'z' {
		return strings.ToLower(s[:1]) + s[1:]
	}
	return s
}
