package hazard

import (
	"os"
	"reflect"
	"testing"

	"fixslate/plan/diag/ready"
)

// The lexicon in the program is what its files say. FIXSLATE_UPDATE=1 writes it
// anew.
func TestTables(t *testing.T) {
	x, err := compile(files)
	if err != nil {
		t.Fatal(err)
	}
	if reflect.DeepEqual(x.lexicon, tables) {
		return
	}
	if os.Getenv("FIXSLATE_UPDATE") == "" {
		t.Fatal("tables.go is not what the lexicon's files say; go generate ./plan/hazard writes it anew")
	}
	code, err := ready.Source("hazard", "tables", x.lexicon)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("tables.go", code, 0o644); err != nil {
		t.Fatal(err)
	}
}
