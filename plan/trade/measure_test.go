package trade

import (
	"errors"
	"strings"
	"testing"
)

func TestParseMeasure(t *testing.T) {
	for _, c := range []struct {
		in    string
		shape Shape
		out   string
		low   float64
		high  float64
	}{
		{"10..20 Ω", Range, "10 to 20 Ω", 10, 20},
		{"10 to 20 ohms", Range, "10 to 20 Ω", 10, 20},
		{"10-20 Ω", Range, "10 to 20 Ω", 10, 20},
		{"10 Ω – 20 Ω", Range, "10 to 20 Ω", 10, 20},
		{"between 11.64 and 11.69 V", Range, "11.64 to 11.69 V", 11.64, 11.69},
		{"900 Ω to 1.1 kΩ", Range, "0.9 to 1.1 kΩ", 0.9, 1.1},
		{"-40..85 °C", Range, "-40 to 85 °C", -40, 85},
		{"14..18 AWG", Range, "14 to 18 AWG", 14, 18},
		{"1/2..3/4 in", Range, "1/2 to 3/4 in", 0.5, 0.75},
		{"3..4 turns", Range, "3 to 4 turns", 3, 4},
		{"13.7..14.7 V DC", Range, "13.7 to 14.7 V DC", 13.7, 14.7},
		{"12 ± 0.5 V", Tolerance, "12 ± 0.5 V", 11.5, 12.5},
		{"12 V +/- 500 mV", Tolerance, "12 V ± 500 mV", 11.5, 12.5},
		{"24 Ω ± 10 %", Tolerance, "24 Ω ± 10%", 21.6, 26.4},
		{"24 ±10% Ω", Words, "24 ±10% Ω", 0, 0},
		{"25 °C ± 9 °F", Tolerance, "25 °C ± 9 °F", 20, 30},
		{"50 % ± 5 %", Tolerance, "50 ± 5%", 45, 55},
		{"at most 0.2 V", AtMost, "at most 0.2 V", 0, 0.2},
		{"max. 0.2 V", AtMost, "at most 0.2 V", 0, 0.2},
		{"0.2 V max", AtMost, "at most 0.2 V", 0, 0.2},
		{"≤ 0.2 V", AtMost, "at most 0.2 V", 0, 0.2},
		{"under 30 psi", AtMost, "under 30 psi", 0, 30},
		{"at least 9.6 V", AtLeast, "at least 9.6 V", 9.6, 0},
		{"9.6 V or more", AtLeast, "at least 9.6 V", 9.6, 0},
		{"min 9.6 V", AtLeast, "at least 9.6 V", 9.6, 0},
		{"5 min", Exact, "5 min", 5, 5},
		{"over 12.4 V", AtLeast, "over 12.4 V", 12.4, 0},
		{"about 12 V", Exact, "about 12 V", 12, 12},
		{"3 N·m", Exact, "3 N·m", 3, 3},
		{"3.0 Nm", Exact, "3.0 N·m", 3, 3},
		{"230 V AC", Exact, "230 V AC", 230, 230},
		{"12VDC", Exact, "12 V DC", 12, 12},
		{"AWG 16", Exact, "AWG 16", 16, 16},
		{"40 N·m (30 lb·ft)", Exact, "40 N·m", 40, 40},
		{"38 to 42 N·m (28-31 ft-lb)", Range, "38 to 42 N·m", 38, 42},
		{"2.3 bar / 33 psi", Exact, "2.3 bar", 2.3, 2.3},
		{"12 V (key on)", Words, "12 V (key on)", 0, 0},
		{"12 V (12 V)", Words, "12 V (12 V)", 0, 0},
		{"70 dB (A)", Exact, "70 dB(A)", 70, 70},
		{"<0.2V", AtMost, "under 0.2 V", 0, 0.2},
		{"850 r.p.m.", Exact, "850 rpm", 850, 850},
		{"?", Open, "to be found", 0, 0},
		{"hand tight, then a quarter turn", Words, "hand tight, then a quarter turn", 0, 0},
		{"sounds", Words, "sounds", 0, 0},
		{"", Words, "", 0, 0},
		{"4 pins", Words, "4 pins", 0, 0},
		{"10W-40", Words, "10W-40", 0, 0},
		{"2014-2018", Words, "2014-2018", 0, 0},
		{"12 V at the plug", Words, "12 V at the plug", 0, 0},
		{"3rd gear", Words, "3rd gear", 0, 0},
		{"5 pcs", Words, "5 pcs", 0, 0},
		{"minus the cover", Words, "minus the cover", 0, 0},
		{"under the seat", Words, "under the seat", 0, 0},
		{"1 click to 2 clicks", Words, "1 click to 2 clicks", 0, 0},
	} {
		m, err := ParseMeasure(c.in)
		if err != nil || m.Shape != c.shape || m.String() != c.out || !same(m.Low, c.low) || !same(m.High, c.high) {
			t.Errorf("ParseMeasure(%q) = shape %d %q low %v high %v, %v; want shape %d %q %v %v",
				c.in, m.Shape, m, m.Low, m.High, err, c.shape, c.out, c.low, c.high)
		}
	}
}

