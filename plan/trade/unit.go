package trade

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"
)

// Unit is a unit's printed symbol in our one spelling: "mm", "N·m", "°C",
// "dB(A)". The zero Unit is none.
type Unit string

// Dimension is what a unit measures: "length", "torque". Quantities convert
// only within one dimension. Torque is not energy here, and a level in dB(A)
// is not one in dB.
type Dimension string

// The dimensions of the units in Units.
const (
	Length      Dimension = "length"
	Area        Dimension = "area"
	Volume      Dimension = "volume"
	Mass        Dimension = "mass"
	Force       Dimension = "force"
	Torque      Dimension = "torque"
	Pressure    Dimension = "pressure"
	Voltage     Dimension = "voltage"
	Current     Dimension = "current"
	Resistance  Dimension = "resistance"
	Capacitance Dimension = "capacitance"
	Inductance  Dimension = "inductance"
	Charge      Dimension = "charge"
	Energy      Dimension = "energy"
	Power       Dimension = "power"
	Frequency   Dimension = "frequency"
	Rotation    Dimension = "rotational speed"
	Temperature Dimension = "temperature"
	Time        Dimension = "time"
	Angle       Dimension = "angle"
	Speed       Dimension = "speed"
	Flow        Dimension = "flow"
	SoundLevel  Dimension = "sound level"
	Level       Dimension = "level"
	Ratio       Dimension = "ratio"
	Light       Dimension = "luminous flux"
	Lighting    Dimension = "illuminance"
	SpringRate  Dimension = "spring rate"
)

// Units that code elsewhere in the package names.
const (
	Millimetre  Unit = "mm"
	Inch        Unit = "in"
	SquareMM    Unit = "mm²"
	NewtonMetre Unit = "N·m"
	PoundFoot   Unit = "lb·ft"
	PoundInch   Unit = "lb·in"
	Volt        Unit = "V"
	Ampere      Unit = "A"
	Kilopascal  Unit = "kPa"
	Minute      Unit = "min"
	DecibelA    Unit = "dB(A)"
	Gauge       Unit = "AWG"
	Percent     Unit = "%"
	Degree      Unit = "°"
	Celsius     Unit = "°C"
)

// UnitRow is one unit: a quantity of n units is n×Factor + Offset in the unit
// SI. Gauge has no factor: its section follows from GaugeSection.
type UnitRow struct {
	Unit      Unit
	Dimension Dimension
	SI        Unit // the coherent unit of the dimension
	Factor    float64
	Offset    float64
	One, Many string // spoken, British spelling
	Source    string

	symbols []string // other spellings in which a leading m or M keeps its meaning
	words   []string // other spellings in which letter case says nothing
}

// Units lists every unit, by dimension.
func Units() []UnitRow {
	rows := slices.Clone(unitRows)
	for i := range rows {
		rows[i].symbols, rows[i].words = slices.Clone(rows[i].symbols), slices.Clone(rows[i].words)
	}
	return rows
}

// LookupUnit finds the unit behind a spelling: "Nm", "N.m", "newton metres",
// "ft-lb", "degC", "amps", and "mil" as it is spoken, for a millimetre. Letter
// case is forgiven where it cannot change the meaning ("KPA") and held where it
// does ("MA" is not "mA", "S" is not "s"). Full stops, hyphens and spaces
// inside a spelling count alike. "V AC" and "V DC" give "V".
func LookupUnit(spelling string) (Unit, bool) {
	if len(spelling) > maxSpelling || spellings().misses(spelling) {
		return "", false
	}
	key := unitKey(spelling)
	if u, ok := lookupKey(key); ok {
		return u, true
	}
	if joined := strings.ReplaceAll(key, "·", ""); joined != key { // "r.p.m.", "k Ω"
		return lookupKey(joined)
	}
	return "", false
}

func lookupKey(key string) (Unit, bool) {
	m, ok := spellings().meanings[strings.ToLower(key)]
	if !ok {
		return "", false
	}
	for _, e := range m.symbols {
		if e.key == key {
			return e.unit, true
		}
	}
	if m.word != "" {
		return m.word, true
	}
	return m.symbols[0].unit, sameMeaning(key, m.symbols[0].key)
}

// Dimension is what the unit measures, empty for a unit not in Units.
func (u Unit) Dimension() Dimension {
	row, _ := u.row()
	return row.Dimension
}

