package plan_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/samples"
)

// allPlans are the samples, the starter and the language's own example.
func allPlans(t *testing.T) map[string]string {
	t.Helper()
	plans := map[string]string{"whole": whole(t), "starter": string(samples.Starter())}
	for _, name := range samples.Names() {
		text, _ := samples.Plan(name)
		plans[name] = string(text)
	}
	return plans
}

// Every value that the decoder sees has a place, and the place holds it: the
// position walk uses a parser of its own, which may change.
func TestEveryValueHasItsPlace(t *testing.T) {
	for name, text := range allPlans(t) {
		var values map[string]any
		if _, err := toml.Decode(text, &values); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		src, _ := diag.NewSource(name, []byte(text))
		_, spans, _ := plan.Decode(src, nil)
		walk("", values, func(path string, value any) {
			if !spans.Has(path) {
				t.Errorf("%s: %s has no place", name, path)
				return
			}
			text, ok := value.(string)
			if !ok {
				return
			}
			at := spans.Value(path)
			raw := src.Text[at.Span.Start:at.Span.End]
			var back struct{ V string }
			if _, err := toml.Decode("V = "+raw, &back); err != nil || back.V != text {
				t.Errorf("%s: %s stands at %q, which is no %q", name, path, raw, text)
			}
		})
	}
}

func walk(path string, value any, each func(path string, value any)) {
	switch value := value.(type) {
	case map[string]any:
		for key, inner := range value {
			at := key
			if path != "" {
				at = path + "." + key
			}
			walk(at, inner, each)
		}
	case []map[string]any:
		for i, inner := range value {
			walk(index(path, i), inner, each)
		}
	case []any:
		for i, inner := range value {
			walk(index(path, i), inner, each)
		}
	default:
		each(path, value)
	}
}

func index(path string, i int) string {
	b, _ := json.Marshal(i)
	return path + "[" + string(b) + "]"
}

// A word of a text is found in the file whatever form the text is written in.
func TestWordsInTexts(t *testing.T) {
	for name, literal := range map[string]string{
		"basic":              `"Åre one TARGET two"`,
		"escapes":            `"\u00C5re\tone \"TARGET\" two"`,
		"literal":            `'Åre \one TARGET two'`,
		"multi-line":         "\"\"\"\nÅre\none TARGET two\"\"\"",
		"trimmed line ends":  "\"\"\"\\\n    Åre \\\n\n    one TARGET \\\n  two\"\"\"",
		"multi-line literal": "'''\nÅre \\ 'one'\n  TARGET two'''",
		"quotes inside":      "\"\"\"\"Åre\" one \"\"TARGET\"\" two\"\"\"\"",
		"wide escapes":       `"\U0001F600 TARGET"`,
	} {
		text := video + "[[step]]\ntitle = \"B\"\nsay = " + literal + "\n"
		src, _ := diag.NewSource("plan.toml", []byte(text))
		p, spans, findings := plan.Decode(src, nil)
		if p == nil {
			t.Fatalf("%s: %s", name, print(findings))
		}
		at := strings.Index(p.Steps[0].Say, "TARGET")
		place := spans.Word("step[0].say", at, at+len("TARGET"))
		if got := src.Text[place.Span.Start:place.Span.End]; got != "TARGET" {
			t.Errorf("%s: the place holds %q", name, got)
		}
	}
}

// A stretch of a line's printed words leads back to the words of the plan.
func TestPrintLeadsBackToSource(t *testing.T) {
	p, spans := sound(t, "spec = [{ id = \"gap\", what = \"gap\", value = \"2 mm\" }]\n"+video+
		"[[step]]\ntitle = \"B\"\nsay = \"\"\"\nFirst. Set *the* gap to {gap} &amp; lock it.\"\"\"\n")
	l := p.Steps[0].Lines[1]
	if l.Print != "Set the gap to 2 mm & lock it." {
		t.Fatal(l.Print)
	}
	for word, want := range map[string]string{"the": "the", "2 mm": "{gap}", "lock": "lock", "Set": "Set"} {
		at := strings.Index(l.Print, word)
		start, end := l.SourceSpan(at, at+len(word))
		place := spans.Word("step[0].say", l.Start+start, l.Start+end)
		if got := place.Source.Text[place.Span.Start:place.Span.End]; got != want {
			t.Errorf("%q leads to %q, want %q", word, got, want)
		}
	}
}

