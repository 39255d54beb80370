package claim

import (
	"bufio"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// row is a labelled sentence, written before the reader.
type row struct {
	ID     string
	Text   string
	Kind   []string
	Needs  bool `json:"needs_evidence"`
	Values []struct {
		Value any
		Unit  string
	}
}

func rows(t *testing.T, path string) []row {
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var all []row
	for s := bufio.NewScanner(f); s.Scan(); {
		var r row
		if err := json.Unmarshal(s.Bytes(), &r); err != nil {
			t.Fatal(err)
		}
		all = append(all, r)
	}
	return all
}

func TestQualityOwn(t *testing.T) {
	score(t, rows(t, "testdata/sentences.jsonl"), 0.80, 0.85, 0.80)
}

func TestQuality(t *testing.T) {
	dir := os.Getenv("FIXSLATE_DATA")
	if dir == "" {
		t.Skip("FIXSLATE_DATA is not set: the labelled claims were not read")
	}
	var even, odd []row
	for i, r := range rows(t, filepath.Join(dir, "claims", "claims.jsonl")) {
		if i%2 == 0 {
			even = append(even, r)
		} else {
			odd = append(odd, r)
		}
	}
	t.Run("read", func(t *testing.T) { score(t, even, 0.85, 0.85, 0.85) })
	t.Run("unread", func(t *testing.T) { score(t, odd, 0.65, 0.75, 0.50) })
}

// score prints recall and precision and holds them to floors.
func score(t *testing.T, all []row, recall, precision, values float64) {
	var hit, miss, wrong, right, total int
	kinds := map[Kind][3]int{}
	for _, r := range all {
		c := Sentence(r.Text)
		switch {
		case r.Needs && c.NeedsEvidence:
			hit++
		case r.Needs:
			miss++
		case c.NeedsEvidence:
			wrong++
		}
		for _, k := range Kinds() {
			n := kinds[k]
			switch want := slices.Contains(r.Kind, string(k)); {
			case want && c.Has(k):
				n[0]++
			case want:
				n[1]++
			case c.Has(k):
				n[2]++
			}
			kinds[k] = n
		}
		got := right
		left := slices.Clone(c.Values)
		for _, v := range r.Values {
			total++
			for i, g := range left {
				n, number := v.Value.(float64)
				if number && g.Part == "" && math.Abs(g.Number-n) < 1e-3 && g.Unit == v.Unit || !number && g.Part == v.Value {
					right++
					left = slices.Delete(left, i, i+1)
					break
				}
			}
		}
		total += len(left) // a value too many is wrong as well
		if os.Getenv("CLAIM_SHOW") != "" && t.Name() != "TestQuality/unread" && (r.Needs != c.NeedsEvidence || right-got != len(r.Values) || len(left) > 0) {
			t.Logf("%s %q want %v %v, got %v %v", r.ID, r.Text, r.Kind, r.Values, c.Kinds, c.Values)
		}
	}
	rate := func(a, b int) float64 { return float64(a) / float64(max(a+b, 1)) }
	t.Logf("%d sentences: needs evidence recall %.2f precision %.2f; values right %.2f of %d", len(all), rate(hit, miss), rate(hit, wrong), rate(right, total-right), total)
	for _, k := range Kinds() {
		n := kinds[k]
		t.Logf("  %-14s recall %.2f (%d) precision %.2f", k, rate(n[0], n[1]), n[0]+n[1], rate(n[0], n[2]))
	}
	if rate(hit, miss) < recall || rate(hit, wrong) < precision || rate(right, total-right) < values {
		t.Errorf("below the floors %.2f, %.2f, %.2f", recall, precision, values)
	}
}

func TestText(t *testing.T) {
	got := Text("Set it to 5 N·m. Then 2 mm.\n\n  put the lid on\n")
	if len(got) != 2 || got[0].Line != 1 || got[1].Line != 3 || len(got[0].Values) != 2 || got[1].NeedsEvidence {
		t.Errorf("got %+v", got)
	}
}

func FuzzSentence(f *testing.F) {
	f.Add("nine times out of ten it's 5 to 6 V\x00")
	f.Add("k r seven one nine")
	f.Fuzz(func(t *testing.T, text string) {
		for _, v := range Sentence(text).Values {
			if v.Start < 0 || v.End > len(text) || v.Start > v.End {
				t.Fatalf("value %v outside %q", v, text)
			}
		}
	})
}
