package lint

import (
	"fmt"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
)

var cautionIncomplete = Rule{Name: "caution-incomplete", Group: Safety, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	check := func(path, id, words, hazardID string) {
		if words == "" {
			return
		}
		lacks := p.lacking(fold(words), hazardID)
		if len(lacks) < 2 {
			return
		}
		report(Report{
			Message: fmt.Sprintf("caution %q names neither %s", id, strings.Join(lacks, " nor ")),
			Hint:    "say at least two of: what is there, what it does to you, how to keep clear of it",
			Path:    path,
		})
	}
	for i := range p.Plan.Cautions {
		if c := &p.Plan.Cautions[i]; !c.Stock && p.Spans.Has(row(plan.KindCaution, i, "say")) {
			check(row(plan.KindCaution, i, "say"), c.ID, c.Say.Print, c.Class)
		}
	}
	for i := range p.Plan.Steps {
		for j, use := range p.Plan.Steps[i].Cautions {
			check(stepPath(i, fmt.Sprintf("cautions[%d].say", j)), use.ID, use.Say.Print, use.ID)
		}
	}
}}

// What a caution can hold, by words that tell it. Common practice, no source:
// hazard, consequence and avoidance are the parts that ANSI Z535.6 asks of a
// safety message.
var (
	hazardWords = []string{
		"mains", "live", "volts", "voltage", "current", "electricity", "battery", "capacitor", "charge", "charged", "fuel", "petrol", "diesel", "gas", "vapour", "vapours", "fumes", "acid",
		"spring", "springs", "tension", "pressure", "hot", "heat", "steam", "scalding", "boiling", "flame", "spark", "sparks", "sharp", "edge", "edges", "blade", "blades", "glass", "dust", "asbestos", "lead",
		"heavy", "weight", "heavier", "heaviest", "weighs", "load", "loose", "moving", "turning", "spinning", "rotating", "fan", "belt", "chain", "wheel", "airbag", "airbags", "chemical", "solvent", "fluid", "bleach", "lithium", "cell", "cells", "jack", "raised", "height", "ladder",
		"noise", "loud", "splinters", "chips", "oil", "coolant", "refrigerant", "laser", "mould", "power", "motor", "engine", "car", "machine", "magnet", "needle", "traffic", "water",
	}
	consequenceWords = []string{
		"kill", "kills", "killed", "die", "death", "dead", "shock", "shocks", "burn", "burns", "burned", "burnt", "scald", "scalds", "blind", "blinds", "blindness", "cut", "cuts", "crush", "crushes", "crushed", "trap", "traps", "catch", "catches", "nip", "nips", "bite", "bites", "lose", "hurt", "hurts", "injure", "injures", "injury", "break", "breaks", "poison", "poisons", "poisonous",
		"choke", "chokes", "suffocate", "explode", "explodes", "explosion", "fire", "fires", "ignite", "ignites", "catch fire", "fall", "falls", "falling", "breaks", "throw you", "drop", "drops", "slip", "fly", "flies", "fires off", "go off", "goes off", "spray", "sprays", "splash", "splashes", "squirt", "squirts", "deaf", "deafness", "hearing", "lungs", "skin", "eyes", "eye", "fingers", "finger", "hand", "hands", "arm", "toes", "face", "cancer", "brakes fail", "fail", "fails", "come off", "comes off", "let go", "lets go", "start by itself", "starts by itself", "can start", "could start", "wreck", "ruin", "short", "arc", "weld", "welds", "jump", "jumps", "pull you", "drag", "drags", "wind", "winds", "take a finger", "takes a finger", "takes fingers", "fingertip", "fingertips", "thumb", "teeth", "throw", "throws", "throws you", "thrown", "crash", "back", "foot", "feet", "harm", "harms", "roll", "rolls", "run over", "runs over", "topple", "topples", "tip", "tips", "land on", "lands on", "sting", "stings", "toxic", "corrosive", "flammable",
	}
	avoidanceWords = []string{
		"never", "don't", "do not", "keep", "wear", "put on", "unplug", "pull the plug", "plug out", "switch off", "turn off", "off first", "disconnect", "isolate", "lock", "wait", "let it cool", "before", "first", "stay", "stand", "stands", "support", "use", "leave", "call", "open a window", "outside", "outdoors", "clear", "away", "out of", "check", "prove", "test", "hold", "tie", "cover", "block", "chock", "release", "let off", "drain", "discharge", "ventilate", "gloves", "glasses", "goggles", "mask", "earplugs", "only", "no", "not", "without", "slowly", "until", "both hands", "clamp", "secure", "get help", "two people", "second person", "person at each", "people", "helper", "off", "out", "shut", "closed", "on and", "stop at", "go cold", "cold", "chocks", "chocked", "brake on", "tied", "clamped", "supported", "unplugged", "isolated", "locked", "covered", "drained", "discharged", "secured", "level ground", "level floor", "mop", "wipe up", "holds", "hold the",
	}
)

// lacking lists which parts a caution lacks. The words of its hazard class
// count as naming the hazard.
func (p *Pass) lacking(words, hazardID string) []string {
	var lacks []string
	own, _ := class.Find(hazardID)
	ofClass := strings.Join([]string{own.Name, strings.ReplaceAll(own.ID, "-", " "), own.Spoken, own.Card}, " ")
	if !says(words, hazardWords...) && !says(words, contentWords(ofClass)...) {
		lacks = append(lacks, "the hazard")
	}
	if !says(words, consequenceWords...) {
		lacks = append(lacks, "what it does to you")
	}
	if !says(words, avoidanceWords...) {
		lacks = append(lacks, "how to keep clear")
	}
	return lacks
}
