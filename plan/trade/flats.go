package trade

import (
	"slices"
	"strings"
)

// Flats is a width across flats that a standard gives a thread.
type Flats struct {
	Thread   string // "M8", "1/4"
	Kind     string // "bolt", "nut", "flange bolt", "wheel nut or bolt" …
	Standard string
	Status   Status
	Size     string  // "13 mm", "7/16 in": the spanner
	Width    float64 // mm
	Source   string
	Note     string
}

// flatsSeries is one standard's widths: widths[i] belongs to threads[i].
type flatsSeries struct {
	kind, standard string
	status         Status
	source, note   string
	threads        string
	widths         []float64
}

const (
	hexThreads    = "M3 M4 M5 M6 M8 M10 M12 M14 M16 M18 M20 M22 M24"
	flangeThreads = "M5 M6 M8 M10 M12 M14 M16 M20"
)

var (
	isoWidths = []float64{5.5, 7, 8, 10, 13, 16, 18, 21, 24, 27, 30, 34, 36}
	dinWidths = []float64{5.5, 7, 8, 10, 13, 17, 19, 22, 24, 27, 30, 32, 36}
)

// flatsRows are the metric hexagons. M14 and M22 are the sizes where open
// libraries most often err: ISO has 21 and 34, DIN had 22 and 32.
var flatsRows = []flatsSeries{
	{"bolt", "ISO 4014, 4017 (ISO 272:1982)", InForce, iso272, "", hexThreads, isoWidths},
	{"nut", "ISO 4032, 8673 (ISO 272:1982)", InForce, iso272, "", hexThreads, isoWidths},
	{"flange bolt", "ISO 4162, small series", InForce, "ISO 4162 (an open library of standard parts)", "", "M5 M6 M8 M10 M12 M14 M16", []float64{7, 8, 10, 13, 15, 18, 21}},
	{"flange bolt", "ISO 15071, small series", InForce, "ISO 15071 (an open library of standard parts)", "", "M5 M6 M8 M10 M12 M14 M16", []float64{7, 8, 10, 13, 15, 18, 21}},
	{"flange nut", "ISO 4161", InForce, "ISO 4161 (two open libraries of standard parts; foreword of DIN EN 1665)", "", flangeThreads, []float64{8, 10, 13, 15, 18, 21, 24, 30}},
	{"bolt or nut", "JIS small hexagon (Japanese vehicles)", Regional, jisHex, "with M10x1.25 and M12x1.25 threads", "M5 M6 M8 M10 M12 M14", []float64{8, 10, 12, 14, 17, 19}},
	{"bolt", "DIN 931, 933 (before ISO 272)", Older, dinHex, "", hexThreads, dinWidths},
	{"nut", "DIN 934 (before ISO 272)", Older, dinHex, "", hexThreads, dinWidths},
	{"flange bolt", "EN 1662, small series", Older, "EN 1662 (an open library of standard parts)", "", "M5 M6 M8 M10 M12 M14 M16", []float64{7, 8, 10, 13, 16, 18, 21}},
	{"flange bolt", "EN 1665, heavy series", Older, "EN 1665 (an open library of standard parts; its foreword for M10)", "", flangeThreads, []float64{8, 10, 13, 16, 18, 21, 24, 30}},
	{"flange nut", "EN 1661", Older, "EN 1661 (an open library of standard parts)", "", flangeThreads, []float64{8, 10, 13, 16, 18, 21, 24, 30}},
	{"flange bolt", "DIN 6921:1983", Withdrawn, fromMemory, "M12 and up doubtful", flangeThreads, []float64{8, 10, 13, 15, 16, 18, 21, 27}},
	{"structural bolt", "EN 14399-4, large hexagon", Regional, fromMemory, "", "M12 M16 M20 M22 M24", []float64{22, 27, 32, 36, 41}},
	{"wheel nut or bolt", "vehicle makers' own", Practice, "vehicle handbooks print 19 mm for M12x1.5; the others " + common, "", "M12 M12 M12 M14 M14 M14 M14", []float64{17, 19, 21, 17, 19, 21, 22}},
}

// inchRow is a unified size: threads an inch, and its hexagons in inches.
type inchRow struct {
	size                string
	diameter            float64 // inches
	unc, unf            int     // threads an inch
	bolt, nut, key      string  // across flats, inches
	boltWidth, nutWidth float64 // mm
	flatRecess          int     // cross recess number of a countersunk head; 0: none in the table
}

