package claim

import (
	"math"
	"regexp"
	"strings"
	"sync"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// oil is a viscosity grade as SAE J300 writes it.
var oil = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^\d{1,2}[wW]-?\d{1,3}$`)
})

// coded62 is a value with the letter of its unit for a point, as IEC 60062 writes it.
var coded62 = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(\d{1,3})([RrkKMpnuµ])(\d{1,2})$`)
})

// lettered reads "4k7" and "2R2".
func lettered(text string) (v float64, unit string, ok bool) {
	m := coded62().FindStringSubmatch(text)
	if m == nil {
		return 0, "", false
	}
	v, _ = prose.ParseNumber(m[1] + "." + m[3])
	switch m[2] {
	case "R", "r":
		unit = "ohm"
	case "M":
		unit = "Mohm"
	case "k", "K":
		unit = "kohm"
	case "p":
		unit = "pF"
	case "n":
		unit = "nF"
	default:
		unit = "uF"
	}
	return v, unit, true
}

// thickest is from where on a metric thread is none: ISO 261 ends at 300 mm.
const thickest = 301

// stuffs are gases and refrigerants by their formula or their number (ISO 817).
var stuffs = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(CO2|CO|H2O|O2|N2|NO2|SO2|H2S|R(1[1234]|2[23]|32|50|\d{3}[aA]?))$`)
})

// enclosure is a degree of protection as IEC 60529 writes it.
var enclosure = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^IP[0-9X]{2}[A-Z]?$`)
})

// inchThread takes the diameter and the threads per inch.
func (r *reader) inchThread(t trade.Thread, at prose.Span) {
	const inch = 25.4 // mm, exact by definition
	r.value(Value{Number: math.Round(t.Diameter/inch*1e6) / 1e6, Unit: "inch", Span: at}, Spec)
	r.value(Value{Number: math.Round(inch / t.Pitch), Unit: "tpi", Span: at}, Spec)
}

// part takes a part number. A thread is a size, a drive names a tool and "42T"
// counts teeth.
func (r *reader) part(i int) {
	f := &r.figures[i]
	text := f.Of(r.text)
	at := r.wordAt(f.Start)
	if t, ok := trade.ParseThread(strings.TrimSuffix(text, "s")); ok && !t.Inch() && t.Diameter < thickest {
		r.value(Value{Number: t.Diameter, Unit: "mm", Span: f.Span}, Spec)
		return
	} else if ok && strings.Contains(text, "-") {
		r.inchThread(t, f.Span)
		return
	}
	if n, used := prose.ParseNumber(text[1:]); text[0] == 'P' && used == len(text)-1 && r.abraded(at, r.wordAt(f.End), n) {
		r.value(Value{Number: n, Unit: "grit", Span: f.Span}, Spec) // "sand it with P120"
		return
	}
	if v, unit, ok := lettered(text); ok && !r.announced(at) {
		r.value(Value{Number: v, Unit: unit, Span: f.Span}, Spec)
		return
	}
	if oil().MatchString(text) || f.Spoken && strings.Contains(strings.ToLower(f.Word), " w ") && !strings.Contains(f.Word, "dash") || stuffs().MatchString(text) {
		r.add(Spec)
		return
	}
	if enclosure().MatchString(text) {
		r.add(Spec)
		return
	}
	if _, ok := trade.ParseDrive(text); ok {
		if r.words[at].mood != own {
			r.add(Spec)
		}
		return
	}
	if n, used := prose.ParseNumber(text); used == len(text)-1 && (text[used] == 'T' || text[used] == 't') && n == math.Trunc(n) {
		r.value(Value{Number: n, Unit: "tooth", Span: f.Span}, Spec)
		return
	}
	if f.Spoken && len(f.Values) == 0 && r.designation(f, at) {
		return
	}
	if f.Spoken && (len(f.Values) == 0 || strings.HasPrefix("123456789", f.Word) || strings.HasSuffix("987654321", f.Word)) {
		return // "one two three, lift"
	}
	if f.Spoken {
		text = f.Word
		if len(text) == 3 && r.words[at].number && !r.announced(at) {
			r.later = append(r.later, i) // "it read two oh five"
			return
		}
	}
	r.value(Value{Part: text, Span: f.Span}, PartNumber)
}
