package trade

import (
	"math"
	"slices"
	"testing"
)

// ISO 8820-3 colours as fuse makers' and press charts print them; maxi and
// torpedo forms use the same colours for other ratings.
func TestFuseColours(t *testing.T) {
	for _, c := range []struct {
		form   string
		amps   float64
		colour string
	}{
		{"regular blade", 1, "black"}, {"regular blade", 2, "grey"}, {"regular blade", 3, "violet"}, {"regular blade", 4, "pink"}, {"ATO", 5, "light brown"},
		{"regular", 7.5, "brown"}, {"blade", 10, "red"}, {"", 15, "blue"}, {"standard blade", 20, "yellow"}, {"ATC", 25, "white"}, {"", 25, "clear"}, {"regular blade", 30, "green"}, {"regular blade", 40, "amber"},
		{"mini", 5, "tan"}, {"mini blade", 10, "red"}, {"low-profile mini", 15, "Blue"}, {"Mini", 2, "gray"},
		{"maxi", 20, "yellow"}, {"maxi", 25, "grey"}, {"maxi", 30, "green"}, {"maxi", 35, "brown"}, {"maxi", 40, "orange"}, {"maxi blade", 50, "red"}, {"maxi", 60, "blue"}, {"maxi", 80, "clear"},
		{"torpedo", 5, "yellow"}, {"ceramic torpedo", 8, "white"}, {"torpedo", 16, "red"}, {"torpedo", 25, "blue"},
		{"micro2", 10, "red"},
	} {
		f, ok := FuseColour(c.form, c.amps)
		if !ok || !f.Is(c.colour) {
			t.Errorf("%s %v A is %s, %v; want %s", c.form, c.amps, f.Colour, ok, c.colour)
		}
	}
	for _, c := range []struct {
		form string
		amps float64
	}{{"glass tube", 5}, {"bolt-down link", 100}, {"regular blade", 12}, {"mini", 40}, {"banana", 5}} {
		if f, ok := FuseColour(c.form, c.amps); ok {
			t.Errorf("%s %v A has the colour %s", c.form, c.amps, f.Colour)
		}
	}
	// a blue regular blade is 15 A: common practice, no source
	if !slices.ContainsFunc(FusesOf("blue"), func(f Fuse) bool { return f.Form == RegularBlade && f.Amps == 15 }) {
		t.Error("no blue regular blade of 15 A")
	}
	if n := len(FusesOf("red")); n != 5 {
		t.Errorf("%d red fuses; want 10 A thrice, 50 A and 16 A", n)
	}
}

// ASTM B258: diameters and sections as its tables print them (from memory; GNU
// units' awg() agrees in TestFactorsGNU).
func TestGaugeASTM(t *testing.T) {
	for awg, want := range map[float64][2]float64{
		22: {0.6438, 0.326}, 20: {0.8118, 0.518}, 18: {1.024, 0.823}, 16: {1.291, 1.31}, 14: {1.628, 2.08}, 12: {2.053, 3.31}, 10: {2.588, 5.26},
		8: {3.264, 8.37}, 6: {4.115, 13.3}, 4: {5.189, 21.2}, 2: {6.544, 33.6}, 0: {8.251, 53.5}, -3: {11.684, 107},
	} {
		if d, s := GaugeDiameter(awg), GaugeSection(awg); math.Abs(d/want[0]-1) > 5e-4 || math.Abs(s/want[1]-1) > 3e-3 {
			t.Errorf("AWG %v: %.4f mm, %.3f mm²; ASTM B258 has %v", awg, d, s, want)
		}
	}
}

