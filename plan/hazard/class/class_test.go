package class

import (
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
)

// The catalogue is 81 classes with ids of the plan language's form, each once.
func TestCatalogueIsWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range All() {
		if seen[c.ID] {
			t.Errorf("%s stands twice", c.ID)
		}
		seen[c.ID] = true
		if strings.Trim(c.ID, "abcdefghijklmnopqrstuvwxyz0123456789-") != "" {
			t.Errorf("id %q is not of the form [a-z0-9-]+", c.ID)
		}
		if _, ok := FindFamily(c.Family); !ok {
			t.Errorf("%s: family %q is not there", c.ID, c.Family)
		}
	}
	if len(seen) != 81 {
		t.Errorf("%d classes, want 81", len(seen))
	}
}

// How many classes have each word. The words are used as ANSI Z535.4-2007
// 4.14.1 to 4.14.4 define them, which keeps danger for the most extreme: at
// most one class in five (the fifth is common practice, no source).
func TestSignalsAreSpentSparingly(t *testing.T) {
	got := map[string]int{}
	for _, c := range All() {
		got[c.Signal.String()]++
	}
	want := map[string]int{"danger": 9, "warning": 56, "caution": 11, "notice": 5}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if got["danger"]*5 > len(All()) {
		t.Errorf("%d dangers in %d classes: a catalogue with many has none", got["danger"], len(All()))
	}
}

// ANSI Z535.4-2007 4.14: danger and warning are for death or serious injury,
// notice for none. So what a notice's text threatens is never a person, and
// what a danger's or warning's text threatens always is.
func TestSignalsFitTheText(t *testing.T) {
	person := []string{
		"kill", "die", "fatal", "crush", "blind", "burn", "shock", "lung", "asthma", "poison", "suffocat", "scald", "electrocut",
		"injur", "ill", "hearing", "maim", "finger", "bone", "crash", "heart", "lethal", "child", "explod", "explos",
		"trap", "skin", "limb", "collapse", "lie there", "throw the rider", "fire", "back", "nerves", "cut", "lead",
	}
	for _, c := range All() {
		text := strings.ToLower(c.Text)
		grave := slices.ContainsFunc([]string{"kill", "fatal", "lethal", "injur", "maim", "bones", "heart"},
			func(w string) bool { return strings.Contains(text, w) })
		switch {
		case c.Signal == Notice && grave:
			t.Errorf("%s is a notice, but its text threatens injury", c.ID)
		case c.Signal > Notice && !slices.ContainsFunc(person, func(w string) bool { return strings.Contains(text, w) }):
			t.Errorf("%s is a %v, but its text threatens nobody", c.ID, c.Signal)
		}
		if e := c.Escalation; e.To != 0 && (e.To <= c.Signal || e.When == "") {
			t.Errorf("%s escalates from %v to %v %q", c.ID, c.Signal, e.To, e.When)
		}
	}
}

func TestFind(t *testing.T) {
	c, ok := Find("mains-isolation")
	if !ok || c.Family != "mains-shock" || c.Signal != Warning {
		t.Errorf("mains-isolation = %v %v %v", ok, c.Family, c.Signal)
	}
	for _, id := range []string{"", "mains", "Mains-Isolation", "mains-isolation "} {
		if _, ok := Find(id); ok {
			t.Errorf("Find(%q) found something", id)
		}
	}
}

// Protective gear: a danger or warning names some, or says why none helps.
func TestGear(t *testing.T) {
	for _, c := range All() {
		if (len(c.Gear) == 0) != (c.NoGear != "") {
			t.Errorf("%s: %d pieces of gear, reason for none %q", c.ID, len(c.Gear), c.NoGear)
		}
		for _, g := range c.Gear {
			if !slices.Contains(BodyParts(), g.Protects) || g.Name == "" {
				t.Errorf("%s: gear %+v", c.ID, g)
			}
		}
	}
}