// Files that keep the decoder busy for minutes are refused by their shape.
func TestHostileShapes(t *testing.T) {
	for name, text := range map[string]string{
		"nested inline tables": "a = " + strings.Repeat("{a=", 10_000) + "1" + strings.Repeat("}", 10_000),
		"nested arrays":        "a = " + strings.Repeat("[", 1_000_000) + strings.Repeat("]", 1_000_000),
		"dotted key":           strings.Repeat("a.", 10_000) + "a = 1",
		"header":               "[" + strings.Repeat("a.", 100_000) + "a]",
	} {
		_, _, findings := decode(t, text)
		if !hasRule(findings, "too-large") {
			t.Errorf("%s: want too-large:\n%s", name, print(findings))
		}
	}
	var many strings.Builder
	for range 400_000 {
		many.WriteString("[[a]]\n")
	}
	if _, _, findings := decode(t, many.String()); len(findings) == 0 {
		t.Error("400,000 tables that mean nothing are no fault")
	}
}

// The schema is made from the decoder's description and accepts all that the
// decoder does. The validator is independent of ours.
func TestSchemaAcceptsEveryPlan(t *testing.T) {
	schema := compileSchema(t)
	for name, text := range allPlans(t) {
		if err := schema.Validate(asJSON(t, text)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, text := range map[string]string{
		"no title":    "[video]\nsubject = \"x\"\n[[step]]\ntitle = \"B\"\n",
		"no step":     "[video]\ntitle = \"x\"\n",
		"unknown key": "[video]\ntitle = \"x\"\ncolour = \"red\"\n[[step]]\ntitle = \"B\"\n",
		"wrong type":  "[video]\ntitle = 3\n[[step]]\ntitle = \"B\"\n",
		"wrong word":  "[captions]\nprofile = \"huge\"\n[video]\ntitle = \"x\"\n[[step]]\ntitle = \"B\"\n",
	} {
		if schema.Validate(asJSON(t, text)) == nil {
			t.Errorf("%s: the schema accepts it", name)
		}
	}
}

func compileSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(string(plan.Schema())))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("plan.json", doc); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("plan.json")
	if err != nil {
		t.Fatal(err)
	}
	return schema
}

// asJSON is a plan as editors hand it to a validator: dates as texts.
func asJSON(t *testing.T, text string) any {
	t.Helper()
	var values map[string]any
	if _, err := toml.Decode(text, &values); err != nil {
		t.Fatal(err)
	}
	raw, err := json.Marshal(plainDates(values))
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(string(raw)))
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

func plainDates(value any) any {
	switch value := value.(type) {
	case map[string]any:
		for k, v := range value {
			value[k] = plainDates(v)
		}
	case []map[string]any:
		for _, v := range value {
			plainDates(v)
		}
	case []any:
		for i, v := range value {
			value[i] = plainDates(v)
		}
	case time.Time:
		return value.Format("2006-01-02")
	}
	return value
}

// Every key of the language can be read: each example, alone in its table,
// raises no fault of type or form.
func TestEveryExampleReads(t *testing.T) {
	var each func(tables plan.Table, header string)
	each = func(table plan.Table, header string) {
		for _, k := range table.Keys {
			if k.Example == "" || len(k.Refs) > 0 || k.Name == "use" || k.Name == "evidence" || k.Name == "cautions" && header == "" {
				continue
			}
			text := exampleIn(table, header, k)
			_, _, findings := decode(t, text)
			for _, f := range findings {
				if f.Severity == diag.Error && (f.Rule == "type-wrong" || f.Rule == "value-wrong" || f.Rule == "syntax" || f.Rule == "key-unknown") {
					t.Errorf("%s %s = %s: %s", header, k.Name, k.Example, f.Message)
				}
			}
		}
		for _, sub := range table.Sub {
			each(sub, sub.Name)
		}
	}
	each(plan.Language(), "")
}

