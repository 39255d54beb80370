package lint

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/trade"
)

// scale is what an instrument, or a meter at a setting, can read, by the words
// that name it.
type scale struct {
	words      []string
	dimensions []trade.Dimension
	most       float64 // of a length, in m; 0: any
}

// scales are asked in order; the first that is named decides. Common practice,
// no source.
var scales = []scale{
	{[]string{"volts", "volt", "voltage", "millivolts"}, []trade.Dimension{trade.Voltage}, 0},
	{[]string{"ohms", "ohm", "resistance", "kilohms", "megohms"}, []trade.Dimension{trade.Resistance}, 0},
	{[]string{"amps", "amp", "amperes", "milliamps", "current"}, []trade.Dimension{trade.Current}, 0},
	{[]string{"multimeter", "meter"}, []trade.Dimension{trade.Voltage, trade.Resistance, trade.Current, trade.Capacitance, trade.Frequency, trade.Temperature, trade.Ratio, trade.Power, trade.Inductance}, 0},
	{[]string{"thermometer"}, []trade.Dimension{trade.Temperature}, 0},
	{[]string{"stopwatch", "watch", "timer", "clock"}, []trade.Dimension{trade.Time, trade.Frequency, trade.Rotation, trade.Flow, trade.Speed}, 0},
	{[]string{"ruler", "rule", "feeler", "feelers", "caliper", "calipers", "micrometer", "vernier", "depth gauge", "sliding gauge", "dial gauge"}, []trade.Dimension{trade.Length, trade.Angle}, 3},
	{[]string{"tape", "tape measure"}, []trade.Dimension{trade.Length}, 100},
	{[]string{"jug", "measuring cup", "bucket", "beaker", "cylinder", "syringe"}, []trade.Dimension{trade.Volume, trade.Flow}, 0},
	{[]string{"scales", "scale", "spring balance", "luggage scale"}, []trade.Dimension{trade.Mass, trade.Force}, 0},
	{[]string{"tyre gauge", "tire gauge", "pressure gauge", "manometer", "vacuum gauge"}, []trade.Dimension{trade.Pressure, trade.Length}, 0},
	{[]string{"tachometer"}, []trade.Dimension{trade.Rotation, trade.Frequency}, 0},
}

// unreadable are readings that no instrument of their test can give: ohms on a
// meter that is set to volts, metres on a ruler.
// wrong are the specs that are told already.
func (p *Pass) unreadable(wrong map[string]bool, report func(Report)) {
	look := func(t *plan.Test, path string, instruments []string, v plan.Value) bool {
		means := slices.Concat([]string{t.Setting.Print}, instruments)
		if slices.ContainsFunc(v.Quotes, func(q plan.Quote) bool { return q.Ref.Kind == plan.KindSpec && wrong[q.Ref.ID] }) {
			return false // it is told where it stands
		}
		for _, m := range p.Plan.Stated(v) {
			if by, ok := p.cannotRead(means, m); ok {
				report(Report{
					Message: fmt.Sprintf("test %q: %s does not read %s", cmp.Or(t.Question.Print, t.ID), by, m),
					Hint:    "check the unit of the reading, the instrument and its setting against one another",
					Path:    path,
				})
				return true
			}
		}
		return false
	}
	for i := range p.Plan.Tests {
		t := &p.Plan.Tests[i]
		if len(t.Readings) == 0 {
			look(t, row(plan.KindTest, i, "expect"), t.Instrument, t.Expect)
		}
		for j := range t.Readings {
			r := &t.Readings[j]
			instruments := t.Instrument
			if len(r.Instrument) > 0 {
				instruments = r.Instrument
			}
			if look(t, fmt.Sprintf("test[%d].reading[%d].expect", i, j), instruments, r.Expect) && len(r.Instrument) == 0 {
				break // the setting or the instrument is the test's: once is enough
			}
		}
	}
}

// cannotRead holds where a setting or the instruments are known and none of them
// reads a measure; by is what was looked at. The setting decides by itself.
func (p *Pass) cannotRead(means []string, m trade.Measure) (by string, ok bool) {
	for i, name := range means {
		words := name
		for _, t := range p.Plan.Tool(name) {
			words = t.Name.Print
		}
		at := slices.IndexFunc(scales, func(s scale) bool { return says(fold(words), s.words...) })
		switch {
		case at < 0 && i == 0:
			continue // no setting
		case at < 0:
			return "", false
		case scales[at].reads(m):
			return "", false
		case i == 0:
			return fmt.Sprintf("a meter set to %s", words), true
		}
		by = strings.TrimSpace(cmp.Or(by+" or "+words, words))
		by = strings.TrimPrefix(by, "or ")
	}
	return by, by != ""
}

func (s scale) reads(m trade.Measure) bool {
	for _, q := range m.Quantities() {
		if q.Unit == "" || q.Unit.Dimension() == "" {
			continue
		}
		if !slices.Contains(s.dimensions, q.Unit.Dimension()) {
			return false
		}
		if in, ok := q.In("m"); ok && s.most > 0 && in.Number > s.most {
			return false
		}
	}
	return true
}
