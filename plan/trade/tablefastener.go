package trade

import (
	"fmt"
	"slices"
	"strings"
)

// threadTable answers "look thread M8": everything that standards say of it.
func threadTable() Table {
	t := Table{
		Title: "Threads: pitch, spanners, keys and bits", Columns: []string{"Thread", "What", "Value", "Standard", "Status"},
		Notes: []string{
			"Standards differ: a 17 mm bolt head on M10 follows the older DIN, 16 mm ISO, 14 mm JIS, 13 mm a small flange. Any width in the list may be on the machine: measure before you name it.",
			"Open libraries of parts often print the DIN widths of M14 and M22 under ISO's number; ISO has 21 and 34.",
			"A torque here is a plausible span, not a setting: the maker's figure comes first.",
		},
	}
	all := threads()
	for i, first := range all {
		if i > 0 && all[i-1].Size == first.Size {
			continue
		}
		var keys []string
		for _, th := range all {
			if th.Size == first.Size {
				own := []string{strings.ToLower(th.Size), strings.ToLower(th.Name)}
				keys = append(keys, own...)
				t.Rows = append(t.Rows, threadRows(th, own)...)
			}
		}
		t.Rows = append(t.Rows, headRows(first, keys)...)
	}
	return t
}

// threadRows are what one pitch decides.
func threadRows(th Thread, keys []string) []Row {
	standard, area := "ISO 261", "ISO 898-1"
	if th.Inch() {
		standard, area = "ASME B1.1", "ASME B1.1"
	}
	rows := []Row{
		{Cells: []string{th.Name, "pitch", figures(th.Pitch) + " mm, " + choose(th.Coarse, "coarse", "fine"), standard, string(InForce)}, Source: th.Source, keys: keys},
		{Cells: []string{th.Name, "stress area", figures(th.StressArea()) + " mm²", area, string(InForce)}, Source: "computed from the pitch", keys: keys},
	}
	if b, ok := TorqueBand(th.Name, ""); ok && th.Coarse {
		rows = append(rows, Row{Cells: []string{th.Name, "plausible torque, class not known", figures(b.Low) + " to " + figures(b.Limit) + " N·m", "-", "computed"}, Source: b.Source, keys: keys})
	}
	return rows
}

// headRows are what the size decides; standards that agree share a row.
func headRows(th Thread, keys []string) []Row {
	var rows []Row
	merge := func(cells []string, source string) {
		for i := range rows {
			c := rows[i].Cells
			if c[1] == cells[1] && c[2] == cells[2] && c[4] == cells[4] {
				c[3] += "; " + cells[3]
				if !strings.Contains(rows[i].Source, source) {
					rows[i].Source += "; " + source
				}
				return
			}
		}
		rows = append(rows, Row{Cells: cells, Source: source, keys: keys})
	}
	for _, f := range FlatsFor(th.Name) {
		merge([]string{f.Thread, f.Kind + ", across flats", f.Size, f.Standard, string(f.Status)}, withNote(f.Source, f.Note))
	}
	for _, r := range RecessesFor(th.Name) {
		what := r.Head
		if r.Drive.Kind != r.Head {
			what += ", " + r.Drive.Kind
		}
		merge([]string{r.Thread, what, r.Drive.Size, r.Standard, string(r.Status)}, withNote(r.Source, r.Note))
	}
	return rows
}

func withNote(source, note string) string {
	if note == "" {
		return source
	}
	return source + "; " + note
}

