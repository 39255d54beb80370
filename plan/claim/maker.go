package claim

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// maker makes the vocabulary of its files, for go generate and the tests.
type maker struct {
	lexicon
	lists  map[string]listed
	asked  int // bits given to the lists that code asks for
	others int // and to those that only patterns name
	err    error
}

// made reads the three files.
func made(words, cues, dials string) (*lexicon, error) {
	m := &maker{lists: map[string]listed{}}
	m.index, m.terms, m.dials = make(index, 1<<13), make([]term, 1), make([][]dial, 1)
	if err := m.readWords(words); err != nil {
		return nil, err
	}
	if err := m.readCues(cues); err != nil {
		return nil, err
	}
	if err := m.readDials(dials); err != nil {
		return nil, err
	}
	return &m.lexicon, m.err
}

// readWords reads the lists of words.
func (m *maker) readWords(text string) error {
	m.nameClasses()
	filled := map[string]bool{}
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		if w, whole, ok := strings.Cut(line, " = "); ok {
			m.terms[m.id(w)].whole = whole
			continue
		}
		if words, said, ok := strings.Cut(line, " ~ "); ok {
			m.spell(words, said)
			continue
		}
		if words, unit, ok := strings.Cut(line, " > "); ok {
			for w := range strings.FieldsSeq(words) {
				m.terms[m.id(w)].unit = strings.Replace(unit, "itself", w, 1)
			}
			continue
		}
		name, list, ok := strings.Cut(line, ":")
		if mark, words, marked := strings.Cut(line, "! "); marked {
			name, list, ok = mark, words, true
		}
		if !ok || filled[name] {
			return fmt.Errorf("lexicon: %q is no list, or a second of that name", line)
		}
		filled[name] = true
		m.fill(name, list)
	}
	for name := range m.lists {
		if !filled[name] && !filled[name+"+"] {
			return fmt.Errorf("lexicon: no list %q", name)
		}
	}
	m.seconds = seconds{m.lists["faulty"].other, m.lists["seepage"].other, m.lists["ail"].other, m.lists["agency"].other, m.lists["law"].other, m.lists["licensed"].other, m.lists["licensee"].other}
	for i := range m.terms {
		if m.terms[i].others&m.agency != 0 {
			m.terms[i].marks |= agent
		}
	}
	return nil
}

// spell enters what words are in a code.
func (m *maker) spell(words, said string) {
	code, mark := said[0], spells
	if n, err := strconv.Atoi(said); err == nil {
		code = uint8(n + numbered)
	}
	switch {
	case code == '-' || code == '/':
		mark = stroked
	case code >= 'a' && code <= 'z':
		mark = 0
	}
	for w := range strings.FieldsSeq(words) {
		t := &m.terms[m.id(w)]
		t.said = code
		t.marks |= mark
	}
}

// fill enters the words of a list: those of a mark, those of a class.
func (m *maker) fill(name, list string) {
	if at := slices.Index(strings.Fields(markNames), name); at >= 0 {
		for w := range strings.FieldsSeq(list) {
			m.terms[m.id(w)].marks |= 1 << at
		}
		return
	}
	if verbs, inflect := strings.CutSuffix(name, "+"); inflect {
		name, list = verbs, inflected(list)
	}
	bits, asked := m.lists[name]
	if !asked {
		bits = listed{other: m.bit(&m.others, name)}
		m.lists[name] = bits
	}
	for w := range strings.FieldsSeq(list) {
		t := &m.terms[m.id(w)]
		t.classes |= bits.asked
		t.others |= bits.other
	}
}

