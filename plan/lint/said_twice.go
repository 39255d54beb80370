package lint

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"sync"

	"fixslate/plan"
	"fixslate/plan/claim"
	"fixslate/plan/hazard/class"
	"fixslate/plan/trade"
)

// figure is a value that a line says a named thing has, with no fact behind it.
type figure struct {
	said
	value claim.Value
	is    trade.Quantity
	name  string // the words that name the thing, as they stand
	key   string // their stems, sorted, and what is measured
}

// saidTwice are two lines that give one thing two values, where no fact of the plan
// settles which is right: "the plug gap is 0.7 mm", and later 0.9.
func (p *Pass) saidTwice(report func(Report)) {
	first := map[string][]figure{}
	for _, s := range p.said {
		for _, f := range p.figures(s) {
			for _, o := range first[f.key] {
				if o.line != f.line && plan.Meets(p.Plan.Steps[o.step].Variants, p.Plan.Steps[f.step].Variants) && !near(o.is, f.is) {
					r := f.report(f.value.Start, f.value.End)
					r.Message = fmt.Sprintf("%s is said to be %s here, and %s before", f.name, f.printed(f.value), o.printed(o.value))
					r.Hint = "settle which is right, declare it once as a [[spec]] with its source, and quote it; or say in what the two differ"
					report(r)
					break
				}
			}
			first[f.key] = append(first[f.key], f)
		}
	}
}

// near holds for quantities that differ by no more than rounding and a change of
// unit does: 0.7 mm and 0.028 inches. Of lengths far apart one is a width.
func near(a, b trade.Quantity) bool {
	in, ok := a.In(b.Unit)
	small, large := min(math.Abs(in.Number), math.Abs(b.Number)), max(math.Abs(in.Number), math.Abs(b.Number))
	return !ok || large-small <= 0.03*large || b.Unit.Dimension() == trade.Length && large > 5*small
}

// figures are what a line says of things by name. Readings, guesses, limits and
// what holds only if something does are none, nor is a line with a range.
func (p *Pass) figures(s said) []figure {
	guess := s.Has(claim.Hedge) && !says(fold(s.line.Print), "should be", "ought to be") // "should be 4 mm" is none
	if guess || s.Has(claim.Measurement) || s.Conditional || len(s.Values) == 0 || p.Plan.Steps[s.step].Opinion {
		return nil
	}
	var found []figure
	for i, v := range s.Values {
		q, ok := quantity(v)
		if !ok || v.Quoted || v.Part != "" || q.Unit.Dimension() == trade.Ratio || q.Unit.Dimension() == trade.Angle {
			continue
		}
		if i > 0 && s.Values[i-1].Start == v.Start || i+1 < len(s.Values) && s.Values[i+1].Start == v.Start || v.Start < 0 || v.Start > len(s.line.Print) {
			continue
		}
		if name := namedBefore(s.line.Print[:v.Start], q.Unit.Dimension() == trade.Torque); len(name) > 0 {
			found = append(found, figure{s, v, q, strings.Join(name, " "), keyOf(name) + "/" + string(q.Unit.Dimension())})
		}
	}
	return found
}

// namedBefore are the words that name what has the value behind a text: the
// subject of "is", "wants" and the like, or what is set, filled or tightened to
// it. A torque may follow its fastener with nothing between but a comma.
func namedBefore(text string, torque bool) []string {
	clause := strings.TrimRight(text, " ,:–—")
	folded := strings.TrimSuffix(fold(clause[strings.LastIndexAny(clause, ",;:")+1:]), ". ")
	if unlike().MatchString(folded) {
		return nil
	}
	for _, form := range []*regexp.Regexp{hasValue(), broughtTo()} {
		if m := form.FindStringSubmatch(folded); m != nil {
			return thingWords(m[1])
		}
	}
	if m := tightenedTo().FindStringSubmatch(folded); torque && m != nil {
		return thingWords(m[1])
	}
	return nil
}

var (
	// unlike are lines that tell two values apart, or give none that has to be.
	unlike = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(` (?:if|when|unless|not|never|isn't|instead|than|from|between|or|either|was|were|used to|old|less|more|up to|at least|at most|under|over|above|below|before|after|minimum|maximum|first stage|second stage|say|says|said|another|about|around|some|only|now|too|cold|hot|warm|cut|cuts|each) `)
	})
	// hasValue is "the plug gap is", "the tyre wants", "the bolts take" before a value.
	hasValue = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(` ([^.]+?) (?:is|are|should be|must be|has to be|have to be|wants|want|takes|take|needs|need) (?:set to |set at |exactly |just |torqued to |tightened to )?$`)
	})
	// broughtTo is "set the gap to" before a value.
	broughtTo = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(` (?:set|sets|adjust|adjusts|inflate|inflates|pump|pumps|fill|fills|gap|torque|torques|tighten|tightens|nip) ([^.]+?) (?:up |back )?(?:to|at) ?$`)
	})
	// tightenedTo is "drain plug back in," before a torque.
	tightenedTo = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(` ([^.]+?) (?:back in|back on|in|on|home|go in|goes in|go back|goes back|go back in|goes back in|back) ?$`)
	})
)

// thingWords are the words that name a thing; none where one of them is a
// pronoun, an instrument that is set anew for each reading, or a word that tells
// nothing: "set the meter to", "it is".
func thingWords(text string) []string {
	var name []string
	before := ""
	for _, w := range strings.Fields(text) {
		of := before == "of" // "the gap of the plug" is one name, "on this one the plug" is not
		switch before = w; {
		case slices.Contains(nameStarts, w) && !of:
			name = nil
		case slices.Contains(nameStarts, w) || slices.Contains(fillers, w):
		case slices.Contains(setAnew, w) || len(w) < 3:
			return nil
		default:
			name = append(name, w)
		}
	}
	if len(name) > 4 || len(name) == 1 && slices.Contains(extents, name[0]) {
		return nil // a clause, or the extent of something that is not named
	}
	return name
}

var (
	nameStarts = []string{"the", "this", "that", "your", "my", "our", "its", "a", "an", "these", "those"}
	fillers    = []string{"and", "so", "remember", "again", "now", "then", "every", "all", "both", "well", "of", "on", "for", "in"}
	setAnew    = []string{
		"it", "they", "them", "you", "we", "i", "he", "she", "one", "ones", "what", "which", "there", "here", "that's", "it's", "mine", "yours", "everything", "everybody", "who",
		"meter", "multimeter", "tester", "gauge", "scale", "dial", "range", "knob", "wrench", "driver", "gun", "iron", "stop", "fence", "pot", "oven", "plate", "drill", "bit", "compressor", "regulator", "supply", "charger", "trimmer",
		"job", "work", "rest", "next", "total", "wait", "pause", "hole", "holes", "line", "mark", "piece", "pieces", "hand", "hands", "reading", "number", "value", "step", "other", "others", "second", "third", "last", "left", "right",
	}
)

// extents name a thing only together with what has them: "the run-on time".
var extents = []string{"time", "length", "width", "depth", "height", "distance", "voltage", "current", "pressure", "temperature", "torque", "weight", "size", "resistance", "speed", "gap"}

// keyOf are the stems of words, sorted: one thing however its name is turned.
func keyOf(name []string) string {
	stems := make([]string, len(name))
	for i, w := range name {
		stems[i] = class.Stem(w)
	}
	slices.Sort(stems)
	return strings.Join(stems, " ")
}
