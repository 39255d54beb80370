package lint

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var specImplausible = Rule{Name: "spec-implausible", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	subject := fold(p.Plan.Video.Subject.Print + " . " + p.Plan.Video.Title.Print)
	check := func(path, what string, m trade.Measure) (wrong bool) {
		why := cmp.Or(implausible(fold(what), subject, m), unnatural(what, m))
		if why != "" {
			report(Report{
				Message: fmt.Sprintf("%s: %s can't be: %s", what, m, why),
				Hint:    "look at the source, the unit and the decimal point again",
				Path:    path,
			})
		}
		return why != ""
	}
	wrong := map[string]bool{}
	for i, s := range p.Plan.Specs {
		if check(row(plan.KindSpec, i, "value"), s.What.Print, s.Value.Measure) {
			wrong[s.ID] = true
		}
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
	p.unmade(report)
	p.unreadable(wrong, report)
}}

// unmade are fuses, threads and wires that nobody makes.
func (p *Pass) unmade(report func(Report)) {
	for i := range p.Plan.Wires {
		w := &p.Plan.Wires[i]
		if key, why := unwired(w); why != "" {
			value := map[string]trade.Measure{"section": w.Section, "length": w.Length}[key]
			report(Report{
				Message: fmt.Sprintf("%s: %s %s can't be: %s", w.ID, key, value, why),
				Hint:    "look at the diagram, the unit and the decimal point again",
				Path:    row(plan.KindWire, i, key),
			})
		}
	}
	for i, f := range p.Plan.Fuses {
		amps, known := f.Rating.Exactly(trade.Ampere)
		if form, ok := trade.FuseForm(f.Form); ok && known && !fuseMade(form, amps) {
			report(Report{
				Message: fmt.Sprintf("%s: no %s fuse of %s is made", cmp.Or(f.At.Print, "fuse"), form, f.Rating),
				Hint:    "check rating and form (fixslate look fuse)",
				Path:    row(plan.KindFuse, i, "rating"),
			})
		}
	}
	for i, f := range p.Plan.Fasteners {
		if unclassed(f.Grade) {
			report(Report{
				Message: fmt.Sprintf("%s: there is no property class %s", f.What.Print, f.Grade),
				Hint:    "it stands on the head, like 8.8, 10.9 or A2-70",
				Path:    row(plan.KindFastener, i, "grade"),
			})
		}
		_, known := trade.ParseThread(f.Thread)
		if known || !unwritten(f.Thread) && (!metricLike(f.Thread) || fineThread(f.Thread)) {
			continue
		}
		report(Report{
			Message: fmt.Sprintf("%s: no table has the thread %s", f.What.Print, f.Thread),
			Hint:    "check the size (fixslate look thread)",
			Path:    row(plan.KindFastener, i, "thread"),
		})
	}
}

// grades are the property classes of steel screws (ISO 898-1) and nuts
// (ISO 898-2), and the grades of inch screws: from memory.
var grades = []string{"3.6", "4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9", "14.9", "4", "5", "6", "8", "9", "10", "12", "14", "2", "7"}

// unclassed holds for a grade in figures that no screw or nut has: "88".
func unclassed(grade string) bool {
	return grade != "" && strings.Trim(grade, "0123456789.") == "" && !slices.Contains(grades, grade)
}

// metricLike holds for a thread that is meant as an ISO metric one: "M7.5".
func metricLike(thread string) bool {
	return len(thread) > 1 && (thread[0] == 'M' || thread[0] == 'm') && thread[1] >= '0' && thread[1] <= '9'
}

// unwritten holds for a thread of one capital letter and a size where no
// standard's threads have that letter: "N5". Common practice, no source.
func unwritten(thread string) bool {
	return len(thread) > 1 && thread[0] >= 'A' && thread[0] <= 'Z' && !strings.ContainsRune("MGRWESTBPAUL", rune(thread[0])) && strings.Trim(thread[1:], "0123456789.") == ""
}

// fineThread holds for a thread wider than the tables go with one of the
// pitches of ISO 261, as nuts of taps, lamps and hubs have: "M40x1.5".
func fineThread(thread string) bool {
	size, pitch, found := strings.Cut(strings.ToLower(thread[1:]), "x")
	d, err := strconv.ParseFloat(strings.TrimSpace(size), 64)
	p, err2 := strconv.ParseFloat(strings.TrimSpace(pitch), 64)
	return found && err == nil && err2 == nil && d >= 8 && d <= 300 && p < d/4 && slices.Contains([]float64{0.75, 1, 1.25, 1.5, 2, 3, 4, 6}, p)
}

