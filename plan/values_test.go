package plan

import (
	"os"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	"github.com/BurntSushi/toml"

	"fixslate/plan/diag"
	"fixslate/samples"
)

// The walk tells no other values than BurntSushi/toml does, which decodes what
// the walk gives up on.
func FuzzValues(f *testing.F) {
	files, err := filepath.Glob(filepath.Join("testdata", "*.toml"))
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	for _, name := range samples.Names() {
		text, _ := samples.Plan(name)
		f.Add(text)
	}
	for _, name := range Faults() {
		page, _ := FaultPage(name)
		f.Add([]byte(page.Wrong))
	}
	for _, text := range oddTOML {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		src, faults := diag.NewSource("f.toml", raw)
		if len(faults) > 0 {
			return
		}
		_, got, faults := index(src)
		if got == nil || diag.Worst(faults) == diag.Error {
			return
		}
		want := map[string]any{}
		if _, err := toml.Decode(src.Text, &want); err != nil {
			t.Fatalf("the walk takes what the decoder refuses: %v", err)
		}
		if want := anyZone(want); !reflect.DeepEqual(got, want) {
			t.Fatalf("the walk reads\n%#v\nthe decoder\n%#v", got, want)
		}
	})
}

// What plans are written in is told on the walk: were the samples decoded a second
// time, nothing but their time would show it.
func TestSamplesAreReadOnce(t *testing.T) {
	for _, name := range samples.Names() {
		text, _ := samples.Plan(name)
		src, _ := diag.NewSource(name, text)
		if _, values, _ := index(src); len(values) == 0 {
			t.Errorf("%s: no values", name)
		}
	}
}

// anyZone are values whose days are told in UTC.
func anyZone(value any) any {
	switch value := value.(type) {
	case map[string]any:
		for k, v := range value {
			value[k] = anyZone(v)
		}
	case []map[string]any:
		for _, v := range value {
			anyZone(v)
		}
	case []any:
		for i, v := range value {
			value[i] = anyZone(v)
		}
	case time.Time:
		return time.Date(value.Year(), value.Month(), value.Day(), value.Hour(), value.Minute(), value.Second(), value.Nanosecond(), time.UTC)
	}
	return value
}

var oddTOML = []string{
	"", "a = 1", "a = 1\nb.c = 2\n[b]\nd = 3", "a.b = 1\na.c = 2", "[a]\n[a.b]\nc = 1", "[a.b]\nc = 1\n[a]\nd = 2", "[a]\n[a]",
	"[[a]]\n[[a.b]]\nc = 1\n[[a.b]]\nc = 2\n[[a]]\n[a.d]\ne = 1", "a = [1]\n[[a]]", "a = {}\n[a.b]", "a = [{}]\n[[a]]\n[a.b]", "[a]\nb = 1\n[a.b]", "[[a]]\n[a]",
	`[""]` + "\nb = 1\n[c]", `"" = 1`, `"a b" = 1` + "\n" + `'a.b' = 2`, `["a b"]` + "\nc = 1\n[\"a b\".d]\ne = 2",
	`a = "x\ny\"z"`, `a = "\u00e9\U0001F600"`, `a = "\e\x41"`, "a = \"\"\"\n\nx \\\n   y\"\"\"", "a = '''\nx''y'''", "a = \"\"\"x\"\"\"\"\"", `a = ""`, "a = ''", `a = """"""`, "a = \"\n\"",
	"a = 0", "a = 00", "a = -1", "a = +1", "a = 1_000", "a = 0x1f", "a = 0o17", "a = 0b1", "a = 9223372036854775808", "a = 0.5", "a = -0.5", "a = 1e3", "a = 1_0.5", "a = inf", "a = nan",
	"a = true\nb = false", "a = 2024-02-30", "a = 2024-02-29", "a = 09:30", "a = 09:30:00", "a = 2024-01-01T09:30:00Z", "a = 2024-01-01 09:30:00",
	"a = [1, \"x\", [2], {b = 3}]", "a = [\n# none\n1, # one\n]", "a = []", "a = [{b = 1}, {b = 2}]", "a = {b = {c = 1}, d = []}", "a = {b.c = 1}", "a = {\nb = 1,\n}", "a = {b = 1, b = 2}",
	"\ufeffa = 1", "a = 1\r\nb = \"\"\"\r\nx\r\n\"\"\"\r\n", "a = \"x\ty\"", "a = 1 # \x7f",
}
