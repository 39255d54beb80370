package trade

import (
	"math"
	"slices"
	"strings"
)

// Band is the torque that is plausible for a thread, in N·m. It is wide on
// purpose: two honest tables for one bolt differ by a third, and soft joints
// take a fraction of what the bolt bears. Only Limit is hard.
type Band struct {
	Name   string  // what takes it, where that and not the thread decides: "spark plug"
	Class  string  // the class that High follows, empty where none was given
	Low    float64 // half of class 4.6 proof load, well oiled
	Usual  float64 // the class's table value at mu 0.14; of 8.8 where none was given
	High   float64 // the class's table value with a third on top, at most Limit
	Limit  float64 // class 12.9 with 15 % on top: no common bolt takes more
	Source string
}

// The choices that make a band of the formula. Common practice, no source.
const (
	softJoint   = 0.5  // of class 4.6 proof load
	oiledFactor = 0.15 // K in T = K F d
	frictionMu  = 0.14
	tableSpread = 1.3 // between honest tables for one bolt
	limitSpread = 1.15
)

// TorqueBand is the plausible torque for a thread and property class ("8.8",
// "grade 5"; empty where it is not known). False for a thread or class that the
// tables lack.
func TorqueBand(thread, class string) (Band, bool) {
	t, ok := ParseThread(thread)
	if !ok {
		return Band{}, false
	}
	named := class
	if named == "" {
		named = "8.8"
	}
	low, _ := ClassOf("4.6", t.Diameter)
	top, _ := ClassOf("12.9", t.Diameter)
	c, ok := ClassOf(named, t.Diameter)
	if !ok {
		return Band{}, false
	}
	topTorque, ok := MaxTorque(t, top, frictionMu)
	if !ok {
		return Band{}, false
	}
	classTorque, _ := MaxTorque(t, c, frictionMu)
	b := Band{Class: class, Usual: classTorque, Limit: limitSpread * topTorque, Source: vdi2230 + "; spreads " + common}
	b.Low = oiledFactor * softJoint * ProofLoad(t, low) * t.Diameter / 1000
	b.High = b.Limit
	if class != "" {
		b.High = min(b.Limit, tableSpread*classTorque)
	}
	return b, true
}

// namedBands are torques of things that seal or sit in soft metal: their thread
// would bear far more than they do. From memory of makers' tables, widened.
var namedBands = []struct {
	name      pattern
	called    string
	low, high float64
}{
	{patternOf(`\bspark[ -]?plugs?\b`, "spark"), "spark plug", 6, 50},
	{patternOf(`\bglow[ -]?plugs?\b`, "glow"), "glow plug", 5, 40},
	{patternOf(`\b(?:drain|sump|filler|level)[ -]plugs?\b`, "plug"), "drain plug", 4, 90},
	{patternOf(`\bbleed(?:er)?[ -](?:nipples?|screws?|valves?)\b`, "bleed"), "bleed nipple", 2, 25},
	{patternOf(`\bhose[ -](?:clamps?|clips?)\b`, "hose"), "hose clamp", 0.5, 15},
	{patternOf(`\b(?:caps?|glands?|unions?|ring[ -]nuts?|lock[ -]?rings?)(?: (?:hex|hexagon|round|knurled|slotted))?\s*$`, "cap", "gland", "union", "ring", "lock"), "cap", 1, 90},
	{patternOf(`\b(?:fittings?|adapt[eo]rs?|couplings?|hose[ -](?:ends?|tails?))(?: (?:hex|hexagon|round|knurled))?\s*$`, "fitting", "adapt", "coupling", "hose"), "fitting", 1, 150},
	{patternOf(`\bbattery[ -](?:clamps?|terminals?|posts?)\b`, "battery"), "battery clamp", 2, 25},
}

// NamedBand is the torque that is plausible for a thing by what it is called.
func NamedBand(what string) (Band, bool) {
	what = strings.ToLower(what)
	for _, n := range namedBands {
		if n.name.in(what) {
			return Band{Name: n.called, Low: n.low, High: n.high, Limit: n.high, Usual: math.Sqrt(n.low * n.high), Source: fromMemory}, true
		}
	}
	return Band{}, false
}

// Holds says whether a torque in N·m lies in the band.
func (b Band) Holds(newtonMetres float64) bool {
	return newtonMetres >= b.Low && newtonMetres <= b.High
}

