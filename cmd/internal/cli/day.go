package cli

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"github.com/spf13/cobra"

	"fixslate/cmd/internal/build"
	"fixslate/plan/diag"
	"fixslate/shotlist"
	"fixslate/templates/picture"
)

type dayOptions struct {
	onePlan
	got string
}

func newDay(s streams) *cobra.Command {
	o := &dayOptions{onePlan: newOnePlan(s, "text", "json", "svg")}
	cmd := o.command(&cobra.Command{
		Use:   "day PLAN",
		Short: "order the shots of the shoot day",
		Long: `Day puts the shots into the order with the shortest change-overs that the
object's states allow, and lays the clock over them: breaks, helpers, cards and
batteries, and before each change of state the shots that must be in the can.

With --got it plans what is left: FILE lists the shots that are made already, one
id a line, as the shoot book copies them out.`,
		Example: "  fixslate day washer.toml\n  fixslate day washer.toml --got ticked.txt\n  fixslate day washer.toml --format svg > day.svg",
	}, func() error { return runDay(o) })
	cmd.Flags().StringVar(&o.got, "got", "", "a `FILE` with the shots that are made already")
	return cmd
}

func runDay(o *dayOptions) error {
	if o.plan == "-" && o.got == "-" {
		return errors.New("standard input can't be both the plan and the list of shots; name a file for one of them")
	}
	r, err := read(o.streams, o.plan)
	if err != nil {
		return err
	}
	if o.got != "" {
		raw, shown, err := slurpUpTo(o.streams, o.got, shotsMade, diag.MaxBytes)
		if err != nil {
			return err
		}
		var faults []diag.Finding
		r.Got, faults = diag.NewSource(shown, raw)
		if len(faults) > 0 {
			return faulted(o.streams, faults)
		}
	}
	c, err := finished(o.streams, build.Compile(r))
	if err != nil {
		return err
	}
	w := o.paper()
	switch o.format.word {
	case "json":
		err = dayJSON(w, c)
	case "svg":
		err = draw(w, c, picture.LanesFile(c.Plan, c.Shots, &c.Day), strings.ToLower(c.Day.Summary()[0]))
	default:
		dayText(w, c)
	}
	return ended(w, err, o.failOn, c)
}

// dayMargin is the left margin, for the clock.
const dayMargin = 7

// dayText prints the day: the clock in the left margin, set-ups as heads, a
// line a shot.
func dayText(w *paper, c *build.Compiled) {
	for _, line := range c.Day.Summary() {
		margined(w, "", line, 0)
	}
	for i := range c.Day.Sessions {
		if len(c.Day.Sessions) > 1 {
			fmt.Fprintf(w, "\nday %d\n", i+1)
		}
		lines := c.Day.Lines(i, c.Plan, c.Shots)
		for j, line := range lines {
			if j == 0 || line.Kind == shotlist.Head || line.Kind == shotlist.Chance && lines[j-1].Kind != shotlist.Chance {
				fmt.Fprintln(w)
			}
			dayLine(w, c, line)
		}
	}
	dayRest(w, c)
}

func dayLine(w *paper, c *build.Compiled, line shotlist.Line) {
	switch line.Kind {
	case shotlist.Shoot:
		dayShotLine(w, c, line)
	case shotlist.Chance:
		margined(w, "", "last chance for "+strings.Join(shotNames(c.Shots, line.Turn.Shots), ", ")+": "+line.Turn.Words(c.Plan), dayMargin)
	case shotlist.Care, shotlist.Cue:
		margined(w, "", strings.ToLower(line.Margin)+": "+line.Words, dayMargin)
	default:
		margined(w, line.Margin, line.Words, dayMargin)
	}
}

func dayShotLine(w *paper, c *build.Compiled, line shotlist.Line) {
	s, e := &c.Shots[line.Shot], line.Entry
	words := s.Size + ": " + s.Of
	if s.Takes > 1 {
		words = fmt.Sprintf("%d takes, ", s.Takes) + words
	}
	if e.Late > 0 {
		words = "(beyond the helper's hours) " + words
	}
	length := ""
	if n := (e.End - e.Start + 30) / 60; n > 0 {
		length = fmt.Sprintf("%d min", n)
	}
	head := fmt.Sprintf("%s %7s  %-*s ", line.Margin, length, dayID, s.ID)
	if w.narrow() || len(s.ID) > dayID { // the words have a line of their own
		fmt.Fprintln(w, strings.TrimRight(head, " "))
		head = strings.Repeat(" ", dayMargin+9)
	}
	fmt.Fprintf(w, "%s%s\n", head, clip(words, max(12, w.columns-len(head))))
}

// dayID is the width of the column of ids.
const dayID = 24

// dayRest prints what is not in the order.
func dayRest(w *paper, c *build.Compiled) {
	if len(c.Day.Barred) > 0 {
		fmt.Fprintln(w, "\ncan't be filmed:")
		for _, b := range c.Day.Barred {
			margined(w, "", b.Message, 2)
		}
	}
	if len(c.Day.Elsewhere(c.Shots)) > 0 {
		fmt.Fprintln(w, "\nnot for the camera on the day:")
		margined(w, "", strings.Join(shotNames(c.Shots, c.Day.Elsewhere(c.Shots)), ", "), 2)
	}
}

