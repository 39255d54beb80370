package trade

import (
	"math"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"fixslate/plan/diag/outside"
)

// Factors as NIST SP 811 (2008), appendix B.8, prints them to seven figures
// (read in a transcription).
func TestFactorsNIST(t *testing.T) {
	for _, c := range []struct {
		from, to Unit
		factor   float64
	}{
		{"lb·ft", "N·m", 1.355818}, {"lb·in", "N·m", 0.1129848}, {"oz·in", "N·m", 7.061552e-3}, {"kgf·m", "N·m", 9.80665},
		{"lbf", "N", 4.448222}, {"kgf", "N", 9.80665}, {"psi", "kPa", 6.894757}, {"bar", "kPa", 100}, {"kgf/cm²", "kPa", 98.0665},
		{"atm", "kPa", 101.325}, {"inHg", "kPa", 3.386389}, {"mmHg", "Pa", 133.3224}, {"inH₂O", "Pa", 249.0889}, {"mmH₂O", "Pa", 9.80665}, {"mbar", "kPa", 0.1},
		{"in", "mm", 25.4}, {"thou", "mm", 0.0254}, {"ft", "m", 0.3048}, {"yd", "m", 0.9144}, {"mi", "km", 1.609344},
		{"US gal", "L", 3.785412}, {"imp gal", "L", 4.54609}, {"US qt", "L", 0.9463529}, {"US fl oz", "mL", 29.57353}, {"imp fl oz", "mL", 28.41306}, {"in³", "cm³", 16.38706},
		{"cfm", "m³/s", 4.719474e-4}, {"hp", "W", 745.6999}, {"PS", "W", 735.4988}, {"BTU/h", "W", 0.2930711}, {"lb", "kg", 0.4535924}, {"oz", "g", 28.34952},
		{"mph", "m/s", 0.44704}, {"rpm", "rad/s", 0.1047198}, {"°", "rad", 1.745329e-2}, {"in²", "cm²", 6.4516},
	} {
		row, _ := c.to.row()
		to := UnitRow{Factor: 1}
		if c.to == "m³/s" || c.to == "rad/s" || c.to == "rad" {
			row = to // the SI unit itself, not one that repairs are written in
		}
		from, ok := c.from.row()
		got := from.Factor / row.Factor
		if !ok || math.Abs(got/c.factor-1) > 6e-7 {
			t.Errorf("1 %s = %.9g %s; NIST SP 811 has %.7g", c.from, got, c.to, c.factor)
		}
	}
	// NIST SP 811, B.8: t/°C = (t/°F - 32)/1.8, T/K = t/°C + 273.15
	for _, c := range []struct {
		n        float64
		from, to Unit
		want     float64
	}{{212, "°F", "°C", 100}, {-40, "°C", "°F", -40}, {0, "K", "°C", -273.15}, {70, "°F", "K", 294.2611111111}} {
		if got, ok := (Quantity{Number: c.n, Unit: c.from}).In(c.to); !ok || math.Abs(got.Number-c.want) > 1e-9 {
			t.Errorf("%v %s = %v; want %v %s", c.n, c.from, got, c.want, c.to)
		}
	}
}

