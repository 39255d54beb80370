package claim

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// isEighths holds for parts that are said of inches alone: eighths and finer.
func isEighths(text string) bool {
	text = strings.ReplaceAll(strings.TrimSuffix(strings.ToLower(text), "s"), "-", " ")
	return strings.HasSuffix(text, "eighth") || strings.HasSuffix(text, "sixteenth") || strings.HasSuffix(text, "thirty second") || strings.HasSuffix(text, "sixty fourth")
}

// isHundredths holds for parts that are said of millimetres; inches have thousandths.
// Common practice, no source.
func isHundredths(text string) bool {
	text = strings.ToLower(text)
	return strings.HasSuffix(text, "hundredths") || strings.HasSuffix(text, "tenths")
}

// hasParts says whether a text tells halves, quarters or finer parts of an inch.
func hasParts(text string) bool {
	for w := range strings.FieldsFuncSeq(strings.ToLower(text), func(c rune) bool { return c == ' ' || c == '-' }) {
		switch strings.TrimSuffix(w, "s") {
		case "half", "quarter", "eighth", "sixteenth":
			return true
		}
	}
	return false
}

// drilled says whether "and a half" is said of millimetres: a drill of six and a
// half. Common practice, no source.
func (r *reader) drilled(f *prose.Figure) bool {
	const least = 5
	return f.Values[0].Number >= least && strings.HasSuffix(strings.ToLower(f.Of(r.text)), "half")
}

// priced says whether paying is spoken of near word i; a battery is charged, too.
func (r *reader) priced(i, reach int) bool {
	k := &r.known.classes
	for j := max(0, i-reach); j < len(r.words) && j <= i+reach; j++ {
		if (r.is(j, "plus") || r.is(j, "including") || r.is(j, "included")) && (r.words[min(j+1, len(r.words)-1)].marks&extras != 0 || r.in(j+1, k.det) && r.words[min(j+2, len(r.words)-1)].marks&extras != 0) {
			return true
		}
		if j < i && r.words[j].marks&asks != 0 && (r.is(j-1, "they") || r.is(j-1, "he") || r.is(j-1, "she")) && slices.ContainsFunc(r.words[i:], func(w word) bool { return w.text == "for" }) {
			return true
		}
		if r.in(j, k.priced) && (!strings.HasPrefix(r.words[j].text, "charge") || r.is(j+1, "me") || r.is(j+1, "you") || r.is(j+1, "us") || r.is(j+1, "about") || r.is(j-1, "they") || r.is(j-1, "garages") || r.is(j-1, "shops")) {
			return true
		}
	}
	return false
}

// bareness is what stands around a number without a unit.
type bareness struct {
	whole, negative       bool
	reads, meter, settles bool // a reading, what gives or has one, where something settles
	placed                bool // it is what something is, is at or gets to
}

func (r *reader) bareness(f *prose.Figure, at int) bareness {
	k := &r.known.classes
	b := bareness{whole: true}
	for _, v := range f.Values {
		b.whole = b.whole && v.Number == math.Trunc(v.Number)
		b.negative = b.negative || v.Number < 0
	}
	r.clauseBefore(at, longestDial, func(j int) bool {
		b.reads = b.reads || r.in(j, k.reading) && !r.is(j, "get") && !r.is(j, "got") && !r.is(j, "came") || r.is(j, "set")
		b.meter = b.meter || r.in(j, k.meter|k.dimension|k.thermal|k.measured)
		b.settles = b.settles || r.in(j, k.settling)
		return true
	})
	for at > 2 && (r.is(at-1, "straight") || r.is(at-1, "dead") || r.is(at-1, "exactly") || r.is(at-1, "bang")) {
		if at--; r.is(at-1, "a") {
			at--
		}
	}
	switch r.words[max(at-1, 0)].text {
	case "hit", "reached", "touching", "at", "of", "to":
		b.placed = at > 0
	}
	b.placed = b.placed || r.in(at-1, k.be|k.about)
	return b
}

