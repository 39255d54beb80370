package trade

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"
)

func TestTables(t *testing.T) {
	seen := map[string]bool{}
	for _, table := range Tables() {
		if table.Name == "" || table.Title == "" || len(table.Rows) == 0 || table.Notes == nil || seen[table.Name] {
			t.Errorf("table %q lacks a name, title, rows or notes, or stands twice", table.Name)
		}
		seen[table.Name] = true
		for _, r := range table.Rows {
			if len(r.Cells) != len(table.Columns) || r.Source == "" || r.Cells[0] == "" {
				t.Errorf("%s: row %q has %d cells of %d, source %q", table.Name, r.Cells, len(r.Cells), len(table.Columns), r.Source)
			}
		}
		if _, err := json.Marshal(table); err != nil {
			t.Errorf("%s: %v", table.Name, err)
		}
	}
}

// Two makings of a table are alike: nothing depends on the order of a map.
func TestTablesRepeat(t *testing.T) {
	a, _ := json.Marshal(Tables())
	b, _ := json.Marshal(Tables())
	if string(a) != string(b) {
		t.Error("two makings differ")
	}
}

func TestTableNamed(t *testing.T) {
	for in, want := range map[string]string{"thread": "thread", "Threads": "thread", "fuses": "fuse", "batteries": "battery", "classes": "class", " wire ": "wire"} {
		if got, ok := TableNamed(in); !ok || got.Name != want {
			t.Errorf("TableNamed(%q) = %q, %v; want %q", in, got.Name, ok, want)
		}
	}
	if _, ok := TableNamed("hazard"); ok {
		t.Error("a table of hazards stands here")
	}
}

// find joins the cells in some columns of each row found.
func find(t *testing.T, table, key string, columns ...int) []string {
	tb, ok := TableNamed(table)
	if !ok {
		t.Fatalf("no table %q", table)
	}
	var list []string
	for _, r := range tb.Find(key) {
		var cells []string
		for _, c := range columns {
			cells = append(cells, r.Cells[c])
		}
		list = append(list, strings.Join(cells, " "))
	}
	return list
}

func TestFind(t *testing.T) {
	for _, c := range []struct {
		table, key string
		columns    []int
		want       []string
	}{
		{"fuse", "15", []int{0, 2}, []string{"regular blade blue", "mini blade blue", "micro blade blue"}},
		{"fuse", "15 A", []int{0}, []string{"regular blade", "mini blade", "micro blade"}},
		{"fuse", "15A mini", []int{0, 2}, []string{"mini blade blue"}},
		{"fuse", "Blue", []int{0, 1}, []string{"regular blade 15 A", "mini blade 15 A", "maxi blade 60 A", "micro blade 15 A", "torpedo 25 A"}},
		{"wire", "1.5", []int{0}, []string{"1.5 mm²"}},
		{"wire", "1.5 mm2", []int{0}, []string{"1.5 mm²"}},
		{"wire", "1.5mm²", []int{0}, []string{"1.5 mm²"}},
		{"wire", "16", []int{0}, []string{"16 mm²", "AWG 16"}},
		{"wire", "awg 16", []int{0}, []string{"AWG 16"}},
		{"wire", "1/0 AWG", []int{0}, []string{"AWG 1/0"}},
		{"wire", "1.8", []int{0}, []string{"1.5 mm²", "2 mm²"}},
		{"noise", "100", []int{0, 1, 2}, []string{"100 120 15"}},
		{"noise", "101", []int{0}, []string{"100", "102"}},
		{"unit", "newton metres", []int{0}, []string{"N·m"}},
		{"unit", "ft-lb", []int{0}, []string{"lb·ft"}},
		{"class", "8.8", []int{1}, []string{"to M16", "over M16"}},
		{"hexalobular", "t25", []int{2}, []string{"4.5"}},
		{"proof", "8", []int{0, 2}, []string{"hex key 120", "spanner 34.5"}},
		{"pressure", "2.3 bar", []int{0}, []string{"car tyre, cold, normal load", "car tyre, plausible span"}},
		{"torque", "M10 x 1.5", []int{0, 1}, []string{"M10 4.6", "M10 8.8", "M10 10.9", "M10 12.9", "M10x1.25 4.6", "M10x1.25 8.8", "M10x1.25 10.9", "M10x1.25 12.9", "M10x1 4.6", "M10x1 8.8", "M10x1 10.9", "M10x1 12.9"}},
		{"torque", "M10x1.25", []int{1}, []string{"4.6", "8.8", "10.9", "12.9"}},
		{"thread", "nothing", []int{0}, nil},
		{"head", "wheel", []int{0}, []string{"wheel nut or wheel bolt"}},
	} {
		if got := find(t, c.table, c.key, c.columns...); !slices.Equal(got, c.want) {
			t.Errorf("look %s %q: %q; want %q", c.table, c.key, got, c.want)
		}
	}
}

// "look thread M10" must show every width that is in use, each with whose it
// is.
func TestFindThread(t *testing.T) {
	for _, key := range []string{"M10", "m10", "M10x1.25", " m10 × 1.25 "} {
		got := find(t, "thread", key, 1, 2, 4)
		for _, want := range []string{"bolt, across flats 16 mm in force", "bolt, across flats 17 mm older", "bolt or nut, across flats 14 mm regional", "flange nut, across flats 15 mm in force", "socket head, hex key 8 mm in force"} {
			if !slices.Contains(got, want) {
				t.Errorf("look thread %q lacks %q in %q", key, want, got)
			}
		}
	}
	if got := find(t, "thread", "M10x1", 0, 1); !slices.Contains(got, "M10x1 pitch") || slices.Contains(got, "M10x1.25 pitch") {
		t.Errorf("look thread M10x1: %q", got)
	}
}

func FuzzFind(f *testing.F) {
	for _, s := range []string{"M8", "15 A mini", "1.5 mm²", "AWG 1/0", "blue", "-5 °C", "0"} {
		f.Add(s)
	}
	all := Tables()
	f.Fuzz(func(t *testing.T, key string) {
		for _, table := range all {
			table.Answer(key)
			if n := len(table.Find(key)); n > len(table.Rows) {
				t.Errorf("%s finds %d rows of %d", table.Name, n, len(table.Rows))
			}
		}
	})
}

func BenchmarkTables(b *testing.B) {
	for b.Loop() {
		Tables()
	}
}
