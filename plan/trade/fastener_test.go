package trade

import (
	"math"
	"slices"
	"strings"
	"testing"
)

func TestParseThread(t *testing.T) {
	for in, want := range map[string]string{
		"M8": "M8", "m8": "M8", "M8x1.25": "M8", "M8 × 1": "M8x1", "M10-1.25": "M10x1.25", "M 6": "M6", "M5 x 20": "M5", "M8x1.25x30": "M8", "M2.5": "M2.5",
		"1/4": "1/4-20", "1/4-28": "1/4-28", "1/4 UNF": "1/4-28", `5/16"`: "5/16-18", "#10-32": "#10-32", "No. 10-24": "#10-24", "3/8 in UNC": "3/8-16", "3/8-16 UNC": "3/8-16",
	} {
		if got, ok := ParseThread(in); !ok || got.Name != want {
			t.Errorf("ParseThread(%q) = %q, %v; want %q", in, got.Name, ok, want)
		}
	}
	for _, in := range []string{"", "M", "M99", "M8x2", "8 mm", "1/4-21", "ST4.2", "M8x0"} {
		if got, ok := ParseThread(in); ok {
			t.Errorf("ParseThread(%q) = %q; want none", in, got.Name)
		}
	}
}

// ISO 272:1982 as ISO 4014, 4017 and 4032 print it, and the older DIN widths:
// M10, M12, M14 and M22 differ (an encyclopaedia's article "Width across flats";
// catalogue copies of a VDI 2230 table print both).
func TestFlatsISO272(t *testing.T) {
	iso := map[string]float64{"M3": 5.5, "M4": 7, "M5": 8, "M6": 10, "M8": 13, "M10": 16, "M12": 18, "M14": 21, "M16": 24, "M18": 27, "M20": 30, "M22": 34, "M24": 36}
	din := map[string]float64{"M10": 17, "M12": 19, "M14": 22, "M22": 32}
	for thread, want := range iso {
		old, differs := din[thread]
		if !differs {
			old = want
		}
		for _, f := range FlatsFor(thread) {
			switch {
			case strings.HasPrefix(f.Standard, "ISO 4014") || strings.HasPrefix(f.Standard, "ISO 4032"):
				if f.Width != want || f.Status != InForce {
					t.Errorf("%s by %s: %v, %s; want %v in force", thread, f.Standard, f.Width, f.Status, want)
				}
			case strings.HasPrefix(f.Standard, "DIN 93"):
				if f.Width != old || f.Status != Older {
					t.Errorf("%s by %s: %v, %s; want %v older", thread, f.Standard, f.Width, f.Status, old)
				}
			}
		}
	}
}

func widths(thread, standard string) (list []float64) {
	for _, f := range FlatsFor(thread) {
		if strings.HasPrefix(f.Standard, standard) {
			list = append(list, f.Width)
		}
	}
	return list
}

// A service manual's comparison of JIS and ISO fasteners, and the foreword of
// DIN EN 1665 on the three widths of M10 flange heads.
func TestFlatsElsewhere(t *testing.T) {
	for _, c := range []struct {
		thread, standard string
		want             float64
	}{
		{"M6", "JIS", 10}, {"M8", "JIS", 12}, {"M10", "JIS", 14}, {"M12", "JIS", 17}, {"M14", "JIS", 19},
		{"M10", "EN 1665", 16}, {"M10", "EN 1661", 16}, {"M10", "ISO 4161", 15}, {"M10", "ISO 4162", 13}, {"M8", "ISO 4162", 10},
	} {
		if got := widths(c.thread, c.standard); !slices.Equal(got, []float64{c.want}) {
			t.Errorf("%s by %s: %v; want %v", c.thread, c.standard, got, c.want)
		}
	}
}

// Nuts and screws of small body parts take 8, 10 and 13 mm tools, so M5, M6 and
// M8 by ISO: common practice, no source.
func TestBodyScrews(t *testing.T) {
	for thread, tool := range map[string]string{"M5": "8 mm socket", "M6": "10 mm socket", "M8": "13 mm socket"} {
		if fit := DriveFits(thread, "hex", DrivesOf(tool)[0]); fit.Verdict != FitsNow {
			t.Errorf("%s takes a %s: %+v", thread, tool, fit)
		}
	}
}

