package trade

import "math"

// Wire is a copper conductor's resistance at 20 °C; what it carries says
// FuseForWire. Where a table lacks the size the figure is 0.
type Wire struct {
	Size     Quantity // "1.5 mm²" or "AWG 16"
	Section  float64  // mm²; of a gauge the solid section
	Ideal    float64  // Ω/km, from the resistivity of copper
	Vehicle  float64  // Ω/km, ISO 6722 maximum
	Stranded float64  // Ω/km, IEC 60228 class 2 maximum
	Flexible float64  // Ω/km, IEC 60228 class 5 maximum
}

// Copper's resistivity at 20 °C, Ω·mm²/m, and its change per K. Source: NBS
// Handbook 100 (as quoted) and an engineering handbook; IEC 60028 was not
// opened.
const (
	copperResistivity = 0.017241
	copperCoefficient = 0.00393
)

// metricWires: section, ISO 6722, IEC 60228 class 2 and 5, supplier's amps. At
// 50 mm² class 5 lies below class 2; that stands so in IEC 60228.
var metricWires = [][5]float64{
	{0.22, 84.4}, {0.35, 54.4}, {0.5, 37.1, 36, 39}, {0.65, 0, 0, 0, 5.75}, {0.75, 24.7, 24.5, 26}, {1, 18.5, 18.1, 19.5, 8.75},
	{1.5, 12.7, 12.1, 13.3, 12.75}, {2, 9.42, 0, 0, 17.5}, {2.5, 7.6, 7.41, 7.98, 21.75}, {3, 6.15, 0, 0, 25.5}, {4, 4.71, 4.61, 4.95},
	{6, 3.14, 3.08, 3.3}, {10, 0, 1.83, 1.91}, {16, 1.16, 1.15, 1.21}, {25, 0, 0.727, 0.78}, {35, 0, 0.524, 0.554},
	{50, 0, 0.387, 0.386}, {70, 0, 0.268, 0.272}, {95, 0, 0.193, 0.206},
}

// gaugeWires: AWG (1/0 is 0), amps at 60, 75 and 105 °C insulation, trailer
// amps at 120 and 150 °F.
var gaugeWires = [][6]float64{
	{22}, {20, 0, 0, 0, 15, 9}, {18, 10, 10, 20, 18, 11}, {16, 15, 15, 25, 22, 14}, {14, 20, 20, 35, 27, 17}, {12, 25, 25, 45, 40, 24},
	{10, 40, 40, 60, 50, 31}, {8, 55, 65, 80}, {6, 80, 95, 120}, {4, 105, 125, 160}, {2, 140, 170, 210}, {1, 165, 195, 245},
	{0, 195, 230, 285}, {-1, 225, 265, 330}, {-2, 260, 310, 385}, {-3, 300, 360, 445},
}

// Wires lists the conductors of the tables, metric first, each rising.
func Wires() []Wire {
	var list []Wire
	for _, r := range metricWires {
		list = append(list, Wire{Size: Quantity{Number: r[0], Unit: SquareMM}, Section: r[0], Ideal: 1000 * copperResistivity / r[0],
			Vehicle: r[1], Stranded: r[2], Flexible: r[3]})
	}
	for _, r := range gaugeWires {
		section := GaugeSection(r[0])
		list = append(list, Wire{Size: Quantity{Number: r[0], Unit: Gauge}, Section: section, Ideal: 1000 * copperResistivity / section})
	}
	return list
}

// Ampacity is the span of continuous currents that tables give a section.
// Tables spread more than twofold with insulation and heat: only a current
// above Most is wrong by every table read here.
type Ampacity struct {
	Section     float64 // mm²
	Least, Most float64 // A
	Source      string
}

// FuseForWire is the current that tables give a wire, and so the largest fuse
// that can protect it: above Most none does. Sections between two gauges are
// interpolated on logarithms. False under 0.5 mm² and over AWG 4/0, where the
// tables end.
func FuseForWire(section Quantity) (Ampacity, bool) {
	in, ok := section.In(SquareMM)
	if !ok || in.Number <= 0 {
		return Ampacity{}, false
	}
	a := Ampacity{Section: in.Number, Source: cfr183 + "; " + trailer + "; " + autoWire}
	a.Most = gaugeAmps(in.Number, func(r [6]float64) float64 { return max(r[1], r[2], r[3], r[4]) })
	a.Least = gaugeAmps(in.Number, func(r [6]float64) float64 {
		least := math.Inf(1)
		for _, v := range r[1:] {
			if v > 0 {
				least = min(least, v)
			}
		}
		return least
	})
	for _, r := range metricWires {
		if same(r[0], in.Number) && r[4] > 0 {
			a.Least, a.Most = min(a.Least, r[4]), max(a.Most, r[4])
		}
	}
	return a, a.Most > 0
}

// gaugeAmps interpolates a column of the gauges at a section; 0 outside them.
// A section within 4 % of a gauge's end counts as inside: 0.5 mm² is AWG 20.
func gaugeAmps(section float64, column func([6]float64) float64) float64 {
	rows := gaugeWires[1:] // AWG 22 has no current in any table
	first, last := GaugeSection(rows[0][0]), GaugeSection(rows[len(rows)-1][0])
	if section < 0.96*first || section > 1.04*last {
		return 0
	}
	for i := range rows[1:] {
		lo, hi := GaugeSection(rows[i][0]), GaugeSection(rows[i+1][0])
		if section > hi && i < len(rows)-2 {
			continue
		}
		share := math.Log(section/lo) / math.Log(hi/lo)
		a, b := column(rows[i]), column(rows[i+1])
		return a * math.Pow(b/a, share)
	}
	return 0
}

// Return says how the current comes back to the battery.
type Return int

// The ways back.
const (
	TwoWire Return = iota // by a wire as long and thick as the feed
	Chassis               // by the body; its own drop is left out
)

// Run is a length of wire with its load.
type Run struct {
	Section Quantity
	Length  Quantity // one way
	Current Quantity
	Return  Return
	Celsius float64 // the copper's temperature; 0 is read as 20
}

// Drop is what a run of wire takes off the voltage, in V.
type Drop struct {
	Ideal float64 // by the resistivity of copper
	Worst float64 // by ISO 6722's maximum for the section, else 10.5 % more
}

// overIdeal is how much ISO 6722's maxima lie above the ideal at most.
const overIdeal = 1.105

// VoltageDrop is dU = l I ρ [1 + 0.00393 (t-20)] / A for direct current, with l
// there and back for TwoWire. False where a dimension is wrong or the section
// is not above zero. A usual limit is 3 % for what matters and 10 % for the
// rest (a marine code, as quoted), and 0.2 V on a good cable (a study guide).
func VoltageDrop(r Run) (Drop, bool) {
	section, ok1 := r.Section.In(SquareMM)
	length, ok2 := r.Length.In("m")
	current, ok3 := r.Current.In(Ampere)
	if !ok1 || !ok2 || !ok3 || section.Number <= 0 || length.Number < 0 {
		return Drop{}, false
	}
	path := length.Number
	if r.Return == TwoWire {
		path *= 2
	}
	celsius := r.Celsius
	if celsius == 0 {
		celsius = 20
	}
	heat := 1 + copperCoefficient*(celsius-20)
	ideal := path * current.Number * copperResistivity * heat / section.Number
	d := Drop{ideal, ideal * overIdeal}
	for _, w := range metricWires {
		if same(w[0], section.Number) && w[1] > 0 {
			d.Worst = path * current.Number * w[1] / 1000 * heat
		}
	}
	return d, true
}