// torqueTable sets the formula's torques beside the printed ones.
func torqueTable() Table {
	t := Table{
		Title:   "Torques that take a bolt to 90 % of its yield",
		Columns: []string{"Thread", "Class", "mu 0.10, N·m", "mu 0.14, N·m", "mu 0.14, lb·ft", "Printed in manuals, N·m"},
		Notes: []string{
			"An upper end for the bolt alone: gaskets, plastic, aluminium and thin sheet take far less. The maker's figure comes first.",
			"Honest tables for one bolt differ by a third: M10 8.8 is printed with 42 to 57 N·m.",
		},
	}
	printed := map[string][]float64{}
	for _, r := range PublishedTorques() {
		printed[r.Thread+" "+r.Class] = append(printed[r.Thread+" "+r.Class], r.Torque)
	}
	for _, th := range threads() {
		classes := []string{"4.6", "8.8", "10.9", "12.9"}
		if th.Inch() {
			classes = []string{"grade 2", "grade 5", "grade 8"}
		}
		for _, name := range classes {
			c, ok := ClassOf(name, th.Diameter)
			low, found := MaxTorque(th, c, 0.10)
			if !ok || !found {
				continue
			}
			high, _ := MaxTorque(th, c, frictionMu)
			feet, _ := Quantity{Number: high, Unit: NewtonMetre}.In(PoundFoot)
			t.Rows = append(t.Rows, Row{
				Cells:  []string{th.Name, name, figures(low), figures(high), figures(feet.Number), span(printed[th.Name+" "+name])},
				Source: vdi2230 + choose(th.Inch(), "; bearing face "+common, ""), keys: []string{strings.ToLower(th.Size), strings.ToLower(th.Name)},
			})
		}
	}
	return t
}

// span prints the least and the most of a list.
func span(list []float64) string {
	if len(list) == 0 {
		return "-"
	}
	low, high := slices.Min(list), slices.Max(list)
	if low == high {
		return figures(low)
	}
	return figures(low) + " to " + figures(high)
}

func classTable() Table {
	t := Table{
		Title: "Strength of bolts by the mark on the head, MPa", Columns: []string{"Class", "Sizes", "Tensile", "Yield", "Proof", "Standard"},
		Notes: []string{"A head without a mark is no proof of class 4.6: ask the maker's parts list."},
	}
	for _, c := range propertyClasses {
		sizes := c.Sizes
		if sizes == "" {
			sizes = "all"
		}
		t.Rows = append(t.Rows, Row{Cells: []string{c.Name, sizes, formatNumber(c.Tensile), formatNumber(c.Yield), orDash(c.Proof), c.Standard}, Source: c.Source, keys: []string{strings.ToLower(c.Name)}})
	}
	return t
}

const driveArticle = "an encyclopaedia's list of screw drives; "

// headTable says which tool turns which head.
func headTable() Table {
	t := Table{Title: "Which tool turns which head", Columns: []string{"Head", "Tools", "Beware", "Example"},
		Notes: []string{"Try the tool by hand first: it must sit to the bottom without play. The sizes stand in table thread."}}
	for _, r := range [][5]string{
		{"external hexagon (bolt head, nut)", "socket and ratchet; combination, ring or open-ended spanner; nut driver", "an adjustable spanner, pliers or a 12-point socket round a worn head", "M6 nut: 10 mm", driveArticle + common},
		{"external hexagon with flange", "as an external hexagon", "three widths are in force for M8: 10 mm (ISO 4162), 13 mm (EN 1665), 12 mm (JIS)", "M8 flange bolt: measure first", "the standards' tables; see table thread"},
		{"internal hexagon (socket head, button head, set screw)", "hex key; hex bit; hex bit socket", "a ball end is not for the last turn; a hexalobular bit spoils the socket", "M8 socket head: 6 mm key; M8 button head: 5 mm key", "see table thread; JIS B 4648"},
		{"internal hexalobular", "hexalobular driver or bit, T size", "one with a pin needs a hollow bit; a hex key slips", "M6 pan head: T30", "see table thread"},
		{"external hexalobular", "external hexalobular socket, E size", "a 12-point socket rounds it", "M8: E10", fromMemory},
		{"cross recess type H (PH)", "cross-head screwdriver or bit, PH0 to PH4", "a PZ driver rocks in it", "M4 pan head: PH2", "see table thread"},
		{"cross recess type Z (PZ)", "cross-head screwdriver or bit, PZ0 to PZ4", "a PH driver slips; the screw shows four thin marks between the arms", "M5: PZ2", "see table thread"},
		{"cross recess with a dot (Japanese vehicles)", "a driver marked JIS, or a good PH driver by ISO 8764", "sources disagree: press says a PH driver slips, a history of the standards says they were made one", "a dot on the head marks a metric thread", "press and a hobby article, which disagree"},
		{"slotted", "flat-blade screwdriver as wide as the head", "never as a pry bar", "", driveArticle + common},
		{"internal square", "square driver, #0 to #3", "", "#2 is the most usual", driveArticle + fromMemory},
		{"triple square", "triple-square bit, M5 to M18 (the bit's size, not the thread's)", "looks like a hexalobular, and has twelve points", "", fromMemory},
		{"wheel nut or wheel bolt", "wheel brace or impact socket 17, 19, 21 or 22 mm, and a torque wrench", "crosswise, in steps; check again after a short drive, as the maker says", "M12x1.5: 19 mm", "vehicle handbooks; " + common},
		{"hose clamp, worm drive", "7 or 8 mm nut driver, or a flat-blade screwdriver", "", "8 mm is 5/16 in", fromMemory},
		{"battery terminal", "10 mm spanner; 8 mm or 5/16 in on side posts", "negative off first and on last", "", fromMemory},
		{"spark plug", "spark-plug socket 14, 16, 18 or 21 mm", "", "M14 plug: 16 or 21 mm", fromMemory},
		{"oil drain plug", "spanner 13, 14, 15, 17 or 19 mm, or hex key 6, 8 or 17 mm", "a new sealing washer", "", fromMemory},
		{"blade fuse", "fuse puller", "pliers crack it", "", common},
		{"torque step", "torque wrench whose scale holds the value", "a click wrench is inexact in the lowest fifth of its scale", "45 N·m: a wrench of 20 to 100 N·m", common},
	} {
		t.Rows = append(t.Rows, Row{Cells: []string{r[0], r[1], r[2], r[3]}, Source: r[4]})
	}
	return t
}

