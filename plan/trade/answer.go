package trade

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Answer works out what a key asks of a table and no row holds: how long 98
// dB(A) may last, what 10 A lose on 5 m of 1.5 mm², what each rule says of 48 V
// DC. False where nothing can be worked out from the figures; Find then looks
// for rows.
func (t Table) Answer(key string) (Table, bool) {
	if t.answer == nil || len(key) > maxMeasure {
		return Table{}, false
	}
	q := question{rows: t.Rows}
	for _, term := range readTerms(key) {
		switch {
		case !term.isNumber:
			q.words = append(q.words, term)
		case term.q.Unit == "":
			q.figures = append(q.figures, Quantity{Number: term.q.Number, Unit: t.bare})
		default:
			q.figures = append(q.figures, term.q)
		}
	}
	answer := t.answer(&q)
	if answer.Rows == nil || len(q.figures) > 0 || len(q.words) > 0 {
		return Table{}, false
	}
	answer.Name, answer.Notes = t.Name, append(answer.Notes, t.Notes...)
	if answer.Title == "" {
		answer.Title, answer.Columns = t.Title, t.Columns
	}
	return answer, true
}

// question is a key's figures and words. Who answers takes those it understands:
// of a key of which something is left over the answer would be another's.
type question struct {
	rows    []Row
	figures []Quantity
	words   []term
}

// take takes the figures that can be said in a unit, in it.
func (q *question) take(unit Unit) []float64 {
	var taken []float64
	q.figures = slices.DeleteFunc(q.figures, func(f Quantity) bool {
		in, ok := f.In(unit)
		if ok {
			taken = append(taken, in.Number)
		}
		return ok
	})
	return taken
}

// flow takes the words "AC" and "DC".
func (q *question) flow() string {
	flow := ""
	q.words = slices.DeleteFunc(q.words, func(t term) bool {
		word := strings.ToUpper(t.word)
		if word == "AC" || word == "DC" {
			flow = word
		}
		return word == flow
	})
	return flow
}

// battery answers what a rest voltage says of a battery.
func (q *question) battery() Table {
	volts := q.take(Volt)
	if len(volts) != 1 {
		return Table{}
	}
	t := Table{Title: "What a lead-acid battery holds by its rest voltage", Columns: []string{"Battery", "At rest, V", "State of charge"}}
	for _, c := range StateOfCharge(volts[0]) {
		t.Rows = append(t.Rows, Row{Cells: []string{c.Battery, formatNumber(volts[0]), chargeText(c.Low, c.High)}, Source: c.Source})
	}
	if WantsCharge(volts[0]) {
		t.Notes = []string{"By every table half its charge or less: charge it before anything is measured on it."}
	}
	return t
}

// charging answers which windows hold a voltage at the terminals.
func (q *question) charging() Table {
	volts := q.take(Volt)
	if len(volts) != 1 {
		return Table{}
	}
	return limitTable("Charging windows that hold "+withUnit(formatNumber(volts[0]), volts[0], Volt), ChargingAt(volts[0]))
}

// voltage answers what each rule says of a voltage.
func (q *question) voltage() Table {
	volts, flow := q.take(Volt), q.flow()
	if len(volts) != 1 {
		return Table{}
	}
	asked := strings.TrimSpace(withUnit(formatNumber(volts[0]), volts[0], Volt) + " " + flow)
	t := Table{Title: "What rules say of " + asked, Columns: []string{"Rule", "Line, V", asked, "Note"}}
	if flow == "" {
		t.Notes = []string{"Neither AC nor DC is said: it is held to the lines for AC, which are lower."}
	}
	answers, _ := ShockBand(Quantity{Number: volts[0], Unit: Volt}, flow)
	for _, a := range answers {
		line := choose(flow == "DC", figures(a.Rule.DC), figures(a.Rule.AC))
		t.Rows = append(t.Rows, Row{Cells: []string{a.Rule.Name, line, choose(a.Above, "beyond", "within"), a.Rule.Note}, Source: a.Rule.Source})
	}
	return t
}

