package class

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// asked is everyday words, and the class a technician would send them to.
type asked struct{ class, phrases string }

// The phrases are the project's own; which class answers each is common
// practice, no source. The first table was at hand while the everyday words
// were chosen, the second only afterwards.
var knownPhrases = []asked{
	{"raised-vehicle", "jacking the car; car falls off the jack; lift the motorbike on a stand; axle stands; trolley jack slips"},
	{"wheel-chocks", "car rolling away; parking brake released"},
	{"under-load", "someone underneath the van; lying under a car"},
	{"occupant-raised", "helper sitting in the car on stands"},
	{"suspended-part", "engine hanging from a crane; gearbox on a hoist"},
	{"roadside", "broken down on the motorway; cars passing close"},
	{"road-test", "test drive; taking it out on the road"},
	{"critical-fastener", "wheel nuts come loose; brake caliper bolts; steering bolts"},
	{"spring-energy", "garage door spring; coil spring compressor; spring energy"},
	{"tensioned-line", "tow rope snaps; ratchet strap"},
	{"pinch-crush", "trapped fingers; squashed thumb"},
	{"fluid-injection", "hydraulic leak; pressure washer jet"},
	{"compressed-air", "air line; blowing dust with an airline"},
	{"tyre-inflation", "tire explodes; pumping up tyres"},
	{"pressurised-part", "gas strut; gas bottle under pressure"},
	{"defeat-safety-device", "interlock bypassed; safety switch taped down"},
	{"srs-airbag", "airbag; steering wheel airbag removal"},
	{"belt-pretensioner", "seatbelt; seat belt tensioner"},
	{"battery-gas-acid", "battery acid; exploding battery"},
	{"battery-short", "spanner across the terminals; shorting the battery"},
	{"unfused-jumper", "bridging a relay with a paper clip; wire without a fuse"},
	{"jump-start", "jump leads; flat battery, booster pack"},
	{"hv-vehicle", "hybrid car battery; orange wires; electric car; high voltage"},
	{"ignition-ht", "spark plug lead"},
	{"rotating-parts", "long hair caught in the drill; spinning shaft"},
	{"auto-start", "radiator fan comes on by itself; pump kicks in unexpectedly"},
	{"hot-surface", "burnt fingers; hot exhaust; hot oven"},
	{"hot-coolant", "hot coolant; radiator cap"},
	{"hot-water-steam", "boiling water; kettle; scalds"},
	{"fuel-vapour", "petrol; gasoline fire; fuel spill; siphoning gas"},
	{"fuel-rail-pressure", "diesel injectors; common rail"},
	{"brake-fluid", "brake fluid in the eyes; bleeding the brakes"},
	{"brake-clutch-dust", "asbestos in brake pads; clutch dust"},
	{"refrigerant", "air con gas; recharging the aircon"},
	{"flammable-refrigerant", "fridge gas catches fire; propane fridge"},
	{"exhaust-co", "engine running in the garage; carbon monoxide poisoning; exhaust fumes"},
	{"hot-work", "welding; blowlamp; setting fire to the house with a torch"},
	{"soldering", "soldering iron"},
	{"oily-rags", "linseed oil rags; linseed"},
	{"chemicals-solvents", "fumes; acetone; glue on skin"},
	{"drain-chemicals", "bleach; chlorine gas"},
	{"isocyanate-spray", "two-pack paint; spray foam"},
	{"lead-paint", "old lead paint; sanding old windows"},
	{"asbestos-building", "asbestos ceiling"},
	{"silica-dust", "drilling into concrete; tile dust"},
	{"sanding-dust", "sawdust; fibre insulation; ash dust"},
	{"mould-sewage", "blocked toilet; sewage; black mold"},
	{"mercury", "broken fluorescent tube"},
	{"waste-fluids", "dumping old engine oil; antifreeze and pets"},
	{"mains-isolation", "electric shock; getting electrocuted; shocks off the wall socket; zapped by the outlet; 230 volts; mains shock"},
	{"live-test", "working on a live circuit"},
	{"fixed-wiring", "new consumer unit"},
	{"earth-continuity", "earth wire left off"},
	{"capacitor-charge", "capacitors; power board charge"},
	{"microwave-oven", "microwave repair; magnetron"},
	{"crt-implosion", "old television tube"},
	{"water-electricity", "leak onto the electrics; wet hands and plugs"},
	{"lithium-cells", "swollen phone battery; lipo battery fire"},
	{"ebike-power", "e-bike motor"},
	{"coin-cell-small-parts", "button battery swallowed; magnets and toddlers"},
	{"esd", "static"},
	{"data-loss", "losing data; losing the radio code"},
	{"gas-appliance", "smell of gas; boiler; gas leak"},
	{"water-isolation", "flooding the kitchen; water pipe bursts"},
	{"buried-services", "drilling through a cable in the wall; digging near cables"},
	{"confined-space", "septic tank; crawl space"},
	{"eye-impact", "sparks in the eye; metal splinters in eyes"},
	{"power-blade", "circular saw; jigsaw"},
	{"abrasive-wheel", "cutting disc shatters; angle grinder disc"},
	{"small-engine-start", "lawnmower blade"},
	{"hearing", "loud noise; deafness"},
	{"heavy-lift", "bad back; lifting a heavy gearbox"},
	{"tip-over", "washing machine tips over; fridge topples"},
	{"sharp-edges", "sharp metal edges; cuts from glass; razor blade"},
	{"ladder-height", "falling off a ladder; roof work; height fall"},
	{"spill-slip", "slippery floor; tripping over a lead"},
	{"child-bystander", "kid nearby; dog in the workshop; baby in the room"},
	{"working-alone", "nobody else at home; by myself"},
	{"carbon-parts", "carbon handlebar; cracked carbon frame"},
}