func TestParseMeasureRefuses(t *testing.T) {
	for in, hint := range map[string]string{
		"20..10 Ω":           `"10..20 Ω"`,
		"10 V to 20 A":       "one unit",
		"12 ± -0.5 V":        "negative allowance",
		"12 V ± 2 A":         "give the allowance in V",
		"NaN V":              "no number",
		"3 MA":               `"mA"`,
		"3 Nmm":              `"N·m"`,
		"5k":                 `"kΩ"`,
		"1,5..2 mm":          "write 1.5",
		"10..20":             "no unit",
		"10..":               "second number",
		"12 ± V":             "second number",
		"at most 10 to 20 V": "one value",
		"-3 N·m":             "negative",
		"16 ± 2 AWG":         "allowance",
		"40 N·m (300 lb·ft)": "40 N·m is 30 lb·ft",
	} {
		m, err := ParseMeasure(in)
		if err == nil || !strings.Contains(err.Error(), hint) {
			t.Errorf("ParseMeasure(%q) = %v, error %v; want one with %q", in, m, err, hint)
		}
	}
	m, err := ParseMeasure("12")
	if !errors.Is(err, errUnitMissing) || m.Shape != Words || m.Text != "12" {
		t.Errorf(`ParseMeasure("12") = %+v, %v; want the words and errUnitMissing`, m, err)
	}
}

func TestContains(t *testing.T) {
	for _, c := range []struct {
		measure, reading string
		want             bool
	}{
		{"10..20 Ω", "10 Ω", true}, {"10..20 Ω", "20 Ω", true}, {"10..20 Ω", "9.9 Ω", false}, {"10..20 Ω", "0.015 kΩ", true}, {"10..20 Ω", "15 V", false},
		{"24 Ω ± 10 %", "26.4 Ω", true}, {"24 Ω ± 10 %", "26.5 Ω", false},
		{"at most 0.2 V", "200 mV", true}, {"at most 0.2 V", "0.21 V", false}, {"under 30 psi", "30 psi", false}, {"under 30 psi", "29 psi", true},
		{"at least 9.6 V", "9.6 V", true}, {"over 9.6 V", "9.6 V", false}, {"at least 9.6 V", "9.5 V", false},
		{"3 N·m", "3 N·m", true}, {"3 N·m", "3.1 N·m", false}, {"3 N·m", "2.2 lb·ft", true}, {"3 N·m", "4 lb·ft", false},
		{"about 12 V", "11.2 V", true}, {"about 12 V", "10 V", false},
		{"14..18 AWG", "1.5 mm²", true}, {"14..18 AWG", "4 mm²", false},
		{"sounds", "3 V", false}, {"?", "3 V", false},
	} {
		m, err1 := ParseMeasure(c.measure)
		q, err2 := ParseQuantity(c.reading)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		if got := m.Contains(q); got != c.want {
			t.Errorf("%q contains %q: %v; want %v", c.measure, c.reading, got, c.want)
		}
	}
}

func TestQuantities(t *testing.T) {
	for in, want := range map[string]string{
		"10..20 Ω": "10 Ω|20 Ω", "24 Ω ± 10 %": "24 Ω|10%", "at most 0.20 V": "0.20 V", "at least 9.6 V": "9.6 V", "3 N·m": "3 N·m", "loose": "", "?": "",
	} {
		m, _ := ParseMeasure(in)
		var got []string
		for _, q := range m.Quantities() {
			got = append(got, q.String())
		}
		if strings.Join(got, "|") != want {
			t.Errorf("quantities of %q: %q; want %q", in, got, want)
		}
	}
}

func FuzzParseMeasure(f *testing.F) {
	for _, s := range []string{"10..20 Ω", "12 ± 0.5 V", "24 Ω ± 10 %", "at most 0.2 V", "9.6 V or more", "about 12 V DC", "?", "AWG 1/0..4", "-5--2 °C", "max min 3 V", "1 1/2-2 in"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		m, err := ParseMeasure(s)
		if err != nil {
			if m.Shape != Words {
				t.Errorf("ParseMeasure(%q) fails with %v and gives shape %d", s, err, m.Shape)
			}
			return
		}
		again, err := ParseMeasure(m.String())
		if err != nil || !again.Equal(m) {
			t.Errorf("ParseMeasure(%q) = %+v, prints %q, which reads as %+v, %v", s, m, m, again, err)
		}
		for _, q := range m.Quantities() {
			if m.Shape == Exact && !m.Contains(q) {
				t.Errorf("%q does not contain its own value", s)
			}
		}
	})
}
