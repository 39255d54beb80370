package trade

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// Drive is the form and size by which a fastener is turned. It serves both
// sides: what a fastener takes and what a tool turns.
type Drive struct {
	Kind string // one of the kinds below
	Size string // "8 mm", "1/2 in", "T25", "PH2"; empty: any size, or not said
}

// The kinds of drive.
const (
	Hex                = "hex"                  // external hexagon: spanner, socket, nut driver
	HexKey             = "hex key"              // internal hexagon
	Hexalobular        = "hexalobular"          // ISO 10664, T sizes
	HexalobularPin     = "hexalobular with pin" // the same with a pin in the recess: a hollow bit
	HexalobularOutside = "external hexalobular" // E sizes
	CrossH             = "cross recess H"       // ISO 4757 type H, PH sizes
	CrossZ             = "cross recess Z"       // ISO 4757 type Z, PZ sizes
	Slotted            = "slotted"
	Square             = "square"        // internal square, numbers
	TripleSquare       = "triple square" // twelve points inside, M sizes of the bit
	Pentalobular       = "pentalobular"  // five lobes, P sizes
	TriWing            = "tri-wing"      // three wings, Y sizes
)

// String is the printed form: "8 mm", "6 mm hex key", "T25", "PH2", "5.5 mm
// slotted". It reads back to the same Drive.
func (d Drive) String() string {
	switch {
	case d.Size == "":
		return d.Kind
	case d.Kind == HexalobularPin, d.Kind == HexKey, d.Kind == Slotted, d.Kind == Square, d.Kind == TripleSquare:
		return d.Size + " " + d.Kind
	}
	return d.Size
}

// ParseDrive reads a drive as a fastener's drive key has it: "8 mm" (a
// hexagon), "PH2", "T25", "6 mm hex key", "1/2 in", "slotted". A text that
// names no drive, or several, gives false.
func ParseDrive(s string) (Drive, bool) {
	found := ParseDrives(s)
	if len(found) != 1 {
		return Drive{}, false
	}
	return found[0], true
}

// ParseDrives reads the drives of a head that takes several: "8 mm hex / PH2".
// Here "hex socket" means the socket in the screw; in a tool's name it means
// the tool that goes over a nut. A size in brackets repeats the one before.
func ParseDrives(s string) []Drive {
	text := driveText(s)
	if n, ok := plainMillimetres(text); ok {
		return []Drive{{Hex, lengthSize(n, string(Millimetre))}}
	}
	text = socketInside.replaced(text, "hex key")
	if head, rest, ok := strings.Cut(text, "("); ok && strings.TrimSpace(head) != "" {
		_, rest, _ = strings.Cut(rest, ")")
		text = strings.TrimSpace(head + rest)
	}
	return byParts(text, func(part string) []Drive {
		if part == "cross" {
			return []Drive{{Kind: CrossH}}
		}
		found := readDrives(part)
		for _, d := range bareHexagons(part) {
			found = add(found, d)
		}
		return found
	})
}

// plainMillimetres is the figure of a size and nothing else, "8 mm", "5.5 mm":
// as most drives are written, and read without a dozen patterns.
func plainMillimetres(text string) (string, bool) {
	number, ok := strings.CutSuffix(text, "mm")
	number = strings.TrimSuffix(number, " ")
	whole, part, fraction := strings.Cut(number, ".")
	return number, ok && fewDigits(whole) && (!fraction || fewDigits(part))
}

// fewDigits holds for one or two digits.
func fewDigits(s string) bool {
	return (len(s) == 1 || len(s) == 2) && strings.Trim(s, "0123456789") == ""
}

// byParts reads "7 mm hex or slotted" part by part where every part names a
// drive of its own, and as a whole where not: "10 and 13 mm spanners".
func byParts(text string, read func(string) []Drive) []Drive {
	var found []Drive
	parts := strings.Split(partMarks.Replace(text), "\n")
	for _, part := range parts {
		of := read(strings.TrimSpace(part))
		if len(of) == 0 && len(parts) > 1 {
			return read(text)
		}
		for _, d := range of {
			found = add(found, d)
		}
	}
	return found
}

// partMarks makes line ends of what stands between parts, the widest first.
var partMarks = strings.NewReplacer(" or ", "\n", " and ", "\n", " with ", "\n",
	" + ", "\n", " +", "\n", "+ ", "\n", "+", "\n", " & ", "\n", " &", "\n", "& ", "\n", "&", "\n", " / ", "\n", ", ", "\n")

var socketInside = patternOf(`\bhex(?:agon)? socket\b`, "socket")