var newPhrases = []asked{
	{"raised-vehicle", "car on a jack; van up on axle stands; prop the car up on bricks"},
	{"wheel-chocks", "chocks; car rolls down the hill; car creeping backwards"},
	{"under-load", "crushed beneath the car; head under the sill"},
	{"suspended-part", "hoisting the engine out; engine crane; swinging gearbox on the hoist"},
	{"roadside", "lay-by repair; traffic"},
	{"road-test", "first ride after the repair; brakes not working on the first drive"},
	{"critical-fastener", "loose wheel nuts; stripped steering bolt"},
	{"spring-energy", "snapped spring; drum brake springs flying off; springs under load"},
	{"tensioned-line", "belt under tension; bungee cord"},
	{"pinch-crush", "pinched hand in the door; finger in the hinge"},
	{"fluid-injection", "high pressure hydraulics; oil jet through the skin"},
	{"compressed-air", "compressor hose; blow gun"},
	{"tyre-inflation", "burst tyre; tyre bead seating"},
	{"pressurised-part", "gas cylinder; full aerosol can puncture"},
	{"defeat-safety-device", "running without the guard; disabled door interlock"},
	{"srs-airbag", "airbags going off; side curtain airbag"},
	{"belt-pretensioner", "pretensioners"},
	{"battery-gas-acid", "acid burns; battery blows up; battery gassing on charge"},
	{"battery-short", "dropped a spanner on the battery; sparks at the battery terminal"},
	{"unfused-jumper", "jumper wire; bigger fuse"},
	{"jump-start", "booster cables; boosting a dead battery"},
	{"hv-vehicle", "EV high-voltage battery; orange cable"},
	{"ignition-ht", "ignition coils"},
	{"rotating-parts", "fan belt; sleeve caught in the lathe; necktie in the lathe"},
	{"auto-start", "starts by itself"},
	{"hot-surface", "burns from the manifold; hot brake disc"},
	{"hot-coolant", "scalding coolant; opening the expansion tank"},
	{"hot-water-steam", "steam burns; hot water cylinder; steam cleaner"},
	{"fuel-vapour", "fuel tank; petrol vapour explosion; leaking petrol can"},
	{"fuel-rail-pressure", "injector pressure"},
	{"brake-fluid", "brake fluid on paint; DOT 4 fluid"},
	{"brake-clutch-dust", "brake dust; brake shoes dust"},
	{"refrigerant", "air conditioning; regassing the air con"},
	{"flammable-refrigerant", "isobutane"},
	{"exhaust-co", "CO; running a generator indoors; car exhaust indoors"},
	{"hot-work", "sparks and fire from grinding; welding near the fuel tank"},
	{"soldering", "solder fumes"},
	{"oily-rags", "oily rags catch fire"},
	{"chemicals-solvents", "brake cleaner; wet paint thinner"},
	{"drain-chemicals", "mixing bleach and ammonia; caustic drain cleaner"},
	{"isocyanate-spray", "isocyanates"},
	{"lead-paint", "lead dust from old paint; flaking lead paint"},
	{"asbestos-building", "asbestos; asbestos lagging"},
	{"silica-dust", "concrete dust; chasing out a wall with a grinder"},
	{"sanding-dust", "sanding filler"},
	{"mould-sewage", "raw sewage; black mould on the wall"},
	{"mercury", "mercury lamp"},
	{"waste-fluids", "oil disposal"},
	{"mains-isolation", "shock from the mains; someone could get a nasty shock; bare mains wires; getting a belt off the mains; household electricity"},
	{"live-test", "testing live"},
	{"fixed-wiring", "house rewire; breaker panel"},
	{"earth-continuity", "missing ground wire; green and yellow wire"},
	{"capacitor-charge", "charged capacitor; flash capacitor"},
	{"microwave-oven", "microwave"},
	{"crt-implosion", "picture tube"},
	{"water-electricity", "water and electricity"},
	{"lithium-cells", "lithium battery fire; swelling battery pack"},
	{"ebike-power", "electric bicycle"},
	{"coin-cell-small-parts", "small magnets; toddler swallows a coin cell"},
	{"esd", "static discharge"},
	{"data-loss", "wiping the settings; firmware update"},
	{"gas-appliance", "gas engineer only; cooker gas pipe"},
	{"gas-tightness", "leaking gas joint"},
	{"water-isolation", "turn the water off"},
	{"buried-services", "hidden pipes; hit a water pipe while drilling"},
	{"confined-space", "no oxygen in the tank; crawling into the loft tank"},
	{"eye-impact", "flying debris; splinter of steel in the eye"},
	{"power-blade", "chainsaws; hedge trimmer"},
	{"abrasive-wheel", "grinding wheel bursts; grinder disc"},
	{"small-engine-start", "mower; strimmer"},
	{"hearing", "ear damage; noisy impact gun"},
	{"heavy-lift", "too heavy for one person; hurt my back"},
	{"tip-over", "cooker falls forward; wardrobe toppling"},
	{"sharp-edges", "cut my hand on the casing"},
	{"ladder-height", "standing on a chair; stepladder"},
	{"spill-slip", "slips and trips; oil on the floor"},
	{"child-bystander", "children in the garage; pets; my little boy watching"},
	{"working-alone", "home alone; on my own in the shed"},
	{"carbon-parts", "carbon fork"},
}

