package lint

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var specImplausible = Rule{Name: "spec-implausible", Group: Truth, Severity: diag.Warning, Check: func(p *Pass) []Report {
	var found []Report
	check := func(path, what string, m trade.Measure) {
		if why := implausible(fold(what), m); why != "" {
			found = append(found, Report{
				Message: fmt.Sprintf("%s: %s can't be: %s", what, m, why),
				Hint:    "look at the source, the unit and the decimal point again",
				Path:    path,
			})
		}
	}
	for i, s := range p.Plan.Specs {
		check(row(plan.KindSpec, i, "value"), s.What.Print, s.Value.Measure)
	}
	for i, t := range p.Plan.Tests {
		words := strings.TrimSpace(t.At.Print + " " + t.Question.Print)
		if len(t.Expect.Quotes) == 0 {
			check(row(plan.KindTest, i, "expect"), words, t.Expect.Measure)
		}
		for j, r := range t.Readings {
			if len(r.Expect.Quotes) == 0 {
				check(fmt.Sprintf("test[%d].reading[%d].expect", i, j), strings.TrimSpace(r.At.Print+" "+words), r.Expect.Measure)
			}
		}
	}
	for i, f := range p.Plan.Fuses {
		amps, known := amperes(f.Rating)
		if form, ok := trade.FuseForm(f.Form); ok && known && !fuseMade(form, amps) {
			found = append(found, Report{
				Message: fmt.Sprintf("%s: no %s fuse of %s is made", cmp.Or(f.At.Print, "fuse"), form, f.Rating),
				Hint:    "check rating and form (fixslate look fuse)",
				Path:    row(plan.KindFuse, i, "rating"),
			})
		}
	}
	for i, f := range p.Plan.Fasteners {
		if metricLike(f.Thread) {
			if _, ok := trade.ParseThread(f.Thread); !ok {
				found = append(found, Report{
					Message: fmt.Sprintf("%s: no table has the thread %s", f.What.Print, f.Thread),
					Hint:    "check the size (fixslate look thread)",
					Path:    row(plan.KindFastener, i, "thread"),
				})
			}
		}
	}
	return found
}}

// metricLike holds for a thread that is meant as an ISO metric one: "M7.5".
func metricLike(thread string) bool {
	return len(thread) > 1 && (thread[0] == 'M' || thread[0] == 'm') && thread[1] >= '0' && thread[1] <= '9'
}

func fuseMade(form string, amps float64) bool {
	return slices.ContainsFunc(trade.Fuses(), func(f trade.Fuse) bool { return f.Form == form && f.Amps == amps })
}

// bounds are what a thing in a repair can have, by the words that name it.
// Where several words stand in a row, all must be there.
var bounds = []struct {
	words  []string
	unit   trade.Unit
	lo, hi float64
	source string
}{
	{[]string{"battery", "rest"}, trade.Volt, 9, 29, "a lead-acid battery at rest has 10.5 to 12.9 V, two in series double"},
	{[]string{"battery", "resting"}, trade.Volt, 9, 29, "a lead-acid battery at rest has 10.5 to 12.9 V, two in series double"},
	{[]string{"drop"}, trade.Volt, 0, 10, "a wire or joint that works drops tenths of a volt"},
	{[]string{"alternator"}, trade.Volt, 12, 30, "alternators charge with 13.7 to 14.7 V, in 24 V systems double"},
	{[]string{"engine", "running"}, trade.Volt, 12, 30, "alternators charge with 13.7 to 14.7 V, in 24 V systems double"},
	{[]string{"mains"}, trade.Volt, 90, 440, "mains is 100 to 240 V, and 400 V between phases (IEC 60038)"},
	{[]string{"tyre"}, trade.Kilopascal, 70, 1000, "tyres take 1.5 to 3.5 bar on cars and up to 9 bar on bicycles"},
	{[]string{"tire"}, trade.Kilopascal, 70, 1000, "tyres take 1.5 to 3.5 bar on cars and up to 9 bar on bicycles"},
	{[]string{"radiator", "cap"}, trade.Kilopascal, 20, 250, "cooling-system caps open at 90 to 145 kPa"},
	{[]string{"vacuum"}, trade.Kilopascal, -101.325, 110, "no vacuum is deeper than 101.3 kPa below the air (NIST SP 811, standard atmosphere)"},
	{[]string{"spark", "gap"}, trade.Millimetre, 0.2, 2, "spark plug gaps are 0.4 to 1.5 mm"},
	{[]string{"plug", "gap"}, trade.Millimetre, 0.2, 2, "spark plug gaps are 0.4 to 1.5 mm"},
	{[]string{"idle"}, "rpm", 200, 6000, "engines idle at 500 to 3500 turns a minute"},
}

// implausible says in words why a value can't be, or is empty.
func implausible(what string, m trade.Measure) string {
	for _, q := range m.Quantities() {
		if why := impossible(q); why != "" {
			return why
		}
		for _, b := range bounds {
			in, same := q.In(b.unit)
			if !same || slices.ContainsFunc(b.words, func(w string) bool { return !says(what, w, w+"s") }) {
				continue
			}
			// The lower end of a limit from above is open, and the other way round.
			if in.Number > b.hi || in.Number < b.lo && m.Shape != trade.AtMost {
				return b.source
			}
		}
	}
	return ""
}

// impossible says why no such quantity exists.
func impossible(q trade.Quantity) string {
	switch q.Unit.Dimension() {
	case trade.Resistance, trade.Length, trade.Area, trade.Volume, trade.Mass, trade.Capacitance, trade.Frequency:
		if q.Number < 0 {
			return "it is less than nothing"
		}
	case trade.Temperature:
		if c, ok := q.In(trade.Celsius); ok && c.Number < -273.15 {
			return "nothing is colder than -273.15 °C"
		}
	case trade.Pressure:
		if k, ok := q.In(trade.Kilopascal); ok && k.Number < -101.4 {
			return "no vacuum is deeper than 101.3 kPa below the air"
		}
	case trade.SoundLevel:
		if q.Number > 194 {
			return "no sound in air is louder than 194 dB"
		}
	}
	return ""
}
