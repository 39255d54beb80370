package trade

import "slices"

// ChargeState is what a rest voltage says of a 12 V lead-acid battery.
type ChargeState struct {
	Battery   string  // "flooded lead-acid", "AGM lead-acid"
	Low, High float64 // state of charge, per cent
	Source    string
}

// charges are the rest voltages by state of charge: at or above volts the
// battery holds at least that share. Makers' tables differ by about 0.1 V.
var charges = []struct {
	battery string
	source  string
	steps   [][2]float64 // volts, per cent, falling
	top     float64      // V; above it the battery is on charge, or was a moment ago
}{
	{"flooded lead-acid", "rest-voltage tables of a technicians' study guide and two others", [][2]float64{{12.6, 100}, {12.4, 75}, {12.2, 50}, {12, 25}, {11.9, 0}}, 13},
	{"AGM lead-acid", "a vehicle maker's owner manual, table for sealed batteries", [][2]float64{{12.8, 100}, {12.6, 75}, {12.3, 50}, {12, 25}, {11.9, 0}}, 13.2},
}

// StateOfCharge says what share of its charge a lead-acid battery at rest for
// some hours holds, by its voltage, one entry a kind of battery: tables differ,
// so it gives the span between two steps. Above 17 V it is read as a 24 V
// battery. A voltage that a battery at rest does not have gives none; see
// ChargingAt.
func StateOfCharge(volts float64) []ChargeState {
	if volts > 17 {
		volts /= 2
	}
	var found []ChargeState
	for _, c := range charges {
		if volts <= 0 || volts > c.top {
			continue
		}
		entry := ChargeState{Battery: c.battery, Source: c.source}
		for i, step := range c.steps {
			if volts >= step[0] {
				entry.Low, entry.High = step[1], 100
				if i > 0 {
					entry.High = c.steps[i-1][1]
				}
				break
			}
		}
		found = append(found, entry)
	}
	return found
}

// WantsCharge says whether a lead-acid battery at rest at that voltage is at
// half charge or less by every table: it then wants a charger before anything
// is measured on it.
func WantsCharge(volts float64) bool {
	found := StateOfCharge(volts)
	return len(found) > 0 && !slices.ContainsFunc(found, func(c ChargeState) bool { return c.High > 50 })
}

// Limit is a window or limit of voltage, temperature, pressure or sound: Low to
// High in Unit, either of which may be absent (HasLow, HasHigh).
type Limit struct {
	Item            string
	Low, High       float64
	HasLow, HasHigh bool
	Unit            string // "V", "V a cell", "°C", "kPa", "dB(A)"
	Source, Note    string
}

// Holds says whether a value lies within the limit.
func (l Limit) Holds(v float64) bool {
	return (!l.HasLow || v >= l.Low) && (!l.HasHigh || v <= l.High)
}

func window(item string, low, high float64, unit string) Limit {
	return Limit{Item: item, Low: low, High: high, HasLow: true, HasHigh: true, Unit: unit}
}

func atLeast(item string, low float64, unit string) Limit {
	return Limit{Item: item, Low: low, HasLow: true, Unit: unit}
}

func atMost(item string, high float64, unit string) Limit {
	return Limit{Item: item, High: high, HasHigh: true, Unit: unit}
}

func (l Limit) from(source string) Limit { l.Source = source; return l }
func (l Limit) noting(note string) Limit { l.Note = note; return l }

const (
	loadTest  = "vehicle makers' service manuals, load test with half the cold-cranking current for 15 s"
	agmCharge = "a battery vendor's charging notes, 2.40 to 2.45 V a cell"
	lithium   = "a cell maker's data sheet"
	phosphate = "a cell maker's handling guideline and a pack maker's manual"
)

