package claim

import (
	"math"
	"math/bits"
	"strings"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// form is how an offer came about.
type form uint8

const (
	asSaid    form = iota // the unit is said
	otherwise             // the unit's word means another, too: a mil is a millimetre or a millilitre
	ofNoun                // the noun behind the number is counted
	ofMaking              // or makes one thing with it: "six pole"
	shared                // the unit of a number before
	coming                // of a number behind
	near                  // what is measured by a word near
	usual                 // what is often measured without a unit
	plain                 // none
	inSum                 // pounds and pence
	ofYear
	over // so much in a time
	single
	asRule
)

// offer is one way to read a number.
type offer struct {
	unit  string
	scale float64 // of the number
	part  string  // it is a part number
	form  form
	kinds kinds // beside those that the unit says
	end   int   // where it ends if not with the figure
	many  int
	said  [12]feature // what speaks for and against it, besides what is to be seen around
}

func (o *offer) add(f feature) {
	if o.many < len(o.said) {
		o.said[o.many] = f
		o.many++
	}
}

// offer offers a unit, once; what comes about in several ways has the features of all.
func (r *reader) offer(unit string, as form, features ...feature) *offer {
	return r.offerScaled(unit, 1, as, features...)
}

func (r *reader) offerScaled(unit string, scale float64, as form, features ...feature) *offer {
	var o *offer
	for i := range r.offers {
		if r.offers[i].unit == unit && r.offers[i].scale == scale {
			o = &r.offers[i]
		}
	}
	if o == nil {
		r.offers = append(r.offers, offer{unit: unit, scale: scale, form: as})
		o = &r.offers[len(r.offers)-1]
	}
	o.add(is(formOf, uint32(as)).with(is(always, 3)))
	for _, f := range features {
		o.add(f.with(is(formOf, uint32(as))))
	}
	return o
}

// numberOf is the number that a figure tells.
func (r *reader) numberOf(i int) number {
	f := &r.figures[i]
	c := number{Span: f.Span, f: f, i: i, at: min(r.wordAt(f.Start), len(r.words)-1), n: r.wordAt(f.End), spoken: f.Spoken, whole: true}
	if c.n == c.at {
		c.n++
	}
	if len(f.Values) > 0 {
		c.v = f.Values[0].Number
	}
	for _, v := range f.Values {
		c.whole = c.whole && v.Number == math.Trunc(v.Number)
	}
	return c
}

// decide reads a figure by what weighs most.
func (r *reader) decide(c *number) {
	best := r.choose(c)
	if best < 0 {
		return
	}
	r.settle(c, &r.offers[best])
}

// settle takes a number as an offer has it.
func (r *reader) settle(c *number, o *offer) {
	span := c.Span
	if o.end > 0 {
		span.End = o.end
	}
	if o.part != "" {
		r.value(Value{Part: o.part, Span: span}, PartNumber)
		return
	}
	if c.f == nil {
		r.values = append(r.values, Value{Number: c.v * o.scale, Unit: o.unit, Span: span})
	} else {
		for _, v := range c.f.Values {
			number, unit := v.Number, unitName(v.Unit)
			if v.Unit == c.f.Values[0].Unit {
				number, unit = number*o.scale, o.unit
			}
			r.values = append(r.values, Value{Number: number, Unit: unit, Span: span})
		}
	}
	r.found |= o.kinds
	at := min(c.at, len(r.words)-1)
	u, known := trade.Unit(""), false
	if o.unit != "" {
		u, known = trade.LookupUnit(o.unit)
	}
	switch {
	case o.kinds != 0:
	case isMoney(trade.Unit(o.unit)):
		r.add(Cost)
		if r.paid(at) {
			r.add(Measurement)
		}
	case known && isTime(u) || r.isPeriod(o.unit):
		r.add(Duration)
		k := &r.known.classes
		if r.is(c.at-1, "every") || r.is(c.at-1, "per") {
			r.add(Frequency)
		}
		if r.words[at].mood == order {
			r.add(Spec)
		}
		if r.near(c.at, 4, k.self) || r.is(c.at-1, "gained") || r.is(c.at-1, "lost") || r.is(c.at-1, "me") {
			r.add(Measurement)
		}
	case o.unit == "%" && (r.ofMany(c.End) || r.is(c.n, "of") && r.is(c.n+2, "time")), strings.HasPrefix(o.unit, "per "):
		r.add(Frequency)
	default:
		r.stated(at)
	}
}

func (r *reader) isPeriod(unit string) bool {
	return unit != "" && r.known.of(unit)&r.known.period != 0
}

// offerSaid offers what a figure with a unit may be.
func (r *reader) offerSaid(c *number) {
	f := c.f
	u := f.Values[0].Unit
	last := ""
	if c.n > 0 {
		last = r.words[min(c.n, len(r.words))-1].text
	}
	name := unitName(u)
	switch {
	case u == trade.Degree:
		r.offerDegrees(c)
		return
	case u == "p":
		r.offerScaled("GBP", 0.01, asSaid)
		return
	case u == "c":
		r.offerScaled(r.coin("EUR"), 0.01, asSaid)
		r.offer("cent", otherwise)
		return
	case u == "h" && c.v < 1 && c.v*4 == math.Trunc(c.v*4) && c.v != 0.5:
		r.offerScaled("min", 60, asSaid) // nobody writes a quarter of an hour as 0.25 h
		return
	case u == "K" && c.v < 1000 && !strings.HasSuffix(f.Of(r.text), "kelvin"):
		name = "kohm" // no workshop is that cold
	case u == "inH2O" && r.stands(f):
		name = "inch"
	case u == "kg" && r.is(c.n, "force"):
		name = "kgf"
	case u == "mi" && r.is(c.n+1, "gallon"), u == "mi" && r.is(c.n+2, "gallon"):
		name = "mpg"
	case u == "GBP" && strings.HasSuffix(f.Of(r.text), "grand"):
		name = r.coin("GBP")
	}
	if isMoney(u) && r.inTwo(c) {
		r.offerScaled(name, 0.01, inSum, is(sizeOf, oneIf(math.Mod(c.v, 50) == 0)))
	}
	if rate := r.perTimeUnit(c); rate != "" {
		r.offer(rate, over)
		return
	}
	if of := r.perUnit(c); of != "" {
		name += "/" + of
	}
	r.offer(name, asSaid)
	switch {
	case u == trade.Millimetre && strings.HasPrefix(last, "mil") && !strings.HasPrefix(last, "millim"):
		r.offer("ml", otherwise)
		if r.isCable(f) {
			r.offer("mm2", otherwise)
		}
	case u == trade.Millimetre && r.isCable(f):
		r.offer("mm2", otherwise)
	case u == "GBP" && strings.HasSuffix(strings.TrimSuffix(f.Of(r.text), "s"), "pound"):
		r.offer("lb", otherwise, is(agree, oneIf(r.priced(c.at, 5))), is(agree, 32|oneIf(r.weighed(c.at))))
	case u == "lb":
		if r.money == pounds {
			r.offer(r.coin("GBP"), otherwise, is(agree, oneIf(r.priced(c.at, 5))), is(agree, 32|oneIf(r.weighed(c.at))))
		}
		if r.inTyre(c.at) || r.is(c.n, "of") {
			r.offer("psi", otherwise)
		}
		if r.is(c.n, "of") && r.words[min(c.n+1, len(r.words)-1)].marks&forced != 0 {
			r.offer("lbf", otherwise)
		}
	}
}

// inTwo says whether a sum is told in two numbers of which the second may be hundredths:
// "twelve fifty euros".
func (r *reader) inTwo(c *number) bool {
	const least, most = 1000, 10000
	text := c.f.Of(r.text)
	return c.spoken && len(c.f.Values) == 1 && c.v > least && c.v < most && c.whole && math.Mod(c.v, 5) == 0 && math.Mod(c.v, 100) != 0 &&
		!strings.Contains(text, "hundred") && !strings.Contains(text, "thousand")
}

// weighed says whether what weighs, pulls or is weighed stands near word i.
func (r *reader) weighed(i int) bool {
	const reach = 6
	for j := max(0, i-reach); j < min(len(r.words), i+reach); j++ {
		if r.words[j].marks&(weighty|weights|forced) != 0 || r.in(j, r.known.heavy) {
			return true
		}
	}
	return false
}

// perUnit is the unit over which a quantity is told where that is no time: "five watts
// a foot", "three kilos per metre"; empty for none.
func (r *reader) perUnit(c *number) string {
	at := c.n + 1
	if isMoney(c.f.Values[0].Unit) || at >= len(r.words) || r.words[c.n].stopped {
		return ""
	}
	switch r.words[c.n].text {
	case "a", "an", "per", "each", "every":
	default:
		return ""
	}
	power := ""
	switch {
	case r.is(at, "square"):
		power = "2"
	case r.is(at, "cubic"):
		power = "3"
	}
	if power != "" && at+1 < len(r.words) {
		at++
	}
	u, known := trade.LookupUnit(r.words[at].text)
	if !known || len(r.words[at].text) < 3 || isTime(u) {
		return ""
	}
	return unitName(u) + power
}

// offerDegrees offers a temperature and an angle.
func (r *reader) offerDegrees(c *number) {
	near := is(agree, oneIf(r.near(c.at, 9, r.known.heat))|oneIf(r.near(c.at, 9, r.known.angle))<<1)
	right := is(sizeOf, oneIf(c.v == 45 || c.v > 0 && math.Mod(c.v, 90) == 0))
	r.offer("degC", asSaid, near, right)
	r.offer("deg", otherwise, near, right)
}

// perTimeUnit is the unit of a quantity "a minute" or "per hour", empty for none.
func (r *reader) perTimeUnit(c *number) string {
	n := c.n
	if next := r.after(c.f); next != nil && len(next.Values) > 0 && next.Values[0].Unit == c.f.Values[0].Unit && (r.listed(c.f, next) || r.eased(c.f, next)) {
		n = r.wordAt(next.End) // "two, maybe three litres a minute"
	}
	if isMoney(c.f.Values[0].Unit) || !r.in(n+1, r.known.period) {
		return ""
	}
	switch r.words[n].text {
	case "a", "an", "per", "every", "each":
	default:
		return ""
	}
	return unitOver(c.f.Values[0].Unit, r.words[n+1].text)
}

// offerBare offers what a figure without a unit may be.
func (r *reader) offerBare(c *number) {
	f := c.f
	bare := r.bareness(c)
	if f.Spoken && !c.whole && isEighths(f.Of(r.text)) {
		r.offer("inch", usual, bare)
		r.offer("", plain, bare)
		return
	}
	r.offerRate(c)
	if unit, scale, ok := r.colloquial(f, c.at, c.n); ok {
		r.offerScaled(unit, 1/scale, asSaid, is(unitWord, 1))
	}
	r.offerNouns(c)
	r.offerShared(c, bare)
	r.offerNear(c, bare)
	if f.Kind == prose.PartNumber {
		r.offer("part", asRule).part = f.Word
	}
	if text := f.Of(r.text); strings.HasSuffix(text, "k") && c.v >= 1000 {
		r.offerScaled("kohm", 1e-3, otherwise, is(agree, oneIf(r.near(c.at, 9, r.known.resistive))), is(unitWord, hashOf("k")))
	}
	if r.sum(f, c.at) || r.perPiece(f, c.n) {
		r.offerScaled(r.coin("GBP"), 0.01, inSum)
	}
	if r.multiple(f, c.n) {
		r.offer("", plain, is(joint, 77)).kinds = bitOf(Comparison)
	}
	if r.parts(c.at, c.n) || r.is(c.n, "to") && r.is(c.n+1, "one") {
		r.offer("", plain, is(joint, 78))
	}
	r.offer("", plain, bare)
	if c.whole && isYear(c.v) {
		r.offer("year", ofYear, bare).kinds = bitOf(Spec)
	}
	if r.isCable(f) {
		r.offer("mm2", otherwise)
	}
	if c.v != 0 || !c.spoken {
		parts := is(hold, oneIf(f.Spoken && hasParts(f.Of(r.text))))
		for _, unit := range [...]string{"mm", "inch", "V", "degC", "rpm", "A", "W", "bar", "psi", "Nm", "ohm", "%", "Hz", "kg"} {
			r.offer(unit, usual, bare, parts)
		}
		r.offer(r.coin("GBP"), usual, bare, is(agree, oneIf(r.priced(c.at, 4))))
	}
}

// offerRate offers so much or so often in a time: "forty gallons an hour", "twice a
// week".
func (r *reader) offerRate(c *number) {
	unit, end := r.rate(c.n)
	if end == 0 {
		return
	}
	whole := r.words[end-1].end
	of := ""
	if end > c.n+2 {
		of = singular(r.words[c.n].text)
	}
	if of != "beat" && of != "frame" && of != "stitch" {
		of = measureUnit(of)
	}
	if of != "" && end == c.n+3 {
		r.offer(rateUnit(of, unit), over).end = whole
	} else {
		if end == c.n+3 && isPlural(r.words[c.n].text) && !r.is(c.n, "times") {
			r.offer(singular(r.words[c.n].text)+overPeriod(unit), over).end = whole
		}
		o := r.offer("per "+unit, over, is(distance, uint32(end-c.n)))
		o.end, o.kinds = whole, bitOf(Frequency)
		if end == c.n+2 && unit == "minute" {
			r.offer("rpm", over).end = whole
		}
		if r.priced(c.at, 3) {
			r.offer(r.coin("GBP"), over)
		}
	}
}

// bareness is what stands behind a number: nothing, a plural, a word that makes
// something with it, another.
func (r *reader) bareness(c *number) feature {
	behind := uint32(0)
	_, many := r.head(c.n)
	switch {
	case c.f != nil && r.isBare(c.f):
		behind = 1
	case c.n >= len(r.words) || r.words[c.n].stopped:
		behind = 2
	case isPlural(r.words[c.n].text) && !r.in(c.n, r.known.be|r.known.states):
		behind = 3
	case many:
		behind = 4
	case r.in(c.n, r.known.be|r.known.states|r.known.modal):
		behind = 5
	case r.in(c.n, r.known.making):
		behind = 6
	}
	return is(bareOf, behind)
}

// offerNouns offers what a number may count.
func (r *reader) offerNouns(c *number) {
	f := c.f
	if unit, ok := r.compounded(f, c.at, c.n); ok {
		r.offer(unit, ofMaking, is(unitWord, hashOf(unit)))
	}
	if noun, ok := r.countOf(c.at); ok {
		r.offer(noun, ofMaking, is(unitWord, 3))
	}
	if c.n >= len(r.words) || r.words[c.n].stopped {
		return
	}
	if r.is(c.n, "pitch") {
		if c.v < 1 && !r.near(c.at, longestDial, r.known.thread) {
			r.offer("inch", ofMaking) // chain is pitched in inches: ISO 606
		} else {
			r.offer("mm", ofMaking) // ISO 261
		}
		return
	}
	head, ok := r.head(c.n)
	if !ok {
		return
	}
	one := singular(r.words[head].text)
	if _, unit := trade.LookupUnit(one); unit && head > c.n && r.words[c.n].number {
		return // the minutes of "ten fifteen minutes" are the other number's
	}
	o := r.offer(one, ofNoun, is(distance, uint32(head-c.n)), is(hold, oneIf(r.left(head+1))), is(hold, 4|oneIf(r.coordinated(f))))
	noun := r.known.of(one)
	for cl := uint64(noun); cl != 0; cl &= cl - 1 {
		o.add(is(headOf, uint32(bits.TrailingZeros64(cl))))
		if o.many > 8 {
			break
		}
	}
	o.add(is(unitWord, hashOf(one)))
	o.add(is(headOf, 200).with(r.wordFeature(wordBehind, head+1)))
}
