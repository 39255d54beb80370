package hazard

import (
	"embed"
	"fmt"
	"io/fs"
	"math"
	"math/bits"
	"slices"
	"strconv"
	"strings"
)

// The lexicon stands in text files, one for each subject, an entry a line. A
// line that begins with white space goes on with the line before.
//
//	word det: the, a, an                        grammar: what part of speech a word is
//	kind appliance: mains cased                 whatever is an appliance is also these
//	denied stands: jack-only                    "no stands" says that it is on the jack alone
//	ends power-up: unfed                        who switches on ends what was said of the plug
//	thing tumble dryer, dryer: appliance drum   a thing, place, material or person, and what it is
//	state engine running: running               words for how things stand
//	rest parked, boxed: calm                     the same, but only said of the plan's object
//	act undo, unscrew, take .. off: undo        what hands do; ".." is up to six words
//	object washer: wet-appliance                 a thing, but only as the plan's object
//	blank spring washer, headphone jack         look-alikes, taken out first
//	gate mains-isolation: on mains               what every rule of a class asks for
//	rule mains-isolation: open>cover not low-power
//	avoid mains-shock: do isolate               what a narrator says instead of a caution
//
// A word stands for all its forms, "=word" for that form alone. What stands
// behind the colon are marks; rules are made of marks alone, so that a new thing
// or a new way to say something takes part in every rule of its kind. The terms
// of a rule are explained in rule.go.
//
//go:embed lexicon
var files embed.FS

// set is a set of marks.
type set [10]uint64

const marksMax = 64 * len(set{})

func (s *set) add(m uint16)      { s[m/64] |= 1 << (m % 64) }
func (s *set) has(m uint16) bool { return s[m/64]&(1<<(m%64)) != 0 }
func (s *set) join(o *set) {
	for i := range s {
		s[i] |= o[i]
	}
}

func (s *set) cut(o *set) {
	for i := range s {
		s[i] &^= o[i]
	}
}

func (s *set) meets(o *set) bool {
	return s[0]&o[0]|s[1]&o[1]|s[2]&o[2]|s[3]&o[3]|s[4]&o[4]|s[5]&o[5]|s[6]&o[6]|s[7]&o[7]|s[8]&o[8]|s[9]&o[9] != 0
}

func (s *set) empty() bool { return *s == set{} }

// each calls for every mark, in order.
func (s *set) each(do func(uint16)) {
	for i, w := range s {
		for ; w != 0; w &= w - 1 {
			do(uint16(64*i + bits.TrailingZeros64(w)))
		}
	}
}

// entryKind says what an entry is.
type entryKind uint8

const (
	aThing entryKind = iota
	aState
	atRest
	anAct
	aBlank
	anObject
)

// entry is a line of things, states, acts or look-alikes.
type entry struct {
	kind  entryKind
	marks set
}

// lexicon is the compiled files; nothing writes to it. It holds neither maps nor
// pointers, so that it stands in the program as it is.
type lexicon struct {
	forms    forms
	tree     tree
	entries  []entry
	implied  []set // by mark, itself included
	denied   []set // by mark: what its denial says
	ends     []set // by mark: which states an act with it ends
	rules    rulebook
	avoids   rulebook // what keeps clear of a hazard
	bulk     set      // marks of size and weight: those that imply "bulk"
	harmless set      // marks of objects that no weak sign makes dangerous
	told     set      // marks that count where the plan describes its object, and not as a state in force
	own      own
}

// compiler makes a lexicon of the files.
type compiler struct {
	lexicon
	ids   map[string]int32 // of forms
	plant plant
	marks map[string]uint16
	gates map[string]string // by class: terms that all its rules have
	from  []string          // by entry: file and line
}

// own are the marks that the reader itself asks for.
type own struct {
	work, busy, calm, bulk, fitting, toolish, energise, isolate, talk, talkScene, hearsay, whole, cover, offWord, coverOff, told, body, vehicle, road uint16
	number                                                                                                                                            int32 // the form "#", which stands for any number
}

