package claim

import (
	"os"
	"strconv"
	"strings"
	"testing"
)

// stated prints the values of a claim: "12 V, KR7190".
func stated(c Claim) string {
	var words []string
	for _, v := range c.Values {
		if v.Part != "" {
			words = append(words, v.Part)
			continue
		}
		words = append(words, strings.TrimSpace(strconv.FormatFloat(v.Number, 'g', 6, 64)+" "+v.Unit))
	}
	return strings.Join(words, ", ")
}

// testdata/values.tsv holds ways in which a workshop says figures, each with the
// values in it: common practice, no source.
func TestValues(t *testing.T) {
	for line := range strings.Lines(string(read(t, "testdata/values.tsv"))) {
		text, want, _ := strings.Cut(strings.TrimRight(line, "\n"), "\t")
		if got := stated(Sentence(text)); got != want {
			t.Errorf("%q states %q, want %q", text, got, want)
		}
	}
}

// testdata/quiet.txt holds what is said between the claims: orders, what the
// speaker does, greetings, cautions, where a part sits.
func TestQuiet(t *testing.T) {
	for line := range strings.Lines(string(read(t, "testdata/quiet.txt"))) {
		if c := Sentence(strings.TrimSpace(line)); c.NeedsEvidence || len(c.Values) > 0 {
			t.Errorf("%q claims %v %s", c.Text, c.Kinds, stated(c))
		}
	}
}

// What is easily taken for another kind, and what is none.
func TestKinds(t *testing.T) {
	for text, want := range map[string]string{
		"pulling on the cord broke the strand":         "causal",
		"there's air in it so the pedal's soft":        "causal",
		"it trips as soon as the element gets wet":     "causal",
		"it shudders where the belt has dried out":     "causal",
		"wear in the pin is what cracked it":           "causal",
		"when it's dry it goes back in the box":        "",
		"the bolts are out so the pump can come away":  "",
		"put a clip on so it doesn't slip":             "",
		"the newer end bolts on to the old motor":      "compatibility",
		"the frame is two mil out of square":           "measurement",
		"grit got under the seal and scored it":        "causal",
		"low pressure makes it cut out":                "causal",
		"if the light stays on the sensor's had it":    "causal",
		"no flash means the coil is dead":              "causal",
		"a worn bush throws the belt off":              "causal",
		"moisture in the oil has pitted the bearing":   "causal",
		"the rattle turned out to be a loose shield":   "causal",
		"cleaning the contacts cured the dropout":      "causal",
		"the blade stalls when the grass is wet":       "causal",
		"you get a squeal when the springs are tired":  "causal",
		"turn it too far and you'll shear the pin":     "causal",
		"that is where the air gets in":                "causal",
		"this is where the screw goes in":              "",
		"the relay was our culprit":                    "causal",
		"the disc is down to eight mil":                "measurement",
		"it's pulling eleven amps with the lid shut":   "measurement",
		"the flue's at 140 degrees":                    "measurement",
		"it should be reading twelve volts":            "spec hedge",
		"the shaft needs two amps":                     "spec",
		"no cable may be trapped behind":               "",
		"the cable may be trapped behind":              "hedge",
		"they tell you which way round it goes":        "",
		"they tell you it never leaks":                 "hedge universal",
		"tape over it so that nobody puts it back":     "",
		"nobody ever puts it back":                     "universal",
		"no two are the same":                          "universal comparison",
		"no pump of this age is dry inside":            "universal",
		"it sticks to absolutely anything":             "universal",
		"you can't fit the old screen on the new body": "compatibility",
		"if it sticks half way clean its shaft":        "",
		"which means we can lift it out":               "",
		"the new pump is a lot quieter":                "comparison",
		"it's not as strong":                           "comparison",
		"do it up no tighter than that":                "",
		"you'll never get it off without heat":         "universal",
		"never pull on the cable":                      "",
		"I always start at the back":                   "",
		"the belt always snaps at the join":            "universal",
		"it might be the relay":                        "hedge",
		"it might bite your fingers":                   "",
		"I think it's the coil":                        "hedge",
		"I think we should start":                      "",
		"the lever should spring back":                 "",
		"the live is brown":                            "spec",
		"it's illegal to vent that":                    "legal",
		"you need a certificate for it":                "legal",
		"I see a lot of these":                         "frequency",
		"it's a direct swap":                           "compatibility",
		"it'll take either type":                       "compatibility",
		"is it twelve volts?":                          "",
		"the overnight soak was a mistake, it's cheap": "duration cost",
	} {
		var got []string
		for _, k := range Sentence(text).Kinds {
			got = append(got, string(k))
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%q is %v, want %q", text, got, want)
		}
	}
}

