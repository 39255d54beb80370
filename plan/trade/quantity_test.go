package trade

import (
	"errors"
	"math"
	"strings"
	"testing"
)

func TestParseQuantity(t *testing.T) {
	for _, c := range []struct {
		in     string
		number float64
		unit   Unit
		out    string
	}{
		{"3 N·m", 3, "N·m", "3 N·m"},
		{"3.0Nm", 3, "N·m", "3.0 N·m"},
		{"1/2 in", 0.5, "in", "1/2 in"},
		{"1 1/2 in", 1.5, "in", "1 1/2 in"},
		{"1-1/2 in", 1.5, "in", "1-1/2 in"},
		{`1½"`, 1.5, "in", "1½ in"},
		{"-40 °C", -40, "°C", "-40 °C"},
		{"−40 °C", -40, "°C", "-40 °C"},
		{"AWG 16", 16, "AWG", "AWG 16"},
		{"16 AWG", 16, "AWG", "AWG 16"},
		{"4/0 AWG", -3, "AWG", "AWG 4/0"},
		{"AWG 000", -2, "AWG", "AWG 000"},
		{"90 °", 90, "°", "90°"},
		{"10 %", 10, "%", "10%"},
		{"1 500 rpm", 1500, "rpm", "1 500 rpm"},
		{".5 mm", 0.5, "mm", ".5 mm"},
		{"2 turn", 2, "turn", "2 turns"},
		{"1/4 turn", 0.25, "turn", "1/4 turn"},
		{" 12 V DC ", 12, "V", "12 V"},
	} {
		q, err := ParseQuantity(c.in)
		if err != nil || !same(q.Number, c.number) || q.Unit != c.unit || q.String() != c.out {
			t.Errorf("ParseQuantity(%q) = %v %q %q, %v; want %v %q %q", c.in, q.Number, q.Unit, q, err, c.number, c.unit, c.out)
		}
	}
}

func TestParseQuantityRefuses(t *testing.T) {
	for in, hint := range map[string]string{
		"1,5 mm":                              "write 1.5",
		"1,500 rpm":                           "1500",
		"12":                                  "no unit",
		"NaN V":                               "no number",
		"Inf V":                               "no number",
		"∞ Ω":                                 "no number",
		"3 MA":                                `"mA"`,
		"3 gallons":                           `"US gal" or "imp gal"`,
		"3 zorks":                             "no unit known",
		"3 voltss":                            `"V"`,
		"-3 N·m":                              "negative",
		"-2 m":                                "negative",
		"-300 °C":                             "absolute zero",
		"1/0 in":                              "divides by zero",
		"AWG 99":                              "no wire gauge",
		"16.5 AWG":                            "no wire gauge",
		"tight":                               "no quantity",
		"":                                    "no quantity",
		"1" + strings.Repeat("0", 400) + " V": "too large",
	} {
		q, err := ParseQuantity(in)
		if err == nil || !strings.Contains(err.Error(), hint) {
			t.Errorf("ParseQuantity(%q) = %v, error %v; want one with %q", in, q, err, hint)
		}
	}
	if _, err := ParseQuantity("12"); !errors.Is(err, errUnitMissing) {
		t.Errorf("a bare number gives %v; want errUnitMissing in its chain", err)
	}
}

func TestIn(t *testing.T) {
	if _, ok := (Quantity{Number: 3, Unit: "N·m"}).In("J"); ok {
		t.Error("a torque converts to an energy")
	}
	if _, ok := (Quantity{Number: 0, Unit: "mm²"}).In("AWG"); ok {
		t.Error("no section has a gauge")
	}
	q, ok := Quantity{Number: 16, Unit: "AWG"}.In("mm²")
	if back, _ := q.In("AWG"); !ok || !same(back.Number, 16) {
		t.Errorf("AWG 16 = %v, back %v", q, back)
	}
}

func TestRounded(t *testing.T) {
	for _, c := range []struct {
		in   string
		unit Unit
		want string
	}{
		{"3 N·m", "lb·ft", "2.2 lb·ft"},
		{"20 N·m", "lb·ft", "15 lb·ft"},
		{"110 N·m", "lb·ft", "81.1 lb·ft"},
		{"45 lb·ft", "N·m", "61 N·m"},
		{"9.96 mm", "in", "0.392 in"},
		{"25.4 mm", "in", "1.00 in"},
		{"1/2 in", "mm", "12.7 mm"},
		{"100 °C", "°F", "212 °F"},
		{"-40 °C", "°F", "-40 °F"},
		{"16 AWG", "mm²", "1.3 mm²"},
		{"1.5 mm²", "AWG", "AWG 15"},
		{"50 mm²", "AWG", "AWG 1/0"},
		{"30 psi", "bar", "2.1 bar"},
		{"950 lb·ft", "N·m", "1290 N·m"},
		{"0.0 V", "mV", "0 mV"},
		{"3.0 N·m", "N·m", "3.0 N·m"},
	} {
		q, err := ParseQuantity(c.in)
		if err != nil {
			t.Fatal(err)
		}
		if r, ok := q.Rounded(c.unit); !ok || r.String() != c.want {
			t.Errorf("%s in %s = %q, %v; want %q", c.in, c.unit, r, ok, c.want)
		}
	}
}

func FuzzParseQuantity(f *testing.F) {
	for _, s := range []string{"3 N·m", "1 1/2 in", "AWG 4/0", "-40 °C", "1,5 mm", "1 500 rpm", "½ in", "9e9 V", "0/0 V", "-0 V"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		q, err := ParseQuantity(s)
		if err != nil {
			if err.Error() == "" {
				t.Error("no message")
			}
			return
		}
		if math.IsNaN(q.Number) || math.IsInf(q.Number, 0) || q.Unit.Dimension() == "" {
			t.Fatalf("ParseQuantity(%q) = %+v", s, q)
		}
		again, err := ParseQuantity(q.String())
		if err != nil || again.Unit != q.Unit || !same(again.Number, q.Number) {
			t.Errorf("ParseQuantity(%q) prints %q, which reads as %v, %v", s, q, again, err)
		}
		for _, r := range Units() {
			if c, ok := q.Rounded(r.Unit); ok && (math.IsNaN(c.Number) || c.String() == "") {
				t.Errorf("%q in %s is %v", s, r.Unit, c)
			}
		}
	})
}
