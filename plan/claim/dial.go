package claim

import (
	"math"
	"strings"
	"sync"

	"fixslate/plan/prose"
)

// celsius is the unit that a sentence names for all its figures: "bed at sixty,
// nozzle at two ten, both Celsius".
func (r *reader) celsius() string {
	switch {
	case r.about&ofCelsius != 0:
		return "degC"
	case r.about&ofFahrenheit != 0:
		return "degF"
	}
	return ""
}

// onDial reads "a hundred and fifty on the gauge".
func (r *reader) onDial(f *prose.Figure) bool {
	n := r.wordAt(f.End)
	if !r.is(n, "on") || r.words[n].stopped {
		return false
	}
	for j := n + 1; j < len(r.words) && j < n+4; j++ {
		if r.in(j, r.known.meter) {
			return true
		}
	}
	return false
}

// onRevs reads "three thousand on the tach".
func (r *reader) onRevs(f *prose.Figure) bool {
	n := r.wordAt(f.End)
	if f.Values[0].Number < slowest {
		return false
	}
	for j := n; j < len(r.words) && j < n+4; j++ {
		if r.is(j, "tach") || r.is(j, "tacho") || r.is(j, "tachometer") || r.is(j, "strobe") || r.is(j, "rev") && r.is(j+1, "counter") {
			return true
		}
	}
	return false
}

// slowest is from how many turns a minute on a bare number near "idle" is one.
const slowest = 300

// dialUnit is the unit of a bare reading by what gave it or by what was measured: a
// caliper reads millimetres, a battery stands at volts. The nearest word decides.
func (r *reader) dialUnit(at int, number float64, whole bool) string {
	if n := r.wordAt(r.words[min(at, len(r.words)-1)].end); r.is(n, "of") && n+1 < len(r.words) {
		if unit := dialled(r.words[n+1].text, number, whole); unit != "" {
			return unit // "point seven of gap"
		}
	}
	if n := r.wordAt(r.words[min(at, len(r.words)-1)].end); true {
		for j := n; j < len(r.words) && j < n+4; j++ {
			if (r.is(j, "on") || r.is(j, "across") || r.is(j, "through")) && r.in(j+1, r.known.det) {
				for m := j + 2; m < len(r.words) && m < j+4; m++ {
					if unit := dialled(r.words[m].text, number, whole); unit != "" {
						return unit // "one oh two on the dB meter"
					}
				}
			}
		}
	}
	for j := at - 1; j >= max(0, at-longestDial); j-- {
		if r.words[j].mood == order && r.in(j, r.known.order) && (j == 0 || r.words[j].stopped || r.in(j-1, r.known.glue)) && !sizing[r.words[j].text] {
			continue // "coil it", "seat it"
		}
		if unit := dialled(r.words[j].text, number, whole); unit != "" {
			return unit
		}
	}
	return ""
}

// sizing are verbs of an order that a size or a force goes with.
var sizing = map[string]bool{"torque": true, "tighten": true, "nip": true, "drill": true, "cut": true, "sharpen": true, "hone": true, "gap": true, "overlap": true}

// dialled is the unit that a word gives to a number, empty for none.
func dialled(word string, number float64, whole bool) string {
	for _, d := range dials()[word] {
		if number >= d.least && number <= d.most && !(whole && d.parts) {
			return d.unit
		}
	}
	return ""
}

// dial says in what unit a number near a word is, between which bounds, and whether
// for numbers with parts alone. Common practice in metric shops, no source.
type dial struct {
	unit        string
	least, most float64
	parts       bool
}

var dials = sync.OnceValue(func() map[string][]dial {
	all := map[string][]dial{}
	for _, row := range dialRows {
		for w := range strings.FieldsSeq(row.words) {
			all[w] = append(all[w], row.list...)
		}
	}
	return all
})