// compiled is the lexicon, which stands in tables.go: compiling it takes longer
// than checking most plans.
//
//go:generate env FIXSLATE_UPDATE=1 go test -tags bare -run TestTables .
//go:generate env FIXSLATE_UPDATE=1 go test -timeout 1h -run TestOdds$ .
func compiled() *lexicon { return &tables }

// line is one entry of a file as written.
type line struct {
	word string // the first
	body string // up to the colon
	tail string // after it
	at   string
}

// compile reads all files of the lexicon, in the order of what builds on what.
func compile(fsys fs.FS) (*compiler, error) {
	names, err := fs.Glob(fsys, "lexicon/*.txt")
	if err != nil {
		return nil, err
	}
	var all []line
	for _, name := range names {
		text, err := fs.ReadFile(fsys, name)
		if err != nil {
			return nil, err
		}
		all = append(all, lines(name, string(text))...)
	}
	x := newCompiler()
	passes := [...]struct {
		words []string
		read  func(line) error
	}{
		{[]string{"word"}, x.readWord},
		{[]string{"kind"}, x.readKind},
		{[]string{"thing", "state", "rest", "act", "blank", "object"}, x.readEntry},
		{[]string{"denied", "ends"}, x.readTurn},
		{[]string{"gate"}, x.readGate},
		{[]string{"rule", "avoid"}, x.readRule},
	}
	for i, pass := range passes {
		if i == len(passes)-1 {
			if err := x.settle(); err != nil {
				return nil, err
			}
		}
		for _, l := range all {
			if slices.Contains(pass.words, l.word) {
				if err := pass.read(l); err != nil {
					return nil, fmt.Errorf("%s: %w", l.at, err)
				}
			}
		}
	}
	for _, l := range all {
		known := false
		for _, pass := range passes {
			known = known || slices.Contains(pass.words, l.word)
		}
		if !known {
			return nil, fmt.Errorf("%s: %q begins no entry", l.at, l.word)
		}
	}
	return x, x.pack()
}

func newCompiler() *compiler {
	x := &compiler{ids: make(map[string]int32, 1<<13), plant: newPlant(), marks: map[string]uint16{}, gates: map[string]string{}}
	x.forms.list = make([]spelling, 1)
	return x
}

// pack lays out flat what was gathered.
func (x *compiler) pack() error {
	x.own.number = x.ids["#"]
	x.forms.file()
	x.tree = x.plant.pack(x.forms.list, x.ids[".."], x.entries)
	said := x.said()
	x.rules.file(said)
	x.avoids.file(said)
	if n := max(len(x.forms.list), len(x.entries), len(x.rules.needs), len(x.tree.nodes)+alike); n > math.MaxUint16 {
		return fmt.Errorf("%d forms, entries, needs of rules or nodes are more than 16 bits number", n)
	}
	return nil
}

// said is by mark how many entries say it.
func (x *compiler) said() []int {
	said := make([]int, len(x.marks))
	for i := range x.entries {
		x.entries[i].marks.each(func(m uint16) { said[m]++ })
	}
	return said
}

// lines cuts a file into entries.
func lines(file, text string) []line {
	var all []line
	for i, raw := range strings.Split(text, "\n") {
		if raw == "" || raw[0] == '#' {
			continue
		}
		if raw[0] == ' ' && len(all) > 0 {
			last := &all[len(all)-1]
			last.body += raw
			continue
		}
		l := line{at: file + ":" + strconv.Itoa(i+1)}
		l.word, l.body, _ = strings.Cut(raw, " ")
		all = append(all, l)
	}
	for i := range all {
		body, tail, _ := strings.Cut(all[i].body, ":")
		all[i].body, all[i].tail = strings.TrimSpace(body), strings.TrimSpace(tail)
	}
	return all
}

