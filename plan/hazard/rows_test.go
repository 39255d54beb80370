package hazard

import (
	"bufio"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// row is a step with the families that a careful reviewer names.
type row struct {
	ID, Trade, Context, Step  string
	Tools, Hazards, Tolerated []string
	MustWarn                  bool `json:"must_warn"`
}

// rows reads labelled steps; part picks some by their index.
func rows(t testing.TB, path string, part func(i int) bool) []row {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var all []row
	sc := bufio.NewScanner(f)
	for i := 0; sc.Scan(); i++ {
		var r row
		if filepath.Ext(path) == ".tsv" {
			r, err = tabbed(sc.Text())
		} else {
			err = json.Unmarshal(sc.Bytes(), &r)
		}
		if err != nil {
			t.Fatalf("%s:%d: %v", path, i+1, err)
		}
		if part(i) {
			all = append(all, r)
		}
	}
	return all
}

// tabbed is a line of steps.tsv: trade, context, step, tools, families, must
// warn, tolerated families, trap.
func tabbed(line string) (row, error) {
	list := func(s string) []string { return strings.FieldsFunc(s, func(r rune) bool { return r == ';' }) }
	c := strings.Split(line, "\t")
	if len(c) != 8 {
		return row{}, fmt.Errorf("%d columns", len(c))
	}
	return row{Trade: c[0], Context: c[1], Step: c[2], Tools: list(c[3]), Hazards: list(c[4]), MustWarn: c[5] == "1", Tolerated: list(c[6])}, nil
}

// grouped holds for the rows of a group's file: their ids have a hyphen.
func (r row) grouped() bool { return strings.Contains(r.ID, "-") }

// spoken is the row as a plan that only speaks.
func (r row) spoken() string { return strings.Replace(r.toml(), "\ndo = ", "\nsay = ", 1) }

// toml is the row as a plan of one step, as the figure's method says.
func (r row) toml() string {
	var b strings.Builder
	// Who wrote the groups' rows named the object as the trade and left it out of
	// the context; a plan's subject names it.
	subject := r.Context
	if r.grouped() {
		subject = r.Trade + ": " + r.Context
	}
	fmt.Fprintf(&b, "[video]\ntitle = \"Row\"\nsubject = %s\n", quote(subject))
	for i, tool := range r.Tools {
		fmt.Fprintf(&b, "[[tool]]\nid = \"t%d\"\nname = %s\n", i, quote(tool))
	}
	fmt.Fprintf(&b, "[[step]]\ntitle = \"Step\"\ndo = %s\n", quote(r.Step))
	return b.String()
}

func quote(s string) string { b, _ := json.Marshal(s); return string(b) }
