package trade

import (
	"slices"
	"strings"
	"sync"
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

// fuseSeries are the fuses of one form.
type fuseSeries struct {
	form, source string
	weak         []float64 // ratings of one weak source
	colours      []colouring
}

type colouring struct {
	amps            float64
	colour, dispute string
}

// fuseRows by form, rising. The blade colours are those of ISO 8820-3, read in
// charts; where charts disagree the odd one out stands in dispute.
var fuseRows = []fuseSeries{
	{RegularBlade, iso8820, []float64{0.5, 35}, []colouring{
		{0.5, "dark blue", "one list: black"}, {1, "black", ""}, {2, "grey", ""}, {3, "violet", ""}, {4, "pink", ""},
		{5, "tan", "one list: orange"}, {7.5, "brown", ""}, {10, "red", ""}, {15, "blue", ""}, {20, "yellow", ""},
		{25, "clear", ""}, {30, "green", ""}, {35, "blue-green", "other lists: light green, rose"}, {40, "orange", ""},
	}},
	{MiniBlade, iso8820, nil, []colouring{
		{2, "grey", ""}, {3, "violet", ""}, {4, "pink", ""}, {5, "tan", ""}, {7.5, "brown", ""}, {10, "red", ""},
		{15, "blue", ""}, {20, "yellow", ""}, {25, "clear", ""}, {30, "green", ""},
	}},
	{MaxiBlade, iso8820, []float64{100, 120}, []colouring{
		{20, "yellow", ""}, {25, "grey", "a regular 25 A is clear"}, {30, "green", ""},
		{35, "brown", "a regular 35 A is blue-green"}, {40, "orange", ""}, {50, "red", ""},
		{60, "blue", "one list: blue or aqua"}, {70, "tan", "lists print tan or brown"}, {80, "clear", ""},
		{100, "violet", "one list: clear"}, {120, "violet", "one list: clear"},
	}},
	{MicroBlade, "one hobby list, and 7.5 A " + fromMemory, []float64{5, 7.5, 10, 15, 20, 25, 30}, []colouring{
		{5, "tan", ""}, {7.5, "brown", ""}, {10, "red", ""}, {15, "blue", ""}, {20, "yellow", ""}, {25, "clear", ""},
		{30, "green", ""},
	}},
	{Torpedo, din72581, nil, []colouring{
		{5, "yellow", ""}, {8, "white", ""}, {16, "red", ""}, {25, "blue", ""},
	}},
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
	for _, f := range fuses() {
		if f.Form == named && same(f.Amps, amps) {
			return f, true
		}
	}
	return Fuse{}, false
}

// FusesOf are the fuses that have a colour, of every form.
func FusesOf(colour string) []Fuse {
	return slices.DeleteFunc(Fuses(), func(f Fuse) bool { return !f.Is(colour) })
}

// Fuses lists every fuse that has a colour.
func Fuses() []Fuse { return slices.Clone(fuses()) }

var fuses = sync.OnceValue(func() []Fuse {
	var all []Fuse
	for _, s := range fuseRows {
		for _, c := range s.colours {
			all = append(all, Fuse{s.form, c.amps, c.colour, colourWords[c.colour], slices.Contains(s.weak, c.amps), s.source, c.dispute})
		}
	}
	return all
})

// Is says whether a colour's word, in any case, is this fuse's colour.
func (f Fuse) Is(colour string) bool {
	c := strings.ToLower(strings.Join(strings.Fields(colour), " "))
	return c == f.Colour || slices.Contains(f.Also, c)
}
