package trade

import "testing"

func TestLookupUnit(t *testing.T) {
	for want, spellings := range map[Unit][]string{
		"N·m":    {"Nm", "N.m", "N-m", "N m", "N·m", "N⋅m", "NM", "nm", "newton metres", "Newton-meters", "newton metre"},
		"lb·ft":  {"lb·ft", "ft-lb", "ft·lb", "lbf.ft", "lb-ft", "foot pounds", "foot-pounds", "ft lbs", "FT-LBS", "pound feet"},
		"lb·in":  {"in-lb", "lb·in", "inch pounds", "lbf.in"},
		"kgf·m":  {"kgf.m", "kgf·m", "kg·m", "m-kg"},
		"Ω":      {"ohm", "ohms", "Ω", "\u2126", "\u03a9", "Ohms"},
		"kΩ":     {"k\u2126", "k ohm", "kohms", "KΩ", "kilohms"},
		"MΩ":     {"MΩ", "megohms", "Mohm"},
		"mΩ":     {"mΩ", "mohm", "milliohms"},
		"µF":     {"uF", "\u00b5F", "\u03bcF", "UF", "microfarads"},
		"°C":     {"°C", "degC", "ºC", "℃", "degrees Celsius", "C", "deg C"},
		"°F":     {"°F", "℉", "degrees Fahrenheit", "F"},
		"A":      {"A", "amps", "amp", "Amperes", "a"},
		"mA":     {"mA", "milliamps", "ma"},
		"V":      {"V", "volts", "v", "VDC", "V AC"},
		"mm":     {"mm", "millimetres", "millimeters", "mil", "MIL", "mm."},
		"thou":   {"thou"},
		"L":      {"l", "L", "litres", "liter"},
		"mL":     {"ml", "mL", "millilitres"},
		"cm³":    {"cc", "cm3", "cm³", "CC"},
		"mm²":    {"mm2", "mm^2", "mm²", "sq mm", "sq. mm", "square millimetres"},
		"AWG":    {"AWG", "awg", "gauge"},
		"dB(A)":  {"dB(A)", "dBA", "db(a)", "dB A"},
		"in":     {`"`, "″", "inch", "inches", "in", "in."},
		"min":    {"min", "mins", "minutes", "MIN"},
		"h":      {"h", "hr", "hours"},
		"kPa":    {"kPa", "KPA", "kpa"},
		"MPa":    {"MPa", "N/mm²"},
		"km/h":   {"km/h", "kph", "KM/H"},
		"%":      {"%", "percent", "per cent"},
		"°":      {"°", "deg", "degrees"},
		"psi":    {"psi", "PSI"},
		"rpm":    {"rpm", "r.p.m.", "RPM", "rev/min"},
		"mph":    {"mph", "m.p.h.", "miles per hour"},
		"US gal": {"US gal", "us gallons"},
	} {
		for _, s := range spellings {
			if got, ok := LookupUnit(s); got != want || !ok {
				t.Errorf("LookupUnit(%q) = %q, %v; want %q", s, got, ok, want)
			}
		}
	}
	for _, s := range []string{"", "MA", "MM", "MV", "ML", "S", "M", "G", "k", "H", "pins", "gallon", "ton", "pA", "·", "florps"} {
		if got, ok := LookupUnit(s); ok {
			t.Errorf("LookupUnit(%q) = %q; want none", s, got)
		}
	}
}

// Every spelling a row lists, and its spoken forms, must lead to that row: one
// that is listed twice would be lost silently.
func TestUnitSpellings(t *testing.T) {
	for _, r := range Units() {
		for _, list := range [][]string{{string(r.Unit), r.One, r.Many}, r.symbols, r.words} {
			for _, s := range list {
				if got, _ := LookupUnit(s); got != r.Unit {
					t.Errorf("%q of %s gives %q", s, r.Unit, got)
				}
			}
		}
		if r.Source == "" || r.Dimension == "" || r.SI == "" || r.Factor == 0 && r.Unit != Gauge {
			t.Errorf("row %s lacks a source, dimension or factor: %+v", r.Unit, r)
		}
	}
}

func TestSpoken(t *testing.T) {
	for _, c := range []struct {
		unit Unit
		n    float64
		want string
	}{
		{"N·m", 1, "newton metre"}, {"N·m", 3, "newton metres"}, {"N·m", 0.5, "newton metres"},
		{"Ω", 1, "ohm"}, {"Ω", 2, "ohms"}, {"°C", 20, "degrees Celsius"}, {"°C", -1, "degree Celsius"},
		{"dB(A)", 85, "decibels A"}, {"mm²", 1.5, "square millimetres"}, {"ft", 1, "foot"}, {"ft", 2, "feet"},
		{"bar", 2, "bar"}, {"%", 10, "per cent"}, {"zz", 2, "zz"},
	} {
		if got := c.unit.Spoken(c.n); got != c.want {
			t.Errorf("%s spoken after %v: %q; want %q", c.unit, c.n, got, c.want)
		}
	}
}

func FuzzLookupUnit(f *testing.F) {
	for _, s := range []string{"Nm", "ft-lb", "°C", "", "··", "MA", "k\u2126"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		u, ok := LookupUnit(s)
		if ok && u.Dimension() == "" {
			t.Errorf("LookupUnit(%q) = %q, which has no dimension", s, u)
		}
		if again, _ := LookupUnit(string(u)); ok && again != u {
			t.Errorf("LookupUnit(%q) = %q, whose own symbol gives %q", s, u, again)
		}
		if !ok && unknownUnit(s).Error() == "" {
			t.Error("no message")
		}
	})
}