// A phrase is answered first by the class meant, or at least among the first
// three. Floors stand a little under what is reached; on the first run over
// phrases never seen before it was 0.90 and 0.95.
func TestNearestAnswersEverydayWords(t *testing.T) {
	for _, set := range []struct {
		name         string
		asked        []asked
		first, three float64
	}{
		{"known", knownPhrases, 0.93, 0.98},
		{"new", newPhrases, 0.90, 0.94},
	} {
		t.Run(set.name, func(t *testing.T) {
			n, first, three := 0.0, 0.0, 0.0
			for _, a := range set.asked {
				for phrase := range strings.SplitSeq(a.phrases, "; ") {
					n++
					rank := slices.IndexFunc(Nearest(phrase), func(c Class) bool { return c.ID == a.class })
					if rank == 0 {
						first++
					} else {
						t.Logf("%q: %s stands at %d (-1: not at all)", phrase, a.class, rank)
					}
					if rank >= 0 && rank < 3 {
						three++
					}
				}
			}
			t.Logf("%.0f phrases: %.3f first, %.3f among three", n, first/n, three/n)
			if first/n < set.first || three/n < set.three {
				t.Errorf("%.3f first, %.3f among three, want %.3f and %.3f", first/n, three/n, set.first, set.three)
			}
		})
	}
}