func read(t *testing.T, path string) []byte {
	raw, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return raw
}

func TestCaptions(t *testing.T) {
	got := Captions([]Line{{3, "so the fuse for the radio is a"}, {7, "ten amp one. It never"}, {11, "blows."}, {15, "[door shuts]"}, {19, "♪"}, {23, "Lift it\noff."}})
	want := []struct {
		line  int
		text  string
		needs bool
	}{{3, "so the fuse for the radio is a ten amp one.", true}, {7, "It never blows.", true}, {23, "Lift it off.", false}}
	if len(got) != len(want) {
		t.Fatalf("%d sentences, want %d: %+v", len(got), len(want), got)
	}
	for i, w := range want {
		if c := got[i]; c.Line != w.line || c.Text != w.text || c.NeedsEvidence != w.needs {
			t.Errorf("line %d %q needs evidence %v; want %+v", c.Line, c.Text, c.NeedsEvidence, w)
		}
	}
}

// Automatic captions have no marks: they are cut where captions end, but not
// inside a figure or behind a word that asks for another.
func TestCaptionsWithoutMarks(t *testing.T) {
	var lines []Line
	for i := range 30 {
		lines = append(lines, Line{4*i + 3, "it went up to eleven"}, Line{4*i + 5, "point six volts on the"}, Line{4*i + 7, "second go"})
	}
	got := Captions(lines)
	if len(got) != 30 {
		t.Fatalf("%d sentences of 90 captions", len(got))
	}
	for _, c := range got {
		if stated(c) != "11.6 V" {
			t.Errorf("line %d: %q states %s", c.Line, c.Text, stated(c))
		}
	}
}

// What a line says to make of what may be seen is told apart from what it says
// of the object: lint lets it pass where the hands show it.
func TestConditional(t *testing.T) {
	for text, want := range map[string]bool{
		"If it binds, it is crooked.":       true,
		"when it hums the coil is fine":     true,
		"no flash means the coil is dead":   true,
		"a flash means it's fine":           true,
		"the coil broke because of damp":    false,
		"I mean the other one":              false,
		"is it that a flash means trouble?": false,
	} {
		if got := Sentence(text).Conditional; got != want {
			t.Errorf("%q: conditional %v", text, got)
		}
	}
}

// A cue in a turn of speech claims nothing; the same cue of a thing does.
func TestUnsaid(t *testing.T) {
	for text, want := range map[string]bool{
		"if it drops out twice a day, write down when":                        false,
		"if it drops out twice a day the relay is tired":                      true,
		"if your kettle rattles like a tin of nails, this one's for you":      false,
		"I wax mine every autumn":                                             false,
		"I see two of these every week":                                       true,
		"ask somebody with the right licence, and leave it to a licensed one": false,
		"the law leaves it to a licensed fitter":                              true,
		"it has to be done by a registered fitter":                            true,
		"nobody told the caretaker":                                           false,
		"nobody makes them any more":                                          true,
		"it couldn't do that yesterday":                                       false,
		"it could be the coil":                                                true,
		"as soft as a sponge":                                                 false,
		"it's as strong as the original":                                      true,
		"it's twice as loud as a drill":                                       true,
		"cover it so nothing can get in":                                      false,
		"nothing can get in":                                                  true,
		"not with pliers, however often you've seen that":                     false,
		"a sixty tooth blade is what I use":                                   false,
		"you just saved forty quid":                                           false,
		"it's the one everybody forgets":                                      false,
		"the old varnish is as hard as toffee":                                false,
		"it's as hard as steel":                                               true,
		"you've probably blamed the tension":                                  false,
		"it's probably the tension":                                           true,
		"lay them out in the order of the drawing":                            false,
		"it's in the order of two volts":                                      true,
		"that needs a decent meter":                                           false,
	} {
		if got := Sentence(text).NeedsEvidence; got != want {
			t.Errorf("%q: claims %v", text, Sentence(text).Kinds)
		}
	}
	if got := stated(Sentence("leave a good meter of cable")); got != "1 m" {
		t.Errorf("a length of a meter is read as %q", got)
	}
}