// Turns says whether a tool of this drive turns a fastener of that one. A tool
// whose size is not said is taken to fit. Hexagons and keys of the other system
// fit where their sizes lie within 0.15 mm: 8 mm and 5/16 in, 19 mm and 3/4 in.
// That margin is common practice, no source.
func (d Drive) Turns(fastener Drive) bool {
	if d.Kind == HexalobularPin && fastener.Kind == Hexalobular {
		d.Kind = Hexalobular // the hollow bit fits a recess without a pin too
	}
	if d.Kind != fastener.Kind {
		return false
	}
	if d.Size == fastener.Size || d.Size == "" || fastener.Size == "" {
		return true
	}
	a, ok1 := d.Millimetres()
	b, ok2 := fastener.Millimetres()
	return ok1 && ok2 && (d.Kind == Hex || d.Kind == HexKey) && math.Abs(a-b) <= interchange
}

const interchange = 0.15 // mm

// Millimetres is the size in mm of a drive whose size is a length.
func (d Drive) Millimetres() (float64, bool) {
	q, err := ParseQuantity(d.Size)
	if err != nil {
		return 0, false
	}
	mm, ok := q.In(Millimetre)
	return mm.Number, ok
}

// maxDriveText bounds what is read for drives, in bytes.
const maxDriveText = 200

// driveText is the text in lower case with its signs made plain, cut to a
// bounded length.
func driveText(s string) string {
	if len(s) > maxDriveText {
		s = strings.ToValidUTF8(s[:maxDriveText], "")
	}
	s = strings.Join(strings.Fields(driveFolder.Replace(strings.ToLower(s))), " ")
	for _, form := range ratchetSquares {
		s = form.replaced(s, " ")
	}
	return strings.Join(strings.Fields(s), " ")
}

var driveFolder = strings.NewReplacer("–", "-", "—", "-", "−", "-", "″", " in ", `"`, " in ", "”", " in ", "\u00a0", " ", "\u202f", " ",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "half inch", "1/2 in", "half-inch", "1/2 in", "three quarter inch", "3/4 in", "three-quarter inch", "3/4 in", "quarter inch", "1/4 in", "quarter-inch", "1/4 in", "three eighths inch", "3/8 in", "three eighth inch", "3/8 in", "five eighths inch", "5/8 in", "millimetre", "mm", "millimeter", "mm", "spark plug", "sparkplug", "spark-plug", "sparkplug", " mil ", " mm ", "№", "no.")

// ratchetSquares are the squares that join ratchet and socket, which turn no
// fastener: "1/2 in drive", "3/8 ratchet", "breaker bar 1/2 in", and an
// extension's length.
var ratchetSquares = []pattern{
	patternOf(`\d+/\d+ *-?(?:in|inch)?[. -]*(?:square )?(?:drive|dr|ratchets?|breaker bar|power bar|impact (?:gun|wrench|driver)|torque wrench|extension)\b`, "/"),
	patternOf(`\b(?:ratchet|breaker bar|power bar|impact (?:gun|wrench|driver)|torque wrench|extension),? \d/\d *(?:in\b|inch)?`, "/"),
	patternOf(`\b\d+ *(?:in|inch|mm) (?:long )?extension\b`, "extension"),
}

// codes are the drives written as letters and a number.
var codes = []struct {
	form pattern
	kind string
	unit string // prefix of the printed size
}{
	{patternOf(`\b(?:tr|tx-?tr|tt|th) ?-?(\d{1,3})h?\b|\bt(?:x|orx)? ?-?(\d{1,3})(?:h\b|(?: |-)?(?:security|tamper\w*|pin|hollow|with pin|hexalobular with pin))|\b(?:security|tamper\w*|hollow|pin-?hole) (?:bit )?(?:torx |star |hexalobular )?t(?:x)?-? ?(\d{1,3})\b`, "tr0", "tt0", "th0", "0h", "secur", "tamper", "pin", "hollow"), HexalobularPin, "T"},
	{patternOf(`\b(?:external (?:torx|hexalobular)|e-?torx|inverted torx|female torx|etx) ?(?:size )?e?-?(\d{1,2})\b|\be-?(\d{1,2})\b`, "external", "torx", "etx", "e0"), HexalobularOutside, "E"},
	{patternOf(`\bt(?:x)?-? ?(\d{1,3})\b|\b(?:torx|hexalobular|star|six-lobe|6-lobe)(?: plus)? ?(?:size |no\.? ?|#)?(\d{1,3})\b`, "t0", "tx0", "torx", "hexalob", "star", "lobe"), Hexalobular, "T"},
	{patternOf(`\bph ?-?#?(0{1,3}|[1-5])\b|\b(?:phill?ips|cross(?:-?head| recess)?)(?: h)? ?(?:size |no\.? ?|#|number )?([0-5])\b|(?:(?:#|no\.? ?|number |size )([0-5]) ?(?:and|or|/|,|&) ?)?(?:#|no\.? ?|number |size )([0-5]) ?(?:phill?ips|cross)`, "ph0", "phil", "cross"), CrossH, "PH"},
	{patternOf(`\bpz ?-?#?(0{1,3}|[1-5])\b|\b(?:posi|pozi)(?:drive?)? ?(?:size |no\.? ?|#|number )?([0-5])\b|(?:(?:#|no\.? ?|number |size )([0-5]) ?(?:and|or|/|,|&) ?)?(?:#|no\.? ?|number |size )([0-5]) ?(?:posi|pozi)`, "pz0", "posi", "pozi"), CrossZ, "PZ"},
	{patternOf(`\b(?:sq|r) ?-?#?([0-4])\b|\b(?:robertson|square)(?: drive| recess)? ?(?:size |no\.? ?|#|number )?([0-4])\b|(?:#|no\.? ?|number |size )([0-4]) ?(?:robertson|square)`, "sq0", "r0", "robert", "square"), Square, "#"},
	{patternOf(`\b(?:xzn|triple[ -]square|spline|multi-?tooth) ?m?-?(\d{1,2})\b|\bm(\d{1,2}) ?(?:xzn|triple[ -]square|spline|multi-?tooth)`, "xzn", "triple", "spline", "tooth"), TripleSquare, "M"},
	{patternOf(`\b(?:pentalobe|pentalobular) ?(?:p|ts|pl)?([1-6])\b|\bp([1-6]) ?(?:pentalobe|pentalobular)|\bp([2-6])\b`, "pental", "p0"), Pentalobular, "P"},
	{patternOf(`\b(?:tri-?wing|tri-?point) ?y?([0-4]{1,2})\b|\by([0-4]{1,2})\b`, "tri-", "triw", "trip", "y0"), TriWing, "Y"},
}

