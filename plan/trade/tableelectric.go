package trade

import (
	"slices"
	"strings"
)

func fuseTable() Table {
	t := Table{
		Title: "Fuse colours by form and rating", Columns: []string{"Form", "Rating", "Colour", "Other words", "Disputed"},
		Notes: []string{
			"Always go by form and colour together: red is 10 A in a regular blade, 50 A in a maxi and 16 A in a torpedo. Read the figure on the fuse.",
			"A fuse protects the wire: replace it with the same rating and form, never a larger one.",
		},
	}
	for _, f := range Fuses() {
		dispute := f.Dispute
		if f.Weak && dispute == "" {
			dispute = "weak source"
		}
		t.Rows = append(t.Rows, Row{Cells: []string{f.Form, formatNumber(f.Amps) + " A", f.Colour, strings.Join(f.Also, ", "), dispute}, Source: f.Source, keys: append([]string{f.Colour}, f.Also...), numbers: []Quantity{{Number: f.Amps, Unit: Ampere}}})
	}
	return t
}

func wireTable() Table {
	t := Table{
		Title:  "Copper wire: resistance at 20 °C and current",
		answer: (*question).wire, bare: SquareMM,
		Columns: []string{"Size", "Section, mm²", "Ω/km, ideal", "Ω/km, ISO 6722", "Ω/km, IEC 60228 class 2", "Ω/km, class 5", "A, all tables"},
		Notes: []string{
			"Currents span what the tables read here give, from hot bundles to 105 °C insulation in free air. Insulation, bundling and heat decide; take the low end where you don't know.",
			"fixslate look wire 1.5 mm² 10 A 5 m works out the drop: there and back × current × Ω/km / 1000. Usual limits: 3 % for what matters, 10 % for the rest (a marine code, as quoted); 0.2 V on a good cable (a study guide).",
		},
	}
	for _, w := range Wires() {
		amps := "-"
		source := "resistivity of copper 0.017241 Ω·mm²/m (NBS Handbook 100)"
		if w.Vehicle > 0 {
			source += "; " + iso6722
		}
		if w.Stranded > 0 {
			source += "; " + iec60228
		}
		if w.Size.Unit == Gauge {
			source += "; " + astm
		}
		if a, ok := FuseForWire(w.Size); ok {
			amps = figures(a.Least) + " to " + figures(a.Most)
			source += "; " + a.Source
		}
		t.Rows = append(t.Rows, Row{
			Cells:  []string{w.Size.String(), figures(w.Section), figures(w.Ideal), orDash(w.Vehicle), orDash(w.Stranded), orDash(w.Flexible), amps},
			Source: source, numbers: []Quantity{w.Size},
		})
	}
	return t
}

func batteryTable() Table {
	t := Table{
		answer: (*question).battery, bare: Volt,
		Title: "Rest voltage of a 12 V lead-acid battery", Columns: []string{"Battery", "At or above, V", "State of charge"},
		Notes: []string{
			"After some hours without load or charger. Makers' tables differ by about 0.1 V. A 24 V battery has double.",
			"At 11.9 V and under it is discharged by the flooded table; another list says 11.6 V.",
		},
	}
	for _, c := range charges {
		for i, step := range slices.Concat(c.steps, [][2]float64{{0, 0}}) {
			volts, above := formatNumber(step[0]), 100.0
			switch {
			case i == len(c.steps):
				volts, above = "under "+formatNumber(c.steps[i-1][0]), 0
			case i > 0:
				above = c.steps[i-1][1]
			}
			t.Rows = append(t.Rows, Row{Cells: []string{c.battery, volts, chargeText(step[1], above)}, Source: c.source})
		}
	}
	return t
}

// chargeText says a span of charge, in per cent.
func chargeText(low, high float64) string {
	switch {
	case high == 0:
		return "discharged"
	case low == high:
		return formatNumber(low) + "%"
	}
	return formatNumber(low) + "% to " + formatNumber(high) + "%"
}

func chargingTable() Table {
	t := limitTable("Charging windows and limits of batteries", batteryLimits,
		"For a 12 V battery where the unit is V; a 24 V system has double. The battery's own label and the maker's charger come first.")
	t.answer, t.bare = (*question).charging, Volt
	return t
}

func pressureTable() Table {
	return limitTable("Pressures, above the air's (gauge)", pressureLimits, "The placard on the machine comes first: these spans only tell a slip of the unit.")
}