// mark is the number of a mark; new ones are made as they come.
func (x *compiler) mark(name string) (uint16, error) {
	if m, ok := x.marks[name]; ok {
		return m, nil
	}
	if len(x.marks) == marksMax {
		return 0, fmt.Errorf("more than %d marks", marksMax)
	}
	m := uint16(len(x.marks))
	x.marks[name] = m
	var self set
	self.add(m)
	x.implied = append(x.implied, self)
	x.denied = append(x.denied, set{})
	x.ends = append(x.ends, set{})
	return m, nil
}

// readMarks is the marks of a list with all that they imply.
func (x *compiler) readMarks(list string) (set, error) {
	var s set
	for name := range strings.FieldsSeq(list) {
		m, err := x.mark(name)
		if err != nil {
			return s, err
		}
		s.join(&x.implied[m])
	}
	return s, nil
}

// readKind reads what a mark implies; a kind must be built from kinds above it.
func (x *compiler) readKind(l line) error {
	m, err := x.mark(l.body)
	if err != nil {
		return err
	}
	s, err := x.readMarks(l.tail)
	x.implied[m].join(&s)
	return err
}

// readTurn reads what the denial of a mark says, or which states it ends.
func (x *compiler) readTurn(l line) error {
	m, ok := x.marks[l.body]
	if !ok {
		return fmt.Errorf("nothing is %q", l.body)
	}
	s, err := x.readMarks(l.tail)
	if l.word == "ends" {
		x.ends[m].join(&s)
	} else {
		x.denied[m].join(&s)
	}
	return err
}

var entryKinds = map[string]entryKind{"thing": aThing, "state": aState, "rest": atRest, "act": anAct, "blank": aBlank, "object": anObject}

// readEntry reads things, states, acts and look-alikes.
func (x *compiler) readEntry(l line) error {
	e := entry{kind: entryKinds[l.word]}
	var err error
	if e.marks, err = x.readMarks(l.tail); err != nil {
		return err
	}
	if e.marks.empty() != (e.kind == aBlank) {
		return fmt.Errorf("%q: things have marks, look-alikes have none", l.body)
	}
	id := int32(len(x.entries))
	x.entries, x.from = append(x.entries, e), append(x.from, l.at)
	parted := strings.ReplaceAll(l.body, "-", " ")
	var words []string
	for phrase := range strings.SplitSeq(parted, ",") {
		words = slices.AppendSeq(words[:0], strings.FieldsSeq(phrase))
		if err := x.phrase(words, e.kind, id); err != nil {
			return fmt.Errorf("%q: %w", phrase, err)
		}
	}
	return nil
}

// settle looks up the reader's own marks.
func (x *compiler) settle() error {
	for name, at := range map[string]*uint16{
		"work": &x.own.work, "busy": &x.own.busy, "calm": &x.own.calm, "bulk": &x.own.bulk, "fitting": &x.own.fitting, "toolish": &x.own.toolish, "energise": &x.own.energise, "isolate": &x.own.isolate, "talk": &x.own.talk, "talk-scene": &x.own.talkScene, "hearsay": &x.own.hearsay, "whole": &x.own.whole, "vehicle": &x.own.vehicle,
		"cover": &x.own.cover, "off-word": &x.own.offWord, "cover-off": &x.own.coverOff, "told": &x.own.told, "body-part": &x.own.body, "road-vehicle": &x.own.road,
	} {
		m, ok := x.marks[name]
		if !ok {
			return fmt.Errorf("the lexicon lacks the mark %q", name)
		}
		*at = m
	}
	for _, name := range [...]string{"calm", "parked", "tame", "low-power", "talk-scene"} {
		x.harmless.add(x.marks[name])
	}
	for m := range x.implied {
		if x.implied[m].has(x.own.bulk) {
			x.bulk.add(uint16(m))
		}
		if x.implied[m].has(x.own.told) {
			x.told.add(uint16(m))
		}
	}
	return nil
}
