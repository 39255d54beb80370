package lint

import (
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var toolUnused = Rule{Name: "tool-unused", Group: Completeness, Severity: diag.Note, Check: func(p *Pass) []Report {
	var found []Report
	for i := range p.Plan.Tools {
		t := &p.Plan.Tools[i]
		if t.Named || t.Spare || p.toolUsed(t) {
			continue
		}
		found = append(found, idle(t.Name.Print, "tools", t.ID, row(plan.KindTool, i, "")))
	}
	return found
}}

// toolUsed holds for a tool that a step or test lists, a text names, or a
// fastener of a step needs.
func (p *Pass) toolUsed(t *plan.Tool) bool {
	if p.quoted[plan.Ref{Kind: plan.KindTool, ID: t.ID}] {
		return true
	}
	name := strings.TrimSpace(fold(t.Name.Print))
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		if slices.Contains(s.Tools, t.ID) || says(p.words[i], name, t.ID) {
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
