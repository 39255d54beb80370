package class

import (
	"slices"
	"strings"
	"sync"
	"unicode"
)

// State is a state of the object that the linter knows. Plans may use any
// other words for states of their own.
type State struct {
	Name    string   // canonical: "power-off"
	Aliases []string // other spellings of the same state, normal form
	What    string   // what is true while it holds
	Safe    bool     // may be left standing at the end of the story
}

// states stand in the plan language's order. An alias must say the same thing
// and no less: "switched-off" is not one of power-off, because a switch does
// not isolate.
var states = [...]State{
	{"raised", []string{"jacked-up", "jacked"}, "the object is off the ground on a jack, lift or hoist", false},
	{"on-stands", []string{"on-axle-stands", "on-jack-stands", "on-jackstands", "on-safety-stands"}, "its weight sits on stands or a locked lift", false},
	{"chocked", []string{"wheels-chocked", "wheel-chocked"}, "the wheels that stay on the ground are chocked", true},
	{"power-off", []string{"unplugged", "isolated", "plug-pulled", "locked-out", "locked-off"}, "the supply is isolated: plug out, or breaker off and locked", false},
	{"proven-dead", []string{"proved-dead", "tested-dead"}, "a proved tester has shown no voltage", true},
	{"battery-off", []string{"battery-disconnected", "battery-unplugged"}, "the battery is disconnected or off the object", false},
	{"srs-waited", []string{"airbag-waited"}, "the maker's wait after disconnecting the battery is over", true},
	{"depressurised", []string{"depressurized", "pressure-off", "pressure-released", "pressure-relieved"}, "the pressure has been let off", true},
	{"drained", nil, "the fluid has been drained", true},
	{"cooled", []string{"engine-cold", "cooled-down", "cold"}, "it has cooled enough to touch", true},
	{"discharged", []string{"capacitor-discharged", "capacitors-discharged"}, "stored charge has been let off and zero measured", true},
	{"guard-off", []string{"guards-off", "guard-removed"}, "a guard or safety device is off or held off", false},
	{"covers-off", []string{"cover-off", "covers-removed", "cover-removed"}, "a cover is off and parts behind it can be touched", false},
	{"gas-off", []string{"gas-shut-off", "gas-closed"}, "the gas is shut at the valve", false},
	{"water-off", []string{"water-shut-off", "water-closed"}, "the water is shut at the valve", false},
	{"running", []string{"engine-running", "motor-running"}, "an engine, motor or machine is running", false},
	{"key-on", []string{"ignition-on"}, "the ignition is on", false},
	{"key-off", []string{"ignition-off", "key-out", "key-removed", "keys-out"}, "the ignition is off", false},
	{"spark-off", []string{"plug-lead-off", "plug-leads-off", "spark-plug-lead-off", "spark-plug-leads-off", "plug-wire-off", "plug-wires-off"}, "the spark plug lead is off and clear", false},
	{"fuel-open", nil, "the fuel system is open to the air", false},
	{"brake-freed", []string{"brake-off", "handbrake-off", "parking-brake-off"}, "the parking brake is off or slack", false},
	{"live", []string{"energised", "energized"}, "power is on and live parts can be touched", false},
	{"under", []string{"someone-under", "underneath"}, "someone is beneath the object", false},
	{"on-ladder", nil, "someone is on a ladder or steps", false},
	{"alone", []string{"working-alone"}, "nobody else is there", false},
}

// stateNames gives the place of each state in the list by its name and aliases.
var stateNames = sync.OnceValue(func() map[string]int {
	names := map[string]int{}
	for i := range states {
		names[states[i].Name] = i
		for _, alias := range states[i].Aliases {
			names[alias] = i
		}
	}
	return names
})

// States are the known states, in the plan language's order.
func States() []State { return slices.Clone(states[:]) }

// FindState is the state that the word names, in its own name or an alias;
// case, spaces and hyphens make no difference.
func FindState(word string) (State, bool) {
	i, ok := stateNames()[normalState(word)]
	if !ok {
		return State{}, false
	}
	s := states[i]
	s.Aliases = slices.Clone(s.Aliases)
	return s, true
}

// CanonicalState is the one spelling under which a state is compared: the
// canonical name of a known state, else the word in lower case with hyphens.
func CanonicalState(word string) string {
	word = normalState(word)
	if i, ok := stateNames()[word]; ok {
		return states[i].Name
	}
	return word
}

func normalState(word string) string {
	if isNormal(word) {
		return word
	}
	fields := strings.FieldsFunc(strings.ToLower(word), func(r rune) bool {
		return unicode.IsSpace(r) || r == '-' || r == '_'
	})
	return strings.Join(fields, "-")
}

// isNormal holds for most words that are asked for: plain letters with single
// hyphens between.
func isNormal(word string) bool {
	hyphen := true // none may stand first
	for i := range len(word) {
		switch b := word[i]; {
		case 'a' <= b && b <= 'z':
			hyphen = false
		case b == '-' && !hyphen:
			hyphen = true
		default:
			return false
		}
	}
	return !hyphen
}
