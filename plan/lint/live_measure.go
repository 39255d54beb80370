package lint

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var liveMeasure = Rule{Name: "live-measure", Group: Safety, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	for _, d := range append(p.withClass("live-test"), p.poweredTests()...) {
		if p.inForce(d.step, "power-off") && !p.inForce(d.step, "live") && !p.poweredFirst(d.step) || !p.measures(d.step) {
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
	return len(p.Plan.Steps[step].Tests) > 0 || says(p.words[step], "measure", "measures", "measuring", "meter", "multimeter", "tester", "probe", "probes", "reading", "test lamp")
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
		if p.has(i, "live-test") || !says(p.words[i], "mains voltage", "line voltage", "supply voltage", "live and neutral", "live to neutral") || !p.poweredFirst(i) {
			continue
		}
		for _, h := range p.Hazards.Steps[i].Hazards {
			if h.Family == "mains-shock" {
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

// listsClass holds where the step lists a caution of the class.
func (p *Pass) listsClass(step int, id string) bool {
	s := &p.Plan.Steps[step]
	return slices.ContainsFunc(s.Cautions, func(use plan.StepCaution) bool {
		c := p.Plan.CautionOf(s, use)
		return c != nil && c.Class == id
	})
}