// isName says whether a number names or counts off something: a version, "count to
// sixty", "a figure of eight", "number three of five".
func (r *reader) isName(f *prose.Figure, at int) bool {
	switch {
	case f.Values[0].Number == 0 && len(f.Values) == 1, f.Spoken && len(f.Values) == 1 && f.Values[0].Number == 1:
		return true
	case r.is(at-1, "firmware"), r.is(at-1, "software"), r.is(at-1, "revision"), r.is(at-1, "to") && r.is(at-2, "count"), r.is(at-1, "of") && r.is(at-2, "figure"):
		return true
	}
	return r.is(at-1, "of") && at > 1 && r.words[at-2].number && r.isBare(f)
}

// bare takes a number that counts nothing: a decimal, which nobody counts; a
// reading of an instrument; what a measured property is; where something idles,
// opens or is set.
func (r *reader) bare(f *prose.Figure, at int) (string, bool) {
	k := &r.known.classes
	if r.isName(f, at) {
		return "", false
	}
	if r.words[min(at, len(r.words)-1)].mood != order && r.belowZero(f) {
		return cmp.Or(r.celsius(), "degC"), true
	}
	b := r.bareness(f, at)
	switch {
	case b.placed && (r.near(at, 3, k.thermal) && f.Values[0].Number > 30 || r.celsius() != ""):
	case b.meter && f.Kind == prose.Range && (b.placed || r.is(at-1, "between") || r.is(at-1, "from")) && r.words[min(at, len(r.words)-1)].mood != order, r.readings(f, at):
	case r.in(at-2, k.past) && r.is(at-1, "from") && f.Values[0].Number > 12 && r.isBare(f):
	case r.priced(at, 4) && f.Values[0].Number > 2 && !(r.is(at-1, "for") && len(r.values) > 0 && isMoney(trade.Unit(r.values[len(r.values)-1].Unit))):
	case f.Values[0].Number >= thousand && f.Spoken && r.words[min(at, len(r.words)-1)].mood == statement && !r.in(at-1, k.glue) && !r.is(at-1, "got"):
	case r.is(at-1, "to") && r.in(at-2, k.past) && (f.Values[0].Number > 12 || !b.whole):
	case (r.is(at-1, "it") || r.is(at-1, "that")) && r.is(at-2, "call"):
	case r.is(at-1, "for") && r.words[max(at-2, 0)].marks&sells != 0:
	case f.Kind == prose.Limit && f.Values[0].Number > 12 && r.tops(f):
	case r.atHeat(f, at):
		return "degC", true
	case r.amounts(f, at):
	case r.series(f, at):
		return r.bareUnit, true
	case r.nipped(f, at), r.heldAt(f, at) != "":
	case r.words[min(at, len(r.words)-1)].stopped && r.in(at-1, k.meter|k.dimension|k.thermal|k.measured):
	case b.placed && r.hotSide(f, at):
	case (b.placed || r.linked(at)) && (f.Values[0].Number > 2 || !b.whole) && r.isBare(f) && r.dialUnit(at, f.Values[0].Number, b.whole) != "":
	case !b.whole, b.negative, b.reads && (b.meter || !f.Spoken || f.Values[0].Number > 12), b.meter && b.placed, b.settles && r.is(at-1, "at"):
	case r.onDial(f), r.onHeat(f), r.ofAcid(at), r.fromTo(f, at), r.jawed(f, at) && (b.placed || r.is(at-1, "to")):
	default:
		return "", false
	}
	return r.unitOf(f, at, b), true
}

// unitOf is the unit of a bare number that is taken, empty where nothing shows it.
func (r *reader) unitOf(f *prose.Figure, at int, b bareness) string {
	k := &r.known.classes
	if f.Spoken && isHundredths(f.Of(r.text)) {
		return "mm"
	}
	if f.Spoken && hasParts(f.Of(r.text)) && f.Values[0].Number > 1 && !r.drilled(f) && r.near(at, 4, k.inched) {
		return "inch"
	}
	if (r.priced(at, longestDial) || r.is(at-1, "for") && r.words[max(at-2, 0)].marks&sells != 0) && (!b.meter || r.is(at-2, "they") && r.in(at-1, k.priced)) {
		return r.coin("GBP") // as "twelve fifty" is
	}
	if r.nipped(f, at) {
		return "Nm"
	}
	if n := r.wordAt(f.End); r.is(n, "twin") && r.is(n+1, "and") {
		return "mm2"
	}
	if r.heldAt(f, at) == "V" {
		return "V" // "wire the coil for one ten"
	}
	if unit := r.dialUnit(at, f.Values[0].Number, b.whole); unit != "" {
		return unit
	}
	if unit := r.celsius(); unit != "" {
		return unit
	}
	if v := f.Values[0].Number; !b.whole && v >= 1 && v <= highestPack && r.about&powered != 0 {
		return "V"
	}
	if unit := r.heldAt(f, at); unit != "" {
		return unit
	}
	if r.jawed(f, at) {
		return "mm"
	}
	if b.placed && r.hotSide(f, at) {
		return "degC"
	}
	if r.onRevs(f) {
		return "rpm"
	}
	if r.near(at, longestDial, k.thermal) || b.negative && (r.near(at, longestDial, k.heat) || r.frost(f, at)) {
		return "degC" // metric first
	}
	return ""
}

