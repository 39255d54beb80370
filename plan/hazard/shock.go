package hazard

import (
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/trade"
)

// Up to here a voltage is one of mains and what is made of it; above are spark
// plugs, picture tubes and fences, which have classes of their own.
const mostMains = 1500 // V; IEC's upper end of low voltage, DC

// shocks adds the hazard of readings that a body must not touch: who should read
// 325 V works on a live part, whatever it is called. It asks the value and no
// words: those that the lexicon lacks would be silence, and look like safety.
//
// On a vehicle only DC counts: its AC is that of alternators and ignitions.
func (r *reader) shocks(f *finding, step int) {
	s := &r.plan.Steps[step]
	for _, id := range s.Tests {
		for _, t := range r.plan.Test(id) {
			if !slices.ContainsFunc(t.Instrument, func(id string) bool { return len(r.plan.Tool(id)) > 0 }) {
				continue // read by eye, on a display
			}
			for _, m := range r.readings(t) {
				if class := r.shock(m, flowOf(m, t.Setting.Print)); class != "" {
					h := f.of(indexOf(class), "", true)
					h.weak = 0
					h.facts = more(h.facts, []Evidence{{Kind: "test", Words: m.String(), Path: stepPath(step) + ".tests"}})
				}
			}
		}
	}
}

// readings are the measures that a test expects.
func (r *reader) readings(t *plan.Test) []trade.Measure {
	all := r.plan.Stated(t.Expect)
	for i := range t.Readings {
		all = append(all, r.plan.Stated(t.Readings[i].Expect)...)
	}
	return all
}

// shock is the class of what a reading is made on, empty where nothing says that
// it is more than extra-low voltage. A reading with only a limit from above may
// be none at all.
func (r *reader) shock(m trade.Measure, flow string) string {
	if m.Shape == trade.AtMost {
		return ""
	}
	vehicle := r.behind.has(r.lex.own.vehicle) || r.behind.has(r.lex.own.road)
	for _, q := range m.Quantities() {
		switch v, ok := q.In(trade.Volt); {
		case !ok || v.Number > mostMains:
		case !vehicle && trade.Hazardous(q, flow, trade.ExtraLow):
			return "live-test"
		case vehicle && flow == "DC" && trade.Hazardous(q, flow, trade.VehicleHigh):
			return "hv-vehicle"
		}
	}
	return ""
}

// flowOf is how a reading's current flows, by the reading or by the meter's
// setting: "V DC".
func flowOf(m trade.Measure, setting string) string {
	if m.Flow != "" {
		return m.Flow
	}
	for _, flow := range [...]string{"AC", "DC"} {
		if strings.Contains(strings.ToUpper(setting), flow) {
			return flow
		}
	}
	return ""
}
