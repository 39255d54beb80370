package claim

import (
	"os"
	"reflect"
	"testing"

	"fixslate/plan/diag/ready"
)

// files reads the vocabulary's files.
func files(t testing.TB) (words, cues, dials string) {
	for name, text := range map[string]*string{"lexicon.txt": &words, "cues.txt": &cues, "dials.txt": &dials} {
		raw, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		*text = string(raw)
	}
	return words, cues, dials
}

// The vocabulary in the program is what its files say. FIXSLATE_UPDATE=1 writes it
// anew.
func TestTables(t *testing.T) {
	v, err := made(files(t))
	if err != nil {
		t.Fatal(err)
	}
	if reflect.DeepEqual(*v, tables) {
		return
	}
	if os.Getenv("FIXSLATE_UPDATE") == "" {
		t.Fatal("tables.go is not what the vocabulary's files say; go generate ./plan/claim writes it anew")
	}
	code, err := ready.Source("claim", "tables", *v)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("tables.go", code, 0o644); err != nil {
		t.Fatal(err)
	}
}