func TestDriveFits(t *testing.T) {
	for _, c := range []struct {
		thread, head, drive string
		want                Verdict
		standard            string
	}{
		{"M5", "hex", "8 mm", FitsNow, "ISO 4014"},
		{"M8", "hex", "12 mm", FitsElse, "JIS"},
		{"M10", "hex", "17 mm", FitsOlder, "DIN 931"},
		{"M10x1.25", "hex", "14 mm", FitsElse, "JIS"},
		{"M8", "hex flange", "10 mm", FitsNow, "ISO 4162"},
		{"M8", "flange", "17 mm", NoSuchSize, ""},
		{"M8", "hex", "10 mm", FitsNow, "ISO 4162"},
		{"M8", "hex", "11 mm", NoSuchSize, ""},
		{"M5", "", "5/16 in", FitsNow, "ISO 4014"},
		{"M8", "socket head", "6 mm hex key", FitsNow, "ISO 4762"},
		{"M8", "button head", "6 mm hex key", OtherHead, "ISO 4762"},
		{"M8", "", "7 mm hex key", NoSuchSize, ""},
		{"M6", "pan head", "T30", FitsNow, "ISO 14583"},
		{"M6", "pan head", "T30 security", FitsNow, "ISO 14583"},
		{"M6", "pan head", "T25", NoSuchSize, ""},
		{"M4", "button head", "T20", FitsElse, "no standard"},
		{"M4", "button head", "T15", FitsElse, "no standard"},
		{"M4", "button head", "T30", NoSuchSize, ""},
		{"M4", "pan", "PH2", FitsNow, "ISO 7045"},
		{"M2", "pan", "PH1", FitsOlder, "DIN 7985"},
		{"M3", "pan", "PH2", OtherHead, "ISO 7048"},
		{"M8", "", "E10", FitsElse, "makers"},
		{"M8", "", "E12", NoTable, ""},
		{"1/4", "hex", "7/16 in", FitsNow, "ASME"},
		{"7/16", "nut", "11/16 in", FitsNow, "ASME B18.2.2"},
		{"M14", "drain plug", "17 mm", NoTable, ""},
		{"M12x1.5", "wheel nut", "19 mm", FitsElse, "vehicle"},
		{"M30", "hex", "46 mm", NoTable, ""},
		{"M5", "hex", "slotted", NoTable, ""},
		{"ST4.2", "pan", "PH2", NoTable, ""},
	} {
		drive, ok := ParseDrive(c.drive)
		if !ok {
			t.Fatalf("no drive %q", c.drive)
		}
		fit := DriveFits(c.thread, c.head, drive)
		if fit.Verdict != c.want || !strings.HasPrefix(fit.Standard, c.standard) {
			t.Errorf("%s %s on %s: %+v; want verdict %d by %s", c.thread, c.head, c.drive, fit, c.want, c.standard)
		}
		if fit.Verdict == NoSuchSize && len(fit.Usual) == 0 {
			t.Errorf("%s %s on %s: no usual size to offer", c.thread, c.head, c.drive)
		}
	}
}

// Stress areas as ISO 898-1 prints them (two distributors' copies), and ASME
// B1.13M for the fine threads.
func TestStressAreaISO898(t *testing.T) {
	for thread, want := range map[string]float64{
		"M3": 5.03, "M3.5": 6.78, "M4": 8.78, "M5": 14.2, "M6": 20.1, "M8": 36.6, "M10": 58, "M12": 84.3, "M14": 115, "M16": 157, "M18": 192, "M20": 245, "M22": 303, "M24": 353,
		"M8x1": 39.17, "M10x1.25": 61.2, "M12x1.25": 92.07, "M14x1.5": 124.5, "M16x1.5": 167.2, "M20x1.5": 271.5, "M24x2": 384.4,
	} {
		th, _ := ParseThread(thread)
		if got := th.StressArea(); math.Abs(got/want-1) > 0.005 {
			t.Errorf("%s: %.2f mm²; ISO 898-1 prints %v", thread, got, want)
		}
	}
	// ASME B1.1, in²
	for thread, want := range map[string]float64{"1/4-20": 0.0318, "5/16-18": 0.0524, "3/8-16": 0.0775, "1/2-13": 0.1419, "3/4-10": 0.334, "1/4-28": 0.0364, "1/2-20": 0.1599} {
		th, _ := ParseThread(thread)
		if got := th.StressArea() / (25.4 * 25.4); math.Abs(got/want-1) > 0.005 {
			t.Errorf("%s: %.4f in²; ASME B1.1 prints %v", thread, got, want)
		}
	}
}

