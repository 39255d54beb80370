package trade

import (
	"strconv"
	"strings"
)

// DrivesOf reads from a tool's name what it turns: "8 mm nut driver", "10 and
// 13 mm spanners", "T25 bit", "No. 2 Phillips screwdriver", "hex keys 4–8 mm".
// A tool that turns any size of a kind, or does not say which, gives a Drive
// without a size: "adjustable spanner", "socket set". A tool that turns no
// fastener gives none.
func DrivesOf(toolName string) []Drive {
	text := driveText(toolName)
	return byParts(noDriver.replaced(text, " ; "), drivesOfTool)
}

func drivesOfTool(text string) []Drive {
	if d, ok := plainTool(text); ok {
		return []Drive{d}
	}
	return drivesByPatterns(text)
}

// plainTool reads the names that most tools have, a size and the tool, without a
// dozen patterns.
func plainTool(text string) (Drive, bool) {
	for _, t := range []struct{ tool, kind string }{{" spanner", Hex}, {" socket", Hex}, {" nut driver", Hex}, {" hex key", HexKey}} {
		if size, ok := strings.CutSuffix(text, t.tool); ok {
			number, ok := plainMillimetres(size)
			return Drive{t.kind, lengthSize(number, string(Millimetre))}, ok
		}
	}
	code, _ := strings.CutSuffix(text, " screwdriver")
	if number, ok := strings.CutPrefix(code, "t"); ok && code != text {
		return Drive{Hexalobular, "T" + number}, fewDigits(number)
	}
	if number, ok := strings.CutPrefix(code, "ph"); ok && code != text {
		return Drive{CrossH, "PH" + number}, len(number) == 1 && "1" <= number && number <= "5"
	}
	return Drive{}, false
}

func drivesByPatterns(text string) []Drive {
	found := readDrives(text)
	if len(found) > 0 {
		return found
	}
	switch {
	case wheelBrace.in(text):
		return hexagons("17", "19", "21", "22")
	case bitSet.in(text):
		return []Drive{{Kind: Hexalobular}, {Kind: CrossH}, {Kind: CrossZ}, {Kind: Slotted}, {Kind: HexKey}}
	case strings.Contains(text, "screwdriver"):
		// a screwdriver that does not say which: either common kind
		return []Drive{{Kind: CrossH}, {Kind: Slotted}}
	}
	return nil
}

// noDriver are tools whose names hold a driver's words and that turn no
// fastener themselves.
var noDriver = patternOf(`\b(?:drill bits?|tap wrench|taps?|dies?|punch|torque wrench|strap wrench|socket tester|wall socket|mains socket|socket outlet|plug socket|charger socket|socket adap\w+|extension|filter wrench|chain wrench|pipe wrench)\b`, "drill", "tap", "die", "punch", "wrench", "tester", "socket", "extension")

var (
	wheelBrace = patternOf(`\bwheel[ -]?(?:nut|bolt)?[ -]?(?:wrench|brace|spanner)\b|\blug wrench\b`, "wheel", "lug")
	bitSet     = patternOf(`\b(?:driver )?bit(?: |-)?(?:set|kit|case)\b|\bset of bits\b|\bassorted bits\b`, "bit")
)

// A tool's kind where its size is a length. Internal hexagon words come first:
// "hex bit socket" is one. "8 mm hex socket" is an external one, by its six
// points; a fastener's drive that is written so means its own socket.
var (
	keyWords    = patternOf(`\b(?:(?:hex(?:agon)?|allen|l)[ -]?(?:keys?|bits?|wrench(?:es)?|drivers?|bit sockets?|screwdrivers?)|allens?|t-handle|inhex|internal hex(?:agon)?|socket[ -](?:head|cap|screw)\w*|hex(?:agon)?[ -]socket (?:head|key|bit|screw|cap)\w*)\b`, "hex", "allen", "handle", "socket", "key", "bit", "wrench", "driver")
	slotWords   = patternOf(`\b(?:slotted|slot(?:[ -]head)?|flat[ -]?(?:blade|head|bladed|tip)?(?:ed)? (?:screw)?drivers?|flat[ -]?(?:blade|bladed|tip|head)|(?:^|mm )flat$|plain screwdriver|minus screwdriver|straight[ -]blade|sl)\b`, "sl", "flat", "plain", "minus", "straight")
	hexWords    = patternOf(`\b(?:hex(?:agon)?|nut[ -]?drivers?|nut[ -]?spinners?|sockets?|spanners?|wrench(?:es)?|ratchets?|crow(?:'s)?[ -]?foot|(?:bracket|tension|tuning|wheel|track|truck) keys?|box[ -]end|open[ -]?end(?:ed|er)?s?|bolt|nut|across[ -]flats|af|a/f|six[ -]point|6[ -]point|12[ -]point|bi-hex)\b`, "hex", "nut", "socket", "spanner", "wrench", "ratchet", "crow", "key", "box", "open", "bolt", "across", "af", "a/f", "point")
	anyHexWords = patternOf(`\b(?:adjustable (?:spanner|wrench)|socket (?:set|kit)|sockets|spanner set|set of (?:spanners|sockets|wrenches)|spanners|wrench set|wrenches|nut driver set|hex(?:agon)?(?:[ -]head)?$)\b`)
)