func shotNames(shots []shotlist.Shot, list []int) []string {
	var names []string
	for _, i := range list {
		names = append(names, shots[i].ID)
	}
	return names
}

// The day as JSON. Lengths are minutes, to the thousandth.
type (
	dayShot struct {
		ID      string   `json:"id"`
		Step    string   `json:"step"`
		Setup   string   `json:"setup"`
		Start   string   `json:"start"`
		End     string   `json:"end"`
		Change  float64  `json:"change_minutes"`
		Changes []string `json:"changes"`
		Work    float64  `json:"work_minutes"`
		Takes   int      `json:"takes"`
		Size    string   `json:"size"`
		Of      string   `json:"of"`
		Who     []string `json:"who"`
	}
	dayPause struct {
		Start string `json:"start"`
		End   string `json:"end"`
		Who   string `json:"waits_for"`
	}
	dayTurn struct {
		Before string   `json:"before"`
		Starts []string `json:"starts"`
		Ends   []string `json:"ends"`
		Shots  []string `json:"shots"`
	}
	dayBarred struct {
		ID     string `json:"id"`
		Reason string `json:"reason"`
	}
	daySession struct {
		Start  string     `json:"start"`
		Wrap   string     `json:"wrap"`
		Shots  []dayShot  `json:"shots"`
		Pauses []dayPause `json:"pauses"`
		Turns  []dayTurn  `json:"last_chances"`
	}
	dayOut struct {
		Days       []daySession `json:"days"`
		Change     float64      `json:"change_minutes"`
		Story      float64      `json:"story_order_change_minutes"`
		Idle       float64      `json:"idle_minutes"`
		Objective  float64      `json:"objective_minutes"`
		Bound      float64      `json:"bound_minutes"`
		Optimal    bool         `json:"optimal"`
		Recorded   float64      `json:"recorded_minutes"`
		Cards      int          `json:"cards"`
		Got        []string     `json:"got"`
		Elsewhere  []string     `json:"not_on_the_day"`
		Impossible []dayBarred  `json:"impossible"`
	}
)

func dayJSON(w *paper, c *build.Compiled) error {
	d := &c.Day
	out := dayOut{
		Days: []daySession{}, Change: thousandth(d.Change), Story: thousandth(d.StoryChange), Idle: thousandth(d.Idle),
		Objective: thousandth(d.Change), Bound: thousandth(d.Bound), Optimal: d.Optimal, Recorded: thousandth(d.Recorded), Cards: d.Cards,
		Got: some(shotNames(c.Shots, d.Got)), Elsewhere: some(shotNames(c.Shots, d.Out)), Impossible: []dayBarred{},
	}
	for _, b := range d.Barred {
		out.Impossible = append(out.Impossible, dayBarred{c.Shots[b.Shot].ID, b.Message})
	}
	for _, s := range d.Sessions {
		out.Days = append(out.Days, sessionJSON(c, &s))
	}
	return diag.PrintJSON(w, out)
}

func sessionJSON(c *build.Compiled, s *shotlist.Session) daySession {
	out := daySession{Start: shotlist.Clock(s.Start), Wrap: shotlist.Clock(s.Wrap), Shots: []dayShot{}, Pauses: []dayPause{}, Turns: []dayTurn{}}
	for i := range s.Entries {
		e := &s.Entries[i]
		next := ""
		switch e.Kind {
		case shotlist.Filming:
			shot := &c.Shots[e.Shot]
			next = shot.ID
			row := dayShot{
				ID: shot.ID, Step: c.Plan.Steps[e.Step].ID, Setup: e.Setup, Start: shotlist.Clock(e.Start), End: shotlist.Clock(e.End),
				Change: thousandth(float64(e.ChangeSeconds()) / 60), Changes: []string{}, Work: thousandth(float64(e.Work) / 60),
				Takes: shot.Takes, Size: shot.Size, Of: shot.Of, Who: some(shot.Who),
			}
			for _, change := range e.Changes {
				row.Changes = append(row.Changes, change.Kind.String())
			}
			out.Shots = append(out.Shots, row)
		case shotlist.Rest, shotlist.Wait:
			out.Pauses = append(out.Pauses, dayPause{shotlist.Clock(e.Start), shotlist.Clock(e.End), e.Who})
		case shotlist.Working:
			next = c.Plan.Steps[e.Step].ID
		}
		for _, t := range e.Turns {
			out.Turns = append(out.Turns, dayTurn{next, some(c.Plan.StateWords(t.Starts)), some(c.Plan.StateWords(t.Ends)), some(shotNames(c.Shots, t.Shots))})
		}
	}
	return out
}

func thousandth(minutes float64) float64 { return math.Round(minutes*1000) / 1000 }