// linked says whether the word before a number makes it what something is, reads or
// gets to.
func (r *reader) linked(at int) bool {
	if r.words[min(at, len(r.words)-1)].mood == own {
		return r.in(at-1, r.known.reading)
	}
	switch r.words[max(at-1, 0)].text {
	case "hold", "do", "does", "hit", "hits", "between", "from", "by", "say", "measure", "pulls", "pull", "pulling", "draws", "drawing", "through":
		return at > 0
	}
	return r.in(at-1, r.known.reading) && !r.is(at-1, "got")
}

// highestPack is the voltage up to which a battery of a workshop stands.
const highestPack = 60

// belowZero reads "twenty-five below" and makes the number negative.
func (r *reader) belowZero(f *prose.Figure) bool {
	n := r.wordAt(f.End)
	if len(f.Values) != 1 || f.Values[0].Number < 2 || !r.is(n, "below") || r.words[n].stopped || n+1 < len(r.words) && !r.words[n+1].stopped && !r.is(n+1, "zero") && !r.is(n+1, "freezing") {
		return false
	}
	f.Values[0].Number = -f.Values[0].Number
	return true
}

// amounts says whether a thing that is named is a number: "the main jet's a hundred
// and eighteen". Smaller numbers are counts and places more often.
func (r *reader) amounts(f *prose.Figure, at int) bool {
	const least, reach = 20, 5
	k := &r.known.classes
	if len(f.Values) != 1 || f.Values[0].Number <= least || !r.isBare(f) || !r.in(at-1, k.be) || r.words[min(at, len(r.words)-1)].mood != statement {
		return false
	}
	named := false
	for j := at - 2; j >= 0 && j > at-2-reach && !r.words[j+1].stopped; j-- {
		if r.in(j, k.self|k.person|k.poss|k.pronoun) && !r.is(j, "one") {
			return false
		}
		named = named || r.is(j, "the") || r.is(j, "each") || j == 0 && !r.in(j, k.det)
	}
	return named
}

// priceTail says whether a price ends with what it is for: "sixty new, twenty used".
func (r *reader) priceTail(f *prose.Figure) bool {
	n := r.wordAt(f.End)
	return r.is(n, "new") || r.is(n, "used") || r.is(n, "fitted") || r.is(n, "delivered")
}

// readings says whether three or more bare numbers stand in a row and nothing else in
// their piece: "a hundred and six, a hundred and five, a hundred and seven".
func (r *reader) readings(f *prose.Figure, at int) bool {
	const fewest, least = 3, 12
	if f.Values[0].Number <= least || !r.isBare(f) || at > 0 && !r.words[min(at, len(r.words)-1)].stopped {
		return false
	}
	n, _ := slices.BinarySearchFunc(r.figures, f.Start, func(g prose.Figure, at int) int { return g.Start - at })
	row := 1
	for ; n+1 < len(r.figures) && row < fewest; n++ {
		b := &r.figures[n+1]
		if between := strings.TrimSpace(r.text[r.figures[n].End:b.Start]); between != "," && between != ", and" || b.Kind != prose.Count || b.Values[0].Number <= least || !r.isBare(b) {
			return false
		}
		row++
	}
	return row == fewest
}

// tops holds where "max" or "minimum" stands behind a number.
func (r *reader) tops(f *prose.Figure) bool {
	switch n := r.wordAt(f.End); {
	case r.is(n, "max"), r.is(n, "maximum"), r.is(n, "min"), r.is(n, "minimum"), r.is(n, "tops"):
		return n+1 >= len(r.words) || r.words[n+1].stopped || r.words[n+1].classes&(r.known.prep|r.known.glue) != 0
	}
	return false
}