func isNearest(t *testing.T, words, want string) {
	t.Helper()
	if got := Nearest(words); len(got) == 0 || got[0].ID != want {
		t.Errorf("Nearest(%q) = %v, want %s first", words, ids(got), want)
	}
}

// Phrases that must find their class, whatever the averages say.
func TestNearestMustFind(t *testing.T) {
	for words, want := range map[string]string{
		"electric shock":    "mains-isolation",
		"jacking the car":   "raised-vehicle",
		"hot coolant":       "hot-coolant",
		"airbag":            "srs-airbag",
		"air bag":           "srs-airbag",
		"fumes":             "exhaust-co",
		"sharp metal edges": "sharp-edges",
		"battery acid":      "battery-gas-acid",
		"kid nearby":        "child-bystander",
		"Smell of GAS!":     "gas-appliance",
	} {
		isNearest(t, words, want)
	}
}

// Names with a slip of the finger, in the other spelling, or of a family.
func TestNearestForgivesSlips(t *testing.T) {
	for words, want := range map[string]string{
		"mains-isolation": "mains-isolation",
		"mains isolation": "mains-isolation",
		"mains-isolaton":  "mains-isolation",
		"mains-isoaltion": "mains-isolation",
		"refridgerant":    "refrigerant",
		"lithum-cells":    "lithium-cells",
		"hv-vehical":      "hv-vehicle",
		"fuel-vapor":      "fuel-vapour",
		"tire-inflation":  "tyre-inflation",
		"mold-sewage":     "mould-sewage",
		"airbag-srs":      "srs-airbag",
		"crush-pinch":     "pinch-crush",
		"mains-shock":     "mains-isolation",
		"mains-shok":      "mains-isolation",
		"heigth-fall":     "ladder-height",
	} {
		isNearest(t, words, want)
	}
}

// Each class is nearest to its own id and its own name.
func TestNearestFindsItself(t *testing.T) {
	for _, c := range All() {
		for _, words := range []string{c.ID, c.Name, c.Spoken} {
			isNearest(t, words, c.ID)
		}
	}
}

// A family's id gives its lead, then other classes of the family only as far
// as words or the name carry.
func TestNearestKnowsFamilies(t *testing.T) {
	for _, f := range Families() {
		if f.ID != NoFamily {
			isNearest(t, f.ID, f.Lead)
		}
	}
}

func TestNearestGivesNothingForNothing(t *testing.T) {
	for _, words := range []string{"", "   ", "the of and", "-", "xqzt", "\x00\xff", strings.Repeat("z", 1<<16)} {
		if got := Nearest(words); len(got) != 0 {
			t.Errorf("Nearest(%.20q) = %v, want nothing", words, ids(got))
		}
	}
}

func TestSlips(t *testing.T) {
	for _, c := range []struct {
		a, b        string
		limit, want int
	}{
		{"jack", "jack", 2, 0},
		{"jack", "jak", 2, 1},
		{"jack", "jcak", 2, 1}, // changed about: Damerau counts one
		{"ca", "abc", 3, 3},    // optimal string alignment, not the full distance (2)
		{"kitten", "sitting", 3, 3},
		{"kitten", "sitting", 2, 3}, // over the limit
		{"", "abc", 3, 3},
		{"tyre", "tür", 2, 2},
	} {
		if got := Slips(c.a, c.b, c.limit); got != c.want {
			t.Errorf("Slips(%q, %q, %d) = %d, want %d", c.a, c.b, c.limit, got, c.want)
		}
		if got := Slips(c.b, c.a, c.limit); got != c.want {
			t.Errorf("Slips(%q, %q, %d) = %d, want %d", c.b, c.a, c.limit, got, c.want)
		}
	}
}

