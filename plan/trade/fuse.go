package trade

import (
	"slices"
	"strings"
)

// Fuse is the colour of a fuse by form and rating. One colour means different
// currents in different forms: always go by both.
type Fuse struct {
	Form    string // "regular blade", "mini blade", "maxi blade", "micro blade", "torpedo"
	Amps    float64
	Colour  string
	Also    []string // other words for the same colour
	Weak    bool     // one weak source: too little to call another colour wrong
	Source  string
	Dispute string // what a contrary list says
}

// The forms of fuse that have a colour code.
const (
	RegularBlade = "regular blade"
	MiniBlade    = "mini blade"
	MaxiBlade    = "maxi blade"
	MicroBlade   = "micro blade"
	Torpedo      = "torpedo"
)

// fuses by form, rising. The blade colours are those of ISO 8820-3, read in
// charts; where charts disagree the odd one out stands in Dispute.
var fuses = []Fuse{
	{Form: RegularBlade, Amps: 0.5, Colour: "dark blue", Dispute: "one list: black", Weak: true},
	{Form: RegularBlade, Amps: 1, Colour: "black"},
	{Form: RegularBlade, Amps: 2, Colour: "grey"},
	{Form: RegularBlade, Amps: 3, Colour: "violet"},
	{Form: RegularBlade, Amps: 4, Colour: "pink"},
	{Form: RegularBlade, Amps: 5, Colour: "tan", Dispute: "one list: orange"},
	{Form: RegularBlade, Amps: 7.5, Colour: "brown"},
	{Form: RegularBlade, Amps: 10, Colour: "red"},
	{Form: RegularBlade, Amps: 15, Colour: "blue"},
	{Form: RegularBlade, Amps: 20, Colour: "yellow"},
	{Form: RegularBlade, Amps: 25, Colour: "clear"},
	{Form: RegularBlade, Amps: 30, Colour: "green"},
	{Form: RegularBlade, Amps: 35, Colour: "blue-green", Dispute: "other lists: light green, rose", Weak: true},
	{Form: RegularBlade, Amps: 40, Colour: "orange"},
	{Form: MiniBlade, Amps: 2, Colour: "grey"},
	{Form: MiniBlade, Amps: 3, Colour: "violet"},
	{Form: MiniBlade, Amps: 4, Colour: "pink"},
	{Form: MiniBlade, Amps: 5, Colour: "tan"},
	{Form: MiniBlade, Amps: 7.5, Colour: "brown"},
	{Form: MiniBlade, Amps: 10, Colour: "red"},
	{Form: MiniBlade, Amps: 15, Colour: "blue"},
	{Form: MiniBlade, Amps: 20, Colour: "yellow"},
	{Form: MiniBlade, Amps: 25, Colour: "clear"},
	{Form: MiniBlade, Amps: 30, Colour: "green"},
	{Form: MaxiBlade, Amps: 20, Colour: "yellow"},
	{Form: MaxiBlade, Amps: 25, Colour: "grey", Dispute: "a regular 25 A is clear"},
	{Form: MaxiBlade, Amps: 30, Colour: "green"},
	{Form: MaxiBlade, Amps: 35, Colour: "brown", Dispute: "a regular 35 A is blue-green"},
	{Form: MaxiBlade, Amps: 40, Colour: "orange"},
	{Form: MaxiBlade, Amps: 50, Colour: "red"},
	{Form: MaxiBlade, Amps: 60, Colour: "blue", Dispute: "one list: blue or aqua"},
	{Form: MaxiBlade, Amps: 70, Colour: "tan", Dispute: "lists print tan or brown"},
	{Form: MaxiBlade, Amps: 80, Colour: "clear"},
	{Form: MaxiBlade, Amps: 100, Colour: "violet", Dispute: "one list: clear", Weak: true},
	{Form: MaxiBlade, Amps: 120, Colour: "violet", Dispute: "one list: clear", Weak: true},
	{Form: MicroBlade, Amps: 5, Colour: "tan", Weak: true},
	{Form: MicroBlade, Amps: 7.5, Colour: "brown", Weak: true},
	{Form: MicroBlade, Amps: 10, Colour: "red", Weak: true},
	{Form: MicroBlade, Amps: 15, Colour: "blue", Weak: true},
	{Form: MicroBlade, Amps: 20, Colour: "yellow", Weak: true},
	{Form: MicroBlade, Amps: 25, Colour: "clear", Weak: true},
	{Form: MicroBlade, Amps: 30, Colour: "green", Weak: true},
	{Form: Torpedo, Amps: 5, Colour: "yellow"},
	{Form: Torpedo, Amps: 8, Colour: "white"},
	{Form: Torpedo, Amps: 16, Colour: "red"},
	{Form: Torpedo, Amps: 25, Colour: "blue"},
}