func askUnits(t *testing.T, path, have, want string) float64 {
	out, err := exec.Command(path, "-t", have, want).Output()
	if err != nil {
		t.Fatalf("units %q %q: %v", have, want, err)
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
	if err != nil {
		t.Fatalf("units %q %q answers %q", have, want, out)
	}
	return v
}

// Every factor that GNU units knows under some name, to its eight figures.
func TestFactorsGNU(t *testing.T) {
	path := outside.Program(t, "units")
	names := map[Unit]string{
		"mm": "mm", "cm": "cm", "m": "m", "km": "km", "µm": "um", "in": "inch", "ft": "ft", "yd": "yd", "mi": "mile", "thou": "thou",
		"mm²": "mm^2", "cm²": "cm^2", "in²": "inch^2", "L": "l", "mL": "ml", "cL": "cl", "cm³": "cc", "in³": "inch^3", "ft³": "ft^3",
		"US gal": "usgallon", "US qt": "usquart", "US pt": "uspint", "US fl oz": "usfloz", "imp gal": "brgallon", "imp pt": "brpint", "imp fl oz": "brfloz",
		"kg": "kg", "g": "g", "mg": "mg", "t": "tonne", "lb": "lb", "oz": "oz", "N": "N", "kN": "kN", "lbf": "lbf", "kgf": "kgf",
		"N·m": "N m", "N·cm": "N cm", "daN·m": "daN m", "lb·ft": "lbf ft", "lb·in": "lbf inch", "oz·in": "oz force inch", "kgf·m": "kgf m", "kgf·cm": "kgf cm",
		"bar": "bar", "mbar": "mbar", "psi": "psi", "kPa": "kPa", "hPa": "hPa", "MPa": "MPa", "Pa": "Pa", "ksi": "ksi", "kgf/cm²": "kgf/cm^2", "atm": "atm", "inHg": "inHg", "mmHg": "mmHg", "inH₂O": "inH2O", "mmH₂O": "mmH2O",
		"V": "V", "mV": "mV", "kV": "kV", "µV": "uV", "A": "A", "mA": "mA", "µA": "uA", "kA": "kA", "Ω": "ohm", "kΩ": "kohm", "MΩ": "Mohm", "GΩ": "Gohm", "nA": "nA", "mΩ": "mohm",
		"µF": "uF", "nF": "nF", "pF": "pF", "mH": "mH", "µH": "uH", "Ah": "A hour", "mAh": "mA hour", "Wh": "W hour", "kWh": "kW hour", "J": "J", "kJ": "kJ",
		"W": "W", "kW": "kW", "mW": "mW", "hp": "hp", "PS": "metrichorsepower", "BTU/h": "btu/hour", "Hz": "Hz", "kHz": "kHz", "MHz": "MHz", "GHz": "GHz", "rpm": "rpm",
		"min": "min", "s": "s", "h": "hour", "ms": "ms", "µs": "us", "day": "day", "week": "week", "°": "degree", "turn": "turn",
		"km/h": "km/hour", "mph": "mph", "m/s": "m/s", "m/min": "m/min", "L/min": "l/min", "L/h": "l/hour", "m³/h": "m^3/hour", "cfm": "cfm", "%": "percent", "ppm": "ppm", "N/mm": "N/mm",
	}
	si := map[Unit]string{"Ω": "ohm", "N·m": "N m", "m²": "m^2", "m³": "m^3", "m³/s": "m^3/s", "rad": "radian", "rad/s": "radian/s"}
	for _, r := range Units() {
		name, ok := names[r.Unit]
		if !ok {
			continue
		}
		to := string(r.SI)
		if s, ok := si[r.SI]; ok {
			to = s
		}
		if want := askUnits(t, path, name, to); math.Abs(r.Factor/want-1) > 6e-8 {
			t.Errorf("1 %s = %.10g %s; GNU units has %.10g", r.Unit, r.Factor, r.SI, want)
		}
	}
	if want := askUnits(t, path, "tempF(70)", "tempC"); math.Abs(mustIn(t, 70, "°F", "°C")-want) > 1e-5 {
		t.Errorf("70 °F: GNU units has %v °C", want)
	}
	for _, awg := range []float64{24, 16, 10, 0, -3} {
		text := formatNumber(awg)
		if want := askUnits(t, path, "awg("+text+")", "mm"); math.Abs(GaugeDiameter(awg)/want-1) > 1e-6 {
			t.Errorf("AWG %v: %v mm; GNU units has %v", awg, GaugeDiameter(awg), want)
		}
	}
}

func mustIn(t *testing.T, n float64, from, to Unit) float64 {
	q, ok := Quantity{Number: n, Unit: from}.In(to)
	if !ok {
		t.Fatalf("%s does not convert to %s", from, to)
	}
	return q.Number
}