// readDials reads what numbers near words are.
func (m *maker) readDials(text string) error {
	of := map[string][]dial{}
	var words []string
	for line := range strings.Lines(text) {
		if line[0] == '#' || line == "\n" {
			continue
		}
		head, list, _ := strings.Cut(line, ":")
		f := strings.Fields(head)
		if len(f) < 3 {
			return fmt.Errorf("dials: %q has no bounds", line)
		}
		d := dial{unit: f[0], parts: len(f) > 3 && f[3] == "parts"}
		var errLeast, errMost error
		d.least, errLeast = strconv.ParseFloat(f[1], 64)
		d.most, errMost = strconv.ParseFloat(f[2], 64)
		if errLeast != nil || errMost != nil || d.least >= d.most {
			return fmt.Errorf("dials: bounds of %q", line)
		}
		for w := range strings.FieldsSeq(list) {
			if of[w] == nil {
				words = append(words, w)
			}
			of[w] = append(of[w], d)
		}
	}
	for _, w := range words {
		at := slices.IndexFunc(m.dials, func(d []dial) bool { return slices.Equal(d, of[w]) })
		if at < 0 {
			at = len(m.dials)
			m.dials = append(m.dials, of[w])
		}
		if at > math.MaxUint8 {
			return fmt.Errorf("dials: more than %d sorts", math.MaxUint8)
		}
		m.terms[m.id(w)].dials = uint8(at)
	}
	return nil
}

// nameClasses gives a bit to each list that code asks for.
func (m *maker) nameClasses() {
	m.classes = classes{
		self: m.class("self"), person: m.class("person"), pronoun: m.class("pronoun"), det: m.class("det"),
		poss: m.class("poss"), be: m.class("be"), have: m.class("have"), modal: m.class("modal"),
		wh: m.class("wh"), prep: m.class("prep"), glue: m.class("glue"), particle: m.class("particle"),
		lead: m.class("lead"), greeting: m.class("greeting"), order: m.class("order"), weak: m.class("weak"),
		states: m.class("states"), often: m.class("often"), seeing: m.class("seeing"), period: m.class("period"),
		periods: m.class("periods"), perilous: m.class("perilous"), hurt: m.class("hurt"), flesh: m.class("flesh"),
		harm: m.class("harm"), damage: m.class("damage"), property: m.class("property"), colour: m.class("colour"),
		making: m.class("making"), fitting: m.class("fitting"), reading: m.class("reading"), meter: m.class("meter"),
		heat: m.class("heat"), angle: m.class("angle"), better: m.class("better"), best: m.class("best"),
		much: m.class("much"), dimension: m.class("dimension"), asadj: m.class("asadj"), about: m.class("about"),
		conductor: m.class("conductor"), thermal: m.class("thermal"), thread: m.class("thread"), maybe: m.class("maybe"),
		idle: m.class("idle"), believe: m.class("believe"), do: m.class("do"), resistive: m.class("resistive"), fluid: m.class("fluid"), measured: m.class("measured"),
		settling: m.class("settling"), where: m.class("where"), inched: m.class("inched"), role: m.class("role"), settled: m.class("settled"), poured: m.class("poured"), long: m.class("long"), bought: m.class("bought"),
		heavy: m.class("heavy"), priced: m.class("priced"), symptom: m.class("symptom"), mend: m.class("mend"), past: m.class("past"), filming: m.class("filming"),
	}
}

// class gives a list that code asks for its bit.
func (m *maker) class(name string) class {
	bit := m.bit(&m.asked, name)
	m.lists[name] = listed{asked: bit}
	return bit
}

func (m *maker) bit(used *int, name string) class {
	const most = 64
	if m.err == nil && *used == most {
		m.err = fmt.Errorf("lexicon: %q would be the %dth list of its sort, and a set has %d", name, most+1, most)
	}
	bit := class(1) << *used
	*used++
	return bit
}

// id is the place of a word in terms; a new word gets one.
func (m *maker) id(w string) int32 {
	h := hashOf(w)
	if id := m.look(h, w); id > 0 {
		return id
	}
	if 2*len(m.terms) > len(m.index) {
		m.index = m.index.grown()
	}
	id := int32(len(m.terms))
	m.terms = append(m.terms, term{text: w})
	m.index.put(place{h, id})
	return id
}

func (x index) put(p place) {
	at, mask := p.hash, uint32(len(x)-1)
	for x[at&mask].id > 0 {
		at++
	}
	x[at&mask] = p
}

func (x index) grown() index {
	next := make(index, 2*len(x))
	for _, p := range x {
		if p.id > 0 {
			next.put(p)
		}
	}
	return next
}