// colourWords are other words for a colour of a fuse's body.
var colourWords = map[string][]string{
	"dark blue": {"navy"}, "grey": {"gray"}, "violet": {"purple"}, "pink": {"rose"}, "tan": {"light brown", "beige"},
	"clear": {"natural", "white", "transparent", "colourless", "colorless"}, "blue": {"light blue"}, "green": {"light green"},
	"blue-green": {"teal", "turquoise", "aqua", "blue green"}, "orange": {"amber"}, "white": {"natural"},
}

// formWords are the words by which authors name a form; the first that a text
// holds decides.
var formWords = []struct{ word, form string }{
	{"micro", MicroBlade}, {"low-profile", MiniBlade}, {"low profile", MiniBlade}, {"mini", MiniBlade}, {"atm", MiniBlade}, {"apm", MiniBlade}, {"apx", MaxiBlade},
	{"maxi", MaxiBlade}, {"jumbo", MaxiBlade}, {"torpedo", Torpedo}, {"ceramic", Torpedo}, {"continental", Torpedo},
	{"regular", RegularBlade}, {"standard", RegularBlade}, {"normal", RegularBlade}, {"ato", RegularBlade}, {"atc", RegularBlade},
	{"blade", RegularBlade}, {"spade", RegularBlade},
}

// FuseForm is the form behind an author's words: "mini", "regular blade",
// "ATO". False for forms without a colour code, such as glass tubes and bolted
// links.
func FuseForm(words string) (string, bool) {
	text := strings.ToLower(words)
	for _, w := range []string{"glass", "bolt", "strip", "link", "cartridge", "tube"} {
		if strings.Contains(text, w) {
			return "", false
		}
	}
	for _, w := range formWords {
		if strings.Contains(text, w.word) {
			return w.form, true
		}
	}
	return "", false
}

// FuseColour is the colour of a fuse of that form and rating in amperes. The
// form is an author's words; empty words mean the regular blade. False for
// forms and ratings without a colour.
func FuseColour(form string, amps float64) (Fuse, bool) {
	named, ok := FuseForm(form)
	if strings.TrimSpace(form) == "" {
		named, ok = RegularBlade, true
	}
	if !ok {
		return Fuse{}, false
	}
	for _, f := range fuses {
		if f.Form == named && same(f.Amps, amps) {
			return f.filled(), true
		}
	}
	return Fuse{}, false
}

// FusesOf are the fuses that have a colour, of every form.
func FusesOf(colour string) []Fuse {
	var found []Fuse
	for _, f := range fuses {
		if f = f.filled(); f.Is(colour) {
			found = append(found, f)
		}
	}
	return found
}

// Fuses lists every fuse that has a colour.
func Fuses() []Fuse {
	list := make([]Fuse, len(fuses))
	for i, f := range fuses {
		list[i] = f.filled()
	}
	return list
}

func (f Fuse) filled() Fuse {
	f.Also = slices.Clone(colourWords[f.Colour])
	f.Source = iso8820
	switch {
	case f.Form == Torpedo:
		f.Source = din72581
	case f.Form == MicroBlade:
		f.Source = "one hobby list, and 7.5 A " + fromMemory
	}
	return f
}

// Is says whether a colour's word, in any case, is this fuse's colour.
func (f Fuse) Is(colour string) bool {
	c := strings.ToLower(strings.Join(strings.Fields(colour), " "))
	return c == f.Colour || slices.Contains(f.Also, c)
}
