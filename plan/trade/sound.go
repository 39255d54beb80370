package trade

import "math"

// NoiseRule is a body's rule for the time a noise may last in a day.
type NoiseRule string

// The rules for noise.
const (
	OSHA  NoiseRule = "OSHA"  // 29 CFR 1910.95: law in US workplaces
	NIOSH NoiseRule = "NIOSH" // recommended exposure limit
	EU    NoiseRule = "EU"    // Directive 2003/10/EC, lower action value 80 dB(A)
)

// noiseRules are the rules, the most lenient first.
var noiseRules = [...]NoiseRule{OSHA, NIOSH, EU}

// tableG16 are the levels in dB(A) and minutes of 29 CFR 1910.95 table G-16,
// which rounds the formula at 92, 97 and 102.
var tableG16 = [][2]float64{{90, 480}, {92, 360}, {95, 240}, {97, 180}, {100, 120}, {102, 90}, {105, 60}, {110, 30}, {115, 15}}

// PermittedMinutes is the time in minutes that a steady noise of that level in
// dB(A) may last in a day. OSHA: table G-16 where it has the level, else its
// formula; above 115 dB(A) no time at all. NIOSH: 8 h at 85 and half for every
// 3 dB, none above 140. EU: the same halving from the lower action value, 8 h
// at 80. False for a level that is no number or an unknown rule.
func PermittedMinutes(level float64, rule NoiseRule) (float64, bool) {
	if math.IsNaN(level) || math.IsInf(level, 0) {
		return 0, false
	}
	switch rule {
	case OSHA:
		for _, r := range tableG16 {
			if same(r[0], level) {
				return r[1], true
			}
		}
		if level > 115 {
			return 0, true
		}
		return 480 / math.Pow(2, (level-90)/5), true
	case NIOSH:
		if level > 140 {
			return 0, true
		}
		return 480 / math.Pow(2, (level-85)/3), true
	case EU:
		return 480 / math.Pow(2, (level-80)/3), true
	}
	return 0, false
}

// Exposure is a noise and how long it lasts in a day.
type Exposure struct{ Level, Minutes float64 }

// NoiseDose is the sum of minutes over permitted minutes: at most 1 is within
// the rule (29 CFR 1910.95(b)(2), NIOSH). Infinite where a level has no
// permitted time.
func NoiseDose(rule NoiseRule, day []Exposure) float64 {
	dose := 0.0
	for _, e := range day {
		if allowed, ok := PermittedMinutes(e.Level, rule); ok && e.Minutes > 0 {
			dose += e.Minutes / allowed
		}
	}
	return dose
}

// LevelAt is the level in dB at distance r2 of a source that has the level at
// distance r1, both in m, in the open: L - 20 log10(r2/r1), 6 dB less for every
// doubling. Walls make it louder. False for distances not above zero.
func LevelAt(level, r1, r2 float64) (float64, bool) {
	if !(r1 > 0 && r2 > 0) || math.IsInf(r1, 0) || math.IsInf(r2, 0) {
		return 0, false
	}
	return level - 20*math.Log10(r2/r1), true
}

// soundRow is a level that a rule or law names.
type soundRow struct {
	Limit
	distance float64 // m; 0: at the ear
}

const (
	euNoise = "Directive 2003/10/EC, article 3 (copies)"
	dBA     = string(DecibelA)
)

var soundRows = []soundRow{
	{window("car horn, bench test, 12 V", 105, 118, dBA).from("Directive 70/388/EEC, annex I 1.2.1.6 (the French order that transposes it)"), 2},
	{atLeast("car horn fitted, at least", 93, dBA).from("Directive 70/388/EEC, annex I 2 (the French order that transposes it)").noting("0.5 to 1.5 m above ground"), 7},
	{atMost("car horn fitted, at most", 112, dBA).from("an inspection form and press quoting UN R28; the regulation was not opened"), 7},
	{atLeast("EU lower action value, 8 h", 80, dBA).from(euNoise).noting("peak 135 dB(C)"), 0},
	{atLeast("EU upper action value, 8 h", 85, dBA).from(euNoise).noting("peak 137 dB(C)"), 0},
	{atMost("EU exposure limit, 8 h", 87, dBA).from(euNoise).noting("peak 140 dB(C), at the ear under the protector"), 0},
	{atMost("OSHA ceiling, continuous", 115, dBA).from(osha1910), 0},
	{atMost("OSHA ceiling, impulse", 140, dBA).from(osha1910).noting("peak, not A-weighted"), 0},
}