// lobeTable is the size across the points of hexalobulars, to tell one from the
// next with a calliper.
func lobeTable() Table {
	t := Table{Title: "Hexalobular sizes, mm across the points", Columns: []string{"Size", "Kind", "Across, mm"},
		Notes: []string{"T40 to T50 and their neighbours look alike: a size too small fits loosely and rounds the screw."}}
	inside := []struct {
		size   string
		across float64
	}{{"T6", 1.75}, {"T8", 2.4}, {"T10", 2.8}, {"T15", 3.35}, {"T20", 3.95}, {"T25", 4.5}, {"T27", 5.07}, {"T30", 5.6}, {"T40", 6.75}, {"T45", 7.93},
		{"T50", 8.95}, {"T55", 11.35}, {"T60", 13.45}, {"T70", 15.7}, {"T80", 17.75}, {"T90", 20.2}, {"T100", 22.4}}
	for _, s := range inside {
		t.Rows = append(t.Rows, Row{Cells: []string{s.size, Hexalobular, formatNumber(s.across)}, Source: "ISO 10664 (two open libraries of standard parts agree but for T27)", keys: []string{strings.ToLower(s.size)}, numbers: []Quantity{{Number: s.across, Unit: Millimetre}}})
	}
	outside := []struct {
		size   string
		across float64
	}{{"E4", 3.8}, {"E5", 4.7}, {"E6", 5.6}, {"E7", 6.1}, {"E8", 7.4}, {"E10", 9.3}, {"E12", 11.1}, {"E14", 12.8}, {"E16", 14.7}, {"E18", 16.6}, {"E20", 18.4}, {"E24", 22.1}}
	for _, s := range outside {
		t.Rows = append(t.Rows, Row{Cells: []string{s.size, HexalobularOutside, formatNumber(s.across)}, Source: "a vendor's page, the only source", keys: []string{strings.ToLower(s.size)}, numbers: []Quantity{{Number: s.across, Unit: Millimetre}}})
	}
	return t
}

func proofTable() Table {
	t := Table{Title: "Torque that a hex key or spanner is proved to", Columns: []string{"Tool", "Size", "Torque, N·m"},
		Notes: []string{"A step's torque above this wants another tool, or is a slip of the unit."}}
	add := func(tool string, rows []proofRow, source string) {
		for _, r := range rows {
			t.Rows = append(t.Rows, Row{Cells: []string{tool, fmt.Sprintf("%s mm", formatNumber(r.size)), formatNumber(r.torque)}, Source: source, numbers: []Quantity{{Number: r.size, Unit: Millimetre}}})
		}
	}
	add("hex key", keyProof, keyProofSource)
	add("spanner", spannerProof, spannerSource)
	return t
}
