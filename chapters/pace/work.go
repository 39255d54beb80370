package pace

import (
	"fmt"
	"strconv"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
)

// ReadWork reads how long the work of steps took, written down on the day: a
// line for each, `fit-the-pump = "12m"`, as a plan writes durations; the quotes
// may be left out, # begins a comment, and a step worked on in several goes may
// stand several times. An error names the line and what to write.
func ReadWork(file []byte, p *plan.Plan) ([]Work, error) {
	var out []Work
	n := 0
	for line := range strings.Lines(strings.TrimPrefix(string(file), "\ufeff")) {
		n++
		line, _, _ = strings.Cut(line, "#")
		line = strings.TrimSpace(line)
		if line == "" {
			continue
		}
		id, length, ok := strings.Cut(line, "=")
		id = strings.TrimSpace(id)
		if !ok {
			return nil, fmt.Errorf("line %d: %s says no time; write a step and its time, like fit-the-pump = \"12m\"", n, quoted(line))
		}
		if len(p.Find(plan.Ref{Kind: plan.KindStep, ID: id})) == 0 {
			return nil, fmt.Errorf("line %d: the plan has no step %s; its steps are %s", n, quoted(id), stepIDs(p))
		}
		d, err := plan.ParseDuration(strings.Trim(strings.TrimSpace(length), `"'`))
		if err != nil {
			return nil, fmt.Errorf("line %d: %w", n, err)
		}
		if d.Seconds() <= 0 {
			return nil, fmt.Errorf("line %d: step %q took no time; leave the line out, or write how long it was", n, id)
		}
		out = append(out, Work{Step: id, Seconds: d.Seconds()})
	}
	return out, nil
}

func quoted(text string) string {
	return strconv.Quote(diag.Shorten(text, 40))
}

func stepIDs(p *plan.Plan) string {
	var ids []string
	for i := range p.Steps {
		ids = append(ids, p.Steps[i].ID)
	}
	return strings.Join(ids, ", ")
}
