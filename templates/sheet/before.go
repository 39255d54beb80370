package sheet

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/kit"
)

type beforeView struct {
	Title                              string
	LookUp, Buy, Charge, Try           []string
	Crew                               []string
	Tools, Parts, Supplies, Protective []kit.Item
}

// Before is before.md: what is still to be looked up, bought, charged and
// tried, and then the packing list.
func Before(p *plan.Plan) []byte {
	v := beforeView{
		Title: p.Video.Title.Print, Crew: p.Shoot.Gear, Charge: kit.ToCharge(p),
		Tools: kit.Tools(p), Parts: kit.Parts(p), Supplies: kit.Supplies(p), Protective: kit.Gear(p),
	}
	for _, o := range p.Open {
		line := kit.Limited(p, o.What+": "+o.Key, o.Variants)
		if o.Verify != "" {
			line += " – " + o.Verify
		}
		v.LookUp = append(v.LookUp, line)
	}
	v.LookUp = append(v.LookUp, toVerify(p)...)
	for _, item := range append(kit.Parts(p), kit.Supplies(p)...) {
		if filmed(p, item.Variants) {
			v.Buy = append(v.Buy, item.Line())
		}
	}
	v.Try = toTry(p)
	return write((*out).before, &v)
}

// filmed holds for what is of a version that the filmed object has; where the
// plan doesn't say which it has, for everything.
func filmed(p *plan.Plan, variants []string) bool {
	return plan.Meets(variants, p.Shoot.Variants)
}

// toVerify lists what is written down but to be asked about all the same.
func toVerify(p *plan.Plan) []string {
	var lines []string
	for _, r := range p.Remarks() {
		asked := func(o plan.Open) bool { return o.Verify == r.Common.Verify && strings.HasPrefix(o.Path, r.Path+".") }
		if r.Common.Verify == "" || slices.ContainsFunc(p.Open, asked) {
			continue
		}
		lines = append(lines, kit.Limited(p, r.What, r.Common.Variants)+" – "+r.Common.Verify)
	}
	return lines
}

// toTry lists what must be seen to work before anybody comes.
func toTry(p *plan.Plan) []string {
	var lines []string
	object := p.Shoot.Object.Print
	if object == "" {
		object = p.Video.Subject.Print
	}
	if object == "" {
		object = "the filmed object"
	}
	seen := ""
	if p.Shoot.Tried != (plan.Date{}) {
		seen = "; last seen on " + p.Shoot.Tried.String()
	}
	for _, id := range p.Shoot.Has {
		lines = append(lines, fmt.Sprintf("is the fault there: %s, on %s%s", p.Name(plan.Ref{Kind: plan.KindCause, ID: id}), object, seen))
	}
	if len(p.Shoot.Has) == 0 {
		lines = append(lines, "is the fault there, on "+object+seen)
	}
	for _, t := range p.Tests {
		if !filmed(p, t.Variants) {
			continue
		}
		for _, id := range t.Instrument {
			name := p.Name(plan.Ref{Kind: plan.KindTool, ID: id})
			if len(p.Tool(id)) == 0 || !kit.MustBeTried(name) {
				continue
			}
			line := name + ": does it show what it should"
			if !t.Setting.Empty() {
				line += ", set to " + t.Setting.Print
			}
			if !slices.Contains(lines, line) {
				lines = append(lines, line)
			}
		}
	}
	for _, part := range p.Parts {
		if part.Spare || !filmed(p, part.Variants) {
			continue
		}
		if part.Number != "" {
			name := kit.Limited(p, part.Name.Print, part.Variants)
			number := "carries the number " + part.Number + " and "
			if part.Number == "?" {
				number = ""
			}
			lines = append(lines, fmt.Sprintf("%s: the one in hand %slooks like the old one", name, number))
		}
	}
	return lines
}
