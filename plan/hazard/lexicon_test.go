package hazard

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"fixslate/plan/hazard/class"
)

// Every class has a rule, so that nothing of the catalogue is out of reach.
func TestEveryClassHasARule(t *testing.T) {
	has := map[int]bool{}
	for _, r := range compiled().rules.rules {
		has[r.class] = true
	}
	for i, c := range class.All() {
		if !has[i] {
			t.Errorf("no rule shows %s", c.ID)
		}
	}
}

// Every phrase of every file is found again in its own words.
func TestEveryPhraseIsReachable(t *testing.T) {
	x, err := compile(files)
	if err != nil {
		t.Fatal(err)
	}
	names, err := fs.Glob(files, "lexicon/*.txt")
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, name := range names {
		raw, err := files.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if size := strings.Count(string(raw), "\n"); size > 400 {
			t.Errorf("%s has %d lines", name, size)
		}
		for _, l := range lines(name, string(raw)) {
			if !strings.Contains(" thing state rest act blank ", " "+l.word+" ") {
				continue
			}
			for _, phrase := range strings.Split(l.body, ",") {
				words := strings.NewReplacer("..", "it", "=", "", "#", "7", "-", " ").Replace(strings.TrimSpace(phrase))
				toks := x.tokens(nil, words)
				found := false
				if len(toks) > 0 {
					x.walk(toks, 0, func(e uint16, _ int, _ bool) { found = found || x.from[e] == l.at })
				}
				if !found {
					t.Errorf("%s: %q is not found", l.at, phrase)
				}
				n++
			}
		}
	}
	if n < 4000 {
		t.Errorf("only %d phrases", n)
	}
}

// Every rule can be met: each of its terms asks for marks that something has.
func TestEveryMarkIsGiven(t *testing.T) {
	x := compiled()
	var given set
	for i := range x.entries {
		given.join(&x.entries[i].marks)
	}
	for i := range x.denied {
		given.join(&x.denied[i])
	}
	for i := range x.rules.rules {
		for j := range x.rules.rules[i].terms {
			term := &x.rules.rules[i].terms[j]
			if term.kind < nowhere && !term.a.meets(&given) {
				t.Errorf("a rule of %s: nothing meets term %d", class.All()[x.rules.rules[i].class].ID, j+1)
			}
		}
	}
}

// What is wrong in a file is said with its place.
func TestFilesAreHeldToTheirForm(t *testing.T) {
	for text, want := range map[string]string{
		"thin car: vehicle":               `"thin" begins no entry`,
		"thing car:":                      "things have marks",
		"act .. off: undo":                "begins and ends with words",
		"rule no-class: do undo":          "no hazard class",
		"act undo: undo\nrule esd: do no": `nothing is "no"`,
		"act undo: undo\nrule esd: undo":  "is no term",
		"word nonsense: a":                "no part of speech",
		"gate no-class: on car":           "no hazard class",
	} {
		_, err := compile(fstest.MapFS{"lexicon/a.txt": {Data: []byte(text + "\nkind work:\nkind busy:\nkind calm:\nkind bulk:\nkind fitting:\nkind toolish:\nkind energise:\nkind isolate:\nkind talk:\nkind talk-scene:\nkind hearsay:\nkind whole:\nkind cover:\nkind off-word:\nkind cover-off:\nkind told:\nkind vehicle:\nkind road-vehicle:\nkind body-part:\n")}})
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}
