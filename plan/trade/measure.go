package trade

import "math"

// Shape says what kind of statement a Measure makes.
type Shape int

// The shapes of a Measure. The zero Measure is no words.
const (
	Words     Shape = iota // "hand tight, then a quarter turn"
	Exact                  // "3 N·m", "about 12 V"
	Range                  // "10..20 Ω"
	Tolerance              // "12 ± 0.5 V"
	AtMost                 // "at most 0.2 V", "under 0.2 V"
	AtLeast                // "at least 9.6 V", "over 9.6 V"
	Open                   // "?": to be found
)

// Measure is what a reading should be: a value, a range, a limit, or words.
// All its numbers are in Unit, but for Allowance, which is in AllowanceUnit.
//
//	Exact      Nominal; Low and High are the same
//	Range      Low, High; Nominal is halfway
//	Tolerance  Nominal, Allowance; Low and High follow from them
//	AtMost     High
//	AtLeast    Low
type Measure struct {
	Shape         Shape
	Text          string // as its author wrote it
	Nominal       float64
	Low, High     float64
	Allowance     float64
	Unit          Unit
	AllowanceUnit Unit   // of a Tolerance: Unit, Percent, or another of its dimension
	Flow          string // "AC" or "DC" where it was written
	About         bool   // "about": an Exact or Range that is meant loosely
	Strict        bool   // "under", "over": the limit itself is outside

	first, second string // the numbers as written
}

// looseness is how far a value called "about" may lie off, as a share of it.
// Common practice, no source.
const looseness = 0.1

// String is the printed form: "10 to 20 Ω", "12 ± 0.5 V", "at most 0.2 V", the
// words, "to be found" for Open. ParseMeasure reads it back to an equal
// Measure.
func (m Measure) String() string {
	var s string
	switch m.Shape {
	case Open:
		return openText
	case Exact:
		s = withUnit(m.text(m.first, m.Nominal), m.Nominal, m.Unit)
	case Range:
		s = m.text(m.first, m.Low) + " to " + m.withUnit(m.text(m.second, m.High), m.High)
	case Tolerance:
		s = m.tolerance()
	case AtMost:
		s = choose(m.Strict, "under ", "at most ") + withUnit(m.text(m.first, m.High), m.High, m.Unit)
	case AtLeast:
		s = choose(m.Strict, "over ", "at least ") + withUnit(m.text(m.first, m.Low), m.Low, m.Unit)
	default:
		return m.Text
	}
	if m.About {
		s = "about " + s
	}
	if m.Flow != "" {
		s += " " + m.Flow
	}
	return s
}

func choose(cond bool, yes, no string) string {
	if cond {
		return yes
	}
	return no
}

// text is a number as it was written, else its shortest form.
func (m Measure) text(written string, n float64) string {
	return Quantity{n, m.Unit, written}.numberText()
}

// withUnit is withUnit with the gauge after the number, where it must stand for
// two numbers: "14 to 18 AWG".
func (m Measure) withUnit(text string, n float64) string {
	if m.Unit == Gauge {
		return text + " " + string(Gauge)
	}
	if row, ok := m.Unit.row(); ok && row.isWord() {
		return text + " " + row.Many
	}
	return withUnit(text, n, m.Unit)
}

func (m Measure) tolerance() string {
	nominal := m.text(m.first, m.Nominal)
	allowance := Quantity{m.Allowance, m.AllowanceUnit, m.second}
	if m.AllowanceUnit == m.Unit {
		return nominal + " ± " + m.withUnit(allowance.numberText(), m.Allowance)
	}
	return withUnit(nominal, m.Nominal, m.Unit) + " ± " + allowance.String()
}

// Contains says whether a reading meets the measure. A reading in another
// dimension, and any reading of words or an open value, does not. Against an
// Exact in another unit a reading agrees when rounding of either explains the
// difference: 3 N·m and 2.2 lb·ft.
func (m Measure) Contains(q Quantity) bool {
	in, ok := q.In(m.Unit)
	if !ok {
		return false
	}
	v, slack := in.Number, 0.0
	if m.About {
		slack = looseness * max(math.Abs(m.Low), math.Abs(m.High))
	}
	switch m.Shape {
	case Exact:
		if q.Unit != m.Unit && !m.About {
			slack = max(halfPlace(m.text(m.first, m.Nominal)), m.halfPlaceOf(q))
		}
		return same(v, m.Nominal) || math.Abs(v-m.Nominal) <= slack
	case Range, Tolerance:
		low, high := min(m.Low, m.High)-slack, max(m.Low, m.High)+slack
		return v >= low && v <= high || same(v, low) || same(v, high)
	case AtMost:
		return v < m.High && !same(v, m.High) || !m.Strict && same(v, m.High)
	case AtLeast:
		return v > m.Low && !same(v, m.Low) || !m.Strict && same(v, m.Low)
	}
	return false
}

// halfPlace is half a unit of the last figure of a number as written.
func halfPlace(text string) float64 {
	_, decimals := writtenFigures(text)
	return 0.5 * math.Pow(10, float64(-decimals))
}

// halfPlaceOf is halfPlace of a reading, in the measure's unit.
func (m Measure) halfPlaceOf(q Quantity) float64 {
	d, _ := difference(halfPlace(q.numberText()), q.Unit, m.Unit)
	return d
}

// Quantities are the numbers the measure states: the ends of a range, nominal
// and allowance of a tolerance, the limit, the value; none for words and open
// values.
func (m Measure) Quantities() []Quantity {
	switch m.Shape {
	case Exact:
		return []Quantity{{m.Nominal, m.Unit, m.first}}
	case Range:
		return []Quantity{{m.Low, m.Unit, m.first}, {m.High, m.Unit, m.second}}
	case Tolerance:
		return []Quantity{{m.Nominal, m.Unit, m.first}, {m.Allowance, m.AllowanceUnit, m.second}}
	case AtMost:
		return []Quantity{{m.High, m.Unit, m.first}}
	case AtLeast:
		return []Quantity{{m.Low, m.Unit, m.first}}
	}
	return nil
}

// Measured holds for every shape that states a number.
func (m Measure) Measured() bool { return m.Shape != Words && m.Shape != Open }

// Exactly is the number of a value that is neither a range nor a limit, in a unit;
// false for any other.
func (m Measure) Exactly(u Unit) (float64, bool) {
	if m.Shape != Exact {
		return 0, false
	}
	q, ok := Quantity{Number: m.Nominal, Unit: m.Unit}.In(u)
	return q.Number, ok
}

// Equal holds for measures that state the same, however they were written.
func (m Measure) Equal(o Measure) bool {
	if m.Shape != o.Shape {
		return false
	}
	switch m.Shape {
	case Words:
		return m.Text == o.Text
	case Open:
		return true
	}
	return m.Unit == o.Unit && m.AllowanceUnit == o.AllowanceUnit && m.Flow == o.Flow &&
		m.About == o.About && m.Strict == o.Strict &&
		same(m.Nominal, o.Nominal) && same(m.Low, o.Low) && same(m.High, o.High) && same(m.Allowance, o.Allowance)
}
