package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
	"fixslate/plan/trade"
)

type lookOptions struct {
	streams
	table, key string
	format     choice
}

func newLook(s streams) *cobra.Command {
	o := &lookOptions{streams: s, format: formats("text", "json")}
	cmd := &cobra.Command{
		Use:   "look [TABLE [KEY]]",
		Short: "look into the trade tables",
		Long: `Look prints the trade tables with the source of every row: threads and the tools
that turn them, torque, fuses, wire, batteries, voltage, noise, units, and the
catalogue of hazards. A key narrows a table down: a size, a rating, a colour.
Figures that no row has are worked out: the charge at a voltage, the drop on a
wire, which rules a voltage is beyond, minutes in a noise, a horn further away.

Where standards differ it says so. The maker's figure for the job in hand comes
before any table.`,
		Example: "  fixslate look\n  fixslate look thread M8\n  fixslate look fuse 15\n  fixslate look wire 1.5 mm²\n  fixslate look wire 1.5 mm² 10 A 5 m\n  fixslate look hazard mains-shock",
		Args:    cobra.ArbitraryArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) > 0 {
				o.table, o.key = args[0], strings.Join(args[1:], " ")
			}
			return runLook(o)
		},
	}
	o.format.flag(cmd)
	return cmd
}

func runLook(o *lookOptions) error {
	w := o.paper()
	return w.done(o.print(w))
}

func (o *lookOptions) print(w *paper) error {
	if o.table == "" {
		tables := append(trade.Tables(), hazardTable())
		if o.format.word == "json" {
			return tablesJSON(w, tables)
		}
		tablesText(w, tables)
		return nil
	}
	t, err := looked(o.table, o.key)
	if err != nil {
		return err
	}
	switch {
	case o.format.word == "json":
		return tableJSON(w, t)
	case isHazards(o.table):
		hazardText(w, t)
	default:
		tableText(w, t)
	}
	return nil
}

// looked is a table with the rows that a key names.
func looked(name, key string) (trade.Table, error) {
	if isHazards(name) {
		return lookedHazard(key)
	}
	t, ok := trade.TableNamed(name)
	if !ok {
		var names []string
		for _, t := range trade.Tables() {
			names = append(names, t.Name)
		}
		return t, fmt.Errorf("there is no table %q; write %s", name, either(append(names, "hazard")))
	}
	if answer, ok := t.Answer(key); ok {
		return answer, nil
	}
	rows := t.Find(key)
	if len(rows) == 0 {
		return t, fmt.Errorf("table %s has no row for %q; fixslate look %s prints all %d", t.Name, key, t.Name, len(t.Rows))
	}
	t.Rows = rows
	return t, nil
}

func isHazards(name string) bool {
	switch strings.ToLower(strings.TrimSpace(name)) {
	case "hazard", "hazards", "class-of-hazard", "caution", "cautions":
		return true
	}
	return false
}

// hazardTable is the catalogue of hazards as a table like the others.
func hazardTable() trade.Table {
	t := trade.Table{Name: "hazard", Title: "Hazards and their usual cautions", Columns: []string{"Class", "Family", "Signal", "Said", "Gear", "Who"}}
	for _, c := range class.All() {
		t.Rows = append(t.Rows, hazardRow(c))
	}
	t.Notes = []string{
		"These are the usual cautions of the trade. Local codes, the maker's instructions for the exact model and licensed practice come first; none of them makes a job safe.",
	}
	return t
}

func hazardRow(c class.Class) trade.Row {
	var gear []string
	for _, g := range c.Gear {
		gear = append(gear, g.Name)
	}
	worn := strings.Join(gear, "; ")
	if worn == "" {
		worn = "none: " + c.NoGear
	}
	return trade.Row{Cells: []string{c.ID, c.Family, c.Signal.String(), c.Spoken, worn, c.Who.Skill.String()}, Source: c.Source}
}

// lookedHazard finds classes by id, by family and by everyday words.
func lookedHazard(key string) (trade.Table, error) {
	t := hazardTable()
	if key == "" {
		return t, nil
	}
	id := strings.ReplaceAll(strings.ToLower(key), " ", "-")
	var found []class.Class
	if c, ok := class.Find(id); ok {
		found = []class.Class{c}
	} else if _, ok := class.FindFamily(id); ok {
		found = class.InFamily(id)
	} else {
		found = class.Nearest(key)
	}
	if len(found) == 0 {
		return t, fmt.Errorf("table hazard has no row for %q; fixslate look hazard prints all %d", key, len(t.Rows))
	}
	t.Rows = nil
	for _, c := range found {
		t.Rows = append(t.Rows, hazardRow(c))
	}
	if len(found) == 1 {
		t.Notes = append(hazardNotes(found[0]), t.Notes...)
	}
	return t, nil
}

// hazardNotes are what the columns leave out of one class.
func hazardNotes(c class.Class) []string {
	notes := []string{c.Name + ". " + c.Text, "Who: " + c.Who.Text}
	if c.Escalation != (class.Escalation{}) {
		notes = append(notes, fmt.Sprintf("Signal %s %s.", c.Escalation.To, c.Escalation.When))
	}
	if len(c.Kit) > 0 {
		notes = append(notes, "Have there: "+strings.Join(c.Kit, ", ")+".")
	}
	if len(c.Arises) > 0 {
		notes = append(notes, "Arises with the state "+strings.Join(c.Arises, ", ")+".")
	}
	if len(c.Answered) > 0 {
		notes = append(notes, "Answered by the state "+strings.Join(c.Answered, ", ")+".")
	}
	return notes
}

// hazardText prints hazards one below the other: their cautions are too long for
// columns.
func hazardText(w *paper, t trade.Table) {
	paragraph(w, "", t.Title)
	for _, r := range t.Rows {
		fmt.Fprintln(w)
		paragraph(w, "", fmt.Sprintf("%s (family %s), signal %s", r.Cells[0], r.Cells[1], r.Cells[2]))
		paragraph(w, "    said    ", r.Cells[3])
		paragraph(w, "    gear    ", r.Cells[4])
		paragraph(w, "    who     ", r.Cells[5])
		paragraph(w, "    source  ", r.Source)
	}
	fmt.Fprintln(w)
	for _, n := range t.Notes {
		paragraph(w, "", n)
	}
}

func tablesText(w *paper, tables []trade.Table) {
	for _, t := range tables {
		title := min(50, w.columns-1-23)
		fmt.Fprintf(w, "%-12s %-*s %4d rows\n", t.Name, title, clip(t.Title, title), len(t.Rows))
	}
	fmt.Fprintln(w)
	paragraph(w, "", "fixslate look TABLE prints one, fixslate look TABLE KEY the rows of a size, a rating or a colour")
}

func tablesJSON(w *paper, tables []trade.Table) error {
	type entry struct {
		Name    string   `json:"name"`
		Title   string   `json:"title"`
		Columns []string `json:"columns"`
		Rows    int      `json:"rows"`
	}
	entries := make([]entry, len(tables))
	for i, t := range tables {
		entries[i] = entry{t.Name, t.Title, t.Columns, len(t.Rows)}
	}
	return diag.PrintJSON(w, map[string]any{"tables": entries})
}

func tableJSON(w *paper, t trade.Table) error {
	t.Notes = some(t.Notes)
	return diag.PrintJSON(w, struct {
		trade.Table
		Differ []string `json:"differ"`
	}{t, some(differing(t))})
}
