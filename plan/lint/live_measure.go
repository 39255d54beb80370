package lint

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var liveMeasure = Rule{Name: "live-measure", Group: Safety, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	for _, d := range append(p.withClass("live-test"), p.poweredTests()...) {
		if p.inForce(d.step, "power-off") && !p.inForce(d.step, "live") && !p.poweredFirst(d.step) || !p.measures(d.step) || p.lowVolts(d.step) || p.readsNoMains(d.step) {
			continue
		}
		told := p.told(d.step)
		var lacks []string
		for _, part := range liveParts {
			if !says(told, part.words...) {
				lacks = append(lacks, part.name)
			}
		}
		if len(lacks) == 0 || p.listsClass(d.step, "live-test") {
			continue
		}
		r := d.report(p)
		r.Message = fmt.Sprintf("step %q measures on live mains and says nothing of %s", p.Plan.Steps[d.step].Title.Print, strings.Join(lacks, ", "))
		r.Hint = `measure dead where that will do; else add cautions = ["live-test"] and leave_to`
		report(r)
	}
}}

// liveParts are what has to be said before anyone measures on live mains.
var liveParts = []struct {
	name  string
	words []string
}{
	{"sound leads", []string{"leads", "lead", "probes", "probe"}},
	{"the meter's category", []string{"category", "cat ii", "cat iii", "cat iv", "cat 2", "cat 3", "rated"}},
	{"one hand", []string{"one hand", "hand behind", "hand in your pocket", "one-handed"}},
	{"who may do it", licenceWords},
}

// measures holds where something is measured in a step.
func (p *Pass) measures(step int) bool {
	return len(p.Plan.Steps[step].Tests) > 0 || says(p.words[step], "measure", "measures", "measuring", "meter", "multimeter", "tester", "probe", "probes", "reading", "test lamp", "check the voltage", "read the voltage")
}

// poweredFirst holds where a step puts the power back and then measures: a state
// lasts until the last act of the step that ends it, and this one comes before.
func (p *Pass) poweredFirst(step int) bool {
	texts := []string{fold(p.Plan.Steps[step].Do.Print), ""}
	for _, l := range p.Plan.Steps[step].Lines {
		if l.Kind == plan.Spoken {
			texts[1] += fold(l.Print)
		}
	}
	return slices.ContainsFunc(texts, poweredThenMeasured().MatchString)
}

// poweredTests are steps that put the power back and then measure mains: by the
// state that they end the reader of hazards takes them for dead, and doesn't see
// live work.
func (p *Pass) poweredTests() []danger {
	var found []danger
	for i := range p.Hazards.Steps {
		mains := says(p.words[i], "mains voltage", "line voltage", "supply voltage", "live and neutral", "live to neutral")
		if p.has(i, "live-test") || !(mains && p.poweredFirst(i)) && !measuredOn().MatchString(p.words[i]) {
			continue
		}
		for _, h := range p.Hazards.Steps[i].Hazards {
			if h.Family == "mains-shock" && !h.Perhaps() {
				found = append(found, danger{i, h})
				break
			}
		}
	}
	return found
}

var poweredThenMeasured = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(` (?:plug (?:\S+ ){0,3}in|(?:switch|turn|power) (?:\S+ ){0,3}on|(?:power|breaker|mains) (?:back )?on) .*\b(?:measure|meter|probe|read)`)
})

// measuredOn is a voltage, or a terminal with a tester on it, that is measured while
// the power is said to be on.
var measuredOn = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(` (?:(?:plug|switch|turn) (?:it |[^ .]+ [^ .]+ )?(?:in|on)|with the (?:power|breaker|mains|switch|fuse|current) on|while (?:it is|it's) (?:on|live|running|plugged in)|still plugged in) (?:[^.]+ )?(?:(?:measure|check|read) (?:[^ .]+ ){0,4}(?:voltage|volts|terminals?)|(?:meter|tester|probes?|test leads?) (?:[^ .]+ ){0,3}(?:on|at|to|across|into) ) ?`)
})

// lowVolts holds where every voltage that a step says or expects is at most 50 V,
// which does not kill by touch (IEC 60449, from memory), and the mains is not named.
func (p *Pass) lowVolts(step int) bool {
	const touchable = 50
	var volts []trade.Quantity
	for _, s := range p.said {
		for _, v := range s.Values {
			if q, ok := quantity(v); ok && s.step == step {
				volts = append(volts, q)
			}
		}
	}
	for _, id := range p.Plan.Steps[step].Tests {
		for _, m := range p.expected(id) {
			volts = append(volts, m.Quantities()...)
		}
	}
	volts = slices.DeleteFunc(volts, func(q trade.Quantity) bool { return q.Unit.Dimension() != trade.Voltage })
	return len(volts) > 0 && !says(p.words[step], "mains", "live") && !slices.ContainsFunc(volts, func(q trade.Quantity) bool {
		v, _ := q.In(trade.Volt)
		return v.Number > touchable
	})
}

// readsNoMains holds where each reading that a step's tests expect is of what no live
// part shows, as a tone, a speed or a temperature, and no word of the step names what
// would be live. Near the mains' own 50 and 60 Hz a frequency is the mains'.
func (p *Pass) readsNoMains(step int) bool {
	read := 0
	for _, id := range p.Plan.Steps[step].Tests {
		for _, m := range p.expected(id) {
			for _, q := range m.Quantities() {
				switch read++; q.Unit.Dimension() {
				case trade.Temperature, trade.Speed, trade.Rotation, trade.SoundLevel, trade.Length, trade.Pressure, trade.Flow, trade.Time, trade.Mass, trade.Lighting:
				case trade.Frequency:
					if hz, ok := q.In("Hz"); !ok || hz.Number > 40 && hz.Number < 70 {
						return false
					}
				default:
					return false
				}
			}
		}
	}
	return read > 0 && !says(p.words[step], "mains", "live", "terminal", "terminals", "voltage", "volts", "supply", "socket outlet", "phase", "neutral")
}

// listsClass holds where the step lists a caution of the class.
func (p *Pass) listsClass(step int, id string) bool {
	s := &p.Plan.Steps[step]
	return slices.ContainsFunc(s.Cautions, func(use plan.StepCaution) bool {
		c := p.Plan.CautionOf(s, use)
		return c != nil && c.Class == id
	})
}
