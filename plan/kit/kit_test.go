package kit

import (
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"fixslate/plan/given"
	"fixslate/plan/hazard/class"
)

func TestKit(t *testing.T) {
	p := given.Plan(t, `
variant = [{ id = "early", name = "early ones", short = "early" }]
tool = [
  { id = "meter", name = "multimeter", why = "to read ohms" },
  { id = "set", name = "hex key set", drives = ["4 mm hex key"], optional = true, instead_of = "single keys" },
  { id = "pliers", name = "hose clamp pliers" },
  { id = "inch", name = "5/32 inch hex key", drives = ["5/32 in hex key"] },
  { id = "bulb", name = "headlamp bulb on two leads" },
]
part = [{ id = "pump", name = "pump", number = "?", count = 2, price = "about 30 €", variants = ["early"] }]
supply = [{ id = "rag", name = "rags", amount = "two" }, { id = "gloves", name = "thick gloves", protects = "hands" }, { id = "ears", name = "ear defenders", amount = "one pair", protects = "hearing" }]
[video]
title = "T"
[shoot]
gear = ["camera, two batteries", "tripod", "panel light"]
[[step]]
title = "S"
cautions = ["sharp-edges", "eye-impact"]
tools = ["10 mm socket"]
`)
	var tools []string
	for _, i := range Tools(p) {
		tools = append(tools, i.Line())
	}
	if diff := cmp.Diff([]string{"multimeter – to read ohms", "hex key set – if you have one; 4 mm hex key; instead of single keys", "hose clamp pliers", "5/32 inch hex key", "headlamp bulb on two leads", "10 mm socket"}, tools); diff != "" {
		t.Error(diff)
	}
	if got := Parts(p)[0].Line(); got != "2 × pump – number to be found, about 30 € (early)" {
		t.Error(got)
	}
	if got := Supplies(p); len(got) != 1 || got[0].Line() != "rags – two" {
		t.Error(got)
	}
	if diff := cmp.Diff([]string{"camera, two batteries", "panel light", "multimeter"}, ToCharge(p)); diff != "" {
		t.Error(diff)
	}
	// The plan's gloves cover the hands; eyes come from the caution.
	gear := Gear(p)
	if gear[0].Name != "thick gloves" {
		t.Error(gear)
	}
	if gear[1].Line() != "ear defenders – one pair" {
		t.Error(gear[1].Line())
	}
	hands, eyes := 0, 0
	for _, g := range gear {
		switch g.Note {
		case "for the hands":
			hands++
		case "for the eyes":
			eyes++
		}
	}
	if hands != 1 || eyes != 1 {
		t.Errorf("%d for the hands, %d for the eyes: %v", hands, eyes, gear)
	}
}

// What serves after 29 CFR 1910.133 and 1910.138 (memory): thin gloves are none
// against heat, none but insulating ones help against mains, glasses stop no
// splash. Feet, head and body: common practice, no source.
func TestGearServes(t *testing.T) {
	for _, c := range []struct {
		have, protects, ask string
		part                string
		want                bool
	}{
		{"nitrile gloves", "hands", "heat-resistant gloves", "hands", false},
		{"work gloves", "hands", "heat-resistant gloves", "hands", true},
		{"work gloves", "hands", "insulating gloves", "hands", false},
		{"insulating gloves, class 0", "hands", "insulating gloves", "hands", true},
		{"cut-resistant gloves", "hands", "work gloves", "hands", true},
		{"safety glasses", "eyes", "work gloves", "hands", false},
		{"nitrile gloves", "hands", "cut-resistant gloves", "hands", false},
		{"leather gloves", "hands", "acid-resistant gloves", "hands", false},
		{"latex gloves", "hands", "fuel-resistant gloves", "hands", false},
		{"nitrile gloves that stand petrol", "hands", "fuel-resistant gloves", "hands", true},
		{"washing-up gloves", "hands", "chemical-resistant gloves", "hands", true},
		{"safety glasses", "eyes", "goggles", "eyes", false},
		{"goggles", "eyes", "safety glasses", "eyes", true},
		{"face shield", "eyes", "goggles", "eyes", true},
		{"goggles", "eyes", "face shield", "eyes", false},
		{"dust mask", "lungs", "respirator of the class local rules name", "lungs", false},
		{"FFP3 mask", "lungs", "respirator of the class local rules name", "lungs", true},
		{"FFP3 mask", "lungs", "dust mask", "lungs", true},
		{"insulating footwear", "feet", "safety footwear", "feet", false},
		{"safety boots", "feet", "insulating footwear", "feet", false},
		{"work boots", "feet", "safety footwear", "feet", true},
		{"high-visibility vest", "body", "waterproof apron", "body", false},
		{"overalls", "body", "long sleeves", "body", true},
	} {
		item := Item{Name: c.have, Protects: c.protects}
		if got := item.Serves(class.Gear{Protects: c.part, Name: c.ask}); got != c.want {
			t.Errorf("%s for %s: %v", c.have, c.ask, got)
		}
	}
}

