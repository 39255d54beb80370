package plan_test

import (
	"fmt"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"fixslate/plan"
	"fixslate/plan/diag"
)

const factsForQuotes = `
variant = [{ id = "early", name = "early ones", short = "early" }, { id = "late", name = "late ones" }]
source = [{ id = "sheet", title = "the sheet" }]
tool = [{ id = "driver", name = "8 mm nut driver" }, { id = "meter", name = "multimeter" }]
part = [{ id = "pump", name = "drain pump", number = "NV-2231" }]
supply = [{ id = "rag", name = "rag" }]
fastener = [
  { id = "screws", what = "pump screws", thread = "M5", drive = "8 mm", count = 3, torque = "3 N·m" },
  { id = "clamp", what = "clamp bolt", drive = "5 mm hex key", count = 1 },
  { id = "many", what = "clips", count = 12, torque = "hand tight" },
]
fuse = [{ id = "f12", at = "12", rating = "15 A" }, { id = "main", at = "the main fuse", rating = "?" }]
wire = [{ id = "feed", colour = "violet-blue", from_pin = "pin 4" }]
spec = [
  { id = "winding", what = "winding", value = "10..20 Ω", variants = ["early"] },
  { id = "winding", what = "winding", value = "?", variants = ["late"] },
  { id = "meter", what = "height", value = "1.2 m" },
  { id = "again", what = "again", value = "as {winding}" },
]
caution = [{ id = "mind", say = "Mind the edge." }]
cause = [{ id = "dead", what = "a dead pump" }]
test = [{ id = "ohms", question = "Open?", expect = "{winding}", work = "3m" }]
claim = [{ id = "open", text = "Most fail open" }]
setup = [{ id = "low", place = "floor", view = "low" }, { id = "eb", place = "e-bike stand" }]
term = [{ id = "imp", text = "impeller", say_as = "im PELL er" }]
[video]
title = "T"
`

// The printed and spoken form of each kind of fact.
func TestQuotesByKind(t *testing.T) {
	for quote, want := range map[string][2]string{
		"{screws}":              {"three 8 mm pump screws", "three eight millimetre pump screws"},
		"{clamp}":               {"one 5 mm hex-key clamp bolt", "one five millimetre hex-key clamp bolt"},
		"{screws.torque}":       {"3 N·m", "three newton metres"},
		"{screws.count}":        {"3", "three"},
		"{many}":                {"12 clips", "twelve clips"},
		"{many.torque}":         {"hand tight", "hand tight"},
		"{pump}":                {"drain pump (NV-2231)", "drain pump"},
		"{f12}":                 {"fuse 12, 15 A", "fuse twelve, fifteen amps"},
		"{main}":                {"the main fuse, to be found", "the main fuse, to be found"},
		"{feed}":                {"violet-blue wire", "violet-blue wire"},
		"{feed.from_pin}":       {"pin 4", "pin four"},
		"{winding}":             {"10 to 20 Ω (early), to be found (late ones)", "ten to twenty ohms, early, to be found, late ones"},
		"{again}":               {"as 10 to 20 Ω (early), to be found (late ones)", "as ten to twenty ohms (early), to be found (late ones)"},
		"{ohms}":                {"10 to 20 Ω (early), to be found (late ones)", ""},
		"{ohms.work}":           {"3 min", "three minutes"},
		"{tool:meter}":          {"multimeter", "multimeter"},
		"{spec:meter}":          {"1.2 m", "one point two metres"},
		"{rag} and {dead}":      {"rag and a dead pump", "rag and a dead pump"},
		"{mind}":                {"Mind the edge.", "Mind the edge."},
		"{sheet}, {low}":        {"the sheet, floor low", ""},
		"{open} of the {imp}":   {"Most fail open of the impeller", "Most fail open of the im PELL er"},
		"a {{brace}} and *it*":  {"a {brace} and it", ""},
		"**{driver}**, {early}": {"8 mm nut driver, early ones", ""},
	} {
		p, _ := sound(t, factsForQuotes+"[[step]]\ntitle = \"S\"\nsay = "+strconv.Quote("So "+quote)+"\n")
		l := p.Steps[0].Lines[0]
		if l.Print != "So "+want[0] {
			t.Errorf("%s prints %q, want %q", quote, l.Print, want[0])
		}
		if want[1] != "" && l.Speak != "So "+want[1] {
			t.Errorf("%s is said %q, want %q", quote, l.Speak, want[1])
		}
	}
}

