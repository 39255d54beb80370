package build

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"fixslate/plan/diag"
	"fixslate/samples"
)

// golden is where the outputs of the samples are kept.
const golden = "../../../testdata/golden"

func compileSample(t testing.TB, name string) Compiled {
	t.Helper()
	text, ok := samples.Plan(name)
	if !ok {
		t.Fatalf("no sample %s", name)
	}
	src, faults := diag.NewSource("plan.toml", text)
	c := Compile(Request{Source: src, Faults: faults, Files: fstest.MapFS{}})
	if c.Plan == nil {
		t.Fatalf("%s has faults: %v", name, c.Findings)
	}
	return c
}

// Every output of every sample is what it was: a change of any is seen in the
// diff of testdata/golden. FIXSLATE_UPDATE=1 writes the tree anew.
func TestGoldenTrees(t *testing.T) {
	update := os.Getenv("FIXSLATE_UPDATE") != ""
	for _, name := range samples.Names() {
		c := compileSample(t, name)
		files, err := c.Make(nil)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, File{manifestName, manifestOf(Target{PlanSum: Sum(c.Source.Raw), Version: "test"}, files)})
		dir := filepath.Join(filepath.FromSlash(golden), name)
		if update {
			writeGolden(t, dir, files)
			continue
		}
		for _, f := range files {
			want, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(f.Name)))
			if err != nil {
				t.Errorf("%v; run with FIXSLATE_UPDATE=1 and read the diff", err)
				continue
			}
			if !bytes.Equal(want, f.Bytes) {
				t.Errorf("%s/%s is not what it was; run with FIXSLATE_UPDATE=1 and read the diff:\n%s", name, f.Name, firstDifference(string(want), string(f.Bytes)))
			}
		}
		for _, kept := range listFiles(t, dir) {
			if !slices.ContainsFunc(files, func(f File) bool { return f.Name == kept }) {
				t.Errorf("%s/%s is no longer made", name, kept)
			}
		}
	}
}

func writeGolden(t *testing.T, dir string, files []File) {
	t.Helper()
	if err := os.RemoveAll(dir); err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		name := filepath.Join(dir, filepath.FromSlash(f.Name))
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, f.Bytes, 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func listFiles(t *testing.T, dir string) []string {
	t.Helper()
	var names []string
	err := filepath.WalkDir(dir, func(name string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		rel, err := filepath.Rel(dir, name)
		names = append(names, filepath.ToSlash(rel))
		return err
	})
	if err != nil {
		t.Error(err)
	}
	return names
}

// firstDifference keeps a message readable: one hunk around the first line
// that differs.
func firstDifference(want, got string) string {
	a, b := []byte(want), []byte(got)
	at := 0
	for at < len(a) && at < len(b) && a[at] == b[at] {
		at++
	}
	from := max(0, at-80)
	return cmp.Diff(string(a[from:min(len(a), at+120)]), string(b[from:min(len(b), at+120)]))
}

// Compiling twice gives the same bytes, whatever the machine does meanwhile.
func TestCompileIsAFunction(t *testing.T) {
	for _, name := range samples.Names() {
		first, second := compileSample(t, name), compileSample(t, name)
		a, _ := first.Make(nil)
		b, _ := second.Make(nil)
		for i := range a {
			if !bytes.Equal(a[i].Bytes, b[i].Bytes) {
				t.Errorf("%s/%s differs between two runs", name, a[i].Name)
			}
		}
	}
}

func BenchmarkBuild(b *testing.B) {
	text, _ := samples.Plan("washer-pump")
	b.ReportAllocs()
	for b.Loop() {
		src, _ := diag.NewSource("plan.toml", text)
		c := Compile(Request{Source: src})
		if _, err := c.Make(nil); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkCheck is what one plan of a run of many costs: every rule.
func BenchmarkCheck(b *testing.B) {
	text, _ := samples.Plan("van-blower")
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		src, faults := diag.NewSource("plan.toml", text)
		Check(Request{Source: src, Faults: faults})
	}
}