// Gear is asked for where the danger still stands when hands come near, and of
// whom the work is left to.
func TestGearAskedFor(t *testing.T) {
	for _, c := range []struct {
		name, caution, before, step string
		want                        bool
	}{
		{"hot", `hazard = "hot-surface"`, ``, ``, true},
		{"left to cool first", `hazard = "hot-surface"`, ``, `starts = ["cooled"]`, false},
		{"run again at the end", `hazard = "hot-surface"`, `starts = ["cooled"]`, `ends = ["cooled"]`, true},
		{"only talked of", `hazard = "live-test", leave_to = "an electrician"`, ``, ``, false},
		{"left to somebody, and done", `hazard = "live-test", leave_to = "an electrician"`, ``, `do = "read the voltage"`, true},
		{"the spanner is on the post before it is off", `hazard = "battery-short"`, ``, `starts = ["battery-off"]`, true},
		{"off long since", `hazard = "battery-short"`, `starts = ["battery-off"]`, ``, false},
		{"what is left in the line drips", `hazard = "pressurised-part"`, `starts = ["depressurised"]`, ``, true},
	} {
		p := given.Plan(t, fmt.Sprintf(`caution = [{ id = "c", say = "It hurts.", %s }]
[video]
title = "T"
[[step]]
title = "Before"
%s
[[step]]
title = "S"
cautions = ["c"]
%s
`, c.caution, c.before, c.step))
		if got := len(Gear(p)) > 0; got != c.want {
			t.Errorf("%s: gear %v, want %v", c.name, got, c.want)
		}
	}
}

// Ears are for what is loud by itself.
func TestGearForEars(t *testing.T) {
	for hazard, want := range map[string]bool{"rotating-parts": false, "hearing": true, "abrasive-wheel": true} {
		p := given.Plan(t, fmt.Sprintf("[video]\ntitle = \"T\"\n[[step]]\ntitle = \"S\"\ncautions = [%q]\n", hazard))
		got := slices.ContainsFunc(Gear(p), func(i Item) bool { return i.Protects == class.Hearing })
		if got != want {
			t.Errorf("%s: ears %v", hazard, got)
		}
	}
}

// Fasteners that are used once are bought with the parts, unless a part is them.
func TestPartsHaveNewFasteners(t *testing.T) {
	p := given.Plan(t, `
part = [{ id = "seal", name = "seal" }, { id = "crush", name = "copper sealing washer, pack of two" }]
fastener = [
  { id = "carrier-bolts", what = "carrier bolts", thread = "M12", grade = "10.9", count = 2, reuse = false },
  { id = "washers", what = "sealing washers", count = 2, reuse = false },
  { id = "lid-screws", what = "lid screws", count = 4 },
  { id = "hub-nut", what = "hub nut", reuse = false },
]
[video]
title = "T"
[[step]]
title = "S"
say = "Fit it."
fasteners = ["carrier-bolts", "washers", "lid-screws"]
`)
	var got []string
	for _, item := range Parts(p) {
		got = append(got, item.Line())
	}
	want := []string{"seal", "copper sealing washer, pack of two", "2 × new carrier bolts – M12, 10.9"}
	if !slices.Equal(got, want) {
		t.Errorf("parts %q, want %q", got, want)
	}
}
