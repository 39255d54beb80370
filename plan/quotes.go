package plan

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// toBeFound is how a value that is not known yet prints.
const toBeFound = "to be found"

// readQuote reads what stands between the braces of a quote: "id", "id.key",
// "kind:id.key".
func readQuote(inner string) (kind Kind, id, key string, ok bool) {
	const letters = "abcdefghijklmnopqrstuvwxyz"
	before, id, kinded := strings.Cut(inner, ":")
	if !kinded {
		before, id = "", before
	}
	id, key, keyed := strings.Cut(id, ".")
	ok = kinded == madeOf(before, letters) && madeOf(id, letters+"0123456789-") && keyed == madeOf(key, letters+"_")
	return Kind(before), id, key, ok
}

// madeOf holds for a text of some of these characters and no others.
func madeOf(text, characters string) bool { return text != "" && strings.Trim(text, characters) == "" }

// filler fills quotes. Facts may quote facts: each text is filled when it is
// first wanted, and a text wanted while it is being filled quotes itself.
type filler struct {
	*decoder
	state map[*Text]fillState
	terms *regexp.Regexp    // the terms that are said otherwise than spelled; nil: none
	sayAs map[string]string // how, by the term in lower case
}

type fillState int

const (
	filling fillState = iota + 1
	filled
)

// where is the place of a text: for messages, and for the versions it is for.
type where struct {
	path     string
	variants []string
	offset   int // where a part of the text begins in it
}

func (w where) moved(offset int) where {
	w.offset += offset
	return w
}

// fill fills every text of the plan and reads narration into lines.
func (d *decoder) fill() {
	f := &filler{decoder: d, state: map[*Text]fillState{}}
	f.readTerms()
	open := d.openPaths()
	d.visit(func(t target) {
		if len(open) > 0 && open[t.path()] {
			d.noteOpen(t)
		}
		at := func() where { return where{t.path(), t.at.variants, 0} }
		switch field := t.field.(type) {
		case *Text:
			if field.Source != "" {
				f.text(field, at())
			}
		case *Value:
			if field.Source != "" {
				f.value(field, at())
			}
		case *Note:
			if field.Source != "" {
				f.note(field, at())
			}
		case *Exit:
			if field.Text.Source != "" {
				f.text(&field.Text, at())
			}
		case *ChapterMark:
			if field.Title.Source != "" {
				f.text(&field.Title, at())
			}
		case narration:
			field.step.Lines = f.narration(field.step.Say, at())
		case *[]StepCaution:
			for i := range *field {
				use := &(*field)[i]
				place := where{use.path + ".say", t.at.variants, 0}
				f.text(&use.Say, place)
				use.Lines = f.narration(use.Say.Source, place)
			}
		}
	})
	for i := range d.plan.Cautions {
		c := &d.plan.Cautions[i]
		c.Lines = f.narration(c.Say.Source, where{fmt.Sprintf("caution[%d].say", i), c.Variants, 0})
		c.Text = f.plain(c.Text, where{fmt.Sprintf("caution[%d]", i), c.Variants, 0})
	}
	for i := range d.plan.Steps {
		s := &d.plan.Steps[i]
		s.OtherSaid = f.narration(s.OtherSide.Source, where{fmt.Sprintf("step[%d].other_side", i), s.Variants, 0})
	}
	d.plan.countOrders()
	d.nameOpen()
}

// text fills one text.
func (f *filler) text(t *Text, at where) {
	if t.Source == "" || f.state[t] == filled {
		return
	}
	if f.state[t] == filling {
		f.fault("quote-circular", at.path, "write the value out in one of them", "this text quotes itself")
		return
	}
	f.state[t] = filling
	pieces := f.compose(t.Source, at)
	t.Print, t.Quotes, t.pieces = pieces.text()
	f.state[t] = filled
}

func (f *filler) plain(source string, at where) string {
	print, _, _ := f.compose(source, at).text()
	return print
}