// limitTable prints a list of limits.
func limitTable(title string, limits []Limit, notes ...string) Table {
	t := Table{Title: title, Columns: []string{"What", "At least", "At most", "Unit", "Note"}, Notes: notes}
	for _, l := range limits {
		row := l.row(l.Unit)
		if l.HasLow && l.HasHigh {
			row.band = band{l.Low, l.High, row.numbers[0].Unit}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// row prints a limit, with a cell of another kind behind its ends.
func (l Limit) row(behind string) Row {
	low, high := "-", "-"
	var numbers []Quantity
	unit, _ := LookupUnit(strings.TrimSuffix(l.Unit, " a cell"))
	if l.HasLow {
		low = formatNumber(l.Low)
		numbers = append(numbers, Quantity{Number: l.Low, Unit: unit})
	}
	if l.HasHigh {
		high = formatNumber(l.High)
		numbers = append(numbers, Quantity{Number: l.High, Unit: unit})
	}
	return Row{Cells: []string{l.Item, low, high, behind, l.Note}, Source: l.Source, numbers: numbers}
}

func voltageTable() Table {
	t := Table{
		answer: (*question).voltage, bare: Volt,
		Title: "Where rules draw a line between voltages", Columns: []string{"Rule", "AC, V", "DC, V", "Note"},
		Notes: []string{
			"The rules disagree because they answer different questions. None says that a voltage under its line is harmless: a 12 V battery welds a ring to a spanner.",
			"Local codes and a licensed electrician decide what may be done live.",
		},
	}
	for _, r := range voltageRules {
		t.Rows = append(t.Rows, Row{Cells: []string{r.Name, figures(r.AC), figures(r.DC), r.Note}, Source: r.Source, numbers: []Quantity{{Number: r.AC, Unit: Volt}, {Number: r.DC, Unit: Volt}}})
	}
	return t
}

func noiseTable() Table {
	t := Table{
		answer: (*question).noise, bare: DecibelA,
		Title: "How long a noise may last in a day, minutes", Columns: []string{"Level, dB(A)", "OSHA", "NIOSH", "EU, lower action value"},
		Notes: []string{
			"OSHA is law in US workplaces, NIOSH is advice: at 100 dB(A) they differ eightfold. OSHA's table rounds its formula at 92, 97 and 102.",
			"Several noises add up: the sum of minutes over permitted minutes is at most 1. In the open the level falls 6 dB for every doubling of distance.",
		},
	}
	for _, level := range []float64{80, 82, 85, 88, 90, 91, 92, 94, 95, 97, 100, 102, 103, 105, 106, 109, 110, 112, 115, 118, 120} {
		t.Rows = append(t.Rows, noiseRow(level))
	}
	return t
}

const noiseSource = osha1910 + "; " + niosh + "; " + eu2003

// noiseRow is a level with the minutes that each rule permits.
func noiseRow(level float64) Row {
	cells := []string{formatNumber(level)}
	for _, rule := range noiseRules {
		minutes, _ := PermittedMinutes(level, rule)
		cells = append(cells, figures(minutes))
	}
	return Row{Cells: cells, Source: noiseSource, numbers: []Quantity{{Number: level, Unit: DecibelA}}}
}

func soundTable() Table {
	t := Table{answer: (*question).sound, bare: DecibelA, Title: "Levels that rules and laws name, dB(A)", Columns: []string{"What", "At least", "At most", "At distance", "Note"},
		Notes: []string{"At another distance in the open: 20 log10 of the ratio of the distances, 6 dB for a doubling. A horn at arm's length is far above its level at 7 m: protect your hearing."}}
	for _, r := range soundRows {
		distance := "at the ear"
		if r.distance > 0 {
			distance = formatNumber(r.distance) + " m"
		}
		t.Rows = append(t.Rows, r.row(distance))
	}
	return t
}

func unitTable() Table {
	t := Table{Title: "Units and their factors to the SI", Columns: []string{"Unit", "Measures", "Spoken", "One is", "SI unit"},
		Notes: []string{"\"mil\" is read as a millimetre, as workshops say it; the thousandth of an inch is \"thou\". A bare \"gallon\", \"pint\" or \"ton\" is refused: say US, imperial or metric."}}
	for _, r := range Units() {
		one := formatNumber(r.Factor)
		switch {
		case r.Unit == Gauge:
			one = "π/4 (0.127 mm × 92^((36-n)/39))²"
		case r.Offset != 0:
			one = "n × " + formatNumber(r.Factor) + " + " + formatNumber(r.Offset)
		}
		keys := []string{}
		for _, list := range [][]string{{string(r.Unit), r.One, r.Many}, r.symbols, r.words} {
			for _, s := range list {
				keys = append(keys, strings.ToLower(unitKey(s)))
			}
		}
		t.Rows = append(t.Rows, Row{Cells: []string{string(r.Unit), string(r.Dimension), r.Many, one, string(r.SI)}, Source: r.Source, keys: keys})
	}
	return t
}
