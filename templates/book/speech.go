package book

import (
	"cmp"
	"strings"

	"fixslate/plan"
	"fixslate/plan/hazard/class"
)

// caution is a caution in the margin: the signal word in words, the card, and
// what is not read out beside it anyway.
type caution struct {
	Signal, Card, Text, LeaveTo string
	Grave                       bool // warning or danger
	Side                        string
	Lasts                       string // said of one that is not spoken here
	For                         string
	Note                        plan.Note
}

// cautionOf is a caution whole, as the list of all of them prints it.
func cautionOf(c *plan.Caution) caution {
	v := caution{
		Signal: signal(c), Card: cmp.Or(c.Card.Print, c.Say.Print), Text: c.Text, LeaveTo: strings.TrimSuffix(c.LeaveTo.Print, "."),
		Grave: c.Signal >= class.Warning, For: attr(c.Variants), Note: c.Note,
	}
	if v.Text == v.Card {
		v.Text = ""
	}
	return v
}

// cautionIn is a caution as one step gives it.
func cautionIn(c *plan.Caution, use plan.StepCaution) caution {
	v := cautionOf(c)
	v.Side, v.Note = use.Side, plan.Note{}
	switch {
	case !use.Spoken && use.Card:
		v.Text, v.Lasts = "", "Still holds: show the card again."
	case !use.Spoken:
		v.Text, v.Lasts = "", "Still holds."
	case v.Text == c.Say.Print:
		v.Text = "" // it stands among the lines
	}
	return v
}

func signal(c *plan.Caution) string {
	return strings.ToUpper(cmp.Or(c.Signal, class.Caution).String())
}

// line is one line of narration. Kind is "caution", "say", "other" (what
// differs on the other side), "direction" or "sound".
type line struct {
	Kind, Words string
	Tag         string // in words, before the first line of its kind
	Grave       bool
	For         string
}

// lines are what is said in a step, in the order of the timeline: cautions,
// narration, the other side.
func lines(p *plan.Plan, s *plan.Step) []line {
	var out []line
	for _, use := range s.Cautions {
		if c := p.CautionOf(s, use); use.Spoken && c != nil {
			out = append(out, linesOf(use.Lines, line{Kind: "caution", Tag: signal(c), Grave: c.Signal >= class.Warning, For: attr(c.Variants)})...)
		}
	}
	out = append(out, linesOf(s.Lines, line{Kind: "say"})...)
	return append(out, linesOf(s.OtherSaid, line{Kind: "other", Tag: "Other side"})...)
}

// linesOf prints lines that are like a first one.
func linesOf(lines []plan.Line, like line) []line {
	var out []line
	for _, l := range lines {
		next := like
		next.Words = keep(l.Print)
		switch l.Kind {
		case plan.Direction:
			next.Kind, next.Tag = "direction", ""
		case plan.Sound:
			next.Kind, next.Tag = "sound", ""
		default:
			like.Tag = ""
		}
		out = append(out, next)
	}
	return out
}