// Every list of the catalogue keeps to the vocabulary it is printed with.
func TestVocabularies(t *testing.T) {
	for _, c := range All() {
		for _, s := range slices.Concat(c.Arises, c.Answered) {
			if got, ok := FindState(s); !ok || got.Name != s {
				t.Errorf("%s: state %q is not canonical", c.ID, s)
			}
		}
		for _, s := range c.Answered {
			if slices.Contains(c.Arises, s) {
				t.Errorf("%s: %s both brings and answers it", c.ID, s)
			}
		}
		for _, e := range c.Present {
			if !slices.Contains(Energies(), e) {
				t.Errorf("%s: energy %q is not there", c.ID, e)
			}
		}
		if len(c.Domains) == 0 || c.When.At == 0 || c.Name == "" {
			t.Errorf("%s: domains %v, when %v, name %q", c.ID, c.Domains, c.When.At, c.Name)
		}
		if c.Who.Skill < Anyone || c.Who.Skill > Licensed || !strings.HasSuffix(c.Who.Text, ".") {
			t.Errorf("%s: who %+v", c.ID, c.Who)
		}
	}
	for _, e := range Energies() {
		if !slices.ContainsFunc(All(), func(c Class) bool { return slices.Contains(c.Present, e) }) {
			t.Errorf("no class belongs to energy %q", e)
		}
	}
}

// What law often reserves: refrigerant circuits (40 CFR 82.161), gas fittings
// (Gas Safety (Installation and Use) Regulations 1998, reg. 3; NFPA 54 4.1),
// fixed wiring (England, Approved Document P 2013), asbestos lagging and
// coatings (UK Control of Asbestos Regulations 2012). High-voltage vehicles
// are left to qualified people by HSE guidance; that law asks for a licence
// differs by country.
func TestLicensedWork(t *testing.T) {
	var got []string
	for _, c := range All() {
		if c.Who.Skill == Licensed {
			got = append(got, c.ID)
		}
	}
	want := []string{
		"hv-vehicle", "refrigerant", "flammable-refrigerant", "asbestos-building",
		"fixed-wiring", "gas-appliance", "gas-tightness",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestEveryClassHasASource(t *testing.T) {
	const part = `[^][]+ \[(read|secondary|memory|common practice)\]`
	marked := regexp.MustCompile(`^` + part + `(; ` + part + `)*$`)
	for _, c := range All() {
		if !marked.MatchString(c.Source) {
			t.Errorf("%s: the source %q is not all marked", c.ID, c.Source)
		}
	}
}

// No brands: words for people hold no proper name, so no capital inside a
// sentence.
func TestNoProperNames(t *testing.T) {
	for _, c := range All() {
		texts := []string{c.Name, c.Spoken, c.Card, c.Text, c.NoGear, c.When.Detail, c.Who.Text, c.Escalation.When}
		texts = append(texts, c.Kit...)
		for _, g := range c.Gear {
			texts = append(texts, g.Name)
		}
		for _, text := range texts {
			start := true
			for _, w := range strings.Fields(text) {
				r, _ := utf8.DecodeRuneInString(w)
				if !start && unicode.IsUpper(r) && w != "DPF" && w != "SRS" && w != "kV" {
					t.Errorf("%s: %q in %q", c.ID, w, text)
				}
				start = strings.HasSuffix(w, ".")
			}
		}
	}
}

// A caller may write into what it gets.
func TestCopiesAreOwn(t *testing.T) {
	want := All()
	spoil := func(cs ...Class) {
		for i := range cs {
			for _, list := range [][]string{cs[i].Kit, cs[i].Arises, cs[i].Answered, cs[i].Present, cs[i].Domains} {
				for j := range list {
					list[j] = "spoilt"
				}
			}
			for j := range cs[i].Gear {
				cs[i].Gear[j] = Gear{}
			}
		}
	}
	spoil(All()...)
	one, _ := Find("raised-vehicle")
	lead, _ := Lead("raised-load")
	spoil(one, lead)
	spoil(InFamily("mains-shock")...)
	spoil(Nearest("electric shock")...)
	if diff := cmp.Diff(want, All()); diff != "" {
		t.Error(diff)
	}
	Families()[0].ID = "spoilt"
	if Families()[0].ID == "spoilt" {
		t.Error("Families hands out its own list")
	}
}

func BenchmarkAll(b *testing.B) {
	for b.Loop() {
		All()
	}
}

func BenchmarkFind(b *testing.B) {
	for b.Loop() {
		Find("mains-isolation")
	}
}