var inchRows = []inchRow{
	{"#4", 0.112, 40, 48, "3/16", "1/4", "3/32", 4.76, 6.35, 1},
	{"#6", 0.138, 32, 40, "1/4", "5/16", "7/64", 6.35, 7.94, 2},
	{"#8", 0.164, 32, 36, "1/4", "11/32", "9/64", 6.35, 8.73, 2},
	{"#10", 0.19, 24, 32, "5/16", "3/8", "5/32", 7.94, 9.52, 2},
	{"1/4", 0.25, 20, 28, "7/16", "7/16", "3/16", 11.11, 11.11, 3},
	{"5/16", 0.3125, 18, 24, "1/2", "1/2", "1/4", 12.7, 12.7, 4},
	{"3/8", 0.375, 16, 24, "9/16", "9/16", "5/16", 14.29, 14.29, 4},
	{"7/16", 0.4375, 14, 20, "5/8", "11/16", "3/8", 15.88, 17.46, 0},
	{"1/2", 0.5, 13, 20, "3/4", "3/4", "3/8", 19.05, 19.05, 0},
	{"9/16", 0.5625, 12, 18, "13/16", "7/8", "7/16", 20.64, 22.22, 0},
	{"5/8", 0.625, 11, 18, "15/16", "15/16", "1/2", 23.81, 23.81, 0},
	{"3/4", 0.75, 10, 16, "1-1/8", "1-1/8", "5/8", 28.57, 28.57, 0},
	{"7/8", 0.875, 9, 14, "1-5/16", "1-5/16", "3/4", 33.34, 33.34, 0},
	{"1", 1, 8, 12, "1-1/2", "1-1/2", "3/4", 38.1, 38.1, 0},
}

// FlatsFor lists the widths across flats that standards give a thread, the
// standards in force first. An unknown thread gives none.
func FlatsFor(thread string) []Flats {
	t, ok := ParseThread(thread)
	if !ok {
		return nil
	}
	var found []Flats
	for _, s := range flatsRows {
		if !strings.Contains(s.threads, t.Size) {
			continue // cheaper than parting them
		}
		for i, name := range strings.Fields(s.threads) {
			if name == t.Size {
				found = append(found, Flats{name, s.kind, s.standard, s.status, lengthSize(formatNumber(s.widths[i]), "mm"), s.widths[i], s.source, s.note})
			}
		}
	}
	for _, r := range inchRows {
		if r.size == t.Size {
			found = append(found,
				Flats{r.size, "bolt", "ASME B18.2.1", InForce, r.bolt + " in", r.boltWidth, asmeHex, ""},
				Flats{r.size, "nut", "ASME B18.2.2", InForce, r.nut + " in", r.nutWidth, asmeHex, ""})
		}
	}
	byRank(found, func(f Flats) Status { return f.Status })
	return found
}

// Recess is the drive that a standard gives a thread's head from inside, or an
// external hexalobular.
type Recess struct {
	Thread   string
	Head     string // "socket head", "pan head", "countersunk head" …
	Standard string
	Status   Status
	Drive    Drive
	Source   string
	Note     string
}

// recessSeries is one standard's drives: sizes[i] belongs to threads[i].
type recessSeries struct {
	head, standard string
	status         Status
	kind, prefix   string
	source, note   string
	threads, sizes string
}

const (
	lobeThreads  = "M2.5 M3 M3.5 M4 M5 M6 M8 M10"
	lobeSizes    = "8 10 15 20 25 30 45 50"
	crossThreads = "M1.6 M2 M2.5 M3 M3.5 M4 M5 M6 M8 M10"
	crossSizes   = "0 0 1 1 2 2 2 3 4 4"
	keySource    = "open libraries of standard parts, a course table and vendor tables agree"
)

