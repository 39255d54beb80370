package claim

import (
	"slices"
	"strings"

	"fixslate/plan/prose"
)

// reader reads one sentence.
type reader struct {
	text   string
	spans  []prose.Span
	words  []string // folded, contractions without their tail
	line   string   // the words with a space before, between and after
	figs   []prose.Figure
	kinds  map[Kind]bool
	values []Value
}

func newReader(text string) *reader {
	r := &reader{text: text, kinds: map[Kind]bool{}}
	r.spans = prose.Words(text)
	var b strings.Builder
	b.WriteByte(' ')
	numeric := false
	for _, s := range r.spans {
		w := prose.Fold(s.Of(text))
		if whole, ok := unwritten[w]; ok {
			w = whole
		}
		numeric = numeric || numberWords[w] || strings.ContainsAny(w, "0123456789-")
		r.words = append(r.words, w)
		b.WriteString(opened(w))
		b.WriteByte(' ')
	}
	r.line = b.String()
	if numeric || strings.ContainsAny(text, "£$€%") {
		r.figs = prose.Figures(text)
	}
	return r
}

// opened sets the tail of a contraction apart, so that "it's" matches "it".
func opened(w string) string {
	if i := strings.IndexByte(w, '\''); i > 0 && !strings.HasSuffix(w, "n't") {
		return w[:i] + " " + w[i:]
	}
	return w
}

// unwritten are contractions as captions spell them.
var unwritten = map[string]string{"thats": "that's", "dont": "don't", "doesnt": "doesn't", "isnt": "isn't", "ive": "i've", "im": "i'm",
	"cant": "can't", "wont": "won't", "theyre": "they're", "whats": "what's", "theres": "there's"}

func (r *reader) has(phrases ...string) bool {
	for _, p := range phrases {
		if strings.Contains(r.line, " "+p+" ") {
			return true
		}
	}
	return false
}

func (r *reader) add(k Kind) { r.kinds[k] = true }

// before and after are the words up to, and from, a place in the text.
func (r *reader) before(at int) []string {
	n, _ := slices.BinarySearchFunc(r.spans, at, func(s prose.Span, at int) int { return s.Start - at })
	return r.words[:n]
}

func (r *reader) after(at int) []string {
	n, _ := slices.BinarySearchFunc(r.spans, at, func(s prose.Span, at int) int { return s.Start - at })
	return r.words[n:]
}

func (r *reader) read() {
	if len(r.words) == 0 || r.isTalk() {
		return
	}
	question := strings.HasSuffix(strings.TrimSpace(r.text), "?")
	r.figures()
	if question {
		return
	}
	r.phrases()
	r.generals()
	r.modal()
	r.compared()
	r.property()
}

// isTalk holds for what is said between the work.
func (r *reader) isTalk() bool {
	return r.has("back in", "see you", "give me a", "hang on", "welcome to", "for watching", "in the description", "in the last video", "bear with me", "i was about to")
}

// order says whether the words tell the viewer to do something: they begin,
// after connectives, with a verb in its base form.
func order(words []string) bool {
	for i, w := range words {
		if connectives[w] || strings.HasSuffix(w, "ly") {
			continue
		}
		if baseVerbs[w] {
			return true
		}
		if i+1 < len(words) && !functionWords[w] && !strings.HasSuffix(w, "s") && !strings.Contains(w, "'") {
			next := words[i+1]
			return next == "the" || next == "it" || next == "them" || next == "your"
		}
		return false
	}
	return false
}