// Proof loads in N as ISO 898-1 prints them (two distributors' copies), mostly
// rounded down to three figures: 0.7 % covers it.
func TestProofLoadsISO898(t *testing.T) {
	classes := []string{"4.6", "5.8", "8.8", "10.9", "12.9"}
	for thread, loads := range map[string][]float64{
		"M3": {1130, 1910, 2920, 4180, 4880}, "M4": {1980, 3340, 5100, 7290, 8520}, "M5": {3200, 5400, 8230, 11800, 13800}, "M6": {4520, 7640, 11600, 16700, 19500},
		"M8": {8240, 13900, 21200, 30400, 35500}, "M10": {13000, 22000, 33700, 48100, 56300}, "M12": {19000, 32000, 48900, 70000, 81800}, "M14": {25900, 43700, 66700, 95500, 112000},
		"M16": {35300, 59700, 91000, 130000, 152000}, "M18": {43200, 73000, 115000, 159000, 186000}, "M20": {55100, 93100, 147000, 203000, 238000},
		"M22": {68200, 115000, 182000, 252000, 294000}, "M24": {79400, 134000, 212000, 293000, 342000},
	} {
		th, _ := ParseThread(thread)
		for i, name := range classes {
			c, ok := ClassOf(name, th.Diameter)
			if got := ProofLoad(th, c); !ok || math.Abs(got/loads[i]-1) > 0.007 {
				t.Errorf("%s %s: %.0f N; ISO 898-1 prints %v", thread, name, got, loads[i])
			}
		}
	}
}

func TestClassOf(t *testing.T) {
	for in, want := range map[string]float64{"8.8": 640, "class 10.9": 940, "Property class 12.9": 1100, "grade 5": 634, "Grade 8": 896, "A2-70": 450, "a4-80": 600} {
		if c, ok := ClassOf(in, 10); !ok || c.Yield != want {
			t.Errorf("ClassOf(%q) = %+v, %v; want yield %v", in, c, ok, want)
		}
	}
	if _, ok := ClassOf("7.7", 10); ok {
		t.Error("class 7.7 exists")
	}
	if _, ok := ClassOf("9.8", 20); ok {
		t.Error("class 9.8 above M16 exists; ISO 898-1 has none")
	}
}

func TestToolBears(t *testing.T) {
	for _, c := range []struct {
		drive string
		want  float64
	}{{"6 mm hex key", 52}, {"13 mm", 107}, {"T25", 0}, {"40 mm", 0}, {"slotted", 0}} {
		d, _ := ParseDrive(c.drive)
		if got, ok := ToolBears(d); got != c.want || ok != (c.want > 0) {
			t.Errorf("%s bears %v, %v; want %v", c.drive, got, ok, c.want)
		}
	}
}

func FuzzParseThread(f *testing.F) {
	for _, s := range []string{"M8", "M8x1.25x30", "1/4-20 UNC", "#10-32", "m 2.5 x 0.45"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		th, ok := ParseThread(s)
		if !ok {
			return
		}
		if again, ok := ParseThread(th.Name); !ok || again != th {
			t.Errorf("ParseThread(%q) = %+v, whose name gives %+v, %v", s, th, again, ok)
		}
		if !(th.StressArea() > 0) || len(FlatsFor(s))+len(RecessesFor(s)) == 0 {
			t.Errorf("%q has area %v and no heads", s, th.StressArea())
		}
	})
}
