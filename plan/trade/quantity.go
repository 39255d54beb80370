package trade

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Quantity is a number with its unit. One made by ParseQuantity prints as its
// author wrote the number: "3.0 N·m" stays "3.0 N·m".
type Quantity struct {
	Number float64
	Unit   Unit

	written string
}

// errUnitMissing is in the chain of the error for a number without a unit, so
// that a reader may take a bare count for words where that is welcome.
var errUnitMissing = errors.New("unit missing")

// unitMissing is errUnitMissing with the text it is about.
type unitMissing struct{ text string }

func (e unitMissing) Error() string {
	return fmt.Sprintf("%q has no unit; write the unit after the number, like \"12 mm\", \"12 N·m\", \"12 V\", \"12 A\" or \"12 bar\"; a mark in words, like \"marked 12\"", shorten(e.text))
}

func (unitMissing) Unwrap() error { return errUnitMissing }

// ParseQuantity reads "3 N·m", "1/2 in", "1 1/2 in", "-40 °C", "16 AWG" and
// "AWG 1/0". The error says what to write for a missing or unknown unit, a
// decimal comma, NaN, infinity, or a negative value of something that has none.
func ParseQuantity(s string) (Quantity, error) {
	text := gaugeLast(strings.TrimSpace(s))
	n, rest, err := scanNumber(text)
	if errors.Is(err, errNoNumber) {
		return Quantity{}, fmt.Errorf("%q is no quantity; write a number and its unit, like \"3 N·m\"", shorten(s))
	}
	if err != nil {
		return Quantity{}, err
	}
	spelling := strings.TrimSpace(rest)
	if spelling == "" {
		return Quantity{}, unitMissing{text}
	}
	u, ok := LookupUnit(spelling)
	if !ok && isPower(spelling) {
		return Quantity{}, powerOfTen(text)
	}
	if !ok {
		return Quantity{}, unknownUnit(spelling)
	}
	return newQuantity(n, u)
}

// isPower holds for "e3 N·m", what follows the number in "1.5e3 N·m": no sheet
// of a maker prints it, and it would pass for words.
func isPower(spelling string) bool {
	power, unit, _ := strings.Cut(spelling, " ")
	digits := strings.TrimLeft(strings.TrimLeft(power, "eE"), "+-")
	_, known := LookupUnit(strings.TrimSpace(unit))
	return known && strings.ContainsRune("eE", rune(power[0])) && digits != "" && strings.Trim(digits, "0123456789") == ""
}

func powerOfTen(text string) error {
	return fmt.Errorf("%q has a power of ten; write the number out", shorten(text))
}

// gaugeLast turns "AWG 16" into "16 AWG", so that one reader does for both.
func gaugeLast(s string) string {
	if len(s) > 3 && strings.EqualFold(s[:3], string(Gauge)) {
		if rest := strings.TrimLeft(s[3:], " -"); rest != "" && '0' <= rest[0] && rest[0] <= '9' {
			return rest + " " + string(Gauge)
		}
	}
	return s
}

// newQuantity joins a number and its unit and refuses what cannot be.
func newQuantity(n number, u Unit) (Quantity, error) {
	if u == Gauge {
		return newGauge(n)
	}
	q := Quantity{n.value, u, n.written}
	if n.aught {
		return Quantity{}, fmt.Errorf("%q divides by zero; only a wire gauge is written so, as \"AWG %s\"", shorten(n.written), shorten(n.written))
	}
	row, _ := u.row()
	switch {
	case row.Dimension == Temperature && n.value*row.Factor+row.Offset < -1e-9:
		return Quantity{}, fmt.Errorf("%q is below absolute zero; check the number and the unit", shorten(q.String()))
	case math.Signbit(n.value) && !row.Dimension.goesBelowZero():
		return Quantity{}, fmt.Errorf("%q is negative; a %s is zero or more", shorten(q.String()), row.Dimension)
	}
	return q, nil
}

// newGauge reads the number of a wire gauge: 16, 1/0 (number 0), 000 (number
// -2). ASTM B258 runs from 4/0 to 50 or so.
func newGauge(n number) (Quantity, error) {
	if len(n.written) > 1 && strings.Trim(n.written, "0") == "" {
		n.value = 1 - float64(len(n.written))
	}
	isWhole := n.aught || strings.Trim(n.written, "0123456789") == "" // not "16.0", not "32/2"
	if !isWhole || n.value < -3 || n.value > 56 {
		return Quantity{}, fmt.Errorf("there is no wire gauge %q; they run from \"AWG 4/0\" to \"AWG 56\"", shorten(n.written))
	}
	return Quantity{n.value, Gauge, n.written}, nil
}

// goesBelowZero holds for what can be negative on a meter, a gauge or a scale.
func (d Dimension) goesBelowZero() bool {
	switch d {
	case Temperature, Voltage, Current, Pressure, Angle, Ratio, Level, SoundLevel, Power:
		return true
	}
	return false
}

// In is the quantity in another unit; false where the dimensions differ or a
// unit is unknown. A wire gauge converts to its solid section (ASTM B258).
func (q Quantity) In(u Unit) (Quantity, bool) {
	from, ok1 := q.Unit.row()
	to, ok2 := u.row()
	if !ok1 || !ok2 || from.Dimension != to.Dimension {
		return Quantity{}, false
	}
	if q.Unit == u {
		return q, true
	}
	v := to.fromSI(from.toSI(q.Number))
	if math.IsInf(v, 0) || math.IsNaN(v) { // no gauge has a section of zero
		return Quantity{}, false
	}
	return Quantity{Number: v, Unit: u}, true
}

