package plan

import (
	"fixslate/plan/hazard/class"
	"fixslate/plan/trade"
)

// The facts of a repair: what is declared once and quoted everywhere.

// Variant is a version of the object that viewers may have.
type Variant struct {
	Common
	ID    string
	Name  Text
	Short Text // a word or two after a value; the name if unset
	Tell  Text // how to tell it
}

// Differs says how the filmed object differs from the viewer's.
type Differs struct {
	Common
	OnCamera Text
	Viewers  Text
	Step     string // id, or empty
}

// Source is where a fact comes from.
type Source struct {
	Common
	ID    string
	Title Text
	Where Text
	Kind  string // maker, standard, law, handbook, own-measurement
	Date  Date
	Link  string
	Named bool // no table of its own: it came from a fact's source
}

// Tool is something that turns, holds or measures.
type Tool struct {
	Common
	ID        string
	Name      Text
	Drives    []trade.Drive // what it turns, read from the name if unset
	Optional  bool
	InsteadOf Text
	Why       Text
	Link      string
	Named     bool // no table of its own: it came from a step's list
}

// Part is something fitted or replaced.
type Part struct {
	Common
	ID       string
	Name     Text
	Number   string
	Count    int // 1 if unset
	Price    string
	Replaces Text
	Link     string
	Source   []string
	Named    bool
}

// Supply is something used up, or protective gear.
type Supply struct {
	Common
	ID       string
	Name     Text
	Amount   Text
	Protects string // "eyes", "hearing" …; empty: a consumable
	Named    bool
}

// Fastener is a kind of screw, bolt, nut or clip.
type Fastener struct {
	Common
	ID         string
	What       Text
	Thread     string // "M5"
	Head       string // "hex"
	Drive      string // "8 mm"
	Grade      string // property class, "8.8"
	Count      int    // 0: not said
	Torque     trade.Measure
	Reuse      bool // true if unset
	Angle      Text
	ThreadLock Text
	Source     []string
	Named      bool
}

// Fuse protects a circuit.
type Fuse struct {
	Common
	ID       string
	At       Text // where it sits: "fuse 12"
	Rating   trade.Measure
	Form     string
	Colour   string
	Protects Text
	Source   []string
	Named    bool
}

// Wire runs from somewhere to somewhere.
type Wire struct {
	Common
	ID      string
	From    []string
	To      []string
	FromPin Text
	ToPin   Text
	Colour  string
	Section trade.Measure
	Length  trade.Measure
	Source  []string
	Named   bool
}

// Spec is any other value of the object.
type Spec struct {
	Common
	ID     string
	What   Text
	Value  Value
	Source []string
}

// Term is a word of the trade: how it is spelled, said and mis-heard.
type Term struct {
	Common
	ID       string
	Text     string
	SayAs    string
	Misheard []string
}

// Caution is a caution with the author's own words, or a class's by name.
type Caution struct {
	Common
	ID         string
	Hazard     string       // class or family as written, or the id where it is one
	Class      string       // id of the hazard class; empty where only a family is named, or nothing
	Family     string       // family of hazards, "none" for notices and where none fits
	SignalWord string       // as written
	Signal     class.Signal // the author's, else the class's
	Say        Text         // what is spoken: the author's, else the class's
	Card       Text         // what the card shows: the author's, else the class's
	Text       string       // the longer words for description, book and risks sheet
	LeaveTo    Text
	Lines      []Line // Say as it is spoken
	Stock      bool   // no table of its own: the class's words
}