// batteryLimits are of a 12 V battery where the unit is V; a 24 V system has
// double.
var batteryLimits = []Limit{
	window("engine running, alternator charging", 13.7, 14.7, "V").from("a battery shop's page; an engine maker's data: 14.4 ± 0.3 V at 20 °C").noting("0.1 V lower for every 10 °C warmer"),
	window("AGM charging, bulk and absorption", 14.4, 14.7, "V").from(agmCharge),
	window("AGM float", 13.5, 13.9, "V").from(agmCharge),
	atLeast("flooded battery gases above", 14.1, "V").from(fromMemory),
	window("smart alternator, whole span", 12.2, 15, "V").from(fromMemory),
	atLeast("load test at 20 °C or more", 9.6, "V").from(loadTest),
	atLeast("load test at 10 °C", 9.4, "V").from(loadTest),
	atLeast("load test at 4 °C", 9.3, "V").from(loadTest),
	atLeast("load test at -1 °C", 9.1, "V").from(loadTest),
	atLeast("load test at -7 °C", 8.9, "V").from(loadTest),
	atLeast("load test at -12 °C", 8.7, "V").from(loadTest),
	atLeast("load test at -18 °C", 8.5, "V").from(loadTest),
	atLeast("end of the cold-cranking rating, -18 °C, 30 s", 7.2, "V").from("a vehicle maker's service manual (SAE, BCI)"),
	atLeast("end of the reserve-capacity rating, 25 A, 27 °C", 10.5, "V").from("a vehicle maker's service manual (BCI)"),
	atMost("drop on a good powered cable", 0.2, "V").from("a technicians' study guide"),
	atMost("lithium-ion charge limit", 4.2, "V a cell").from(lithium).noting("± 0.05 V"),
	window("lithium-ion nominal", 3.6, 3.7, "V a cell").from(lithium),
	window("lithium-ion discharge end", 2.75, 3, "V a cell").from(lithium).noting("some sheets 2.5"),
	window("lithium-ion charging temperature", 0, 45, "°C").from(lithium),
	window("lithium-ion discharging temperature", -20, 60, "°C").from(lithium),
	atMost("lithium iron phosphate charge limit", 3.65, "V a cell").from(phosphate),
	atLeast("lithium iron phosphate discharge end", 2.5, "V a cell").from(phosphate).noting("10.0 V for four cells"),
	window("lithium iron phosphate charging temperature", 0, 45, "°C").from(phosphate),
	window("lithium iron phosphate 12 V pack, charging", 14.4, 14.6, "V").from(phosphate).noting("four cells"),
}

// ChargingAt lists the charging windows that hold a voltage at the terminals of
// a 12 V battery, or of a 24 V one above 17 V.
func ChargingAt(volts float64) []Limit {
	if volts > 17 {
		volts /= 2
	}
	var found []Limit
	for _, l := range batteryLimits {
		if l.Unit == "V" && l.HasLow && l.HasHigh && l.Holds(volts) {
			found = append(found, l)
		}
	}
	return found
}

const airCleaning = "29 CFR 1910.242(b): less than 30 psi, with chip guarding and protective gear; never on people (29 CFR 1917.154)"

// pressureLimits are gauge pressures.
var pressureLimits = []Limit{
	atMost("compressed air for cleaning, at a blocked nozzle", 206.8, "kPa").from(airCleaning).noting("30 psi"),
	window("car tyre, cold, normal load", 230, 240, "kPa").from("a vehicle maker's owner manual, one model").noting("33 to 35 psi"),
	window("car tyre, rear, full load", 280, 280, "kPa").from("a vehicle maker's owner manual, one model").noting("41 psi"),
	window("temporary spare wheel", 420, 420, "kPa").from("a vehicle maker's owner manual, one model").noting("60 psi"),
	window("car tyre, plausible span", 150, 350, "kPa").from(common).noting("22 to 51 psi"),
	window("bicycle road tyre", 400, 900, "kPa").from(common).noting("58 to 130 psi"),
	window("workshop compressor line", 600, 1000, "kPa").from(common).noting("87 to 145 psi"),
	window("vacuum, physical limit", -101.325, 0, "kPa").from("standard atmosphere (NIST SP 811)").noting("29.92 inHg; more is impossible"),
	window("manifold vacuum at idle", -75, -50, "kPa").from(common).noting("15 to 22 inHg"),
	window("cooling-system cap", 90, 145, "kPa").from(fromMemory).noting("0.9 to 1.4 bar"),
}