// IEC 60228 maxima, Ω/km at 20 °C, plain copper (three copies agree): no lower
// than copper itself allows, class 5 not under class 2 but at 50 mm², where the
// standard has it so.
func TestWireIEC60228(t *testing.T) {
	printed := map[float64][2]float64{0.5: {36, 39}, 0.75: {24.5, 26}, 1: {18.1, 19.5}, 1.5: {12.1, 13.3}, 2.5: {7.41, 7.98}, 4: {4.61, 4.95}, 6: {3.08, 3.3}, 10: {1.83, 1.91},
		16: {1.15, 1.21}, 25: {0.727, 0.78}, 35: {0.524, 0.554}, 50: {0.387, 0.386}, 70: {0.268, 0.272}, 95: {0.193, 0.206}}
	seen := 0
	for _, w := range Wires() {
		want, ok := printed[w.Section]
		if w.Size.Unit != SquareMM || !ok {
			continue
		}
		seen++
		if w.Stranded != want[0] || w.Flexible != want[1] {
			t.Errorf("%s: class 2 %v, class 5 %v; IEC 60228 has %v", w.Size, w.Stranded, w.Flexible, want)
		}
		for _, r := range []float64{w.Stranded, w.Flexible, w.Vehicle} {
			if over := r / w.Ideal; r > 0 && (over < 1.04 || over > 1.17) {
				t.Errorf("%s: %v Ω/km is %.3f of the ideal", w.Size, r, over)
			}
		}
	}
	if seen != len(printed) {
		t.Errorf("%d of %d sections of IEC 60228", seen, len(printed))
	}
}

// 33 CFR 183.425, table 5: AWG 14 carries 20 A with 60 °C insulation and 35 A
// with 105 °C; AWG 10 40 and 60 A. The trailer table has 17 A for AWG 14.
func TestFuseForWire(t *testing.T) {
	for _, c := range []struct {
		section     string
		least, most float64
	}{{"AWG 14", 17, 35}, {"AWG 10", 31, 60}, {"AWG 4/0", 300, 445}, {"AWG 20", 9, 15}} {
		q, err := ParseQuantity(c.section)
		a, ok := FuseForWire(q)
		if err != nil || !ok || !same(a.Least, c.least) || !same(a.Most, c.most) {
			t.Errorf("%s: %+v, %v; want %v to %v A", c.section, a, ok, c.least, c.most)
		}
	}
	before := 0.0
	for mm2 := 0.5; mm2 <= 100; mm2 *= 1.1 {
		a, ok := FuseForWire(Quantity{Number: mm2, Unit: SquareMM})
		if !ok || a.Most <= before || a.Least > a.Most {
			t.Errorf("%.2f mm²: %+v, %v after %v A: a thicker wire must carry more", mm2, a, ok, before)
		}
		before = a.Most
	}
	for _, s := range []Quantity{{Number: 0.22, Unit: SquareMM}, {Number: 300, Unit: SquareMM}, {Number: 0, Unit: SquareMM}, {Number: 3, Unit: Volt}} {
		if a, ok := FuseForWire(s); ok {
			t.Errorf("%v: %+v; want none", s, a)
		}
	}
}

// Worked by hand from the formula: 5 m of 1.5 mm² there and back with 10 A lose
// 2×5×10×0.017241/1.5 = 1.149 V, and by ISO 6722's 12.7 Ω/km 1.27 V.
func TestVoltageDrop(t *testing.T) {
	run := Run{Section: Quantity{Number: 1.5, Unit: SquareMM}, Length: Quantity{Number: 5, Unit: "m"}, Current: Quantity{Number: 10, Unit: Ampere}}
	d, ok := VoltageDrop(run)
	if !ok || math.Abs(d.Ideal-1.1494) > 1e-4 || math.Abs(d.Worst-1.27) > 1e-9 {
		t.Errorf("drop %+v, %v; want 1.149 and 1.27 V", d, ok)
	}
	run.Return = Chassis
	if half, _ := VoltageDrop(run); !same(half.Ideal*2, d.Ideal) {
		t.Errorf("chassis return: %+v; want half", half)
	}
	run.Celsius = 70
	if hot, _ := VoltageDrop(run); math.Abs(hot.Ideal/(d.Ideal/2)-1.1965) > 1e-9 {
		t.Errorf("at 70 °C: %v", hot.Ideal)
	}
	run.Current = Quantity{Number: 10, Unit: Volt}
	if _, ok := VoltageDrop(run); ok {
		t.Error("a voltage is taken for a current")
	}
}