// driveWords name a kind without a code. Order matters: a later kind's words
// stand inside an earlier one's.
var driveWords = []struct {
	form pattern
	kind string
}{
	{patternOf(`\b(?:e-?torx|external (?:torx|hexalobular))\b`, "torx", "external"), HexalobularOutside},
	{patternOf(`\b(?:hexalobular with pin|(?:security|tamper\w*(?: proof)?) (?:torx|hexalobular|star))\b`, "pin", "secur", "tamper"), HexalobularPin},
	{patternOf(`\b(?:torx|hexalobular|star (?:bits?|drivers?|keys?))\b`, "torx", "hexalob", "star"), Hexalobular},
	{patternOf(`\b(?:phill?ips|cross-?head|cross recess(?: h)?|cross-?point|cross screwdrivers?)\b`, "phil", "cross"), CrossH},
	{patternOf(`\b(?:cross recess z|posi\w*|pozi\w*)\b`, "pos", "poz", "cross"), CrossZ},
	{patternOf(`\b(?:xzn|triple[ -]square)\b`, "xzn", "triple"), TripleSquare},
	{patternOf(`\b(?:robertson|square (?:recess|bits?|drivers?|screwdrivers?)|square)\b`, "square", "robert"), Square},
	{patternOf(`\b(?:pentalobe|pentalobular)\b`, "pental"), Pentalobular},
	{patternOf(`\b(?:tri-?wing|tri-?point)\b`, "tri-", "triw", "trip"), TriWing},
}

// readDrives reads every drive that a text names by a code or by a word of the
// trade, in the order kinds are listed.
func readDrives(text string) []Drive {
	hasDigit := strings.ContainsAny(text, "0123456789")
	var found []Drive
	rest := text
	if hasDigit {
		found, rest = codeSpans(text)
	}
	for _, c := range codes {
		if !hasDigit {
			break
		}
		for _, m := range c.form.all(rest) {
			for _, n := range m[1:] {
				if n != "" {
					found = add(found, Drive{c.kind, c.unit + n})
				}
			}
		}
		rest = c.form.replaced(rest, " ; ")
	}
	coded := kindsOf(found)
	for _, w := range driveWords {
		if !w.form.in(rest) {
			continue
		}
		if !slices.Contains(coded, w.kind) {
			found = add(found, Drive{Kind: w.kind})
		}
		rest = w.form.replaced(rest, " ")
	}
	return append(found, sizedDrives(rest)...)
}

func kindsOf(list []Drive) []string {
	kinds := make([]string, len(list))
	for i, d := range list {
		kinds[i] = d.Kind
	}
	return kinds
}

func add(list []Drive, d Drive) []Drive {
	if slices.Contains(list, d) {
		return list
	}
	return append(list, d)
}

// lengthSize prints a size in mm or inches in our one spelling.
func lengthSize(number, unit string) string {
	if unit == string(Inch) {
		return number + " in"
	}
	if v, err := strconv.ParseFloat(number, 64); err == nil {
		number = formatNumber(v)
	}
	return number + " mm"
}