// Spoken is the unit as it is said after the number: "newton metre" after 1 and
// -1, "newton metres" after any other. An unknown unit is said as it is
// written.
func (u Unit) Spoken(number float64) string {
	row, ok := u.row()
	switch {
	case !ok:
		return string(u)
	case math.Abs(number) == 1:
		return row.One
	}
	return row.Many
}

func (u Unit) row() (UnitRow, bool) {
	i, ok := spellings().rows[u]
	if !ok {
		return UnitRow{}, false
	}
	return unitRows[i], true
}

// isWord holds for units printed as a word, which take a plural: "2 turns".
func (r UnitRow) isWord() bool { return string(r.Unit) == r.One && r.Many != r.One }

// maxSpelling bounds what LookupUnit reads, in bytes; the longest spelling has
// about forty.
const maxSpelling = 80

// meaning is what a spelling stands for, in lower case.
type meaning struct {
	word    Unit // where letter case says nothing
	symbols []symbolEntry
}

type symbolEntry struct {
	key  string
	unit Unit
}

type spellingBook struct {
	rows     map[Unit]int
	meanings map[string]meaning

	lengths ['z' + 1]uint64 // of the spellings in plain letters, a bit each, by first letter in lower case
}

// misses says that a word in plain letters is no unit: most that are asked about
// are none, and their length and first letter show it. It may miss saying so.
func (b *spellingBook) misses(word string) bool {
	for i := range len(word) {
		if c := word[i] | 0x20; c < 'a' || c > 'z' {
			return false
		}
	}
	return word != "" && len(word) < 64 && b.lengths[word[0]|0x20]&(1<<len(word)) == 0
}

var spellings = sync.OnceValue(func() *spellingBook {
	const about = 700 // spellings: room that need not grow
	b := &spellingBook{rows: make(map[Unit]int, len(unitRows)), meanings: make(map[string]meaning, about)}
	symbols := make([]symbolEntry, 0, about)
	for i := range unitRows {
		b.rows[unitRows[i].Unit] = i
		unitRows[i].spellings(func(key string, isWord bool) {
			lower := strings.ToLower(key)
			m := b.meanings[lower]
			switch {
			case isWord:
				m.word = unitRows[i].Unit
			case m.symbols == nil: // most have one
				symbols = append(symbols, symbolEntry{key, unitRows[i].Unit})
				m.symbols = symbols[len(symbols)-1 : len(symbols) : len(symbols)]
			default:
				m.symbols = append(m.symbols, symbolEntry{key, unitRows[i].Unit})
			}
			b.meanings[lower] = m
			if first := lower[0]; len(lower) < 64 && first <= 'z' {
				b.lengths[first] |= 1 << len(lower)
			}
		})
	}
	return b
})

// spellings hands over every spelling of the unit by its key: symbols, then
// words, which are in lower case.
func (r *UnitRow) spellings(each func(key string, isWord bool)) {
	each(unitKey(string(r.Unit)), false)
	for _, s := range r.symbols {
		each(unitKey(s), false)
	}
	each(strings.ToLower(unitKey(r.One)), true)
	each(strings.ToLower(unitKey(r.Many)), true)
	for _, s := range r.words {
		each(strings.ToLower(unitKey(s)), true)
	}
}

// sameMeaning says whether a spelling that differs from a symbol by letter case
// alone still means it: milli is not mega, and a single letter is a unit of its
// own in either case but for those listed.
func sameMeaning(spelling, symbol string) bool {
	first, size := utf8.DecodeRuneInString(symbol)
	if size == len(symbol) {
		return strings.ContainsRune("VAWLJΩ", first)
	}
	if first == 'm' || first == 'M' {
		return strings.HasPrefix(spelling, string(first))
	}
	return spelling != "pA" // a picoampere, not a pascal
}

// keyFolder brings the code points that keyboards and editors mix up to one.
// The order matters: longer spellings first.
var keyFolder = strings.NewReplacer(
	"℃", "°C", "℉", "°F", "º", "°", "˚", "°", "∘", "°",
	"Ω", "Ω", // U+2126 OHM SIGN to U+03A9
	"µ", "μ", // U+00B5 MICRO SIGN to U+03BC
	"²", "2", "³", "3", "₂", "2", "^", "",
	"⋅", "·", "•", "·", "∙", "·", "‧", "·", "*", "·", ".", "·", "-", "·", "‑", "·", "_", "·", "×", "·",
	" ", "·", "\u00a0", "·", "\u2009", "·", "\u202f", "·", "\t", "·",
	"″", `"`, "”", `"`, "“", `"`, "''", `"`, "′", "'", "’", "'",
)