// MaxTorque is the torque in N·m that takes a bolt of the class to 90 % of its
// yield at friction mu in the thread and under the head, for a hexagon head of
// a thread M3 to M24 or #4 to 1 in:
//
//	F = As v Rp / sqrt(1 + 3 [3/2 (d2/d0) (P/(π d2) + 1.155 mu)]²)
//	M = F [0.159 P + 0.577 d2 mu + (dW + dh)/4 mu]
//
// with v = 0.9, d0 = (d2+d3)/2, dW the bearing face and dh the hole. The form
// is that of VDI 2230 since 2001, from memory; it meets that standard's printed
// fine-thread values within 1 %.
func MaxTorque(t Thread, c PropertyClass, mu float64) (float64, bool) {
	face, hole, ok := bearing(t)
	if !ok {
		return 0, false
	}
	d2 := t.PitchDiameter()
	d0 := (d2 + t.RootDiameter()) / 2
	twist := 1.5 * (d2 / d0) * (t.Pitch/(math.Pi*d2) + 1.155*mu)
	force := t.StressArea() * 0.9 * c.Yield / math.Sqrt(1+3*twist*twist)
	arm := 0.159*t.Pitch + 0.577*d2*mu + (face+hole)/4*mu
	return force * arm / 1000, true
}

// bearings are the bearing face dW (ISO 4014) and medium hole dh (ISO 273) of
// the hexagon heads, mm. Source: a catalogue's copy of the VDI 2230 table; M3
// from a copy of ISO 4014 and, for its hole, from memory.
var bearings = []struct {
	size       string
	face, hole float64
}{
	{"M3", 4.57, 3.4}, {"M4", 5.9, 4.5}, {"M5", 6.9, 5.5}, {"M6", 8.9, 6.6}, {"M8", 11.6, 9}, {"M10", 14.63, 11}, {"M12", 16.63, 13.5},
	{"M14", 19.64, 15.5}, {"M16", 22.5, 17.5}, {"M18", 25.3, 20}, {"M20", 28.2, 22}, {"M22", 31.71, 24}, {"M24", 33.6, 26},
}

// bearing gives face and hole in mm. Inch heads have no table here: a face of
// 0.95 of the flats and a hole a tenth over the thread come within a few per
// cent. Common practice, no source.
func bearing(t Thread) (face, hole float64, ok bool) {
	for _, b := range bearings {
		if b.size == t.Size {
			return b.face, b.hole, true
		}
	}
	for _, r := range inchRows {
		if r.size == t.Size {
			return 0.95 * r.boltWidth, 1.1 * t.Diameter, true
		}
	}
	return 0, 0, false
}

// Slip is a torque that makes sense in another unit than the one it is given
// in, or with its decimal point moved.
type Slip struct {
	Meant   Quantity // what it may have been
	Shifted bool     // the decimal point, not the unit
}

// slipUnits are the units in which torques are printed.
var slipUnits = []Unit{NewtonMetre, PoundFoot, PoundInch, "kgf·m", "kgf·cm", "N·cm"}

// softer is how far below the band a torque must lie before a slip explains it
// better than a soft joint: plastic bosses take less than any table says.
// Common practice, no source.
const softer = 1.6

// Slip says whether a torque outside the band comes inside it, and nearer to the
// usual torque, when its number is read in another unit of torque, or ten, a
// hundred or a thousand times larger or smaller. The reading nearest the usual
// torque wins, a unit before a decimal point. A torque inside the band, one a
// little under it, or one that nothing explains, gives false.
func (b Band) Slip(torque Quantity) (Slip, bool) {
	in, isTorque := torque.In(NewtonMetre)
	if !isTorque || torque.Number <= 0 || b.Holds(in.Number) ||
		in.Number < b.Low && in.Number > b.Low/softer {
		return Slip{}, false
	}
	off := func(newtonMetres float64) float64 { return math.Abs(math.Log(newtonMetres / b.Usual)) }
	var best Slip
	found, distance := false, off(in.Number)
	try := func(s Slip, handicap float64) {
		v, _ := s.Meant.In(NewtonMetre)
		if d := off(v.Number) + handicap; b.Holds(v.Number) && d < distance {
			best, found, distance = s, true, d
		}
	}
	for _, u := range slipUnits {
		if u != torque.Unit {
			try(Slip{Meant: Quantity{torque.Number, u, torque.written}}, 0)
		}
	}
	// a moved point explains almost anything, so it must be clearly nearer
	for _, f := range []float64{0.001, 0.01, 0.1, 10, 100, 1000} {
		try(Slip{Quantity{Number: torque.Number * f, Unit: torque.Unit}, true}, math.Log(2))
	}
	return best, found
}

// TorqueRow is a torque that a document prints, in N·m.
type TorqueRow struct {
	Thread   string
	Class    string
	Torque   float64
	Friction string // as the document states it
	Source   string
}

// PublishedTorques lists torques printed in makers' manuals and catalogues, by
// document. They are there to be compared with, not to be used in place of the
// maker's figure.
func PublishedTorques() []TorqueRow {
	var rows []TorqueRow
	for _, d := range torqueDocuments {
		for _, line := range d.lines {
			for i, v := range line.torque {
				if v > 0 {
					rows = append(rows, TorqueRow{line.thread, d.classes[i], v, d.friction, d.source})
				}
			}
		}
	}
	return slices.Clip(rows)
}
