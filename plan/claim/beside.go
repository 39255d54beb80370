package claim

import (
	"math"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// What a bare number measures by the words beside it: a workshop says "a thirteen
// spanner", "sand it at two twenty", "four fifty off the floor" and leaves the
// unit out. Common practice, no source.

// beside gives the unit of a bare number by what stands beside it. at is the word
// where it begins, n the one behind it.
func (r *reader) beside(f *prose.Figure, at, n int) (unit string, ok bool) {
	if len(f.Values) == 0 || f.Values[0].Unit != "" {
		return "", false
	}
	v := f.Values[0].Number
	whole := v == math.Trunc(v)
	if len(f.Values) == 1 && isEighths(f.Of(r.text)) && r.longs(n) {
		return "inch", true // "thirty-four and three-eighths wide"
	}
	switch {
	case whole && r.fused(f, at, v):
		return "A", true
	case r.toolSize(at, n, v):
		return "mm", true
	case !whole && n < len(r.words) && !r.words[n].stopped && r.words[n].marks&fine != 0 && f.Kind == prose.Count:
		return "mm", true
	case whole && r.abraded(at, n, v):
		return "grit", true
	case v >= shortest && r.longs(n), v > 1 && r.longs(n) && (r.is(n, "thick") || r.is(n, "deep")), r.fromPlace(n, v), r.sizeOfHead(f, at, n, v), r.boreSize(at, n, v):
		return "mm", true
	case whole && v >= coolest && v <= hottest && (r.is(n, "fan")):
		return "degC", true
	}
	return "", false
}

// isFuse holds for the ratings of fuses and breakers, in amperes (ISO 8820-3, IEC
// 60898-1).
func isFuse(v float64) bool {
	switch v {
	case 1, 2, 3, 4, 5, 6, 7.5, 10, 13, 15, 16, 20, 25, 30, 32, 40, 45, 50, 60, 63, 80, 100:
		return true
	}
	return false
}

// fused reads "the fuse should be a fifteen" and "yellow's a twenty": amperes.
func (r *reader) fused(f *prose.Figure, at int, v float64) bool {
	if !isFuse(v) || !r.isBare(f) || !r.is(at-1, "a") && !r.is(at-1, "an") || r.words[min(at, len(r.words)-1)].mood == own {
		return false
	}
	if r.in(at-2, r.known.be) && r.in(at-3, r.known.colour) {
		return true
	}
	for j := max(0, at-longestDial); j < len(r.words) && j < at+longestDial; j++ {
		switch r.words[j].text {
		case "fuse", "fuses", "breaker", "breakers", "mcb", "rcbo":
			return true
		}
	}
	return false
}

// shortest is from where on a bare length is in millimetres.
const shortest = 10

// longs says whether "long", "wide" or the like alone stands at n: "three hundred
// long".
func (r *reader) longs(n int) bool {
	if n >= len(r.words) || r.words[n].stopped {
		return false
	}
	switch r.words[n].text {
	case "long", "wide", "deep", "high", "tall", "thick", "across", "apart", "diameter":
	default:
		return false
	}
	return n+1 >= len(r.words) || r.words[n+1].stopped || r.words[n+1].classes&(r.known.glue|r.known.prep|r.known.be) != 0
}

// coolest and hottest bound an oven with a fan.
const coolest, hottest = 50, 260

// sizeOfHead reads "a seventeen for the bottom": a size as a noun, where heads and
// their tools are spoken of.
func (r *reader) sizeOfHead(f *prose.Figure, at, n int, v float64) bool {
	const smallest, largest, reach = 3, 60, 9
	if v < smallest || v > largest || v != math.Trunc(v) || !r.is(at-1, "a") && !r.is(at-1, "an") || f.Kind != prose.Count || len(f.Values) != 1 {
		return false
	}
	if n < len(r.words) && !r.words[n].stopped && r.words[n].classes&(r.known.prep|r.known.glue) == 0 || r.is(n, "of") || r.is(n, "to") {
		return false
	}
	for j := max(0, at-reach); j < len(r.words) && j < at+4; j++ {
		if r.words[j].marks&toolNouns != 0 || r.words[j].marks&heads != 0 {
			return r.words[min(at, len(r.words)-1)].mood != own
		}
	}
	return false
}

// boreSize reads "a hundred and fifteen disc", "a thirty bore" and "three hundred of
// stroke": what is round or long and is not counted in the singular.
func (r *reader) boreSize(at, n int, v float64) bool {
	const least = 10
	if v < least || n >= len(r.words) || r.words[n].stopped || r.refersBack(at) {
		return false
	}
	if r.is(n, "of") {
		return n+1 < len(r.words) && r.words[n+1].marks&strokesOf != 0
	}
	return (r.words[n].marks&bores != 0 || n+1 < len(r.words) && !r.words[n+1].stopped && r.words[n+1].marks&bores != 0 && !r.in(n, r.known.prep|r.known.glue|r.known.be)) && (r.is(at, "a") || r.is(at-1, "a") || r.is(at-1, "an") || r.in(at-1, r.known.be))
}

// toolSize reads "a thirteen ring spanner"; what is handled, "the thirteen", is
// none.
func (r *reader) toolSize(at, n int, v float64) bool {
	const smallest, largest = 1.5, 60
	if v < smallest || v > largest || r.refersBack(at) || n >= len(r.words) || r.words[n].stopped {
		return false
	}
	if at > 0 && !r.words[at].stopped && !r.is(at-1, "a") && !r.is(at-1, "an") && !r.in(at-1, r.known.be) {
		return false
	}
	for j := n; j < len(r.words) && j < n+3 && (j == n || !r.words[j].stopped); j++ {
		if r.words[j].marks&toolNouns != 0 && !(j+1 < len(r.words) && !r.words[j+1].stopped && r.words[j].marks&sizers != 0 && r.words[j+1].marks&toolNouns != 0) {
			return r.words[min(at, len(r.words)-1)].mood != own
		}
		if r.words[j].marks&sizers == 0 {
			return false
		}
	}
	return false
}

// refersBack says whether the word before a number makes it one that was told
// before.
func (r *reader) refersBack(at int) bool {
	return r.is(at-1, "the") || r.is(at-1, "these") || r.is(at-1, "those") || r.is(at-1, "all") || r.is(at-1, "both") || r.is(at-1, "that") || r.is(at-1, "this") || r.in(at-1, r.known.poss)
}

// abraded says whether a number is a grade of abrasive: rubbing is spoken of, and
// the number ends its piece or stands behind "with" or the like.
func (r *reader) abraded(at, n int, v float64) bool {
	const coarsest, finest, reach = 36, 5000, 8
	if v < coarsest || v > finest {
		return false
	}
	if n < len(r.words) && !r.words[n].stopped && r.words[n].classes&(r.known.prep|r.known.glue) == 0 && r.words[n].marks&rubbed == 0 {
		return false
	}
	if last := len(r.values) - 1; last >= 0 && r.values[last].Unit == "grit" {
		return true // "eighty grit to shape it and one twenty to finish"
	}
	if !r.in(at-1, r.known.prep) && !r.is(at-1, "then") && !r.is(at-1, "a") {
		return false
	}
	for j := max(0, at-reach); j < len(r.words) && j < n+3; j++ {
		if r.words[j].marks&rubbed != 0 {
			return true
		}
	}
	return false
}

// fromPlace reads "four fifty off the floor", "six hundred above the worktop":
// millimetres, as nothing else is said in hundreds there.
func (r *reader) fromPlace(n int, v float64) bool {
	const least, most = 100, 4000
	if v < least || v > most || n+2 >= len(r.words) || r.words[n].stopped {
		return false
	}
	switch r.words[n].text {
	case "off", "above", "from", "below", "up":
	default:
		return false
	}
	for j := n + 1; j < len(r.words) && j < n+4; j++ {
		if r.words[j].marks&floors != 0 && r.in(j-1, r.known.det) {
			return true
		}
	}
	return false
}

// tenths reads "twelve six" as 12.6: a number in the teens with a digit behind it
// is no other number. It holds before volts and the like, or where a battery is
// spoken of; "nineteen two inch screws" are nineteen.
func (r *reader) tenths(a, b *prose.Figure) bool {
	const least, most = 10, 19
	if !a.Spoken || !b.Spoken || a.Kind != prose.Count && a.Kind != prose.Limit && a.Kind != prose.Label || len(a.Values) != 1 || len(b.Values) != 1 || a.Values[0].Unit != "" || r.text[a.End:b.Start] != " " {
		return false
	}
	x, y := a.Values[0].Number, b.Values[0].Number
	if class := math.Round(10*x+y) / 10; b.Values[0].Unit == "" && isBoltClass(class) {
		told := prose.Figure{Span: prose.Span{Start: a.Start, End: b.End}, Kind: prose.Count, Values: []prose.Value{{Number: class}}, Spoken: true}
		if r.graded(&told, r.wordAt(a.Start)) { // "grade ten nine"
			*b = told
			return true
		}
	}
	if x < least || x > most || x != math.Trunc(x) || y < 1 || y > 9 || y != math.Trunc(y) || r.wordAt(b.Start) != r.wordAt(a.End) || r.wordAt(a.End)-r.wordAt(a.Start) != 1 {
		return false
	}
	n := r.wordAt(b.End)
	noun := n < len(r.words) && !r.words[n].stopped && isPlural(r.words[n].text)
	switch u := b.Values[0].Unit; {
	case b.Kind != prose.Count && b.Kind != prose.Quantity || noun:
		return false
	case u == "V" || u == "kV" || u == "A" || u == "bar":
	case u != "" || !r.isBare(b):
		return false
	case r.electric():
		b.Values[0].Unit = "V"
	case !r.inTeens():
		return false
	}
	b.Values[0].Number = math.Round(10*x+y) / 10
	if b.Start, b.Kind = a.Start, prose.Quantity; b.Values[0].Unit == "" {
		b.Kind = prose.Count
	}
	return true
}

// inTeens says whether a decimal in the teens is told in the sentence: what "ten
// nine" is beside "eleven point two".
func (r *reader) inTeens() bool {
	for i := range r.figures {
		if g := &r.figures[i]; len(g.Values) == 1 && g.Values[0].Number > 9 && g.Values[0].Number < 20 && g.Values[0].Number != math.Trunc(g.Values[0].Number) {
			return true
		}
	}
	return false
}

// electric says whether the sentence speaks of a battery.
func (r *reader) electric() bool { return r.about&charged != 0 }

// suffixed takes "4408-J" for a part number though J is a unit, too: a long
// number without a point before one or two capitals.
func (r *reader) suffixed(f *prose.Figure) bool {
	const shortest = 4
	text := f.Of(r.text)
	digits := 0
	for digits < len(text) && text[digits] >= '0' && text[digits] <= '9' {
		digits++
	}
	tail := text[digits:]
	if f.Spoken || len(f.Values) != 1 || digits < shortest && !(r.found.has(PartNumber) && digits > 1) || len(tail) < 2 || len(tail) > 3 || tail[0] != '-' {
		return false
	}
	for i := 1; i < len(tail); i++ {
		if tail[i] < 'A' || tail[i] > 'Z' {
			return false
		}
	}
	if u := f.Values[0].Unit; (u == "V" || u == trade.Unit("W") || u == "A") && !r.found.has(PartNumber) {
		return false // "a 1200-W heater"
	}
	r.value(Value{Part: text, Span: f.Span}, PartNumber)
	return true
}
