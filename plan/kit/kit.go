// Package kit lists what a repair and its shoot need in the hand: tools with
// their sizes, parts with their numbers, supplies, protective gear, and what
// must be charged.
//
// In goes a plan.Plan; out come Items in the plan's order, ready to print. The
// package adds only what the plan's cautions ask for and nobody has listed.
package kit

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"fixslate/plan"
)

// Item is one thing to carry or to have.
type Item struct {
	Name string
	Note string // size, number, amount, what for
	Why  string // of a tool: why this one, in place of what; not in Note
	For  string // versions in words, empty for all

	Variants []string // the versions' ids, empty for all
	Protects string   // of protective gear: the part of the body
}

func newItem(p *plan.Plan, name, note string, variants []string) Item {
	return Item{Name: name, Note: note, For: VersionNames(p, variants), Variants: variants}
}

// inches brings a size in inches to how a drive prints it.
var inches = strings.NewReplacer(" inches ", " in ", " inch ", " in ", "-inch ", " in ", "\" ", " in ")

// Tools are what the viewer needs in the hand.
func Tools(p *plan.Plan) []Item {
	var items []Item
	for _, t := range p.Tools {
		if t.Spare {
			continue
		}
		var drives []string
		for _, d := range t.Drives {
			if !strings.Contains(inches.Replace(strings.ToLower(t.Name.Print)), strings.ToLower(d.String())) {
				drives = append(drives, d.String())
			}
		}
		// Each remark may have commas of its own.
		var notes []string
		if t.Optional {
			notes = append(notes, "if you have one")
		}
		if len(drives) > 0 {
			notes = append(notes, strings.Join(drives, ", "))
		}
		item := newItem(p, t.Name.Print, strings.Join(notes, "; "), t.Variants)
		var why []string
		if !t.Why.Empty() {
			why = append(why, t.Why.Print)
		}
		if !t.InsteadOf.Empty() {
			why = append(why, "instead of "+t.InsteadOf.Print)
		}
		item.Why = strings.Join(why, "; ")
		items = append(items, item)
	}
	return items
}

// Parts are what is fitted, new bolts for those that are used once among them.
func Parts(p *plan.Plan) []Item {
	items := parts(p)
	for _, f := range p.Fasteners {
		if f.Reuse || !turned(p, f.ID) || listed(p, f.What.Print) {
			continue
		}
		name := "new " + f.What.Print
		if f.Count > 1 {
			name = fmt.Sprintf("%d × %s", f.Count, name)
		}
		items = append(items, newItem(p, name, Join(plan.Known(f.Thread), plan.Known(f.Grade)), f.Variants))
	}
	return items
}

// turned holds for a fastener that a step lists.
func turned(p *plan.Plan, id string) bool {
	return slices.ContainsFunc(p.Steps, func(s plan.Step) bool { return slices.Contains(s.Fasteners, id) })
}

// listed holds where a part of the plan has the name of what is asked for in its own.
func listed(p *plan.Plan, what string) bool {
	return slices.ContainsFunc(p.Parts, func(part plan.Part) bool {
		name, sought := strings.ToLower(part.Name.Print), strings.ToLower(what)
		return strings.Contains(name, strings.TrimSuffix(sought, "s"))
	})
}

func parts(p *plan.Plan) []Item {
	var items []Item
	for _, part := range p.Parts {
		if part.Spare {
			continue
		}
		name := part.Name.Print
		if part.Count > 1 {
			name = fmt.Sprintf("%d × %s", part.Count, name)
		}
		note := ""
		if part.Number != "" {
			note = "number " + plan.Known(part.Number)
		}
		if !part.Replaces.Empty() {
			note = Join(note, "replaces "+part.Replaces.Print)
		}
		items = append(items, newItem(p, name, Join(note, plan.Known(part.Price)), part.Variants))
	}
	return items
}

// Supplies are what is used up.
func Supplies(p *plan.Plan) []Item {
	var items []Item
	for _, s := range p.Supplies {
		if s.Protects == "" && !s.Spare {
			items = append(items, newItem(p, s.Name.Print, s.Amount.Print, s.Variants))
		}
	}
	return items
}

// Join puts two remarks together.
func Join(a, b string) string {
	if a != "" && b != "" {
		return a + ", " + b
	}
	return a + b
}

// charging are words of kit that runs on a battery (common practice, no
// source).
var charging = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(?:batter(?:y|ies)|cameras?|lights?|head ?lamps?|torch(?:es)?|microphones?|recorders?|phones?|cordless|(?:multi)?meters?|power banks?|monitors?|gimbals?)\b`)
})

// aBulb is a bulb by itself: it glows, but holds no charge.
var aBulb = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\bbulbs?\b`)
})

// trying are words of instruments that lie when they are broken or set wrong
// (common practice, no source).
var trying = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)(?:meter|tester|gauge|proving unit|thermometer|scanner|scope|test lamp|test lead|bulb)\b`)
})

// MustBeTried holds for an instrument whose reading is worth nothing before it
// was seen to work.
func MustBeTried(name string) bool { return trying().MatchString(name) }

// ToCharge picks from kit and tools what runs on a battery.
func ToCharge(p *plan.Plan) []string {
	var names []string
	add := func(name string) {
		if charging().MatchString(name) && !aBulb().MatchString(name) && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, g := range p.Shoot.Gear {
		add(g)
	}
	for _, t := range p.Tools {
		if t.Spare {
			continue
		}
		add(t.Name.Print)
	}
	return names
}

// VersionNames are the versions that something is for in a few words, empty
// for all.
func VersionNames(p *plan.Plan, ids []string) string {
	var names []string
	for _, id := range ids {
		for _, v := range p.Variant(id) {
			names = append(names, cmp.Or(v.Short.Print, v.Name.Print))
		}
	}
	return strings.Join(names, ", ")
}

// Limited is a line with the versions that it is for behind it, in brackets; as it
// is for all.
func Limited(p *plan.Plan, line string, versions []string) string {
	if names := VersionNames(p, versions); names != "" {
		line += " (" + names + ")"
	}
	return line
}

// Remark is all that is said of the item.
func (i Item) Remark() string {
	if i.Note != "" && i.Why != "" {
		return i.Note + "; " + i.Why
	}
	return i.Note + i.Why
}

// Line is the item in one line.
func (i Item) Line() string {
	text := i.Name
	if remark := i.Remark(); remark != "" {
		text += " – " + remark
	}
	if i.For != "" {
		text += " (" + i.For + ")"
	}
	return text
}