// A technicians' study guide: 12.6 V full, 12.4 V 75 %, 12.2 V half, 12.0 V a
// quarter, under 11.9 V discharged. A vehicle maker's manual for sealed
// batteries: 12.8, 12.6, 12.3, 12.0 V.
func TestStateOfCharge(t *testing.T) {
	for _, c := range []struct {
		volts       float64
		flooded     [2]float64
		agm         [2]float64
		wantsCharge bool
	}{
		{12.7, [2]float64{100, 100}, [2]float64{75, 100}, false}, {12.6, [2]float64{100, 100}, [2]float64{75, 100}, false}, {12.5, [2]float64{75, 100}, [2]float64{50, 75}, false},
		{12.2, [2]float64{50, 75}, [2]float64{25, 50}, false}, {12.1, [2]float64{25, 50}, [2]float64{25, 50}, true}, {11.8, [2]float64{0, 0}, [2]float64{0, 0}, true},
		{25.2, [2]float64{100, 100}, [2]float64{75, 100}, false},
		// a 12 V battery at 11.64 to 11.69 V wants a charger: common practice, no source
		{11.64, [2]float64{0, 0}, [2]float64{0, 0}, true}, {11.69, [2]float64{0, 0}, [2]float64{0, 0}, true},
	} {
		got := StateOfCharge(c.volts)
		if len(got) != 2 || [2]float64{got[0].Low, got[0].High} != c.flooded || [2]float64{got[1].Low, got[1].High} != c.agm {
			t.Errorf("%v V: %+v; want %v, %v", c.volts, got, c.flooded, c.agm)
		}
		if WantsCharge(c.volts) != c.wantsCharge {
			t.Errorf("%v V wants a charge: %v", c.volts, !c.wantsCharge)
		}
	}
	if got := StateOfCharge(14); got != nil || WantsCharge(14) {
		t.Errorf("14 V at rest: %+v", got)
	}
	// a load fed with the engine running or a charger on shows about 14 V:
	// common practice, no source
	if len(ChargingAt(14)) == 0 || len(ChargingAt(28)) == 0 || len(ChargingAt(11)) > 0 {
		t.Errorf("charging at 14 V: %v, at 28 V: %v, at 11 V: %v", ChargingAt(14), ChargingAt(28), ChargingAt(11))
	}
}

// IEC 61140: extra-low up to 50 V AC and 120 V DC. UN R100: high over 30 V AC
// and 60 V DC. 29 CFR 1910.303(g)(2)(i): guarded at 50 V or more.
func TestShockBand(t *testing.T) {
	for _, c := range []struct {
		volts      float64
		flow, rule string
		want       bool
	}{
		{50, "AC", ExtraLow, false}, {51, "AC", ExtraLow, true}, {120, "DC", ExtraLow, false}, {121, "DC", ExtraLow, true}, {60, "", ExtraLow, true},
		{60, "DC", VehicleHigh, false}, {61, "DC", VehicleHigh, true}, {-61, "DC", VehicleHigh, true}, {31, "AC", VehicleHigh, true}, {14.7, "DC", VehicleHigh, false},
		{50, "DC", Workplace, true}, {49, "DC", Workplace, false}, {230, "AC", ExtraLow, true}, {400, "DC", VehicleHigh, true},
	} {
		if got := Hazardous(Quantity{Number: c.volts, Unit: Volt}, c.flow, c.rule); got != c.want {
			t.Errorf("%v V %s above %q: %v", c.volts, c.flow, c.rule, got)
		}
	}
	if _, ok := ShockBand(Quantity{Number: 230, Unit: Ampere}, "AC"); ok {
		t.Error("a current has a shock band")
	}
}