// unitKey is the spelling with its separators made one and its look-alike
// characters folded.
func unitKey(spelling string) string {
	if isPlain(spelling) {
		return spelling
	}
	key := keyFolder.Replace(strings.TrimSpace(spelling))
	for strings.Contains(key, "··") {
		key = strings.ReplaceAll(key, "··", "·")
	}
	return strings.Trim(key, "·")
}

// isPlain holds for letters and digits, which are folded to nothing else.
func isPlain(spelling string) bool {
	for i := range len(spelling) {
		if c := spelling[i]; (c|0x20 < 'a' || c|0x20 > 'z') && (c < '0' || c > '9') {
			return false
		}
	}
	return true
}

// choices are words for which one must say which of several units is meant.
var choices = map[string]string{
	"gal": `"US gal" or "imp gal"`, "gallon": `"US gal" or "imp gal"`, "gallons": `"US gal" or "imp gal"`,
	"pt": `"US pt" or "imp pt"`, "pint": `"US pt" or "imp pt"`, "pints": `"US pt" or "imp pt"`,
	"fl·oz": `"US fl oz" or "imp fl oz"`, "fluid·ounce": `"US fl oz" or "imp fl oz"`, "fluid·ounces": `"US fl oz" or "imp fl oz"`,
	"ton": `"t" (1000 kg) or the weight in lb`, "tons": `"t" (1000 kg) or the weight in lb`,
	"k": `"kΩ", or "K" for kelvin`,
}

// unknownUnit explains that a spelling is no unit and names what to write.
func unknownUnit(spelling string) error {
	key := strings.ToLower(unitKey(spelling))
	if c, ok := choices[key]; ok {
		return fmt.Errorf("%q can mean several units; write %s", shorten(spelling), c)
	}
	if m := spellings().meanings[key]; m.symbols != nil {
		return fmt.Errorf("%q is no unit known here; letter case matters: did you mean %q", shorten(spelling), string(m.symbols[0].unit))
	}
	if u, ok := nearestUnit(key); ok {
		return fmt.Errorf("%q is no unit known here; did you mean %q", shorten(spelling), string(u))
	}
	return fmt.Errorf("%q is no unit known here; write one like mm, N·m, V, A, Ω, bar, °C, L, kg or min", shorten(spelling))
}

// nearestUnit is the first unit that has a spelling one letter away, rather one
// that starts alike, for spellings of at least three letters.
func nearestUnit(key string) (Unit, bool) {
	if n := utf8.RuneCountInString(key); n < 3 || n > maxSpelling {
		return "", false
	}
	var first, second Unit
	for i := range unitRows {
		unitRows[i].spellings(func(other string, _ bool) {
			switch other = strings.ToLower(other); {
			case !oneApart(key, other):
			case key[0] == other[0]:
				first = cmp.Or(first, unitRows[i].Unit)
			default:
				second = cmp.Or(second, unitRows[i].Unit)
			}
		})
	}
	nearest := cmp.Or(first, second)
	return nearest, nearest != ""
}

// oneApart holds for words that one insertion, deletion, replacement or swap of
// neighbours makes alike.
func oneApart(a, b string) bool {
	x, y := []rune(a), []rune(b)
	if len(x) > len(y) {
		x, y = y, x
	}
	if len(y)-len(x) > 1 || len(y) < 3 {
		return false
	}
	i := 0
	for i < len(x) && x[i] == y[i] {
		i++
	}
	if len(x) < len(y) {
		return slices.Equal(x[i:], y[i+1:])
	}
	if i == len(x) {
		return true
	}
	swapped := i+1 < len(x) && x[i] == y[i+1] && x[i+1] == y[i] && slices.Equal(x[i+2:], y[i+2:])
	return swapped || slices.Equal(x[i+1:], y[i+1:])
}

// shorten keeps a message readable whatever it quotes.
func shorten(s string) string {
	const most = 40
	s = strings.TrimSpace(s)
	n := 0
	for i := range s {
		if n++; n > most {
			return s[:i] + "…"
		}
	}
	return s
}
