package lint

import (
	"os"
	"path/filepath"
	"testing"

	"fixslate/plan/given"
	"fixslate/plan/hazard/class"
	"fixslate/samples"
)

// What apart, enough and several were set by: no caution is called another's
// where its author filed it, and two in three are under a class of any other
// family.
func TestMismatchTells(t *testing.T) {
	files, _ := filepath.Glob("testdata/clean/*.toml")
	var texts [][]byte
	for _, name := range samples.Names() {
		text, _ := samples.Plan(name)
		texts = append(texts, text)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, text)
	}
	filed, called, misfiled, told := 0, 0, 0, 0
	for _, text := range texts {
		for _, c := range given.Plan(t, text).Cautions {
			own, known := class.Find(c.Class)
			if !known || c.Stock || c.Say.Source == "" {
				continue
			}
			filed++
			if other, ok := speaksOfAnother(c.Say.Print, own); ok {
				called++
				t.Logf("%q of %s is called %s", c.Say.Print, own.ID, other.ID)
			}
			for _, foreign := range class.All() {
				if foreign.Family == own.Family {
					continue
				}
				misfiled++
				if _, ok := speaksOfAnother(c.Say.Print, foreign); ok {
					told++
				}
			}
		}
	}
	share := float64(told) / float64(misfiled)
	t.Logf("%d of %d as filed, %d of %d (%.3f) misfiled", called, filed, told, misfiled, share)
	if called > 0 || share < 0.66 {
		t.Error("cautions are called another's where they are right, or too seldom where they are not")
	}
}
