package plan

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"fixslate/plan/prose"
)

// narration is the field of a step's say: it is read into lines.
type narration struct{ step *Step }

// narration reads narration into lines: a line alone in round brackets is a
// stage direction, one alone in square brackets a sound label, everything else
// is spoken, a sentence a line.
func (f *filler) narration(say string, at where) []Line {
	var lines []Line
	start := 0
	for raw := range strings.Lines(say) {
		line := strings.TrimRight(raw, "\n")
		trimmed := strings.TrimSpace(line)
		lead := start + strings.Index(line, trimmed)
		start += len(raw)
		switch {
		case trimmed == "":
		case bracketed(trimmed, '(', ')'):
			lines = append(lines, f.aside(Direction, trimmed, lead, at))
		case bracketed(trimmed, '[', ']'):
			lines = append(lines, f.aside(Sound, trimmed, lead, at))
		default:
			lines = append(lines, f.spoken(trimmed, lead, at)...)
		}
	}
	return lines
}

// countOrders reads, in a plan that says nowhere what is done, the narration for
// what it gives the hands to do. Steps that order something in less than a third
// of their sentences are talk: an intro says "hold on to your money" too.
func (p *Plan) countOrders() {
	if slices.ContainsFunc(p.Steps, func(s Step) bool { return s.named() }) {
		return
	}
	for i := range p.Steps {
		s := &p.Steps[i]
		sentences, orders := 0, 0
		for _, l := range s.Lines {
			if l.Kind == Spoken {
				sentences++
				orders += prose.Orders(l.Print)
			}
		}
		if 3*orders >= sentences {
			s.Orders = orders
		}
	}
}

// bracketed holds where a bracket opened by the first character is closed by
// the last.
func bracketed(line string, open, closed byte) bool {
	if len(line) < 2 || line[0] != open || line[len(line)-1] != closed {
		return false
	}
	depth := 0
	for i := 0; i < len(line); i++ {
		switch line[i] {
		case open:
			depth++
		case closed:
			depth--
		}
		if depth == 0 {
			return i == len(line)-1
		}
	}
	return false
}

// aside is a stage direction or a sound label.
func (f *filler) aside(kind LineKind, trimmed string, lead int, at where) Line {
	inner := strings.TrimSpace(trimmed[1 : len(trimmed)-1])
	from := lead + 1 + strings.Index(trimmed[1:], inner)
	l := Line{Kind: kind, Start: from}
	l.Source = inner
	l.Print, l.Quotes, l.pieces = f.compose(inner, at.moved(from)).text()
	return l
}

// spoken cuts a line of narration into its sentences.
func (f *filler) spoken(trimmed string, lead int, at where) []Line {
	segs := f.compose(trimmed, at.moved(lead))
	print, _, _ := segs.text()
	var lines []Line
	for _, s := range prose.Sentences(print) {
		l := Line{Kind: Spoken}
		part := segs.slice(s.Start, s.End)
		if len(part) == 0 {
			continue
		}
		from, to := part[0].source, part[len(part)-1].sourceEnd
		for i := range part {
			part[i].source -= from
			part[i].sourceEnd -= from
		}
		if part[0].quote != nil {
			part[0].print = begun(part[0].print)
		}
		l.Start, l.Source = lead+from, trimmed[from:to]
		l.Print, l.Quotes, l.pieces = part.text()
		l.Speak = f.speak(part)
		lines = append(lines, l)
	}
	return lines
}

// begun is a quote that begins a sentence, with a capital: "two screws" was written
// for the middle of one. "e-bike" and "kPa" stay as they are.
func begun(text string) string {
	word := text[:len(text)-len(strings.TrimLeft(text, "abcdefghijklmnopqrstuvwxyz"))]
	if next := text[len(word):]; len(word) < 2 || next != "" && !strings.ContainsRune(" -,.", rune(next[0])) {
		return text
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

// slice cuts segments to a stretch of their printed text. A quote that is cut
// keeps its printed words in speech too.
func (s segments) slice(start, end int) segments {
	var out segments
	at := 0
	for _, seg := range s {
		from, to := max(start, at)-at, min(end, at+len(seg.print))-at
		at += len(seg.print)
		if from >= to {
			continue
		}
		if from > 0 || to < len(seg.print) {
			whole := len(seg.print) == seg.sourceEnd-seg.source
			seg.print = seg.print[from:to]
			seg.speak = seg.print
			if whole {
				seg.source, seg.sourceEnd = seg.source+from, seg.source+to
			}
		}
		out = append(out, seg)
	}
	return out
}

// speak is a line as the presenter says it: quotes in their spoken form, terms
// as they are said, numbers and units in words.
func (f *filler) speak(s segments) string {
	var b strings.Builder
	for _, seg := range s {
		b.WriteString(seg.speak)
	}
	return prose.Spoken(f.sayTerms(b.String()))
}

// sayTerms replaces the plan's terms by how they are said, whole words only,
// longer terms first.
func (f *filler) sayTerms(text string) string {
	if f.terms == nil || !f.mentionsTerm(text) {
		return text
	}
	return f.terms.ReplaceAllStringFunc(text, func(word string) string {
		return f.sayAs[strings.ToLower(word)]
	})
}

// mentionsTerm spares most lines the regular expression, which is slow.
func (f *filler) mentionsTerm(text string) bool {
	text = strings.ToLower(text)
	for term := range f.sayAs {
		if strings.Contains(text, term) {
			return true
		}
	}
	return false
}

// readTerms prepares the terms that are said otherwise than they are spelled.
func (f *filler) readTerms() {
	var forms []string
	f.sayAs = map[string]string{}
	for _, t := range f.plan.Terms {
		if t.SayAs == "" || t.Text == "" {
			continue
		}
		f.sayAs[strings.ToLower(t.Text)] = t.SayAs
		forms = append(forms, edge(t.Text, utf8.DecodeRuneInString)+regexp.QuoteMeta(t.Text)+edge(t.Text, utf8.DecodeLastRuneInString))
	}
	if len(forms) > 0 {
		f.terms = regexp.MustCompile("(?i:" + strings.Join(longestFirst(forms), "|") + ")")
	}
}

// edge is a word boundary where a term begins or ends with a letter or digit.
func edge(text string, end func(string) (rune, int)) string {
	if r, _ := end(text); r < utf8.RuneSelf && (unicode.IsLetter(r) || unicode.IsDigit(r)) {
		return `\b`
	}
	return ""
}
