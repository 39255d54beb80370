package sheet

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"
	"unicode/utf8"

	"fixslate/plan"
	"fixslate/plan/kit"
	"fixslate/plan/prose"
	"fixslate/shotlist"
)

type shotRow struct {
	shotlist.Shot
	Place, People, States, Without, Why, For, From, Narration string

	Hold, Begin, End []string // States, by what the shot does to them
}

// Where is the set-up with its light and sound.
func (r shotRow) Where() string {
	where := r.Place
	for _, part := range []struct{ name, words string }{{"light: ", r.Light}, {"sound: ", r.Sound}} {
		if part.words != "" {
			where = kit.Join(where, part.name+part.words)
		}
	}
	return where
}

// How is the state of the object, who is in it, and when its narration is
// recorded.
func (r shotRow) How() string {
	var how []string
	add := func(before, words, after string) {
		if words != "" {
			how = append(how, before+words+after)
		}
	}
	add("", strings.Join(r.Hold, ", "), "")
	add("from here on ", strings.Join(r.Begin, ", "), "")
	add("until now ", strings.Join(r.End, ", "), "")
	add("", r.Without, "")
	add("with ", r.People, "")
	add("narration ", r.Narration, "")
	add("", r.For, " only")
	return strings.Join(how, "; ")
}

// shownRow is a line of the coverage table.
type shownRow struct{ What, Why, Shots string }

type shotStep struct {
	Number    int
	Title, ID string
	For       string
	Detour    string
	Rows      []shotRow
}

type shotsView struct {
	Title   string
	Steps   []shotStep
	Count   int
	Camera  int
	Seconds float64
	Shown   []shownRow
}

// Shots is shots.md: the shot list in story order, a table a step, and what
// each thing that must be seen is shown by.
func Shots(p *plan.Plan, shots []shotlist.Shot, coverage []shotlist.Covered) []byte {
	v := shotsView{Title: p.Video.Title.Print, Count: len(shots)}
	for i := range p.Steps {
		s := &p.Steps[i]
		v.Steps = append(v.Steps, shotStep{Number: i + 1, Title: s.Title.Print, ID: s.ID, For: kit.VersionNames(p, s.Variants), Detour: p.Detour(s.OnlyIf)})
	}
	for _, shot := range shots {
		v.Steps[shot.Step].Rows = append(v.Steps[shot.Step].Rows, rowOf(p, shot))
		if shot.Kind == shotlist.Camera {
			v.Camera++
			v.Seconds += shot.Seconds * float64(shot.Takes)
		}
	}
	for _, c := range coverage {
		row := shownRow{What: c.What, Why: c.Why.String(), Shots: c.Said}
		var numbers []string
		for _, i := range c.Shots {
			numbers = append(numbers, strconv.Itoa(shots[i].Number))
		}
		switch {
		case len(numbers) > 0:
			row.Shots = strings.Join(numbers, ", ")
		case c.Missing():
			row.Shots = shotlist.MissingWords(c)
		}
		v.Shown = append(v.Shown, row)
	}
	return write((*out).shots, &v)
}

func rowOf(p *plan.Plan, shot shotlist.Shot) shotRow {
	states := p.StateWords(shot.States(p))
	var without []string
	for _, state := range shot.Without {
		without = append(without, "not "+p.StateWord(state))
	}
	r := shotRow{Shot: shot, States: strings.Join(append(states, without...), ", "), Without: strings.Join(without, ", "), For: kit.VersionNames(p, shot.Variants), From: "suggested"}
	r.Hold, r.Begin, r.End = shot.Turning(p)
	if shot.Setup != "" {
		r.Place = p.Name(plan.Ref{Kind: plan.KindSetup, ID: shot.Setup})
	}
	if !shot.Suggested {
		r.From = "plan"
	}
	r.People = strings.Join(shot.Who, ", ")
	var why []string
	for _, c := range shot.Covers {
		word := c.Why.String()
		if c.Ref.ID != "" {
			word += ": " + p.NameFor(c.Ref, shot.Variants)
		}
		why = append(why, word)
	}
	r.Why = strings.Join(why, "; ")
	step := &p.Steps[shot.Step]
	if shot.Kind == shotlist.Camera && len(step.Lines) > 0 {
		r.Narration = step.Narrated
	}
	return r
}

// csvHead is the first row of shots.csv; a documented, stable form.
var csvHead = []string{"number", "id", "step", "size", "of", "setup", "states", "who", "light", "sound", "narrated", "card", "takes", "seconds", "made by", "apart", "versions", "why", "from", "file"}

// ShotsCSV is shots.csv: one row a shot (RFC 4180).
func ShotsCSV(p *plan.Plan, shots []shotlist.Shot) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	write := func(cells ...string) {
		if err := w.Write(cells); err != nil {
			panic(err) // a buffer takes everything
		}
	}
	write(csvHead...)
	for _, shot := range shots {
		r := rowOf(p, shot)
		write(strconv.Itoa(shot.Number), safe(shot.ID), safe(p.Steps[shot.Step].ID), shot.Size, safe(shot.Of), safe(r.Place), safe(r.States), safe(r.People),
			safe(shot.Light), safe(shot.Sound), r.Narration, safe(shot.Card), strconv.Itoa(shot.Takes), strconv.FormatFloat(shot.Seconds, 'f', -1, 64),
			shot.Kind, yes(shot.Apart), safe(r.For), safe(r.Why), r.From, safe(shot.File))
	}
	w.Flush()
	return b.Bytes()
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return ""
}

// safe keeps a cell from becoming a formula in a spreadsheet: a leading quote
// before = + - @ tab and line ends (OWASP ASVS 5.0, 1.2.10).
func safe(text string) string {
	text = prose.Harmless(text)
	if first, _ := utf8.DecodeRuneInString(text); text != "" && strings.ContainsRune("=+-@\t\r\n\x00＝＋－＠", first) {
		return "'" + text
	}
	return text
}
