package trade

import (
	"math"
	"slices"
	"strings"
	"unicode"
)

// Table is one table of the package in a form that any reader can print: every
// row names its source, and where standards differ each row names its own.
type Table struct {
	Name    string   `json:"name"`  // one word: "thread"
	Title   string   `json:"title"` // a heading
	Columns []string `json:"columns"`
	Rows    []Row    `json:"rows"`
	Notes   []string `json:"notes"`

	answer func(*question) Table // works out what no row holds; nil: nothing
	bare   Unit                  // what a figure without a unit means to it
}

// Row is one row; Cells[i] belongs to Columns[i].
type Row struct {
	Cells  []string `json:"cells"`
	Source string   `json:"source"`

	keys    []string   // lower case: what finds the row beside the words of its cells
	numbers []Quantity // the figures by which the row is looked up
	band    band       // figures in here find the row too
}

// band is a stretch of figures, both ends in it; the zero band holds none.
type band struct {
	low, high float64
	unit      Unit
}

func (b band) holds(q Quantity) bool {
	v, ok := figureIn(q, Quantity{Unit: b.unit})
	return ok && b != (band{}) && v >= b.low && v <= b.high
}

// tables makes every table, in the order a technician meets them.
var tables = []struct {
	name string
	make func() Table
}{
	{"thread", threadTable}, {"torque", torqueTable}, {"class", classTable}, {"head", headTable}, {"hexalobular", lobeTable}, {"proof", proofTable},
	{"fuse", fuseTable}, {"wire", wireTable}, {"battery", batteryTable}, {"charging", chargingTable}, {"voltage", voltageTable},
	{"practice", practiceTable}, {"noise", noiseTable}, {"sound", soundTable}, {"pressure", pressureTable}, {"unit", unitTable},
}

// Tables lists every table.
func Tables() []Table {
	list := make([]Table, len(tables))
	for i, t := range tables {
		list[i] = t.make()
		list[i].Name = t.name
	}
	return list
}

// TableNamed finds a table by its name, in the singular or plural.
func TableNamed(name string) (Table, bool) {
	want := strings.ToLower(strings.TrimSpace(name))
	for _, t := range tables {
		if want == t.name || want == t.name+"s" || want == t.name+"es" || want == strings.TrimSuffix(t.name, "y")+"ies" {
			made := t.make()
			made.Name = t.name
			return made, true
		}
	}
	return Table{}, false
}

// Find lists the rows that a key names: "M8", "m8 x 1", "15", "15 A mini",
// "1.5 mm²", "AWG 16", "blue", "psi". Every word and figure of the key must fit
// the row. A figure between two rows gives the rows on either side. An empty
// key gives all rows.
func (t Table) Find(key string) []Row {
	key = strings.TrimSpace(key)
	if key == "" {
		return slices.Clone(t.Rows)
	}
	if len(key) > maxMeasure {
		return nil
	}
	for _, k := range wholeKeys(key) {
		if found := t.where(func(r Row) bool { return slices.Contains(r.keys, k) }); found != nil {
			return found
		}
	}
	terms := readTerms(key)
	if found := t.where(func(r Row) bool { return !slices.ContainsFunc(terms, func(term term) bool { return !r.fits(term) }) }); found != nil {
		return found
	}
	if len(terms) == 1 && terms[0].isNumber {
		return t.around(terms[0].q)
	}
	return nil
}

func (t Table) where(fits func(Row) bool) []Row {
	var found []Row
	for _, r := range t.Rows {
		if fits(r) {
			found = append(found, r)
		}
	}
	return found
}

// wholeKeys are the forms in which a key may stand among a row's keys.
func wholeKeys(key string) []string {
	if t, ok := ParseThread(key); ok {
		if t.Coarse {
			return []string{strings.ToLower(t.Size)}
		}
		return []string{strings.ToLower(t.Name)}
	}
	return []string{strings.ToLower(unitKey(key)), strings.ToLower(key)}
}

// term is one word or figure of a key.
type term struct {
	word     string
	q        Quantity // Unit empty where none was written
	isNumber bool
}

// readTerms splits a key; a figure takes the unit that follows it.
func readTerms(key string) []term {
	fields := strings.Fields(key)
	var terms []term
	for i := 0; i < len(fields); i++ {
		if i+1 < len(fields) {
			if q, err := ParseQuantity(fields[i] + " " + fields[i+1]); err == nil {
				terms = append(terms, term{q: q, isNumber: true})
				i++
				continue
			}
		}
		if q, err := ParseQuantity(fields[i]); err == nil {
			terms = append(terms, term{q: q, isNumber: true})
			continue
		}
		if n, rest, err := scanNumber(fields[i]); err == nil && rest == "" && !n.aught {
			terms = append(terms, term{q: Quantity{Number: n.value}, isNumber: true, word: fields[i]})
			continue
		}
		terms = append(terms, term{word: strings.ToLower(fields[i])})
	}
	return terms
}

// fits says whether a row has the term: as a figure it is looked up by, or as a
// word of its cells. A word of three letters or more may be a word's start.
func (r Row) fits(t term) bool {
	if t.isNumber && (r.band.holds(t.q) || slices.ContainsFunc(r.numbers, func(q Quantity) bool { return atFigure(t.q, q) })) {
		return true
	}
	if t.word == "" {
		return false
	}
	for _, cell := range r.Cells {
		for _, w := range strings.FieldsFunc(strings.ToLower(cell), isBetweenWords) {
			if w == t.word || len(t.word) >= 3 && !t.isNumber && strings.HasPrefix(w, t.word) {
				return true
			}
		}
	}
	return false
}

// isBetweenWords holds for what separates the words of a cell.
func isBetweenWords(r rune) bool { return unicode.IsSpace(r) || strings.ContainsRune(",;()", r) }

// atFigure holds where a key's figure is the row's, in the key's unit if it has
// one.
func atFigure(key, row Quantity) bool {
	if key.Unit == "" {
		return same(key.Number, row.Number)
	}
	in, ok := key.In(row.Unit)
	return ok && math.Abs(in.Number-row.Number) <= 1e-6*math.Abs(row.Number)
}

// around lists the rows whose figures stand next to one that no row has, below
// and above.
func (t Table) around(key Quantity) []Row {
	below, above := math.Inf(-1), math.Inf(1)
	for _, r := range t.Rows {
		for _, q := range r.numbers {
			if v, ok := figureIn(key, q); ok {
				if v <= q.Number {
					above = min(above, q.Number)
				}
				if v >= q.Number {
					below = max(below, q.Number)
				}
			}
		}
	}
	return t.where(func(r Row) bool {
		return slices.ContainsFunc(r.numbers, func(q Quantity) bool {
			_, ok := figureIn(key, q)
			return ok && (q.Number == below || q.Number == above)
		})
	})
}

// figureIn is a key's figure in a row's unit.
func figureIn(key, row Quantity) (float64, bool) {
	if key.Unit == "" {
		return key.Number, row.Unit != Gauge // a bare figure between two gauges means mm²
	}
	in, ok := key.In(row.Unit)
	return in.Number, ok
}

// figures prints a computed figure with three significant digits.
func figures(v float64) string {
	if v == 0 {
		return "0"
	}
	scale := math.Pow(10, float64(2-exponent10(v, 3)))
	return formatNumber(math.Round(v*scale) / scale)
}

// orDash prints a figure of a table, or a dash where the table has none.
func orDash(v float64) string {
	if v == 0 {
		return "-"
	}
	return formatNumber(v)
}
