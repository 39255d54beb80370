package trade

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Thread is a screw thread: ISO metric or unified inch. Lengths are in mm.
type Thread struct {
	Name     string // "M8", "M10x1.25", "1/4-20", "#10"
	Size     string // "M8", "1/4", "#10": what the head's tables go by
	Diameter float64
	Pitch    float64
	Coarse   bool
	Source   string
}

// ParseThread reads "M8", "m8 x 1.25", "M10×1.25", "1/4-20", "1/4 in UNF",
// "#10-32". A metric thread without a pitch is the coarse one; so is an inch
// thread without its threads an inch. Sizes outside the tables give false.
func ParseThread(s string) (Thread, bool) {
	if len(s) > 40 {
		return Thread{}, false
	}
	text := threadFolder.Replace(strings.ToLower(strings.TrimSpace(s)))
	if size, metric := strings.CutPrefix(text, "m"); metric && fewDigits(size) { // as most are written, without a pattern
		return metricThread(size, "")
	}
	if m := metricForm.first(text); m != nil {
		return metricThread(m[1], m[2])
	}
	if m := inchForm.first(text); m != nil {
		return inchThread(m[1], m[2]+m[3])
	}
	return Thread{}, false
}

var (
	threadFolder = strings.NewReplacer("×", "x", "*", "x", "″", "", `"`, "", "in.", "", " inch", "", " in", "", "no. ", "#", "no.", "#")
	metricForm   = patternOf(`^m ?(\d{1,2}(?:\.\d)?)(?: ?[x-] ?(\d(?:\.\d{1,2})?))?(?: ?[x-] ?\d{1,3}| mm)*$`, "m0")
	inchForm     = patternOf(`^(#\d{1,2}|\d{1,2}/\d{1,2}|1)(?:(?: ?- ?| )(\d{1,2}))?(?: ?-?(unc|unf))?$`, "#", "/", "1")
)

type metricSize struct {
	diameter float64
	pitches  []float64
}

// metricPitches are the pitches of each metric size, the coarse one first.
// Those below M3, M3.5, M7, M9, M11 and those above M24 are from memory of ISO 261.
var metricPitches = []metricSize{
	{1, []float64{0.25}}, {1.1, []float64{0.25}}, {1.2, []float64{0.25}}, {1.4, []float64{0.3}}, {1.6, []float64{0.35}}, {1.8, []float64{0.35}},
	{2, []float64{0.4}}, {2.2, []float64{0.45}}, {2.5, []float64{0.45}}, {3, []float64{0.5, 0.35}}, {3.5, []float64{0.6}}, {4, []float64{0.7, 0.5}},
	{5, []float64{0.8, 0.5}}, {6, []float64{1, 0.75}}, {7, []float64{1, 0.75}}, {8, []float64{1.25, 1, 0.75}}, {9, []float64{1.25, 1}},
	{10, []float64{1.5, 1.25, 1}}, {11, []float64{1.5, 1}}, {12, []float64{1.75, 1.5, 1.25}}, {14, []float64{2, 1.5}}, {16, []float64{2, 1.5}},
	{18, []float64{2.5, 2, 1.5}}, {20, []float64{2.5, 2, 1.5}}, {22, []float64{2.5, 2, 1.5}}, {24, []float64{3, 2}}, {27, []float64{3, 2}},
	{30, []float64{3.5, 2}}, {33, []float64{3.5, 2}}, {36, []float64{4, 3}},
}

func metricThread(diameter, pitch string) (Thread, bool) {
	d, _ := strconv.ParseFloat(diameter, 64) // the pattern lets only numbers through
	i := slices.IndexFunc(metricPitches, func(m metricSize) bool { return m.diameter == d })
	if i < 0 {
		return Thread{}, false
	}
	size := "M" + formatNumber(d)
	coarse := metricPitches[i].pitches[0]
	t := Thread{Name: size, Size: size, Diameter: d, Pitch: coarse, Coarse: true, Source: iso724}
	if pitch == "" {
		return t, true
	}
	p, _ := strconv.ParseFloat(pitch, 64)
	if p == coarse {
		return t, true
	}
	// any finer pitch is cut somewhere; a coarser one is no metric thread
	if p <= 0 || p > coarse {
		return Thread{}, false
	}
	t.Name, t.Pitch, t.Coarse = size+"x"+formatNumber(p), p, false
	return t, true
}

func inchThread(size, series string) (Thread, bool) {
	for _, r := range inchRows {
		if r.size != size {
			continue
		}
		t := Thread{Size: size, Diameter: r.diameter * 25.4, Source: ununc}
		tpi := r.unc
		switch {
		case series == "" || series == "unc" || strings.HasPrefix(series, strconv.Itoa(r.unc)):
			t.Coarse = true
		case series == "unf" || strings.HasPrefix(series, strconv.Itoa(r.unf)):
			tpi = r.unf
		default:
			return Thread{}, false
		}
		t.Name = size + "-" + strconv.Itoa(tpi)
		t.Pitch = 25.4 / float64(tpi)
		return t, true
	}
	return Thread{}, false
}

// threads lists every thread of the tables, metric first, each size's coarse
// pitch first.
func threads() []Thread {
	var list []Thread
	for _, m := range metricPitches {
		for i, p := range m.pitches {
			pitch := ""
			if i > 0 {
				pitch = formatNumber(p)
			}
			t, _ := metricThread(formatNumber(m.diameter), pitch)
			list = append(list, t)
		}
	}
	for _, r := range inchRows {
		for _, series := range []string{"unc", "unf"} {
			t, _ := inchThread(r.size, series)
			list = append(list, t)
		}
	}
	return list
}

