package claim

import (
	"sort"
	"strings"
	"sync"
	"unicode/utf8"

	"fixslate/plan/prose"
)

// reader reads one sentence after another and keeps its room.
type reader struct {
	text    string
	prose   prose.Reader
	known   *lexicon
	words   []word
	figures []prose.Figure
	about   marks  // of all words
	asks    bool   // the sentence is a question
	money   string // what sums are in that name no coin
	found   kinds
	values  []Value
	whole   want // what the words of the sentence are, all together

	spellings []prose.Span // spelled codes that no figure has passed yet

	offers  []offer   // what the number in question may be
	scene   []feature // and what is to be seen of it
	ofForms int
	ofUnits int
	united  int   // figures with a unit
	later   []int // figures without a unit
	common  int
	taught  *[]feature
	teacher func(r *reader, c *number) int
}

// readers are kept between sentences; one that grew on a giant is let go.
var readers = sync.Pool{New: func() any { return &reader{} }}

const mostKept = 4096 // words

func (r *reader) free() {
	if cap(r.words) <= mostKept {
		readers.Put(r)
	}
}

// turn turns the reader to a sentence.
func (r *reader) turn(text string) {
	r.text = text
	r.known = vocabulary()
	r.prose.Read(text)
	r.words = r.known.cut(r.words[:0], text, r.prose.Words())
	r.figures, r.values, r.spellings = r.figures[:0], r.values[:0], r.spellings[:0]
	r.found, r.about = 0, 0
	for i := range r.words {
		r.about |= r.words[i].marks
	}
	r.asks = strings.HasSuffix(strings.TrimRight(text, " \t\"”'’)"), "?")
	if r.mayCount() {
		r.figures = r.prose.Figures(r.figures)
	}
	r.moods()
}

// mayCount says whether there may be figures in the sentence.
func (r *reader) mayCount() bool {
	for i := range r.words {
		if r.words[i].number || r.words[i].marks&article != 0 {
			return true
		}
	}
	for i := range len(r.text) {
		if b := r.text[i]; b == '$' || b == '%' || b >= utf8.RuneSelf {
			return strings.ContainsAny(r.text, "£$€¥%½¼¾⅓⅔⅛⅜⅝⅞")
		}
	}
	return false
}

func (r *reader) read() {
	if len(r.words) == 0 || r.asks || r.isTalk() {
		return
	}
	r.figured()
	r.phrases()
	r.beliefs()
	r.nobodies()
	r.absolutes()
	r.noneOfThem()
	r.modals()
	r.approximations()
	r.comparisons()
	r.consequences()
	r.causes()
	r.effects()
	r.chains()
	r.wrought()
	r.fittings()
	r.when()
	r.named()
	r.properties()
	if !r.unsaid() {
		r.believed()
	}
}

func (r *reader) add(k Kind) { r.found.add(k) }

// isTalk holds for greetings and what is said between the work: a sentence that
// begins with one, or speaks of the video itself.
func (r *reader) isTalk() bool {
	k := &r.known.classes
	if r.words[0].classes&k.greeting != 0 {
		return len(r.words) < 12 || r.is(1, "for") || r.is(1, "back") || r.is(1, "to")
	}
	for i := range r.words {
		if i > 20 {
			break
		}
		switch r.words[i].text {
		case "video", "episode", "channel":
			if r.is(i-1, "this") || r.is(i-1, "last") || r.is(i-1, "next") || r.is(i-1, "previous") || r.is(i-1, "the") || r.is(i-1, "another") {
				return true
			}
		case "description":
			if r.is(i-1, "the") && (r.is(i-2, "in") || r.is(i-2, "down")) {
				return true
			}
		}
	}
	return false
}

func (r *reader) is(i int, text string) bool {
	return i >= 0 && i < len(r.words) && r.words[i].text == text
}

func (r *reader) in(i int, c class) bool {
	return i >= 0 && i < len(r.words) && r.words[i].classes&c != 0
}

// wordAt is the index of the first word that ends behind a place in the text.
func (r *reader) wordAt(at int) int {
	return sort.Search(len(r.words), func(i int) bool { return r.words[i].end > at })
}

// near says whether a word of a class stands within a few words of i.
func (r *reader) near(i, reach int, c class) bool {
	for j := max(0, i-reach); j < len(r.words) && j <= i+reach; j++ {
		if r.words[j].classes&c != 0 {
			return true
		}
	}
	return false
}

// clauseBefore walks back from word i over its clause, at most reach words.
func (r *reader) clauseBefore(i, reach int, visit func(j int) bool) {
	for j := i - 1; j >= 0 && j >= i-reach; j-- {
		if r.words[j+1].stopped || !visit(j) {
			return
		}
	}
}
