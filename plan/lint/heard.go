package lint

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan/claim"
	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// Bounds of an utterance, the nearest that captions without full stops have to
// a sentence. Pauses between read sentences last 0.6 s and more (Liu et al.
// 2022 judged 0.6 s the most natural); fewer words than five claim nothing that
// can be told from chance; more than thirty are no sentence.
const (
	utterancePause = 0.6
	leastWords     = 5
	mostWords      = 30
	retold         = 0.4 // share of a line from which what stands in it is a retelling
)

// utterance is a stretch of talk in the edit that answers no planned line.
type utterance struct {
	claim.Claim
	first, last int // in Match.Words
	step        int // -1 for talk in no step
	start       float64
}

// ownTalk is what was said and not planned, with what it claims. Words of a
// planned line said in another way are no talk of its own: what stands between
// the first and the last word of a line that was largely heard belongs to it,
// and a single planned word within a stretch doesn't end the stretch, two do.
func (p *Pass) ownTalk() []utterance {
	m := p.Edit.Match
	planned := make([]bool, len(m.Words))
	for i, w := range m.Words {
		planned[i] = w.Line >= 0 && w.Step >= 0 // words of talk in no step meet a line by chance
	}
	for _, l := range m.Lines {
		for i := l.First; l.Found && l.Share >= retold && i >= 0 && i <= l.Last; i++ {
			planned[i] = m.Words[i].Step >= 0
		}
	}
	var all []utterance
	first := -1
	own := 0
	flush := func(end int) {
		for end > first && first >= 0 && planned[end-1] {
			end--
		}
		if first >= 0 && own >= leastWords {
			u := utterance{first: first, last: end - 1, step: m.Words[first].Step, start: m.Words[first].Start}
			var b strings.Builder
			for _, w := range m.Words[first:end] {
				b.WriteString(w.Text + " ")
			}
			u.Claim = claim.Sentence(strings.TrimSpace(b.String()))
			all = append(all, u)
		}
		first, own = -1, 0
	}
	for i, w := range m.Words {
		if first >= 0 {
			before := m.Words[i-1]
			switch {
			case w.Step != before.Step, w.Start-before.End >= utterancePause, i-first >= mostWords,
				strings.HasSuffix(before.Text, "."), strings.HasSuffix(before.Text, "?"), strings.HasSuffix(before.Text, "!"),
				planned[i] && planned[i-1]:
				flush(i)
			}
		}
		if !planned[i] {
			if first < 0 {
				first = i
			}
			own++
		}
	}
	flush(len(m.Words))
	return all
}

// report is a Report about an utterance, at the step that it belongs to or, for
// talk in no step, the one under way.
func (p *Pass) reportHeard(u utterance) Report {
	r := Report{Place: p.Edit.word(u.first)}
	step := u.step
	if step < 0 {
		step = p.Edit.underWay(u.start)
	}
	if step >= 0 {
		r.Step, r.Path = p.Plan.Steps[step].ID, stepPath(step, "say")
	}
	return r
}

// planned holds where the plan answers for what was said: each of its values
// stands in the plan, or a claim of the plan says so in these words.
func (p *Pass) planned(u utterance, values map[string]bool) bool {
	text := fold(u.Text)
	for i := range p.Plan.Claims {
		c := &p.Plan.Claims[i]
		if says := strings.Trim(strings.ReplaceAll(fold(c.Says), " . ", " "), " "); says != "" && strings.Contains(strings.ReplaceAll(text, " . ", " "), " "+says+" ") {
			return true
		}
	}
	if len(u.Values) == 0 {
		return p.tellsVersions(u.Text)
	}
	return !slices.ContainsFunc(u.Values, func(v claim.Value) bool { return !values[valueKey(v)] })
}

func valueKey(v claim.Value) string {
	if v.Part != "" {
		return strings.ToLower(v.Part)
	}
	if q, ok := quantity(v); ok {
		base := baseUnits[q.Unit.Dimension()]
		if in, same := q.In(base); base != "" && same {
			return fmt.Sprintf("%.6g %s", in.Number, base)
		}
	}
	return fmt.Sprintf("%g %s", v.Number, v.Unit)
}

// baseUnits are the units in which two values of a dimension are compared: a
// minute is sixty seconds.
var baseUnits = map[trade.Dimension]trade.Unit{
	trade.Time: "s", trade.Length: "mm", trade.Mass: "kg", trade.Volume: "L", trade.Pressure: "kPa", trade.Torque: "N·m", trade.Voltage: "V", trade.Resistance: "Ω",
}

// timeWords stand in texts that state a time without a figure: "for a minute".
var timeWords = []string{"second", "minute", "hour", "day", "week"}

// plannedValues are all values that stand somewhere in the plan.
func (p *Pass) plannedValues() map[string]bool {
	known := map[string]bool{}
	add := func(text string) {
		if strings.ContainsAny(text, "0123456789") || len(prose.Figures(text)) > 0 || slices.ContainsFunc(timeWords, func(w string) bool { return strings.Contains(text, w) }) {
			for _, v := range claim.Sentence(text).Values {
				known[valueKey(v)] = true
			}
		}
	}
	for _, w := range p.texts {
		add(w.Print)
	}
	measure := func(m trade.Measure) { add("It is " + m.String() + ".") }
	for i := range p.Plan.Specs {
		measure(p.Plan.Specs[i].Value.Measure)
	}
	for i := range p.Plan.Fasteners {
		f := &p.Plan.Fasteners[i]
		measure(f.Torque)
		add("It takes " + f.Drive + ".")
		add("It is " + f.Thread + ".")
	}
	for i := range p.Plan.Fuses {
		measure(p.Plan.Fuses[i].Rating)
	}
	for i := range p.Plan.Wires {
		measure(p.Plan.Wires[i].Section)
		measure(p.Plan.Wires[i].Length)
	}
	for i := range p.Plan.Parts {
		known[strings.ToLower(p.Plan.Parts[i].Number)] = true
	}
	return known
}

// opinionOf holds where the step says that it is the presenter's own view.
func (p *Pass) opinionOf(step int) bool {
	return step >= 0 && step < len(p.Plan.Steps) && p.Plan.Steps[step].Opinion
}
