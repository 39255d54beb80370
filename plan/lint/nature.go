package lint

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/trade"
)

// nature is what the noun of a fact's name says of its value: which dimensions
// it can have at all, and how large it is anywhere in a workshop. Both ends are
// far outside what is met; common practice, no source.
type nature struct {
	nouns      []string
	dimensions []trade.Dimension
	unit       trade.Unit // of lo and hi; empty: any size
	lo, hi     float64
	why        string
}

var natures = []nature{
	{[]string{"wait", "waiting time", "time", "duration", "how long", "cooling time", "curing time", "soak"}, []trade.Dimension{trade.Time},
		"s", 0.2, 60 * 86400, "what a hand waits for takes seconds to weeks"},
	{[]string{"weight", "mass"}, []trade.Dimension{trade.Mass, trade.Force}, "kg", 1e-4, 6e4, "what is mended by hand weighs grams to tonnes"},
	{[]string{"height", "width", "depth", "reach"}, []trade.Dimension{trade.Length}, "m", 1e-6, 50, "what a ladder reaches is metres"},
	{[]string{"length"}, []trade.Dimension{trade.Length, trade.Time}, "m", 1e-5, 1000, "what is measured with a rule or a tape is metres"},
	{[]string{"distance"}, []trade.Dimension{trade.Length}, "m", 1e-5, 1000, "what is kept clear in a workshop or a yard is metres"},
	{[]string{"thickness", "diameter", "bore", "gap", "clearance", "lining", "play", "runout", "backlash", "radius"}, []trade.Dimension{trade.Length, trade.Angle},
		"mm", 0.001, 5000, "what is measured with a gauge is millimetres"},
	{[]string{"voltage", "volts"}, []trade.Dimension{trade.Voltage}, "V", 0, 1e5, "no such voltage is met outside a power station"},
	{[]string{"resistance"}, []trade.Dimension{trade.Resistance}, "", 0, 0, ""},
	{[]string{"current", "amps"}, []trade.Dimension{trade.Current}, "A", 0, 1e4, "no such current is met outside a power station"},
	{[]string{"temperature"}, []trade.Dimension{trade.Temperature}, "°C", -273.15, 2000, "nothing that is mended by hand is as hot or cold"},
	{[]string{"pressure"}, []trade.Dimension{trade.Pressure, trade.Force}, "", 0, 0, ""},
	{[]string{"torque"}, []trade.Dimension{trade.Torque, trade.Angle}, "N·m", 0.001, 1e4, "hands and wrenches give newton metres"},
	{[]string{"water", "oil", "fluid", "coolant", "petrol", "diesel", "fuel", "grease", "paint"},
		[]trade.Dimension{trade.Volume, trade.Mass, trade.Temperature, trade.Pressure, trade.Flow, trade.Length, trade.Time, trade.Ratio, trade.Level},
		"L", 1e-5, 100, "what is poured by hand is drops to buckets"},
}

// natureOf finds what a fact's name is about: its noun, the last word before
// the first preposition.
func natureOf(what string) (nature, string) {
	noun := headNoun(what)
	for _, n := range natures {
		for _, w := range n.nouns {
			of := noun == w || strings.HasSuffix(noun, " "+w) || strings.HasPrefix(noun, w+" ") && w == "how long"
			for _, article := range []string{"the", "it", "a", "that"} {
				of = of || strings.HasPrefix(noun, w+" "+article+" ") // "time the lever is held"
			}
			if of {
				return n, w
			}
		}
	}
	return nature{}, ""
}

// prepositions end the noun of a name: "wait | after the battery is off".
var prepositions = []string{"of", "for", "after", "before", "at", "with", "without", "from", "in", "into", "on", "onto", "to", "between", "when", "while", "where", "above", "below", "under", "over", "by", "across", "per", "until", "behind", "through", "along", "as"}

