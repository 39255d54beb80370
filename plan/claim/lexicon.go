package claim

// class is a set of word classes, a bit for each class that code asks for.
type class uint64

// lexicon is the vocabulary: what is known of each word, by its spelling.
type lexicon struct {
	index index  // a power of two
	terms []term // the first is that of all words not known
	book  cueBook
	dials [][]dial // what numbers near words are; the first is that of most words
	classes
	seconds
}

// vocabulary is what lexicon.txt, cues.txt and dials.txt say. It stands in tables.go:
// reading them takes as long as reading seven plans.
//
//go:generate env FIXSLATE_UPDATE=1 go test -tags bare -run TestTables .
//go:generate env FIXSLATE_UPDATE=1 go test -run 'TestWeights$|TestAsserting$' .
func vocabulary() *lexicon { return &tables }

// term is what is known of a word.
type term struct {
	text    string
	classes class // the lists of it that code asks for
	others  class // and those that only patterns name
	first   int32 // the first of the patterns that begin with the word, 0 for none
	dials   uint8 // what a number near it is
	said    uint8 // in a code: a letter, a number with numbered added, a mark; a small letter for a word that sounds like one
	marks   marks
	unit    string // what a number before it measures, where trade has no such unit
	whole   string // of a contraction or a slurred spelling: what it stands for
}

// marks are what else code asks of a word; lexicon.txt says what each is.
type marks uint64

const (
	extras marks = 1 << iota
	asks
	sells
	fine
	rubbed
	filler
	events
	pieces
	standards
	sizing
	sides
	grades
	forced
	feelings
	weighty
	weights
	solids
	round
	shorts
	charged
	powered
	joining
	alone
	figure
	article
	causative
	trying
	version
	chaining
	ofFilm
	ofCelsius
	ofFahrenheit
	spells
	beIs
	stroked // a mark inside a code as it is said: "dash"
	agent   // of the list agency
)

// markNames are the marks by the names of their lists, in order.
const markNames = `extras asks sells fine rubbed filler events pieces standards
		sizing sides grades forced feelings weighty weights solids round shorts charged powered joining alone figure
		article causative trying version chaining ofFilm ofCelsius ofFahrenheit spells beIs`

// listed is a list by its bit, in one of the two sets.
type listed struct{ asked, other class }

// classes are the lists that code asks for; patterns may name any list.
type classes struct {
	self, person, pronoun, det, poss, be, have, modal, wh, prep, glue, particle, lead, greeting,
	order, weak, states, often, seeing, period, periods, perilous, hurt, flesh, harm, damage, property, colour,
	making, fitting, reading, meter, heat, angle, better, best, much, dimension, asadj, about, conductor, thermal,
	thread, maybe, idle, believe, do, resistive, fluid, measured, settling, where, inched, role, settled, poured, long, bought, heavy, priced, symptom, mend, past, filming class
}

// seconds are lists that code asks for of the second set, as the first is full.
type seconds struct{ faulty, seepage, ail, agency, law, licensed, licensee class }

// second says whether word i is in a list of the second set.
func (r *reader) second(i int, c class) bool {
	return i >= 0 && i < len(r.words) && r.known.terms[r.words[i].id].others&c != 0
}

// of is the classes of a word.
func (l *lexicon) of(w string) class { return l.terms[l.find(w)].classes }

// kindsOfWord are the classes, for short.
func kindsOfWord() *classes { return &tables.classes }
