package class

import (
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

// avoids are verbs that tell somebody how to stay unhurt, as they open a
// clause: "keep your fingers out", "never sand it dry".
var avoids = strings.Fields(`
	never keep wear put set check chock tie tighten slacken let wait use take
	disconnect unplug lock prove test switch cut pull cover stand stay stop
	clear wet leave hold get open close shut back earth find refit discharge
	measure spread catch hand handle strap brace mop tell try make wash guard
	pump lift work depressurise isolate run charge treat assume read glove do
	choose inflate capture ease hose don show start drain empty park vent
	renew mark scrap repair replace crack ventilate smell adjust warm secure
	go park nobody release turn add look press stir raise see hang`)

// spokenClauses are the clauses of a sentence, each from its first telling
// word on.
func spokenClauses(sentence string) [][]string {
	s := strings.ToLower(strings.TrimSuffix(sentence, "."))
	for _, joint := range []string{", so ", ", because ", ", or ", ", and ", "; ", ": ", " and ", " but "} {
		s = strings.ReplaceAll(s, joint, ", ")
	}
	var clauses [][]string
	for c := range strings.SplitSeq(s, ", ") {
		if words := strings.Fields(c); len(words) > 0 {
			clauses = append(clauses, words)
		}
	}
	return clauses
}

func opensWithAvoidance(sentence string) bool {
	return slices.ContainsFunc(spokenClauses(sentence), func(c []string) bool {
		return slices.Contains(avoids, c[0]) && c[0] != "a"
	})
}

// harms are the beginnings of words for what is lost: the hazard's side of a
// caution.
var harms = strings.Fields(`
	kill die dies death deadly lethal fatal injur hurt harm maim wreck crush
	trap fall drop slip tip roll rock swing crash fail loose tear tears whip
	whips burst bursts explo blow burn scald shock electrocut spark fire flame
	smoulder spray flies fly blind grit jet cut bone finger freez poison
	asbestos lung asthma suffocat collaps ill germ fumes vapour mercury gas
	smoke leak flood ruin damag wipe lose choke chip nerve heart`)

func namesHarm(sentence string) bool {
	return slices.ContainsFunc(strings.Fields(strings.ToLower(sentence)), func(w string) bool {
		return slices.ContainsFunc(harms, func(h string) bool { return strings.HasPrefix(w, h) })
	})
}

// toTheAuthor are words that belong to whoever makes the film, never to
// whoever watches it.
var toTheAuthor = strings.Fields(`
	plan plans step steps caption captions video videos viewer viewers author
	camera chapter chapters film films filmed filming footage shoot shooting
	shots narration narrator script editor audience subscriber subscribers
	episode presenter screen frame edit footage show`)

func words(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && r != '\'' })
}

// The spoken caution is the most-heard line of the product: one sentence that
// can be said aloud as it stands, with the hazard and its avoidance.
func TestSpoken(t *testing.T) {
	seen := map[string]string{}
	for _, c := range All() {
		s := c.Spoken
		if n := utf8.RuneCountInString(s); n > SpokenMax || n < 40 {
			t.Errorf("%s: %d characters: %q", c.ID, n, s)
		}
		if strings.Count(s, ".") != 1 || !strings.HasSuffix(s, ".") || strings.ContainsAny(s, "!?") {
			t.Errorf("%s: not one sentence with a full stop: %q", c.ID, s)
		}
		if strings.ContainsAny(s, "()[]{}/;:\"“”&%+=<>0123456789\t\n–—…") {
			t.Errorf("%s: not sayable as it stands: %q", c.ID, s)
		}
		for _, w := range strings.Fields(s)[1:] {
			if strings.ToLower(w) != w {
				t.Errorf("%s: abbreviation or name %q", c.ID, w)
			}
		}
		for _, w := range words(s) {
			if slices.Contains(toTheAuthor, w) {
				t.Errorf("%s: %q is not for the viewer: %q", c.ID, w, s)
			}
		}
		if !opensWithAvoidance(s) {
			t.Errorf("%s: no clause opens with what to do: %q", c.ID, s)
		}
		if !namesHarm(s) {
			t.Errorf("%s: no word for the harm: %q", c.ID, s)
		}
		if other := seen[s]; other != "" {
			t.Errorf("%s and %s say the same", c.ID, other)
		}
		seen[s] = c.ID
	}
}

// The test above must be able to fail.
func TestSpokenTestsCanFail(t *testing.T) {
	for _, s := range []string{"Mains voltage is dangerous.", "The cover is off, so the parts are live."} {
		if opensWithAvoidance(s) {
			t.Errorf("an avoidance was seen in %q", s)
		}
	}
	if namesHarm("Please follow the usual procedure.") {
		t.Error("a harm was seen where none is")
	}
}

func TestCard(t *testing.T) {
	seen := map[string]string{}
	for _, c := range All() {
		if n := utf8.RuneCountInString(c.Card); n > CardMax || n < 8 {
			t.Errorf("%s: %d characters: %q", c.ID, n, c.Card)
		}
		if !strings.HasSuffix(c.Card, ".") || strings.ContainsAny(c.Card, "()[]\n") {
			t.Errorf("%s: card %q", c.ID, c.Card)
		}
		if other := seen[c.Card]; other != "" {
			t.Errorf("%s and %s show the same card", c.ID, other)
		}
		seen[c.Card] = c.ID
	}
}

// The printed caution holds hazard, consequence and avoidance, the three parts
// ANSI Z535.6 and EN 82079-1 ask for: it speaks of the class's own subject,
// names a harm, and tells what to do.
func TestText(t *testing.T) {
	for _, c := range All() {
		sentences := sentencesOf(c.Text)
		if n := len(sentences); n < 1 || n > 3 {
			t.Errorf("%s: %d sentences", c.ID, n)
		}
		if !namesHarm(c.Text) {
			t.Errorf("%s: no consequence: %q", c.ID, c.Text)
		}
		if !slices.ContainsFunc(sentences, opensWithAvoidance) {
			t.Errorf("%s: no avoidance: %q", c.ID, c.Text)
		}
		if !sharesWord(c.Text, c.ID+" "+c.Name+" "+c.Family) {
			t.Errorf("%s: the text does not speak of %q: %q", c.ID, c.Name, c.Text)
		}
		for _, w := range words(c.Text) {
			if slices.Contains(toTheAuthor, w) {
				t.Errorf("%s: %q is not for the viewer: %q", c.ID, w, c.Text)
			}
		}
		// The maker's instructions and local law come first; work that law
		// reserves says so, or says who does it.
		if c.Who.Skill == Licensed && !sharesWord(c.Text, "licensed registered certified trained training electrician") {
			t.Errorf("%s: reserved work, but the text leaves it to nobody: %q", c.ID, c.Text)
		}
	}
}

// Nothing in the catalogue claims that something is safe.
func TestNothingIsCalledSafe(t *testing.T) {
	for _, c := range All() {
		for _, w := range words(c.Spoken + " " + c.Card) {
			if w == "safe" || w == "safely" || w == "harmless" {
				t.Errorf("%s: %q", c.ID, w)
			}
		}
	}
}

func sentencesOf(text string) []string {
	var all []string
	for s := range strings.SplitSeq(strings.TrimSuffix(text, ".")+" ", ". ") {
		all = append(all, strings.TrimSpace(s))
	}
	return all
}

func sharesWord(text, subject string) bool {
	in := map[string]bool{}
	for _, w := range words(text) {
		in[Stem(w)] = true
	}
	return slices.ContainsFunc(words(subject), func(w string) bool { return !isStop(w) && len(w) > 2 && in[Stem(w)] })
}
