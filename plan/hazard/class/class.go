// Package class is the catalogue of hazards: 81 classes in families, each with
// the caution a presenter speaks, the card shown with it, the longer text that
// is printed, the gear, who may do the work, and the source.
//
// In goes a name (a class, a family, a state, or everyday words); out come
// classes, families and states. The package never reads a step: which hazards
// a step has is the business of plan/hazard. The words are the usual cautions
// of the trade; they stand behind local law and code, the maker's instructions
// for the exact model, and licensed practice, and none of them is a procedure.
package class

import (
	"slices"
	"sync"
)

// Class is one kind of hazard.
type Class struct {
	ID         string // "mains-isolation"; never changes meaning
	Name       string // a short title
	Family     string // id of its family; NoFamily where it has none
	Signal     Signal
	Escalation Escalation // when a stronger signal is due; zero: never

	Spoken string // one sentence to the viewer, at most SpokenMax characters
	Card   string // a few words for the screen, at most CardMax characters
	Text   string // the printed caution: one to three sentences

	Gear   []Gear   // worn
	NoGear string   // why nothing is worn, where Gear is empty
	Kit    []string // to have there: "carbon monoxide alarm"
	Who    Who
	When   Timing

	// Arises lists the states that bring the hazard by themselves, Answered
	// those that answer it; where several are listed the object wants each
	// that it can be in (mains: power-off and proven-dead).
	Arises   []string
	Answered []string

	Present []string // the Energies that bring it; empty for dust, chemicals, people
	Domains []string // trades in which it is usual: "car", "appliance" …

	// Source is where the caution comes from, each part with its mark: "read",
	// the passage itself or a word-for-word copy was read in an excerpt;
	// "secondary", somebody else's account was; "memory", it is only named;
	// "common practice", trades and makers say so, no one source.
	Source string
}

// Most characters (runes) of a spoken caution and of its card.
const (
	SpokenMax = 90
	CardMax   = 32
)

// Escalation says when a class deserves a stronger signal than its own.
type Escalation struct {
	To   Signal
	When string // "when anyone goes beneath"
}

// Skill is who may do work; higher is rarer.
type Skill int

// The four skills.
const (
	Anyone Skill = iota + 1
	CarefulAdult
	Trained
	Licensed // what law often reserves
)

// String is the skill in words: "a careful adult".
func (s Skill) String() string {
	if s < Anyone || s > Licensed {
		return "unknown"
	}
	return [...]string{"anyone", "a careful adult", "a trained person", "a licensed person"}[s-Anyone]
}

// Who may do work with the hazard. Text is the general form: which law and
// which licence depends on the region.
type Who struct {
	Skill Skill
	Text  string
}

// All is the whole catalogue in its own order. The caller may change what it
// gets.
func All() []Class {
	all := make([]Class, 0, 81)
	for _, c := range index().classes {
		all = append(all, c.clone())
	}
	return all
}

// Find is the class of that id, spelled exactly.
func Find(id string) (Class, bool) {
	c, ok := index().byID[id]
	if !ok {
		return Class{}, false
	}
	return c.clone(), true
}

func (c Class) clone() Class {
	c.Gear = slices.Clone(c.Gear)
	c.Kit = slices.Clone(c.Kit)
	c.Arises = slices.Clone(c.Arises)
	c.Answered = slices.Clone(c.Answered)
	c.Present = slices.Clone(c.Present)
	c.Domains = slices.Clone(c.Domains)
	return c
}

// catalogue is the classes and the ways in by name.
type catalogue struct {
	classes  []*Class
	byID     map[string]*Class
	byFamily map[string][]*Class
}

// index is built at the first question, so that a run which asks nothing pays
// nothing.
var index = sync.OnceValue(func() catalogue {
	cat := catalogue{byID: map[string]*Class{}, byFamily: map[string][]*Class{}}
	for _, group := range [...][]Class{
		supportClasses, storedClasses, vehicleClasses, movingClasses, fuelClasses,
		dustClasses, electricClasses, serviceClasses, workplaceClasses,
	} {
		for i := range group {
			c := &group[i]
			cat.classes = append(cat.classes, c)
			cat.byID[c.ID] = c
			cat.byFamily[c.Family] = append(cat.byFamily[c.Family], c)
		}
	}
	return cat
})

// Energies are the words that [video] present knows: what can hurt.
func Energies() []string {
	return []string{
		"mains", "low-voltage", "high-voltage-dc", "lithium", "fuel", "gas",
		"refrigerant", "pressure", "spring", "heat", "water", "motion",
		"raised", "noise", "airbag", "stored-charge",
	}
}