var dialRows = []struct {
	words string
	list  []dial
}{
	{"caliper calipers micrometer vernier drill reamer nozzle feeler shim filament wire rod electrode tungsten", []dial{{"mm", 0, 500, true}}},
	{"glass ply plywood plasterboard mdf perspex acrylic veneer sheet plate rotor disc gasket washer washers shims", []dial{{"mm", 0, 100, true}}},
	{"gap gaps clearance clearances lash", []dial{{"mm", 0, 12, false}, {"mm", 0, 100, true}, {"thou", 13, 60, false}}},
	{"pad pads lining linings shoes", []dial{{"mm", 0, 30, false}}},
	{"tappet tappets points float inlet exhaust", []dial{{"mm", 0, 1, true}}},
	{"overlap expansion skirting", []dial{{"mm", 2, 1000, false}}},
	{"centres cut length lengths", []dial{{"mm", 50, 6000, false}}},
	{"seat sharpen sharpened hone honed timing", []dial{{"deg", 5, 60, false}}},
	{"cabinet chamber incubator", []dial{{"degC", -40, 15, false}, {"degC", 15, 300, false}}},
	{"fork shock", []dial{{"psi", 15, 300, false}}},
	{"system", []dial{{"bar", 0.5, 4, true}}},
	{"vacuum", []dial{{"inHg", 5, 30, false}}},
	{"nut nuts bolt bolts", []dial{{"Nm", 61, 700, false}}},
	{"fan", []dial{{"rpm", slowest, 1e5, false}}},
	{"fused fuse breaker", []dial{{"A", 0.1, 250, false}}},
	{"supply mains transformer", []dial{{"V", 5, 480, false}}},
	{"primary secondary", []dial{{"V", 5, 480, false}, {"ohm", 0, 1e3, true}}},
	{"coil contacts element", []dial{{"ohm", 0, 1e4, false}}},
	{"bore kerf deflection stickout protrusion endfloat end-float overhang play runout toe diameter circumference depth thickness", []dial{{"mm", 0, 3000, false}}},
	{"tread treads", []dial{{"mm", 0, 20, false}}},
	{"idle idles idling tickover revs rev redlines redline tach tacho tachometer spins spin spinning", []dial{{"rpm", slowest, 1e6, false}}},
	{"pool spa aquarium hot-tub", []dial{{"pH", 5, 10, true}}},
	{"ph", []dial{{"pH", 0, 14, false}}},
	{"voltage volts", []dial{{"V", 1, 1000, false}}},
	{"battery batteries cell cells charged charger pack", []dial{{"V", 1, 60, true}}},
	{"resistance winding windings loop", []dial{{"ohm", 0, 1e6, false}}},
	{"compression", []dial{{"psi", 60, 400, false}}},
	{"stat stats thermostat thermostats", []dial{{"degC", -40, 300, false}}},
	{"tape rule ruler mike mikes miked", []dial{{"mm", 0, 10000, false}}},
	{"mitre mitres miter bevel bevels chamfer protractor angle angles camber caster castor tilt rake", []dial{{"deg", 0, 180, false}}},
	{"torque torques torqued tighten tightened tightens nip nipped", []dial{{"Nm", 2, 700, false}}},
	{"bush bushes bushing bushings spacer collar", []dial{{"mm", 2, 100, false}}},
	{"spindle rotor governor drum impeller speed flat-out", []dial{{"rpm", slowest, 1e5, false}}},
	{"oven kiln griddle hotplate nozzle hotend hot-end bed boiler freezer fridge radiator flue kettle coolant glue adhesive wax temp temperature", []dial{{"degC", 20, 1500, false}, {"degC", -60, 0, false}}},
	{"loudness sound noise", []dial{{"dB", 20, 150, false}}},
	{"pressure", []dial{{"bar", 0.2, 12, true}}},
	{"current draws pulls pulling", []dial{{"A", 0, 60, false}}},
	{"weighs weigh weighed", []dial{{"kg", 0.05, 500, false}}},
	{"frequency", []dial{{"Hz", 1, 1e5, false}}},
	{"metronome tempo", []dial{{"bpm", 20, 400, false}}},
	{"platter turntable strobe", []dial{{"rpm", 10, 100, false}}},
	{"baud", []dial{{"baud", 110, 1e7, false}}},
	{"fader faders mixer voice gain loudness", []dial{{"dB", -100, 0, false}}},
	{"shaft shafts journal journals spindle crankpin sleeve liner lobe stem gudgeon tenon dowel mortise biscuit rail groove", []dial{{"mm", 0, 500, true}}},
	{"side", []dial{{"mm", 0, 1, true}}},
	{"db", []dial{{"dB", 0, 200, false}}},
	{"humidity moisture", []dial{{"%", 0, 100, false}}},
	{"boils melts simmers freezes", []dial{{"degC", -60, 2000, false}}},
	{"tyre tyres tire tires", []dial{{"psi", 15, 140, false}, {"bar", 1, 10, true}}},
}