// Inch holds for a unified thread.
func (t Thread) Inch() bool { return !strings.HasPrefix(t.Size, "M") }

// PitchDiameter is d2 = d - 0.649519 P in mm. Source: ISO 724.
func (t Thread) PitchDiameter() float64 { return t.Diameter - 0.649519*t.Pitch }

// RootDiameter is d3 = d - 1.226869 P in mm. Source: ISO 724, ISO 68-1.
func (t Thread) RootDiameter() float64 { return t.Diameter - 1.226869*t.Pitch }

// StressArea is the nominal stress area in mm²: π/4 ((d2+d3)/2)² for a metric
// thread (ISO 898-1), π/4 (d - 0.9743 P)² for an inch one (ASME B1.1).
func (t Thread) StressArea() float64 {
	d := (t.PitchDiameter() + t.RootDiameter()) / 2
	if t.Inch() {
		d = t.Diameter - 0.9743*t.Pitch
	}
	return math.Pi / 4 * d * d
}

// PropertyClass is the strength of a bolt's steel, in MPa (N/mm²).
type PropertyClass struct {
	Standard string
	Name     string // "8.8", "grade 5", "A2-70"
	Sizes    string // the sizes it holds for, empty for all
	Tensile  float64
	Yield    float64 // or 0.2 % proof
	Proof    float64 // stress under proof load; 0 where the standard has none
	Source   string

	above, upTo float64 // diameters in mm: above < d <= upTo; 0: no limit
}

// propertyClasses by standard, weakest first. SAE figures are ksi × 6.894757, rounded.
var propertyClasses = []PropertyClass{
	{Standard: "ISO 898-1", Name: "4.6", Tensile: 400, Yield: 240, Proof: 225, Source: iso898},
	{Standard: "ISO 898-1", Name: "4.8", Tensile: 420, Yield: 340, Proof: 310, Source: iso898},
	{Standard: "ISO 898-1", Name: "5.6", Tensile: 500, Yield: 300, Proof: 280, Source: iso898},
	{Standard: "ISO 898-1", Name: "5.8", Tensile: 520, Yield: 420, Proof: 380, Source: iso898},
	{Standard: "ISO 898-1", Name: "6.8", Tensile: 600, Yield: 480, Proof: 440, Source: iso898},
	{Standard: "ISO 898-1", Name: "8.8", Sizes: "to M16", Tensile: 800, Yield: 640, Proof: 580, Source: iso898, upTo: 16},
	{Standard: "ISO 898-1", Name: "8.8", Sizes: "over M16", Tensile: 830, Yield: 660, Proof: 600, Source: iso898, above: 16},
	{Standard: "ISO 898-1", Name: "9.8", Sizes: "to M16", Tensile: 900, Yield: 720, Proof: 650, Source: iso898, upTo: 16},
	{Standard: "ISO 898-1", Name: "10.9", Tensile: 1040, Yield: 940, Proof: 830, Source: iso898},
	{Standard: "ISO 898-1", Name: "12.9", Tensile: 1220, Yield: 1100, Proof: 970, Source: iso898},
	{Standard: "ISO 3506-1", Name: "A2-50", Tensile: 500, Yield: 210, Source: iso3506},
	{Standard: "ISO 3506-1", Name: "A2-70", Tensile: 700, Yield: 450, Source: iso3506},
	{Standard: "ISO 3506-1", Name: "A2-80", Tensile: 800, Yield: 600, Source: iso3506},
	{Standard: "SAE J429", Name: "grade 1", Tensile: 414, Yield: 248, Proof: 228, Source: saeJ429},
	{Standard: "SAE J429", Name: "grade 2", Sizes: "to 3/4 in", Tensile: 510, Yield: 393, Proof: 379, Source: saeJ429, upTo: 19.06},
	{Standard: "SAE J429", Name: "grade 2", Sizes: "over 3/4 in", Tensile: 414, Yield: 248, Proof: 228, Source: saeJ429, above: 19.06},
	{Standard: "SAE J429", Name: "grade 5", Sizes: "to 1 in", Tensile: 827, Yield: 634, Proof: 586, Source: saeJ429, upTo: 25.41},
	{Standard: "SAE J429", Name: "grade 5", Sizes: "over 1 in", Tensile: 724, Yield: 558, Proof: 510, Source: saeJ429, above: 25.41},
	{Standard: "SAE J429", Name: "grade 8", Tensile: 1034, Yield: 896, Proof: 827, Source: saeJ429},
}

// ClassOf finds a bolt's class by what its head shows and its diameter in mm:
// "8.8", "class 10.9", "grade 5", "A2-70", "A4-70".
func ClassOf(name string, diameter float64) (PropertyClass, bool) {
	key := strings.ToLower(strings.TrimSpace(name))
	for _, prefix := range []string{"property class", "class", "iso", "sae"} {
		key = strings.TrimSpace(strings.TrimPrefix(key, prefix))
	}
	key = strings.Replace(strings.Replace(key, "a4-", "a2-", 1), "gr ", "grade ", 1)
	for _, c := range propertyClasses {
		if strings.ToLower(c.Name) == key && diameter > c.above && (c.upTo == 0 || diameter <= c.upTo) {
			return c, true
		}
	}
	return PropertyClass{}, false
}

// ProofLoad is the load in newtons that a bolt of the class bears without a
// lasting stretch: proof stress × stress area (ISO 898-1). 0 where the class
// has no proof stress.
func ProofLoad(t Thread, c PropertyClass) float64 { return c.Proof * t.StressArea() }

// byRank sorts rows from the standard in force to common practice.
func byRank[T any](rows []T, status func(T) Status) {
	slices.SortStableFunc(rows, func(a, b T) int { return cmp.Compare(status(a).rank(), status(b).rank()) })
}