// sizedDrives reads the drives whose sizes are lengths: hexagons outside and
// inside, and slots.
func sizedDrives(text string) []Drive {
	kind := ""
	switch {
	case keyWords.in(text):
		kind = HexKey
	case slotWords.in(text):
		kind = Slotted
	case hexWords.in(text):
		kind = Hex
	default:
		return nil
	}
	sizes := readSizes(text)
	if m := bareSize.first(text); sizes == nil && m != nil {
		sizes = []size{{number: m[1] + m[2], unit: string(Millimetre)}}
	}
	var found []Drive
	for _, s := range expand(kind, sizes) {
		found = add(found, Drive{kind, s})
	}
	if found == nil && (kind != Hex || anyHexWords.in(text)) {
		found = []Drive{{Kind: kind}}
	}
	return found
}

// bareSize is a kind with a figure that can only be its size in mm: "hex 8",
// "13 spanner". In longer names a figure may count the tools.
var bareSize = patternOf(`^(?:(?:hex|hex key|allen|allen key|spanner|socket|nut driver) (\d{1,2}(?:\.5)?)|(\d{1,2}(?:\.5)?) (?:hex|hex key|allen key|spanner|socket|nut driver))$`)

// headWords are words beside a fastener's size that leave it a hexagon.
var headWords = patternOf(`\b(?:flanged?|head|bolt|nut|screw|hexagon|with)\b`, "flange", "head", "bolt", "nut", "screw", "hexagon", "with")

// bareHexagons reads a fastener's drive that is a size alone, or beside words of
// a head: "8 mm", "10 mm flange". "8 mm or PH2" has one too.
func bareHexagons(text string) []Drive {
	for _, c := range codes {
		text = c.form.replaced(text, " ")
	}
	text = strings.TrimSpace(headWords.replaced(strings.Trim(strings.TrimSpace(text), "/,+&"), " "))
	text = strings.TrimSpace(strings.TrimSuffix(text, " or"))
	if !strings.ContainsAny(text, "0123456789") {
		return nil
	}
	if loc := sizeList.form().FindStringIndex(text); loc == nil || strings.TrimSpace(text[:loc[0]]+text[loc[1]:]) != "" {
		return nil
	}
	var found []Drive
	for _, s := range expand(Hex, readSizes(text)) {
		found = add(found, Drive{Hex, s})
	}
	return found
}

func hexagons(sizes ...string) []Drive {
	list := make([]Drive, len(sizes))
	for i, s := range sizes {
		list[i] = Drive{Hex, s + " mm"}
	}
	return list
}

const (
	sizePattern = `\d{1,2}(?:[ -]\d{1,2}/\d{1,2}|\.\d{1,2}|/\d{1,2})?`
	joinPattern = ` ?(?:,? and |,? or |, ?|/| ?& ?|\+| to |-|\.\.) ?`
)

// sizeList finds sizes that share a unit: "8, 10 and 13 mm", "4-8 mm",
// "10 mm x 13 mm".
var (
	sizeList = patternOf(`\b` + sizePattern + `(?: ?(?:mm|inch|in\b))?(?:(?:` + joinPattern + `| ?x ?)` + sizePattern + `(?: ?(?:mm|inch|in\b))?)*`)
	oneSize  = patternOf(sizePattern)
	spanMark = patternOf(`(`+sizePattern+`)(?: ?mm)? ?(?:-|to|\.\.) ?(`+sizePattern+`)`, "-", "to", "..")
)

// size is a size with its unit, or the first of a span of nominal sizes.
type size struct {
	number, last string
	unit         string
}