// longestDial bounds the way from a reading to what shows it, in words.
const longestDial = 8

// hotSide says whether the thing at the number is named by its heat: "the hot tap's
// at fifty". Cold tyres stand at a pressure.
func (r *reader) hotSide(f *prose.Figure, at int) bool {
	const coldest, hottest = 2, 400
	if v := f.Values[0].Number; v < coldest || v > hottest {
		return false
	}
	hot := false
	for j := max(0, at-longestDial); j < at; j++ {
		switch r.words[j].text {
		case "hot", "cold", "warm":
			hot = hot || sides[r.words[j+1].text]
		case "rinse", "wash", "bed", "hotend", "kiln", "oven", "grill":
			hot = hot || r.is(at-1, "at") && j+2 >= at-1 && f.Values[0].Number > 20
		case "water":
			hot = hot || r.is(at-1, "at") && j+1 == at-1 && f.Values[0].Number > 20
		case "room", "workshop", "shed", "loft", "plate", "chamber", "cabinet", "fridge", "incubator", "vent", "greenhouse":
			hot = hot || r.is(at-1, "at") && j+1 < at && r.in(j+1, r.known.be)
		case "flow", "return", "coolant", "bath", "ambient", "mash", "brine":
			hot = hot || j+1 < at && r.in(j+1, r.known.be)
		case "pressure", "psi", "tyre", "tyres", "gauge", "ohms", "resistance":
			return false
		}
	}
	return hot
}

var sides = map[string]bool{"side": true, "end": true, "tap": true, "flow": true, "leg": true, "pipe": true, "water": true, "feed": true, "plate": true, "junction": true, "tank": true, "room": true}

// frost says whether a negative number without a unit is a temperature: "down to
// minus ten", "it's rated from minus five to plus forty". It is none beside
// another quantity.
func (r *reader) frost(f *prose.Figure, at int) bool {
	for i := range r.figures {
		g := &r.figures[i]
		if len(g.Values) > 0 && g.Values[0].Unit != "" && g.Start != f.Start && !isTime(g.Values[0].Unit) && g.Kind != prose.Percent {
			return false
		}
	}
	if f.Values[0].Number != math.Trunc(f.Values[0].Number) {
		return false
	}
	switch r.words[max(at-1, 0)].text {
	case "to", "at", "below", "from", "under", "between", "is", "was", "read", "reads", "of", "reading", "showing", "shows", "says", "got", "getting", "about", "hit", "hits", "holding", "holds", "sitting", "sits", "stays", "reached", "reaches", "'s":
		return true
	}
	return at == 0 || r.words[at].stopped || f.Kind == prose.Range
}

// onHeat reads "a hundred and forty on the hotplate".
func (r *reader) onHeat(f *prose.Figure) bool {
	const coolest = 30
	n := r.wordAt(f.End)
	if !r.is(n, "on") || r.words[n].stopped || f.Values[0].Number < coolest {
		return false
	}
	for j := n + 1; j < len(r.words) && j < n+4; j++ {
		if r.in(j, r.known.thermal) {
			return true
		}
	}
	return false
}

// ofAcid says whether pH is spoken of just before the number at i.
func (r *reader) ofAcid(i int) bool {
	const reach = 4
	for j := max(0, i-reach); j < i; j++ {
		if r.is(j, "ph") {
			return true
		}
	}
	return false
}

// jawed says whether a bare number is what jaws open to or a saw cuts: millimetres.
func (r *reader) jawed(f *prose.Figure, at int) bool {
	const least, most, reach = 3, 500, 7
	if v := f.Values[0].Number; v < least || v > most || !r.isBare(f) {
		return false
	}
	for j := max(0, at-reach); j < at; j++ {
		switch r.words[j].text {
		case "jaw", "jaws", "vice", "hole-saw", "tread", "treads":
			return true
		case "saw":
			return r.is(j-1, "hole")
		}
	}
	return false
}

// atHeat says whether a number behind a resistance is the temperature at which it
// holds: "ten k at twenty five".
func (r *reader) atHeat(f *prose.Figure, at int) bool {
	const hottest = 150
	if len(r.values) == 0 || !r.is(at-1, "at") || f.Values[0].Number > hottest || !r.isBare(f) {
		return false
	}
	last := r.values[len(r.values)-1]
	return (last.Unit == "ohm" || last.Unit == "kohm") && last.End == r.words[max(at-2, 0)].end
}
