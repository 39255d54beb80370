package lint

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"sync"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
)

var connectorLeftOff = Rule{Name: "connector-left-off", Group: Completeness, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	open := map[string]int{} // noun of a connection and the step that parted it
	last := ""               // the noun parted last: what "it" is
	parted := map[string]bool{}
	lent := map[string]bool{} // what the plan itself put on, with the word before it: "drain hose"
	for i := range p.Plan.Steps {
		if words := p.words[i]; !says(words, connections...) && !says(words, lines...) && !says(words, allBack...) && !says(words, rejoin...) && !says(words, ignition...) {
			continue // most steps
		}
		for _, clause := range clauses(p.words[i]) {
			noun, off, on := connection(clause)
			lends := on && !parted[noun]
			parted[noun] = parted[noun] || off
			switch {
			case on && noun == "":
				clear(open)
			case on && noun == "it":
				if !slices.ContainsFunc(p.Plan.Steps[i].Ends, func(s string) bool { return class.CanonicalState(s) == "power-off" }) {
					delete(open, last)
				}
			case on:
				if name := called(clause, noun); lends && name != "" {
					lent[name] = true
				}
				delete(open, noun)
				if noun == "plug" || noun == "connector" { // one thing by either name
					delete(open, "plug")
					delete(open, "connector")
				}
			case off && noun == "plug" && p.startsHere(i, "power-off"):
				// the plug in the wall: refit-missing speaks of it
			case off && noun == "plug lead" && p.startsHere(i, "spark-off"):
				// so it does of this one
			case off && lent[called(clause, noun)]:
				// a hose to drain by was put on for the work and goes home with the tools
			case off && says(" "+clause+" ", putAway...):
				// what is parted for the way or for the cupboard is no work on the object
			case off && !p.stateEnds(i):
				if _, already := open[noun]; !already && !alias(open, noun) {
					open[noun], last = i, noun
				}
			}
		}
	}
	for _, noun := range slices.Sorted(maps.Keys(open)) {
		i := open[noun]
		report(Report{
			Message: fmt.Sprintf("step %q parts a %s, and no step joins it again", p.Plan.Steps[i].Title.Print, noun),
			Hint:    fmt.Sprintf("say where it goes back on, or give it a state: starts = [\"%s-off\"] here, ends where it is joined", noun),
			Path:    stepPath(i, "title"),
		})
	}
}}

// putAway are words of a thing that comes off to be stored or moved.
var putAway = []string{"put it away", "put them away", "put that away", "hang it up", "coil it up", "roll it up", "wind it up", "pack it up", "for transport", "for the trip", "for the journey", "for the move", "for the ride home", "to carry it", "to move it", "to transport it", "in the bag", "in the bin", "throw it away", "bin it"}

// alias holds where one thing was parted by its other name: "unplug the connector"
// in the notes, "pull the plug" in what is said.
func alias(open map[string]int, noun string) bool {
	other, ok := map[string]string{"plug": "connector", "connector": "plug"}[noun]
	_, parted := open[other]
	return ok && parted
}

// What is joined and parted by hand. A lead, a wire or a mains plug may be
// anything else as well: a bench lead, a supply.
var connections = []string{"connector", "connectors", "plug", "plugs", "multiplug", "hose", "hoses", "harness", "loom", "cable", "cables"}

// lines are what carries fluid or current and is much else as well, a pen line, a
// pipe in the wall: they count where they come off ("the line off", "pull it off").
var lines = []string{"line", "lines", "pipe", "pipes", "tube", "tubes"}

// ignition ends the names of what goes on a spark plug. By itself each is much else
// as well: it counts where it is named whole, or goes back on.
var ignition = []string{"lead", "leads", "cap", "caps", "boot", "boots"}

var (
	partWords  = []string{"unplug", "disconnect", "unclip", "pull", "slide", "take", "part", "separate", "ease", "prise"}
	joinWords  = []string{"plug in", "plugs in", "plug back", "plug it", "reconnect", "reconnects", "connect", "connects", "push", "pushes", "back on", "back in", "goes on", "go on", "on until", "home", "on again", "in again", "refit", "tighten", "clicks", "click", "clips on", "hang", "hangs", "hook", "hooks"}
	mainsWords = []string{"mains", "socket", "wall", "pull the plug", "plug out", "plug in", "spark"}
	kept       = []string{"don't", "never", "leave", "not", "no"}
	seated     = []string{"on", "in", "back", "tight", "home"}
	drawn      = []string{"tight", "taut", "snug", "through", "straight", "along", "across", "over", "up", "down", "towards", "to", "into", "aside"}
	rejoin     = []string{"reconnect", "reconnects", "plug it back", "plug them back", "plug that back"}
	allBack    = []string{"everything back", "all connectors", "every connector", "every plug", "all the plugs", "in reverse", "reverse order", "the other way round", "all hoses", "all of it back", "everything goes back"}
)