// value fills a text that may be a measure.
func (f *filler) value(v *Value, at where) {
	if f.state[&v.Text] == filled {
		return
	}
	f.text(&v.Text, at)
	if v.Source == "" {
		return
	}
	m, err := trade.ParseMeasure(v.Print)
	if len(v.Quotes) == 0 {
		m, err = trade.ParseMeasure(v.Source)
		if err != nil {
			f.fault("value-wrong", at.path, "", "%s: %v", lastName(at.path), err)
			return
		}
		if m.Shape != trade.Words {
			v.Print = m.String()
			v.pieces = []piece{{0, len(v.Print), 0, len(v.Source)}}
		}
	}
	if err == nil {
		v.Measure = m
	}
}

// note fills Markdown of more than a line.
func (f *filler) note(n *Note, at where) {
	if n.Source == "" {
		return
	}
	once := map[string]string{} // a fault is said once, not for text and HTML each
	fill := func(text string) string {
		if done, ok := once[text]; ok {
			return done
		}
		print, _, _ := segments(f.split(text, 0, at)).text()
		once[text] = print
		return print
	}
	n.Plain = prose.Plain(n.Source, fill)
	n.HTML = prose.HTML(n.Source, fill)
}

// segment is a stretch of a text: words as written, or one filled quote.
type segment struct {
	print, speak      string
	source, sourceEnd int
	quote             *Quote // nil: words as written
}

type segments []segment

// compose reads inline Markdown and fills the quotes in its text.
func (f *filler) compose(source string, at where) segments {
	if source == "?" {
		return segments{{print: toBeFound, speak: toBeFound, sourceEnd: 1}}
	}
	var out segments
	for _, run := range prose.Inline(source) {
		if run.Text == source[run.Start:run.End] {
			out = append(out, f.split(run.Text, run.Start, at)...)
		} else { // an escape or entity
			out = append(out, segment{print: run.Text, speak: run.Text, source: run.Start, sourceEnd: run.End})
		}
	}
	return out
}

// split cuts a run of text at its quotes.
func (f *filler) split(text string, offset int, at where) []segment {
	var out []segment
	literal := func(s string, from, to int) {
		if s != "" {
			out = append(out, segment{print: s, speak: s, source: offset + from, sourceEnd: offset + to})
		}
	}
	from := 0
	for i := 0; i < len(text); i++ {
		switch brace := text[i]; {
		case brace != '{' && brace != '}':
		case strings.HasPrefix(text[i:], "{{"), strings.HasPrefix(text[i:], "}}"):
			literal(text[from:i], from, i)
			literal(text[i:i+1], i, i+2)
			i++
			from = i + 1
		case brace == '{':
			literal(text[from:i], from, i)
			end := strings.IndexByte(text[i:], '}')
			if end < 0 {
				f.quoteFault(at, offset+i, offset+len(text), "a quote is not closed", "write } after the id, or {{ for a brace")
				from = i
				i = len(text)
				break
			}
			end += i + 1
			out = append(out, f.quote(text[i+1:end-1], offset+i, offset+end, at))
			from, i = end, end-1
		}
	}
	literal(text[min(from, len(text)):], from, len(text))
	return out
}

// quoteFault reports something at a stretch of the text at a path.
func (f *filler) quoteFault(at where, start, end int, message, hint string) {
	f.fault("quote-unknown", at.path, hint, "%s", message)
	f.findings[len(f.findings)-1].At = f.spans.Word(at.path, at.offset+start, at.offset+end)
}