var recessRows = []recessSeries{
	{"socket head", "ISO 4762 (DIN 912)", InForce, HexKey, "", keySource, "", "M3 M4 M5 M6 M8 M10 M12 M14 M16 M18 M20 M22 M24", "2.5 3 4 5 6 8 10 12 14 14 17 17 19"},
	{"button head", "ISO 7380-1", InForce, HexKey, "", keySource, "", "M3 M4 M5 M6 M8 M10 M12 M16", "2 2.5 3 4 5 6 8 10"},
	{"countersunk head", "ISO 10642", InForce, HexKey, "", keySource, "", "M3 M4 M5 M6 M8 M10 M12 M14 M16 M20", "2 2.5 3 4 5 6 8 10 10 12"},
	{"set screw", "ISO 4026 to 4029", InForce, HexKey, "", keySource, "", "M3 M4 M5 M6 M8 M10 M12 M14 M16 M18 M20 M22 M24", "1.5 2 2.5 3 4 5 6 6 8 10 10 12 12"},
	{"socket head", "ISO 14579", InForce, Hexalobular, "T", iso10664, "", "M2.5 M3 M4 M5 M6 M8 M10 M12 M14 M16 M18 M20", "8 10 20 25 30 45 50 55 60 70 80 90"},
	{"cheese head", "ISO 14580", InForce, Hexalobular, "T", iso10664, "", lobeThreads, lobeSizes},
	{"pan head", "ISO 14583", InForce, Hexalobular, "T", iso10664, "", lobeThreads, lobeSizes},
	{"countersunk head", "ISO 14581", InForce, Hexalobular, "T", iso10664, "", lobeThreads, lobeSizes},
	{"countersunk head", "ISO 14582, high head", InForce, Hexalobular, "T", iso10664, "", "M3 M4 M5 M6 M8 M10", "10 20 25 30 45 50"},
	{"raised countersunk head", "ISO 14584", InForce, Hexalobular, "T", iso10664, "", lobeThreads, lobeSizes},
	{"socket head", "no standard named", Practice, Hexalobular, "T", "an open library of standard parts; ASME metric pattern " + fromMemory, "", "M4 M5", "25 27"},
	{"button head", "no standard named", Practice, Hexalobular, "T", "an open library of standard parts; ASME metric pattern " + fromMemory, "", "M3 M4 M5 M6 M8 M10 M12", "8 15 25 27 40 45 55"},
	{"button head", "no standard named", Practice, Hexalobular, "T", "sold with the sizes of ISO 14583's pan heads; common practice, " + fromMemory, "", "M3 M4 M6 M8", "10 20 30 40"},
	{"set screw", "no standard named", Practice, Hexalobular, "T", "an open library of standard parts", "", "M3 M4 M5 M6 M8 M10 M12 M16", "6 8 10 15 25 40 45 55"},
	{"external hexalobular", "makers' own", Practice, HexalobularOutside, "E", fromMemory, "", "M4 M5 M6 M8 M10 M12 M14 M16", "5 6 8 10 12 14 18 20"},
	{"pan head", "ISO 7045", InForce, CrossH, "PH", iso4757, "", crossThreads, crossSizes},
	{"countersunk head", "ISO 7046", InForce, CrossH, "PH", iso4757, "", crossThreads, crossSizes},
	{"cheese head", "ISO 7048", InForce, CrossH, "PH", iso4757, "", "M2.5 M3 M3.5 M4 M5 M6 M8", "1 2 2 2 2 3 3"},
	{"pan head", "DIN 7985", Older, CrossH, "PH", "DIN 7985 (a vendor table)", "ISO 7045 has 0", "M2", "1"},
	{"thin pan head", "makers' own, electronics", Practice, CrossH, "PH", fromMemory, "thin heads of laptops and cameras", "M1.6 M2 M2.5", "00 00 0"},
	{"pan head", "ISO 7045", InForce, CrossZ, "PZ", iso4757, "", crossThreads, crossSizes},
	{"countersunk head", "ISO 7046", InForce, CrossZ, "PZ", iso4757, "", crossThreads, crossSizes},
	{"cheese head", "ISO 7048", InForce, CrossZ, "PZ", iso4757, "", "M2.5 M3 M3.5 M4 M5 M6 M8", "1 2 2 2 2 3 3"},
	{"pan head", "DIN 7985", Older, CrossZ, "PZ", "DIN 7985 (a vendor table)", "ISO 7045 has 0", "M2", "1"},
}

// RecessesFor lists the recesses and external hexalobulars that standards give
// a thread, the standards in force first. An unknown thread gives none.
func RecessesFor(thread string) []Recess {
	t, ok := ParseThread(thread)
	if !ok {
		return nil
	}
	var found []Recess
	for _, s := range recessRows {
		if !strings.Contains(s.threads, t.Size) {
			continue
		}
		i := slices.Index(strings.Fields(s.threads), t.Size)
		if i < 0 {
			continue
		}
		size := s.prefix + strings.Fields(s.sizes)[i]
		if s.kind == HexKey {
			size += " mm"
		}
		found = append(found, Recess{t.Size, s.head, s.standard, s.status, Drive{s.kind, size}, s.source, s.note})
	}
	for _, r := range inchRows {
		if r.size != t.Size {
			continue
		}
		found = append(found, Recess{r.size, "socket head", "ASME B18.3", InForce, Drive{HexKey, r.key + " in"}, asmeHex, ""})
		if r.flatRecess > 0 {
			found = append(found, Recess{r.size, "countersunk head", "ASME B18.6.3", InForce, Drive{CrossH, "PH" + formatNumber(float64(r.flatRecess))}, "ASME B18.6.3 (an open library of standard parts)", ""})
		}
	}
	byRank(found, func(r Recess) Status { return r.Status })
	return found
}
