package lint

import (
	"slices"
	"strings"
	"unicode/utf8"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/kit"
	"fixslate/plan/trade"
)

var toolUnused = Rule{Name: "tool-unused", Group: Completeness, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Tools {
		t := &p.Plan.Tools[i]
		if t.Named || t.Spare || t.Optional && !t.Why.Empty() || p.toolUsed(t) {
			continue
		}
		report(idle(t.Name.Print, "tools", t.ID, row(plan.KindTool, i, "")))
	}
}}

// toolUsed holds for a tool that a step or test lists, a text names, or a
// fastener of a step needs.
func (p *Pass) toolUsed(t *plan.Tool) bool {
	if p.quoted[plan.Ref{Kind: plan.KindTool, ID: t.ID}] {
		return true
	}
	names := append(p.calledAlone(t), unstopped(t.Name.Print), t.ID)
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		if slices.Contains(s.Tools, t.ID) || says(p.words[i], names...) {
			return true
		}
		for _, id := range s.Fasteners {
			for _, f := range p.Plan.Find(plan.Ref{Kind: plan.KindFastener, ID: id}) {
				if plan.Meets(p.Plan.Fasteners[f].Variants, t.Variants) && turnsAny(t.Drives, p.drives[f]) {
					return true
				}
			}
		}
	}
	for i := range p.Plan.Tests {
		if slices.Contains(p.Plan.Tests[i].Instrument, t.ID) {
			return true
		}
		for _, r := range p.Plan.Tests[i].Readings {
			if slices.Contains(r.Instrument, t.ID) {
				return true
			}
		}
	}
	return false
}

// calledAlone is the noun of a tool's name, where no other tool of the plan has
// it: "the pliers" are the plan's only pliers. Which tester a reading is taken with
// is for the test to say.
func (p *Pass) calledAlone(t *plan.Tool) []string {
	noun := lastWord(headNoun(t.Name.Print))
	if utf8.RuneCountInString(noun) < 4 || slices.Contains(emptyWords, noun) || kit.MustBeTried(noun) {
		return nil
	}
	for i := range p.Plan.Tools {
		if o := &p.Plan.Tools[i]; o.ID != t.ID && says(fold(o.Name.Print), noun) {
			return nil
		}
	}
	return []string{noun}
}

// unstopped is a text folded, without its stops: a name to be found in a sentence.
func unstopped(text string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(fold(text), " . ", " ")), " ")
}

// lastWord is the last of a text's words.
func lastWord(text string) string { return text[strings.LastIndexByte(text, ' ')+1:] }

// turnsAny holds where one of the tools' drives turns one of the fasteners'.
func turnsAny(tools, fasteners []trade.Drive) bool {
	for _, tool := range tools {
		for _, f := range fasteners {
			if tool.Turns(f) {
				return true
			}
		}
	}
	return false
}
