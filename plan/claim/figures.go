package claim

import (
	"math"
	"strconv"
	"strings"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// figures turns the numbers of the sentence into values and kinds.
func (r *reader) figures() {
	for i := 0; i < len(r.figs); i++ {
		f := r.figs[i]
		if i+1 < len(r.figs) && r.share(f, r.figs[i+1]) {
			i++
			continue
		}
		r.figure(f)
	}
	if r.has("half the") && r.has("thickness", "weight", "size", "length", "width", "price", "volume", "power") {
		r.add(Comparison)
		r.values = append(r.values, Value{Number: 0.5})
	}
}

// share reads "nine times out of ten" and "four in five of them" as per cent,
// and "three parts resin to one part hardener" as a ratio.
func (r *reader) share(a, b prose.Figure) bool {
	if a.Kind != prose.Count || b.Kind != prose.Count || len(a.Values) == 0 || len(b.Values) == 0 {
		return false
	}
	between := strings.Join(strings.Fields(strings.ToLower(r.text[a.End:b.Start])), " ")
	x, y := a.Values[0].Number, b.Values[0].Number
	if (between == "out of" || between == "times out of" || between == "in every") && y > 0 {
		r.values = append(r.values, Value{Number: math.Round(x/y*1e6) / 1e4, Unit: "%", Span: prose.Span{Start: a.Start, End: b.End}})
		r.add(Frequency)
		return true
	}
	return false
}

func (r *reader) figure(f prose.Figure) {
	switch f.Kind {
	case prose.StepNumber, prose.Ordinal, prose.Time, prose.Date, prose.Label:
		return
	case prose.PartNumber:
		r.part(f)
		return
	case prose.Money:
		r.take(f)
		r.add(Cost)
		if r.has("me", "i paid", "came to", "we paid", "i got") {
			r.add(Measurement)
		}
		return
	case prose.Percent:
		if r.has("sure", "certain") {
			return
		}
		r.take(f)
		if r.has("of the time", "of them", "of these", "of those", "of cases") {
			r.add(Frequency)
			return
		}
		r.valued()
		return
	case prose.Fraction:
		if next := r.after(f.End); len(next) > 1 && next[0] == "of" && (next[1] == "them" || next[1] == "these" || next[1] == "those") && len(f.Values) > 0 {
			r.values = append(r.values, Value{Number: math.Round(f.Values[0].Number*1e6) / 1e4, Unit: "%", Span: f.Span})
			r.add(Frequency)
		}
		return
	case prose.Ratio, prose.Size:
		r.take(f)
		r.valued()
		return
	}
	if len(f.Values) == 0 {
		return
	}
	if f.Values[0].Unit != "" {
		r.quantity(f)
		return
	}
	r.count(f)
}

// quantity takes a value with a unit.
func (r *reader) quantity(f prose.Figure) {
	if f.Values[0].Unit.Dimension() == trade.Minute.Dimension() {
		if r.has("ago", "earlier", "in a minute", "i 'll be", "we 'll be", "be back") {
			return
		}
		r.take(f)
		r.add(Duration)
		if order(r.words) {
			r.add(Spec)
		}
		if r.has("took", "me") {
			r.add(Measurement)
		}
		return
	}
	r.take(f)
	r.valued()
}

// valued says whether a value was read on this object or is what it should be.
func (r *reader) valued() {
	for _, w := range r.words {
		if readings[w] && !order(r.words) {
			r.add(Measurement)
			if w == "draws" || w == "sits" {
				r.add(Spec)
			}
			return
		}
	}
	r.add(Spec)
}

// count takes a bare number where it says what a part is: "66 links", "reads
// 187", "twice a week". What is only handled is none.
func (r *reader) count(f prose.Figure) {
	word := prose.Fold(f.Word)
	before, after := r.before(f.Start), r.after(f.End)
	if len(after) > 0 && word == "" {
		word = after[0]
	}
	for i := 0; i+1 < len(after) && i < 8; i++ {
		if (after[i] == "a" || after[i] == "per" || after[i] == "every" || after[i] == "each") && periods[after[i+1]] {
			r.values = append(r.values, Value{Number: f.Values[0].Number, Unit: "per " + after[i+1], Span: f.Span})
			r.add(Frequency)
			return
		}
	}
	unit, ok := "", false
	one := singular(word)
	reads := r.has("read", "reads", "shows", "says", "dial", "temperature", "set to")
	switch {
	case word == "times" && r.has("as much as", "as long as", "as fast as", "as big as", "as many as", "as thick as"):
		r.add(Comparison)
		ok = true
	case word == "pitch":
		unit, ok = "mm", true
		if v := f.Values[0].Number; v < 1 {
			unit = "inch" // chain is pitched in inches, ISO 606 and 6533
		}
	case word == "parts" && len(after) > 3 && r.has("to one part"):
		ok = true
	case makings[one] && !order(r.words) && !r.has("left to", "left and", "i 've got", "we 've got"):
		unit, ok = one, true
	case r.has("count"):
		unit, ok = singular(countOf(r.words)), true
	case r.has("oven", "thermometer", "temperature", "freezer", "fridge", "heater") && (reads || len(r.values) > 0) && !fittings[word]:
		unit, ok = "degC", true
	case reads && f.Word == "":
		ok = true
	case len(before) > 0 && word != "" && f.Word != "" && !fittings[word] && possesses[before[len(before)-1]] && !order(r.words) && !r.has("i", "we", "you"):
		unit, ok = one, true
	case strings.Contains(r.text[f.Start:f.End], "-") && makings[one]:
		unit, ok = one, true
	}
	if !ok {
		return
	}
	for _, v := range f.Values {
		r.values = append(r.values, Value{Number: v.Number, Unit: unit, Span: f.Span})
	}
	if !r.kinds[Comparison] {
		r.valued()
	}
}

var periods = set("minute", "hour", "day", "week", "month", "year", "winter", "summer", "spring", "autumn", "season")

var possesses = set("has", "have", "with", "takes", "holds", "carries", "needs", "contains", "uses")

// countOf is the noun before "count": "tooth count".
func countOf(words []string) string {
	for i, w := range words {
		if w == "count" && i > 0 {
			return words[i-1]
		}
	}
	return ""
}

func singular(w string) string {
	switch {
	case w == "teeth":
		return "tooth"
	case strings.HasSuffix(w, "ss"):
		return w
	case len(w) > 3 && strings.HasSuffix(w, "s"):
		return w[:len(w)-1]
	}
	return w
}

// take takes all numbers of a figure.
func (r *reader) take(f prose.Figure) {
	for _, v := range f.Values {
		unit := unitName(v.Unit)
		if v.Unit == "°" && !r.has("angle", "turn", "rotate", "tilt", "bend", "timing", "twist", "another", "further", "past", "tighten") {
			unit = "degC" // metric first: said of heat or cold
		}
		r.values = append(r.values, Value{Number: v.Number, Unit: unit, Span: f.Span})
	}
}

// part takes a part number; sizes of tools are none.
func (r *reader) part(f prose.Figure) {
	text := f.Of(r.text)
	if _, ok := trade.ParseDrive(text); ok {
		return
	}
	if len(f.Values) > 0 { // digits one by one, and the letters said before them
		digits := ""
		for _, w := range strings.Fields(strings.ReplaceAll(strings.ToLower(text), "-", " ")) {
			if n, used := prose.ParseNumber(w); used == len(w) && n >= 0 && n < 100 {
				digits += strconv.Itoa(int(n))
			}
		}
		if b := r.before(f.Start); digits != "" {
			for i := len(b) - 1; i >= 0 && len(b[i]) == 1 && b[i][0] >= 'a' && b[i][0] <= 'z'; i-- {
				digits = strings.ToUpper(b[i]) + digits
			}
			text = digits
		}
	}
	r.values = append(r.values, Value{Part: text, Span: f.Span})
	r.add(PartNumber)
}

// unitName spells a unit in ASCII, so that a script can compare it.
func unitName(u trade.Unit) string {
	switch u {
	case "in":
		return "inch"
	case "L":
		return "l"
	case "mL":
		return "ml"
	case "cL":
		return "cl"
	case "°":
		return "deg"
	}
	return ascii.Replace(string(u))
}

var ascii = strings.NewReplacer("Ω", "ohm", "µ", "u", "·", "", "°", "deg", "²", "2", "³", "3", "₂", "2")
