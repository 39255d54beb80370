package trade

import (
	"math"
	"testing"
)

// 29 CFR 1910.95 table G-16, printed in hours: 8, 6, 4, 3, 2, 1 1/2, 1, 1/2,
// 1/4. The formula (appendix A) meets it within the table's rounding.
func TestPermittedMinutesOSHA(t *testing.T) {
	for level, hours := range map[float64]float64{90: 8, 92: 6, 95: 4, 97: 3, 100: 2, 102: 1.5, 105: 1, 110: 0.5, 115: 0.25} {
		got, ok := PermittedMinutes(level, OSHA)
		if !ok || got != 60*hours {
			t.Errorf("%v dB(A): %v min; table G-16 has %v h", level, got, hours)
		}
		if formula := 480 / math.Pow(2, (level-90)/5); math.Abs(formula/got-1) > 0.02 {
			t.Errorf("%v dB(A): the formula gives %v min", level, formula)
		}
	}
	// 29 CFR 1910.95 appendix A, table G-16a: 80 dB(A) 32 h, 85 16 h, 91 7.0 h,
	// 103 1.3 h (from memory)
	for level, hours := range map[float64]float64{80: 32, 85: 16, 91: 7.0, 103: 1.3} {
		if got, _ := PermittedMinutes(level, OSHA); math.Abs(got/60/hours-1) > 0.02 {
			t.Errorf("%v dB(A): %v h; table G-16a has %v", level, got/60, hours)
		}
	}
	if got, ok := PermittedMinutes(116, OSHA); !ok || got != 0 {
		t.Errorf("116 dB(A): %v, %v; no time is permitted above 115", got, ok)
	}
}

// NIOSH's page: 85 dB(A) 8 h, 88 4 h, 91 2 h, 94 1 h, 97 30 min, 100 15 min.
func TestPermittedMinutesNIOSH(t *testing.T) {
	for level, minutes := range map[float64]float64{85: 480, 88: 240, 91: 120, 94: 60, 97: 30, 100: 15} {
		if got, ok := PermittedMinutes(level, NIOSH); !ok || !same(got, minutes) {
			t.Errorf("%v dB(A): %v min; NIOSH has %v", level, got, minutes)
		}
	}
	if got, _ := PermittedMinutes(141, NIOSH); got != 0 {
		t.Errorf("141 dB(A): %v min; NIOSH has a ceiling of 140", got)
	}
	if _, ok := PermittedMinutes(math.NaN(), NIOSH); ok {
		t.Error("no number has a time")
	}
	if _, ok := PermittedMinutes(90, "other"); ok {
		t.Error("an unknown rule has a time")
	}
}

// 29 CFR 1910.95(b)(2), worked in its appendix's manner: 110 dB(A) for a
// quarter and 100 dB(A) for half an hour, 90 for an hour and a half are
// 0.5 + 0.25 + 0.1875.
func TestNoiseDose(t *testing.T) {
	got := NoiseDose(OSHA, []Exposure{{110, 15}, {100, 30}, {90, 90}})
	if math.Abs(got-0.9375) > 1e-12 {
		t.Errorf("dose %v; want 0.9375", got)
	}
	if got := NoiseDose(OSHA, []Exposure{{120, 1}}); !math.IsInf(got, 1) {
		t.Errorf("a minute at 120 dB(A): dose %v", got)
	}
}

// A point source in the open loses 6 dB a doubling of distance (a maker of
// sound meters' notes); Directive 70/388/EEC asks a horn for 105 to 118 dB(A)
// at 2 m and at least 93 dB(A) at 7 m, and the first at 7 m meets the second.
func TestLevelAt(t *testing.T) {
	if got, ok := LevelAt(100, 1, 2); !ok || math.Abs(got-93.98) > 0.01 {
		t.Errorf("100 dB at 1 m is %v at 2 m", got)
	}
	if got, _ := LevelAt(105, 2, 7); got < 93 || got > 95 {
		t.Errorf("105 dB at 2 m is %v at 7 m", got)
	}
	if got, _ := LevelAt(112, 7, 0.5); got < 134 || got > 136 {
		t.Errorf("112 dB at 7 m is %v at arm's length", got)
	}
	for _, r := range [][2]float64{{0, 1}, {1, 0}, {-1, 2}, {math.NaN(), 1}, {1, math.Inf(1)}} {
		if _, ok := LevelAt(90, r[0], r[1]); ok {
			t.Errorf("distances %v give a level", r)
		}
	}
}