// Whatever takes a value takes "?" for it, alone or in a list: an id alone has
// to be one.
func TestAnyValueMayBeOpen(t *testing.T) {
	tried := 0
	var each func(tables plan.Table, header string)
	each = func(table plan.Table, header string) {
		for _, k := range table.Keys {
			if k.Name == "id" || strings.HasSuffix(k.Type, "table") || strings.HasSuffix(k.Type, "tables") {
				continue
			}
			for _, open := range []string{`"?"`, `["?"]`} {
				if open != `"?"` && !strings.HasPrefix(k.Type, "list") {
					continue
				}
				tried++
				k.Example = open
				_, _, findings := decode(t, exampleIn(table, header, k))
				for _, f := range findings {
					if f.Severity == diag.Error && f.Rule != "key-missing" {
						t.Errorf("%s %s = %s: %s: %s", header, k.Name, open, f.Rule, f.Message)
					}
				}
			}
		}
		for _, sub := range table.Sub {
			each(sub, sub.Name)
		}
	}
	each(plan.Language(), "")
	if tried < 200 {
		t.Errorf("only %d values tried", tried)
	}
	p, _, findings := decode(t, "[pace]\nfile = \"?\"\n"+video+"[[step]]\ntitle = \"A\"\ntools = [\"?\"]\n")
	if p == nil || len(p.Open) != 2 || p.Open[0].What != "pace" || p.Open[1].What != "A" || len(p.Tools) != 0 {
		t.Errorf("want a pace file and the tools of A open: %s", print(findings))
	}
}

func exampleIn(table plan.Table, header string, k plan.Key) string {
	line := k.Name + " = " + k.Example + "\n"
	base := "[video]\ntitle = \"T\"\n[[step]]\ntitle = \"S\"\n"
	switch {
	case header == "":
		return line + base
	case header == "video":
		if k.Name == "title" {
			return base
		}
		return "[video]\n" + "title = \"T\"\n" + line + "[[step]]\ntitle = \"S\"\n"
	case header == "step":
		if k.Name == "title" {
			return base
		}
		return base + line
	}
	outer := ""
	if i := strings.IndexByte(header, '.'); i > 0 && strings.HasPrefix(header, "test.") {
		outer = "[[test]]\nquestion = \"Q\"\n"
	}
	open := "[" + header + "]\n"
	if table.List {
		open = "[[" + header + "]]\n"
	}
	return base + outer + open + line
}

func FuzzDecode(f *testing.F) {
	seeds, err := filepath.Glob(filepath.Join("testdata", "*.toml"))
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range seeds {
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
	f.Add(samples.Starter())
	for _, name := range plan.Faults() {
		page, _ := plan.FaultPage(name)
		f.Add([]byte(page.Wrong))
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		if len(raw) > 64<<10 {
			return // time is linear, and the engine's is better spent on small ones
		}
		src, faults := diag.NewSource("f.toml", raw)
		if len(faults) > 0 {
			return
		}
		p, spans, findings := plan.Decode(src, nil)
		if (p == nil) != (diag.Worst(findings) == diag.Error) {
			t.Fatalf("plan %v, findings:\n%s", p != nil, print(findings))
		}
		for _, finding := range findings {
			span := finding.At.Span
			if span.Start < 0 || span.End < span.Start || span.End > len(src.Text) {
				t.Fatalf("%s stands at %v of %d", finding.Rule, span, len(src.Text))
			}
			if finding.Message == "" || finding.Rule == "" {
				t.Fatalf("empty finding %+v", finding)
			}
		}
		if p == nil {
			return
		}
		for i := range p.Steps {
			for _, l := range p.Steps[i].Lines {
				start, end := l.SourceSpan(0, len(l.Print))
				if start < 0 || end < start || end > len(l.Source) {
					t.Fatalf("line %q leads to %d:%d of %q", l.Print, start, end, l.Source)
				}
				spans.Word("step[0].say", l.Start+start, l.Start+end)
			}
		}
	})
}

func BenchmarkDecode(b *testing.B) {
	text, _ := samples.Plan("washer-pump")
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		src, _ := diag.NewSource("plan.toml", text)
		if p, _, _ := plan.Decode(src, nil); p == nil {
			b.Fatal("the sample has faults")
		}
	}
}

// BenchmarkDecodeOnly is what BurntSushi/toml alone takes: the ratio of the two
// is what our reading costs.
func BenchmarkDecodeOnly(b *testing.B) {
	text, _ := samples.Plan("washer-pump")
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		var values map[string]any
		if err := toml.Unmarshal(text, &values); err != nil {
			b.Fatal(err)
		}
	}
}