// headNoun is a name up to its first preposition, folded: "spare wheel torque".
func headNoun(what string) string {
	words := strings.Fields(strings.ReplaceAll(fold(what), " . ", " "))
	if at := slices.IndexFunc(words, func(w string) bool { return slices.Contains(prepositions, w) }); at > 0 {
		words = words[:at]
	}
	return strings.Join(words, " ")
}

// unnatural says why a value can't be what its name calls it, or is empty.
func unnatural(what string, m trade.Measure) string {
	n, noun := natureOf(what)
	for _, q := range m.Quantities() {
		if noun == "" || q.Unit == "" || q.Unit.Dimension() == "" {
			continue
		}
		if noun == "weight" && q.Unit.Dimension() == trade.Length && placedWeight(what) {
			continue // it is a thing, and the value where it hangs
		}
		if !slices.Contains(n.dimensions, q.Unit.Dimension()) {
			return fmt.Sprintf("no %s is measured in %s", noun, q.Unit)
		}
		in, same := q.In(n.unit)
		if slices.Contains(n.dimensions, trade.Volume) && says(fold(what), "pond", "pool", "tank", "system", "cistern") {
			continue
		}
		if why := machineWeight(what, q); why != "" {
			return why
		}
		if same && q.Number != 0 && (in.Number > n.hi || in.Number < n.lo && m.Shape != trade.AtMost) {
			return n.why
		}
	}
	return ""
}

// placedWeight holds for "weight below the pulley".
func placedWeight(what string) bool {
	_, after, _ := strings.Cut(fold(what), " weight ")
	place, _, _ := strings.Cut(after, " ")
	return slices.Contains([]string{"above", "behind", "below", "between", "from", "over", "under"}, place)
}

// Wires of vehicles, houses and machines: common practice, no source.
const (
	thinnest, thickest = 0.03, 500.0 // mm²
	farthest           = 500.0       // m
)

// unwired says why no wire is so thin, thick or long, or is empty.
func unwired(w *plan.Wire) (key, why string) {
	for _, q := range w.Section.Quantities() {
		if in, ok := q.In(trade.SquareMM); ok && (in.Number < thinnest || in.Number > thickest) {
			return "section", fmt.Sprintf("wires have %g to %g mm²", thinnest, thickest)
		}
	}
	for _, q := range w.Length.Quantities() {
		if in, ok := q.In("m"); ok && in.Number > farthest {
			return "length", "wires that are mended by hand are metres long"
		}
	}
	return "", ""
}

// machines are what whole ones of a kind weigh, in kg, very widely. Common
// practice, no source.
var machines = []struct {
	nouns  []string
	lo, hi float64
}{
	{[]string{"washing machine", "washer", "dryer", "dishwasher", "fridge", "freezer", "cooker", "oven", "hob", "boiler", "machine"}, 0.5, 2000},
	{[]string{"bike", "bicycle", "e-bike", "scooter", "wheelchair"}, 2, 200},
	{[]string{"motorcycle", "motorbike", "moped"}, 30, 600},
	{[]string{"car", "van", "pickup", "truck", "lorry", "tractor", "caravan", "motorhome"}, 100, 60000},
	{[]string{"mower", "trimmer", "chainsaw", "saw", "drill", "grinder", "vacuum", "printer", "laptop", "phone"}, 0.05, 1500},
}

// machineWeight says why no whole machine weighs so much or little. What is
// weighed is a machine if its noun follows "of the", with nothing of its own
// after it: "weight of the bike without its battery".
func machineWeight(what string, q trade.Quantity) string {
	kg, ok := q.In("kg")
	_, of, found := strings.Cut(fold(what), " of ")
	if !ok || !found {
		return ""
	}
	thing := headNoun(strings.TrimPrefix(of, "the "))
	for _, m := range machines {
		for _, noun := range m.nouns {
			if (thing == noun || strings.HasSuffix(thing, " "+noun)) && (kg.Number < m.lo || kg.Number > m.hi) {
				return fmt.Sprintf("a %s weighs %g to %g kg", noun, m.lo, m.hi)
			}
		}
	}
	return ""
}