// Forms of one word meet; words that differ in the trade do not.
func TestStem(t *testing.T) {
	for _, same := range []string{
		"jack jacks jacked jacking", "weld welder welding welds welded", "grind grinder grinding",
		"battery batteries", "wire wires wiring wired", "jam jamming jammed", "press pressed pressing",
		"child children child's", "gas gases", "carry carries carried carrying",
	} {
		forms := strings.Fields(same)
		for _, f := range forms[1:] {
			if Stem(f) != Stem(forms[0]) {
				t.Errorf("Stem(%s) = %q, Stem(%s) = %q", f, Stem(f), forms[0], Stem(forms[0]))
			}
		}
	}
	for _, differ := range [][2]string{{"spring", "spray"}, {"gas", "gasket"}, {"lead", "leak"}, {"string", "strap"}} {
		if Stem(differ[0]) == Stem(differ[1]) {
			t.Errorf("%s and %s meet in %q", differ[0], differ[1], Stem(differ[0]))
		}
	}
}

// Everyday words belong to classes that are there, once each.
func TestEverydayNamesClasses(t *testing.T) {
	seen := map[string]bool{}
	for _, e := range everyday {
		if _, ok := Find(e.class); !ok || seen[e.class] {
			t.Errorf("%s: there %v, twice %v", e.class, ok, seen[e.class])
		}
		seen[e.class] = true
	}
	if len(seen) != len(All()) {
		t.Errorf("%d classes have everyday words, want %d", len(seen), len(All()))
	}
}

func FuzzNearest(f *testing.F) {
	for _, s := range []string{"electric shock", "mains-isolaton", "", "kid's", "ÄÖ\u202e\x00", "'s 's 's", "a-b-c-d"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, words string) {
		got := Nearest(words)
		if len(got) > nearestMax {
			t.Errorf("%d classes", len(got))
		}
		if diff := cmp.Diff(ids(got), ids(Nearest(words))); diff != "" {
			t.Error(diff)
		}
		seen := map[string]bool{}
		for _, id := range ids(got) {
			if seen[id] {
				t.Errorf("%s twice", id)
			}
			seen[id] = true
		}
		if s := CanonicalState(words); CanonicalState(s) != s {
			t.Errorf("state %q is not canonical", s)
		}
	})
}

func BenchmarkNearest(b *testing.B) {
	for b.Loop() {
		Nearest("jacking the car without axle stands")
	}
}

func BenchmarkNearestUnknownWords(b *testing.B) {
	for b.Loop() {
		Nearest("jakcing the vehikle withuot axel stnads")
	}
}

func ids(cs []Class) []string {
	var all []string
	for _, c := range cs {
		all = append(all, c.ID)
	}
	return all
}

// One word beside what a step is judged by names no class; two do, or one that
// is among it.
func TestOneWordNames(t *testing.T) {
	for _, c := range []struct{ text, by, want string }{
		{"fill fresh petrol in, a dry rag under the bowl", "fresh petrol", "hot-work"},
		{"rub it in with the rag", "rub; rag", "oily-rags"},
		{"linseed oil, and the rag goes in the bin", "bin", "oily-rags"},
	} {
		if got := Likenesses(c.text).Within("hot-work-fire", Anywhere, c.by).ID; got != c.want {
			t.Errorf("%q by %q is %s, not %s", c.text, c.by, got, c.want)
		}
	}
}

// A class that is usual on vehicles alone is none for a window, unless its whole
// family is.
func TestWithin(t *testing.T) {
	for _, c := range []struct {
		text, family string
		where        Where
		want         string
	}{
		{"", "raised-load", Anywhere, "raised-vehicle"},
		{"", "raised-load", OffRoad, "suspended-part"},
		{"chock the wheel", "raised-load", Anywhere, "wheel-chocks"},
		{"it may topple, hold the fridge", "raised-load", OffRoad, "tip-over"},
		{"", "airbag-srs", OffRoad, "srs-airbag"},
		{"", "hot-surface", OffRoad, "hot-surface"},
		{"", "sharks", OffRoad, ""},
	} {
		if got := Likenesses(c.text).Within(c.family, c.where, c.text).ID; got != c.want {
			t.Errorf("%q in %s: %q, want %q", c.text, c.family, got, c.want)
		}
	}
}