// series says whether nothing but a comma or "and" stands between a bare number and
// one before it that was taken: "compression one fifty, ninety, one fifty".
func (r *reader) series(f *prose.Figure, at int) bool {
	if len(r.values) == 0 {
		return false
	}
	last := r.values[len(r.values)-1]
	if last.End != r.bareEnd || last.End > f.Start || !r.isBare(f) && !r.priceTail(f) {
		return false
	}
	between := strings.TrimLeft(strings.TrimLeft(r.text[last.End:f.Start], " "), "abcdefghijklmnopqrstuvwxyz")
	if from := r.wordAt(last.End); r.in(from, r.known.where) && from < at {
		between = strings.TrimPrefix(r.text[r.words[from].end:f.Start], " ") // "thirty-two front, thirty-six rear"
	} else if !isMoney(trade.Unit(r.bareUnit)) || !strings.HasPrefix(between, ",") {
		between = r.text[last.End:f.Start]
	}
	switch strings.Trim(between, " ") {
	case ",", ", and", "and", ", then", "then", ", not", "not", "or", ", or":
		return last.Number > 12 || last.Number != math.Trunc(last.Number)
	}
	return false
}

// thousand is from where on a bare number is no count of things handled: "it
// spins at eleven thousand".
const thousand = 1000

// nipped says whether a bare number is how tight something is done up: "fifteen then
// thirty", "take it to forty, then a quarter turn". The unit stays open.
func (r *reader) nipped(f *prose.Figure, at int) bool {
	const least, reach = 2, 9
	if f.Values[0].Number <= least || !r.isBare(f) || !r.is(at-1, "to") && !r.is(at-1, "at") && !r.is(at-1, "then") && at > 0 && !r.words[at].stopped {
		return false
	}
	if next := r.after(f); next != nil && len(next.Values) == 1 && (next.Values[0].Unit == "turn" || next.Values[0].Unit == trade.Degree) && r.is(at-1, "to") {
		if j := r.wordAt(next.Start) - 1; r.is(j, "then") || r.is(j, "plus") || r.is(j, "and") {
			return true
		}
	}
	for j := max(0, at-reach); j < at; j++ {
		switch r.words[j].text {
		case "tighten", "torque", "torqued", "tightened", "torques":
			return f.Values[0].Number > 4 && !r.is(at-1, "at")
		}
	}
	return false
}

// heldAt is the unit of "two twenty for ninety seconds" and "wired for one ten":
// degrees where something is kept so for a time, volts where a winding or a plug
// is meant for them.
func (r *reader) heldAt(f *prose.Figure, at int) string {
	const coolest, hottest, reach = 40, 1500, 6
	v := f.Values[0].Number
	if len(f.Values) != 1 || v != math.Trunc(v) || f.Values[0].Unit != "" {
		return ""
	}
	if next := r.after(f); next != nil && r.is(at-1, "at") && v >= coolest && v <= hottest && len(next.Values) > 0 && isTime(next.Values[0].Unit) && r.joinedBy(r.wordAt(f.End), next, "for") {
		return "degC"
	}
	if !isMains(v) || !r.is(at-1, "for") && !r.is(at-1, "on") && !r.is(at-1, "off") && !r.is(at-1, "at") {
		return ""
	}
	for j := max(0, at-reach); j < at; j++ {
		switch r.words[j].text {
		case "wire", "wired", "coil", "wound", "winding", "transformer", "motor", "supply", "plug", "runs", "run", "tapped", "strapped", "primary":
			return "V"
		}
	}
	return ""
}

// fromTo says whether a bare number is one end of a change of something measured:
// "the voltage sags from fifty to forty four".
func (r *reader) fromTo(f *prose.Figure, at int) bool {
	k := &r.known.classes
	if !r.isBare(f) {
		return false
	}
	if r.is(at-1, "to") && len(r.values) > 0 && r.values[len(r.values)-1].End == r.words[max(at-2, 0)].end {
		return true
	}
	if !r.near(at, longestDial, k.measured|k.dimension|k.meter) {
		return false
	}
	if next := r.after(f); r.is(at-1, "from") && next != nil && len(next.Values) > 0 && r.joinedBy(r.wordAt(f.End), next, "to") {
		return true
	}
	return false
}
