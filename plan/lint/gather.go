package lint

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// gathered is what several rules look up, made once for a run.
type gathered struct {
	texts    []plan.Words
	quoted   map[plan.Ref]bool // things that some text quotes
	words    []string          // of each step: what its title, do and narration say, folded
	all      string            // of every text, folded
	said     []said            // spoken lines with their claims
	facts    []valued          // facts with a measured value
	drives   [][]trade.Drive   // of each fastener
	fits     []trade.Fit       // of each fastener: the best of its drives
	captions []diag.Finding    // of the plan's own cues against its profile
}

func gather(pass *Pass) gathered {
	p := pass.Plan
	g := gathered{said: saidLines(p, pass.Claims), facts: valuedFacts(p), captions: captionFindings(pass), texts: p.Texts(), quoted: map[plan.Ref]bool{}, words: make([]string, len(p.Steps))}
	steps := make([]strings.Builder, len(p.Steps))
	var all strings.Builder
	long := 0
	for _, w := range g.texts {
		long += len(w.Print)
	}
	all.Grow(long + long/4)
	for _, w := range g.texts {
		for _, q := range w.Quotes {
			g.quoted[q.Ref] = true
		}
		words := fold(w.Print)
		all.WriteString(words)
		if w.Step < 0 {
			continue
		}
		switch key := w.Path[strings.LastIndexByte(w.Path, '.')+1:]; key {
		case "title", "do", "say", "other_side":
			steps[w.Step].WriteString(words)
		}
	}
	for i := range steps {
		g.words[i] = steps[i].String()
	}
	g.all = all.String()
	g.drives = meantDrives(p)
	for i := range p.Fasteners {
		g.fits = append(g.fits, fitsOf(&p.Fasteners[i], g.drives[i]))
	}
	return g
}

// fold brings a text to words in lower case with a space on either side of
// each, so that a phrase is found whole with strings.Contains. A full stop
// keeps words of two sentences apart.
func fold(text string) string {
	if strings.ContainsFunc(text, func(r rune) bool { return r >= utf8.RuneSelf }) {
		text = prose.Fold(text)
	}
	var b strings.Builder
	b.Grow(len(text) + len(text)/8 + 8)
	b.WriteByte(' ')
	space := true
	for i := 0; i < len(text); {
		from := i
		for i < len(text) && folded[text[i]] {
			i++
		}
		if from < i {
			b.WriteString(text[from:i])
			space = false
			continue
		}
		r, size := utf8.DecodeRuneInString(text[i:])
		i += size
		switch {
		case 'A' <= r && r <= 'Z':
			b.WriteByte(byte(r) + 'a' - 'A')
			space = false
		case r == '.' || r == '!' || r == '?' || r == ';' || r == '\n':
			b.WriteString(" . ")
			space = true
		case r >= utf8.RuneSelf && (unicode.IsLetter(r) || unicode.IsDigit(r)):
			b.WriteRune(r)
			space = false
		case !space:
			b.WriteByte(' ')
			space = true
		}
	}
	b.WriteString(" . ")
	return b.String()
}

// folded are the characters that fold leaves as they are.
var folded = func() (stay [256]bool) {
	for _, c := range []byte("abcdefghijklmnopqrstuvwxyz0123456789-'/") {
		stay[c] = true
	}
	return stay
}()

// says holds where a folded text has one of the phrases, as whole words.
func says(folded string, phrases ...string) bool {
	return slices.ContainsFunc(phrases, func(phrase string) bool { return holdsWhole(folded, phrase) })
}

// holdsWhole holds where a phrase stands in a folded text with a space on either
// side.
func holdsWhole(folded, phrase string) bool {
	for from := 0; from < len(folded); {
		at := strings.Index(folded[from:], phrase)
		if at < 0 {
			return false
		}
		at += from
		if end := at + len(phrase); at > 0 && folded[at-1] == ' ' && end < len(folded) && folded[end] == ' ' {
			return true
		}
		from = at + 1
	}
	return false
}

// stepPath is the path of a step's key.
func stepPath(step int, key string) string { return fmt.Sprintf("step[%d].%s", step, key) }

// row is the path of a key of one element.
func row(kind plan.Kind, i int, key string) string {
	if key == "" {
		return fmt.Sprintf("%s[%d]", kind, i)
	}
	return fmt.Sprintf("%s[%d].%s", kind, i, key)
}

// uses are the steps that list a thing for hands to work with, or quote it.
func (p *Pass) uses(ref plan.Ref) []int {
	var steps []int
	for i := range p.Plan.Steps {
		if slices.Contains(listOf(&p.Plan.Steps[i], ref.Kind), ref.ID) || p.quotesIn(i, ref) {
			steps = append(steps, i)
		}
	}
	return steps
}

// listOf is a step's list of one kind of things.
func listOf(s *plan.Step, kind plan.Kind) []string {
	switch kind {
	case plan.KindTool:
		return s.Tools
	case plan.KindPart:
		return s.Parts
	case plan.KindSupply:
		return s.Supplies
	case plan.KindFastener:
		return s.Fasteners
	}
	return nil
}

// quotesIn holds where a line of the step's narration quotes the thing.
func (p *Pass) quotesIn(step int, ref plan.Ref) bool {
	quotes := func(q plan.Quote) bool { return q.Ref == ref }
	for _, l := range p.Plan.Steps[step].Lines {
		if slices.ContainsFunc(l.Quotes, quotes) {
			return true
		}
	}
	return slices.ContainsFunc(p.Plan.Steps[step].Do.Quotes, quotes)
}