func (r UnitRow) toSI(n float64) float64 {
	if r.Unit == Gauge {
		return GaugeSection(n) * 1e-6
	}
	return n*r.Factor + r.Offset
}

func (r UnitRow) fromSI(v float64) float64 {
	if r.Unit == Gauge {
		return GaugeOf(v * 1e6)
	}
	return (v - r.Offset) / r.Factor
}

// difference converts a difference of two values from one unit to another: 5 K
// are 9 °F, whatever the scales' zeros.
func difference(n float64, from, to Unit) (float64, bool) {
	a, ok1 := from.row()
	b, ok2 := to.row()
	if !ok1 || !ok2 || a.Dimension != b.Dimension || from == Gauge && to != Gauge || to == Gauge && from != Gauge {
		return 0, false
	}
	if from == to {
		return n, true
	}
	return n * a.Factor / b.Factor, true
}

// GaugeSection is the section in mm² of a solid wire of that American gauge;
// 1/0 is gauge 0, 4/0 is -3. Source: ASTM B258.
func GaugeSection(awg float64) float64 {
	d := GaugeDiameter(awg)
	return math.Pi / 4 * d * d
}

// GaugeDiameter is the diameter in mm of a solid wire of that American gauge:
// 0.127 mm × 92^((36-n)/39). Source: ASTM B258.
func GaugeDiameter(awg float64) float64 {
	return 0.127 * math.Pow(92, (36-awg)/39)
}

// GaugeOf is the American gauge, seldom a whole one, of a section in mm².
func GaugeOf(mm2 float64) float64 {
	d := math.Sqrt(mm2 * 4 / math.Pi)
	return 36 - 39*math.Log(d/0.127)/math.Log(92)
}

// Rounded is the quantity in another unit, for display beside the original: it
// keeps as many significant figures as were written, at least two. A
// temperature keeps its decimals instead, and a wire gauge is a whole number.
func (q Quantity) Rounded(u Unit) (Quantity, bool) {
	r, ok := q.In(u)
	if !ok || q.Unit == u {
		return r, ok
	}
	figures, decimals := writtenFigures(q.numberText())
	switch {
	case u == Gauge:
		decimals = 0
	case u.Dimension() == Temperature: // keeps its decimals
	case r.Number == 0:
		decimals = 0
	default:
		decimals = max(2, figures) - 1 - exponent10(r.Number, max(2, figures))
	}
	if decimals < 0 {
		scale := math.Pow(10, float64(-decimals))
		r.Number = math.Round(r.Number/scale) * scale
		return r, true
	}
	text := strconv.FormatFloat(r.Number, 'f', decimals, 64)
	r.Number, _ = strconv.ParseFloat(text, 64) // FormatFloat's own text
	if u != Gauge || r.Number > 0 {
		r.written = strings.TrimPrefix(text, "-")
		if r.Number < 0 {
			r.written = "-" + r.written
		}
	}
	return r, true
}

// exponent10 is the power of ten of v's first figure once v is rounded to that
// many figures: 9.96 to two figures starts with a ten.
func exponent10(v float64, figures int) int {
	text := strconv.FormatFloat(v, 'e', figures-1, 64)
	e, _ := strconv.Atoi(text[strings.IndexByte(text, 'e')+1:])
	return e
}

// writtenFigures counts the significant figures and the decimals of a number as
// written. A fraction counts as three figures: "1/2 in" is 12.7 mm.
func writtenFigures(text string) (figures, decimals int) {
	if strings.ContainsRune(text, '/') || strings.ContainsFunc(text, func(r rune) bool { return vulgar[r] != 0 }) {
		return 3, 2
	}
	seen, point := false, false
	for _, r := range text {
		switch {
		case r == '.':
			point = true
			continue
		case r < '0' || r > '9':
			continue
		}
		seen = seen || r != '0'
		if seen {
			figures++
		}
		if point {
			decimals++
		}
	}
	return min(figures, 12), min(decimals, 12)
}

// numberText is the number as its author wrote it, else the shortest form.
func (q Quantity) numberText() string {
	if q.written != "" {
		return q.written
	}
	if q.Unit == Gauge && q.Number <= 0 && q.Number == math.Trunc(q.Number) {
		return formatNumber(1-q.Number) + "/0"
	}
	return formatNumber(q.Number)
}

// String is the printed form: "3 N·m", "-40 °C", "50%", "90°", "AWG 16",
// "2 turns".
func (q Quantity) String() string { return withUnit(q.numberText(), q.Number, q.Unit) }

// withUnit sets the unit beside a number as print has it.
func withUnit(text string, n float64, u Unit) string {
	switch u {
	case "":
		return text
	case Percent, Degree:
		return text + string(u)
	case Gauge:
		return string(u) + " " + text
	}
	return text + " " + unitAfter(text, n, u)
}

// unitAfter is the unit's symbol, or the plural of a unit printed as a word; a
// fraction of one takes no plural: "1/4 turn".
func unitAfter(text string, n float64, u Unit) string {
	row, ok := u.row()
	isPart := math.Abs(n) < 1 && !strings.ContainsAny(text, ".") && n != 0
	if ok && row.isWord() && !isPart {
		return u.Spoken(n)
	}
	return string(u)
}