func fuseMade(form string, amps float64) bool {
	return slices.ContainsFunc(trade.Fuses(), func(f trade.Fuse) bool { return f.Form == form && f.Amps == amps })
}

// bound is what a thing can have, by the words that name it: all of words are
// there in the fact's name, none of but there or in the plan's subject, and one of
// of, if it has any, in either.
type bound struct {
	words, but []string
	of         []string
	unit       trade.Unit
	lo, hi     float64
	why        string
}

// bounds are an order of magnitude wider than what is met, so that they catch a
// wrong unit or decimal point and nothing finer. Where a reason names no
// source it is common practice, no source.
var bounds = []bound{
	{[]string{"battery", "rest"}, smallCells, nil, trade.Volt, 9, 60, "a lead-acid battery at rest has 10.5 to 12.9 V, two in series double"},
	{[]string{"battery", "resting"}, smallCells, nil, trade.Volt, 9, 60, "a lead-acid battery at rest has 10.5 to 12.9 V, two in series double"},
	{[]string{"drop"}, nil, nil, trade.Volt, 0, 10, "a wire or joint that works drops tenths of a volt"},
	{[]string{"alternator"}, nil, nil, trade.Volt, 12, 60, "alternators charge with 13.7 to 14.7 V, in 24 V systems double"},
	{[]string{"engine", "running"}, nil, nil, trade.Volt, 12, 60, "alternators charge with 13.7 to 14.7 V, in 24 V systems double"},
	{[]string{"key", "on"}, nil, nil, trade.Volt, 0, 60, "what the key of a vehicle switches has 12, 24 or 48 V"},
	{[]string{"ignition", "on"}, nil, nil, trade.Volt, 0, 60, "what the key of a vehicle switches has 12, 24 or 48 V"},
	{[]string{"mains"}, nil, nil, trade.Volt, 90, 440, "mains is 100 to 240 V, and 400 V between phases (IEC 60038)"},
	{[]string{"horn"}, nil, nil, trade.DecibelA, 60, 135, "horns make 83 to 118 dB(A) at two metres (fixslate look sound)"},
	{[]string{"blow", "gun"}, nil, nil, trade.Kilopascal, 0, 300, "air for cleaning has less than 207 kPa (30 psi) at the nozzle (29 CFR 1910.242(b); fixslate look pressure)"},
	{[]string{"tyre"}, nil, nil, trade.Kilopascal, 70, 1000, "tyres take 1.5 to 3.5 bar on cars and up to 9 bar on bicycles"},
	{[]string{"tire"}, nil, nil, trade.Kilopascal, 70, 1000, "tyres take 1.5 to 3.5 bar on cars and up to 9 bar on bicycles"},
	{[]string{"radiator", "cap"}, nil, nil, trade.Kilopascal, 20, 250, "cooling-system caps open at 90 to 145 kPa"},
	{[]string{"compression"}, nil, nil, trade.Kilopascal, 200, 7000, "engines compress to 7 to 15 bar, diesels to 40 bar"},
	{[]string{"vacuum"}, nil, nil, trade.Kilopascal, -101.325, 110, "no vacuum is deeper than 101.3 kPa below the air (NIST SP 811, standard atmosphere)"},
	{[]string{"spark", "gap"}, nil, nil, trade.Millimetre, 0.2, 2, "spark plug gaps are 0.4 to 1.5 mm"},
	{[]string{"plug", "gap"}, nil, nil, trade.Millimetre, 0.2, 2, "spark plug gaps are 0.4 to 1.5 mm"},
	{[]string{"valve", "clearance"}, nil, nil, trade.Millimetre, 0, 2, "valve clearances are tenths of a millimetre"},
	{[]string{"pad", "lining"}, nil, nil, trade.Millimetre, 0.2, 40, "brake pads have a few millimetres of lining"},
	{[]string{"pad", "lining"}, nil, cycles, trade.Millimetre, 0.2, 6, "the pads of a bicycle have two to four millimetres of lining"},
	{[]string{"idle"}, nil, nil, "rpm", 200, 6000, "engines idle at 500 to 3500 turns a minute"},
	{[]string{"winding"}, nil, nil, "Ω", 0, 50e3, "motor and pump windings have ohms to hundreds of ohms, ignition coils up to 20 kΩ"},
	{[]string{"resistor", "pack"}, nil, nil, "Ω", 0, 1e3, "the resistors of a blower have a few ohms at most"},
	{[]string{"heating", "element"}, nil, nil, "Ω", 0.1, 10e3, "heating elements have 5 to 500 Ω"},
	{[]string{"heater", "element"}, nil, nil, "Ω", 0.1, 10e3, "heating elements have 5 to 500 Ω"},
	{[]string{"glow", "plug"}, nil, nil, "Ω", 0, 20, "glow plugs have about 1 Ω"},
	{[]string{"insulation"}, nil, nil, "Ω", 10e3, 1e15, "insulation has megohms"},
	{[]string{"headlamp", "bulb"}, nil, nil, "W", 1, 500, "lamp bulbs of vehicles take 1.2 to 100 W"},
	{[]string{"test", "bulb"}, nil, nil, "W", 1, 500, "lamp bulbs of vehicles take 1.2 to 100 W"},
	{[]string{"tips", "together"}, nil, nil, "Ω", 0, 3, "test leads by themselves have tenths of an ohm"},
	{[]string{"leads", "together"}, nil, nil, "Ω", 0, 3, "test leads by themselves have tenths of an ohm"},
	{[]string{"wait", "run"}, nil, nil, "s", 60, 2 * 86400, "what has run hot cools for minutes"},
	{[]string{"wait", "ride"}, nil, nil, "s", 60, 2 * 86400, "what has run hot cools for minutes"},
	{[]string{"wait", "drive"}, nil, nil, "s", 60, 2 * 86400, "what has run hot cools for minutes"},
	{[]string{"held"}, []string{"glue", "glued", "clamp", "clamped", "epoxy", "resin", "weight", "weighted"}, nil, "s", 0, 3600, "what a hand holds it holds for seconds or minutes"},
	{[]string{"height", "floor"}, nil, nil, "m", 0, 6, "what stands above a floor stands under a ceiling"},
	{[]string{"wait", "battery"}, nil, nil, "s", 20, 2 * 86400, "a wait with the battery off is minutes: the charge that fires an airbag has to run down"},
	{[]string{"wait", "battery", "off"}, nil, nil, "s", 20, 7200, "a wait with the battery off is minutes: the charge that fires an airbag has to run down"},
	{[]string{"wait", "airbag"}, nil, nil, "s", 20, 7200, "a wait with the battery off is minutes: the charge that fires an airbag has to run down"},
}