// noise answers how long a level may last, and what share of a day's noise some
// minutes of it are.
func (q *question) noise() Table {
	levels, minutes := q.take(DecibelA), q.take(Minute)
	if len(levels) != 1 || len(minutes) > 1 {
		return Table{}
	}
	t := Table{Rows: []Row{noiseRow(levels[0])}}
	for _, min := range minutes {
		cells := []string{formatNumber(min) + " min, share of a day's"}
		for _, rule := range noiseRules {
			dose := NoiseDose(rule, []Exposure{{levels[0], min}})
			cells = append(cells, choose(math.IsInf(dose, 1), "none is permitted", figures(100*dose)+"%"))
		}
		t.Rows = append(t.Rows, Row{Cells: cells, Source: noiseSource})
	}
	return t
}

// sound answers how loud what rules name is at another distance: of the rows
// that the key's words name, or of a level and the distance it was measured at.
func (q *question) sound() Table {
	levels, distances, words := q.take(DecibelA), q.take("m"), q.words
	q.words = nil
	t := Table{Title: "Levels carried to another distance in the open, dB(A)", Columns: []string{"What", "At least", "At most", "At distance"}}
	add := func(r soundRow, to float64) {
		low, ok := LevelAt(r.Low, r.distance, to)
		high, _ := LevelAt(r.High, r.distance, to)
		if ok {
			t.Rows = append(t.Rows, Row{Source: r.Source, Cells: []string{fmt.Sprintf("%s (at %s m)", r.Item, formatNumber(r.distance)),
				choose(r.HasLow, figures(low), "-"), choose(r.HasHigh, figures(high), "-"), formatNumber(to) + " m"}})
		}
	}
	switch {
	case len(levels) == 0 && len(distances) == 1:
		for i, r := range soundRows {
			if !slices.ContainsFunc(words, func(w term) bool { return !q.rows[i].fits(w) }) {
				add(r, distances[0])
			}
		}
	case len(levels) == 1 && len(distances) == 2 && len(words) == 0:
		given := window(formatNumber(levels[0])+" dB(A)", levels[0], levels[0], dBA).from("computed: L - 20 log10 of the distances' ratio")
		add(soundRow{given, distances[0]}, distances[1])
	}
	return t
}

// wire answers what a current loses on a length of wire, as warm as the key says.
func (q *question) wire() Table {
	sections, currents, lengths, warm := q.take(SquareMM), q.take(Ampere), q.take("m"), q.take(Celsius)
	if len(sections) != 1 || len(currents) != 1 || len(lengths) != 1 || len(warm) > 1 {
		return Table{}
	}
	run := Run{
		Section: Quantity{Number: sections[0], Unit: SquareMM}, Length: Quantity{Number: lengths[0], Unit: "m"}, Current: Quantity{Number: currents[0], Unit: Ampere},
		Celsius: slices.Max(append(warm, 20)),
	}
	t := Table{
		Title:   fmt.Sprintf("%s over %s of %s mm² at %s °C", run.Current, run.Length, figures(sections[0]), formatNumber(run.Celsius)),
		Columns: []string{"Way back", "V lost", "at most, V", "of 12 V, %"},
	}
	for way, name := range [...]string{TwoWire: "a wire of the same kind", Chassis: "the body, whose own loss comes on top"} {
		run.Return = Return(way)
		if d, ok := VoltageDrop(run); ok {
			t.Rows = append(t.Rows, Row{Cells: []string{name, figures(d.Ideal), figures(d.Worst), figures(100 * d.Worst / 12)},
				Source: "resistivity of copper 0.017241 Ω·mm²/m (NBS Handbook 100); " + iso6722})
		}
	}
	if a, ok := FuseForWire(run.Section); ok {
		t.Notes = []string{fmt.Sprintf("Tables give this wire %s to %s A: no larger fuse protects it.", figures(a.Least), figures(a.Most))}
	}
	return t
}