// clauses are the parts of folded words with one act each: "unplug the connector"
// and "pull the hose off".
func clauses(folded string) []string {
	var out []string
	for sentence := range strings.SplitSeq(folded, ".") {
		words, from, named := strings.Fields(sentence), 0, false
		for i, w := range words {
			if named && (slices.Contains(partWords, w) || w == "push" || w == "reconnect") {
				out = append(out, strings.Join(words[from:i], " "))
				from, named = i, false
			}
			named = named || slices.Contains(connections, w) || slices.Contains(lines, w)
		}
		out = append(out, strings.Join(words[from:], " "))
	}
	return out
}

// connection reads a clause about a connector: its noun in the singular, and
// whether it is parted or joined. Joined without a noun means all of them, "it"
// the last. To plug a connector is to join it. Parted is "plug off", or a verb of parting up to four words before the noun.
func connection(clause string) (noun string, off, on bool) {
	words := strings.Fields(clause)
	sentence := " " + strings.Join(words, " ") + " "
	if says(sentence, allBack...) {
		return "", false, true
	}
	at, plugs := named(words)
	if at >= 0 && !plugs && words[at] == "plug" && at+1 < len(words) && !says(sentence, mainsWords...) && plugsThing().MatchString(sentence) {
		return "plug", false, true
	}
	if at >= 0 && !plugs && at+1 < len(words) && strings.HasPrefix(words[at], "plug") && slices.Contains(ignition, words[at+1]) {
		at++ // "the plug lead" is a lead, and goes on as one
	} else if at < 0 {
		at = slices.IndexFunc(words, func(w string) bool { return slices.Contains(ignition, w) })
		if at >= 0 && (at+1 == len(words) || !slices.Contains(seated, words[at+1])) {
			at = -1 // a lead by itself may be anything, but where it goes back on
		}
	}
	if at < 0 || !plugs && strings.HasPrefix(words[at], "plug") && says(sentence, rejoin...) {
		return "it", false, says(sentence, rejoin...)
	}
	noun = strings.TrimSuffix(words[at], "s")
	if slices.Contains(ignition, words[at]) {
		noun = "plug lead"
	}
	after, rest := "", words[at+1:]
	if len(rest) > 0 {
		after, rest = rest[0], rest[1:]
	}
	parting := slices.ContainsFunc(words[max(0, at-4):at], func(w string) bool { return slices.Contains(partWords, w) })
	if plugs || says(sentence, joinWords...) || slices.Contains(seated, after) && !parting && !rests(rest) {
		return noun, false, true
	}
	if slices.Contains(lines, words[at]) {
		return noun, after == "off" || strings.Contains(sentence, " pull it off "), false
	}
	if says(sentence, mainsWords...) || says(sentence, kept...) {
		return noun, false, false
	}
	if slices.Contains(drawn, after) {
		return noun, false, false
	}
	return noun, parting || after == "off" || after == "comes", false
}

// called is a noun of a clause with the word before it: "bleed tube". Empty
// where no word tells it from others.
func called(clause, noun string) string {
	words := strings.Fields(clause)
	for i := 1; i < len(words); i++ {
		if w := words[i-1]; strings.TrimSuffix(words[i], "s") == noun && !slices.Contains(determiners, w) {
			return w + " " + noun
		}
	}
	return ""
}

var determiners = []string{"the", "a", "an", "this", "that", "these", "those", "its", "your", "my", "one", "both", "each", "new", "old", "same", "other", "push", "pull", "take", "and"}

// plugsThing is a thing that is plugged in: "plug the airbag back in".
var plugsThing = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(` plug (?:the|its|that|this|each|both) (?:\S+ ){1,3}(?:back )?in `)
})

// named is the place of the noun in a clause, -1 where it has none, and whether it
// stands after the verb: "plug the connector in".
func named(words []string) (at int, plugs bool) {
	isNoun := func(w string) bool { return slices.Contains(connections, w) || slices.Contains(lines, w) }
	at = slices.IndexFunc(words, isNoun)
	if at < 0 || at+1 >= len(words) || !strings.HasPrefix(words[at], "plug") || !slices.Contains([]string{"the", "that", "this", "its", "both"}, words[at+1]) {
		return at, false
	}
	next := slices.IndexFunc(words[at+1:min(len(words), at+6)], isNoun)
	if next < 0 {
		return at, false
	}
	return at + 1 + next, true
}

// rests holds where what follows is a place to lay something down.
func rests(place []string) bool {
	return slices.ContainsFunc(place[:min(len(place), 3)], func(w string) bool {
		return slices.Contains([]string{"bench", "floor", "ground", "table", "tray", "rag", "mat", "shelf", "bucket", "side", "way"}, w)
	})
}

// stateEnds holds where the step begins a state of its own that some step
// ends, or that refit-missing speaks of: then the state carries the connector.
func (p *Pass) stateEnds(step int) bool {
	return slices.ContainsFunc(p.Plan.Begun(step), func(v plan.Interval) bool {
		_, known := class.FindState(v.State)
		return !known
	})
}