// quote fills what stands between braces.
func (f *filler) quote(inner string, start, end int, at where) segment {
	none := segment{print: "{" + inner + "}", speak: inner, source: start, sourceEnd: end}
	kind, id, key, sound := readQuote(inner)
	if !sound {
		f.quoteFault(at, start, end, fmt.Sprintf("{%s} is no quote", inner), "write {id}, {id.key} or {kind:id.key}; {{ and }} print braces")
		return none
	}
	ref, ok := f.refTo(kind, id, at, start, end)
	if !ok {
		return none
	}
	q := &Quote{Ref: ref, Key: key}
	before := len(f.findings)
	print, speak, fault := f.show(q, at)
	if len(f.findings) > before { // what it quotes has a fault of its own
		return none
	}
	if fault != "" {
		f.quoteFault(at, start, end, fmt.Sprintf("{%s} %s", inner, fault), f.quoteHint(ref, inner, key))
		return none
	}
	return segment{print: print, speak: speak, source: start, sourceEnd: end, quote: q}
}

// quoteHint answers a quote whose key the fact does not have.
func (f *filler) quoteHint(ref Ref, inner, key string) string {
	if key == "" {
		return ""
	}
	t, _ := Language().Find(tableOf(ref.Kind))
	if slices.Contains(t.Names(), key) {
		return fmt.Sprintf("add %s to %s %q, or \"?\" where it is to be found", key, ref.Kind, ref.ID)
	}
	if near, ok := Nearest(key, t.Names()); ok {
		return fmt.Sprintf("did you mean {%s%s}", strings.TrimSuffix(inner, key), near)
	}
	return "the keys are " + quoted(t.Names())
}

// refTo finds what an id in a quote means.
func (f *filler) refTo(kind Kind, id string, at where, start, end int) (Ref, bool) {
	var refs []Ref
	for _, k := range quotable {
		if ref := (Ref{k, id}); (kind == "" || kind == k) && len(f.plan.index[ref]) > 0 {
			refs = append(refs, ref)
		}
	}
	if len(refs) > 1 {
		// An id that nobody wrote gives way: a step called "Pump" takes nothing
		// from the part {pump}.
		if written := slices.DeleteFunc(slices.Clone(refs), func(r Ref) bool { return f.plan.derived[r] }); len(written) == 1 {
			refs = written
		}
	}
	switch len(refs) {
	case 1:
		return refs[0], true
	case 0:
		hint := "declare it once in a table of facts, or write {{ for a brace"
		if near, ok := Nearest(id, f.plan.quotableIDs(kind)); ok {
			hint = fmt.Sprintf("did you mean {%s}", near)
		}
		if kind != "" && !slices.Contains(quotable, kind) {
			hint = fmt.Sprintf("there is no kind %q", kind)
		}
		f.quoteFault(at, start, end, fmt.Sprintf("there is nothing with the id %q", id), hint)
	default:
		var found []string
		for _, r := range refs {
			found = append(found, "{"+r.String()+"}")
		}
		f.quoteFault(at, start, end, fmt.Sprintf("%q is the id of several things", id), "write "+strings.Join(found, " or "))
	}
	return Ref{}, false
}

// quotable are the kinds that an id in a quote may name, in the order of the
// language.
var quotable = []Kind{KindVariant, KindSource, KindTool, KindPart, KindSupply, KindFastener, KindFuse, KindWire, KindSpec, KindTerm, KindCaution, KindCause, KindTest, KindClaim, KindSetup, KindStep}

// quotableIDs are the ids that a quote of a kind, or of any, may name.
func (p *Plan) quotableIDs(kind Kind) []string {
	var ids []string
	for _, k := range quotable {
		if kind == "" || kind == k {
			ids = append(ids, p.ids(k)...)
		}
	}
	return ids
}

// text joins segments to the printed text.
func (s segments) text() (string, []Quote, []piece) {
	var b strings.Builder
	var quotes []Quote
	var pieces []piece
	for _, seg := range s {
		start := b.Len()
		b.WriteString(seg.print)
		if seg.quote != nil {
			q := *seg.quote
			q.Start, q.End = start, b.Len()
			quotes = append(quotes, q)
		}
		pieces = append(pieces, piece{start, b.Len(), seg.source, seg.sourceEnd})
	}
	return b.String(), quotes, pieces
}