// readSizes reads every list of sizes that has a unit, or whose unit follows
// "mm" at the list's end.
func readSizes(text string) []size {
	var sizes []size
	for _, list := range sizeList.form().FindAllString(text, -1) {
		unit := ""
		switch {
		case strings.HasSuffix(list, "mm"):
			unit = string(Millimetre)
		case strings.HasSuffix(list, "in"), strings.HasSuffix(list, "inch"):
			unit = string(Inch)
		case strings.Contains(list, "/") && !strings.Contains(list, "mm") && oneSize.form().FindString(list) == list:
			unit = string(Inch) // "9/16 spanner"
		default:
			continue
		}
		for _, span := range spanMark.all(list) {
			if unit == string(Millimetre) {
				sizes = append(sizes, size{span[1], span[2], unit})
				list = strings.Replace(list, span[0], "", 1)
			}
		}
		for _, n := range oneSize.form().FindAllString(list, -1) {
			if unit == string(Millimetre) && strings.Contains(n, "/") { // "10/13 mm" are two sizes
				for _, part := range strings.Split(n, "/") {
					sizes = append(sizes, size{number: part, unit: unit})
				}
				continue
			}
			sizes = append(sizes, size{number: n, unit: unit})
		}
	}
	return sizes
}

// The nominal sizes between the ends of a set: hex keys by ISO 2936 (from
// memory), spanners and sockets in whole millimetres with 5.5 mm.
var (
	keySeries = []float64{0.7, 0.9, 1.3, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8, 10, 12, 14, 17, 19, 22, 24, 27}
	hexSeries = []float64{3, 3.2, 4, 5, 5.5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30, 32, 34, 36, 41, 46, 50}
)

// expand writes sizes out, each span as the nominal sizes inside it.
func expand(kind string, sizes []size) []string {
	var out []string
	for _, s := range sizes {
		if s.last == "" {
			out = append(out, lengthSize(s.number, s.unit))
			continue
		}
		low, err1 := strconv.ParseFloat(s.number, 64)
		high, err2 := strconv.ParseFloat(s.last, 64)
		if err1 != nil || err2 != nil || low > high {
			out = append(out, lengthSize(s.number, s.unit), lengthSize(s.last, s.unit))
			continue
		}
		series := hexSeries
		if kind == HexKey {
			series = keySeries
		}
		for _, v := range series {
			if v >= low && v <= high {
				out = append(out, formatNumber(v)+" mm")
			}
		}
	}
	return out
}

// codeSpan finds a set that runs between two sizes: "T10 to T30", "PH0-PH3".
var codeSpan = patternOf(`\b(t|tx|tr|ph|pz|e) ?-?(\d{1,3}) ?(?:-|to|\.\.) ?(t|tx|tr|ph|pz|e) ?-?(\d{1,3})\b`, "-", "to", "..")

// The numbers of the code's kinds, by ISO 10664 and ISO 4757; small
// hexalobulars and the external ones from memory.
var codeSeries = map[string]struct {
	kind, unit string
	numbers    []int
}{
	"t":  {Hexalobular, "T", lobeNumbers},
	"tx": {Hexalobular, "T", lobeNumbers},
	"tr": {HexalobularPin, "T", lobeNumbers},
	"ph": {CrossH, "PH", []int{0, 1, 2, 3, 4}},
	"pz": {CrossZ, "PZ", []int{0, 1, 2, 3, 4}},
	"e":  {HexalobularOutside, "E", []int{4, 5, 6, 7, 8, 10, 12, 14, 16, 18, 20, 24}},
}

var lobeNumbers = []int{3, 4, 5, 6, 7, 8, 9, 10, 15, 20, 25, 27, 30, 40, 45, 50, 55, 60, 70, 80, 90, 100}

// codeSpans writes out the sets in a text and takes them off it.
func codeSpans(text string) (found []Drive, rest string) {
	rest = text
	for _, m := range codeSpan.all(text) {
		low, err1 := strconv.Atoi(m[2])
		high, err2 := strconv.Atoi(m[4])
		if m[1] != m[3] || err1 != nil || err2 != nil || low >= high {
			continue
		}
		series := codeSeries[m[1]]
		for _, n := range series.numbers {
			if n >= low && n <= high {
				found = add(found, Drive{series.kind, series.unit + strconv.Itoa(n)})
			}
		}
		rest = strings.Replace(rest, m[0], " ", 1)
	}
	return found, rest
}