// cycles are what a rider's own weight and legs stop and drive.
var cycles = []string{"bicycle", "bike", "cycle", "e-bike", "ebike", "tandem", "trike", "kick scooter"}

// smallCells are batteries of other kinds than a vehicle's.
var smallCells = []string{"cell", "cells", "lithium", "li-ion", "phone", "smartphone", "tablet", "laptop", "pack", "coin", "button", "alkaline", "e-bike", "ebike", "bicycle", "scooter", "cordless", "drill", "camera", "watch", "clock", "remote", "alarm"}

// named holds where a folded text names the bound's thing.
func (b bound) named(what, subject string) bool {
	if slices.ContainsFunc(b.words, func(w string) bool { return !says(what, w, w+"s") }) {
		return false
	}
	if len(b.of) > 0 && !says(what, b.of...) && !says(subject, b.of...) {
		return false
	}
	return !says(what, b.but...) && !says(subject, b.but...)
}

// implausible says in words why a value can't be, or is empty.
func implausible(what, subject string, m trade.Measure) string {
	for _, q := range m.Quantities() {
		if why := cmp.Or(impossible(q), offSystem(what, subject, m, q)); why != "" {
			return why
		}
		for _, b := range bounds {
			in, same := q.In(b.unit)
			if !same || !b.named(what, subject) {
				continue
			}
			// The lower end of a limit from above is open, and the other way round.
			if in.Number > b.hi || in.Number < b.lo && m.Shape != trade.AtMost {
				return b.why
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