// A quote that begins a sentence has a capital there, and is said as ever.
func TestQuotesBeginSentences(t *testing.T) {
	for say, want := range map[string]string{
		"{screws}. {screws} again.":   "Three 8 mm pump screws.|Three 8 mm pump screws again.",
		"Now: {screws}.":              "Now: three 8 mm pump screws.",
		"{screws.count} of them.":     "3 of them.",
		"{feed.from_pin}, then {f12}": "Pin 4, then fuse 12, 15 A",
		"{feed} first.":               "Violet-blue wire first.",
		"{eb} first.":                 "e-bike stand first.",
	} {
		p, _ := sound(t, factsForQuotes+"[[step]]\ntitle = \"S\"\nsay = "+strconv.Quote(say)+"\n")
		var lines []string
		for _, l := range p.Steps[0].Lines {
			lines = append(lines, l.Print)
		}
		if got := strings.Join(lines, "|"); got != want {
			t.Errorf("%s prints %q, want %q", say, got, want)
		}
	}
}

// In a step of one version the quote gives that version's value alone.
func TestQuoteInOneVersion(t *testing.T) {
	p, _ := sound(t, factsForQuotes+"[[step]]\ntitle = \"S\"\nvariants = [\"early\"]\nsay = \"You want {winding}.\"\n")
	if got := p.Steps[0].Lines[0].Print; got != "You want 10 to 20 Ω." {
		t.Error(got)
	}
}

// A value is never read as markup, in a line or in a note.
func TestValueIsNoMarkup(t *testing.T) {
	p, _ := sound(t, "spec = [{ id = \"s\", what = \"star *one* [a](http://b.c) <i>i</i>\", value = \"2 mm\" }]\n"+
		"term = [{ id = \"raw\", text = \"*x* <b>y</b> [z](http://b.c)\" }]\n"+video+
		"[[step]]\ntitle = \"S\"\nsay = \"It is {raw}.\"\nnote = \"See **{raw}**.\"\n")
	if got, want := p.Steps[0].Lines[0].Print, "It is *x* <b>y</b> [z](http://b.c)."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := strings.TrimSpace(p.Steps[0].Note.HTML), "<p>See <strong>*x* &lt;b&gt;y&lt;/b&gt; [z](http://b.c)</strong>.</p>"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func FuzzQuotes(f *testing.F) {
	for _, seed := range []string{"{screws}", "{winding} {{x}} {", "}}{{", "*{pump}* `{f12}` [{feed}](x)", "{tool:meter.name}", "{a.b.c}", "&lt;{screws.torque}&gt;\n(turn {rag})\n[hums {again}]", "\\{screws\\}", "{screws"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if !utf8.ValidString(text) || strings.ContainsAny(text, "\x00\r") || len(text) > 4096 {
			return
		}
		src, faults := diag.NewSource("f.toml", []byte(factsForQuotes+"[[step]]\ntitle = \"S\"\nsay = "+tomlQuote(text)+"\n"))
		if len(faults) > 0 {
			return
		}
		p, spans, findings := plan.Decode(src, nil)
		if p == nil {
			for _, finding := range findings {
				if finding.Rule != "quote-unknown" {
					t.Fatalf("%q raises %s", text, print(findings))
				}
			}
			return
		}
		for _, l := range p.Steps[0].Lines {
			for _, q := range l.Quotes {
				start, end := l.SourceSpan(q.Start, q.End)
				place := spans.Word("step[0].say", l.Start+start, l.Start+end)
				if got := src.Text[place.Span.Start:place.Span.End]; q.End > q.Start && !strings.Contains(got, "{") {
					t.Fatalf("%q: the quote %v leads to %q", text, q, got)
				}
			}
		}
	})
}

// tomlQuote writes a text as a TOML basic string.
func tomlQuote(text string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range text {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r < ' ' || r == 0x7f:
			b.WriteString(`\u00`)
			b.WriteString(strings.ToUpper(strconv.FormatInt(int64(r)+0x100, 16)[1:]))
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// An id that was only taken from a title gives way to one that was written;
// two written ones want the kind.
func TestQuotedIDsThatClash(t *testing.T) {
	text := "tool = [{ id = \"meter\", name = \"multimeter\" }]\n" + video + "[[step]]\n%stitle = \"Meter\"\nsay = \"Take the {meter}.\"\n"
	p, _, findings := decode(t, fmt.Sprintf(text, ""))
	if p == nil || p.Steps[0].Lines[0].Print != "Take the multimeter." {
		t.Errorf("a step called Meter: %v", findings)
	}
	if _, _, findings := decode(t, fmt.Sprintf(text, "id = \"meter\"\n")); !strings.Contains(flat(findings), `"meter" is the id of several things | write {tool:meter} or {step:meter}`) {
		t.Errorf("a step with the id meter: %s", flat(findings))
	}
}
